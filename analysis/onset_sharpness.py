"""How exactly an onset can be placed: the steeper the level rises, the more exactly."""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.blocks import MonoSamples
from analysis.stopping import StopQuestion, stop_if_asked

FloatArray = NDArray[np.float64]

_BEFORE_S: Final = 0.08
_AFTER_S: Final = 0.12
_STEP_S: Final = 0.001
_WINDOW_S: Final = 0.008
_PLATEAU_S: Final = 0.09
_DIP_S: Final = 0.07
_SHARPEST_S: Final = 0.001
_SHARE_OF_RISE: Final = 0.7
_LARGEST_SD_S: Final = 0.03
_LEAST_SD_S: Final = 0.002


@dataclass(frozen=True, slots=True)
class Rises:
    """How the level rises at each onset.

    ``rise_s`` is the time from 9 to 3 dB under the height it reaches, ``depth_db`` how far
    under that height it was before: a room fills the gaps between notes. Both (n,).
    """

    rise_s: FloatArray
    depth_db: FloatArray


def rises(
    source: MonoSamples, onset_s: FloatArray, *, should_stop: StopQuestion | None = None
) -> Rises:
    """Measure how the level rises at each onset.

    Parameters
    ----------
    source : MonoSamples
        The take.
    onset_s : (n,) array
    should_stop : callable, optional
        Asked for every onset.
    """
    found = np.empty((len(onset_s), 2))
    for number, time_s in enumerate(onset_s.tolist()):
        stop_if_asked(should_stop)
        found[number] = _rise(_levels(source, time_s))
    return Rises(found[:, 0], found[:, 1])


def _levels(source: MonoSamples, onset_s: float) -> FloatArray:
    """Levels in dB about an onset, 1 ms apart."""
    rate = source.sample_rate_hz
    step, width = max(round(_STEP_S * rate), 1), round(_WINDOW_S * rate)
    piece = source.read(round((onset_s - _BEFORE_S) * rate), round((onset_s + _AFTER_S) * rate))
    energy = np.concatenate(([0.0], np.cumsum(piece.astype(np.float64) ** 2)))
    starts = np.arange(0, len(piece) - width, step)
    return np.asarray(10.0 * np.log10(np.maximum(energy[starts + width] - energy[starts], 1e-14)))


def _rise(level: FloatArray) -> tuple[float, float]:
    middle = round((_BEFORE_S - 0.5 * _WINDOW_S) / _STEP_S)
    reached = level[middle : middle + round(_PLATEAU_S / _STEP_S)]
    top = float(np.max(reached))
    last = middle + int(np.argmax(reached >= top - 3.0))
    depth = top - float(np.min(level[max(last - round(_DIP_S / _STEP_S), 0) : last + 1]))
    under = np.flatnonzero(level[: last + 1] < top - 9.0)
    first = int(under[-1]) if under.size else int(np.argmin(level[: last + 1]))
    steeper = max(6.0 / max(float(level[last] - level[first]), 1.0), 1.0)
    return max((last - first) * min(steeper, 3.0) * _STEP_S, _STEP_S), depth


def onset_sd_s(found: Rises) -> float:
    """Return the scatter of the onsets of a take, from how sharply they rise.

    Parameters
    ----------
    found : Rises
        Of at least one onset.

    Returns
    -------
    float
        Standard deviation in seconds, at least 2 ms.

    Notes
    -----
    ``sd = 1 ms + 0.7 rise 10**(-depth / 20)``, fitted to the errors of onsets in generated
    phrases (attacks of 10 to 100 ms, dry, noisy and in rooms); there it lies between the
    true scatter and twice of it.
    """
    each = _SHARPEST_S + _SHARE_OF_RISE * found.rise_s * 10.0 ** (-found.depth_db / 20.0)
    spread = float(np.sqrt(np.mean(np.minimum(each, _LARGEST_SD_S) ** 2)))
    return max(spread, _LEAST_SD_S)
