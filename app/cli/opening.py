"""``open``: the window on the player's journal."""

from pathlib import Path

import typer

from app.cli.console import remark, watched
from app.cli.options import JournalOption
from app.cli.program import Program
from app.cli.repair import restore_text
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
    raise typer.Exit(run_windows(program, program.journal(journal)))


def run_windows(program: Program, folder: Path, *, create: bool = True) -> int:
    """Show the window; again after going back to a backup, until it is simply closed."""
    told = ""
    while True:
        with program.open_workbench(folder, create=create) as bench:
            waiting = bench.recording.unfinished()
            if waiting:
                remark(f"Recordings not filed yet: {len(waiting)}; the Practice page offers them.")
            end = program.run_window(bench, told=told)
        if not end.restore:
            return end.exit_code
        told = _restored(program, folder, end.restore)


def _restored(program: Program, folder: Path, backup: str) -> str:
    """Go back to a backup and say how that went: the window that opens next shows it."""
    try:
        found = watched(
            "restoring", lambda progress, stop: program.restore(folder, backup, progress, stop)
        )
    except PlainFailure as failure:
        return f"{failure.sentence} {failure.next_step}".strip()
    return restore_text(found)
