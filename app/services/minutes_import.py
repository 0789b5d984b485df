"""Minutes kept elsewhere come in from a CSV file, and never count twice."""

import codecs
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from app.journal.failures import PlainFailure
from app.journal.minutes_table import (
    AmountUnit,
    Mapped,
    Table,
    guessed,
    minutes_by_day,
    read_table,
    unit_of,
)
from app.journal.written_days import DateOrder, only_order, what_each_means
from app.services.plain import plain_failures
from app.services.practising import PractisingService
from app.services.stopping import Progress, no_progress
from app.services.wording import counted, day_text, listed, minutes_text
from app.store.store import Store

_MOST_BYTES = 20_000_000


@dataclass(frozen=True, slots=True)
class MinutesProposal:
    """A table of minutes before it is filed.

    Attributes
    ----------
    table : Table
    mapped : Mapped or None
        Which column is what; ``None`` where nothing fits and the player has to say.
    question : mapping
        Where the days can be read in several ways: what some cells would mean in each.
    new : mapping
        Minutes of the days that have none in the journal; only these will be filed.
    already : mapping
        Days that have minutes in the journal: (journal, file). They stay as they are.
    ahead : tuple of date
        Days that are not over yet; left out.
    unread : tuple of (int, str)
        Rows that could not be read, and why.
    repeated : tuple of (int, str)
        Rows that are the same as an earlier one; they are counted, and told.
    before : tuple of date
        New days inside the time whose hours were typed in as one entry from before the
        journal: the lifetime total would count them twice.
    """

    path: Path
    table: Table
    mapped: Mapped | None
    question: Mapping[DateOrder, tuple[tuple[str, date], ...]]
    new: Mapping[date, float]
    already: Mapping[date, tuple[float, float]]
    ahead: tuple[date, ...]
    unread: tuple[tuple[int, str], ...]
    repeated: tuple[tuple[int, str], ...] = ()
    before: tuple[date, ...] = ()

    @property
    def sentence(self) -> str:
        """What would be filed, in one line."""
        parts = [f"{counted(len(self.new), 'day')} new ({minutes_text(sum(self.new.values()))})"]
        if self.already:
            days = counted(len(self.already), "day")
            parts.append(f"{days} with minutes in the journal already, left as they are")
        if self.ahead:
            parts.append(f"{counted(len(self.ahead), 'day')} ahead left out")
        if self.unread:
            parts.append(f"{counted(len(self.unread), 'row')} not read")
        if self.repeated:
            rows = counted(len(self.repeated), "row")
            parts.append(f"{rows} the same as an earlier one, counted as another sitting")
        said = listed(parts) + "."
        if self.before:
            days = counted(len(self.before), "day")
            said += (
                f" {days} until {day_text(max(self.before))} may be in the hours from before"
                " this journal already: make that entry smaller, or the lifetime total counts"
                " them twice."
            )
        return said


class MinutesImportService:
    """Reads a table, proposes what to file, and files it."""

    def __init__(self, store: Store, practising: PractisingService) -> None:
        self._store = store
        self._practising = practising

    def propose(self, path: Path, mapped: Mapped | None = None) -> MinutesProposal:
        """Read a file; changes nothing.

        Parameters
        ----------
        path : Path
            Comma, semicolon, tab or bar separated text; UTF-8, UTF-16 with its mark, or
            Windows Latin.
        mapped : Mapped, optional
            Which column is what; guessed where left out.

        Raises
        ------
        PlainFailure
            Where the file cannot be read or is no table.
        """
        table = read_table(_text_of(path))
        mapped = mapped or guessed(table)
        empty = MinutesProposal(path, table, mapped, {}, {}, {}, (), ())
        if mapped is None:
            return empty
        _check(mapped, table)
        if mapped.date_order is None:
            cells = [row[mapped.date_column] for row in table.rows]
            return replace(empty, question=what_each_means(cells))
        found = minutes_by_day(table, mapped)
        today = self._practising.practice_day_now()
        ahead = tuple(day for day in found.minutes if day > today)
        past = {day: amount for day, amount in found.minutes.items() if day <= today}
        known = self._known(past)
        new = {day: amount for day, amount in past.items() if day not in known}
        return replace(
            empty,
            new=new,
            already={day: (known[day], past[day]) for day in past if day in known},
            ahead=ahead,
            unread=found.unread,
            repeated=found.repeated,
            before=self._in_earlier_hours(new),
        )

    def file(self, proposal: MinutesProposal, progress: Progress = no_progress) -> int:
        """File the minutes of the new days as typed ones; returns how many days.

        All of them or none. Days that got minutes meanwhile stay as they are, so the
        same file filed again changes nothing.
        """
        with self._store.transaction():
            known = self._known(proposal.new)
            fresh = {day: amount for day, amount in proposal.new.items() if day not in known}
            for done, (day, amount) in enumerate(fresh.items(), start=1):
                self._practising.set_minutes(day, amount)
                progress(done / len(fresh))
        return len(fresh)

    def way_written(self, proposal: MinutesProposal, date_column: int) -> DateOrder | None:
        """Give the one way another column of days can be read; instant, ``None`` to ask."""
        return only_order([row[date_column] for row in proposal.table.rows])

    def _in_earlier_hours(self, days: Iterable[date]) -> tuple[date, ...]:
        earlier = self._store.earlier_hours.get()
        if earlier is None or earlier.until is None:
            return ()
        return tuple(day for day in days if day <= earlier.until)

    def _known(self, days: Mapping[date, float]) -> Mapping[date, float]:
        if not days:
            return {}
        found = self._store.sessions.minutes_by_day(min(days), max(days))
        return {day: amount for day, amount in found.items() if amount > 0}


