"""Bundles of an open journal."""

import tempfile
from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.bundle_names import MANIFEST_NAME
from app.journal.failures import PlainFailure
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
from app.store.folders import Folders
from app.store.store import Store

if TYPE_CHECKING:
    from app.journal.bundles import BundleManifest
    from app.journal.contents import Contents
    from app.journal.practice_days import Clock
    from app.journal.records import Marker, Take


@dataclass(frozen=True, slots=True)
class MergeReport:
    """What a merge brought: new takes and markers, and takes that were there already.

    ``recordings_missing`` are left out, and so are ``takes_unread``, of which the bundle
    holds no notes that can be read.
    """

    takes_new: int
    takes_known: int
    markers_new: int
    recordings_missing: tuple[str, ...] = ()
    takes_unread: int = 0


class BundleService:
    """Writes bundles and merges them."""

    def __init__(self, store: Store, clock: "Clock") -> None:
        self._store = store
        self._clock = clock

    @property
    def visiting(self) -> "BundleManifest | None":
        """What bundle this journal was made from, if it was opened from one."""
        try:
            text = (self._store.folders.journal / MANIFEST_NAME).read_bytes()
        except OSError:
            return None
        from app.journal.bundles import read_manifest  # noqa: PLC0415 - in bundles only

        return read_manifest(text)

    def write(
        self,
        first_day: date,
        last_day: date,
        target: Path,
        *,
        with_video: bool = False,
        whole_record: bool = False,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> "BundleManifest":
        """Write the days into a new file; see :func:`write_bundle`."""
        from app.services.bundling.writing import write_bundle  # noqa: PLC0415 - seldom

        if last_day < first_day:
            raise PlainFailure("The last day lies before the first.", "Swap the two days.")
        return write_bundle(
            self._store,
            target,
            (first_day, last_day),
            self._clock(),
            with_video=with_video,
            whole_record=whole_record,
            progress=progress,
            should_stop=should_stop,
        )

    def merge(
        self,
        bundle: Path,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> MergeReport:
        """Take everything of a bundle into this journal; doubles and loses nothing.

        Raises
        ------
        PlainFailure
            Where the bundle cannot be read or the journal cannot be written to;
            nothing was changed then.
        Stopped
            Once `should_stop` says so; nothing was changed then.
        """
        from app.journal.merging import union  # noqa: PLC0415 - seldom
        from app.services.bundling.unpacking import unpack  # noqa: PLC0415
        from app.store.rebuild import read_sidecars  # noqa: PLC0415

        with tempfile.TemporaryDirectory(prefix="passagework-", ignore_cleanup_errors=True) as name:
            there = Folders(Path(name))
            manifest = unpack(bundle, there.journal, part_of(progress, 0.0, 0.4), should_stop)
            theirs = read_sidecars(there, no_progress, should_stop)
            if theirs.newer:
                raise PlainFailure(
                    "This bundle was made by a newer version of the program.",
                    "Install the newest version.",
                )
            missing = _without_recording(theirs, there)
            ours = self._store.contents()
            both = union(ours, theirs)
            new = [take for take in both.takes.values() if take.id not in ours.takes]
            placed: list[Path] = []
            try:
                for done, take in enumerate(new):
                    stop_if(should_stop)
                    both.takes[take.id] = self._place(take, there, placed, should_stop)
                    progress(0.4 + 0.6 * (done + 1) / len(new))
                self._copy_scores(there)
                self._store.put_contents(both)
            except BaseException:
                for path in placed:  # nothing refers to them
                    path.unlink(missing_ok=True)
                raise
        return MergeReport(
            takes_new=len(new),
            takes_known=len(theirs.takes) - len(new),
            markers_new=_count(both.markers.values()) - _count(ours.markers.values()),
            recordings_missing=missing,
            takes_unread=max(0, manifest.takes - len(theirs.takes) - len(missing)),
        )

    def _place(
        self, take: "Take", there: Folders, placed: list[Path], should_stop: ShouldStop
    ) -> "Take":
        """Copy a recording to a free name of its day; gives the take that names it."""
        from audio.copying import CopyStopped, copy_original  # noqa: PLC0415

        source = there.absolute(take.file)
        target = self._store.folders.absolute(take.file)
        if target.exists():
            again = 2
            while target.exists():
                target = target.with_name(f"{Path(take.file).stem}-{again}{target.suffix}")
                again += 1
        with plain_failures("the bundle was not merged"), stopped_by(CopyStopped):
            placed.append(target)
            copy_original(source, target, should_stop=should_stop)
        return replace(take, file=self._store.folders.relative(target))

    def _copy_scores(self, there: Folders) -> None:
        """Scores are named by their content, so one of the same name is the same."""
        from audio.copying import copy_original  # noqa: PLC0415

        for path in sorted(there.scores.glob("*")) if there.scores.is_dir() else ():
            target = self._store.folders.scores / path.name
            if path.is_file() and not target.exists():
                with plain_failures("the bundle was not merged"):
                    copy_original(path, target)


def _without_recording(theirs: "Contents", there: Folders) -> tuple[str, ...]:
    """Take out takes whose recording is not in the bundle, or is not the one filed."""
    from app.store.repair import sha256_of  # noqa: PLC0415 - seldom

    missing = []
    for take in tuple(theirs.takes.values()):
        path = there.absolute(take.file)
        if not path.is_file() or sha256_of(path) != take.sha256:
            missing.append(take.file)
            del theirs.takes[take.id]
            theirs.markers.pop(take.id, None)
    return tuple(missing)


def _count(markers: Iterable[tuple["Marker", ...]]) -> int:
    return sum(len(some) for some in markers)
