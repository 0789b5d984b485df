"""The rows of the accuracy table, and what a section of it is made of."""

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Literal

import numpy as np

Tally = dict[str, list[float]]
"""Errors, counts and shares by name, added up over the pieces of a section."""

Piece = tuple[str, int]
"""A case or condition, and a seed or number within it."""

SCHEMA = 1


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the table.

    Attributes
    ----------
    measure, unit, source : str
        What was measured, in which unit, and where the truth comes from.
    value : float or None
        ``None`` where nothing could be measured; ``sentence`` then says why.
    at_least, at_most : float or None
        The bound; a row with neither is shown, not judged.
    count : int
        How many frames, notes, beats or cases the value rests on.
    """

    measure: str
    unit: str
    source: str
    value: float | None
    at_least: float | None = None
    at_most: float | None = None
    count: int = 1
    digits: int = 2
    sentence: str = ""

    @property
    def verdict(self) -> Literal["held", "missed", "shown"]:
        """Whether the value keeps its bound; nothing measured is a miss."""
        if self.at_least is None and self.at_most is None:
            return "shown"
        if self.value is None:
            return "missed"
        is_low = self.at_least is not None and self.value < self.at_least
        is_high = self.at_most is not None and self.value > self.at_most
        return "missed" if is_low or is_high else "held"

    def as_json(self) -> dict[str, object]:
        """Give the row as JSON-compatible values, free of NaN."""
        return {
            "measure": self.measure,
            "unit": self.unit,
            "source": self.source,
            "at_least": self.at_least,
            "at_most": self.at_most,
            "measured": None if self.value is None else round(self.value, 6),
            "count": self.count,
            "verdict": self.verdict,
            "sentence": self.sentence or None,
        }


@dataclass(frozen=True, slots=True)
class Section:
    """A part of the table: pieces that are measured one by one, then added up.

    ``measure`` is a function at the top of its module, so that another process finds
    it; ``rows`` turns everything that was tallied into lines.
    """

    name: str
    pieces: tuple[Piece, ...]
    measure: Callable[[Piece], Tally]
    rows: Callable[[Tally], tuple[Row, ...]]


@dataclass(frozen=True, slots=True)
class CheckReport:
    """The whole table: section names and their rows, and how long it took.

    ``algorithm`` names the versions of everything that measured.
    """

    algorithm: str
    sections: tuple[tuple[str, tuple[Row, ...]], ...]
    elapsed_s: float

    def count(self, verdict: str) -> int:
        """Count the rows with a verdict."""
        return sum(row.verdict == verdict for _name, rows in self.sections for row in rows)

    def as_json(self) -> dict[str, object]:
        """Give the machine-readable object (``app/schemas/check.schema.json``)."""
        return {
            "schema": SCHEMA,
            "algorithm": self.algorithm,
            "elapsed_s": round(self.elapsed_s, 2),
            "held": self.count("held"),
            "missed": self.count("missed"),
            "sections": [
                {"name": name, "rows": [row.as_json() for row in rows]}
                for name, rows in self.sections
            ],
        }


def add_up(tallies: Iterable[Tally]) -> Tally:
    """Put tallies together, in the order they are given."""
    total: Tally = {}
    for tally in tallies:
        for name, values in tally.items():
            total.setdefault(name, []).extend(values)
    return total


def percentile_of(values: list[float], percent: float) -> float | None:
    """Give a percentile; ``None`` of nothing."""
    return float(np.percentile(values, percent)) if values else None


def share_of(values: list[float]) -> float | None:
    """Give the percentage of ones among zeros and ones; ``None`` of nothing."""
    return 100.0 * math.fsum(values) / len(values) if values else None


def quantile_row(  # noqa: PLR0917 - reads as a line of the table
    tally: Tally, name: str, percent: float, measure: str, unit: str, source: str,
    *, at_least: float | None = None, at_most: float | None = None, digits: int = 2,
) -> Row:  # fmt: skip
    """Make a row of a percentile (50: median, 0 and 100: extremes) of tallied errors."""
    values = tally.get(name, [])
    value = percentile_of(values, percent)
    return Row(
        measure, unit, source, value, at_least, at_most, len(values), digits,
        "" if values else "Nothing was measured.",
    )  # fmt: skip


def share_row(
    tally: Tally, name: str, measure: str, source: str,
    *, at_least: float | None = None, at_most: float | None = None, digits: int = 1,
) -> Row:  # fmt: skip
    """Make a row of the percentage of ones among tallied zeros and ones."""
    values = tally.get(name, [])
    return Row(
        measure, "%", source, share_of(values), at_least, at_most, len(values), digits,
        "" if values else "Nothing was measured.",
    )  # fmt: skip
