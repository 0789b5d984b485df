"""Filters and peaks against scipy.signal, an implementation of its own."""

import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import signal

from analysis import filters
from analysis.oversampling import interpolation_filter
from analysis.peaks import find_peaks
from analysis.sections import in_sections

NOISE = np.random.default_rng(11).normal(size=5000)


@pytest.mark.parametrize(("half", "cutoff", "beta"), [(48, 0.93 / 2, 9.0), (72, 0.3, 7.0)])
def test_the_low_pass_is_that_of_the_library(half, cutoff, beta):
    expected = signal.firwin(2 * half + 1, cutoff, window=("kaiser", beta))
    assert filters.low_pass(half, cutoff, beta) == pytest.approx(expected, rel=1e-12, abs=1e-15)


@pytest.mark.parametrize("kind", [np.float32, np.float64])
@pytest.mark.parametrize("step", [1, 2, 3, 8])
def test_a_lower_rate_is_that_of_the_library(kind, step):
    taps = filters.low_pass(24 * step, 0.93 / step, 9.0).astype(kind)
    whole = signal.upfirdn(taps, NOISE.astype(kind), down=step)
    lower = filters.decimated(NOISE.astype(kind), taps, step)
    assert lower.dtype == kind
    assert lower.size == (NOISE.size - taps.size) // step + 1
    first = (taps.size - 1) // step
    assert (taps.size - 1) % step == 0, "else the library's phase is another one"
    bound = 1e-12 if kind is np.float64 else 1e-5
    assert lower == pytest.approx(whole[first : first + lower.size], abs=bound)


def test_fewer_samples_than_taps_give_nothing():
    assert filters.decimated(NOISE[:8], np.ones(9), 2).size == 0
    assert filters.decimated(NOISE[:9], np.ones(9), 2) == pytest.approx([NOISE[:9].sum()])


@pytest.mark.parametrize("factor", [2, 4])
def test_a_higher_rate_is_that_of_the_library(factor):
    taps = interpolation_filter(factor)
    each = -(-taps.size // factor)
    whole = signal.upfirdn(taps, NOISE, up=factor)
    higher = filters.interpolated(NOISE, taps, factor)
    assert higher.size == factor * (NOISE.size - each + 1)
    first = factor * (each - 1)
    assert higher == pytest.approx(whole[first : first + higher.size], rel=1e-12, abs=1e-12)


def test_sections_filter_as_those_of_the_library_and_go_on_where_they_stopped():
    sections = signal.butter(4, 0.2, output="sos")
    state = np.zeros((2, 2))
    parts = [in_sections(sections, part, state) for part in np.split(NOISE, [7, 900])]
    expected, left = signal.sosfilt(sections, NOISE, zi=np.zeros((2, 2)))
    assert np.concatenate(parts) == pytest.approx(expected, rel=1e-12, abs=1e-12)
    assert state == pytest.approx(left, rel=1e-12, abs=1e-12)


@pytest.mark.parametrize(("count", "length"), [(9, 9), (40, 7), (300, 11)])
def test_parabolas_are_those_of_the_library(count, length):
    values = 8.0 + NOISE[:count]
    expected = signal.savgol_filter(values, length, 2)
    assert filters.on_parabolas(values, length) == pytest.approx(expected, rel=1e-12)


curves = st.one_of(
    st.lists(st.integers(0, 5).map(float), min_size=1, max_size=40),
    st.lists(st.floats(-9.0, 9.0), min_size=1, max_size=40),
)


@given(
    curves,
    st.none() | st.floats(-3.0, 6.0),
    st.integers(1, 7),
    st.none() | st.floats(0.0, 6.0),
)
def test_peaks_are_those_of_the_library(curve, height, distance, prominence):
    values = np.array(curve)
    expected, _ = signal.find_peaks(values, height=height, distance=distance, prominence=prominence)
    found = find_peaks(values, height=height, distance=distance, prominence=prominence)
    assert found.tolist() == expected.tolist()


def test_measuring_loads_none_of_the_heavy_parts_of_scipy():
    heavy = ("scipy.stats", "scipy.signal", "scipy.optimize", "scipy.interpolate")
    told = subprocess.run(
        [
            sys.executable,
            "-c",
            "import sys, analysis.take, analysis.verdicts, analysis.week_medians\n"
            "import analysis.sounding\n"
            f"print([name for name in {heavy!r} if name in sys.modules])",
        ],
        cwd=Path(__file__).parents[2],
        capture_output=True,
        text=True,
        check=True,
    )
    assert told.stdout.strip() == "[]"
