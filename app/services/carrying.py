"""Markers carried over: a problem is marked once and asked about in every later take."""

import uuid
from datetime import date
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from app.journal.failures import PlainFailure
from app.journal.kinds import MarkerState
from app.journal.practice_days import Clock, practice_day
from app.journal.records import Marker, Take
from app.journal.still_there import ProblemLife, Stage, StillThere, heard_by_day, life_of
from app.services.aligning import AligningService
from app.services.bounds import BoundsService
from app.services.following_views import (
    AlignedPair,
    CarriedMarker,
    LifeRow,
    StillMeasured,
    StillWord,
)
from app.services.measuring import MeasuringService
from app.services.reading_views import AnyReading, NoReading, Reading
from app.services.records_there import marker_there, take_there
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
    part_of,
    stop_if,
)
from app.services.wording import counted, day_text
from app.store.store import Store

if TYPE_CHECKING:
    from analysis.results import TakeAnalysis
    from analysis.still_there import Reading95, StillFinding

INTONATION_CATEGORIES = frozenset({"intonation", "shift"})
RHYTHM_CATEGORIES = frozenset({"rhythm", "tempo"})
MOST_TAKES = 12
_BY_EAR = "This is judged by ear."
_UNSURE_OUTSIDE_S = 0.5


class _Both:
    """Two takes of a passage and what was measured on each, read when first asked for."""

    def __init__(
        self, measuring: MeasuringService, pair: AlignedPair, source: Take, take: Take
    ) -> None:
        self._measuring = measuring
        self.pair, self.source, self.take = pair, source, take

    @cached_property
    def then(self) -> "TakeAnalysis":
        return self._measuring.analysed(self.source.id)

    @cached_property
    def now(self) -> "TakeAnalysis":
        return self._measuring.analysed(self.take.id)


