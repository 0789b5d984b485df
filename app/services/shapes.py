"""Shape: the loudness of two takes at equal musical moments, and the hairpins that were meant."""

from collections.abc import Iterator
from typing import TYPE_CHECKING, Literal

import numpy as np

from app.journal.records import Take
from app.journal.scores import Score
from app.services.aligning import AligningService
from app.services.following_views import AlignedPair, HairpinRow, ShapeView
from app.services.measuring import MeasuringService
from app.services.reading_views import AnyReading, NoReading, Reading
from app.services.records_there import take_there
from app.services.score_keeping import ScoreShelf
from app.services.stopping import Progress, ShouldStop, never_stop, no_progress, part_of, stop_if
from app.store.store import Store

if TYPE_CHECKING:
    from analysis.results import Dynamics, TakeAnalysis
    from analysis.score_following import ScoreAlignment

_HairpinKind = Literal["crescendo", "diminuendo"]
_LIKENESS = 2


class ShapeService:
    """Compares the shape of takes."""

    def __init__(
        self,
        store: Store,
        measuring: MeasuringService,
        aligning: AligningService,
        shelf: ScoreShelf,
    ) -> None:
        self._store = store
        self._measuring = measuring
        self._aligning = aligning
        self._shelf = shelf

    def compare(
        self,
        take_a: str,
        take_b: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> ShapeView:
        """Lay the loudness of two takes over each other, with the hairpins of the score.

        Raises
        ------
        PlainFailure
            Where a take is not there or cannot be read.
        """
        from analysis import shape  # noqa: PLC0415 - scipy, only when needed
        from analysis.results import Alignment, Measured  # noqa: PLC0415

        pair = self._aligning.pair(take_a, take_b, part_of(progress, 0.0, 0.8), should_stop)
        a, b = self._measuring.analysed(take_a), self._measuring.analysed(take_b)
        stop_if(should_stop)
        if not pair.aligned:
            return _without(pair, pair.sentence)
        if not isinstance(a.dynamics, Measured) or not isinstance(b.dynamics, Measured):
            return _without(pair, "The loudness of one of the takes is not measurable.")
        alignment = Alignment(pair.a_s, pair.b_s, pair.confidence)
        found = shape.shapes_of(a.dynamics.value, b.dynamics.value, alignment)
        if not isinstance(found, Measured):
            return _without(pair, found.sentence)
        dynamics = (a.dynamics.value, b.dynamics.value)
        hairpins = self._hairpins(take_there(self._store, take_a), a, pair, dynamics, should_stop)
        progress(1.0)
        value = found.value
        return ShapeView(
            take_a=take_a,
            take_b=take_b,
            time_s=value.time_s,
            a_db=value.a_db,
            b_db=value.b_db,
            offset_db=value.offset_db,
            likeness=Reading(value.likeness, "", None, _LIKENESS, signed=True),
            hairpins=hairpins,
            notices=tuple(sorted({n.sentence for side in (a, b) for n in side.notices})),
            sentence=(
                f"B is moved by {value.offset_db:+.1f} dB; then the two ordinarily differ by"
                f" {value.difference_db:.1f} dB."
            ),
        )

    def _hairpins(
        self,
        take: Take,
        analysis: "TakeAnalysis",
        pair: AlignedPair,
        dynamics: "tuple[Dynamics, Dynamics]",
        should_stop: ShouldStop,
    ) -> tuple[HairpinRow, ...]:
        """Hold both takes against the hairpins of the score, if there is one."""
        from analysis.shape import Hairpin, hairpin_change_db  # noqa: PLC0415

        score = self._shelf.of_take(take, should_stop)
        if score is None:
            return ()
        followed = self._followed(take, analysis, score, should_stop)
        if followed is None:
            return ()
        rows = []
        for begin, end, kind in printed_hairpins(score):
            start_s, end_s = (
                float(t) for t in followed.time_at(np.array([begin, end], dtype=np.float64))
            )
            grows = kind == "crescendo"
            there = Hairpin(pair.to_b(start_s), pair.to_b(end_s), grows)
            rows.append(
                HairpinRow(
                    start_s,
                    end_s,
                    kind,
                    _change(hairpin_change_db(dynamics[0], Hairpin(start_s, end_s, grows))),
                    _change(hairpin_change_db(dynamics[1], there)),
                )
            )
        return tuple(rows)

    def _followed(
        self, take: Take, analysis: "TakeAnalysis", score: Score, should_stop: ShouldStop
    ) -> "ScoreAlignment | None":
        from app.services.score_aligning import follow  # noqa: PLC0415 - numba, when needed

        path = self._store.folders.absolute(take.file)
        return follow(path, score, analysis.notes, should_stop)


def printed_hairpins(score: Score) -> Iterator[tuple[float, float, _HairpinKind]]:
    """Give the hairpins of a score: beats of its first note and the end of its last one."""
    begin, end, kind = 0.0, 0.0, ""
    for note in (*score.notes, None):
        now = note.hairpin if note is not None else ""
        if kind and now != kind:
            if kind == "crescendo":
                yield begin, end, "crescendo"
            else:
                yield begin, end, "diminuendo"
        if note is not None:
            begin = note.onset_beats if now != kind else begin
            end = note.onset_beats + note.duration_beats
        kind = now


def _change(value: float | None) -> AnyReading:
    if value is None:
        return NoReading("Nothing sounds at one end of it.")
    return Reading(value, "dB", None, 1, signed=True)


def _without(pair: AlignedPair, sentence: str) -> ShapeView:
    empty = np.empty(0)
    missing = NoReading(sentence)
    return ShapeView(pair.take_a, pair.take_b, empty, empty, empty, 0.0, missing, (), (), sentence)
