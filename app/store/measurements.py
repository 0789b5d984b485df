"""What was measured on the takes."""

import json
import zlib
from collections.abc import Iterable, Mapping
from typing import Any

from sqlalchemy import Select, delete, insert, or_, select, update

from app.journal.records import MeasurementHeadline, StoredMeasurement
from app.store.columns import json_text
from app.store.models import CURVES_TABLE, MEASUREMENT_TABLE, TAKE_TABLE
from app.store.troubles import UnreadableValue
from app.store.work import Work, chunks

_MEASUREMENT = MEASUREMENT_TABLE.c
_CURVES = CURVES_TABLE.c
_TAKE = TAKE_TABLE.c


class MeasurementRepository:
    """Measurements in and out of the database; one a take."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def put(self, measurement: StoredMeasurement) -> None:
        """Keep a measurement in the place of the take's earlier one."""
        values = {
            "take_id": measurement.take_id,
            "algorithm": measurement.algorithm,
            "measured_at": measurement.measured_at,
            "stale": measurement.stale,
            "failure": measurement.failure,
            "headline": json_text(without_lists(measurement.summary)),
            "summary": zlib.compress(json_text(measurement.summary).encode()),
        }
        curves = {"take_id": measurement.take_id, "curves": measurement.curves}
        with self._work.connection() as connection:
            self._remove(measurement.take_id)
            connection.execute(insert(MEASUREMENT_TABLE), values)
            if measurement.curves:
                connection.execute(insert(CURVES_TABLE), curves)

    def get(self, take_id: str) -> StoredMeasurement | None:
        """Give the measurement of a take with everything in it.

        ``curves`` is empty where the journal was restored from a backup; it is stale then.
        """
        wanted = (
            select(
                _MEASUREMENT.take_id,
                _MEASUREMENT.algorithm,
                _MEASUREMENT.measured_at,
                _MEASUREMENT.stale,
                _MEASUREMENT.failure,
                _MEASUREMENT.summary,
                _CURVES.curves,
            )
            .join_from(MEASUREMENT_TABLE, CURVES_TABLE, isouter=True, onclause=_SAME_TAKE)
            .where(_MEASUREMENT.take_id == take_id)
        )
        with self._work.connection() as connection:
            row = connection.execute(wanted).one_or_none()
        if row is None:
            return None
        values = dict(row._mapping)
        values["summary"] = _object_of(values["summary"])
        values["curves"] = values["curves"] or b""
        return StoredMeasurement(**values)

    def summaries(self, take_ids: Iterable[str]) -> Mapping[str, dict[str, object]]:
        """Give what was measured on each of these takes as JSON objects, curves left out."""
        wanted = select(_MEASUREMENT.take_id, _MEASUREMENT.summary)
        found: dict[str, dict[str, object]] = {}
        with self._work.connection() as connection:
            for some in chunks(take_ids):
                rows = connection.execute(wanted.where(_MEASUREMENT.take_id.in_(some)))
                found.update({take_id: _object_of(summary) for take_id, summary in rows})
        return found

    def headline(self, take_id: str) -> MeasurementHeadline | None:
        """Give the measurement of a take in short."""
        return self.headlines((take_id,)).get(take_id)

    def headlines(self, take_ids: Iterable[str] | None = None) -> Mapping[str, MeasurementHeadline]:
        """Give measurements in short, of all takes unless named; one query for thousands."""
        wanted = select(
            _MEASUREMENT.take_id,
            _MEASUREMENT.algorithm,
            _MEASUREMENT.measured_at,
            _MEASUREMENT.stale,
            _MEASUREMENT.failure,
            _MEASUREMENT.headline,
        )
        if take_ids is None:
            return self._headlines(wanted)
        found: dict[str, MeasurementHeadline] = {}
        for some in chunks(take_ids):
            found.update(self._headlines(wanted.where(_MEASUREMENT.take_id.in_(some))))
        return found

    def mark_stale(self, take_id: str) -> None:
        """Note that the take's settings changed since it was measured."""
        with self._work.connection() as connection:
            connection.execute(
                update(MEASUREMENT_TABLE).where(_MEASUREMENT.take_id == take_id).values(stale=True)
            )

    def remove(self, take_id: str) -> None:
        """Forget the measurement of a take."""
        with self._work.connection():
            self._remove(take_id)

    def waiting(self, algorithm: str) -> tuple[str, ...]:
        """List the takes that this algorithm has not measured yet, the newest first.

        A take on which it failed does not wait: it would fail again.
        """
        wanted = (
            select(_TAKE.id)
            .join_from(
                TAKE_TABLE, MEASUREMENT_TABLE, _MEASUREMENT.take_id == _TAKE.id, isouter=True
            )
            .where(
                _TAKE.deleted_at.is_(None),
                or_(
                    _MEASUREMENT.take_id.is_(None),
                    _MEASUREMENT.algorithm != algorithm,
                    _MEASUREMENT.stale,
                ),
            )
            .order_by(_TAKE.recorded_at.desc(), _TAKE.id)
        )
        with self._work.connection() as connection:
            return tuple(connection.scalars(wanted))

    def _remove(self, take_id: str) -> None:
        with self._work.connection() as connection:
            connection.execute(delete(CURVES_TABLE).where(_CURVES.take_id == take_id))
            connection.execute(delete(MEASUREMENT_TABLE).where(_MEASUREMENT.take_id == take_id))

    def _headlines(self, wanted: Select[*tuple[Any, ...]]) -> dict[str, MeasurementHeadline]:
        with self._work.connection() as connection:
            rows = connection.execute(wanted).all()
        return {
            take_id: MeasurementHeadline(
                take_id, algorithm, measured_at, _json_object(headline), failure, stale
            )
            for take_id, algorithm, measured_at, stale, failure, headline in rows
        }


def _object_of(packed: bytes) -> dict[str, object]:
    try:
        return _json_object(zlib.decompress(packed))
    except zlib.error as problem:
        raise UnreadableValue(str(problem)) from problem


def _json_object(text: str | bytes) -> dict[str, object]:
    try:
        found = json.loads(text)
    except ValueError as problem:
        raise UnreadableValue(str(problem)) from problem
    if not isinstance(found, dict):
        raise UnreadableValue("not an object")
    return found


_SAME_TAKE = _CURVES.take_id == _MEASUREMENT.take_id


def without_lists(summary: Mapping[str, object]) -> dict[str, object]:
    """Give a JSON object without the lists in it, at any depth."""
    return {
        key: without_lists(value) if isinstance(value, Mapping) else value
        for key, value in summary.items()
        if not isinstance(value, list | tuple)
    }
