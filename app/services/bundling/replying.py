"""Replies: what a teacher adds to an opened bundle, and how it comes home."""

from dataclasses import dataclass, replace
from pathlib import Path

from app.journal.assignments import checked_assignment
from app.journal.bundles import Reply, read_reply, reply_text
from app.journal.failures import PlainFailure
from app.journal.kinds import Author
from app.journal.markers import checked
from app.journal.merging import merged
from app.journal.practice_days import Clock
from app.journal.records import Marker
from app.journal.remarks import checked_remark
from app.services.bundling.service import BundleService
from app.services.new_files import write_new
from app.services.plain import plain_failures
from app.store.store import Store


@dataclass(frozen=True, slots=True)
class ReplyReport:
    """What a reply brought.

    ``takes_missing`` counts takes of this journal that are gone, so that markers on
    them have no place.
    """

    markers_new: int
    markers_changed: int
    remarks_new: int
    assignments_new: int
    takes_missing: int


class ReplyService:
    """Writes replies, and takes them in.

    A reply changes only what a teacher wrote; the player's own markers stay as they are.
    """

    def __init__(self, store: Store, clock: Clock, bundles: BundleService) -> None:
        self._store = store
        self._clock = clock
        self._bundles = bundles

    def write(self, target: Path) -> Reply:
        """Write what the teacher added to an opened bundle: markers, remarks, tasks.

        Raises
        ------
        PlainFailure
            Where this journal was not opened from a bundle, nothing was added, or the
            file cannot be written.
        """
        manifest = self._bundles.visiting
        if manifest is None:
            raise PlainFailure(
                "This journal is your own: there is nobody to reply to.", "Open a bundle first."
            )
        since = manifest.made_at
        takes = self._store.takes.list()
        all_markers = self._store.markers.for_takes(take.id for take in takes)
        reply = Reply(
            bundle_id=manifest.id,
            made_at=self._clock(),
            markers=tuple(
                marker
                for some in all_markers.values()
                for marker in some
                if marker.author is Author.TEACHER and marker.changed_at > since
            ),
            remarks=tuple(r for r in self._store.remarks.list() if r.changed_at > since),
            assignments=tuple(a for a in self._store.assignments.list() if a.created_at > since),
        )
        if not (reply.markers or reply.remarks or reply.assignments):
            raise PlainFailure(
                "Nothing was added to this bundle yet.", "Place a marker or write a remark first."
            )
        write_new(target, reply_text(reply).encode(), "the reply was not written")
        return reply

    def receive(self, path: Path) -> ReplyReport:
        """Take a reply into this journal; the same reply twice adds nothing."""
        with plain_failures("the reply was not read"):
            reply = read_reply(path.read_bytes())
        missing: set[str] = set()
        new = changed = 0
        with self._store.transaction():
            for marker in reply.markers:
                added, altered = self._receive_marker(marker, missing)
                new, changed = new + added, changed + altered
            remarks = self._receive_remarks(reply)
            assignments = self._receive_assignments(reply)
        return ReplyReport(new, changed, remarks, assignments, len(missing))

    def _receive_marker(self, marker: Marker, missing: set[str]) -> tuple[bool, bool]:
        take = self._store.takes.get(marker.take_id)
        if take is None or take.deleted_at is not None:
            missing.add(marker.take_id)
            return False, False
        try:
            marker = checked(replace(marker, author=Author.TEACHER), take.duration_s)
        except PlainFailure:
            return False, False
        before = self._store.markers.get(marker.id)
        if before is None:
            self._store.markers.add(marker)
            return True, False
        after = merged([before], [marker])[0]
        # Only what the teacher wrote may be changed by the teacher.
        if after == before or before.author is not Author.TEACHER:
            return False, False
        self._store.markers.replace(replace(after, take_id=before.take_id))
        return False, True

    def _receive_remarks(self, reply: Reply) -> int:
        new = 0
        for remark in reply.remarks:
            before = self._store.remarks.get(remark.id)
            kept = checked_remark(replace(remark, author=Author.TEACHER))
            if before is None:
                self._store.remarks.add(kept)
                new += 1
            elif kept.changed_at > before.changed_at:
                self._store.remarks.replace(kept)
        return new

    def _receive_assignments(self, reply: Reply) -> int:
        passages = {passage.id for passage in self._store.passages.list()}
        new = 0
        for made in reply.assignments:
            if self._store.assignments.get(made.id) is not None:
                continue
            known = made.passage_id if made.passage_id in passages else None
            self._store.assignments.add(
                checked_assignment(
                    replace(made, passage_id=known, item_id=None, author=Author.TEACHER)
                )
            )
            new += 1
        return new
