"""Dated copies of the database, made while it is open and sound, and kept by rule.

A backup holds everything but the curves of the measurements and alignments: those are
most of the bytes and can be made again from the recordings. The copy is built beside its
final name and renamed, so a backup is whole or not there. One with a label was made
for a reason (before a migration, before a restore) and is never thinned out.
"""

import re
import sqlite3
from contextlib import closing, suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from app.journal.backup_rule import kept
from app.store.folders import Folders
from app.store.troubles import plain_database_failures, plain_file_failures

LEFT_OUT = frozenset({"measurement_curves", "pair_alignment", "take_outline"})

_NAME = re.compile(
    r"journal-(?P<at>\d{4}-\d\d-\d\d-\d{6})(?:-(?P<label>[a-z][a-z0-9-]*))?(?:-(?P<again>\d+))?\.db"
)
_STAMP = "%Y-%m-%d-%H%M%S"


@dataclass(frozen=True, slots=True)
class Backup:
    """A backup by its name: when it was made, by the clock of its day, and for what."""

    path: Path
    made_at: datetime
    label: str
    again: int
    """1, or which one it is of the same second."""


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
    name = f"journal-{now.strftime(_STAMP)}{tail}"
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


def backups_newest_first(folders: Folders) -> tuple[Backup, ...]:
    """List the backups, the newest first; files of other names are not ours."""
    found = (named(path) for path in folders.backups.glob("journal-*.db"))
    ours = [backup for backup in found if backup is not None]
    return tuple(sorted(ours, key=lambda b: (b.made_at, b.again), reverse=True))


def named(path: Path) -> Backup | None:
    """Read what a backup's name says; ``None`` where it is no backup's name."""
    match = _NAME.fullmatch(path.name)
    if match is None:
        return None
    try:
        made_at = datetime.strptime(match["at"], _STAMP)
    except ValueError:
        return None
    return Backup(path, made_at, match["label"] or "", int(match["again"] or 1))


def thin_out(folders: Folders) -> tuple[Path, ...]:
    """Remove the backups that the rule does not keep, and say which.

    Only plain ones are counted and removed. One that cannot be removed stays; the
    next time it is tried again.
    """
    plain = [backup for backup in backups_newest_first(folders) if not backup.label]
    stay = kept(backup.made_at for backup in plain)
    removed = []
    for backup in plain:
        if backup.made_at not in stay:
            with suppress(OSError):
                backup.path.unlink()
                removed.append(backup.path)
    return tuple(removed)


def free_name(path: Path) -> Path:
    """Give the path itself or, if it is taken, one with a number appended."""
    free, again = path, 1
    while free.exists():
        again += 1
        free = path.with_name(f"{path.stem}-{again}{path.suffix}")
    return free
