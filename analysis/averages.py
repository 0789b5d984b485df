"""How sure the averages of a take are, and whether its pitch level moves.

The notes of a take are all there is of it, so an average over all of them is as sure
as their pitches are. Where a share of them could not be measured the average stands for
the missing ones too: it then has the interval of a sample drawn without replacement,
the spread over the root of the count times the root of the share that is missing
(W. G. Cochran, Sampling Techniques, the finite population correction; from memory).
That takes the missing notes to be played like the measured ones, which fast notes need
not be: the measured share is shown beside every average.
"""

from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.special import ndtr, stdtrit

from analysis.results import (
    AverageUncertainty,
    Measured,
    NotMeasurable,
    Provenance,
    Reason,
    ReferenceDrift,
)

FloatArray = NDArray[np.float64]

ALGORITHM: Final = "averages-1"

FEWEST_FOR_DRIFT: Final = 8
SHORTEST_FOR_DRIFT_S: Final = 10.0

_HALF_95: Final = 1.96
_STRAY_DEVIATIONS: Final = 3.5
_LEAST_WIDTH_CENTS: Final = 1e-6


def uncertainty_of_mean(
    values: FloatArray, half_widths: FloatArray, measured_share: float
) -> float:
    """Half of the 95 % interval of a mean.

    Parameters
    ----------
    values, half_widths : (n,) arrays
        The measured values and half of their 95 % intervals, independent of each other.
    measured_share : float
        Share of the population that was measured, 0 to 1.
    """
    own = float(np.sqrt(np.sum(half_widths**2))) / len(values)
    return float(
        np.hypot(own, _of_missing(float(np.std(values, ddof=1)), len(values), measured_share))
    )


def average_uncertainty(
    cents: FloatArray,
    half_widths: FloatArray,
    reference_half_width: float,
    measured_share: float,
) -> AverageUncertainty:
    """Half 95 % intervals of the averages of a take.

    Parameters
    ----------
    cents, half_widths : (n,) arrays
        Deviations of at least two notes and half of their 95 % intervals, without the
        part they all share.
    reference_half_width : float
        That part: half of the 95 % interval of an estimated A; 0 where it was entered.
    measured_share : float
        Share of the notes that were measured, 0 to 1.

    Returns
    -------
    AverageUncertainty
        For the mean size and the spread the notes' errors also add to the value itself,
        which is part of the interval.
    """
    size = np.abs(cents)
    sigma = np.maximum(half_widths / _HALF_95, _LEAST_WIDTH_CENTS)
    lean = abs(float(np.mean(np.sign(cents)))) * reference_half_width
    own = float(np.hypot(uncertainty_of_mean(size, half_widths, measured_share), lean))
    return AverageUncertainty(
        mean_absolute_cents=own + float(np.mean(_inflation(size, sigma))),
        precision_cents=_spread_uncertainty(cents, sigma, measured_share),
        within_10_cents=_share_uncertainty(
            cents, sigma, reference_half_width, 10.0, measured_share
        ),
        within_25_cents=_share_uncertainty(
            cents, sigma, reference_half_width, 25.0, measured_share
        ),
    )


def _of_missing(spread: float, count: int, measured_share: float) -> float:
    """Half of the 95 % interval that notes which were not measured leave open."""
    student = float(stdtrit(count - 1, 0.975))
    return float(student * spread / np.sqrt(count) * np.sqrt(max(0.0, 1.0 - measured_share)))


def _inflation(size: FloatArray, sigma: FloatArray) -> FloatArray:
    """By how much errors make the mean size of values larger (mean of a folded normal)."""
    ratio = size / sigma
    density = np.exp(-(ratio**2) / 2.0) / np.sqrt(2.0 * np.pi)
    return np.asarray(2.0 * (sigma * density - size * ndtr(-ratio)))


