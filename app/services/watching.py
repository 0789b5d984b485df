"""The watched folder: new clips of a phone are offered, filed with one call, never twice.

A phone's sync puts its clips into a folder. Whatever arrives there is told by its
content: once it is filed, or put aside, it is not offered again under any name.
"""

import time
from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

from app.journal.failures import PlainFailure
from app.journal.practice_clock import is_later
from app.journal.practice_days import Clock
from app.journal.records import JournalSettings
from app.services.clip_folders import clips_in
from app.services.importing import ImportingService
from app.services.plain import plain_failures
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
    part_of,
    stop_if,
    stopped_by,
)
from app.services.views import ImportProposal, TakeRow
from app.store.store import Store

BACK = timedelta(days=14)
"""How much older than the choice of the folder a clip may be and still be new."""

SETTLED_S = 5.0
"""A file that changed more recently may still be arriving."""

MOST_OFFERED = 20

_Stamp = tuple[str, int, int]


class WatchService:
    """Offers the new clips of the folder that the player chose.

    Parameters
    ----------
    store, clock, importing
    wall_s : callable
        Seconds as file times count them; replaced in tests.
    """

    def __init__(
        self,
        store: Store,
        clock: Clock,
        importing: ImportingService,
        wall_s: Callable[[], float] = time.time,
    ) -> None:
        self._store = store
        self._clock = clock
        self._importing = importing
        self._wall_s = wall_s
        self._digests: dict[_Stamp, str] = {}
        self._offered: dict[str, ImportProposal] = {}

    def folder(self) -> Path | None:
        """Give the watched folder."""
        chosen = self._store.settings.get().watched_folder
        return Path(chosen) if chosen else None

    def watch(self, folder: Path | None) -> JournalSettings:
        """Choose the folder to watch, or none.

        Raises
        ------
        PlainFailure
            Where it is no folder, or lies in the journal itself.
        """
        settings = self._store.settings.get()
        if folder is None:
            changed = replace(settings, watched_folder=None, watched_since=None)
        else:
            path = folder.expanduser().absolute()
            if not path.is_dir():
                raise PlainFailure(f"There is no folder {path}.", "Choose one that is there.")
            journal = self._store.folders.journal.resolve()
            if path.resolve() == journal or journal in path.resolve().parents:
                raise PlainFailure(
                    "The journal's own folder cannot be watched.",
                    "Choose the folder where your phone's clips arrive.",
                )
            is_same = settings.watched_folder == str(path)
            since = settings.watched_since if is_same else self._clock()
            changed = replace(settings, watched_folder=str(path), watched_since=since)
        self._store.settings.replace(changed)
        return changed

    def offers(
        self, progress: Progress = no_progress, should_stop: ShouldStop = never_stop
    ) -> tuple[ImportProposal, ...]:
        """Give the clips that are new, with the day and passage proposed, oldest first.

        At most :data:`MOST_OFFERED` at once, the newest of them; a file that may still
        be arriving waits for the next look. Long where clips are new: they are decoded
        to their end. A clip that cannot be read is offered with the reason.

        Raises
        ------
        PlainFailure
            Where the folder is gone, for instance because a drive is not plugged in.
        """
        folder = self.folder()
        if folder is None:
            return ()
        with plain_failures("the watched folder was not looked at"):
            if not folder.is_dir():
                raise PlainFailure(
                    f"The watched folder {folder} is not there.",
                    "Plug in its drive, or choose another folder in the settings.",
                )
            new = self._new_clips(folder, should_stop)
        found: list[ImportProposal] = []
        for number, (path, digest) in enumerate(new):
            stop_if(should_stop)
            step = part_of(progress, number / len(new), (number + 1) / len(new))
            if digest not in self._offered or self._offered[digest].path != path:
                (proposal,) = self._importing.propose([path], None, None, step, should_stop)
                self._offered[digest] = proposal
            proposal = self._offered[digest]
            found.append(replace(proposal, passage_id=self._passage_for(proposal)))
        progress(1.0)
        return tuple(sorted(found, key=lambda proposal: proposal.recorded_at.timestamp()))

    def file(
        self,
        proposals: Sequence[ImportProposal],
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> tuple[TakeRow, ...]:
        """File offers as they are or as the player corrected them; the originals stay."""
        return self._importing.file(proposals, progress, should_stop)

    def put_aside(self, proposals: Sequence[ImportProposal]) -> None:
        """Do not offer these clips again; the files stay where they are."""
        digests = [self._digest(proposal.path, never_stop) for proposal in proposals]
        with self._store.transaction():
            for digest in digests:
                self._store.put_aside.add(digest)

    def offer_again(self) -> None:
        """Offer everything again that was put aside."""
        with self._store.transaction():
            for digest in self._store.put_aside.list():
                self._store.put_aside.remove(digest)

    def _new_clips(self, folder: Path, should_stop: ShouldStop) -> list[tuple[Path, str]]:
        aside, since = set(self._store.put_aside.list()), self._store.settings.get().watched_since
        oldest_s = (since - BACK).timestamp() if since else 0.0
        newest_s = self._wall_s() - SETTLED_S
        clips = [
            (path, written_s)
            for path, written_s in clips_in(folder)
            if oldest_s <= written_s <= newest_s
        ]
        found: dict[str, Path] = {}
        for path, _ in sorted(clips, key=lambda clip: -clip[1]):
            stop_if(should_stop)
            digest = self._digest(path, should_stop)
            if digest in aside or digest in found or self._store.takes.by_sha256(digest):
                continue
            if self._importing.is_kept_whole(digest):
                continue
            found[digest] = path
            if len(found) == MOST_OFFERED:
                break
        return [(path, digest) for digest, path in found.items()]

    def _digest(self, path: Path, should_stop: ShouldStop) -> str:
        from audio.importing import CopyStopped, sha256_of  # noqa: PLC0415 - only when needed

        with plain_failures("the clip was not read"):
            status = path.stat()
            stamp = (str(path), status.st_size, status.st_mtime_ns)
            if stamp not in self._digests:
                with stopped_by(CopyStopped):
                    self._digests[stamp] = sha256_of(path, should_stop=should_stop)
        return self._digests[stamp]

    def _passage_for(self, proposal: ImportProposal) -> str | None:
        """Propose what was practised just then, else what was recorded last before it."""
        items = {item.id: item for item in self._store.items.list()}
        day, at = proposal.practice_day, proposal.recorded_at
        for block in self._store.blocks.of_days(day, day):
            item = items.get(block.item_id or "")
            covers = not (is_later(block.started_at, at) or is_later(at, block.ended_at))
            if covers and item is not None and item.passage_id:
                return item.passage_id
        takes = [t for t in self._store.takes.list(last_day=day) if t.passage_id]
        earlier = [t for t in takes if not is_later(t.recorded_at, at)]
        return (earlier or takes)[-1].passage_id if takes else None
