"""Files from elsewhere become takes, byte for byte."""

import hashlib
import os
from datetime import UTC, date, datetime

import numpy as np
import pytest
import soundfile

from app.journal.failures import PlainFailure
from app.services.importing import ENTERED, SomeNotFiled
from app.services.stopping import Stopped
from app.wiring import open_workbench


def digest(path):
    return hashlib.sha256(path.read_bytes()).hexdigest()


def test_the_copy_is_the_original_byte_for_byte(bench, journal_dir, tone_file, add_take):
    path = tone_file("2026-03-10 18.15.00 étude.flac", format="FLAC")
    before = digest(path)
    row = add_take(path, "Study: opening")
    assert row.file.read_bytes() == path.read_bytes()
    assert digest(path) == before
    relative = row.file.relative_to(journal_dir).as_posix()
    assert relative == "2026/2026-03-10/181500-opening-take-1.flac"
    assert row.file.with_suffix(".json").is_file()
    assert row.is_late_entry
    assert row.practice_day == date(2026, 3, 10)


def test_the_source_of_the_date_is_told(bench, tone_file):
    named = tone_file("2026-03-10 18.15.00.wav")
    stamped = tone_file("untitled.wav", frequency_hz=300)
    when = datetime(2026, 3, 9, 12, 0, tzinfo=UTC).timestamp()
    os.utime(stamped, (when, when))
    a, b = bench.importing.propose([named, stamped])
    assert "name" in a.recorded_at_source
    assert a.practice_day == date(2026, 3, 10)
    assert "last changed" in b.recorded_at_source
    assert b.practice_day == date(2026, 3, 9)


def test_a_clip_from_after_midnight_belongs_to_the_day_before(bench, tone_file):
    (proposal,) = bench.importing.propose([tone_file("2026-03-11 00.40.00.wav")])
    assert proposal.practice_day == date(2026, 3, 10)


def test_a_day_given_by_the_player_wins_and_keeps_the_time_of_day(bench, tone_file):
    late = tone_file("2026-03-11 00.40.00.wav")
    (proposal,) = bench.importing.propose([late], day=date(2026, 2, 1))
    assert proposal.practice_day == date(2026, 2, 1)
    assert proposal.recorded_at.replace(tzinfo=None) == datetime(2026, 2, 2, 0, 40)
    assert proposal.recorded_at_source == ENTERED


def test_several_takes_of_a_day_are_counted(bench, tone_file, add_take):
    day = date(2026, 3, 10)
    rows = [add_take(tone_file(f"{n}.wav", frequency_hz=300 + n), "Scale", day) for n in range(3)]
    assert [row.number for row in rows] == [1, 2, 3]
    assert len({row.file for row in rows}) == 3
    other = add_take(tone_file("9.wav", frequency_hz=900), "Study", day)
    assert other.number == 1


def test_the_same_bytes_are_filed_once(bench, tone_file, add_take, tmp_path):
    path = tone_file("a.wav")
    add_take(path, "Scale")
    copy = tmp_path / "renamed.wav"
    copy.write_bytes(path.read_bytes())
    (proposal,) = bench.importing.propose([copy])
    assert "take 1 of Scale" in proposal.duplicate_of
    assert bench.importing.file([proposal]) == ()
    assert len(bench.filing.takes()) == 1


def test_two_equal_files_in_one_go_are_filed_once(bench, tone_file, tmp_path):
    path = tone_file("a.wav")
    copy = tmp_path / "b.wav"
    copy.write_bytes(path.read_bytes())
    proposals = bench.importing.propose([path, copy])
    assert [bool(p.duplicate_of) for p in proposals] == [False, True]
    assert "a.wav" in proposals[1].duplicate_of
    assert len(bench.importing.file(proposals)) == 1


def test_one_bad_file_does_not_hold_up_the_good_ones(bench, tone_file, tmp_path):
    bad = tmp_path / "bad.wav"
    bad.write_text("no sound at all")
    proposals = bench.importing.propose([bad, tone_file("good.wav")])
    assert proposals[0].failure.startswith("bad.wav")
    assert len(bench.importing.file(proposals)) == 1


def test_a_file_that_goes_away_is_told_and_the_rest_is_filed(bench, journal_dir, tone_file):
    gone, kept = tone_file("gone.wav"), tone_file("kept.wav", frequency_hz=500)
    proposals = bench.importing.propose([gone, kept])
    gone.unlink()
    with pytest.raises(SomeNotFiled) as some:
        bench.importing.file(proposals)
    assert [path for path, _ in some.value.failures] == [gone]
    assert len(some.value.rows) == len(bench.filing.takes()) == 1
    assert not list(journal_dir.rglob("*.part"))
    assert len(list(journal_dir.rglob("*.wav"))) == 1