def _spread_uncertainty(cents: FloatArray, sigma: FloatArray, measured_share: float) -> float:
    count = len(cents)
    spread = float(np.std(cents, ddof=1))
    if spread == 0.0:
        return _HALF_95 * float(np.sqrt(np.mean(sigma**2)))
    from_mean = cents - np.mean(cents)
    own = _HALF_95 * float(np.sqrt(np.sum((from_mean * sigma) ** 2))) / (spread * (count - 1))
    added = spread - float(np.sqrt(max(0.0, spread**2 - float(np.mean(sigma**2)))))
    # the standard error of a standard deviation is its own over the root of twice n - 1
    missing = _of_missing(spread * (count / (2.0 * (count - 1))) ** 0.5, count, measured_share)
    return float(np.hypot(own, missing)) + added


def _share_uncertainty(
    cents: FloatArray, sigma: FloatArray, reference: float, limit: float, measured_share: float
) -> float:
    def share(shift: float) -> float:
        return float(np.mean(np.abs(cents + shift) <= limit))

    here = share(0.0)
    chance = ndtr((limit - cents) / sigma) - ndtr((-limit - cents) / sigma)
    own = _HALF_95 * float(np.sqrt(np.sum(chance * (1.0 - chance)))) / len(cents)
    crossed = abs(float(np.mean(chance)) - here)
    shifted = max(abs(share(shift) - here) for shift in (-reference, reference))
    # two more notes on either side, so that none of a few is not taken for none of all
    # (A. Agresti and B. A. Coull, The American Statistician 52 (1998) 119; from memory)
    nearer = (here * len(cents) + 2.0) / (len(cents) + 4.0)
    missing = _of_missing(float(np.sqrt(nearer * (1.0 - nearer))), len(cents), measured_share)
    return float(np.linalg.norm((own, shifted, missing))) + crossed


def measure_drift(
    time_s: FloatArray, cents: FloatArray
) -> Measured[ReferenceDrift] | NotMeasurable:
    """Measure how the pitch level moves through a take.

    A straight line through the notes' deviations, those farther from it than 3.5
    standard deviations (from the median size) set aside; its interval is Student's and
    so covers the player's own scatter from note to note.

    Parameters
    ----------
    time_s, cents : (n,) arrays
        Where the notes lie and how far they are off their targets.

    Returns
    -------
    Measured of ReferenceDrift, or NotMeasurable
        ``TOO_FEW_NOTES`` under eight notes, ``TOO_SHORT`` under ten seconds.
    """
    provenance = Provenance(ALGORITHM, {"stray_deviations": _STRAY_DEVIATIONS})
    if len(time_s) < FEWEST_FOR_DRIFT:
        sentence = f"Fewer than {FEWEST_FOR_DRIFT} measured notes show no movement of the pitch."
        return NotMeasurable(Reason.TOO_FEW_NOTES, sentence, provenance)
    if float(np.ptp(time_s)) < SHORTEST_FOR_DRIFT_S:
        sentence = f"In less than {SHORTEST_FOR_DRIFT_S:g} seconds no movement of the pitch shows."
        return NotMeasurable(Reason.TOO_SHORT, sentence, provenance)
    minutes = np.asarray(time_s, dtype=np.float64) / 60.0
    kept = np.ones(len(minutes), dtype=np.bool_)
    for _ in range(2):
        slope, level = np.polyfit(minutes[kept], cents[kept], 1)
        residual = cents - (level + slope * minutes)
        scale = max(1.4826 * float(np.median(np.abs(residual))), _LEAST_WIDTH_CENTS)
        inside = np.abs(residual) <= _STRAY_DEVIATIONS * scale
        if np.count_nonzero(inside) >= FEWEST_FOR_DRIFT:
            kept = inside
    slope, level = np.polyfit(minutes[kept], cents[kept], 1)
    residual = (cents - (level + slope * minutes))[kept]
    freedom = len(residual) - 2
    about = minutes[kept] - np.mean(minutes[kept])
    error = float(np.sqrt(residual @ residual / freedom / (about @ about)))
    width = float(stdtrit(freedom, 0.975)) * error
    return Measured(ReferenceDrift(float(slope), width), provenance)
