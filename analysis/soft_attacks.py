"""Equal moments of two takes whose notes speak softly: where their sound begins.

A note is detected where its attack has risen half-way. Where attacks are short that is
the moment it is heard at; where an instrument speaks softly, half-way lies later by as much
as a tenth of a second, and by another time for each note and level, which at two tempos
puts the two takes apart. There, and only there, anchors move to the beginning of the sound.
"""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.beginnings import Place, ShortSpectra, lateness
from analysis.note_anchors import Anchors
from analysis.note_lines import NoteLine, nearest_of
from analysis.results import FloatArray
from analysis.short_spectra import Source
from analysis.side_by_side import side_by_side
from analysis.stopping import StopQuestion, stop_if_asked

SHORT_ATTACK_S: Final = 0.026
SOFT_ATTACK_S: Final = 0.04
SHORTEST_NOTE_S: Final = 0.08
_LOOKED_AT: Final = 24
_ASKED_AFTER: Final = 64


def at_their_beginnings(
    anchors: Anchors,
    lines: tuple[NoteLine, NoteLine],
    sources: tuple[Source, Source],
    should_stop: StopQuestion | None = None,
) -> Anchors:
    """Move anchors to where their notes begin to sound, if they speak softly.

    Parameters
    ----------
    anchors : Anchors
    lines : pair of NoteLine
        All notes of both takes.
    sources : pair of Source
        The sound of both.
    should_stop : callable, optional
        Asked often.

    Returns
    -------
    Anchors
        As many; both columns increase still.
    """
    pairs = _Pairs(anchors, lines, sources)
    # A look at some of them tells whether the instrument speaks softly at all.
    few = np.unique(np.linspace(0, anchors.a_s.size - 1, _LOOKED_AT).astype(np.int64))
    usual_s = _usual_s(pairs.late_s(few, should_stop))
    soft = np.clip((usual_s - SHORT_ATTACK_S) / (SOFT_ATTACK_S - SHORT_ATTACK_S), 0.0, 1.0)
    # How far apart two attacks are is told better by their sound than by whole frames.
    of_each = 1.0 if any(line.is_coarse for line in lines) else soft
    if of_each == 0.0:
        return anchors
    late = pairs.late_s(np.arange(anchors.a_s.size), should_stop)
    late = np.where(np.isfinite(late), late, _usual_s(late))
    of_both = late.mean(axis=1)
    a_s = anchors.a_s - soft * of_both - of_each * (late[:, 0] - of_both)
    b_s = anchors.b_s - soft * of_both - of_each * (late[:, 1] - of_both)
    return Anchors(_rising(a_s), _rising(b_s), anchors.is_even)


class _Pairs:
    """Anchors among all notes that either take shows."""

    def __init__(
        self, anchors: Anchors, lines: tuple[NoteLine, NoteLine], sources: tuple[Source, Source]
    ) -> None:
        a_s, b_s = anchors.a_s, anchors.b_s
        self._moments = (a_s, b_s)
        self._sources = sources
        a, b = (np.union1d(line.start_s, at) for line, at in zip(lines, (a_s, b_s), strict=True))
        # A note that was missed in one take has its time there all the same.
        self._edges = (
            _with_those_missed(a, np.interp(b, b_s, a_s)),
            _with_those_missed(b, np.interp(a, a_s, b_s)),
        )

    def late_s(self, index: NDArray[np.int64], should_stop: StopQuestion | None) -> FloatArray:
        """How much later than they begin some anchors lie, (n, 2); NaN where nobody can tell."""
        half = index.size // 2
        return np.concatenate(
            side_by_side(
                lambda asked: self._one_by_one(index[:half], asked),
                lambda asked: self._one_by_one(index[half:], asked),
                should_stop,
            )
        )

    def _one_by_one(self, index: NDArray[np.int64], should_stop: StopQuestion | None) -> FloatArray:
        spectra = (ShortSpectra(self._sources[0]), ShortSpectra(self._sources[1]))
        found = np.full((index.size, 2), np.nan)
        for place, i in enumerate(index):
            if place % _ASKED_AFTER == 0:
                stop_if_asked(should_stop)
            first, second = (
                _place(edges, float(moments[i]))
                for edges, moments in zip(self._edges, self._moments, strict=True)
            )
            late = lateness(spectra, (first, second))
            if late is not None:
                found[place] = late
        return found


def _with_those_missed(start_s: FloatArray, other_s: FloatArray) -> FloatArray:
    """Give the starts of one take, and those of the other that lie apart from all of them."""
    away_s = np.abs(nearest_of(start_s, other_s) - other_s)
    return np.union1d(start_s, other_s[away_s > SHORTEST_NOTE_S])


def _place(edges_s: FloatArray, start_s: float) -> Place:
    """Place a start among the others; what lies nearer than a note is long belongs to it."""
    before = int(np.searchsorted(edges_s, start_s - SHORTEST_NOTE_S)) - 1
    after = int(np.searchsorted(edges_s, start_s + SHORTEST_NOTE_S, side="right"))
    return Place(
        float(edges_s[before]) if before >= 0 else -np.inf,
        start_s,
        float(edges_s[after]) if after < edges_s.size else np.inf,
    )


def _usual_s(late_s: FloatArray) -> float:
    """Give what is usual among those that could be told, seconds."""
    told = late_s[np.isfinite(late_s)]
    return float(np.median(told)) if told.size else 0.0


def _rising(time_s: FloatArray) -> FloatArray:
    return np.asarray(np.maximum.accumulate(time_s), dtype=np.float64)