def test_stopping_leaves_nothing_half_made(bench, journal_dir, tone_file):
    proposals = bench.importing.propose([tone_file("a.wav", seconds=60)])
    asked = iter([False, False, True])
    with pytest.raises(Stopped):
        bench.importing.file(proposals, should_stop=lambda: next(asked, True))
    assert bench.filing.takes() == ()
    assert not list(journal_dir.rglob("*.wav"))
    assert not list(journal_dir.rglob("*.part"))


def test_a_phone_clip_with_a_picture_is_kept_as_it_is(bench, tmp_path, add_take):
    import av

    path = tmp_path / "clip.mp4"
    rate = 44_100
    tone = (0.2 * np.sin(2 * np.pi * 440 * np.arange(rate) / rate)).astype(np.float32)
    with av.open(str(path), "w") as container:
        container.metadata["creation_time"] = "2026-03-10T17:15:02.000000Z"
        video = container.add_stream("mpeg4", rate=10)
        video.width = video.height = 32
        video.pix_fmt = "yuv420p"
        audio = container.add_stream("aac", rate=rate)
        for n in range(10):
            frame = av.VideoFrame.from_ndarray(np.full((32, 32, 3), 20 * n, np.uint8))
            container.mux(video.encode(frame))
        sound = av.AudioFrame.from_ndarray(tone[np.newaxis], format="fltp", layout="mono")
        sound.sample_rate = rate
        container.mux(audio.encode(sound))
        container.mux(audio.encode(None))
        container.mux(video.encode(None))
    (proposal,) = bench.importing.propose([path])
    assert proposal.has_video
    assert "inside the clip" in proposal.recorded_at_source
    row = add_take(path)
    assert row.file.suffix == ".mp4"
    assert row.file.read_bytes() == path.read_bytes()
    assert row.duration_s == pytest.approx(1.0, abs=0.1)


def test_odd_suffixes_do_not_meet_the_sidecars(bench, tone_file, add_take, tmp_path):
    plain = tmp_path / "take.json"
    plain.write_bytes(tone_file("a.wav").read_bytes())
    row = add_take(plain)
    assert row.file.suffix == ".sound"
    assert bench.filing.resolve(str(row.file)) == row.id


def test_everything_is_there_after_a_restart(bench, journal_dir, clock, tone_file, add_take):
    row = add_take(tone_file(), "Scale")
    bench.close()
    with open_workbench(journal_dir, clock=clock) as again:
        assert again.filing.row(row.id) == row


def test_nan_samples_are_said(bench, tmp_path):
    samples = np.full(48_000, 0.1)
    samples[100:103] = np.nan
    path = tmp_path / "nan.wav"
    soundfile.write(path, samples, 48_000, subtype="FLOAT")
    proposals = bench.importing.propose([path])
    (row,) = bench.importing.file(proposals)
    assert row.notice == "3 samples of the file are not numbers."


def test_a_clip_is_not_filed_under_a_day_to_come_that_was_typed(bench, tone_file):
    # The bench's today is 14 March 2026: a day ahead may have come where the clip was made.
    clip = tone_file("2026-03-10 18.15.00 a.wav")
    with pytest.raises(SomeNotFiled, match="Mon 16 Mar 2026 has not come yet"):
        bench.importing.file(bench.importing.propose([clip], day=date(2026, 3, 16)))
    (corrected,) = bench.importing.propose([clip])
    with pytest.raises(SomeNotFiled, match="has not come yet"):
        bench.importing.file([corrected.on_day(date(2062, 3, 10))])
    (row,) = bench.importing.file(bench.importing.propose([clip], day=date(2026, 3, 15)))
    assert row.practice_day == date(2026, 3, 15)


def test_minutes_and_takes_are_not_moved_to_a_day_to_come(bench, tone_file, add_take):
    row = add_take(tone_file("2026-03-10 18.15.00 a.wav"))
    year_mistyped = date(2062, 3, 10)
    with pytest.raises(PlainFailure, match="has not come yet"):
        bench.filing.refile(row.id, year_mistyped, None)
    with pytest.raises(PlainFailure, match="has not come yet"):
        bench.practising.set_minutes(year_mistyped, 30)
    assert bench.filing.row(row.id).practice_day == date(2026, 3, 10)
