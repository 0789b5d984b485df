"""No-retake, attempts and inputs on a journal: what is recorded, refused, told apart."""

import json
from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from app.journal.failures import PlainFailure
from app.journal.no_retake import ChosenAs
from app.services.input_levels import levels_of
from app.services.inputs import InputUsed
from app.services.repairing import repair
from app.wiring import open_workbench
from audio.errors import AudioFailure
from audio.pcm_file import PcmWriter
from audio.recordings import Ended, Recording

RATE = 48_000


class Input:
    """Stands in for an input: whatever is begun sounds for a while, or breaks off."""

    def __init__(self, quiet=0.001, lost=False, deaf=False):
        self.quiet, self.lost, self.deaf = quiet, lost, deaf
        self.state, self.elapsed_s, self.losses = "ended" if lost else "recording", 2.0, (0, 0)
        self.path = None

    def begin(self, path):
        self.path = path
        writer = PcmWriter(path, RATE, 1)
        noise = np.random.default_rng(1).normal(0.0, self.quiet, 2 * RATE)
        noise[RATE:] += 0.25 * np.sin(2 * np.pi * 440 * np.arange(RATE) / RATE)
        writer.append(np.rint(noise * 2**31).astype(np.int32)[:, np.newaxis])
        writer.file.close()

    def stop(self):
        if self.deaf:
            raise AudioFailure("Nothing was recorded.", "Check the input.")
        if self.path is None:
            return None
        sentence = "The input went away." if self.lost else None
        ended = Ended.DEVICE_LOST if self.lost else Ended.STOPPED
        return Recording(self.path, 2 * RATE, RATE, 1, "PCM_24", 0, 0, 0, -12.0, ended, sentence)


@pytest.fixture
def record(bench, clock, monkeypatch):
    """Record a take with a stand-in for the input, and file it."""

    def recorded(passage, *, device="ALSA: one", file=True, **options):
        def opened(_key):
            bench.recording._input = InputUsed(device)
            return Input(**options)

        monkeypatch.setattr(bench.recording, "_opened", opened)
        clock.now += timedelta(minutes=1)
        bench.recording.start(passage.id)
        pending = bench.recording.stop()
        return bench.recording.finish(pending) if file else pending

    return recorded


@pytest.fixture
def ruled(bench):
    passage = bench.passages.add("Study", "Opening")
    return bench.no_retake.switch(passage.id, True)


@pytest.fixture
def free(bench):
    return bench.passages.add("Study", "Ending")


def test_one_take_a_day_and_a_kind_word(bench, clock, ruled, free, record):
    assert bench.no_retake.view(ruled.id).may_record
    assert "each practice day" in bench.no_retake.view(ruled.id).sentence
    row = record(ruled)
    assert row.chosen_as is ChosenAs.NO_RETAKE
    with pytest.raises(PlainFailure) as refused:
        record(ruled)
    assert "19:31" in refused.value.sentence
    assert "'Study: Ending'" in refused.value.next_step
    assert not bench.recording.is_recording
    view = bench.no_retake.view(ruled.id)
    assert (view.on, view.holds, view.may_record) == (True, True, False)
    assert view.instead == (free,)
    record(free)
    record(free)  # others can be recorded as often as one likes
    clock.now += timedelta(days=1)
    assert record(ruled).chosen_as is ChosenAs.NO_RETAKE


def test_without_another_passage_it_still_says_what_to_do(bench, ruled, record):
    record(ruled)
    with pytest.raises(PlainFailure) as refused:
        record(ruled)
    assert refused.value.next_step.startswith("Listen to the one you have; tomorrow")


def test_the_take_of_the_day_cannot_be_thrown_away(bench, ruled, record, journal_dir):
    pending = record(ruled, file=False)
    with pytest.raises(PlainFailure, match="kept whatever it is"):
        bench.recording.discard(pending)
    row = bench.recording.finish(pending)
    with pytest.raises(PlainFailure, match="kept whatever it is"):
        bench.filing.delete(row.id)
    bench.no_retake.switch(ruled.id, False)
    bench.filing.delete(row.id)  # the journal is the player's own


