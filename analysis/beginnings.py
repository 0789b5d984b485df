"""Where the same note begins to sound in two takes, not where its attack has risen half-way.

A soft attack passes half of its height a tenth of a second after the bow began to move,
and how much later depends on the attack. Two takes are at equal moments where their notes
begin; so each short spectrum around an attack is taken for so much of the note before and
so much of the new note. How far apart the two takes are is read from the whole rise of that
share in both; where the note begins, from the early part of both rises together, which
errs less than either of them.
"""

import math
from collections import OrderedDict
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy import fft

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
_ALIKE: Final = 0.9
_ROUNDS: Final = 2
# In hops.
_MIDDLE, _OLD_ENDS, _TEMPLATE, _EDGE = 15, 25, 62, 5
_STEP: Final = 4
_RISEN_AFTER: Final = 12
_FULL: Final = 8
_FURTHEST_NEIGHBOUR: Final = 125
_EARLIEST_LOOKED_AT, _LATEST_LOOKED_AT = -100, 75
_BLOCK: Final = 128
_BLOCKS_KEPT: Final = 6
_OFFSETS: Final = np.arange(
    -round(EARLIEST_S / HOP_S), round(LATEST_S / HOP_S) + 1, dtype=np.float64
)


@dataclass(frozen=True, slots=True)
class Place:
    """A note of a take: where its start was detected, and those before and after it."""

    before_s: float
    start_s: float
    after_s: float


