"""``open``: the window on the player's journal."""

from pathlib import Path
from typing import Annotated

import typer

from app.cli.console import on_terminal, remark, watched
from app.cli.options import JournalOption
from app.cli.program import Program
from app.cli.repair import restore_text
from app.journal.failures import PlainFailure


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("open")(open_window)


def open_window(
    context: typer.Context,
    bundle: Annotated[
        Path | None,
        typer.Argument(
            metavar="[BUNDLE]", help="A bundle somebody gave you, to look at and write into."
        ),
    ] = None,
    journal: JournalOption = None,
) -> None:
    """Open the window on your journal; a new one is started where there is none.

    A bundle opens beside your journal and changes nothing in it: place markers and
    write remarks, then send them back ('passagework export reply').
    """
    from app.services.display import display_problem  # noqa: PLC0415 - only when run

    program, problem = Program.of(context), display_problem()
    try:
        home = program.journal(journal)
        folder = home if bundle is None else _visited(program, bundle)
        if not problem:
            raise typer.Exit(run_windows(program, folder, home=home))
    except PlainFailure as failure:
        # Who clicked on the program or on a bundle sees no terminal.
        if not problem and not on_terminal():
            program.show_failure(failure)
        raise
    where = f" --journal '{folder}'" if bundle is not None else ""
    raise PlainFailure(problem, f"Use the other commands here{where}: passagework --help.")


def _visited(program: Program, bundle: Path) -> Path:
    return watched("opening", lambda progress, stop: program.visit(bundle, progress, stop))


def run_windows(
    program: Program, folder: Path, *, create: bool = True, home: Path | None = None
) -> int:
    """Show the window; again after a backup or a bundle was wanted, until it is closed.

    `home` is the player's own journal, where `folder` is not.
    """
    told, home = "", home or folder
    while True:
        with program.open_workbench(folder, create=create) as bench:
            waiting = bench.recording.unfinished()
            if waiting:
                remark(f"Recordings not filed yet: {len(waiting)}; the Practice page offers them.")
            end = program.run_window(bench, told=told)
        if end.restore:
            told = _restored(program, folder, end.restore)
        elif end.visit is not None:
            folder, told = _opened(program, end.visit, folder)
        elif end.home:
            folder, told = home, ""
        else:
            return end.exit_code


def _opened(program: Program, bundle: Path, folder: Path) -> tuple[Path, str]:
    """Give the journal to open next, and what to say: the same one where that fails."""
    try:
        return _visited(program, bundle), ""
    except PlainFailure as failure:
        return folder, f"{failure.sentence} {failure.next_step}".strip()


def _restored(program: Program, folder: Path, backup: str) -> str:
    """Go back to a backup and say how that went: the window that opens next shows it."""
    try:
        found = watched(
            "restoring", lambda progress, stop: program.restore(folder, backup, progress, stop)
        )
    except PlainFailure as failure:
        return f"{failure.sentence} {failure.next_step}".strip()
    return restore_text(found)
