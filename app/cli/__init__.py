"""The command line: thin, lazy, and plain about what went wrong.

Nothing here imports a service before a command runs, so that ``passagework --help``
answers at once. The commands come from one module a group; :func:`build` puts them
together.
"""

import typer

from app.cli import (
    compare,
    count,
    demo,
    importing,
    mark,
    measure,
    opening,
    record,
    recover,
    repair,
)
from app.cli.program import Program

__all__ = ["Program", "build"]

_ABOUT = """Record, measure, mark and compare takes of what you practise.

Your journal is a folder on your own disk: --journal DIR, or the variable
PASSAGEWORK_JOURNAL, or 'Passagework' in your documents.
"""


def build() -> typer.Typer:
    """Give the whole command line; hand it a :class:`Program` as its context object."""
    app = typer.Typer(
        name="passagework",
        help=_ABOUT,
        no_args_is_help=True,
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
        measure,
        mark,
        compare,
        count,
        repair,
    )
    for group in groups:
        group.add_to(app)
    return app
