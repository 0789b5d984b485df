"""Vibrato: a regular wobble of the pitch, its rate and extent."""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.results import Measured, NotMeasurable, Provenance, Reason, Vibrato
from analysis.wobbles import Wobble, fit_wobble

FloatArray = NDArray[np.float64]

ALGORITHM: Final = "vibrato-2"

SLOWEST_HZ: Final = 3.5
FASTEST_HZ: Final = 9.5
FEWEST_CYCLES: Final = 2.0
_SURE_BY_SPAN_S: Final = 0.4
_SMALLEST_EXTENT_CENTS: Final = 4.0
_LEAST_EXPLAINED: Final = 0.5
_LEAST_EXPLAINED_OF_SHORT: Final = 0.75
_LEVEL_LED_DB_PER_CENT: Final = 0.35
_LEVEL_LED_DB: Final = 3.0
_PROVENANCE: Final = Provenance(ALGORITHM)


def pitch_wobble(time_s: FloatArray, cents: FloatArray) -> Wobble | None:
    """Fit a wobble at the rates that vibrato has, 3.5 to 9.5 Hz."""
    return fit_wobble(time_s, cents, SLOWEST_HZ, FASTEST_HZ)


def measure_vibrato(
    time_s: FloatArray,
    level_dbfs: FloatArray,
    wobble: Wobble | None,
) -> Measured[Vibrato | None] | NotMeasurable:
    """Measure the vibrato of the steady part of a note.

    Parameters
    ----------
    time_s, level_dbfs : (n,) arrays
        Steady frames: times and levels.
    wobble : Wobble or None
        :func:`pitch_wobble` of the same frames, in cents; ``None`` where a straight line
        describes them as well.

    Returns
    -------
    Measured of Vibrato or None, or NotMeasurable
        ``Measured(None)`` means no vibrato; not measurable is a steady part too short to
        tell, or a wobble of the pitch that only follows a wobble of the level.
    """
    span_s = float(time_s[-1] - time_s[0]) if len(time_s) else 0.0
    least = _LEAST_EXPLAINED if span_s >= _SURE_BY_SPAN_S else _LEAST_EXPLAINED_OF_SHORT
    if wobble is None or wobble.extent < _SMALLEST_EXTENT_CENTS or wobble.explained < least:
        if span_s >= _SURE_BY_SPAN_S:
            return Measured(None, _PROVENANCE)
        return _too_short("The note is too short to tell vibrato.")
    if wobble.cycles < FEWEST_CYCLES:
        return _too_short("The note holds too few turns of its vibrato.")
    if _level_led(time_s, level_dbfs, wobble):
        return NotMeasurable(
            Reason.LEVEL_LED,
            "The pitch only follows a wobble of the level, as a wolf note or a beat does.",
            _PROVENANCE,
        )
    return Measured(Vibrato(wobble.rate_hz, wobble.extent), _PROVENANCE)


def _too_short(sentence: str) -> NotMeasurable:
    return NotMeasurable(Reason.TOO_SHORT, sentence, _PROVENANCE)


def _level_led(time_s: FloatArray, level_dbfs: FloatArray, wobble: Wobble) -> bool:
    level = fit_wobble(time_s, level_dbfs, wobble.rate_hz - 0.4, wobble.rate_hz + 0.4)
    if level is None or level.explained < _LEAST_EXPLAINED:
        return False
    return level.extent >= max(_LEVEL_LED_DB, _LEVEL_LED_DB_PER_CENT * wobble.extent)
