"""Filtering: to a lower rate, to a higher one, and by short parabolas.

``scipy.signal`` has all of these, but brings half of scipy along, which takes longer to
load than a minute of sound takes to measure. Tests hold each function to the one of
``scipy.signal`` that it stands for.
"""

from functools import lru_cache

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]
AnyFloat = NDArray[np.floating]


def low_pass(half_taps: int, cutoff: float, kaiser_beta: float) -> FloatArray:
    """Design a linear-phase low-pass: a sinc in a Kaiser window, gain 1 at 0 Hz.

    Parameters
    ----------
    half_taps : int
        Taps on either side of the middle one.
    cutoff : float
        Where the gain is one half, as a share of half the rate, 0 to 1.
    kaiser_beta : float
        Shape of the window.

    Returns
    -------
    (2 half_taps + 1,) array
    """
    at = np.arange(-half_taps, half_taps + 1, dtype=np.float64)
    taps = cutoff * np.sinc(cutoff * at) * np.kaiser(at.size, kaiser_beta)
    return np.asarray(taps / np.sum(taps), dtype=np.float64)


def decimated(samples: AnyFloat, taps: AnyFloat, step: int) -> AnyFloat:
    """Filter, and keep every ``step``-th sample for which all taps lie on samples.

    Parameters
    ----------
    samples : (n,) array
    taps : (t,) array
        Of the same type.
    step : int

    Returns
    -------
    ((n - t) // step + 1,) array
        The first value is that of samples 0 to t - 1; empty where there are fewer samples.
    """
    if samples.size < taps.size:
        return samples[:0]
    return np.asarray(sliding_window_view(samples, taps.size)[::step] @ taps[::-1])


def interpolated(samples: FloatArray, taps: FloatArray, factor: int) -> FloatArray:
    """Filter with ``factor`` - 1 zeros between samples, where all taps lie on samples.

    Parameters
    ----------
    samples : (n,) array
    taps : (t,) array
    factor : int

    Returns
    -------
    (factor (n - ceil(t / factor) + 1),) array
        The first value is that at the sample on which the first tap comes to lie.
    """
    weights = weights_by_phase(taps, factor)
    return np.asarray((sliding_window_view(samples, len(weights)) @ weights).ravel())


def weights_by_phase(taps: FloatArray, factor: int) -> FloatArray:
    """Give the weights of the samples around for each of the values that follow one of them.

    Parameters
    ----------
    taps : (t,) array
    factor : int

    Returns
    -------
    (ceil(t / factor), factor) array
    """
    padded = np.pad(taps, (0, -taps.size % factor))
    return np.ascontiguousarray(padded.reshape(-1, factor)[::-1])


def on_parabolas(values: FloatArray, length: int) -> FloatArray:
    """Lay a parabola through the values about each, and take its middle (Savitzky and Golay).

    Parameters
    ----------
    values : (n,) array
        At least ``length``.
    length : int
        Values a parabola lies through; odd.

    Returns
    -------
    (n,) array
        At either end the parabola of the first, or last, ``length`` values is followed.
    """
    half, curves = length // 2, _parabolas(length)
    inside = np.correlate(values, curves[half])
    begin, end = curves[:half] @ values[:length], curves[half + 1 :] @ values[-length:]
    return np.concatenate((begin, inside, end))


@lru_cache(maxsize=8)
def _parabolas(length: int) -> FloatArray:
    """Weights of the parabola through ``length`` values, at each of them (a row each)."""
    powers = np.vander(np.linspace(-1.0, 1.0, length), 3)
    return np.asarray(powers @ np.linalg.pinv(powers))