def test_a_device_failure_allows_another_with_the_reason_on_record(bench, ruled, record):
    first = record(ruled, lost=True)
    assert first.chosen_as is ChosenAs.NO_RETAKE  # it is kept all the same
    assert "went away" in bench.no_retake.view(ruled.id).sentence
    second = record(ruled)
    assert second.retake_reason == "The input went away."
    assert second.chosen_as is ChosenAs.NO_RETAKE
    with pytest.raises(PlainFailure):
        record(ruled)


def test_what_the_program_cannot_notice_the_player_says(bench, ruled, record):
    row = record(ruled)
    with pytest.raises(PlainFailure, match="reason on record"):
        bench.no_retake.note_device_failure(row.id, "  ")
    bench.no_retake.note_device_failure(row.id, "the microphone was muted")
    assert record(ruled).retake_reason == "the microphone was muted"


def test_an_input_that_never_spoke_is_no_attempt(bench, ruled, record):
    with pytest.raises(PlainFailure, match="Nothing was recorded"):
        record(ruled, deaf=True)
    assert bench.recording._store.attempts.list() == ()
    assert record(ruled).chosen_as is ChosenAs.NO_RETAKE


def test_a_crash_while_recording_is_a_failure(bench, clock, ruled, monkeypatch):
    monkeypatch.setattr(bench.recording, "_opened", lambda _key: Input())
    bench.recording.start(ruled.id)
    bench._store.close()  # gone without a word
    bench.recording._running = None
    with open_workbench(bench.journal_dir, clock=clock) as again:
        assert not again.no_retake.view(ruled.id).may_record  # the first one is not filed yet
        (pending,) = again.recording.unfinished()
        assert pending.no_retake
        row = again.recording.finish(pending)
        assert row.chosen_as is ChosenAs.NO_RETAKE
        assert again.no_retake.view(ruled.id).may_record
        (attempt,) = again.recording._store.attempts.list()
        assert "ended while recording" in attempt.failure
        assert attempt.duration_s == pytest.approx(2.0)


def test_a_clip_from_the_phone_is_the_take_of_its_day(bench, clock, ruled, add_take, tone_file):
    day = clock.now.date()
    row = add_take(tone_file("a.wav"), "Opening", day)
    assert row.chosen_as is ChosenAs.NO_RETAKE
    assert not bench.no_retake.view(ruled.id).may_record
    second = add_take(tone_file("b.wav", frequency_hz=330.0), "Opening", day)
    assert second.chosen_as is None  # kept, but not the day's one take


def test_the_rule_begins_tomorrow_where_today_was_recorded(bench, clock, free, record):
    record(free)
    bench.no_retake.switch(free.id, True)
    assert "begins tomorrow" in bench.no_retake.view(free.id).sentence
    assert record(free).chosen_as is ChosenAs.ALL_KEPT
    clock.now += timedelta(days=1)
    assert record(free).chosen_as is ChosenAs.NO_RETAKE


def test_the_best_of_several_is_told_apart(bench, free, record):
    first, second, third = (record(free) for _ in range(3))
    assert {row.chosen_as for row in bench.filing.takes()} == {ChosenAs.ALL_KEPT}
    bench.filing.delete(first.id)
    bench.recording.discard(record(free, file=False))
    assert bench.filing.row(third.id).chosen_as is ChosenAs.BEST_OF_SEVERAL
    bench.filing.delete(second.id)
    bench.filing.restore(first.id)
    day = third.practice_day
    effort = bench.minutes.recording(day, day)
    assert (effort.attempts, effort.kept) == (4, 2)
    assert effort.recording_min == pytest.approx(8 / 60)
    assert effort.practised_min is None
    bench.practising.set_minutes(day, 40)
    effort = bench.minutes.recording(day, day, free.id)
    assert effort.sentence == (
        "4 recordings, 2 kept: under a minute of recording, 40 min practised in all."
    )


def test_a_comparison_says_how_its_takes_were_chosen(bench, clock, ruled, free, record):
    one = record(ruled)
    record(free)
    best = record(free)
    bench.recording.discard(record(free, file=False))
    found = bench.comparing.comparison(one.id, best.id)
    said = " ".join(found.confounders)
    assert set(found.confounders) <= set(found.as_json()["confounders"])
    assert "Take A was made without retakes." in said
    assert "Take B was chosen as the best of several (3 attempts)." in said
    assert "Choosing alone" in said
    assert "Another input" not in said


