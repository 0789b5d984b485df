"""``export``: takes, days or everything as files that other programs read."""

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, TypeVar

import typer

from app.cli.bundles import write_bundle, write_reply
from app.cli.console import say, say_json, stopping_on_interrupt, watched
from app.cli.options import JournalOption, JsonOption, day_from
from app.cli.program import Program
from app.journal.failures import PlainFailure

if TYPE_CHECKING:
    from app.services.workbench import Workbench

K = TypeVar("K")

DAYS, EVERYTHING, BUNDLE, REPLY = "days", "everything", "bundle", "reply"


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("export")(export)


def export(
    context: typer.Context,
    what: Annotated[
        str,
        typer.Argument(metavar="TAKE|days|everything|bundle|reply", help="A take, or a word."),
    ],
    *,
    to: Annotated[Path, typer.Option("--to", help="File or folder to write.")] = Path(),
    form: Annotated[
        str,
        typer.Option(
            "--format",
            help="Of a take: jams, notes-csv, markers-csv, midi, wav (cue points),"
            " flac (chapters). Of days: csv, icalendar.",
        ),
    ] = "",
    first: Annotated[str, typer.Option("--from", metavar="DATE", help="First day.")] = "",
    last: Annotated[str, typer.Option("--until", metavar="DATE", help="Last day.")] = "",
    video: Annotated[
        bool, typer.Option("--video", help="Of a bundle: with the picture of filmed takes.")
    ] = False,
    whole_record: Annotated[
        bool,
        typer.Option(
            "--whole-record",
            help="Of a bundle: with promises, settings and all else, for a second computer.",
        ),
    ] = False,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Write a take, the practice days or the whole journal in open formats.

    'bundle' writes the takes of some days with all that was noted, for a teacher or a
    second computer; 'reply' what a teacher added to one.
    """
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False, read_only=True) as bench:
        if what == EVERYTHING:
            written = watched(
                "exporting", lambda progress, stop: bench.exports.everything(to, progress, stop)
            )
        elif what == DAYS:
            written = _days(bench, form or "csv", first, last, to)
        elif what == BUNDLE:
            written = write_bundle(
                bench,
                _span(bench, first, last),
                to,
                with_video=video,
                whole_record=whole_record,
            )
        elif what == REPLY:
            written = write_reply(bench, to)
        else:
            written = _take(bench, what, form or "jams", to)
    if json:
        say_json({"written": str(written)})
    else:
        say(str(written))


def _take(bench: "Workbench", what: str, form: str, to: Path) -> Path:
    from app.services.exporting.service import TakeFormat  # noqa: PLC0415 - only when run

    kind = _chosen(form, {kind.value: kind for kind in TakeFormat})
    with stopping_on_interrupt() as should_stop:
        return bench.exports.take(bench.filing.resolve(what), kind, to, should_stop)


def _days(bench: "Workbench", form: str, first: str, last: str, to: Path) -> Path:
    from app.services.exporting.service import DaysFormat  # noqa: PLC0415 - only when run

    kind = _chosen(form, {kind.value: kind for kind in DaysFormat})
    return bench.exports.days(kind, *_span(bench, first, last), to)


def _span(bench: "Workbench", first: str, last: str) -> tuple[date, date]:
    span = bench.practising.first_and_last_day()
    if span is None:
        raise PlainFailure("Nothing was practised yet.", "Record or import a take first.")
    first_day = day_from(first) if first else span[0]
    return first_day, day_from(last) if last else max(span[1], first_day)


def _chosen(form: str, kinds: dict[str, K]) -> K:
    if form not in kinds:
        raise PlainFailure(f"'{form}' is no format for this.", f"Choose one of {', '.join(kinds)}.")
    return kinds[form]
