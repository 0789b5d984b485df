"""``demo``: an invented player's eight weeks, measured for real."""

from datetime import timedelta
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from app.cli.console import remark, say, watched
from app.cli.program import Program
from app.cli.windows import run_windows
from app.journal.failures import PlainFailure

if TYPE_CHECKING:
    from app.services.workbench import Workbench

# Before six the story ends yesterday: its last evening would not fit into today yet.
_MORNING = timedelta(hours=6)


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("demo")(demo)


def demo(
    context: typer.Context,
    folder: Annotated[
        Path | None,
        typer.Option(
            "--folder", metavar="DIR", help="Build it here; else in the cache.", show_default=False
        ),
    ] = None,
    fresh: Annotated[bool, typer.Option("--fresh", help="Build it anew.")] = False,
    window: Annotated[
        bool, typer.Option("--window/--no-window", help="Open the window on it.")
    ] = True,
) -> None:
    """Build a demo journal and open it; your own journal is never touched.

    An invented violist prepares one study over eight weeks. Every take is rendered
    and measured for real; the second run finds it ready.
    """
    from app.services.demo import demo_end, refuse_foreign  # noqa: PLC0415 - only when run
    from app.services.display import display_problem  # noqa: PLC0415

    program = Program.of(context)
    place = folder if folder is not None else _default_folder()
    journal = place / "journal"
    _refuse_players_journal(program, place, journal)
    refuse_foreign(journal)
    end = (program.now() - _MORNING).date()
    if fresh or demo_end(journal) is None:
        remark("Building the demo: rendering and measuring about 40 takes.")
        watched(
            "demo",
            lambda progress, stop: program.build_demo(
                journal, end=end, progress=progress, should_stop=stop
            ),
        )
    with program.open_workbench(journal, create=False) as bench:
        from app.services.demo.summary import summarise  # noqa: PLC0415

        summary = summarise(bench)
        say(summary)
        problem = display_problem() if window else "No window was asked for."
        if problem:
            _write_instead(bench, place, summary, problem)
            return
    raise typer.Exit(run_windows(program, journal, create=False))


def _write_instead(bench: "Workbench", place: Path, summary: str, why: str) -> None:
    from app.services.pictures import pictures  # noqa: PLC0415 - matplotlib, only when needed
    from app.services.plain import plain_failures  # noqa: PLC0415

    with plain_failures("the pictures were not written"):
        text = place / "summary.txt"
        text.write_text(summary + "\n", encoding="utf-8")
        files = (text, *pictures(bench, place / "pictures"))
    say("")
    say(f"{why} Summary and pictures:")
    for file in files:
        say(f"  {file}")


def _default_folder() -> Path:
    import platformdirs  # noqa: PLC0415 - only when needed

    return Path(platformdirs.user_cache_dir("passagework", appauthor=False)) / "demo"


def _refuse_players_journal(program: Program, place: Path, journal: Path) -> None:
    own = program.default_journal_dir().absolute()
    for folder in (place.absolute(), journal.absolute()):
        if folder == own or ((folder / "journal.db").exists() and folder == place.absolute()):
            raise PlainFailure(
                f"{folder} is a journal of your own, so the demo leaves it alone.",
                "Choose another folder with --folder.",
            )
