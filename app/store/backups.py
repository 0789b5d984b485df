"""Copies of the database, made while it is open and sound.

A backup holds everything but the curves of the measurements: those are most of the
bytes and can be measured again from the recordings. The copy is built beside its
final name and renamed, so a backup is whole or not there.
"""

import sqlite3
from contextlib import closing, suppress
from datetime import datetime
from pathlib import Path

from app.store.folders import Folders
from app.store.troubles import plain_database_failures, plain_file_failures

LEFT_OUT = frozenset({"measurement_curves"})


def back_up(folders: Folders, now: datetime, *, label: str = "") -> Path:
    """Copy the database into the backup folder and say where.

    Parameters
    ----------
    folders : Folders
        The journal.
    now : datetime
        Goes into the name, as does ``label`` (``"before-0002"``).

    Raises
    ------
    PlainFailure
        Where the disk is full or refuses; no part of a backup is left then.
    """
    tail = f"-{label}" if label else ""
    name = f"journal-{now:%Y-%m-%d-%H%M%S}{tail}"
    with plain_file_failures(folders.journal):
        folders.backups.mkdir(exist_ok=True)
    target = free_name(folders.backups / f"{name}.db")
    temporary = target.with_suffix(".part")
    try:
        with plain_database_failures(folders.database), plain_file_failures(folders.journal):
            copy_database(folders.database, temporary)
            temporary.replace(target)
    except BaseException:
        with suppress(OSError):
            temporary.unlink(missing_ok=True)
        raise
    return target


def copy_database(source: Path, target: Path) -> None:
    """Copy every table but the ones left out, of whatever revision, into a new file."""
    target.unlink(missing_ok=True)
    with closing(sqlite3.connect(target, isolation_level=None)) as copy:
        # The path is a bound value: it may hold any character.
        copy.execute("ATTACH DATABASE ? AS source", (str(source),))
        copy.execute("BEGIN")
        objects = copy.execute(
            "SELECT type, name, sql FROM source.sqlite_master"
            " WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%'"
            " ORDER BY type != 'table'"
        ).fetchall()
        for kind, name, sql in objects:
            copy.execute(sql)
            if kind == "table" and name not in LEFT_OUT:
                quoted = '"' + name.replace('"', '""') + '"'
                copy.execute(f"INSERT INTO main.{quoted} SELECT * FROM source.{quoted}")  # noqa: S608
        copy.execute("COMMIT")


def backups_newest_first(folders: Folders) -> tuple[Path, ...]:
    """List the backups, the newest first."""
    return tuple(sorted(folders.backups.glob("journal-*.db"), reverse=True))


def free_name(path: Path) -> Path:
    """Give the path itself or, if it is taken, one with a number appended."""
    free, again = path, 1
    while free.exists():
        again += 1
        free = path.with_name(f"{path.stem}-{again}{path.suffix}")
    return free
