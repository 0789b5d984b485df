"""The rows of a note map: a take's readings on its notes, and the medians of a week."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from statistics import median

from app.services.wording import counted, short_day_text


@dataclass(frozen=True, slots=True)
class MapNote:
    """A note of the axis, where it begins in the reference take, or would if it played it."""

    index: int
    name: str
    midi: int | None
    at_s: float


@dataclass(frozen=True, slots=True)
class MapCell:
    """A note on a day; ``uncertainty`` is half of its 95 % interval, cents."""

    cents: float
    uncertainty: float | None
    certain: bool


@dataclass(frozen=True, slots=True)
class MapRow:
    """A take, or the takes of a week; a cell a note, ``None`` where it was not measured."""

    label: str
    first_day: date
    last_day: date
    take_ids: tuple[str, ...]
    cells: tuple[MapCell | None, ...]


def weeks_of(rows: Sequence[MapRow]) -> tuple[MapRow, ...]:
    """Give the median of each note over the takes of each week, Monday to Sunday.

    A week's cell is certain where most of its takes are; its uncertainty is ``None``,
    because the spread of the takes, not the measuring, then says how sure it is.
    """
    return tuple(_week(monday, members) for monday, members in _by_monday(rows).items())


def _by_monday(rows: Iterable[MapRow]) -> dict[date, list[MapRow]]:
    found: dict[date, list[MapRow]] = {}
    for row in rows:
        monday = row.first_day - timedelta(days=row.first_day.weekday())
        found.setdefault(monday, []).append(row)
    return found


def _week(monday: date, members: Sequence[MapRow]) -> MapRow:
    columns = zip(*(row.cells for row in members), strict=True)
    return MapRow(
        f"{short_day_text(monday)}, {counted(len(members), 'take')}",
        monday,
        monday + timedelta(days=6),
        tuple(take_id for row in members for take_id in row.take_ids),
        tuple(_middle(column) for column in columns),
    )


def _middle(column: Sequence[MapCell | None]) -> MapCell | None:
    cells = [cell for cell in column if cell is not None]
    if not cells:
        return None
    certain = sum(cell.certain for cell in cells) * 2 > len(cells)
    return MapCell(median(cell.cents for cell in cells), None, certain)
