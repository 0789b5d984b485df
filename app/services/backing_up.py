"""Dated backups of an open journal's database."""

import logging
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from app.journal.failures import PlainFailure
from app.journal.practice_days import Clock
from app.store.backups import Backup, backups_newest_first, thin_out
from app.store.folders import Folders
from app.store.store import Store

_WHY = {"": "", "before-restore": "before going back to an earlier one"}
_MIGRATION = "before-"

log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True)
class BackupRow:
    """A backup in a list: its file name, when it was made, why, and its size.

    ``reason`` is empty for the ordinary ones, which are kept by rule; the others stay.
    """

    name: str
    made_at: datetime
    reason: str
    size_bytes: int


class BackupService:
    """Makes backups and thins them out: 7 daily, 8 weekly, one of every year."""

    def __init__(self, store: Store, clock: Clock) -> None:
        self._store = store
        self._clock = clock

    def list(self) -> tuple[BackupRow, ...]:
        """List the backups, the newest first."""
        return rows_of(self._store.folders)

    def make(self) -> BackupRow:
        """Make one now, then thin out by the rule.

        Raises
        ------
        PlainFailure
            Where the disk is full or refuses, or the journal is open to look at only.
        """
        made = self._store.back_up()
        thin_out(self._store.folders)
        return _row_of(next(b for b in backups_newest_first(self._store.folders) if b.path == made))

    def make_if_due(self) -> bool:
        """Make today's ordinary backup if there is none yet; tells whether one was made.

        Nothing is due in a journal that is only looked at or that nothing was done in.
        """
        if self._store.read_only or not self._store.was_changed:
            return False
        today = self._clock().date()
        if any(not row.reason and row.made_at.date() == today for row in self.list()):
            return False
        self.make()
        return True

    def close(self) -> None:
        """Make today's backup before the journal is closed; a full disk is only logged."""
        try:
            self.make_if_due()
        except PlainFailure as failure:
            log.warning("Today's backup was not made: %s %s", failure.sentence, failure.next_step)


def backups_of(journal_dir: Path) -> tuple[BackupRow, ...]:
    """List the backups of a journal, open or not, the newest first."""
    return rows_of(Folders(journal_dir.expanduser().absolute()))


def rows_of(folders: Folders) -> tuple[BackupRow, ...]:
    """Give the backups of a journal's folders as rows; one that vanishes is left out."""
    rows = []
    for backup in backups_newest_first(folders):
        try:
            rows.append(_row_of(backup))
        except FileNotFoundError:
            continue
    return tuple(rows)


def _row_of(backup: Backup) -> BackupRow:
    return BackupRow(
        backup.path.name, backup.made_at, _reason(backup.label), backup.path.stat().st_size
    )


def _reason(label: str) -> str:
    words = _WHY.get(label)
    if words is not None:
        return words
    return "before a change of the database's form" if label.startswith(_MIGRATION) else label