def test_a_refiled_take_takes_its_attempt_along(bench, clock, ruled, free, record):
    row = record(free)
    moved = bench.filing.refile(row.id, row.practice_day, ruled.id)
    assert moved.chosen_as is ChosenAs.NO_RETAKE
    assert not bench.no_retake.view(ruled.id).may_record
    back = bench.filing.refile(row.id, row.practice_day, free.id)
    assert back.chosen_as is ChosenAs.ONLY_TAKE
    assert bench.no_retake.view(ruled.id).may_record


def test_the_input_of_a_take_is_remembered(bench, clock, free, record, journal_dir):
    first = record(free, quiet=0.001)
    take = bench.filing.take(first.id)
    assert take.input_device == "ALSA: one"
    assert take.peak_dbfs == pytest.approx(-12.0, abs=0.2)  # 0.25 is 12.04 dB below 1
    assert take.quiet_dbfs == pytest.approx(-57.0, abs=0.5)  # an RMS of 0.001 (AES17)
    assert json.loads(first.file.with_suffix(".json").read_text())["take"]["input_device"]
    warn = bench.input_memory.warning
    assert warn(free.id, "ALSA: one", -58.0) == ""
    assert "Another input: ALSA: one, then ALSA: two." in warn(free.id, "ALSA: two")
    assert "12 dB higher" in warn(free.id, "ALSA: one", -45.0)
    assert "not comparable" in warn(free.id, "ALSA: one", -45.0)
    assert warn(free.id, "ALSA: one", -40.0) == ""  # somebody plays: no word on the room
    assert warn(None, "ALSA: two") == ""
    second = record(free, quiet=0.01, device="ALSA: two")
    assert "ALSA: two" in bench.input_memory.warning_about(second.id)
    assert bench.input_memory.warning_about(first.id) == ""
    said = " ".join(bench.comparing.comparison(first.id, second.id).confounders)
    assert "Another input" in said
    assert "20 dB higher" in said


def test_playing_without_a_rest_says_nothing_of_the_room(tmp_path):
    path = tmp_path / "legato.wav"
    t = np.arange(4 * RATE) / RATE
    swell = 0.05 + 0.2 * np.sin(np.pi * t / 4) ** 2  # 14 dB from softest to loudest
    writer = PcmWriter(path, RATE, 1)
    tone = np.rint(swell * np.sin(2 * np.pi * 440 * t) * 2**31).astype(np.int32)
    writer.append(tone[:, np.newaxis])
    writer.file.close()
    peak_dbfs, quiet_dbfs = levels_of(path)
    assert peak_dbfs == pytest.approx(-12.0, abs=0.1)
    assert quiet_dbfs is None


def test_silence_has_no_level(tmp_path):
    path = tmp_path / "silence.wav"
    writer = PcmWriter(path, RATE, 1)
    writer.append(np.zeros((RATE * 2, 1), dtype=np.int32))
    writer.file.close()
    assert levels_of(path) == (None, None)


def test_attempts_outlive_the_database(bench, clock, ruled, free, record):
    record(ruled)
    record(free)
    kept = record(free)
    bench.recording.discard(record(free, file=False))
    bench.close()
    (bench.journal_dir / "journal.db").unlink()
    assert repair(bench.journal_dir).rebuilt
    with open_workbench(bench.journal_dir, clock=clock) as again:
        assert not again.no_retake.view(ruled.id).may_record
        assert again.filing.row(kept.id).chosen_as is ChosenAs.BEST_OF_SEVERAL


def test_a_full_disk_at_the_end_loses_no_sound(bench, free, record, monkeypatch):
    store = bench.recording._store
    put = store.attempts.put

    def full(attempt):
        if attempt.duration_s:
            raise PlainFailure("The disk is full.", "Make room.")
        put(attempt)

    monkeypatch.setattr(store.attempts, "put", full)
    pending = record(free, file=False)
    assert store.attempts.get(pending.id).duration_s == 0.0
    monkeypatch.undo()
    bench.recording.finish(pending)
    assert store.attempts.get(pending.id) == replace(
        store.attempts.get(pending.id), duration_s=pytest.approx(2.0)
    )
