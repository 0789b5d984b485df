from pathlib import Path

import numpy as np
import pytest
import soundfile

from audio import take_file
from audio.errors import AudioFailure
from audio.intake import Intake
from audio.recordings import Ended
from audio.take_file import WriteEnded

RATE = 48_000


def blocks(count: int, frames: int = 4800) -> list[np.ndarray]:
    generator = np.random.default_rng(8)
    return [
        generator.integers(-(2**22), 2**22, (frames, 1)).astype(np.int32) << 8 for _ in range(count)
    ]


@pytest.mark.parametrize(("pre_roll_s", "kept"), [(0.0, 0), (0.1, 1), (0.25, 3), (1.0, 10)])
def test_a_take_begins_with_just_the_pre_roll(tmp_path: Path, pre_roll_s: float, kept: int) -> None:
    intake = Intake(RATE, 1, pre_roll_s)
    sound = blocks(14)
    for block in sound[:12]:
        intake.consume(block)
    intake.begin(tmp_path / "take.wav")
    assert intake.take_frames == kept * 4800
    assert intake.take_begins_at == (12 - kept) * 4800
    for block in sound[12:]:
        intake.consume(block)
    recording = intake.finish(Ended.STOPPED, 0, 0)
    assert recording is not None
    content = soundfile.read(recording.path, dtype="int32", always_2d=True)[0]
    np.testing.assert_array_equal(content, np.concatenate(sound[12 - kept :]))


def test_the_level_of_a_take_counts_from_its_beginning(tmp_path: Path) -> None:
    intake = Intake(RATE, 1, 0.0)
    intake.consume(np.full((4800, 1), 2**31 - 1, np.int32))
    assert intake.meter.level.clipped_samples == 4800
    intake.begin(tmp_path / "take.wav")
    samples = intake.consume(np.full((4800, 1), 2**30, np.int32))
    assert samples.dtype == np.float32
    assert samples[0, 0] == 0.5
    recording = intake.finish(Ended.STOPPED, 0, 0)
    assert recording is not None
    assert recording.clipped_samples == 0
    assert recording.peak_dbfs == pytest.approx(-6.02, abs=0.01)


def test_an_input_that_gives_nothing_but_zeros_is_noticed() -> None:
    intake = Intake(RATE, 1, 0.0)
    for _ in range(3):
        intake.consume(np.zeros((4800, 1), np.int32))
    assert intake.silent_frames == 3 * 4800
    intake.consume(np.ones((4800, 1), np.int32))
    assert intake.silent_frames == 0


def test_no_take_ends_as_none() -> None:
    assert Intake(RATE, 1, 0.0).finish(Ended.DEVICE_LOST, 0, 0) is None


def test_no_room_for_the_pre_roll_is_said_and_monitoring_goes_on(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    intake = Intake(RATE, 1, 1.0)
    sound = blocks(4)
    for block in sound:
        intake.consume(block)

    def full(self: take_file.TakeFile, block: np.ndarray) -> None:
        raise WriteEnded(Ended.DISK_FULL)

    with monkeypatch.context() as patch:
        patch.setattr(take_file.TakeFile, "append", full)
        with pytest.raises(AudioFailure, match="no room on the disk"):
            intake.begin(tmp_path / "take.wav")
    assert not list(tmp_path.iterdir())
    assert not intake.has_take
    intake.begin(tmp_path / "take.wav")
    recording = intake.finish(Ended.STOPPED, 0, 0)
    assert recording is not None
    assert recording.frames == 4 * 4800
