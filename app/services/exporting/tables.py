"""Tables as CSV (RFC 4180): UTF-8, a comma between cells, one header line."""

import csv
import io
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from app.journal.records import Marker

_NOTE_COLUMNS = (
    "start_s",
    "end_s",
    "name",
    "midi",
    "pitch_hz",
    "deviation_cents",
    "uncertainty_cents",
    "kind",
    "open_string",
    "vibrato_rate_hz",
    "vibrato_extent_cents",
    "status",
    "reason",
)
_MARKER_COLUMNS = ("start_s", "end_s", "category", "weight", "state", "author", "text")


def csv_text(columns: Sequence[str], rows: Iterable[Sequence[object]]) -> str:
    """Write a table; ``None`` is an empty cell."""
    out = io.StringIO(newline="")
    writer = csv.writer(out)
    writer.writerow(columns)
    writer.writerows(rows)
    return out.getvalue()


def notes_csv(notes: Iterable[Mapping[str, Any]]) -> str:
    """Write the notes of the machine-readable object, one a row, units in the names.

    A cell without a measured number is empty, and ``reason`` says why.
    """
    return csv_text(_NOTE_COLUMNS, (_note_row(note) for note in notes))


def _note_row(note: Mapping[str, Any]) -> list[object]:
    vibrato = note["vibrato"]
    flat = dict(note) | {
        "vibrato_rate_hz": vibrato["rate_hz"],
        "vibrato_extent_cents": vibrato["extent_cents"],
    }
    return [flat[column] for column in _NOTE_COLUMNS]


def markers_csv(markers: Iterable[Marker]) -> str:
    """Write markers, one a row."""
    return csv_text(
        _MARKER_COLUMNS,
        ([getattr(marker, column) for column in _MARKER_COLUMNS] for marker in markers),
    )
