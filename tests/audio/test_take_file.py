import errno
import os
import shutil
from pathlib import Path

import numpy as np
import pytest
import soundfile

from audio.errors import AudioFailure
from audio.levels import FLOOR_DBFS
from audio.take_file import Ended, TakeFile, WriteEnded, recover

RATE = 48_000
SAMPLES = np.random.default_rng(7).integers(-(2**23), 2**23, (RATE, 1)).astype(np.int32) << 8


def finish(take: TakeFile, ended: Ended = Ended.STOPPED):
    return take.finish(ended, overruns=0, dropped_frames=0, clipped_samples=0, peak_dbfs=FLOOR_DBFS)


def content(path: Path) -> np.ndarray:
    return soundfile.read(path, dtype="int32", always_2d=True)[0]


def test_a_take_is_finished_with_its_facts(tmp_path: Path) -> None:
    take = TakeFile.create(tmp_path / "ny mappe" / "étude 練習.wav", RATE, 1)
    take.append(SAMPLES)
    recording = take.finish(
        Ended.STOPPED, overruns=1, dropped_frames=2, clipped_samples=3, peak_dbfs=-4.0
    )
    assert recording.frames == RATE
    assert recording.duration_s == 1.0
    assert (recording.overruns, recording.dropped_frames, recording.clipped_samples) == (1, 2, 3)
    assert recording.sentence is None
    np.testing.assert_array_equal(content(recording.path), SAMPLES)


def test_nothing_recorded_leaves_no_file(tmp_path: Path) -> None:
    take = TakeFile.create(tmp_path / "take.wav", RATE, 1)
    with pytest.raises(AudioFailure, match="Nothing was recorded"):
        finish(take)
    assert not list(tmp_path.iterdir())


def test_an_existing_file_is_never_overwritten(tmp_path: Path) -> None:
    (tmp_path / "take.wav").write_bytes(b"mine")
    with pytest.raises(AudioFailure, match="exists already"):
        TakeFile.create(tmp_path / "take.wav", RATE, 1)
    assert (tmp_path / "take.wav").read_bytes() == b"mine"


def test_a_folder_that_cannot_be_made_is_a_plain_failure(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"")
    with pytest.raises(AudioFailure, match="cannot be written") as caught:
        TakeFile.create(tmp_path / "file" / "take.wav", RATE, 1)
    assert caught.value.next_step


@pytest.mark.skipif(os.name == "nt", reason="file-size limits are a Unix facility")
def test_a_full_disk_keeps_every_whole_frame_that_fitted(tmp_path: Path) -> None:
    import resource

    limits = resource.getrlimit(resource.RLIMIT_FSIZE)
    take = TakeFile.create(tmp_path / "take.wav", RATE, 1)
    resource.setrlimit(resource.RLIMIT_FSIZE, (100_001, limits[1]))
    try:
        with pytest.raises(WriteEnded) as caught:
            take.append(SAMPLES)
        recording = finish(take, caught.value.ended)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, limits)
    assert recording.ended is Ended.DISK_FULL
    assert recording.sentence is not None
    assert "disk is full" in recording.sentence
    kept = content(recording.path)
    assert len(kept) == recording.frames == (100_001 - 80) // 3
    np.testing.assert_array_equal(kept, SAMPLES[: len(kept)])


@pytest.mark.parametrize(
    ("code", "ended"),
    [(errno.ENOSPC, Ended.DISK_FULL), (errno.EIO, Ended.FOLDER_GONE)],
)
def test_failing_disks_end_the_take(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, code: int, ended: Ended
) -> None:
    take = TakeFile.create(tmp_path / "take.wav", RATE, 1)
    take.append(SAMPLES)

    def refuse(_: int) -> None:
        raise OSError(code, os.strerror(code))

    monkeypatch.setattr(os, "fsync", refuse)
    take._synced_at = 0.0
    with pytest.raises(WriteEnded) as caught:
        take.keep_safe()
    assert caught.value.ended is ended
    recording = finish(take, ended)
    assert recording.ended is ended
    np.testing.assert_array_equal(content(recording.path), SAMPLES)


