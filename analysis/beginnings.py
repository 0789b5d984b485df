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
from scipy import fft

from analysis.new_shares import HOP_S, Rows, offset_between, ramp_start, rising_share
from analysis.results import FloatArray
from analysis.short_spectra import Source, window_powers

WINDOW_S: Final = 0.05
HIGHEST_HZ: Final = 5000.0
_ROUNDS: Final = 2
# In hops.
_RISEN_AFTER: Final = 12
_FURTHEST_NEIGHBOUR: Final = 125
_EARLIEST_LOOKED_AT, _LATEST_LOOKED_AT = -100, 75
_BLOCK: Final = 128
_BLOCKS_KEPT: Final = 6


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
        self._blocks: OrderedDict[int, Rows] = OrderedDict()

    def rows(self, first: int, last: int) -> Rows:
        """Return roots of amplitude, (n, bins), of windows centred on hops ``first`` to ``last``.

        The last one is not among them.
        """
        numbers = range(first // _BLOCK, (last - 1) // _BLOCK + 1)
        found = np.concatenate([self._block(number) for number in numbers])
        return found[first - numbers[0] * _BLOCK : last - numbers[0] * _BLOCK]

    def _block(self, number: int) -> Rows:
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
        if not first.size or not second.size:
            return None
        both = 0.5 * (ramp_start(first) + ramp_start(second))
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

    def rise(self, start: int) -> FloatArray:
        """How much of each moment around a start is the new note; empty if nobody can tell."""
        return rising_share(self._rows, self._first, self._before, self._after, start)
