"""The numbers behind the pictures of a passage, as tables (RFC 4180, full stop for decimals)."""

import csv
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from app.services.note_map import NoteMapView
from app.services.passages import passage_title
from app.services.reading_views import AnyReading, Reading
from app.services.views import ChangeRow, CompareView, NotePairRow, TrendView
from app.services.wording import day_text

Row = Sequence[object]


def weeks_rows(view: TrendView) -> Iterable[Row]:
    """Give the takes, then the weeks; ``half_width`` is half of a 95 % interval."""
    yield ("kind", "first_day", "measure", "unit", "value", "half_width", "days", "low", "high")
    band = {day: (low, high) for day, low, high in view.band}
    for point in view.points:
        low, high = band.get(point.practice_day, (None, None))
        numbers = (_number(point.value), _number(point.uncertainty), 1, _number(low), _number(high))
        yield ("take", point.practice_day, view.key, view.unit, *numbers)
    for week in view.weeks:
        numbers = (_number(week.median), _number(week.half_width), week.day_count, "", "")
        yield ("week", week.monday, view.key, view.unit, *numbers)


def note_map_rows(view: NoteMapView) -> Iterable[Row]:
    """Give a line for each note of each take; empty where it was not measured."""
    yield ("day", "take", "note_number", "note", "midi", "reference_at_s", "cents", "half_width")
    for row in view.takes:
        for note, cell in zip(view.notes, row.cells, strict=True):
            place = (note.index + 1, note.name, note.midi, f"{note.at_s:.3f}")
            cents = _number(cell.cents if cell else None)
            half = _number(cell.uncertainty if cell else None)
            yield (row.first_day, row.take_ids[0], *place, cents, half)


@dataclass(frozen=True, slots=True)
class BeforeAfterView:
    """Two takes before and after; ``before`` and ``after`` are their days, or files."""

    title: str
    before: str
    after: str
    notes: tuple[NotePairRow, ...]
    changes: tuple[ChangeRow, ...]
    sentence: str = ""


def before_and_after(view: CompareView) -> BeforeAfterView:
    """Take from a comparison in the journal what its picture shows."""
    passage = view.b.passage
    return BeforeAfterView(
        title=passage_title(passage) if passage is not None else "",
        before=day_text(view.a.row.practice_day),
        after=day_text(view.b.row.practice_day),
        notes=view.notes,
        changes=view.changes,
        sentence=view.sentence,
    )


def before_after_rows(view: BeforeAfterView) -> Iterable[Row]:
    """Give the measures of both takes, then their notes; changes are after minus before."""
    yield (
        "kind", "name", "before_at_s", "after_at_s", "unit", "before", "before_half_width",
        "after", "after_half_width", "change", "change_half_width", "word",
    )  # fmt: skip
    for change in view.changes:
        numbers = (*_pair(change.a), *_pair(change.b), *_pair(change.change))
        unit = change.a.unit if isinstance(change.a, Reading) else ""
        yield ("measure", change.label, "", "", unit, *numbers, change.word)
    for note in view.notes:
        numbers = (*_pair(note.a_deviation), *_pair(note.b_deviation), *_pair(note.change))
        places = (f"{note.a_start_s:.3f}", f"{note.b_start_s:.3f}")
        yield ("note", note.name, *places, "cents", *numbers, "")


def write_table(rows: Iterable[Row], path: Path) -> None:
    """Write a table; OSError where that cannot be."""
    with path.open("w", encoding="utf-8", newline="") as stream:
        csv.writer(stream).writerows(rows)


def _pair(reading: AnyReading) -> tuple[str, str]:
    if not isinstance(reading, Reading):
        return "", ""
    return _number(reading.value), _number(reading.uncertainty)


def _number(value: float | None) -> str:
    return "" if value is None else f"{value:.4g}"
