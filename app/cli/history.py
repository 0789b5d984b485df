"""``history`` and ``import-minutes``: what the record shows, and minutes kept elsewhere."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, Annotated

import typer

from app.cli.console import remark, say, say_json
from app.cli.options import JournalOption, JsonOption, day_from
from app.cli.program import Program
from app.journal.failures import PlainFailure
from app.journal.minutes_table import AmountUnit
from app.journal.written_days import DateOrder

if TYPE_CHECKING:
    from app.services.keeping_views import AssociationRow, RecordView
    from app.services.minutes_import import MinutesProposal
    from app.services.workbench import Workbench

_WEEKS_SAID = 8


def add_to(app: typer.Typer) -> None:
    """Add the commands."""
    app.command("history")(history)
    app.command("import-minutes")(import_minutes)


def history(
    context: typer.Context,
    earlier_hours: Annotated[
        float | None,
        typer.Option("--earlier-hours", metavar="H", help="Hours before the journal; 0: none."),
    ] = None,
    until: Annotated[
        str | None, typer.Option("--until", metavar="DAY", help="Until when those were.")
    ] = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Say what the record shows: weeks, habits, busier and quieter times, all hours."""
    program = Program.of(context)
    is_looking = earlier_hours is None
    with program.open_workbench(
        program.journal(journal), create=False, read_only=is_looking
    ) as bench:
        if earlier_hours == 0:
            bench.record.clear_earlier_hours()
        elif earlier_hours is not None:
            bench.record.set_earlier_hours(earlier_hours, day_from(until) if until else None)
        view, associations = bench.record.view(), bench.record.associations()
        if json:
            say_json(record_object(view, associations))
        else:
            _say_record(view, associations)


def import_minutes(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    file: Annotated[Path, typer.Argument(metavar="FILE", help="A CSV file of minutes.")],
    day_column: Annotated[
        str | None, typer.Option("--day-column", metavar="NAME", help="Column of the days.")
    ] = None,
    minutes_column: Annotated[
        str | None, typer.Option("--minutes-column", metavar="NAME", help="Column of the amounts.")
    ] = None,
    unit: Annotated[AmountUnit | None, typer.Option("--unit", help="What the amounts are.")] = None,
    order: Annotated[
        DateOrder | None, typer.Option("--order", help="How the days are written.")
    ] = None,
    look: Annotated[bool, typer.Option("--look", help="Say what would be filed, only.")] = False,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Take in minutes kept elsewhere; days that have minutes already stay as they are."""
    from app.services.minutes_import import mapping_of  # noqa: PLC0415 - only when run
    from app.services.wording import counted  # noqa: PLC0415 - only when run

    program = Program.of(context)
    folder = program.journal(journal)
    with _to_look_at(program, folder) if look else program.open_workbench(folder) as bench:
        table = bench.minutes_import.propose(file).table
        mapped = mapping_of(table, day_column, minutes_column, unit, order)
        proposal = bench.minutes_import.propose(file, mapped)
        if proposal.question:
            raise _question(proposal)
        filed = 0 if look else bench.minutes_import.file(proposal)
        for number, why in proposal.unread:
            remark(f"Row {number}: {why}.")
        if json:
            say_json(
                {
                    "filed_days": filed,
                    "new": {day.isoformat(): n for day, n in proposal.new.items()},
                    "already": [day.isoformat() for day in proposal.already],
                    "ahead": [day.isoformat() for day in proposal.ahead],
                    "unread": [{"row": row, "why": why} for row, why in proposal.unread],
                }
            )
        else:
            say(f"Nothing is filed yet: {proposal.sentence}" if look else proposal.sentence)
            if filed:
                say(f"Filed: {counted(filed, 'day')}.")


@contextmanager
def _to_look_at(program: Program, folder: Path) -> "Iterator[Workbench]":
    """Open a journal to compare with; an empty one, thrown away later, where none is begun."""
    if folder.exists():
        with program.open_workbench(folder, create=False, read_only=True) as bench:
            yield bench
        return
    remark(f"There is no journal in {folder} yet; to file would begin one there.")
    with TemporaryDirectory() as empty, program.open_workbench(Path(empty)) as bench:
        yield bench


def record_object(
    view: "RecordView", associations: "tuple[AssociationRow, ...]"
) -> dict[str, object]:
    """Give what the record shows as JSON."""

    def spans(name: str) -> list[dict[str, object]]:
        return [
            {
                "first_day": span.first_day.isoformat(),
                "minutes": round(span.minutes, 3),
                "days_practised": span.days_practised,
                "over": span.is_over,
            }
            for span in getattr(view, name)
        ]

    return {
        "weeks": spans("weeks"),
        "months": spans("months"),
        "weekdays": [
            {"weekday": row.weekday, "mean_minutes": round(row.mean_minutes, 3)}
            for row in view.weekdays
        ],
        "hours": [{"hour": row.hour, "minutes": round(row.minutes, 3)} for row in view.hours],
        "periods": [
            {
                "first_day": row.first_day.isoformat(),
                "last_day": row.last_day.isoformat(),
                "median_week_minutes": row.median_week_minutes,
                "word": row.word or None,
                "begins_between": [day.isoformat() for day in row.begins_between]
                if row.begins_between
                else None,
            }
            for row in view.periods
        ],
        "periods_sentence": view.periods_sentence,
        "method": view.method,
        "overuse_caution": view.overuse_caution,
        "earlier_hours": view.lifetime.earlier.hours if view.lifetime.earlier else None,
        "journal_minutes": round(view.lifetime.journal_minutes, 3),
        "total_hours": round(view.lifetime.total_hours, 3),
        "associations": [
            {
                "passage": row.passage_name,
                "pairs": row.pairs,
                "rank_correlation": row.rank_correlation,
                "p_value": row.p_value,
                "sentence": row.sentence,
            }
            for row in associations
        ],
        "sentences": list(view.sentences),
    }


def _say_record(view: "RecordView", associations: "tuple[AssociationRow, ...]") -> None:
    from app.services.wording import counted, day_text, minutes_text  # noqa: PLC0415

    for span in view.weeks[-_WEEKS_SAID:]:
        days = counted(span.days_practised, "day")
        so_far = "" if span.is_over else " so far"
        say(f"Week of {day_text(span.first_day)}: {minutes_text(span.minutes)}, {days}{so_far}")
    for row in view.periods:
        name = row.word or "first"
        line = f"{name}: {day_text(row.first_day)} to {day_text(row.last_day)}"
        line += f", {minutes_text(row.median_week_minutes)} a week"
        if row.begins_between:
            low, high = (day_text(day) for day in row.begins_between)
            line += f" (begins between the weeks of {low} and {high})"
        say(line)
    for sentence in (view.periods_sentence, *view.sentences, view.overuse_caution):
        if sentence:
            say(sentence)
    known = [one for one in associations if one.rank_correlation is not None]
    for association in known:
        say(f"{association.passage_name}: {association.sentence}")
    if len(known) < len(associations):
        others = counted(len(associations) - len(known), "passage")
        say(f"{others} with too few measured weeks, or no minutes logged on it, to say anything.")
    say(view.lifetime.sentence)
    if view.periods:
        say(view.method)


def _question(proposal: "MinutesProposal") -> PlainFailure:
    ways = []
    for order, cells in proposal.question.items():
        text, day = cells[0]
        ways.append(f"--order {order.value} ('{text}' is {day.isoformat()})")
    return PlainFailure(
        "The days of this file can be read in more than one way.",
        f"Say which: {' or '.join(ways)}.",
    )
