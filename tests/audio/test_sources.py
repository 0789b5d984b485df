from pathlib import Path
from typing import Any

import numpy as np
import pytest
import soundfile

from audio.errors import AudioFailure
from audio.peaks import build_peaks
from audio.sources import ArraySource, FileSource, make_source, open_source, source_of

RATE = 48_000
SOUND = np.random.default_rng(2).uniform(-0.5, 0.5, (3 * RATE, 2)).astype(np.float32)


@pytest.mark.parametrize(
    ("name", "subtype", "bits"),
    [
        ("a.wav", "PCM_24", 23),
        ("b.flac", "PCM_24", 23),
        ("c.flac", "PCM_16", 15),
        ("d.aiff", "PCM_16", 15),
    ],
)
def test_a_file_is_found_to_the_sample_in_any_order(
    tmp_path: Path, name: str, subtype: str, bits: int
) -> None:
    soundfile.write(tmp_path / name, SOUND, RATE, subtype=subtype)
    source, rate = open_source(tmp_path / name)
    assert isinstance(source, FileSource)
    assert (rate, source.frames, source.channels) == (RATE, 3 * RATE, 2)
    generator = np.random.default_rng(3)
    for start in (*generator.integers(0, 3 * RATE, 40), 3 * RATE - 5, 0):
        part = source.read(int(start), int(start) + 1234)
        truth = SOUND[start : start + 1234]
        assert part.shape == truth.shape
        assert np.abs(part - truth).max() <= 2.0**-bits
    assert len(source.read(-10, 5)) == 5
    assert len(source.read(4 * RATE, 5 * RATE)) == 0
    source.close()


@pytest.mark.parametrize(("name", "codec"), [("a.mp3", "libmp3lame"), ("b.m4a", "aac")])
def test_other_kinds_are_decoded_whole(make_clip: Any, name: str, codec: str) -> None:
    path = make_clip(name, codec)
    with pytest.raises(AudioFailure):
        FileSource(path)
    source, rate = open_source(path)
    assert isinstance(source, ArraySource)
    assert rate == RATE
    assert source.frames == pytest.approx(2 * RATE, abs=2400)


def test_a_missing_file_is_said_plainly(tmp_path: Path) -> None:
    with pytest.raises(AudioFailure, match="is not there"):
        open_source(tmp_path / "missing.flac")


def test_a_file_that_breaks_while_it_plays_gives_silence_of_the_right_length(
    tmp_path: Path,
) -> None:
    soundfile.write(tmp_path / "a.flac", SOUND, RATE, subtype="PCM_24")
    source = FileSource(tmp_path / "a.flac")
    source.close()
    part = source.read(100, 300)
    assert part.shape == (200, 2)
    assert not part.any()
    assert source.is_broken


def test_samples_that_are_no_numbers_are_silent(tmp_path: Path) -> None:
    soundfile.write(tmp_path / "a.wav", np.array([0.5, np.nan, np.inf]), RATE, subtype="FLOAT")
    source = FileSource(tmp_path / "a.wav")
    assert source.read(0, 3)[:, 0].tolist() == [0.5, 0.0, 0.0]
    source.close()


def test_channels_are_laid_out_for_the_output() -> None:
    mono = np.array([0.1, 0.2], np.float32)
    one = make_source(source_of(mono), RATE, RATE, 2).read(0, 2)
    np.testing.assert_array_equal(one, mono[:, np.newaxis])
    six = np.arange(6, dtype=np.float32)[np.newaxis]
    np.testing.assert_array_equal(make_source(source_of(six), RATE, RATE, 2).read(0, 1), [[2.5]])
    stereo = np.array([[0.5, -0.5]], np.float32)
    assert make_source(source_of(stereo), RATE, RATE, 2).read(-5, 10).tolist() == [[0.5, -0.5]]
    assert make_source(source_of(stereo), RATE, RATE, 1).read(0, 1).tolist() == [[0.0]]


def test_a_file_is_drawn_close_up_like_its_array(tmp_path: Path) -> None:
    soundfile.write(tmp_path / "a.wav", SOUND, RATE, subtype="FLOAT")
    source = FileSource(tmp_path / "a.wav")
    peaks = build_peaks(SOUND, RATE)
    for one, other in zip(
        peaks.columns(1.0, 1.1, 500, SOUND), peaks.columns(1.0, 1.1, 500, source), strict=True
    ):
        np.testing.assert_array_equal(one, other)
    source.close()
