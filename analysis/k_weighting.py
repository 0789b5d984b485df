"""The frequency weighting of ITU-R BS.1770, at any sample rate.

The recommendation prints its two filter sections for 48 kHz only. Each is taken
back to its analogue prototype by inverting the bilinear transform about the
section's own corner frequency, and from there to the wanted rate, so that 48 kHz
gives the printed coefficients and every other rate keeps the corner where it is.
"""

import math

import numpy as np

from analysis.results import FloatArray

PUBLISHED_RATE_HZ = 48_000
LOWEST_RATE_HZ = 4_000

# ITU-R BS.1770-4, tables 1 and 2: b0 b1 b2 a0 a1 a2 at 48 kHz.
PUBLISHED_SECTIONS: FloatArray = np.array(
    [
        (1.53512485958697, -2.69169618940638, 1.19839281085285),
        (1.0, -1.69065929318241, 0.73248077421585),
        (1.0, -2.0, 1.0),
        (1.0, -1.99004745483398, 0.99007225036621),
    ]
).reshape(2, 6)


def k_weighting_sections(sample_rate_hz: float) -> FloatArray:
    """Second-order sections of the K-weighting filter.

    Parameters
    ----------
    sample_rate_hz : float
        At least 4000.

    Returns
    -------
    (2, 6) array
        High shelf, then high-pass, in the layout of :func:`analysis.sections.in_sections`.

    Raises
    ------
    ValueError
        If the rate is too low to hold the shelf.

    References
    ----------
    ITU-R BS.1770-4, annex 1.
    """
    if not sample_rate_hz >= LOWEST_RATE_HZ:
        raise ValueError(f"K-weighting needs at least {LOWEST_RATE_HZ} Hz, got {sample_rate_hz}")
    return np.array([_moved_section(section, sample_rate_hz) for section in PUBLISHED_SECTIONS])


def _moved_section(section: FloatArray, sample_rate_hz: float) -> FloatArray:
    """One 48 kHz section moved to another rate, its corner frequency kept."""
    if sample_rate_hz == PUBLISHED_RATE_HZ:
        return section.copy()
    b0, b1, b2, a0, a1, a2 = (float(value) for value in section)
    # With s = j at the corner the denominator is s^2 + s/Q + 1, which fixes tan(pi f / fs).
    tangent = math.sqrt((a0 + a1 + a2) / (a0 - a1 + a2))
    corner_hz = math.atan(tangent) * PUBLISHED_RATE_HZ / math.pi
    numerator = _analogue(b0, b1, b2, tangent)
    denominator = _analogue(a0, a1, a2, tangent)
    moved_tangent = math.tan(math.pi * corner_hz / sample_rate_hz)
    moved_b = _digital(*numerator, moved_tangent)
    moved_a = _digital(*denominator, moved_tangent)
    # The high-pass is printed with an unscaled numerator (1, -2, 1); that small
    # pass-band gain of the 48 kHz filter belongs to the loudness scale, so it is kept.
    return np.array([*moved_b, *moved_a]) / moved_a[0]


def _analogue(c0: float, c1: float, c2: float, tangent: float) -> tuple[float, float, float]:
    """Polynomial in s (highest power first) of a digital one, s = j at the corner."""
    return (
        (c0 - c1 + c2) * tangent**2 / 4,
        (c0 - c2) * tangent / 2,
        (c0 + c1 + c2) / 4,
    )


def _digital(s2: float, s1: float, s0: float, tangent: float) -> tuple[float, float, float]:
    """Polynomial in 1/z of an analogue one; the inverse of :func:`_analogue`."""
    c = 1.0 / tangent
    return (s2 * c * c + s1 * c + s0, 2 * (s0 - s2 * c * c), s2 * c * c - s1 * c + s0)
