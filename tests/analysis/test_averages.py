"""Intervals of averages against simulated takes whose truth is known exactly."""

import numpy as np
import pytest

from analysis.averages import average_uncertainty, measure_drift, uncertainty_of_mean
from analysis.results import Measured, NotMeasurable, Reason


def _takes(rng: np.random.Generator, count: int, share: float, sigma: float):
    """True deviations of all notes, measured ones of a share of them, and their widths."""
    true = rng.normal(rng.uniform(-6, 6), rng.uniform(4, 14), count)
    measured = rng.permutation(count)[: max(3, round(share * count))]
    each = rng.uniform(0.5, 1.5, len(measured)) * sigma
    return true, true[measured] + rng.normal(0.0, each), 1.96 * each


@pytest.mark.parametrize(("share", "sigma"), [(1.0, 0.4), (1.0, 3.0), (0.7, 0.5), (0.4, 1.0)])
def test_the_intervals_hold_the_truth(share: float, sigma: float) -> None:
    """About 95 of 100 (at least 92); errors that also move the value make them wider."""
    rng = np.random.default_rng(4)
    held = np.zeros(5)
    trials = 600
    for _ in range(trials):
        true, cents, widths = _takes(rng, 40, share, sigma)
        found = average_uncertainty(cents, widths, 0.0, share)
        mean_width = uncertainty_of_mean(cents, widths, share)
        held += [
            abs(np.mean(cents) - np.mean(true)) <= mean_width,
            abs(np.mean(np.abs(cents)) - np.mean(np.abs(true))) <= found.mean_absolute_cents,
            abs(np.std(cents, ddof=1) - np.std(true, ddof=1)) <= found.precision_cents,
            abs(np.mean(np.abs(cents) <= 10) - np.mean(np.abs(true) <= 10))
            <= found.within_10_cents + 1e-9,
            abs(np.mean(np.abs(cents) <= 25) - np.mean(np.abs(true) <= 25))
            <= found.within_25_cents + 1e-9,
        ]
    shares = held / trials
    print(f"share {share}, sigma {sigma}: {np.round(shares, 3)}")
    assert (shares >= 0.92).all()
    assert shares[0] <= 0.985


def test_an_uncertain_a_widens_what_it_moves() -> None:
    flat, widths = np.full(10, -20.0), np.full(10, 1.0)
    alone = average_uncertainty(flat, widths, 0.0, 1.0).mean_absolute_cents
    assert average_uncertainty(flat, widths, 5.0, 1.0).mean_absolute_cents == pytest.approx(
        np.hypot(alone, 5.0), abs=0.05
    )
    both = np.tile([-20.0, 20.0], 5)  # here a shift of the A cancels out
    assert average_uncertainty(both, widths, 5.0, 1.0).mean_absolute_cents < 1.0


def test_missing_notes_make_an_average_less_sure() -> None:
    cents = np.random.default_rng(1).normal(0.0, 10.0, 20)
    widths = np.full(20, 1.0)
    whole = average_uncertainty(cents, widths, 0.0, 1.0)
    half = average_uncertainty(cents, widths, 0.0, 0.5)
    assert half.mean_absolute_cents > 3 * whole.mean_absolute_cents
    assert half.precision_cents > whole.precision_cents


def test_a_known_drift_comes_back_with_its_interval() -> None:
    """A player going sharp by so many cents a minute, with a scatter of 8 cents."""
    rng = np.random.default_rng(5)
    held = 0
    for trial in range(400):
        rate = float(rng.uniform(-10, 10))
        time_s = np.sort(rng.uniform(0, 120, 80))
        cents = rate * time_s / 60 + rng.normal(0, 8, 80)
        if trial % 2:
            cents[rng.integers(0, 80, 3)] += 35.0  # a few notes quite out
        found = measure_drift(time_s, cents)
        assert isinstance(found, Measured)
        held += abs(found.value.cents_per_min - rate) <= found.value.uncertainty_cents_per_min
    print(f"drift interval holds {held / 4:.1f} %")
    assert 0.92 <= held / 400 <= 0.98


@pytest.mark.parametrize(
    ("count", "seconds", "reason"), [(5, 60.0, Reason.TOO_FEW_NOTES), (20, 6.0, Reason.TOO_SHORT)]
)
def test_too_little_for_a_drift(count: int, seconds: float, reason: Reason) -> None:
    found = measure_drift(np.linspace(0, seconds, count), np.zeros(count))
    assert isinstance(found, NotMeasurable)
    assert found.reason is reason
