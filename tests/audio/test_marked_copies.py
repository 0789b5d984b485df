"""Copies with marks are read by others: chunks by the RIFF description, chapters by FFmpeg."""

import struct
from pathlib import Path

import av
import mutagen.flac
import numpy as np
import pytest
import soundfile

from audio.encoding import EncodingStopped
from audio.errors import AudioFailure
from audio.marked_copies import (
    Mark,
    chapter_tags,
    write_flac_with_chapters,
    write_wave_with_cues,
)
from audio.wave_copies import write_wave

RATE = 44_100
MARKS = (
    Mark(2.5, None, "rhythm"),
    Mark(0.5, 1.25, "intonation: F♯ low, twice"),
    Mark(61.0 / 44.1, None, "odd"),
)


@pytest.fixture
def recording(tmp_path) -> Path:
    path = tmp_path / "take.flac"
    noise = np.random.default_rng(5).integers(-(2**23), 2**23, (3 * RATE, 1), dtype=np.int32) << 8
    noise[0], noise[1] = -(2**31), (2**23 - 1) << 8  # both ends of full scale
    soundfile.write(path, noise, RATE, "PCM_24")
    tags = mutagen.flac.FLAC(path)
    tags["TITLE"] = "Opening"
    tags.save()
    return path


def chunks_of(content: bytes) -> dict[bytes, bytes]:
    """Walk through a RIFF list: four letters, a size, the content, a pad byte to even."""
    found, at = {}, 0
    while at < len(content):
        name, size = struct.unpack_from("<4sI", content, at)
        found.setdefault(name, content[at + 8 : at + 8 + size])
        at += 8 + size + size % 2
    return found


def test_a_folder_that_takes_no_file_says_so(recording):
    # proc(5): nobody makes a file there, whoever asks; open(2) gives ENOENT.
    if not Path("/proc/self").exists():
        pytest.skip("needs a folder that takes no file from anybody")
    with pytest.raises(FileNotFoundError) as refused:
        write_wave_with_cues(recording, Path("/proc/marked.wav"), MARKS)
    assert refused.value.filename.startswith("/proc/")


def test_a_disk_that_refuses_while_the_copy_is_written_says_so(tmp_path, recording):
    # setrlimit(2): beyond the limit write(2) fails; libsndfile tells no reason.
    resource = pytest.importorskip("resource")
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (100_000, hard))
    try:
        with pytest.raises(OSError, match=r"marked\.wav"):
            write_wave(recording, tmp_path / "marked.wav")
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


def test_cue_points_stand_where_the_description_of_riff_puts_them(tmp_path, recording):
    # "Multimedia Programming Interface and Data Specifications 1.0" (1991), chapter 3:
    # <cue-ck>, <labl-ck>, <ltxt-ck>; layout from memory.
    target = tmp_path / "marked.wav"
    write_wave_with_cues(recording, target, MARKS)
    content = target.read_bytes()
    riff, size, form = struct.unpack_from("<4sI4s", content)
    assert (riff, size, form) == (b"RIFF", len(content) - 8, b"WAVE")
    chunks = chunks_of(content[12:])
    points = chunks[b"cue "]
    assert struct.unpack_from("<I", points) == (3,)
    frames = [struct.unpack_from("<II4sIII", points, 4 + 24 * n) for n in range(3)]
    assert [point[5] for point in frames] == [22_050, 61_000, 110_250]
    assert all(point[1] == point[5] and point[2] == b"data" for point in frames)
    assert chunks[b"LIST"].startswith(b"adtl")
    assert "intonation: F♯ low, twice\0".encode() in chunks[b"LIST"]
    span = struct.unpack_from("<II4s", chunks_of(chunks[b"LIST"][4:])[b"ltxt"])
    assert span == (1, round(0.75 * RATE), b"rgn ")


def test_every_sample_of_the_copy_is_that_of_the_recording(tmp_path, recording):
    before = soundfile.read(recording, dtype="int32")[0]
    content = recording.read_bytes()
    wave, flac = tmp_path / "marked.wav", tmp_path / "marked.flac"
    write_wave_with_cues(recording, wave, MARKS)
    write_flac_with_chapters(recording, flac, MARKS)
    for copy in (wave, flac):
        np.testing.assert_array_equal(soundfile.read(copy, dtype="int32")[0], before)
    assert recording.read_bytes() == content


def test_ffmpeg_finds_the_chapters_of_a_flac_file(tmp_path, recording):
    target = tmp_path / "marked.flac"
    write_flac_with_chapters(recording, target, MARKS)
    with av.open(str(target)) as container:
        chapters = container.chapters()
        starts = [float(chapter["start"] * chapter["time_base"]) for chapter in chapters]
        names = [chapter["metadata"]["title"] for chapter in chapters]
    assert starts == pytest.approx([0.5, 1.383, 2.5], abs=0.001)
    assert names == ["intonation: F♯ low, twice", "odd", "rhythm"]
    assert mutagen.flac.FLAC(target)["TITLE"] == ["Opening"]


def test_chapter_times_are_written_with_hours():
    tags = chapter_tags([Mark(3725.0004, None, "late"), Mark(59.9996, None, "a minute")])
    assert tags["CHAPTER001"] == "00:01:00.000"
    assert tags["CHAPTER002"] == "01:02:05.000"
    assert tags["CHAPTER002NAME"] == "late"


def test_without_marks_it_is_a_plain_copy(tmp_path, recording):
    target = tmp_path / "plain.wav"
    write_wave_with_cues(recording, target, ())
    assert set(chunks_of(target.read_bytes()[12:])) <= {b"fmt ", b"data", b"PEAK", b"fact"}


@pytest.mark.parametrize("write", [write_wave_with_cues, write_flac_with_chapters])
def test_a_file_that_is_there_is_never_written_over(tmp_path, recording, write):
    target = tmp_path / "mine"
    target.write_text("mine")
    with pytest.raises(AudioFailure, match="exists already"):
        write(recording, target, MARKS)
    assert target.read_text() == "mine"


@pytest.mark.parametrize("write", [write_wave_with_cues, write_flac_with_chapters])
def test_stopping_leaves_nothing(tmp_path, recording, write):
    with pytest.raises(EncodingStopped):
        write(recording, tmp_path / "copy", MARKS, should_stop=lambda: True)
    assert [path.name for path in tmp_path.iterdir()] == ["take.flac"]
