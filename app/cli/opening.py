"""``open``: the window on the player's journal."""

import typer

from app.cli.console import remark
from app.cli.options import JournalOption
from app.cli.program import Program
from app.journal.failures import PlainFailure


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("open")(open_window)


def open_window(context: typer.Context, journal: JournalOption = None) -> None:
    """Open the window on your journal; a new one is started where there is none."""
    from app.services.display import display_problem  # noqa: PLC0415 - only when run

    program = Program.of(context)
    problem = display_problem()
    if problem:
        raise PlainFailure(problem, "Use the other commands here: passagework --help.")
    with program.open_workbench(program.journal(journal)) as bench:
        waiting = bench.recording.unfinished()
        if waiting:
            remark(f"Recordings not filed yet: {len(waiting)}; the Practice page offers them.")
        code = program.run_window(bench)
    raise typer.Exit(code)
