import numpy as np
import pytest

from analysis.results import Measured, NotMeasurable, Reason
from analysis.rhythm import find_tempo_places, measure_evenness
from analysis.tempo import measure_tempo


def tempo_of(periods_s):
    beats = 0.5 + np.concatenate(([0.0], np.cumsum(periods_s)))
    result = measure_tempo(beats, np.ones(beats.size), 100.0, pulse_bpm=100)
    assert isinstance(result, Measured)
    return result.value


def test_places_that_rush_and_drag_are_named():
    periods = np.concatenate(
        (np.full(10, 0.6), np.full(6, 0.54), np.full(10, 0.6), np.full(6, 0.68), np.full(6, 0.6))
    )
    beats = 0.5 + np.concatenate(([0.0], np.cumsum(periods)))
    places = find_tempo_places(tempo_of(periods))
    assert [place.kind for place in places] == ["rushes", "drags"]
    rush, drag = places
    assert beats[9] < (rush.start_s + rush.end_s) / 2 < beats[17]
    assert beats[25] < (drag.start_s + drag.end_s) / 2 < beats[33]
    assert rush.change_percent > 5
    assert drag.change_percent < -5


def test_a_steady_take_has_no_such_places():
    rng = np.random.default_rng(0)
    assert find_tempo_places(tempo_of(0.6 + 0.008 * rng.standard_normal(40))) == ()


def test_evenness_is_the_spread_inside_runs():
    rng = np.random.default_rng(1)
    held = np.array([0.9, 0.7, 1.1])
    run = [0.2 + 0.012 * rng.standard_normal(200) for _ in range(3)]
    interval = np.concatenate(
        [part for pair in zip(run, held[:, None], strict=True) for part in pair]
    )
    result = measure_evenness(np.concatenate(([0.0], np.cumsum(interval))))
    assert isinstance(result, Measured)
    assert result.value.spread_ms == pytest.approx(12.0, rel=0.1)
    assert result.value.spread_percent == pytest.approx(6.0, rel=0.1)
    assert result.value.run_count == 3


def test_a_steady_change_of_tempo_is_not_unevenness():
    result = measure_evenness(np.cumsum(np.linspace(0.25, 0.2, 30)))
    assert isinstance(result, Measured)
    assert result.value.spread_ms == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize("interval", [np.full(20, 0.6), np.full(4, 0.2), np.zeros(0)])
def test_without_a_run_it_is_not_measurable(interval):
    result = measure_evenness(np.concatenate(([0.0], np.cumsum(interval))))
    assert isinstance(result, NotMeasurable)
    assert result.reason is Reason.TOO_FEW_ONSETS
