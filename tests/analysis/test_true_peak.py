"""The true peak, held against the whole sound interpolated with nothing left out."""

import numpy as np
import pytest
from scipy import signal

from analysis.oversampling import interpolation_filter
from analysis.true_peak import measure_true_peak_dbtp


def highest_crest_dbtp(samples, factor):
    """Peak of all of the sound, by scipy's own oversampling with the same filter."""
    size = np.abs(signal.upfirdn(interpolation_filter(factor), np.pad(samples, 50), up=factor))
    before, middle, after = size[:-2], size[1:-1], size[2:]
    bend = before - 2 * middle + after
    top = (middle >= before) & (middle >= after) & (bend < 0)
    lean = (before - after)[top]
    return 20 * np.log10(np.max(middle[top] - lean**2 / (8 * bend[top])))


@pytest.mark.parametrize(
    ("factor", "rate_hz"), [(4, 44_100), (4, 48_000), (2, 96_000), (1, 192_000)]
)
@pytest.mark.parametrize("spikes", [0, 1, 6])
@pytest.mark.parametrize("count", [3, 64, 700, 140_000])
def test_nothing_that_is_passed_over_holds_the_peak(factor, rate_hz, spikes, count):
    rng = np.random.default_rng([factor, spikes, count])
    samples = rng.standard_normal(count) * rng.uniform(0, 1, count) ** spikes
    for sound in (samples, np.cumsum(samples) / 10):
        assert measure_true_peak_dbtp(sound, rate_hz) == pytest.approx(
            highest_crest_dbtp(sound, factor), abs=1e-9
        )


def test_the_highest_of_several_channels_counts():
    rng = np.random.default_rng(5)
    both = rng.standard_normal((5000, 2)) * (0.1, 0.4)
    assert measure_true_peak_dbtp(both, 48_000) == measure_true_peak_dbtp(both[:, 1], 48_000)


def test_true_peak_is_found_in_quiet_surroundings():
    # Blocks that cannot hold the peak are skipped; the loudest one must not be.
    rng = np.random.default_rng(3)
    samples = 0.01 * rng.standard_normal(200_000)
    samples[150_000:150_040] += 0.7 * np.sin(np.pi / 2 * np.arange(40) + np.pi / 4)
    direct = 20 * np.log10(np.max(np.abs(signal.resample_poly(samples, 16, 1))))
    assert measure_true_peak_dbtp(samples, 48_000) == pytest.approx(direct, abs=0.1)
    assert measure_true_peak_dbtp(np.zeros(1000), 48_000) == -np.inf
