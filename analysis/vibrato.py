"""Vibrato: a regular wobble of the pitch, its rate and extent."""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.results import Measured, NotMeasurable, Provenance, Reason, Vibrato
from analysis.windows import vibrato_transmission

FloatArray = NDArray[np.float64]

ALGORITHM: Final = "vibrato-1"

SLOWEST_HZ: Final = 3.5
FASTEST_HZ: Final = 9.5
_RATE_STEP_HZ: Final = 0.1
FEWEST_CYCLES: Final = 2.0
_SMALLEST_EXTENT_CENTS: Final = 4.0
_LEAST_EXPLAINED: Final = 0.5
_LEVEL_LED_DB_PER_CENT: Final = 0.35
_LEVEL_LED_DB: Final = 3.0
_PROVENANCE: Final = Provenance(ALGORITHM)


@dataclass(frozen=True, slots=True)
class Wobble:
    """A sinusoid with a straight line under it, fitted to a curve.

    ``centre`` is the line at the middle of the time span, ``slope_per_s`` its slope,
    ``extent`` half of peak to peak, ``explained`` the share (0 to 1) of the variance
    around the line that the sinusoid explains, ``residual`` (n,) what is left.
    """

    rate_hz: float
    extent: float
    centre: float
    slope_per_s: float
    explained: float
    cycles: float
    residual: FloatArray


def fit_wobble(
    time_s: FloatArray,
    curve: FloatArray,
    slowest_hz: float = SLOWEST_HZ,
    fastest_hz: float = FASTEST_HZ,
) -> Wobble | None:
    """Fit a line and the best sinusoid between two rates by least squares.

    Parameters
    ----------
    time_s, curve : (n,) arrays
        Finite samples, times rising.
    slowest_hz, fastest_hz : float
        Range of rates.

    Returns
    -------
    Wobble or None
        ``None`` with fewer than eight samples or under one cycle of the fastest rate.
    """
    if len(time_s) < 8 or time_s[-1] - time_s[0] < 1.0 / fastest_hz:
        return None
    middle = 0.5 * float(time_s[0] + time_s[-1])
    t = time_s - middle
    span = float(t[-1] - t[0])
    line = np.column_stack((np.ones_like(t), t))
    straight = curve - line @ np.linalg.lstsq(line, curve, rcond=None)[0]
    total = float(straight @ straight)
    slowest_hz = max(slowest_hz, 1.0 / span)
    rates = np.arange(slowest_hz, fastest_hz + _RATE_STEP_HZ, _RATE_STEP_HZ)
    left = [_fitted(t, curve, rate)[1] for rate in rates]
    best = int(np.argmin(left))
    rate = float(rates[best])
    if 0 < best < len(rates) - 1:
        bend = left[best - 1] - 2.0 * left[best] + left[best + 1]
        if bend > 0.0:
            rate += 0.5 * _RATE_STEP_HZ * (left[best - 1] - left[best + 1]) / bend
    weights, remaining, residual = _fitted(t, curve, rate)
    return Wobble(
        rate_hz=rate,
        extent=float(np.hypot(weights[2], weights[3])),
        centre=float(weights[0]),
        slope_per_s=float(weights[1]),
        explained=1.0 - remaining / total if total > 0.0 else 0.0,
        cycles=rate * span,
        residual=residual,
    )


def _fitted(
    t: FloatArray, curve: FloatArray, rate_hz: float
) -> tuple[FloatArray, float, FloatArray]:
    phase = 2.0 * np.pi * rate_hz * t
    columns = np.column_stack((np.ones_like(t), t, np.sin(phase), np.cos(phase)))
    weights = np.linalg.lstsq(columns, curve, rcond=None)[0]
    residual = curve - columns @ weights
    return weights, float(residual @ residual), residual


def measure_vibrato(
    time_s: FloatArray,
    cents: FloatArray,
    level_dbfs: FloatArray,
    *,
    window_s: float = 0.0,
    period_s: float = 0.0,
) -> Measured[Vibrato | None] | NotMeasurable:
    """Measure the vibrato of the steady part of a note.

    Parameters
    ----------
    time_s, cents, level_dbfs : (n,) arrays
        Steady frames: times, pitch against any reference, level.
    window_s, period_s : float
        Analysis window and period of the note: the extent is corrected for what the
        window flattened. 0 leaves it as it is.

    Returns
    -------
    Measured of Vibrato or None, or NotMeasurable
        ``Measured(None)`` means no vibrato; not measurable is a steady part too short to
        tell, or a wobble of the pitch that only follows a wobble of the level.
    """
    wobble = fit_wobble(time_s, cents)
    span_s = float(time_s[-1] - time_s[0]) if len(time_s) else 0.0
    if wobble is None or span_s < FEWEST_CYCLES / 5.0:
        return NotMeasurable(
            Reason.TOO_SHORT, "The note is too short to tell vibrato.", _PROVENANCE
        )
    shown = wobble.extent >= _SMALLEST_EXTENT_CENTS and wobble.explained >= _LEAST_EXPLAINED
    if not shown:
        return Measured(None, _PROVENANCE)
    if wobble.cycles < FEWEST_CYCLES:
        return NotMeasurable(
            Reason.TOO_SHORT, "The note holds too few turns of its vibrato.", _PROVENANCE
        )
    if _level_led(time_s, level_dbfs, wobble):
        return NotMeasurable(
            Reason.LEVEL_LED,
            "The pitch only follows a wobble of the level, as a wolf note or a beat does.",
            _PROVENANCE,
        )
    passed = vibrato_transmission(wobble.rate_hz, window_s, period_s) if window_s > 0.0 else 1.0
    return Measured(Vibrato(wobble.rate_hz, wobble.extent / passed), _PROVENANCE)


def _level_led(time_s: FloatArray, level_dbfs: FloatArray, wobble: Wobble) -> bool:
    level = fit_wobble(time_s, level_dbfs, wobble.rate_hz - 0.4, wobble.rate_hz + 0.4)
    if level is None or level.explained < _LEAST_EXPLAINED:
        return False
    return level.extent >= _LEVEL_LED_DB and level.extent > _LEVEL_LED_DB_PER_CENT * wobble.extent
