"""Where the same note begins to sound in two takes, not where its attack has risen half-way.

A soft attack passes half of its height a tenth of a second after the bow began to move,
and how much later depends on the attack. Two takes are at equal moments where their notes
begin; so each short spectrum around an attack is taken for so much of the note before and
so much of the new note. How far apart the two takes are is read from the whole rise of that
share in both; where the note begins, from the early part of both rises together, which
errs less than either of them.
"""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from analysis.results import FloatArray
from analysis.short_spectra import Source, window_powers

WINDOW_S: Final = 0.05
HOP_S: Final = 0.004
EARLIEST_S: Final = 0.2
LATEST_S: Final = 0.1
FURTHEST_APART_S: Final = 0.08
HIGHEST_HZ: Final = 5000.0
LOW_SHARE, HIGH_SHARE = 0.12, 0.3
BACK_OF_RAMP: Final = 0.4
_RISEN_SHARE: Final = 0.6
_MIDDLE_S: Final = 0.06
_TEMPLATE_S: Final = 0.25
_TEMPLATE_STEP_S: Final = 0.015
_OLD_ENDS_S: Final = 0.1
_EDGE_S: Final = 0.02
_ALIKE: Final = 0.9
_ROUNDS: Final = 2
_RISEN_AFTER_S: Final = 0.05
_FULL_S: Final = 0.03
_FURTHEST_NEIGHBOUR_S: Final = 0.5
_OFFSETS_S: Final = np.asarray(
    HOP_S * np.arange(-round(EARLIEST_S / HOP_S), round(LATEST_S / HOP_S) + 1), dtype=np.float64
)


@dataclass(frozen=True, slots=True)
class Place:
    """A note of a take: where its start was detected, and those before and after it."""

    before_s: float
    start_s: float
    after_s: float


class ShortSpectra:
    """Short spectra of a take whose strong partials do not hide the weak ones.

    Parameters
    ----------
    source : Source
        The take, 8 to 50 kHz.
    """

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


def lateness(
    spectra: tuple[ShortSpectra, ShortSpectra], places: tuple[Place, Place]
) -> tuple[float, float] | None:
    """Tell how much later than its beginning a note was detected, in each of two takes.

    Parameters
    ----------
    spectra : pair of ShortSpectra
    places : pair of Place
        The same note in both takes.

    Returns
    -------
    late_a_s, late_b_s : float
        Seconds; ``None`` where it cannot be told, because the note before sounds alike.
    """
    begun_s = now_s = tuple(place.start_s for place in places)
    # What is compared with the notes before and after was placed by the detected start;
    # once it is known better, the answer is too.
    for _ in range(_ROUNDS):
        first, second = (
            _rise(one, replace(place, start_s=start_s))
            for one, place, start_s in zip(spectra, places, now_s, strict=True)
        )
        if first is None or second is None:
            return None
        begun = 0.5 * (ramp_start(_OFFSETS_S, first) + ramp_start(_OFFSETS_S, second))
        if not np.isfinite(begun):
            return None
        apart_s = offset_between(first, second) * HOP_S
        begun_s = (now_s[0] + begun - apart_s / 2, now_s[1] + begun + apart_s / 2)
        now_s = (begun_s[0] + _RISEN_AFTER_S, begun_s[1] + _RISEN_AFTER_S)
    return places[0].start_s - begun_s[0], places[1].start_s - begun_s[1]


def _rise(spectra: ShortSpectra, place: Place) -> FloatArray | None:
    """How much of each moment around a start is the new note; ``None`` if nobody can tell."""
    start_s = place.start_s
    before_s = max(place.before_s, start_s - _FURTHEST_NEIGHBOUR_S)
    after_s = min(place.after_s, start_s + _FURTHEST_NEIGHBOUR_S)
    new_first = min(start_s + _MIDDLE_S, (start_s + after_s) / 2)
    new_s = _spread(new_first, min(after_s - _EDGE_S, start_s + _TEMPLATE_S))
    old_last = max(start_s - _OLD_ENDS_S, (before_s + start_s) / 2)
    old_s = _spread(max(before_s + _EDGE_S, start_s - _TEMPLATE_S), old_last)
    time_s = start_s + _OFFSETS_S
    every = spectra.at(np.concatenate((old_s, time_s, new_s)))
    old, new = every[: old_s.size].mean(axis=0), every[-new_s.size :].mean(axis=0)
    alike = new @ old / max(float(np.sqrt((new @ new) * (old @ old))), 1e-30)
    if alike > _ALIKE:
        return None
    share = shares(every[old_s.size : -new_s.size], new, old)
    share[time_s < before_s + _EDGE_S] = 0.0
    return share


def _spread(begin_s: float, end_s: float) -> FloatArray:
    """Moments over a stretch, the middle of it where it is short."""
    count = max(1, round((end_s - begin_s) / _TEMPLATE_STEP_S))
    if count == 1:
        return np.array([(begin_s + max(begin_s, end_s)) / 2])
    return np.linspace(begin_s, end_s, count)


def shares(rows: FloatArray, new: FloatArray, old: FloatArray) -> FloatArray:
    """How much of a new spectrum is in each row beside some of an old one, both at least 0."""
    products = np.stack([rows @ new, rows @ old])
    both, size_new, size_old = new @ old, new @ new, old @ old
    determinant = max(size_new * size_old - both**2, 1e-12 * size_new * size_old + 1e-30)
    share = (size_old * products[0] - both * products[1]) / determinant
    rest = (size_new * products[1] - both * products[0]) / determinant
    alone = products[0] / max(size_new, 1e-30)
    return np.asarray(np.where(share < 0, 0.0, np.where(rest < 0, alone, share)))


def offset_between(first: FloatArray, second: FloatArray) -> float:
    """By how many places a rise lies later in the second of two curves, parts of one included.

    Parameters
    ----------
    first, second : (n,) arrays
        Shares that rise to about 1.

    Returns
    -------
    float
        Where the two differ least, at most 0.08 s either way.
    """
    full = round(_FULL_S / HOP_S)
    one, other = (
        np.clip(curve / max(float(np.median(curve[-full:])), 1e-9), 0.0, 1.0)
        for curve in (first, second)
    )
    reach = round(FURTHEST_APART_S / HOP_S)
    size = one.size
    difference = np.array(
        [
            np.mean(
                np.square(other[max(k, 0) : size + min(k, 0)] - one[max(-k, 0) : size - max(k, 0)])
            )
            for k in range(-reach, reach + 1)
        ]
    )
    best = int(np.argmin(difference))
    if not 0 < best < difference.size - 1:
        return float(best - reach)
    left, middle, right = difference[best - 1 : best + 2]
    bend = left - 2 * middle + right
    return float(best - reach + (0.5 * (left - right) / bend if bend > 0 else 0.0))


def ramp_start(time_s: FloatArray, share: FloatArray) -> float:
    """Where a rising share begins: its early part, run back to nothing; NaN if it never rises."""
    top = float(np.max(share))
    middle = int(np.argmax(share >= _RISEN_SHARE * top))
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
