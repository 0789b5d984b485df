"""What sounds is recorded, kept through crashes and full disks, and measured again.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

import time

import mutagen.flac
import numpy as np
import pytest

from app.journal.clicks import ClickBeats
from app.journal.failures import PlainFailure
from app.journal.kinds import Origin
from app.journal.records import PlayingSettings
from app.services import unfiled
from app.services.reading_views import Reading
from app.services.stopping import Stopped
from app.services.views import PendingTake
from app.wiring import open_workbench
from audio.pcm_file import PcmWriter


def left_by_a_crash(bench, clock, seconds=1.0, passage_id=None, frames=None):
    """Leave a recording behind as a program does that was killed while recording."""
    take_id = "ab" * 16
    pcm = unfiled.pcm_file(bench.recording._store.folders, take_id)
    pcm.parent.mkdir(parents=True, exist_ok=True)
    writer = PcmWriter(pcm, 48_000, 1)
    t = np.arange(round(seconds * 48_000)) / 48_000
    tone = np.rint(0.2 * 2**31 * np.sin(2 * np.pi * 440 * t)).astype(np.int32)
    writer.append(tone[:frames, np.newaxis])
    writer.file.close()
    pending = PendingTake(
        take_id, pcm, clock(), 0.0, passage_id, "even bow", PlayingSettings(instrument="viola")
    )
    unfiled.write_note(pending)
    return pcm


def test_a_recording_left_by_a_crash_is_offered_and_filed(bench, clock, journal_dir):
    passage = bench.passages.add("Study", "Opening")
    pcm = left_by_a_crash(bench, clock, passage_id=passage.id)
    bench.close()
    with open_workbench(journal_dir, clock=clock) as again:
        (pending,) = again.recording.unfinished()
        assert pending.recovered
        assert pending.duration_s == pytest.approx(1.0)
        assert pending.aim == "even bow"
        told = []
        row = again.recording.finish(pending, told.append)
        assert told[-1] == 1.0
        assert row.origin is Origin.RECOVERED
        assert row.aim == "even bow"
        assert "ended while recording" in row.notice
        assert row.file.suffix == ".flac"
        tags = mutagen.flac.FLAC(row.file).tags
        assert dict(tags) == {
            "date": ["2026-03-14"], "title": ["Study: Opening"], "tracknumber": ["1"],
        }  # fmt: skip
        assert again.listening.open_take(row.id).settings.instrument == "viola"
        assert not pcm.exists()
        assert list(pcm.parent.iterdir()) == []
        assert again.recording.unfinished() == ()


def test_a_header_behind_its_sound_loses_nothing(bench, clock):
    pcm = left_by_a_crash(bench, clock, seconds=1.0)
    more = (np.ones(4800, dtype=np.int32) << 20)[:, np.newaxis]
    from audio.pcm_file import to_24_bit

    with pcm.open("ab") as file:
        file.write(to_24_bit(more))
    (pending,) = bench.recording.unfinished()
    assert pending.duration_s == pytest.approx(1.1)
    assert bench.recording.finish(pending).duration_s == pytest.approx(1.1)
    assert list(pcm.parent.iterdir()) == []


def test_a_file_without_sound_is_not_offered(bench, clock):
    left_by_a_crash(bench, clock, frames=0)
    assert bench.recording.unfinished() == ()


def test_what_never_heard_anything_is_removed_by_the_next_run(bench, clock):
    """A header is all that a kill or a full disk leaves of a recording that just began."""
    whole = left_by_a_crash(bench, clock)
    heard = [whole.with_name(f"{name * 16}.wav") for name in ("cd", "ef")]
    whole.rename(heard[0])
    heard[1].write_bytes(b"no header, but perhaps sound" * 99)
    whole.with_name(f"{'12' * 16}.json").write_text("{}")
    empty = left_by_a_crash(bench, clock, frames=0)
    empty.with_name(f"{'34' * 16}.wav").touch()
    begun = bench.recording._new_pending(None, "", None)
    begun.pcm.touch()
    (offered,) = bench.recording.unfinished()
    assert offered.pcm == heard[0]
    assert sorted(empty.parent.iterdir()) == sorted([*heard, begun.pcm])


def test_a_failure_while_encoding_keeps_the_pcm(bench, clock, journal_dir, monkeypatch):
    from audio.errors import AudioFailure

    pcm = left_by_a_crash(bench, clock)
    (pending,) = bench.recording.unfinished()

    def full(*_arguments, **_options):
        raise AudioFailure("The disk is full.", "Make room.")

    monkeypatch.setattr("audio.encoding.encode_flac", full)
    with pytest.raises(PlainFailure, match="disk is full"):
        bench.recording.finish(pending)
    assert pcm.exists()
    assert bench.filing.takes() == ()
    assert not list(journal_dir.rglob("*.flac"))
    monkeypatch.undo()
    assert bench.recording.finish(bench.recording.unfinished()[0]).number == 1


def test_a_failure_of_the_database_keeps_the_pcm_and_removes_the_copy(
    bench, clock, journal_dir, monkeypatch
):
    pcm = left_by_a_crash(bench, clock)
    (pending,) = bench.recording.unfinished()

    def full(*_arguments):
        raise PlainFailure("The disk is full.", "Make room.")

    monkeypatch.setattr(bench.recording._store.takes, "add", full)
    with pytest.raises(PlainFailure, match="disk is full"):
        bench.recording.finish(pending)
    assert pcm.exists()
    assert not list(journal_dir.rglob("*.flac"))


def test_stopping_keeps_the_pcm(bench, clock, journal_dir):
    pcm = left_by_a_crash(bench, clock)
    (pending,) = bench.recording.unfinished()
    with pytest.raises(Stopped):
        bench.recording.finish(pending, should_stop=lambda: True)
    assert pcm.exists()
    assert not list(journal_dir.rglob("*.flac"))


def test_a_crash_between_filing_and_tidying_files_nothing_twice(bench, clock):
    left_by_a_crash(bench, clock)
    (pending,) = bench.recording.unfinished()
    row = bench.recording.finish(pending)
    pcm = left_by_a_crash(bench, clock)
    (again,) = bench.recording.unfinished()
    assert bench.recording.finish(again).id == row.id
    assert len(bench.filing.takes()) == 1
    assert not pcm.exists()


def marked_before_a_crash(bench, clock, *marks_s, click=None):
    """Leave a recording behind whose player had marked moments of it, beside a click."""
    pcm = left_by_a_crash(bench, clock, seconds=2.0)
    (pending,) = bench.recording.unfinished()
    running = unfiled.Running(pending)
    for at_s in marks_s:
        running.mark(at_s)
    running.keep_beats(click)
    return pcm


def test_moments_marked_before_a_crash_become_markers(bench, clock, journal_dir):
    marked_before_a_crash(bench, clock, 0.4, 1.25, 7.0)
    bench.close()
    with open_workbench(journal_dir, clock=clock) as again:
        (pending,) = again.recording.unfinished()
        row = again.recording.finish(pending)
        made = again.marking.for_take(row.id)
        assert [marker.start_s for marker in made] == pytest.approx([0.4, 1.25, 1.99])
        assert {(m.category, m.text) for m in made} == {("other", "marked while playing")}


def test_beats_of_a_click_outlive_a_crash(bench, clock, journal_dir):
    beats = ClickBeats(0.537, 60 / 88.002, 3)
    marked_before_a_crash(bench, clock, click=beats)
    bench.close()
    with open_workbench(journal_dir, clock=clock) as again:
        row = again.recording.finish(again.recording.unfinished()[0])
        assert again.listening.open_take(row.id).settings.click == beats


def test_a_crash_before_tidying_up_marks_nothing_twice(bench, clock):
    marked_before_a_crash(bench, clock, 0.5)
    row = bench.recording.finish(bench.recording.unfinished()[0])
    marked_before_a_crash(bench, clock, 0.5)
    bench.recording.finish(bench.recording.unfinished()[0])
    assert len(bench.marking.for_take(row.id)) == 1


@pytest.mark.parametrize("marks", ["[0.5, null, -3, 1e400]", '"0.5"', "7"])
def test_a_note_with_senseless_marks_costs_no_sound(bench, clock, marks):
    pcm = left_by_a_crash(bench, clock)
    note = pcm.with_suffix(".json")
    text = note.read_text(encoding="utf-8").replace('"marks_s": []', f'"marks_s": {marks}')
    assert marks in text
    note.write_text(text, encoding="utf-8")
    row = bench.recording.finish(bench.recording.unfinished()[0])
    assert all(0.0 <= m.start_s < row.duration_s for m in bench.marking.for_take(row.id))


def test_a_full_disk_while_marking_stops_nothing(bench, clock, monkeypatch):
    left_by_a_crash(bench, clock)
    running = unfiled.Running(bench.recording.unfinished()[0])

    def full(_pending):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(unfiled, "write_note", full)
    running.mark(0.3)
    assert running.pending.marks_s == (0.3,)


def test_without_a_recording_there_is_nothing_to_mark(bench):
    with pytest.raises(PlainFailure, match="Nothing is being recorded"):
        bench.recording.mark(1.0)


def test_discarding_goes_to_the_trash(bench, clock, journal_dir):
    pcm = left_by_a_crash(bench, clock)
    (pending,) = bench.recording.unfinished()
    bench.recording.discard(pending)
    assert not pcm.exists()
    assert bench.recording.unfinished() == ()
    assert [path.name for path in (journal_dir / "trash").rglob("*.wav")] == [pcm.name]


def test_without_an_input_it_says_what_to_plug_in(bench, monkeypatch):
    from audio.errors import AudioFailure

    def none(*_arguments):
        raise AudioFailure("No microphone was found.", "Plug in a microphone.")

    monkeypatch.setattr("audio.devices.find_device", none)
    monkeypatch.setattr("audio.devices.input_devices", none)
    for act in (bench.recording.inputs, bench.recording.listen, bench.recording.start):
        with pytest.raises(PlainFailure) as failure:
            act()
        assert failure.value.next_step == "Plug in a microphone."
    assert not bench.recording.is_recording
    assert bench.recording.unfinished() == ()
    assert bench.recording.level().peak_dbfs is None
    with pytest.raises(PlainFailure, match="Nothing is being recorded"):
        bench.recording.stop()


@pytest.mark.room
def test_a_known_phrase_is_found_again_through_the_room(bench, virtual_room, phrase_a):
    """Played into the room, recorded through PortAudio, encoded, measured.

    Against the generator's own truth: the centre of every note within 1.5 cents, the
    steps between their starts within 15 ms. The room adds a resampler's delay only.
    """
    passage = bench.passages.add("Study", "Scale", "", PlayingSettings(pulse_bpm=96.0))
    device = next(r for r in bench.recording.inputs() if r.name == virtual_room.device)
    bench.recording.listen(device.key)
    assert bench.recording.wait_until_heard()
    bench.recording.start(passage.id, "in tune")
    pcm = bench.recording._running.pending.pcm
    with virtual_room.playing(phrase_a.samples, phrase_a.sample_rate_hz) as player:
        time.sleep(1.0)
        assert pcm.stat().st_size > 48_000  # it is on disk while it sounds
        assert bench.recording.poll() is None
        player.wait(timeout=30)
        time.sleep(0.5)
        level = bench.recording.level()
    pending = bench.recording.stop()
    assert level.word == "good"
    assert not level.clipped
    row = bench.recording.finish(pending)
    assert not pcm.exists()
    assert row.notice == ""
    row = bench.measuring.measure(row.id)
    notes = [n for n in bench.listening.open_take(row.id).notes if isinstance(n.deviation, Reading)]
    truths = phrase_a.truth.notes
    assert [n.midi for n in notes] == [t.midi for t in truths]
    for note, truth in zip(notes, truths, strict=True):
        assert note.deviation.value == pytest.approx(truth.deviation_cents, abs=1.5)
    heard = np.diff([n.start_s for n in notes])
    np.testing.assert_allclose(heard, np.diff([t.start_s for t in truths]), atol=0.015)


@pytest.mark.room
def test_an_unplugged_device_ends_the_take_and_keeps_it(bench, virtual_room):
    bench.recording.start(device_key=_room_key(bench, virtual_room))
    assert bench.recording.wait_until_heard()
    time.sleep(1.0)
    virtual_room.unplug()
    deadline = time.monotonic() + 15
    pending = None
    while pending is None and time.monotonic() < deadline:
        pending = bench.recording.poll()
        time.sleep(0.05)
    assert pending is not None
    assert "went away" in pending.ended
    assert not bench.recording.is_recording
    row = bench.recording.finish(pending)
    assert row.notice == pending.ended
    assert row.duration_s > 0.5


@pytest.mark.room
def test_closing_while_recording_leaves_an_unfiled_take(bench, virtual_room, journal_dir, clock):
    bench.recording.start(device_key=_room_key(bench, virtual_room))
    assert bench.recording.wait_until_heard()
    time.sleep(0.6)
    bench.close()
    with open_workbench(journal_dir, clock=clock) as again:
        (pending,) = again.recording.unfinished()
        assert pending.duration_s > 0.3


def _room_key(bench, virtual_room):
    return next(r for r in bench.recording.inputs() if r.name == virtual_room.device).key


@pytest.mark.room
def test_the_input_can_be_changed_and_looked_for_again(bench, virtual_room):
    key = _room_key(bench, virtual_room)
    bench.recording.listen(key)
    bench.recording.listen(key)  # the same one stays open
    assert bench.recording.wait_until_heard()
    other = next(r.key for r in bench.recording.inputs() if r.key != key)
    bench.recording.listen(other)
    assert key in [row.key for row in bench.recording.rescan()]
    bench.recording.start(device_key=key)
    with pytest.raises(PlainFailure, match="runs already"):
        bench.recording.start(device_key=key)
    bench.recording.listen(other)  # a running recording is not disturbed
    bench.recording.stop_listening()
    assert bench.recording.is_recording
    assert bench.recording.unfinished() == ()  # the running one is none
    assert bench.recording.wait_until_heard()
    time.sleep(0.3)
    pending = bench.recording.stop()
    assert bench.recording.finish(pending).duration_s > 0.1
    with pytest.raises(PlainFailure, match="passage is not there"):
        bench.recording.start("0" * 32, device_key=key)


def test_an_input_that_goes_before_any_sound_leaves_nothing(bench, monkeypatch):
    from audio.errors import AudioFailure

    class Silent:
        state = "monitoring"
        ended = None

        def begin(self, path):
            path.touch()

        def stop(self):
            raise AudioFailure("Nothing was recorded.", "Check the input.")

    recorder = Silent()
    monkeypatch.setattr(bench.recording, "_opened", lambda _key: recorder)
    bench.recording.start()
    assert bench.recording.poll() is None
    recorder.state = "ended"
    with pytest.raises(PlainFailure, match="Nothing was recorded"):
        bench.recording.poll()
    assert not bench.recording.is_recording
    assert bench.recording.poll() is None
    assert list((bench.journal_dir / ".recording").iterdir()) == []


def test_a_file_that_cannot_be_created_leaves_no_note(bench, monkeypatch):
    class Refusing:
        def begin(self, _path):
            raise PermissionError(13, "Permission denied", "/x/y.wav")

        def stop(self):
            return None

    monkeypatch.setattr(bench.recording, "_opened", lambda _key: Refusing())
    with pytest.raises(PlainFailure, match="did not start"):
        bench.recording.start()
    assert not bench.recording.is_recording
    assert list((bench.journal_dir / ".recording").iterdir()) == []
