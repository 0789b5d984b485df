"""``open``: the window on the player's journal."""

from pathlib import Path
from typing import Annotated

import typer

from app.cli import windows
from app.cli.options import JournalOption
from app.cli.program import Program


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
    raise typer.Exit(windows.open_window(Program.of(context), journal, bundle))