class ShortSpectra:
    """Short spectra of a take whose strong partials do not hide the weak ones.

    They lie on one grid, a hop apart, and are made in blocks of which the latest are kept:
    what lies around a note lies around its neighbours too.

    Parameters
    ----------
    source : Source
        The take, 8 to 50 kHz.
    """

    def __init__(self, source: Source) -> None:
        self._source = source
        self._rate_hz = float(source.sample_rate_hz)
        self._window = np.hanning(round(WINDOW_S * self._rate_hz)).astype(np.float32)
        self._size = fft.next_fast_len(self._window.size, real=True)
        self._bins = int(min(HIGHEST_HZ / self._rate_hz, 0.5) * self._size)
        self._blocks: OrderedDict[int, FloatArray] = OrderedDict()

    def rows(self, first: int, last: int) -> FloatArray:
        """Return roots of amplitude, (n, bins), of windows centred on hops ``first`` to ``last``.

        The last one is not among them.
        """
        numbers = range(first // _BLOCK, (last - 1) // _BLOCK + 1)
        found = np.concatenate([self._block(number) for number in numbers])
        return found[first - numbers[0] * _BLOCK : last - numbers[0] * _BLOCK]

    def _block(self, number: int) -> FloatArray:
        block = self._blocks.get(number)
        if block is None:
            hops = np.arange(number * _BLOCK, (number + 1) * _BLOCK)
            first = np.rint(hops * (HOP_S * self._rate_hz)).astype(np.int64)
            first -= self._window.size // 2
            power = window_powers(self._source, first, self._window, self._size, self._bins)
            block = np.asarray(np.sqrt(np.sqrt(power[:, 1:])), dtype=np.float32)
            self._blocks[number] = block
            if len(self._blocks) > _BLOCKS_KEPT:
                self._blocks.popitem(last=False)
        return block


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
    around = (_Around(spectra[0], places[0]), _Around(spectra[1], places[1]))
    begun = (0.0, 0.0)
    now = (0, 0)
    # What is compared with the notes before and after was placed by the detected start;
    # once it is known better, the answer is too.
    for _ in range(_ROUNDS):
        first, second = around[0].rise(now[0]), around[1].rise(now[1])
        if first is None or second is None:
            return None
        both = 0.5 * (ramp_start(_OFFSETS, first) + ramp_start(_OFFSETS, second))
        if not np.isfinite(both):
            return None
        apart = offset_between(first, second)
        begun = (now[0] + both - apart / 2, now[1] + both + apart / 2)
        now = (round(begun[0] + _RISEN_AFTER), round(begun[1] + _RISEN_AFTER))
    late_a, late_b = (
        (one.start_beside - hops) * HOP_S for one, hops in zip(around, begun, strict=True)
    )
    return late_a, late_b


class _Around:
    """Spectra around a detected start; places are hops from the one nearest to it.

    The start itself lies ``start_beside`` of a hop later.
    """

    def __init__(self, spectra: ShortSpectra, place: Place) -> None:
        middle = round(place.start_s / HOP_S)
        self.start_beside = place.start_s / HOP_S - middle
        self._before = max(place.before_s / HOP_S - middle, -_FURTHEST_NEIGHBOUR)
        self._after = min(place.after_s / HOP_S - middle, _FURTHEST_NEIGHBOUR)
        # What sounds before the note before need not be looked at.
        self._first = math.ceil(max(self._before, _EARLIEST_LOOKED_AT))
        self._rows = spectra.rows(middle + self._first, middle + _LATEST_LOOKED_AT + 1)

    def rise(self, start: int) -> FloatArray | None:
        """How much of each moment around a start is the new note; ``None`` if nobody can tell."""
        before, after = self._before, self._after
        new_first = min(start + _MIDDLE, (start + after) / 2)
        new = self._mean(new_first, min(after - _EDGE, start + _TEMPLATE))
        old_last = max(start - _OLD_ENDS, (before + start) / 2)
        old = self._mean(max(before + _EDGE, start - _TEMPLATE), old_last)
        alike = new @ old / max(float(np.sqrt((new @ new) * (old @ old))), 1e-30)
        if alike > _ALIKE:
            return None
        places = start + _OFFSETS.astype(np.int64)
        share = shares(self._rows[self._index(places)], new, old)
        share[places < max(before + _EDGE, self._first)] = 0.0
        return share

    def _mean(self, begin: float, end: float) -> FloatArray:
        """Mean spectrum of a stretch, of its middle where it is short."""
        if end - begin < _STEP:
            begin = end = (begin + max(begin, end)) / 2
        places = np.rint(np.arange(begin, end + 0.5, _STEP)).astype(np.int64)
        return np.asarray(self._rows[self._index(places)].mean(axis=0))

    def _index(self, places: NDArray[np.int64]) -> NDArray[np.int64]:
        last = self._rows.shape[0] - 1
        return np.asarray(np.minimum(np.maximum(places - self._first, 0), last))


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
    one, other = (
        np.minimum(np.maximum(curve / max(float(np.median(curve[-_FULL:])), 1e-9), 0.0), 1.0)
        for curve in (first, second)
    )
    reach = round(FURTHEST_APART_S / HOP_S)
    lags = np.arange(-reach, reach + 1)
    size = one.size
    # Squares of the differences over what overlaps, term by term.
    ones = np.concatenate(([0.0], np.cumsum(np.square(one))))
    others = np.concatenate(([0.0], np.cumsum(np.square(other))))
    forward, backward = np.maximum(lags, 0), np.maximum(-lags, 0)
    squares = (ones[size - forward] - ones[backward]) + (others[size - backward] - others[forward])
    products = np.correlate(other, one, mode="full")[size - 1 - reach : size + reach]
    difference = (squares - 2.0 * products) / (size - np.abs(lags))
    best = int(np.argmin(difference))
    if not 0 < best < difference.size - 1:
        return float(best - reach)
    left, middle, right = difference[best - 1 : best + 2]
    bend = left - 2 * middle + right
    return float(best - reach + (0.5 * (left - right) / bend if bend > 0 else 0.0))


def ramp_start(place: FloatArray, share: FloatArray) -> float:
    """Where a rising share begins: its early part, run back to nothing; NaN if it never rises."""
    top = float(np.max(share))
    middle = int(np.argmax(share >= _RISEN_SHARE * top))
    # Where the two notes have partials in common, some of the new one seems to sound before.
    least = float(np.min(share[: middle + 1]))
    low = _last_below(place, share, middle, least + LOW_SHARE * (top - least))
    high = _last_below(place, share, middle, least + HIGH_SHARE * (top - least))
    if not np.isfinite(low) or not np.isfinite(high):
        return np.nan
    return float(low - BACK_OF_RAMP * (high - low))


def _last_below(place: FloatArray, value: FloatArray, before: int, level: float) -> float:
    """Last crossing of a level before an index, by straight lines; NaN where there is none."""
    under = np.flatnonzero(value[: before + 1] < level)
    if not under.size or under[-1] + 1 >= value.size:
        return np.nan
    k = int(under[-1])
    part = (level - value[k]) / (value[k + 1] - value[k])
    return float(place[k] + part * (place[k + 1] - place[k]))
