"""A recording that begins with the first note and ends after silence."""

import time

import numpy as np
import pytest
import soundfile

from analysis.onsets import detect_onsets
from app.journal.failures import PlainFailure
from app.services.arming import FirstNote
from audio.errors import AudioFailure
from audio.guides import Click
from sample_audio.generator import NoteSpec, PhraseSpec, render
from tests.practising_sounds import SPEAKER, speaker_is_missing, speech

RATE = 48_000


def hear(first, samples):
    """Hand sound on as a recorder does, 0.1 s at a time; gives where the note was known."""
    for at in range(0, len(samples), RATE // 10):  # as much as a recorder hands on at once
        begun = first.has_begun
        first.hear(samples[at : at + RATE // 10, np.newaxis].astype(np.float32))
        if first.has_begun and not begun:
            yield (at + RATE // 10) / RATE


def noise(seconds, dbfs=-60.0, seed=1):
    return 10 ** (dbfs / 20) * np.random.default_rng(seed).normal(size=round(seconds * RATE))


def a_phrase(**spec):
    notes = tuple(NoteSpec(midi, 1.0) for midi in (62, 64, 66, 67))
    return render(PhraseSpec(notes, tempo=96.0, lead_in_s=0.1, tail_s=0.3, **spec))


@pytest.mark.parametrize("articulation", ["detache", "pizzicato", "staccato"])
@pytest.mark.parametrize("level_dbfs", [-38.0, -18.0])
def test_where_the_first_note_began_is_known_once_it_is_known_for_one(articulation, level_dbfs):
    notes = tuple(NoteSpec(m, 1.0, articulation=articulation) for m in (62, 64, 66, 67))
    phrase = render(PhraseSpec(notes, tempo=96.0, level_dbfs=level_dbfs, lead_in_s=0.0))
    sound = np.concatenate([noise(3.0), phrase.samples])
    sound += noise(len(sound) / RATE, seed=2)[: len(sound)]
    since = []
    (known_s,) = hear(FirstNote(RATE, 5.0, since.append), sound)
    true_s = 3.0 + phrase.truth.notes[0].start_s
    assert 0.05 <= known_s - true_s <= 1.0
    assert known_s - since[0] == pytest.approx(true_s, abs=0.15)


@pytest.mark.skipif(speaker_is_missing(), reason=f"{SPEAKER} is not installed")
def test_talk_begins_nothing_nearly_always_and_playing_after_it_does():
    """One in ten stretches of talk may pass for playing; one in twenty does, of sixty."""
    rng = np.random.default_rng(77)
    begun = known = 0
    phrase = a_phrase(level_dbfs=-22.0)
    for _ in range(20):
        talk = speech(rng, 10.0).samples
        first = FirstNote(RATE, 5.0, lambda _since_s: None)
        list(hear(first, np.concatenate([noise(1.0), talk + noise(len(talk) / RATE)[: len(talk)]])))
        begun += first.has_begun
        if not first.has_begun:
            known += any(True for _ in hear(first, np.concatenate([noise(1.5), phrase.samples])))
    assert begun <= 2
    assert known == 20 - begun


def test_a_drone_that_the_input_hears_is_no_first_note_and_a_note_over_it_is():
    seconds = 6.0
    time_s = np.arange(round(seconds * RATE)) / RATE
    drone = 0.003 * sum(np.sin(2 * np.pi * 220 * n * time_s) / n for n in (1, 2, 3))
    drone += noise(seconds)[: len(drone)]
    first = FirstNote(RATE, 5.0, lambda _since_s: None, deaf_s=2.0)
    assert list(hear(first, drone)) == []
    note = a_phrase(level_dbfs=-20.0).samples[: 2 * RATE]
    assert list(hear(first, drone[: len(note)] + note)) != []


def test_a_click_that_the_input_hears_is_no_first_note():
    click = Click(120.0, RATE, level_dbfs=-20.0).read(0, 8 * RATE)[:, 0]
    first = FirstNote(RATE, 5.0, lambda _since_s: pytest.fail("it began"), deaf_s=2.0)
    assert list(hear(first, click + noise(8.0))) == []


def test_noise_knocks_and_a_cough_begin_nothing():
    first = FirstNote(RATE, 5.0, lambda _since_s: pytest.fail("it began"))
    sound = noise(6.0)
    for at, length in ((1.0, 0.05), (2.5, 0.3), (4.0, 0.6)):
        burst = slice(round(at * RATE), round((at + length) * RATE))
        sound[burst] += noise(length, -20.0)[: burst.stop - burst.start]
    assert list(hear(first, sound)) == []


@pytest.mark.parametrize(("rest_s", "is_over"), [(1.5, False), (2.6, True)])
def test_it_ends_after_the_silence_that_was_asked_for(rest_s, is_over):
    first = FirstNote(RATE, 2.0, lambda _since_s: None)
    phrase = a_phrase().samples
    list(hear(first, np.concatenate([noise(2.0), phrase, noise(rest_s), phrase])))
    assert first.is_over is is_over


def test_a_called_off_one_hears_nothing():
    first = FirstNote(RATE, 2.0, lambda _since_s: pytest.fail("it began"))
    first.call_off()
    list(hear(first, np.concatenate([noise(1.0), a_phrase().samples])))


@pytest.mark.parametrize("silence_s", [0.0, 500.0])
def test_a_senseless_silence_is_refused(bench, silence_s):
    with pytest.raises(PlainFailure, match="1 to 120"):
        bench.recording.arm(silence_s=silence_s)


def test_without_an_input_nothing_is_armed(bench, monkeypatch):
    def none(*_arguments):
        raise AudioFailure("No microphone was found.", "Plug in a microphone.")

    monkeypatch.setattr("audio.devices.find_device", none)
    with pytest.raises(PlainFailure, match="No microphone"):
        bench.recording.arm()
    assert not bench.recording.is_armed


class FakeRecorder:
    """Hands on what the test plays, and writes nothing."""

    sample_rate_hz = RATE
    state = "monitoring"

    def __init__(self):
        self.kept_s = None

    def begin(self, path, pre_roll_s=None):
        path.touch()
        self.kept_s = pre_roll_s

    def stop(self):
        return None


def test_an_armed_take_counts_as_an_attempt_from_its_first_note_on(bench, clock, monkeypatch):
    """So a crash while it is played leaves the day's one take made, not open."""
    recorder, hears = FakeRecorder(), []

    def opened(_key, *, pre_roll_s, on_block):
        hears.append(on_block)
        assert pre_roll_s >= 3.0
        return recorder

    monkeypatch.setattr(bench.recording, "_opened", opened)
    passage = bench.passages.add("Study", "Scale")
    bench.no_retake.switch(passage.id, True)
    bench.recording.arm(passage.id)
    assert bench.no_retake.view(passage.id).may_record
    sound = np.concatenate([noise(2.0), a_phrase().samples])
    for at in range(0, len(sound), RATE // 10):
        hears[0](sound[at : at + RATE // 10, np.newaxis].astype(np.float32))
    assert bench.recording.is_recording
    assert 1.0 < recorder.kept_s < 3.5
    assert not bench.no_retake.view(passage.id).may_record


def poll_for(bench, seconds):
    """Poll as the window does, until a recording has ended."""
    deadline, pending = time.monotonic() + seconds, None
    while pending is None and time.monotonic() < deadline:
        time.sleep(0.05)
        pending = bench.recording.poll()
    return pending


def _room_key(bench, room):
    return next(row.key for row in bench.recording.inputs() if row.name == room.device)


@pytest.mark.room
def test_silence_a_phrase_and_silence_become_one_take(bench, virtual_room):
    """The phrase's first onset lies about a second after the take's start."""
    phrase = a_phrase()
    passage = bench.passages.add("Study", "Scale")
    bench.recording.arm(passage.id, "begin together", _room_key(bench, virtual_room), silence_s=1.5)
    assert bench.recording.wait_until_heard()
    sound = np.concatenate([noise(2.5, -70), phrase.samples, noise(0.5, -70)])
    with virtual_room.playing(sound, RATE) as player:
        time.sleep(1.0)
        assert bench.recording.is_armed
        assert not bench.recording.is_recording
        assert bench.recording.poll() is None
        pending = poll_for(bench, 15)
        player.wait(timeout=10)
    assert pending is not None, "it did not end by itself"
    assert not bench.recording.is_recording
    assert not bench.recording.is_armed
    row = bench.recording.finish(pending)
    assert (row.aim, row.passage_id, row.notice) == ("begin together", passage.id, "")
    samples, rate = soundfile.read(row.file)
    onsets, _ = detect_onsets(samples, rate)
    loud = int(np.argmax(np.abs(samples) > 0.02)) / rate
    assert loud == pytest.approx(1.0, abs=0.25)
    assert abs(onsets - loud).min() < 0.06
    truths = phrase.truth.notes
    played_s = truths[-1].end_s - truths[0].start_s
    assert row.duration_s == pytest.approx(1.0 + played_s + 1.5, abs=0.8)


@pytest.mark.room
def test_an_armed_recording_can_be_called_off_and_leaves_nothing(bench, virtual_room):
    key = _room_key(bench, virtual_room)
    bench.recording.arm(device_key=key)
    bench.recording.listen(key)  # the meter goes on through the armed input
    assert bench.recording.is_armed
    bench.recording.disarm()
    assert not bench.recording.is_armed
    assert bench.recording.unfinished() == ()
    with pytest.raises(PlainFailure, match="Nothing is being recorded"):
        bench.recording.stop()


@pytest.mark.room
def test_a_take_that_cannot_begin_is_told_by_the_next_poll(bench, virtual_room, monkeypatch):
    def full(*_arguments):
        raise AudioFailure("The disk is full.", "Make room.")

    monkeypatch.setattr("audio.recorder.Recorder.begin", full)
    bench.recording.arm(device_key=_room_key(bench, virtual_room))
    assert bench.recording.wait_until_heard()
    with (
        # Several beginnings: a busy machine leaves gaps of seconds in what is played.
        virtual_room.playing(np.tile(np.append(np.zeros(RATE), a_phrase().samples), 6), RATE),
        pytest.raises(PlainFailure, match="disk is full"),
    ):
        poll_for(bench, 25)
    assert not bench.recording.is_armed
    assert bench.recording.unfinished() == ()
