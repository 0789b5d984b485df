from pathlib import Path
from typing import Any

import numpy as np
import pytest
import soundfile

from audio.encoding import EncodingStopped
from audio.errors import AudioFailure
from audio.trimming import trim

RATE = 48_000
SOUND = np.random.default_rng(3).uniform(-0.5, 0.5, (3 * RATE, 2))


@pytest.fixture
def clip(tmp_path: Path) -> Path:
    path = tmp_path / "clip.wav"
    soundfile.write(path, SOUND, RATE, subtype="PCM_24")
    return path


def test_the_part_is_kept_to_the_sample(clip: Path, tmp_path: Path) -> None:
    before = clip.read_bytes()
    trimmed = trim(clip, tmp_path / "day" / "take.flac", 0.5, 2.25, {"TITLE": "Study"})
    assert trimmed.lowered_db == 0.0
    whole, _ = soundfile.read(clip, dtype="int32")
    kept, rate = soundfile.read(trimmed.take.path, dtype="int32")
    assert rate == RATE
    assert np.array_equal(kept, whole[round(0.5 * RATE) : round(2.25 * RATE)])
    assert clip.read_bytes() == before
    assert [path.name for path in (tmp_path / "day").iterdir()] == ["take.flac"]


def test_the_part_of_a_film_is_in_time(make_clip: Any, tmp_path: Path) -> None:
    path = make_clip("clip.mp4", "aac", video=True)
    trimmed = trim(path, tmp_path / "take.flac", 0.4, 1.6)
    kept, rate = soundfile.read(trimmed.take.path)
    burst = np.flatnonzero(np.abs(kept) > 0.3)
    assert burst[0] / rate == pytest.approx(0.6, abs=0.003)
    assert len(kept) / rate == pytest.approx(1.2)


def test_sound_beyond_full_scale_is_lowered_not_clipped(tmp_path: Path) -> None:
    loud = 1.5 * np.sin(2 * np.pi * 440 * np.arange(RATE) / RATE)
    soundfile.write(tmp_path / "loud.wav", loud, RATE, subtype="FLOAT")
    trimmed = trim(tmp_path / "loud.wav", tmp_path / "take.flac", 0.0, 1.0)
    kept, _ = soundfile.read(trimmed.take.path)
    assert trimmed.lowered_db == pytest.approx(20 * np.log10(1.5), abs=0.01)
    assert np.abs(kept * 10 ** (trimmed.lowered_db / 20) - loud).max() < 1e-6


@pytest.mark.parametrize(("start_s", "end_s"), [(1.0, 1.05), (2.0, 1.0), (-1.0, 1.0), (7.0, 9.0)])
def test_a_part_that_is_none_is_refused(
    clip: Path, tmp_path: Path, start_s: float, end_s: float
) -> None:
    with pytest.raises(AudioFailure):
        trim(clip, tmp_path / "take.flac", start_s, end_s)
    assert [path.name for path in tmp_path.iterdir()] == ["clip.wav"]


def test_a_cancelled_one_leaves_nothing(clip: Path, tmp_path: Path) -> None:
    with pytest.raises(EncodingStopped):
        trim(clip, tmp_path / "take.flac", 0.0, 2.0, should_stop=lambda: True)
    assert [path.name for path in tmp_path.iterdir()] == ["clip.wav"]
