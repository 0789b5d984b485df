import os
from pathlib import Path

import numpy as np
import pytest
import soundfile
from hypothesis import given
from hypothesis import strategies as st

from audio.pcm_file import PcmWriter, read_layout, to_24_bit
from audio.ring import SampleRing

RATE = 48_000


def noise(frames: int, channels: int = 1, seed: int = 1) -> np.ndarray:
    """24 bit samples, left-justified as a device delivers them."""
    generator = np.random.default_rng(seed)
    return generator.integers(-(2**23), 2**23, (frames, channels)).astype(np.int32) << 8


def read_with_libsndfile(path: Path) -> np.ndarray:
    samples, _ = soundfile.read(path, dtype="int32", always_2d=True)
    return samples


@pytest.mark.parametrize("channels", [1, 2, 3, 6])
@pytest.mark.parametrize("frames", [1, 2, 4801])
def test_a_finished_file_reads_back_bit_for_bit(tmp_path: Path, channels: int, frames: int) -> None:
    # Reference: libsndfile, an independent reader.
    samples = noise(frames, channels)
    writer = PcmWriter(tmp_path / "take.wav", RATE, channels)
    writer.append(samples[: frames // 2])
    writer.append(samples[frames // 2 :])
    writer.close()
    info = soundfile.info(tmp_path / "take.wav")
    assert (info.samplerate, info.channels, info.subtype) == (RATE, channels, "PCM_24")
    np.testing.assert_array_equal(read_with_libsndfile(tmp_path / "take.wav"), samples)
    layout = read_layout(tmp_path / "take.wav")
    assert layout is not None
    assert layout.is_finished


def test_the_file_is_readable_after_every_append(tmp_path: Path) -> None:
    samples = noise(10_000)
    writer = PcmWriter(tmp_path / "take.wav", RATE, 1)
    for start in range(0, 10_000, 777):
        writer.append(samples[start : start + 777])
        there = read_with_libsndfile(tmp_path / "take.wav")
        np.testing.assert_array_equal(there, samples[: start + 777])
    writer.close()


def test_the_file_turns_into_rf64_beyond_four_gigabytes(tmp_path: Path) -> None:
    # EBU Tech 3306: RF64 with a ds64 chunk; libsndfile is the independent reader.
    path = tmp_path / "long.wav"
    writer = PcmWriter(path, RATE, 1)
    head = path.stat().st_size
    frames = (2**32 - 3000) // 3
    # A hole in the file stands for the first 24 hours.
    os.truncate(path, head + frames * 3)
    writer._data_bytes = frames * 3
    tail = noise(2000)
    writer.append(tail[:500])
    assert path.read_bytes()[:4] == b"RIFF" if path.stat().st_size < 2**20 else True
    with path.open("rb") as file:
        assert file.read(4) == b"RIFF"
    writer.append(tail[500:])
    writer.close()
    with path.open("rb") as file:
        assert file.read(4) == b"RF64"
    with soundfile.SoundFile(path) as file:
        assert file.frames == frames + 2000
        assert file.format == "RF64"
        file.seek(frames)
        np.testing.assert_array_equal(file.read(dtype="int32", always_2d=True), tail)
    layout = read_layout(path)
    assert layout is not None
    assert layout.data_bytes == (frames + 2000) * 3


def test_a_new_file_never_replaces_another(tmp_path: Path) -> None:
    path = tmp_path / "take.wav"
    path.write_bytes(b"mine")
    with pytest.raises(FileExistsError):
        PcmWriter(path, RATE, 1)
    assert path.read_bytes() == b"mine"


@given(st.lists(st.integers(-(2**31), 2**31 - 1), min_size=1, max_size=40))
def test_32_bits_are_rounded_to_24_and_never_wrap(values: list[int]) -> None:
    packed = to_24_bit(np.array(values, np.int32)[:, np.newaxis])
    got = [
        int.from_bytes(packed[at : at + 3], "little", signed=True)
        for at in range(0, len(packed), 3)
    ]
    for value, rounded in zip(values, got, strict=True):
        exact = min(max(value / 256, -(2**23)), 2**23 - 1)
        assert abs(rounded - exact) <= 0.5


def test_other_files_have_no_layout(tmp_path: Path) -> None:
    for name, content in {"a": b"", "b": b"RIFF\0\0\0\0WAVEdata", "c": b"plain text" * 9}.items():
        (tmp_path / name).write_bytes(content)
        assert read_layout(tmp_path / name) is None


def test_libsndfiles_own_files_are_understood(tmp_path: Path) -> None:
    for subtype, bits, is_float in (("PCM_16", 16, False), ("FLOAT", 32, True)):
        path = tmp_path / f"{subtype}.wav"
        soundfile.write(path, np.zeros((101, 2)), 44_100, subtype=subtype)
        layout = read_layout(path)
        assert layout is not None
        assert (layout.bits, layout.is_float, layout.channels) == (bits, is_float, 2)
        assert layout.data_bytes == 101 * layout.frame_bytes


@given(st.lists(st.tuples(st.integers(0, 30), st.integers(0, 30)), max_size=40))
def test_the_ring_keeps_order_and_counts_what_does_not_fit(steps: list[tuple[int, int]]) -> None:
    ring = SampleRing(37, 2)
    written = taken = 0
    kept: list[int] = []
    out: list[int] = []
    for write, read in steps:
        block = np.arange(written, written + write, dtype=np.int32)
        lost = ring.write(np.column_stack([block, -block]))
        kept += list(block[: write - lost])
        written += write
        got = ring.read(read)
        np.testing.assert_array_equal(got[:, 0], -got[:, 1])
        out += list(got[:, 0])
        taken += len(got)
        assert len(ring) == len(kept) - taken <= 37
    out += list(ring.read(37)[:, 0])
    assert out == kept
