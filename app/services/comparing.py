"""Two takes of a passage beside each other, and a passage over the weeks."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.failures import PlainFailure
from app.journal.records import PlayingSettings
from app.services.aligning import AligningService
from app.services.choosing import Choosing, words_in_trend
from app.services.fair_takes import fair_takes
from app.services.latest import Latest
from app.services.level_matching import level_match
from app.services.listening import ListeningService
from app.services.measuring import MeasuringService
from app.services.reading_views import Reading
from app.services.readings import TREND_KEYS, measure_named, reading_of
from app.services.records_there import passage_there, take_there
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
    part_of,
)
from app.services.views import CompareView, LevelMatch, TrendView
from app.store.store import Store

if TYPE_CHECKING:
    from analysis.results import JudgedNote, ScoreReading
    from app.services.file_comparing import Comparison, Side


_FOLLOWED = ("take", "measurement", "passage", "passage_bounds", "attempt")
"""The tables that a trend is made from."""

_MOST_FOLLOWED = 64
_Followed = tuple[str, tuple[str, ...], int, object]
"""A passage, measures, how many trends are looked at together, and the journal's revision."""

_RUBATO = "Steadiness is not judged: the tempo of this passage is meant to move."


class ComparingService:
    """Aligns takes note against note and follows a passage over time.

    Everything but :meth:`trend` and :meth:`trend_keys` is long.
    """

    def __init__(
        self,
        store: Store,
        measuring: MeasuringService,
        listening: ListeningService,
        aligning: AligningService,
    ) -> None:
        self._store = store
        self._measuring = measuring
        self._listening = listening
        self._aligning = aligning
        self._choosing = Choosing(store)
        self._followed: Latest[_Followed, dict[str, TrendView]] = Latest(_MOST_FOLLOWED)

    def compare(
        self,
        take_a: str,
        take_b: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> CompareView:
        """Put two takes beside each other; changes are b minus a.

        A take that is not measured yet is measured first.
        """
        from app.services.compare_views import compare_view  # noqa: PLC0415 - only when needed

        found = self.judged_comparison(take_a, take_b, progress, should_stop)
        a, b = self._listening.open_take(take_a), self._listening.open_take(take_b)
        return replace(compare_view(found, a, b), levels=self.levels(take_a, take_b))

    def judged_comparison(
        self,
        take_a: str,
        take_b: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> "Comparison":
        """Compare two takes, with a word for each change where both are of one passage."""
        from app.services.compare_views import words_of  # noqa: PLC0415 - only when needed

        found = self.comparison(take_a, take_b, progress, should_stop)
        passage_id = take_there(self._store, take_b).passage_id
        if passage_id is None or take_there(self._store, take_a).passage_id != passage_id:
            return found
        return replace(found, words=words_of(found, self.trends(passage_id)))

    def comparison(
        self,
        take_a: str,
        take_b: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> "Comparison":
        """Align two takes and hold their notes and measures against each other."""
        from app.services.file_comparing import compare_sides  # noqa: PLC0415 - only when needed

        if take_a == take_b:
            raise PlainFailure("That is the same take twice.", "Choose another one.")
        known = self._aligning.alignment(take_a, take_b, part_of(progress, 0.0, 0.95), should_stop)
        a, b = (self._side(take_id, should_stop) for take_id in (take_a, take_b))
        found = compare_sides(a, b, part_of(progress, 0.95, 1.0), should_stop, known=known)
        chosen = self._choosing.between(
            take_there(self._store, take_a), take_there(self._store, take_b)
        )
        return replace(found, confounders=(*found.confounders, *chosen))

    def compare_json(
        self,
        take_a: str,
        take_b: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> dict[str, object]:
        """Give the machine-readable object (``app/schemas/compare.schema.json``)."""
        return self.judged_comparison(take_a, take_b, progress, should_stop).as_json()

    def compare_files(
        self,
        path_a: Path,
        path_b: Path,
        settings: PlayingSettings,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> dict[str, object]:
        """Compare two files that need not be in any journal."""
        from app.services import file_comparing  # noqa: PLC0415 - only when needed

        return file_comparing.compare_files(
            path_a, path_b, settings, progress=progress, should_stop=should_stop
        ).as_json()

    def trend(self, passage_id: str, key: str = "mean_absolute_cents") -> TrendView:
        """Follow one measure of a passage over the weeks.

        Parameters
        ----------
        passage_id : str
        key : str
            One of :meth:`trend_keys`.
        """
        return self.trends(passage_id, (key,))[key]

    def trends(
        self, passage_id: str, keys: Sequence[str] = tuple(TREND_KEYS)
    ) -> dict[str, TrendView]:
        """Follow several measures of a passage, reading its takes once."""
        return self.trends_of((passage_id,), keys)[passage_id]

    def trends_of(
        self, passage_ids: Iterable[str], keys: Sequence[str] = tuple(TREND_KEYS)
    ) -> dict[str, dict[str, TrendView]]:
        """Follow several measures of several passages; by passage, then by measure."""
        from app.services.trends import comparisons_of  # noqa: PLC0415 - scipy, when needed

        counts = self._store.takes.day_counts_of_passages()
        found = {}
        for passage_id in passage_ids:
            comparisons = comparisons_of(counts, passage_id)
            known = (passage_id, tuple(keys), comparisons, self._store.revision(*_FOLLOWED))
            trends = self._followed.get(known)
            if trends is None:
                trends = self._trends(passage_id, keys, comparisons)
                self._followed.put(known, trends)
            found[passage_id] = trends
        return found

    def _trends(
        self, passage_id: str, keys: Sequence[str], comparisons: int
    ) -> dict[str, TrendView]:
        from app.services.trends import trend_view  # noqa: PLC0415 - scipy, when needed
        from app.services.week_points import week_points  # noqa: PLC0415

        passage = passage_there(self._store, passage_id)
        fair = fair_takes(self._store.takes.list(passage_id=passage_id))
        headlines = dict(self._store.measurements.headlines([take.id for take in fair.takes]))
        bounds = self._store.bounds.get(passage_id)
        is_rubato = bounds is not None and bounds.is_rubato
        chosen = self._choosing.of_takes(fair.takes)
        found = {}
        for key in keys:
            takes = fair.with_measure(key)
            view = trend_view(
                passage,
                key,
                takes,
                headlines,
                comparisons=comparisons,
                not_judged=_RUBATO if is_rubato and key == "steadiness_cv_percent" else "",
            )
            shown = {point.take_id for point in view.points}
            said = words_in_trend(chosen[take.id] for take in takes if take.id in shown)
            notice = " ".join(sentence for sentence in (said, *fair.about(key)) if sentence)
            found[key] = replace(view, notice=notice, weeks=week_points(view.points))
        return found

    def notes_of(self, take_id: str) -> "tuple[JudgedNote, ...]":
        """Give the notes of a take, which is measured first where it was not."""
        return self._measuring.analysed(take_id).notes

    def score_reading(self, take_id: str) -> "ScoreReading | None":
        """Give what a whole take says of its passage's score; none where it was not held so."""
        from analysis.results import Measured  # noqa: PLC0415 - only when needed

        score = self._measuring.analysed(take_id).score
        if take_there(self._store, take_id).parts or not isinstance(score, Measured):
            return None
        return score.value

    def trend_keys(self) -> tuple[tuple[str, str], ...]:
        """Give the measures a trend can follow: key and label."""
        return tuple((key, measure_named(key).label) for key in TREND_KEYS)

    def levels(self, take_a: str, take_b: str) -> LevelMatch:
        """Match both to the softest take of their passage that one may step to; instant."""
        a, b = take_there(self._store, take_a), take_there(self._store, take_b)
        passage_id = b.passage_id if b.passage_id == a.passage_id else None
        others = self._store.takes.list(passage_id=passage_id) if passage_id else ()
        ids = {take.id for take in others} | {a.id, b.id}
        headlines = self._store.measurements.headlines(tuple(ids))
        loudness = {
            take_id: reading.value
            for take_id, kept in headlines.items()
            if isinstance(reading := reading_of(kept.summary, "integrated_lufs"), Reading)
        }
        return level_match(loudness.get(a.id), loudness.get(b.id), loudness.values())

    def _side(self, take_id: str, should_stop: ShouldStop) -> "Side":
        from app.services.file_comparing import Side  # noqa: PLC0415 - only when needed

        take = take_there(self._store, take_id)
        analysis = self._measuring.analysed(take_id, no_progress, should_stop)
        return Side(take.file, None, analysis, take.settings)