def mapping_of(
    table: Table,
    date_column: str | None,
    amount_column: str | None,
    unit: AmountUnit | None,
    order: DateOrder | None,
) -> Mapped:
    """Put what the player said over what can be guessed.

    Parameters
    ----------
    table : Table
    date_column, amount_column : str, optional
        Names of columns as in the header, upper and lower case the same.
    unit, order : optional
        As in :class:`app.journal.minutes_table.Mapped`.

    Raises
    ------
    PlainFailure
        Where a column is not there, or nothing fits and nothing was said.
    """
    base = guessed(table)
    if base is None and (date_column is None or amount_column is None):
        raise PlainFailure(
            "It is not clear which column holds the days and which the minutes.",
            f"Name them; there are {_columns(table)}.",
        )
    base = base or Mapped(0, 0, AmountUnit.MINUTES, None)
    if date_column is not None:
        number = _numbered(table, date_column)
        way = only_order([row[number] for row in table.rows])
        base = replace(base, date_column=number, date_order=way)
    if amount_column is not None:
        number = _numbered(table, amount_column)
        said = unit_of(table.header[number], [row[number] for row in table.rows])
        base = replace(base, amount_column=number, unit=said or AmountUnit.MINUTES)
    if unit is not None:
        base = replace(base, unit=unit)
    if order is not None:
        base = replace(base, date_order=order)
    return base


def _numbered(table: Table, name: str) -> int:
    names = [known.casefold() for known in table.header]
    if name.strip().casefold() not in names:
        raise PlainFailure(f"There is no column '{name}'.", f"There are {_columns(table)}.")
    return names.index(name.strip().casefold())


def _columns(table: Table) -> str:
    return listed([f"'{name}'" for name in table.header])


def _check(mapped: Mapped, table: Table) -> None:
    width = len(table.header)
    if not (0 <= mapped.date_column < width and 0 <= mapped.amount_column < width):
        raise PlainFailure("That column is not in the file.", f"There are {_columns(table)}.")
    if mapped.date_column == mapped.amount_column:
        raise PlainFailure(
            "One column cannot hold both the days and the minutes.", "Choose two columns."
        )


def _text_of(path: Path) -> str:
    with plain_failures("the minutes were not read"):
        size = path.stat().st_size
        data = path.read_bytes() if size <= _MOST_BYTES else b""
    if not size:
        raise PlainFailure(f"{path.name} is empty.", "Choose a CSV file of minutes.")
    if size > _MOST_BYTES:
        raise PlainFailure(
            f"{path.name} is larger than {_MOST_BYTES // 1_000_000} MB, too large for minutes.",
            "Choose a CSV file of minutes.",
        )
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        encodings: tuple[str, ...] = ("utf-16",)
    elif b"\0" in data:
        encodings = ()  # a spreadsheet or picture: bytes that no text has
    else:
        encodings = ("utf-8-sig", "cp1252")
    for encoding in encodings:
        try:
            return data.decode(encoding)
        except UnicodeDecodeError:
            continue
    raise PlainFailure(
        f"{path.name} is not a text file.", "Save or export the minutes as CSV, then choose that."
    )
