"""The intervals beside drift and steadiness, against beats whose truth is known exactly."""

import numpy as np
import pytest

from analysis.pulse import Pulse
from analysis.results import Tempo
from analysis.tempo import ONSET_SD_S, describe_pulse


def described(beat_s: np.ndarray) -> Tempo:
    beats = np.asarray(beat_s, dtype=np.float64)
    return describe_pulse(
        Pulse(
            beat_s=beats,
            is_played=np.ones(len(beats), dtype=np.bool_),
            onset_s=beats,
            position_beats=np.arange(len(beats), dtype=np.float64),
            anchor="given",
        )
    )


def beats(rng: np.random.Generator, count: int, bpm: float, drift: float, cv: float) -> np.ndarray:
    times = [0.0]
    while len(times) < count:
        now = bpm + drift * times[-1] / 60
        times.append(times[-1] + 60 / now * (1 + rng.normal(0, cv)))
    return np.array(times)


@pytest.mark.parametrize("count", [16, 40, 100])
@pytest.mark.parametrize("cv", [0.0, 0.02, 0.05])
def test_the_interval_of_the_drift_holds_the_trend(count: int, cv: float) -> None:
    """At least 92 of 100; wider where the beats do not wander."""
    rng = np.random.default_rng(1)
    held = 0
    for _ in range(150):
        bpm, drift = rng.uniform(60, 120), rng.uniform(-6, 6)
        times = beats(rng, count, bpm, drift, cv) + rng.normal(0, ONSET_SD_S, count)
        found = described(times)
        assert found.drift_uncertainty_bpm_per_min is not None
        held += abs(found.drift_bpm_per_min - drift) <= found.drift_uncertainty_bpm_per_min
    print(f"{count} beats, CV {100 * cv:g} %: {held / 1.5:.0f} % held")
    assert held >= 0.92 * 150


@pytest.mark.parametrize("cv", [0.0, 0.005, 0.02, 0.05])
def test_the_interval_of_the_steadiness_holds_what_was_played(cv: float) -> None:
    rng = np.random.default_rng(2)
    held = 0
    for _ in range(200):
        times = beats(rng, 33, rng.uniform(60, 160), 0.0, cv)
        interval = np.diff(times)
        truth = 100 * interval.std(ddof=1) / interval.mean()
        found = described(times + rng.normal(0, ONSET_SD_S, len(times)))
        assert found.steadiness_uncertainty_percent is not None
        held += abs(found.steadiness_cv_percent - truth) <= found.steadiness_uncertainty_percent
    print(f"CV {100 * cv:g} %: {held / 2:.0f} % held")
    assert held >= 0.92 * 200
