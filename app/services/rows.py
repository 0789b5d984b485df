"""Takes and markers as lists show them."""

import sys
from collections.abc import Iterable
from dataclasses import replace

from app.journal.no_retake import ChosenAs
from app.journal.records import JournalSettings, Marker, MeasurementHeadline, Passage, Take
from app.services.choosing import Choosing
from app.services.day_now import is_late
from app.services.passages import passage_title
from app.services.reading_views import AnyReading, NoReading
from app.services.readings import NOT_MEASURED, reading_of
from app.services.views import MarkerRow, MeasureState, TakeRow
from app.services.wording import counted
from app.store.store import Store

NO_PASSAGE = "no passage"
HIDDEN = "Hidden until you have marked what you hear."


def algorithm_in_use() -> str | None:
    """Give the version of the measuring code, once something needed it.

    A list must not load the measuring code (a second of scipy and numba) just to
    tell stale results; until it is loaded, results count as current.
    """
    # Another thread may be half through importing it.
    return getattr(sys.modules.get("analysis.take"), "ALGORITHM", None)


class Rows:
    """Puts takes and markers together with what belongs to them."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._choosing = Choosing(store)

    def of_takes(self, takes: Iterable[Take]) -> tuple[TakeRow, ...]:
        """Give takes as rows, in the order given; a few queries for thousands of them."""
        takes = tuple(takes)
        ids = [take.id for take in takes]
        headlines = self._store.measurements.headlines(ids)
        counts = self._store.markers.counts(ids)
        passages = {passage.id: passage for passage in self._store.passages.list()}
        settings = self._store.settings.get()
        turn, heard = settings.day_turn_hour, self._heard_by_ear(settings)
        chosen = self._choosing.of_takes(takes)
        return tuple(
            _by_ear_first(
                self._row(
                    take,
                    headlines.get(take.id),
                    passages.get(take.passage_id or ""),
                    counts.get(take.id, 0),
                    turn,
                ),
                chosen[take.id],
                is_hidden=heard is not None and take.id not in heard,
            )
            for take in takes
        )

    def counted_again(self, rows: Iterable[TakeRow]) -> tuple[TakeRow, ...]:
        """Give rows with the number of markers there are now."""
        counts = self._store.markers.counts()
        return tuple(
            row
            if row.marker_count == counts.get(row.id, 0)
            else replace(row, marker_count=counts.get(row.id, 0))
            for row in rows
        )

    def _heard_by_ear(self, settings: JournalSettings) -> frozenset[str] | None:
        """Give the takes that were heard by ear, where others are to wait for that."""
        if settings.ear_first_since is None:
            return None
        return frozenset(listen.take_id for listen in self._store.first_listens.list())

    def of_take(self, take: Take) -> TakeRow:
        """Give one take as a row."""
        return self.of_takes((take,))[0]

    def of_markers(self, markers: Iterable[Marker]) -> tuple[MarkerRow, ...]:
        """Give markers as rows, in the order given."""
        markers = tuple(markers)
        takes = self._store.takes.of_ids({marker.take_id for marker in markers})
        passages = {passage.id: passage for passage in self._store.passages.list()}
        measured = self._store.measurements.summaries(takes)
        rows = []
        for marker in markers:
            take = takes[marker.take_id]
            notes = measured.get(take.id, {}).get("notes")
            passage = passages.get(take.passage_id or "")
            rows.append(
                MarkerRow(
                    marker=marker,
                    passage_name=passage_title(passage) if passage else NO_PASSAGE,
                    practice_day=take.practice_day,
                    take_number=take.number,
                    near_note=near_note(notes, marker.start_s) if isinstance(notes, list) else "",
                )
            )
        return tuple(rows)

    def _row(
        self,
        take: Take,
        headline: MeasurementHeadline | None,
        passage: Passage | None,
        marker_count: int,
        turn_hour: int,
    ) -> TakeRow:
        return TakeRow(
            id=take.id,
            passage_id=take.passage_id,
            passage_name=passage_title(passage) if passage else NO_PASSAGE,
            practice_day=take.practice_day,
            number=take.number,
            recorded_at=take.recorded_at,
            is_late_entry=is_late(take, turn_hour),
            origin=take.origin,
            duration_s=take.duration_s,
            aim=take.aim,
            aim_met=take.aim_met,
            state=measure_state(headline),
            notice=_notice(take, headline),
            intonation=_reading(headline, "mean_absolute_cents"),
            tempo=_reading(headline, "mean_bpm"),
            dynamics=_reading(headline, "dynamic_span_db"),
            marker_count=marker_count,
            file=self._store.folders.absolute(take.file),
            retake_reason=take.retake_reason,
            parts=take.parts,
        )


def near_note(notes: list[dict[str, object]], position_s: float) -> str:
    """Name the note of a stored summary that sounds at a position, or within a second."""
    best, best_distance = "", 1.0
    for note in notes:
        start_s, end_s, name = note.get("start_s"), note.get("end_s"), note.get("spelled")
        name = name or note.get("name")
        if not (isinstance(start_s, float | int) and isinstance(end_s, float | int)):
            continue
        distance = max(start_s - position_s, position_s - end_s, 0.0)
        if name and distance < best_distance:
            best, best_distance = str(name), distance
    return best


def measure_state(headline: MeasurementHeadline | None) -> MeasureState:
    """Say where the measuring of a take stands."""
    if headline is None:
        return "waiting"
    algorithm = algorithm_in_use()
    if headline.stale or (algorithm is not None and headline.algorithm != algorithm):
        return "stale"
    return "failed" if headline.failure else "measured"


def _reading(headline: MeasurementHeadline | None, key: str) -> AnyReading:
    if headline is None:
        return NoReading(NOT_MEASURED)
    if headline.failure:
        return NoReading(headline.failure)
    return reading_of(headline.summary, key)


def _by_ear_first(row: TakeRow, chosen_as: ChosenAs | None, *, is_hidden: bool) -> TakeRow:
    row = replace(row, chosen_as=chosen_as)
    if not is_hidden:
        return row
    hidden = NoReading(HIDDEN)
    return replace(row, intonation=hidden, tempo=hidden, dynamics=hidden)


def _notice(take: Take, headline: MeasurementHeadline | None) -> str:
    """Give everything that is odd about a take, as sentences."""
    parts = [take.ended]
    if take.retake_reason:
        parts.append(f"Made once more, since the device had failed: {take.retake_reason}")
    if take.dropped_frames:
        parts.append(f"Frames lost while recording: {take.dropped_frames}.")
    if take.clipped_samples:
        parts.append(f"Overdriven: {counted(take.clipped_samples, 'sample')} at full scale.")
    if headline is not None:
        parts.append(headline.failure)
        parts.append(str(headline.summary.get("notice") or ""))
    return " ".join(part for part in parts if part)
