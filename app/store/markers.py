"""The markers on the takes."""

from builtins import list as list_of
from collections.abc import Iterable, Mapping

from sqlalchemy import Select, delete, func, insert, select, update

from app.journal.kinds import MarkerState
from app.journal.records import Marker
from app.store.models import MARKER_TABLE, TAKE_TABLE
from app.store.work import Work, chunks, pairs, values_of

_MARKER = MARKER_TABLE.c
_TAKE = TAKE_TABLE.c

OPEN_STATES = (MarkerState.TO_WORK_ON, MarkerState.RETURNED)


class MarkerRepository:
    """Markers in and out of the database."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def add(self, marker: Marker) -> None:
        """Keep a new marker; its take must be there."""
        with self._work.connection() as connection:
            connection.execute(insert(MARKER_TABLE), values_of(marker))
            self._work.touch_take(marker.take_id)

    def replace(self, marker: Marker) -> None:
        """Keep a changed marker in the place of the one with its id.

        Raises
        ------
        KeyError
            Where there is none on that take.
        """
        with self._work.connection() as connection:
            changed = connection.execute(
                update(MARKER_TABLE)
                .where(_MARKER.id == marker.id, _MARKER.take_id == marker.take_id)
                .values(values_of(marker))
            )
            if changed.rowcount != 1:
                raise KeyError(marker.id)
            self._work.touch_take(marker.take_id)

    def remove(self, marker_id: str) -> Marker | None:
        """Take a marker away and give it back, for undoing."""
        with self._work.connection() as connection:
            marker = self.get(marker_id)
            if marker is not None:
                connection.execute(delete(MARKER_TABLE).where(_MARKER.id == marker_id))
                self._work.touch_take(marker.take_id)
            return marker

    def get(self, marker_id: str) -> Marker | None:
        """Give a marker."""
        found = self._all(_select().where(_MARKER.id == marker_id))
        return found[0] if found else None

    def for_take(self, take_id: str) -> tuple[Marker, ...]:
        """List the markers of a take by position."""
        return self._all(_select().where(_MARKER.take_id == take_id).order_by(*_BY_POSITION))

    def for_takes(self, take_ids: Iterable[str]) -> Mapping[str, tuple[Marker, ...]]:
        """List the markers of several takes in one go; takes without any are left out."""
        found: dict[str, list_of[Marker]] = {}
        for some in chunks(take_ids):
            wanted = _select().where(_MARKER.take_id.in_(some)).order_by(*_BY_POSITION)
            for marker in self._all(wanted):
                found.setdefault(marker.take_id, []).append(marker)
        return {take_id: tuple(markers) for take_id, markers in found.items()}

    def counts(self, take_ids: Iterable[str] | None = None) -> Mapping[str, int]:
        """Count the markers of each take that has any, of all takes unless named."""
        counted = select(_MARKER.take_id, func.count()).group_by(_MARKER.take_id)
        with self._work.connection() as connection:
            if take_ids is None:
                return pairs(connection.execute(counted))
            found: dict[str, int] = {}
            for some in chunks(take_ids):
                rows = connection.execute(counted.where(_MARKER.take_id.in_(some)))
                found.update(pairs(rows))
            return found

    def list_open(self, limit: int, *, passage_id: str | None = None) -> tuple[Marker, ...]:
        """List what is still to work on or has returned, on takes that are not deleted.

        The weightiest first, of equal weight the most recently changed.
        """
        wanted = (
            _select()
            .join(TAKE_TABLE, _TAKE.id == _MARKER.take_id)
            .where(_MARKER.state.in_(OPEN_STATES), _TAKE.deleted_at.is_(None))
            .order_by(_MARKER.weight.desc(), _MARKER.changed_at.desc(), _MARKER.id.desc())
            .limit(limit)
        )
        if passage_id is not None:
            wanted = wanted.where(_TAKE.passage_id == passage_id)
        return self._all(wanted)

    def categories(self) -> tuple[str, ...]:
        """List the categories in use, the most used first."""
        used = (
            select(_MARKER.category)
            .group_by(_MARKER.category)
            .order_by(func.count().desc(), _MARKER.category)
        )
        with self._work.connection() as connection:
            return tuple(connection.scalars(used))

    def _all(self, wanted: Select[*tuple[object, ...]]) -> tuple[Marker, ...]:
        with self._work.connection() as connection:
            return tuple(Marker(**row._mapping) for row in connection.execute(wanted))


_BY_POSITION = (_MARKER.start_s, _MARKER.created_at, _MARKER.id)


def _select() -> Select[*tuple[object, ...]]:
    return select(MARKER_TABLE)
