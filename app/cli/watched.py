"""``watched``: the folder where a phone's clips arrive, and what is new in it."""

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from app.cli.console import EXPECTED_FAILURE, remark, say, say_json
from app.cli.console import watched as with_bar
from app.cli.importing import filed_text, row_object
from app.cli.options import JournalOption, JsonOption
from app.cli.program import Program

if TYPE_CHECKING:
    from app.services.views import ImportProposal, TakeRow
    from app.services.workbench import Workbench


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("watched")(watched)


def watched(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    folder: Annotated[
        Path | None,
        typer.Option("--folder", metavar="DIR", help="Watch this folder from now on."),
    ] = None,
    none: Annotated[bool, typer.Option("--none", help="Watch no folder any more.")] = False,
    file: Annotated[
        bool, typer.Option("--file", help="File the new clips as they are proposed.")
    ] = False,
    aside: Annotated[
        bool, typer.Option("--aside", help="Do not offer the new clips again.")
    ] = False,
    passage: Annotated[
        str | None, typer.Option("--passage", metavar="NAME", help="File them under this passage.")
    ] = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Say which clips are new in the watched folder; choose it, file them, put them aside."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal)) as bench:
        if none or folder is not None:
            bench.watching.watch(None if none else folder)
        offers = with_bar("looking", bench.watching.offers)
        rows: tuple[TakeRow, ...] = ()
        failures: list[str] = []
        if file:
            rows, failures = _filed(bench, offers, passage)
        if aside:
            bench.watching.put_aside(offers)
        chosen = bench.watching.folder()
        if json:
            say_json(
                {
                    "folder": str(chosen) if chosen else None,
                    "clips": [_clip_object(offer) for offer in offers],
                    "filed": [row_object(row) for row in rows],
                }
            )
        elif file:
            for row in rows:
                say(filed_text(row))
        else:
            _show(chosen, offers)
    for sentence in failures:
        remark(sentence)
    if failures:
        raise typer.Exit(EXPECTED_FAILURE)


def _filed(
    bench: "Workbench", offers: "tuple[ImportProposal, ...]", passage: str | None
) -> "tuple[tuple[TakeRow, ...], list[str]]":
    from app.services.importing import SomeNotFiled  # noqa: PLC0415 - only when run

    if passage and offers:
        found, _ = bench.passages.find_or_add(passage)
        offers = tuple(replace(offer, passage_id=found.id) for offer in offers)
    failures = [f"{offer.path.name}: {offer.failure}" for offer in offers if offer.failure]
    try:
        rows = with_bar(
            "filing", lambda progress, stop: bench.watching.file(offers, progress, stop)
        )
    except SomeNotFiled as some:
        rows = some.rows
        failures += [f"{path.name}: {failure.sentence}" for path, failure in some.failures]
    return rows, failures


def _show(folder: Path | None, offers: "tuple[ImportProposal, ...]") -> None:
    from app.services.wording import day_text, length_text  # noqa: PLC0415 - only when run

    if folder is None:
        say("No folder is watched; --folder DIR chooses one.")
        return
    say(f"{folder}" if offers else f"{folder}: nothing new.")
    for offer in offers:
        about = offer.failure or offer.question
        where = f"{day_text(offer.practice_day)} ({offer.recorded_at_source})"
        say(f"  {offer.path.name}, {length_text(offer.duration_s)}: {about or where}")


def _clip_object(offer: "ImportProposal") -> dict[str, object]:
    return {
        "file": str(offer.path),
        "practice_day": offer.practice_day.isoformat(),
        "source": offer.recorded_at_source,
        "duration_s": offer.duration_s,
        "passage_id": offer.passage_id,
        "question": offer.question or None,
        "failure": offer.failure or None,
    }
