"""The window, one after the other where the player goes to a backup or a bundle.

Without the command line's library: whoever clicks on the program waits for nothing that
only reads options.
"""

from collections.abc import Sequence
from pathlib import Path

from app.cli.console import on_terminal, remark, watched
from app.cli.program import Program
from app.journal.failures import PlainFailure


def plainly_open(arguments: Sequence[str]) -> tuple[Path | None] | None:
    """Read the plainest ways to start: nothing, ``open``, ``open --journal DIR``.

    Returns
    -------
    tuple of (Path or None)
        The journal that is named, if one is.
    None
        It is something else; the whole command line has to read it.
    """
    match list(arguments):
        case [] | ["open"]:
            return (None,)
        case ["open", "--journal", folder] if folder and not folder.startswith("-"):
            return (Path(folder),)
    return None


def open_window(program: Program, journal: Path | None, bundle: Path | None = None) -> int:
    """Show the window on a journal, or on a bundle; returns the exit code.

    Raises
    ------
    PlainFailure
        Where it cannot be opened, or there is no display.
    """
    from app.services.display import display_problem  # noqa: PLC0415 - only when run

    problem = display_problem()
    try:
        home = program.journal(journal)
        folder = home if bundle is None else _visited(program, bundle)
        if not problem:
            return run_windows(program, folder, home=home)
    except PlainFailure as failure:
        # Who clicked on the program or on a bundle sees no terminal.
        if not problem and not on_terminal():
            program.show_failure(failure)
        raise
    where = f" --journal '{folder}'" if bundle is not None else ""
    raise PlainFailure(problem, f"Use the other commands here{where}: passagework --help.")


def run_windows(
    program: Program, folder: Path, *, create: bool = True, home: Path | None = None
) -> int:
    """Show the window; again after a backup or a bundle was wanted, until it is closed.

    `home` is the player's own journal, where `folder` is not.
    """
    told, home = "", home or folder
    while True:
        with program.open_workbench(folder, create=create) as bench:
            waiting = bench.recording.unfinished() if bench.has_unfiled else ()
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


def _visited(program: Program, bundle: Path) -> Path:
    return watched("opening", lambda progress, stop: program.visit(bundle, progress, stop))


def _opened(program: Program, bundle: Path, folder: Path) -> tuple[Path, str]:
    """Give the journal to open next, and what to say: the same one where that fails."""
    try:
        return _visited(program, bundle), ""
    except PlainFailure as failure:
        return folder, f"{failure.sentence} {failure.next_step}".strip()


def _restored(program: Program, folder: Path, backup: str) -> str:
    """Go back to a backup and say how that went: the window that opens next shows it."""
    from app.cli.repair import restore_text  # noqa: PLC0415 - only then

    try:
        found = watched(
            "restoring", lambda progress, stop: program.restore(folder, backup, progress, stop)
        )
    except PlainFailure as failure:
        return f"{failure.sentence} {failure.next_step}".strip()
    return restore_text(found)
