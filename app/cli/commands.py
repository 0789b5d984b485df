"""Puts the commands together, from one module a group."""

from collections.abc import Iterable, Sequence
from importlib import import_module
from typing import Annotated, Final

import typer

from app import __version__
from app.cli.console import say

GROUPS: Final = {
    "opening": ("open",),
    "demo": ("demo",),
    "importing": ("import",),
    "record": ("record",),
    "recover": ("recover",),
    "latency": ("latency",),
    "sounding": ("sounding",),
    "no_retake": ("no-retake",),
    "watched": ("watched",),
    "measure": ("measure",),
    "mark": ("mark",),
    "compare": ("compare",),
    "follow": ("follow",),
    "clock": ("clock",),
    "count": ("count", "report"),
    "promise": ("promise",),
    "plan": ("plan", "assign", "occasion"),
    "history": ("history", "import-minutes"),
    "score": ("score",),
    "check": ("check",),
    "repair": ("repair",),
    "export": ("export",),
    "share": ("share",),
}
"""The modules beside this one in the order of the help, and the commands of each."""

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
        from app.cli import opening  # noqa: PLC0415 - only without a command

        opening.open_window(context)


def build(arguments: Sequence[str] = ()) -> typer.Typer:
    """Give the command line; hand it a :class:`Program` as its context object.

    Parameters
    ----------
    arguments : sequence of str
        What is going to be run. Where it begins with a command, only that one's group is
        loaded; else all of them.
    """
    app = typer.Typer(
        name="passagework",
        help=_ABOUT,
        invoke_without_command=True,
        callback=_start,
        add_completion=False,
        pretty_exceptions_enable=False,
        rich_markup_mode=None,
        context_settings={"max_content_width": 100},
    )
    for group in _groups_for(arguments):
        import_module(f"app.cli.{group}").add_to(app)
    _tell_whole(app)
    return app


def _tell_whole(app: typer.Typer) -> None:
    """Let lists of commands wrap the first sentence of each; else they cut it off."""
    for command in app.registered_commands:
        about = (command.callback and command.callback.__doc__) or ""
        command.short_help = about.partition("\n")[0]
    for group in app.registered_groups:
        if group.typer_instance is not None:
            group.short_help = str(group.typer_instance.info.help).partition("\n")[0]
            _tell_whole(group.typer_instance)


def _groups_for(arguments: Sequence[str]) -> Iterable[str]:
    wanted = arguments[0] if arguments else ""
    for group, names in GROUPS.items():
        if wanted in names:
            return (group,)
    return GROUPS
