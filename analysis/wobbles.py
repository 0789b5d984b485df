"""A sinusoid with a straight line under it, fitted to a curve by least squares."""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.compiled import compiled, compiled_for_sums

FloatArray = NDArray[np.float64]

# A span of T seconds tells rates 1 / T Hz apart; a quarter of that finds the valley.
_RATE_STEP_SPANS: Final = 0.25
_START_STEP_S: Final = 0.03
_LATEST_START_S: Final = 0.3
_LATEST_START_SHARE: Final = 0.5
_WORTH_A_LATER_START: Final = 0.9
_MOST_SAMPLES: Final = 256


@dataclass(frozen=True, slots=True)
class Wobble:
    """The fit: ``curve = centre + slope (t - middle) + extent sin(2 pi rate t + phase)``.

    Attributes
    ----------
    rate_hz, extent : float
        The sinusoid; the extent is half of peak to peak.
    centre, slope_per_s : float
        The line, at the middle of the time span, and its slope.
    start_s : float
        When the sinusoid sets in, from the first sample; 0 where it always was there.
    explained : float
        Share (0 to 1) of the variance around the line that the sinusoid explains.
    cycles : float
        How many turns it makes.
    residual : (n,) array
        What is left.
    """

    rate_hz: float
    extent: float
    centre: float
    slope_per_s: float
    start_s: float
    explained: float
    cycles: float
    residual: FloatArray


@compiled_for_sums
def _unexplained(
    t: FloatArray, curve: FloatArray, rates: FloatArray, starts: FloatArray, left: FloatArray
) -> None:
    """Fill ``left[i, j]`` with the squares that rate i, setting in at start j, leaves.

    Sine and cosine are turned back to where they set in by the sums of angles; before it
    the curve stays where the cosine begins. The sums are plain numbers and not elements of
    an array: only so are several terms added at a time.
    """
    n = len(t)
    since, sines, cosines, late = np.empty(n), np.empty(n), np.empty(n), np.empty(n)
    t1 = tt = y1 = yt = yy = 0.0
    for k in range(n):
        since[k] = t[k] - t[0]
        t1 += t[k]
        tt += t[k] * t[k]
        y1 += curve[k]
        yt += curve[k] * t[k]
        yy += curve[k] * curve[k]
    for i in range(len(rates)):
        speed = 2.0 * np.pi * rates[i]
        for k in range(n):
            sines[k] = np.sin(speed * since[k])
            cosines[k] = np.cos(speed * since[k])
        for j in range(len(starts)):
            sine, cosine = np.sin(speed * starts[j]), np.cos(speed * starts[j])
            for k in range(n):
                late[k] = 1.0 if since[k] >= starts[j] else 0.0
            a1 = at = aa = ab = b1 = bt = bb = ya = yb = 0.0
            for k in range(n):
                a = late[k] * (sines[k] * cosine - cosines[k] * sine)
                b = late[k] * (cosines[k] * cosine + sines[k] * sine - 1.0) + 1.0
                a1 += a
                at += a * t[k]
                aa += a * a
                ab += a * b
                ya += a * curve[k]
                b1 += b
                bt += b * t[k]
                bb += b * b
                yb += b * curve[k]
            normal = np.array(
                (
                    (float(n), t1, a1, b1, y1),
                    (t1, tt, at, bt, yt),
                    (a1, at, aa, ab, ya),
                    (b1, bt, ab, bb, yb),
                )
            )
            left[i, j] = yy - _explained(normal)


@compiled
def _explained(normal: FloatArray) -> float:
    """Return the squares that the columns explain whose products are given.

    Gauss without pivoting: the matrix is positive definite, a little is added to its
    diagonal against rates that the span cannot tell from the line.
    """
    squares = 0.0
    for a in range(4):
        normal[a, a] *= 1.0 + 1e-9
        pivot = normal[a, a] + 1e-12
        squares += normal[a, 4] * normal[a, 4] / pivot
        for b in range(a + 1, 4):
            factor = normal[b, a] / pivot
            for c in range(a, 5):
                normal[b, c] -= factor * normal[a, c]
    return squares


def fit_wobble(
    time_s: FloatArray, curve: FloatArray, slowest_hz: float, fastest_hz: float
) -> Wobble | None:
    """Fit a line and the best sinusoid between two rates, which may set in late.

    Players often begin a note without vibrato; a sinusoid over the whole note would then
    pull the centre towards the side the vibrato begins on.

    Parameters
    ----------
    time_s, curve : (n,) arrays
        Finite samples, times rising.
    slowest_hz, fastest_hz : float
        Range of rates.

    Returns
    -------
    Wobble or None
        ``None`` with fewer than eight samples or under one turn of the fastest rate.
    """
    if len(time_s) < 8 or time_s[-1] - time_s[0] < 1.0 / fastest_hz:
        return None
    t = time_s - 0.5 * (time_s[0] + time_s[-1])
    span_s = float(t[-1] - t[0])
    slowest_hz = min(max(slowest_hz, 1.0 / span_s), fastest_hz)
    level = float(np.mean(curve))
    step_hz = _RATE_STEP_SPANS / span_s
    rates = np.arange(slowest_hz, fastest_hz + step_hz, step_hz)
    starts = np.arange(0.0, min(_LATEST_START_S, _LATEST_START_SHARE * span_s), _START_STEP_S)
    stride = -(-len(t) // _MOST_SAMPLES)
    few, few_of_curve = t[::stride].copy(), (curve - level)[::stride].copy()
    left = np.empty((len(rates), len(starts)))
    _unexplained(few, few_of_curve, rates, starts, left)
    best, late = np.unravel_index(int(np.argmin(left)), left.shape)
    at_once = int(np.argmin(left[:, 0]))
    if left[best, late] > _WORTH_A_LATER_START * left[at_once, 0]:
        best, late = np.intp(at_once), np.intp(0)
    near_rates = rates[best] + step_hz * np.linspace(-0.9, 0.9, 13)
    later = _START_STEP_S * np.linspace(-0.8, 0.8, 7)
    near_starts = starts[late] + later if late else np.zeros(1)
    left = np.empty((len(near_rates), len(near_starts)))
    _unexplained(few, few_of_curve, near_rates, near_starts, left)
    best, late = np.unravel_index(int(np.argmin(left)), left.shape)
    return _fitted(t, curve, float(near_rates[best]), float(near_starts[late]))


def _fitted(t: FloatArray, curve: FloatArray, rate_hz: float, start_s: float) -> Wobble:
    since = t - t[0] - start_s
    phase = 2.0 * np.pi * rate_hz * since
    sine = np.where(since >= 0.0, np.sin(phase), 0.0)
    cosine = np.where(since >= 0.0, np.cos(phase), 1.0)
    columns = np.column_stack((np.ones_like(t), t, sine, cosine))
    weights = np.linalg.lstsq(columns, curve, rcond=None)[0]
    residual = curve - columns @ weights
    from_middle, straight = t - t.mean(), curve - curve.mean()
    straight -= (from_middle @ straight / (from_middle @ from_middle)) * from_middle
    total = float(straight @ straight)
    return Wobble(
        rate_hz=rate_hz,
        extent=float(np.hypot(weights[2], weights[3])),
        centre=float(weights[0]),
        slope_per_s=float(weights[1]),
        start_s=start_s,
        explained=1.0 - float(residual @ residual) / total if total > 0.0 else 0.0,
        cycles=rate_hz * (float(t[-1] - t[0]) - start_s),
        residual=residual,
    )
