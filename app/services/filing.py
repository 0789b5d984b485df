"""Takes that are filed: finding, refiling, deleting."""

from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from app.journal.failures import PlainFailure
from app.journal.kinds import AimMet
from app.journal.no_retake import may_delete
from app.journal.practice_days import Clock
from app.journal.records import PlayingSettings, Take
from app.services.attempts import Attempts
from app.services.day_now import check_has_come
from app.services.file_measuring import checked_settings
from app.services.passages import PassageService
from app.services.records_there import passage_there, take_there
from app.services.rows import NO_PASSAGE, Rows, algorithm_in_use
from app.services.sessions import session_of
from app.services.take_lists import TakeLists, lists_of
from app.services.undoing import Undoing
from app.services.views import TakeRow
from app.store.store import Store

_SHORTEST_ID = 4


_SHOWN_IN_ROWS = ("take", "passage", "measurement", "attempt", "setting", "first_listen")
"""The tables that a row of a list is made from, markers left out."""


@dataclass(frozen=True, slots=True)
class _Known:
    """Lists as they were read, and what the journal was at then."""

    at: tuple[object, str | None]
    marked_at: object
    lists: TakeLists


class FilingService:
    """Changes where a take belongs and what is known about it, never its sound."""

    def __init__(
        self,
        store: Store,
        clock: Clock,
        undoing: Undoing,
        passages: PassageService,
        attempts: Attempts,
    ) -> None:
        self._store = store
        self._attempts = attempts
        self._clock = clock
        self._undoing = undoing
        self._passages = passages
        self._rows = Rows(store)
        self._known: _Known | None = None

    def lists(self) -> TakeLists:
        """Give all takes as choosers want them; at once where nothing has changed.

        Where only markers have, their counts are read and nothing else.
        """
        at = (self._store.revision(*_SHOWN_IN_ROWS), algorithm_in_use())
        marked_at, known = self._store.revision("marker"), self._known
        if known is None or known.at != at:
            lists = lists_of(self.takes(), self._passages.list())
        elif known.marked_at != marked_at:
            rows = self._rows.counted_again(known.lists.by_id.values())
            lists = lists_of(rows, known.lists.passages)
        else:
            return known.lists
        self._known = _Known(at, marked_at, lists)
        return lists

    def row(self, take_id: str) -> TakeRow:
        """Give one take as a list shows it."""
        return self._rows.of_take(self.take(take_id))

    def take(self, take_id: str) -> Take:
        """Give a take's record; PlainFailure where it is not there or deleted."""
        return take_there(self._store, take_id)

    def takes(
        self,
        passage_id: str | None = None,
        *,
        first_day: date | None = None,
        last_day: date | None = None,
    ) -> tuple[TakeRow, ...]:
        """Give all takes, or those of one passage or of these days, oldest first."""
        return self._rows.of_takes(
            self._store.takes.list(passage_id=passage_id, first_day=first_day, last_day=last_day)
        )

    def refile(self, take_id: str, practice_day: date, passage_id: str | None) -> TakeRow:
        """File a take under another day or passage.

        Database and sidecar change; the audio file stays where and as it is. Held against
        another score, or against the whole of it instead of some bars, its measurement
        turns stale. Raises PlainFailure for a day that has not come yet.
        """
        from app.services.score_keeping import held_against  # noqa: PLC0415 - reads scores

        with self._store.transaction():
            take = self.take(take_id)
            if (take.practice_day, take.passage_id) == (practice_day, passage_id):
                return self._rows.of_take(take)
            if practice_day != take.practice_day:
                check_has_come(self._store, self._clock, practice_day)
            if passage_id is not None:
                passage_there(self._store, passage_id)
            moved = replace(
                take,
                no_retake=self._attempts.refiled(take, practice_day, passage_id),
                practice_day=practice_day,
                passage_id=passage_id,
                parts=take.parts if passage_id == take.passage_id else (),
                session_id=session_of(self._store, practice_day, take.recorded_at).id,
                number=self._store.takes.next_number(practice_day, passage_id),
            )
            self._store.takes.replace(moved)
            if held_against(self._store, take) != held_against(self._store, moved):
                self._store.measurements.mark_stale(take_id)
        return self._rows.of_take(moved)

    def set_aim(self, take_id: str, aim: str) -> TakeRow:
        """Set what the player wanted from this take."""
        return self._replace(take_id, aim=aim.strip())

    def answer_aim(self, take_id: str, answer: AimMet | None) -> TakeRow:
        """Keep the player's own answer whether the aim was met."""
        return self._replace(take_id, aim_met=answer)

    def change_settings(self, take_id: str, settings: PlayingSettings) -> TakeRow:
        """Change what the measures know about the playing; the measurement turns stale.

        A click that was heard with the take was heard: it stays.
        """
        with self._store.transaction():
            take = self.take(take_id)
            settings = replace(settings, click=take.settings.click)
            checked_settings(settings)
            if take.settings != settings:
                self._store.takes.replace(replace(take, settings=settings))
                self._store.measurements.mark_stale(take_id)
        return self.row(take_id)

    def delete(self, take_id: str) -> None:
        """Delete a take; :meth:`restore` or undo brings it back, its file stays.

        Raises
        ------
        PlainFailure
            Where its passage holds it as the day's one take.
        """
        take = self.take(take_id)
        passage = self._store.passages.get(take.passage_id)
        if not may_delete(passage, take):
            raise PlainFailure(
                "This is the day's one take of its passage: it is kept whatever it is.",
                "To delete it all the same, switch no-retake off for the passage.",
            )
        gone = replace(take, deleted_at=self._clock())
        self._undoing.make(f"{self._words(take)} deleted", take, gone)

    def restore(self, take_id: str) -> TakeRow:
        """Bring a deleted take back."""
        take = self._store.takes.get(take_id)
        if take is not None and take.deleted_at is not None:
            there = replace(take, deleted_at=None)
            self._undoing.make(f"{self._words(take)} restored", take, there)
        return self.row(take_id)

    def resolve(self, text: str) -> str:
        """Find a take's id.

        Parameters
        ----------
        text : str
            The first characters of its id (at least four), the path of its file, or
            ``PASSAGE:DATE:N`` such as ``study:2026-03-14:2``; without ``:N`` the last
            take of that day.

        Raises
        ------
        PlainFailure
            Where nothing or more than one take is meant.
        """
        take = self._by_file(text) or self._by_id(text) or self._by_place(text)
        if take is None:
            raise PlainFailure(
                f"There is no take '{text}' in this journal.",
                "Name its file, the start of its id, or PASSAGE:DATE:NUMBER.",
            )
        return take.id

    def _by_file(self, text: str) -> Take | None:
        path = Path(text)
        folders = self._store.folders
        for candidate in (path, folders.journal / path):
            try:
                relative = folders.relative(candidate)
            except ValueError:
                continue
            take = self._store.takes.by_file(relative)
            if take is not None and take.deleted_at is None:
                return take
        return None

    def _by_id(self, text: str) -> Take | None:
        if len(text) < _SHORTEST_ID:
            return None
        found = [t for t in self._store.takes.starting_with(text) if t.deleted_at is None]
        if len(found) > 1:
            raise PlainFailure(f"More than one take begins with '{text}'.", "Type more of its id.")
        return found[0] if found else None

    def _by_place(self, text: str) -> Take | None:
        head, _, tail = text.rpartition(":")
        day, number = _day_of(tail), None
        if day is None:
            head, _, middle = head.rpartition(":")
            day = _day_of(middle)
            if day is None or not tail.strip().isdigit():
                return None
            number = int(tail)
        passage_id = self._passages.find(head).id if head.strip() else None
        takes = [
            t
            for t in self._store.takes.of_day(day)
            if t.passage_id == passage_id and number in (None, t.number)
        ]
        return takes[-1] if takes else None

    def _replace(self, take_id: str, **changes: object) -> TakeRow:
        with self._store.transaction():
            take = replace(self.take(take_id), **changes)  # type: ignore[arg-type]
            self._store.takes.replace(take)
        return self._rows.of_take(take)

    def _words(self, take: Take) -> str:
        passage = self._store.passages.get(take.passage_id)
        name = passage.name if passage else NO_PASSAGE
        return f"take {take.number} of {name}"


def _day_of(text: str) -> date | None:
    try:
        return date.fromisoformat(text.strip())
    except ValueError:
        return None
