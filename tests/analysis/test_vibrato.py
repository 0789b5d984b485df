import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from analysis.results import Measured, NotMeasurable, Reason
from analysis.vibrato import measure_vibrato, pitch_wobble
from analysis.windows import WindowPlan
from analysis.wobbles import fit_wobble


def curve(
    seconds: float, rate: float, extent: float, centre: float = 0.0, start: float = 0.0
) -> tuple[np.ndarray, np.ndarray]:
    t = np.arange(0.0, seconds, 0.005) + 1.0
    since = np.maximum(t - 1.0 - start, 0.0)
    return t, centre + extent * np.sin(2 * np.pi * rate * since)


@settings(max_examples=60, deadline=None)
@given(
    rate=st.floats(4.0, 8.5),
    extent=st.floats(8.0, 100.0),
    centre=st.floats(-30.0, 30.0),
    start=st.floats(0.0, 0.2),
    cycles=st.floats(3.0, 12.0),
)
def test_rate_extent_and_centre_come_back(
    rate: float, extent: float, centre: float, start: float, cycles: float
) -> None:
    t, cents = curve(start + cycles / rate, rate, extent, centre, start)
    wobble = pitch_wobble(t, cents)
    assert wobble is not None
    assert wobble.rate_hz == pytest.approx(rate, abs=0.2)
    assert wobble.extent == pytest.approx(extent, abs=max(1.5, 0.1 * extent))
    # a late start is found to 5 ms, and what that leaves is a small part of the extent
    assert wobble.centre == pytest.approx(centre, abs=max(0.5, 0.06 * extent))


def test_a_line_alone_has_little_to_explain() -> None:
    t = np.arange(0.0, 1.0, 0.005)
    wobble = fit_wobble(t, 3.0 * t + 1.0, 3.5, 9.5)
    assert wobble is not None
    assert wobble.extent < 0.01
    assert wobble.slope_per_s == pytest.approx(3.0, abs=0.05)


def test_too_little_to_fit() -> None:
    assert fit_wobble(np.arange(4) * 0.005, np.zeros(4), 3.5, 9.5) is None
    assert fit_wobble(np.arange(12) * 0.005, np.zeros(12), 3.5, 9.5) is None


def test_a_wobble_that_the_level_leads_is_no_vibrato() -> None:
    """Beats and wolf notes: the level swings by many decibels, the pitch by few cents."""
    t, cents = curve(1.2, 5.0, 8.0)
    level = -20.0 + 6.0 * np.sin(2 * np.pi * 5.0 * (t - 1.0) + 0.4)
    result = measure_vibrato(t, level, pitch_wobble(t, cents))
    assert isinstance(result, NotMeasurable)
    assert result.reason is Reason.LEVEL_LED
    # a true vibrato swings the level as well, but by little against its cents
    t, cents = curve(1.2, 5.0, 30.0)
    result = measure_vibrato(t, -20.0 + 0.1 * (level + 20.0), pitch_wobble(t, cents))
    assert isinstance(result, Measured)


def test_the_answers_for_short_and_still_notes() -> None:
    t, cents = curve(0.25, 6.0, 20.0)
    short = measure_vibrato(t, np.zeros_like(t), pitch_wobble(t, cents))
    assert isinstance(short, NotMeasurable)
    assert short.reason is Reason.TOO_SHORT
    rng = np.random.default_rng(0)
    still = np.arange(0.0, 1.0, 0.005), rng.normal(0.0, 1.0, 200)
    result = measure_vibrato(still[0], np.zeros(200), pitch_wobble(*still))
    assert isinstance(result, Measured)
    assert result.value is None


def test_windows_shorten_by_octaves() -> None:
    plan = WindowPlan(30.0)
    assert plan.length_s(33.0) == pytest.approx(0.1)
    assert plan.length_s(75.0) == pytest.approx(0.05)
    assert plan.length_s(300.0) == pytest.approx(0.025)
    assert plan.length_s(3000.0) == pytest.approx(0.025)
    np.testing.assert_array_equal(plan.halvings_for(np.array([np.nan, 33.0, 75.0])), [0, 0, 1])
