"""Analysis windows and what they do to a pitch that moves."""

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]


def hann_window(length: int) -> FloatArray:
    """Return a Hann window of ``length`` samples whose ends lie just outside it."""
    return 0.5 - 0.5 * np.cos(2.0 * np.pi * (np.arange(length) + 0.5) / length)


def window_autocorrelation(window: FloatArray, lag_count: int) -> FloatArray:
    """Return the normalised autocorrelation of a window at lags 0 to ``lag_count - 1``."""
    size = 1 << int(len(window) + lag_count).bit_length()
    spectrum = np.fft.rfft(window, size)
    correlation = np.fft.irfft(spectrum.real**2 + spectrum.imag**2, size)[:lag_count]
    return np.asarray(correlation / correlation[0], dtype=np.float64)


def vibrato_transmission(rate_hz: float, window_s: float, lag_s: float) -> float:
    """Return what share of a pitch wobble's extent a windowed autocorrelation passes on.

    The lag of the autocorrelation's maximum follows the pitch averaged twice: over the
    product of the window with itself one lag on, and over the lag itself (one period is
    the time the phase takes to advance by a turn).

    Parameters
    ----------
    rate_hz : float
        Rate of the wobble.
    window_s : float
        Length of the Hann window.
    lag_s : float
        The period measured.

    Returns
    -------
    float
        0 to 1; 1 means that nothing is lost.
    """
    length = 2048
    window = hann_window(length)
    shift = int(np.clip(round(lag_s / window_s * length), 0, length - 1))
    product = window[: length - shift] * window[shift:]
    time_s = (np.arange(len(product)) - (len(product) - 1) / 2.0) * (window_s / length)
    over_window = float(np.sum(product * np.cos(2.0 * np.pi * rate_hz * time_s)) / product.sum())
    return over_window * float(np.sinc(rate_hz * lag_s))
