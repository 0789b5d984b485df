"""Puts the rooms together: beside the program's start the only module that sees all of them."""

import os
from collections.abc import Callable
from datetime import date, datetime, tzinfo
from pathlib import Path
from typing import TYPE_CHECKING

from app.services.stopping import Progress, ShouldStop, never_stop, no_progress

if TYPE_CHECKING:
    from app.services.workbench import Workbench

__all__ = [
    "build_demo",
    "default_journal_dir",
    "local_now",
    "open_workbench",
]

JOURNAL_VARIABLE = "PASSAGEWORK_JOURNAL"


def local_now() -> datetime:
    """Give the instant now in the machine's time zone."""
    return datetime.now().astimezone()


def local_zone() -> tzinfo:
    """Give the machine's time zone, with its summer time rules."""
    import tzlocal  # noqa: PLC0415 - reads files; only when a journal is opened

    return tzlocal.get_localzone()


def default_journal_dir() -> Path:
    """Give the player's journal: ``PASSAGEWORK_JOURNAL``, or one in the documents folder."""
    chosen = os.environ.get(JOURNAL_VARIABLE, "").strip()
    if chosen:
        return Path(chosen).expanduser()
    import platformdirs  # noqa: PLC0415 - only when needed

    return Path(platformdirs.user_documents_dir()) / "Passagework"


def open_workbench(
    journal_dir: Path,
    *,
    create: bool = True,
    read_only: bool = False,
    clock: Callable[[], datetime] = local_now,
) -> "Workbench":
    """Open a journal.

    Parameters
    ----------
    journal_dir : Path
    create : bool
        Start a journal where there is none.
    read_only : bool
        Look only; another copy of the program may have it open.
    clock : callable
        Gives the present instant, timezone-aware.

    Raises
    ------
    PlainFailure
        Where it cannot be opened; the sentence says why.
    """
    from app.services.workbench import Workbench  # noqa: PLC0415 - loads the database
    from app.store.store import open_store  # noqa: PLC0415

    store = open_store(journal_dir, create=create, read_only=read_only, clock=clock)
    try:
        return Workbench(store, clock, local_zone())
    except BaseException:
        store.close()
        raise


def build_demo(
    journal_dir: Path,
    *,
    end: date,
    progress: Progress = no_progress,
    should_stop: ShouldStop = never_stop,
) -> None:
    """Build the demo journal in a new folder; see :func:`app.services.demo.build_demo`."""
    from app.services.demo import build_demo as build  # noqa: PLC0415 - only for the demo

    build(journal_dir, end=end, progress=progress, should_stop=should_stop)
