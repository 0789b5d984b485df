"""The columns that are judged in a passage: which measure, of the whole, a bar or a note."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

import numpy as np

from analysis.results import FloatArray
from app.services.map_rows import MapNote

if TYPE_CHECKING:
    from analysis.verdicts import Family

NOTES = "note_deviation_cents"
STEADINESS = "bar_steadiness_cv_percent"
BAR_KEYS = (
    "bar_mean_absolute_cents",
    "bar_precision_cents",
    "bar_bpm",
    STEADINESS,
    "bar_level_db",
)
_WHY_NOT = {STEADINESS: "Too few of its beats begin a note to tell how steady it is."}


@dataclass(frozen=True, slots=True)
class Bar:
    """A bar of the passage, where it begins in the reference take.

    ``pulse_beats`` and ``pulse_s`` are those of its beats on which a note begins, the first
    one of the next bar among them, in quarter notes and in the reference take.
    """

    name: str
    start_s: float
    end_s: float
    beats: float
    pulse_beats: tuple[float, ...] = ()
    pulse_s: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Place:
    """What one column is about."""

    scope: Literal["passage", "bar", "note"]
    name: str
    at_s: float | None
    midi: int | None


@dataclass(frozen=True, slots=True)
class Columns:
    """Families of columns with what each one is about; ``values`` are (takes, columns)."""

    values: Mapping[str, FloatArray]
    families: "tuple[Family, ...]"
    notes: Sequence[MapNote]
    bars: Sequence[Bar]
    left_out: tuple[str, ...]

    def place(self, family: str, column: int) -> Place:
        """Say what a column is about."""
        if family == NOTES:
            note = self.notes[column]
            return Place("note", note.name, note.at_s, note.midi)
        if family in BAR_KEYS:
            bar = self.bars[column]
            return Place("bar", bar.name, bar.start_s, None)
        return Place("passage", "", None, None)

    def why_not(self, family: str, column: int) -> str:
        """Say why a column has no value in any take, where it is known; else nothing."""
        if family in _WHY_NOT and not np.isfinite(self.values[family][:, column]).any():
            return _WHY_NOT[family]
        return ""


def columns_of(
    values: Mapping[str, FloatArray],
    *,
    at_tempo: frozenset[str] = frozenset(),
    notes: Sequence[MapNote] = (),
    bars: Sequence[Bar] = (),
    left_out: tuple[str, ...] = (),
) -> Columns:
    """Put tables of values into families; empty ones are passed over."""
    from analysis.verdicts import Family  # noqa: PLC0415 - scipy, only when needed

    families = tuple(
        Family(name, table, at_tempo=name in at_tempo)
        for name, table in values.items()
        if table.shape[1]
    )
    return Columns(values, families, notes, bars, left_out)