@pytest.mark.skipif(os.name == "nt", reason="Windows keeps a folder while a file in it is open")
@pytest.mark.parametrize("how", ["removed", "moved"])
def test_a_vanished_folder_is_noticed_and_the_take_rescued(tmp_path: Path, how: str) -> None:
    folder = tmp_path / "2026-03-14"
    take = TakeFile.create(folder / "take.wav", RATE, 1)
    take.append(SAMPLES)
    if how == "removed":
        shutil.rmtree(folder)
    else:
        folder.rename(tmp_path / "elsewhere")
    take._synced_at = 0.0
    with pytest.raises(WriteEnded) as caught:
        take.keep_safe()
    recording = finish(take, caught.value.ended)
    assert recording.ended is Ended.FOLDER_GONE
    np.testing.assert_array_equal(content(recording.path), SAMPLES)


@pytest.mark.skipif(os.name == "nt", reason="Windows keeps a folder while a file in it is open")
def test_a_take_whose_folder_cannot_come_back_goes_home(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    home = tmp_path / "home"
    home.mkdir()
    monkeypatch.setattr(Path, "home", lambda: home)
    folder = tmp_path / "stick"
    take = TakeFile.create(folder / "take.wav", RATE, 1)
    take.append(SAMPLES)
    shutil.rmtree(folder)
    folder.write_bytes(b"a file in the way")
    recording = finish(take)
    assert recording.path == home / "take.wav"
    assert recording.sentence is not None
    assert str(recording.path) in recording.sentence
    np.testing.assert_array_equal(content(recording.path), SAMPLES)


def crashed(path: Path, *, unstated: int) -> bytes:
    """A file as a crash leaves it: the header is `unstated` bytes behind."""
    take = TakeFile.create(path, RATE, 1)
    take.append(SAMPLES[:20_000])
    take._writer.file.close()
    with path.open("ab") as file:
        file.write(
            (SAMPLES[20_000:].astype("<i4").view(np.uint8).reshape(-1, 4)[:, 1:]).tobytes()[
                :unstated
            ]
        )
    return path.read_bytes()


@pytest.mark.parametrize("unstated", [1, 3, 3 * 4000, 3 * 4000 + 2])
def test_a_crash_between_data_and_header_loses_nothing(tmp_path: Path, unstated: int) -> None:
    path = tmp_path / "take.wav"
    before = crashed(path, unstated=unstated)
    recording = recover(path)
    assert recording.frames == 20_000 + unstated // 3
    assert recording.ended is Ended.CRASHED
    np.testing.assert_array_equal(content(recording.path), SAMPLES[: recording.frames])
    assert path.read_bytes() == before
    assert (recording.path == path) == (unstated < 3)


def test_recovering_twice_replaces_nothing(tmp_path: Path) -> None:
    path = tmp_path / "take.wav"
    crashed(path, unstated=300)
    first, second = recover(path), recover(path)
    assert first.path != second.path
    assert first.path.read_bytes() == second.path.read_bytes()
    assert sorted(entry.name for entry in tmp_path.iterdir()) == [
        "take-recovered-2.wav", "take-recovered.wav", "take.wav",
    ]  # fmt: skip


def test_a_power_cut_that_left_zeros_for_a_header_size_is_recovered(tmp_path: Path) -> None:
    path = tmp_path / "take.wav"
    take = TakeFile.create(path, RATE, 1)
    empty_header = path.read_bytes()
    take.append(SAMPLES)
    take._writer.file.close()
    with path.open("r+b") as file:
        file.write(empty_header)
    recording = recover(path)
    assert recording.frames == RATE
    np.testing.assert_array_equal(content(recording.path), SAMPLES)


def test_a_finished_file_with_something_behind_its_sound_is_left_alone(tmp_path: Path) -> None:
    # soundfile writes strings of 24 bit files into a LIST chunk behind the samples.
    path = tmp_path / "foreign.wav"
    with soundfile.SoundFile(path, "w", RATE, 1, "PCM_24") as file:
        file.write(SAMPLES)
        file.title = "a study"
    recording = recover(path)
    assert recording.path == path
    assert recording.frames == RATE


def test_nothing_to_recover_is_said_plainly(tmp_path: Path) -> None:
    path = tmp_path / "take.wav"
    for data in (b"", b"not a sound file at all"):
        path.write_bytes(data)
        with pytest.raises(AudioFailure, match="no recorded sound"):
            recover(path)
    with pytest.raises(AudioFailure):
        recover(tmp_path / "missing.wav")
