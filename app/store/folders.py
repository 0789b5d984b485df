"""Where things lie in a journal.

::

    <journal>/
      journal.db            the database
      journal.json          sidecar: passages and settings
      clock.json            sidecar: the practice clock while it runs
      2026/2026-03-01/
        day.json            sidecar: sessions and rest of the day
        190509-etude-take-1.flac
        190509-etude-take-1.json
      scores/               scores of passages, as they were put beside them
      originals/            whole clips of which a take is a part
      backups/              copies of the database, damaged ones set aside
      trash/                what was discarded, by the day it was discarded on
      .recording/           takes while they sound, and those a crash left behind
      .cache/               can be deleted at any time

Nothing here removes or rewrites a recording.
"""

import os
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path, PurePosixPath
from typing import BinaryIO

from app.journal.naming import day_folder, take_file
from app.store.troubles import plain_file_failures

DATABASE_NAME = "journal.db"
DAY_CARD_NAME = "day.json"
SIDECAR_SUFFIX = ".json"


@dataclass(frozen=True, slots=True)
class Folders:
    """The paths of one journal."""

    journal: Path

    @property
    def database(self) -> Path:
        """The database file."""
        return self.journal / DATABASE_NAME

    @property
    def lock(self) -> Path:
        """The file whose lock says that the journal is open for writing."""
        return self.journal / ".lock"

    @property
    def backups(self) -> Path:
        """Copies of the database."""
        return self.journal / "backups"

    @property
    def scores(self) -> Path:
        """Scores of passages."""
        return self.journal / "scores"

    @property
    def originals(self) -> Path:
        """Whole clips of which a take is a part, named by their content."""
        return self.journal / "originals"

    @property
    def trash(self) -> Path:
        """What was discarded."""
        return self.journal / "trash"

    @property
    def recording(self) -> Path:
        """Takes while they sound."""
        return self.journal / ".recording"

    @property
    def cache(self) -> Path:
        """What can be made again at any time."""
        return self.journal / ".cache"

    @property
    def journal_card(self) -> Path:
        """The sidecar of passages and settings."""
        return self.journal / "journal.json"

    def day(self, practice_day: date) -> Path:
        """Give the folder of a practice day."""
        return self.absolute(day_folder(practice_day))

    def day_card(self, practice_day: date) -> Path:
        """Give the sidecar of a practice day."""
        return self.day(practice_day) / DAY_CARD_NAME

    def absolute(self, relative: str) -> Path:
        """Give the path of a file named relative to the journal.

        Raises
        ------
        ValueError
            For a name that leads out of the journal (a hand-made sidecar may hold one).
        """
        pure = PurePosixPath(relative)
        if pure.is_absolute() or ".." in pure.parts or "\\" in relative or ":" in relative:
            msg = f"{relative!r} is not a place in the journal"
            raise ValueError(msg)
        return self.journal.joinpath(*pure.parts)

    def relative(self, path: Path) -> str:
        """Name a file relative to the journal, ``/`` separated."""
        return path.resolve().relative_to(self.journal.resolve()).as_posix()

    def sidecar(self, relative: str) -> Path:
        """Give the sidecar of a recording named relative to the journal."""
        return self.absolute(relative).with_suffix(SIDECAR_SUFFIX)

    def new_take_file(
        self,
        *,
        practice_day: date,
        recorded_at: datetime,
        passage_slug: str | None,
        number: int,
        suffix: str = ".flac",
    ) -> str:
        """Choose a free name for a new recording, relative; makes the day's folder.

        The name is not reserved: create the file with :func:`open_new` or move a
        finished one to it with :func:`move_without_overwriting`.
        """
        folder = self.day(practice_day)
        with plain_file_failures(self.journal):
            folder.mkdir(parents=True, exist_ok=True)
            stems = {path.name.partition(".")[0].lower() for path in folder.iterdir()}
        return take_file(
            practice_day=practice_day,
            recorded_at=recorded_at,
            passage_slug=passage_slug,
            number=number,
            suffix=suffix,
            is_taken=lambda stem: PurePosixPath(stem).name.lower() in stems,
        )

    def to_trash(self, path: Path, today: date) -> Path:
        """Move a file of the journal to the trash, keeping its place in the name.

        Returns where it is now; nothing in the trash is overwritten.
        """
        place = self.trash / today.isoformat() / PurePosixPath(self.relative(path))
        with plain_file_failures(self.journal):
            place.parent.mkdir(parents=True, exist_ok=True)
            return move_without_overwriting(path, place)

    def from_trash(self, path: Path) -> Path:
        """Move a file back from the trash to where it was; returns where it is now."""
        inside = path.relative_to(self.trash)
        place = self.journal.joinpath(*inside.parts[1:])
        with plain_file_failures(self.journal):
            place.parent.mkdir(parents=True, exist_ok=True)
            return move_without_overwriting(path, place)

    def day_files(self) -> Iterator[Path]:
        """Walk over every file in the folders of the practice days, in order."""
        for year in sorted(self.journal.glob("[0-9][0-9][0-9][0-9]")):
            for folder in sorted(year.glob("[0-9]*-[0-9]*-[0-9]*")):
                if folder.is_dir():
                    yield from sorted(path for path in folder.iterdir() if path.is_file())


def move_without_overwriting(source: Path, target: Path) -> Path:
    """Rename a file within one file system; a taken name gets a number appended."""
    free, again = target, 1
    while True:
        try:
            with open_new(free):
                pass
        except FileExistsError:
            again += 1
            free = target.with_name(f"{target.stem}-{again}{target.suffix}")
            continue
        break
    # The name is ours now, as an empty file; replacing that one is atomic everywhere.
    try:
        source.replace(free)
    except OSError:
        free.unlink(missing_ok=True)
        raise
    sync_folder(free.parent)
    return free


def open_new(path: Path) -> BinaryIO:
    """Create a file that must not exist yet; for use in ``with``."""
    return path.open("xb")


def write_atomically(path: Path, text: str, *, sync: bool = True) -> None:
    """Write a text file so that a crash leaves the old content or the new one.

    With ``sync`` the new one is durable on return; without, once the caller has
    synced the folder (:func:`sync_folder`, once for many files).
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    temporary = path.with_name(f".{path.name}.part")
    try:
        with temporary.open("w", encoding="utf-8", newline="\n") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        temporary.replace(path)
    except BaseException:
        with suppress(OSError):
            temporary.unlink(missing_ok=True)
        raise
    if sync:
        sync_folder(path.parent)


def sync_folder(folder: Path) -> None:
    """Make a rename durable where the system can (not on Windows)."""
    if os.name == "nt":
        return
    with suppress(OSError):  # some network file systems refuse; the rename stands anyway
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
