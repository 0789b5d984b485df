"""The command line: thin, lazy, and plain about what went wrong.

Nothing here imports a service before a command runs, so that ``passagework --help``
answers at once. The commands come from one module a group; :func:`build` puts them
together.
"""

from typing import Annotated

import typer

from app import __version__
from app.cli import (
    check,
    clock,
    compare,
    count,
    demo,
    export,
    follow,
    history,
    importing,
    latency,
    mark,
    measure,
    no_retake,
    opening,
    plan,
    promise,
    record,
    recover,
    repair,
    score,
    share,
    sounding,
    watched,
)
from app.cli.console import say
from app.cli.program import Program

__all__ = ["Program", "build"]

_ABOUT = """Record, measure, mark and compare takes of what you practise.

Without a command the window opens on your journal.

Your journal is a folder on your own disk: --journal DIR, or the variable
PASSAGEWORK_JOURNAL, or 'Passagework' in your documents.
"""


def _tell_version(wanted: bool) -> None:
    if wanted:
        say(f"Passagework {__version__}")
        raise typer.Exit


def _start(
    context: typer.Context,
    _version: Annotated[
        bool,
        typer.Option(
            "--version",
            help="Say which version this is.",
            callback=_tell_version,
            is_eager=True,
        ),
    ] = False,
) -> None:
    if context.invoked_subcommand is None:
        opening.open_window(context)


def build() -> typer.Typer:
    """Give the whole command line; hand it a :class:`Program` as its context object."""
    app = typer.Typer(
        name="passagework",
        help=_ABOUT,
        invoke_without_command=True,
        callback=_start,
        add_completion=False,
        pretty_exceptions_enable=False,
        rich_markup_mode=None,
    )
    groups = (
        opening,
        demo,
        importing,
        record,
        recover,
        latency,
        sounding,
        no_retake,
        watched,
        measure,
        mark,
        compare,
        follow,
        clock,
        count,
        promise,
        plan,
        history,
        score,
        check,
        repair,
        export,
        share,
    )
    for group in groups:
        group.add_to(app)
    return app
