"""``recover``: files recordings that a crash left behind."""

from functools import partial
from typing import TYPE_CHECKING

import typer

from app.cli.console import remark, say, say_json, watched
from app.cli.importing import filed_text, row_object
from app.cli.options import JournalOption, JsonOption
from app.cli.program import Program
from app.journal.failures import PlainFailure

if TYPE_CHECKING:
    from app.services.views import TakeRow


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("recover")(recover)


def recover(
    context: typer.Context, journal: JournalOption = None, json: JsonOption = False
) -> None:
    """File recordings that a crash or a full disk left unfiled."""
    program = Program.of(context)
    rows: list[TakeRow] = []
    failures: list[PlainFailure] = []
    with program.open_workbench(program.journal(journal), create=False) as bench:
        for pending in bench.recording.unfinished():
            finish = partial(bench.recording.finish, pending)
            try:
                rows.append(watched("filing", finish))
            except PlainFailure as failure:
                failures.append(failure)
    if json:
        say_json([row_object(row) for row in rows])
    else:
        for row in rows:
            say(filed_text(row))
        if not rows and not failures:
            say("Every recording is filed.")
    for other in failures[1:]:
        remark(f"{other.sentence} {other.next_step}")
    if failures:
        raise failures[0]