class CarryingService:
    """Shows the markers of earlier takes at their place in a later one."""

    def __init__(
        self,
        store: Store,
        clock: Clock,
        measuring: MeasuringService,
        aligning: AligningService,
        bounds: BoundsService,
    ) -> None:
        self._store = store
        self._clock = clock
        self._measuring = measuring
        self._aligning = aligning
        self._bounds = bounds

    def carried_into(
        self,
        take_id: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> tuple[CarriedMarker, ...]:
        """Give the markers of the passage's earlier takes at their place in this one.

        Of the twelve latest earlier takes that have any; what lies where this take does
        not play the same music is left out. Long the first time.

        Raises
        ------
        PlainFailure
            Where the take is not there or cannot be read.
        """
        take = take_there(self._store, take_id)
        sources = self._sources(take)
        answers = {a.marker_id: a.is_there for a in self._store.still_there.of_take(take_id)}
        carried: list[CarriedMarker] = []
        for number, (source, markers) in enumerate(sources):
            stop_if(should_stop)
            step = part_of(progress, number / len(sources), (number + 1) / len(sources))
            pair = self._aligning.pair(source.id, take_id, step, should_stop)
            if pair.aligned:
                both = _Both(self._measuring, pair, source, take)
                carried += [
                    self._carried(both, marker, answers.get(marker.id))
                    for marker in markers
                    if _is_played_there(pair, marker)
                ]
        progress(1.0)
        return tuple(sorted(carried, key=lambda one: one.start_s))

    def answer(self, marker_id: str, take_id: str, is_there: bool | None) -> None:
        """Keep what was heard of a marked problem in a later take; ``None`` takes it back.

        Raises
        ------
        PlainFailure
            Where marker or take are gone, or the take is not a later one of the passage.
        """
        marker, take = marker_there(self._store, marker_id), take_there(self._store, take_id)
        origin = take_there(self._store, marker.take_id)
        is_later = origin.recorded_at < take.recorded_at
        if origin.passage_id is None or origin.passage_id != take.passage_id or not is_later:
            raise PlainFailure(
                "That marker belongs to another passage or to a later take.",
                "Choose a later take of the marker's own passage.",
            )
        if is_there is None:
            self._store.still_there.remove(marker_id, take_id)
            return
        answered = StillThere(uuid.uuid4().hex, marker_id, take_id, is_there, self._clock())
        self._store.still_there.put(answered)

    def marker_named(self, text: str, take_id: str) -> str:
        """Find a marker of the take's passage by its id or the beginning of it.

        Raises
        ------
        PlainFailure
            Where there is none or more than one.
        """
        passage_id = take_there(self._store, take_id).passage_id
        takes = self._store.takes.list(passage_id=passage_id) if passage_id else ()
        markers = self._store.markers.for_takes(take.id for take in takes)
        found = [m.id for some in markers.values() for m in some if m.id.startswith(text)]
        if len(found) != 1 or not text:
            how = "no" if not found else "more than one"
            raise PlainFailure(
                f"There is {how} marker '{text}' in this passage.",
                "'passagework follow carried TAKE' lists them.",
            )
        return found[0]

    def lives(self, passage_id: str) -> tuple[LifeRow, ...]:
        """Give the life of every problem that was marked in a passage, the oldest first."""
        takes = {take.id: take for take in self._store.takes.list(passage_id=passage_id)}
        practised = {take.practice_day for take in takes.values()}
        turn_hour = self._store.settings.get().day_turn_hour
        markers = self._store.markers.for_takes(takes)
        rows = []
        for take in takes.values():
            for marker in markers.get(take.id, ()):
                heard = heard_by_day(
                    (takes[a.take_id].practice_day, a.is_there)
                    for a in self._store.still_there.of_marker(marker.id)
                    if a.take_id in takes
                )
                by_hand = None
                if marker.state is not MarkerState.TO_WORK_ON:
                    by_hand = practice_day(marker.changed_at, turn_hour=turn_hour)
                life = life_of(marker, take.practice_day, heard, practised, by_hand)
                rows.append(LifeRow(marker, life, life_text(life)))
        return tuple(sorted(rows, key=lambda row: (row.life.first_heard, row.marker.start_s)))

    def _sources(self, take: Take) -> list[tuple[Take, tuple[Marker, ...]]]:
        if take.passage_id is None:
            return []
        earlier = [
            one
            for one in self._store.takes.list(passage_id=take.passage_id)
            if one.recorded_at < take.recorded_at
        ]
        markers = self._store.markers.for_takes(one.id for one in earlier)
        marked = [(one, markers[one.id]) for one in earlier if one.id in markers]
        return marked[-MOST_TAKES:]

    def _carried(self, both: "_Both", marker: Marker, answer: bool | None) -> CarriedMarker:
        pair, source, take = both.pair, both.source, both.take
        start_s = min(max(pair.to_b(marker.start_s), 0.0), take.duration_s)
        end_s = None
        if marker.end_s is not None:
            end_s = min(max(pair.to_b(marker.end_s), start_s), take.duration_s)
        measured = self._measured(both, marker)
        return CarriedMarker(
            marker, source.practice_day, start_s, end_s, pair.confidence, measured, answer
        )

    def _measured(self, both: "_Both", marker: Marker) -> StillMeasured:
        from analysis import still_there  # noqa: PLC0415 - numba, only when needed
        from analysis.results import Alignment, Measured  # noqa: PLC0415

        alignment = Alignment(both.pair.a_s, both.pair.b_s, both.pair.confidence)
        span = (marker.start_s, marker.start_s if marker.end_s is None else marker.end_s)
        category = marker.category.casefold()
        if category in INTONATION_CATEGORIES:
            limit = self._bounds.get(both.source.passage_id or "").mean_absolute_cents
            then, now = both.then, both.now
            found = still_there.intonation_then_and_now(
                then.notes, now.notes, alignment, span, limit
            )
            return _in_words(found, "cents", limit)
        if category in RHYTHM_CATEGORIES:
            then, now = both.then, both.now
            if not isinstance(then.tempo, Measured) or not isinstance(now.tempo, Measured):
                missing = NoReading("The tempo of one of the takes is not measurable.")
                return StillMeasured("not measurable", missing, missing, missing.sentence)
            found = still_there.tempo_then_and_now(
                then.tempo.value, now.tempo.value, alignment, span
            )
            return _in_words(found, "%", still_there.TEMPO_LIMIT_PERCENT)
        missing = NoReading(_BY_EAR)
        return StillMeasured("not measurable", missing, missing, _BY_EAR)


def _is_played_there(pair: AlignedPair, marker: Marker) -> bool:
    """Tell whether a marker's place is played in the other take too."""
    first, last = float(pair.a_s[0]), float(pair.a_s[-1])
    if not first - _UNSURE_OUTSIDE_S <= marker.start_s <= last + _UNSURE_OUTSIDE_S:
        return False
    return not any(
        part.start_s < marker.start_s < part.end_s and part.kind not in ("before", "after")
        for part in pair.only_a
    )


def _in_words(found: "StillFinding", unit: str, limit: float) -> StillMeasured:
    word: StillWord = found.word.value
    then, now = _reading(found.then, unit), _reading(found.now, unit)
    place = f"{found.place}: " if found.place else ""
    if found.word == "not measurable":
        sentence = f"{place}one of the two is not measurable."
    elif found.then is not None and abs(found.then.value) - found.then.uncertainty <= limit:
        sentence = f"{place}it was not measured outside {limit:g} {unit} when it was marked."
    else:
        sentence = f"{place}{word}, held against {limit:g} {unit}."
    return StillMeasured(word, then, now, sentence[:1].upper() + sentence[1:])


def _reading(value: "Reading95 | None", unit: str) -> AnyReading:
    if value is None or not np.isfinite(value.value):
        return NoReading("Not measured there.")
    return Reading(value.value, unit, value.uncertainty, 1, signed=True)


def life_text(life: ProblemLife) -> str:
    """Tell a problem's life in one sentence."""
    parts = [f"first heard {day_text(life.first_heard)}"]
    parts.append(f"worked on {counted(life.days_worked_on, 'day')}")
    if life.times_returned:
        when = f" {day_text(life.returned_on)}" if isinstance(life.returned_on, date) else ""
        parts.append(f"returned{when}")
    if life.stage is Stage.SETTLED and life.settled_on is not None:
        parts.append(f"settled {day_text(life.settled_on)}")
    elif life.stage is Stage.TO_WORK_ON:
        parts.append("still to work on")
    text = ", ".join(parts)
    return text[:1].upper() + text[1:] + "."
