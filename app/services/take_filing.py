"""How a new recording becomes a take: named, kept, and only then in the database."""

import threading
import uuid
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path

from app.journal.failures import PlainFailure
from app.journal.kinds import Origin
from app.journal.naming import slug
from app.journal.records import PlayingSettings, Take
from app.services.passages import passage_title
from app.services.sessions import session_of
from app.store.store import Store


@dataclass(frozen=True, slots=True)
class NewTake:
    """What is known of a take before its file has its place."""

    practice_day: date
    recorded_at: datetime
    passage_id: str | None
    origin: Origin
    settings: PlayingSettings
    suffix: str
    id: str = ""
    aim: str = ""
    original_name: str = ""
    recorded_at_source: str = ""
    dropped_frames: int = 0
    clipped_samples: int = 0
    ended: str = ""
    no_retake: bool = False
    retake_reason: str = ""
    input_device: str = ""
    peak_dbfs: float | None = None
    quiet_dbfs: float | None = None
    input_channel: int | None = None


@dataclass(frozen=True, slots=True)
class PlacedFile:
    """A finished file at its place in the journal."""

    sha256: str
    duration_s: float
    sample_rate_hz: int
    channels: int
    note: str = ""


Place = Callable[[Path, dict[str, str]], PlacedFile]
"""Makes the finished file at a path, with tags; leaves nothing there when it fails."""


def safe_suffix(path: Path) -> str:
    """Keep the kind of a file in its name; sidecars have .json to themselves."""
    suffix = path.suffix.lower()
    usable = suffix.removeprefix(".").isalnum() and suffix.isascii() and suffix != ".json"
    return suffix if usable else ".sound"


class TakeFiler:
    """Files new takes one after the other.

    The file comes first, complete and on the disk; then the database row in one
    transaction. Where the database refuses, the new file is removed again: its
    source (PCM or the player's own file) is still whole.

    ``refusal`` is raised instead of filing, in a journal that takes no new recordings.
    """

    def __init__(
        self, store: Store, clock: Callable[[], datetime], refusal: PlainFailure | None = None
    ) -> None:
        self._store = store
        self._clock = clock
        self._refusal = refusal
        self._lock = threading.Lock()

    def file(self, new: NewTake, place: Place) -> Take:
        """Make the file and keep the take.

        Parameters
        ----------
        new : NewTake
        place : callable
            Makes the file.

        Raises
        ------
        PlainFailure
            Where the journal cannot be written to; nothing new is left then.
        """
        self.check_open()
        with self._lock:
            passage = self._store.passages.get(new.passage_id)
            number = self._store.takes.next_number(new.practice_day, new.passage_id)
            relative = self._store.folders.new_take_file(
                practice_day=new.practice_day,
                recorded_at=new.recorded_at,
                passage_slug=slug(passage.name) if passage else None,
                number=number,
                suffix=new.suffix,
            )
            path = self._store.folders.absolute(relative)
            tags = {"DATE": new.practice_day.isoformat(), "TRACKNUMBER": str(number)}
            if passage is not None:
                tags["TITLE"] = passage_title(passage)
            placed = place(path, tags)
            try:
                return self._keep(new, placed, relative, number)
            except BaseException:
                if not self._is_kept(relative):
                    # Nothing refers to it; a leftover would look like a take.
                    with suppress(OSError):
                        path.unlink(missing_ok=True)
                raise

    def check_open(self) -> None:
        """Raise the refusal, if this journal takes no new recordings."""
        if self._refusal is not None:
            raise self._refusal

    def _is_kept(self, relative: str) -> bool:
        try:
            return self._store.takes.by_file(relative) is not None
        except PlainFailure:
            return True  # nobody can tell; a file too many is better than one too few

    def _keep(self, new: NewTake, placed: PlacedFile, relative: str, number: int) -> Take:
        with self._store.transaction():
            session = session_of(self._store, new.practice_day, new.recorded_at)
            take = Take(
                id=new.id or uuid.uuid4().hex,
                session_id=session.id,
                passage_id=new.passage_id,
                practice_day=new.practice_day,
                number=number,
                recorded_at=new.recorded_at,
                entered_at=self._clock(),
                origin=new.origin,
                file=relative,
                sha256=placed.sha256,
                duration_s=placed.duration_s,
                sample_rate_hz=placed.sample_rate_hz,
                channels=placed.channels,
                settings=new.settings,
                original_name=new.original_name,
                recorded_at_source=new.recorded_at_source,
                aim=new.aim,
                dropped_frames=new.dropped_frames,
                clipped_samples=new.clipped_samples,
                ended=" ".join(part for part in (new.ended, placed.note) if part),
                no_retake=new.no_retake,
                retake_reason=new.retake_reason,
                input_device=new.input_device,
                peak_dbfs=new.peak_dbfs,
                quiet_dbfs=new.quiet_dbfs,
                input_channel=new.input_channel,
            )
            self._store.takes.add(take)
        return take
