from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from audio.peaks import BASE_FRAMES, Peaks, build_peaks

RATE = 48_000


def sound_of(frames: int, channels: int = 1, seed: int = 0) -> np.ndarray:
    generator = np.random.default_rng(seed)
    return generator.normal(0, 0.2, (frames, channels)).astype(np.float32)


def brute_force(sound: np.ndarray, start_s: float, end_s: float, count: int, slack: int):
    """Each column's extremes, from the samples alone, with `slack` frames either side."""
    first = max(0, round(start_s * RATE))
    last = min(len(sound), round(end_s * RATE))
    count = min(count, last - first)
    edges = [first + k * (last - first) // count for k in range(count + 1)]
    columns = [sound[max(0, a - slack) : b + slack] for a, b in pairwise(edges)]
    return np.array([c.min() for c in columns]), np.array([c.max() for c in columns])


@settings(deadline=None, max_examples=60)
@given(
    st.integers(1, 60_000),
    st.floats(0, 1),
    st.floats(0, 1),
    st.integers(1, 700),
    st.integers(1, 2),
)
def test_no_peak_is_missed_and_none_invented(
    frames: int, a: float, b: float, count: int, channels: int
) -> None:
    sound = sound_of(frames, channels)
    peaks = build_peaks(sound, RATE)
    start_s, end_s = sorted((a * frames / RATE, b * frames / RATE))
    low, high = peaks.columns(start_s, end_s, count)
    assert len(low) == len(high) <= count
    if not len(low):
        assert round(end_s * RATE) <= round(start_s * RATE)
        return
    sure_low, sure_high = brute_force(sound, start_s, end_s, count, 0)
    wide_low, wide_high = brute_force(
        sound, start_s, end_s, count, max(BASE_FRAMES, round((end_s - start_s) * RATE / count))
    )
    assert np.all(low <= sure_low)
    assert np.all(high >= sure_high)
    assert np.all(low >= wide_low)
    assert np.all(high <= wide_high)


@settings(deadline=None, max_examples=40)
@given(st.integers(300, 60_000), st.floats(0, 0.9), st.integers(1, 700))
def test_close_up_the_samples_themselves_are_drawn(frames: int, a: float, count: int) -> None:
    sound = sound_of(frames, 2)
    peaks = build_peaks(sound, RATE)
    start_s = a * frames / RATE
    end_s = start_s + min(count, frames * 0.1) / RATE
    low, high = peaks.columns(start_s, end_s, count, sound)
    if len(low):
        sure_low, sure_high = brute_force(sound, start_s, end_s, count, 0)
        np.testing.assert_array_equal(low, sure_low)
        np.testing.assert_array_equal(high, sure_high)


@settings(deadline=None, max_examples=30)
@given(st.lists(st.integers(0, 3000), min_size=1, max_size=30))
def test_blocks_of_any_size_give_the_same_peaks(sizes: list[int]) -> None:
    sound = sound_of(sum(sizes), 2)
    cuts = np.cumsum([0, *sizes])
    blocks = (sound[a:b] for a, b in pairwise(cuts))
    whole, pieces = build_peaks(sound, RATE), build_peaks(blocks, RATE)
    assert whole.frames == pieces.frames == len(sound)
    for one, other in zip(whole.columns(0, 10, 100), pieces.columns(0, 10, 100), strict=True):
        np.testing.assert_array_equal(one, other)


def test_one_loud_sample_shows_at_every_zoom() -> None:
    sound = np.zeros(600 * RATE, np.float32)
    sound[123 * RATE + 77] = 0.9
    sound[321 * RATE + 5] = -0.7
    peaks = build_peaks(sound, RATE)
    for count in (1, 10, 333, 1000, 4000):
        low, high = peaks.columns(0, 600, count)
        assert len(low) == count
        assert (high.max(), low.min()) == (np.float32(0.9), np.float32(-0.7))
        assert abs(int(high.argmax()) - 123 * count // 600) <= 1


def test_the_arrays_handled_stay_small() -> None:
    peaks = build_peaks(np.zeros(600 * RATE, np.float32), RATE)
    for count in (100, 1000):
        level = peaks._level_for(600 * RATE / count)
        assert len(level.low) <= 8 * count + 8


def test_nothing_outside_the_sound_is_drawn() -> None:
    peaks = build_peaks(sound_of(1000), RATE)
    assert len(peaks.columns(5, 6, 100)[0]) == 0
    assert len(peaks.columns(-2, -1, 100)[0]) == 0
    assert len(peaks.columns(0, 1, 0)[0]) == 0
    assert len(peaks.columns(0.01, 0.01, 10)[0]) == 0
    assert len(build_peaks(np.zeros(0, np.float32), RATE).columns(0, 1, 10)[0]) == 0
    # Longer than the sound: no more columns than frames.
    assert len(peaks.columns(-1, 9, 5000)[0]) == 1000


def test_peaks_are_kept_in_a_cache(tmp_path: Path) -> None:
    peaks = build_peaks(sound_of(100_000), RATE)
    path = tmp_path / "cache" / "take ä.npz"
    peaks.save(path)
    loaded = Peaks.load(path)
    assert loaded is not None
    assert (loaded.frames, loaded.sample_rate_hz) == (100_000, RATE)
    assert loaded.duration_s == pytest.approx(100_000 / RATE)
    for one, other in zip(peaks.columns(0, 3, 200), loaded.columns(0, 3, 200), strict=True):
        np.testing.assert_array_equal(one, other)
    peaks.save(path)
    assert [entry.name for entry in path.parent.iterdir()] == [path.name]


def test_an_unusable_cache_is_built_anew(tmp_path: Path) -> None:
    path = tmp_path / "peaks.npz"
    assert Peaks.load(path) is None
    build_peaks(sound_of(100_000), RATE).save(path)
    whole = path.read_bytes()
    for data in (b"", b"text", whole[: len(whole) // 2]):
        path.write_bytes(data)
        assert Peaks.load(path) is None
    np.savez(path, format=99, base_frames=BASE_FRAMES, frames=3, sample_rate_hz=1, low=0, high=0)
    assert Peaks.load(path) is None
    np.savez(path, format=1, base_frames=BASE_FRAMES, frames=3, sample_rate_hz=1, low=0, high=0)
    assert Peaks.load(path) is None
