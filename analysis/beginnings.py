"""Where the sound of a note begins, not where its attack has risen half-way.

A soft attack passes half of its height a tenth of a second after the bow began to move,
and how much later depends on the attack. Two takes are at equal moments where their notes
begin; so each short spectrum around an attack is taken for so much of the note before and
so much of the new note, and the new one begins where its share starts to rise.
"""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.results import FloatArray
from analysis.short_spectra import Source, window_powers
from analysis.stopping import StopQuestion, stop_if_asked

ALGORITHM: Final = "beginnings-1"

WINDOW_S: Final = 0.04
HOP_S: Final = 0.004
EARLIEST_S: Final = 0.14
HIGHEST_HZ: Final = 5000.0
LOW_SHARE, HIGH_SHARE = 0.12, 0.3
BACK_OF_RAMP: Final = 0.4
_MIDDLE_S: Final = 0.06
_TEMPLATE_S: Final = 0.25
_TEMPLATE_STEP_S: Final = 0.015
_OLD_ENDS_S: Final = 0.1
_EDGE_S: Final = 0.02
_ALIKE: Final = 0.9
_ASKED_AFTER: Final = 64


def beginnings(
    source: Source,
    start_s: FloatArray,
    wanted: NDArray[np.int64] | None = None,
    *,
    should_stop: StopQuestion | None = None,
) -> FloatArray:
    """Move starts of notes from the middle of their attack to its beginning.

    Parameters
    ----------
    source : Source
        The take, 8 to 50 kHz.
    start_s : (n,) array
        Starts as they were detected, ascending.
    wanted : (m,) array, optional
        Which of them are moved; the others bound the notes before and after. All if left out.
    should_stop : callable, optional
        Asked every 64 notes.

    Returns
    -------
    (m,) array
        Beginnings of the wanted notes, seconds, at most 0.14 s before the starts given. A note
        whose beginning cannot be told, because the one before sounds alike, moves by as much
        as the others usually do.

    Raises
    ------
    Stopped
        If ``should_stop`` said so.
    """
    index = np.arange(start_s.size) if wanted is None else wanted
    edges = np.concatenate(([-np.inf], start_s, [np.inf]))
    spectra = _Spectra(source)
    found = np.full(index.size, np.nan)
    for place, i in enumerate(index):
        if place % _ASKED_AFTER == 0:
            stop_if_asked(should_stop)
        own = float(start_s[i])
        before = max(float(edges[i]), own - 2 * _TEMPLATE_S)
        after = min(float(edges[i + 2]), own + 2 * _TEMPLATE_S)
        found[place] = _beginning(spectra, before, own, after)
    told = np.isfinite(found)
    starts = start_s[index]
    usual_s = float(np.median((starts - found)[told])) if told.any() else 0.0
    return np.asarray(np.where(told, found, starts - usual_s), dtype=np.float64)


class _Spectra:
    """Short spectra whose strong partials do not hide the weak ones."""

    def __init__(self, source: Source) -> None:
        self._source = source
        self._rate_hz = float(source.sample_rate_hz)
        self._window = np.hanning(round(WINDOW_S * self._rate_hz)).astype(np.float32)
        self._size = int(2 ** np.ceil(np.log2(self._window.size)))
        self._bins = int(min(HIGHEST_HZ / self._rate_hz, 0.5) * self._size)

    def at(self, time_s: FloatArray) -> FloatArray:
        """Return roots of amplitude, (n, bins), of windows centred on some moments."""
        first = np.rint(time_s * self._rate_hz).astype(np.int64) - self._window.size // 2
        power = window_powers(self._source, first, self._window, self._size)
        return np.asarray(np.sqrt(np.sqrt(power[:, 1 : self._bins])), dtype=np.float32)


def _spread(begin_s: float, end_s: float) -> FloatArray:
    """Moments over a stretch, the middle of it where it is short."""
    count = max(1, round((end_s - begin_s) / _TEMPLATE_STEP_S))
    if count == 1:
        return np.array([(begin_s + max(begin_s, end_s)) / 2])
    return np.linspace(begin_s, end_s, count)


def _beginning(spectra: _Spectra, before_s: float, start_s: float, after_s: float) -> float:
    """When a note begins to sound; NaN where that cannot be told."""
    earliest_s = max(start_s - EARLIEST_S, before_s + _EDGE_S)
    time_s = np.arange(earliest_s, start_s + _MIDDLE_S, HOP_S)
    new_first = min(start_s + _MIDDLE_S, (start_s + after_s) / 2)
    new_s = _spread(new_first, min(after_s - _EDGE_S, start_s + _TEMPLATE_S))
    old_last = max(start_s - _OLD_ENDS_S, (before_s + start_s) / 2)
    old_s = _spread(max(before_s + _EDGE_S, start_s - _TEMPLATE_S), old_last)
    every = spectra.at(np.concatenate((old_s, time_s, new_s)))
    old, new = every[: old_s.size].mean(axis=0), every[-new_s.size :].mean(axis=0)
    rows = every[old_s.size : -new_s.size]
    alike = new @ old / max(float(np.sqrt((new @ new) * (old @ old))), 1e-30)
    if alike > _ALIKE:
        return np.nan
    share = shares(rows, new, old)
    return ramp_start(time_s, share, start_s)


def shares(rows: FloatArray, new: FloatArray, old: FloatArray) -> FloatArray:
    """How much of a new spectrum is in each row beside some of an old one, both at least 0."""
    products = np.stack([rows @ new, rows @ old])
    both, size_new, size_old = new @ old, new @ new, old @ old
    determinant = max(size_new * size_old - both**2, 1e-12 * size_new * size_old + 1e-30)
    share = (size_old * products[0] - both * products[1]) / determinant
    rest = (size_new * products[1] - both * products[0]) / determinant
    alone = products[0] / max(size_new, 1e-30)
    return np.asarray(np.where(share < 0, 0.0, np.where(rest < 0, alone, share)))


def ramp_start(time_s: FloatArray, share: FloatArray, start_s: float) -> float:
    """Where a rising share begins: its early part, run back to nothing; NaN if it never rises."""
    top = float(np.max(share))
    middle = int(np.argmax(share >= 0.6 * top))
    # Where the two notes have partials in common, some of the new one seems to sound before.
    least = float(np.min(share[: middle + 1]))
    low = _last_below(time_s, share, middle, least + LOW_SHARE * (top - least))
    high = _last_below(time_s, share, middle, least + HIGH_SHARE * (top - least))
    if not np.isfinite(low) or not np.isfinite(high):
        return np.nan
    return float(low - BACK_OF_RAMP * (high - low))


def _last_below(time_s: FloatArray, value: FloatArray, before: int, level: float) -> float:
    """Last crossing of a level before an index, by straight lines; NaN where there is none."""
    under = np.flatnonzero(value[: before + 1] < level)
    if not under.size or under[-1] + 1 >= value.size:
        return np.nan
    k = int(under[-1])
    part = (level - value[k]) / (value[k + 1] - value[k])
    return float(time_s[k] + part * (time_s[k + 1] - time_s[k]))
