"""From a recording's PCM to a filed take: encoded, verified, tagged, and only then tidied up."""

import uuid
from dataclasses import replace
from pathlib import Path

from app.journal.kinds import Author, MarkerState, Origin
from app.journal.markers import checked
from app.journal.practice_days import Clock
from app.journal.records import Marker, Take
from app.services import unfiled
from app.services.attempts import Attempts
from app.services.day_now import day_of
from app.services.input_levels import levels_of
from app.services.plain import plain_failures
from app.services.stopping import Progress, ShouldStop, stopped_by
from app.services.take_filing import NewTake, PlacedFile, TakeFiler
from app.services.views import PendingTake
from app.store.store import Store

_OTHER = "other"
_MARKED = "marked while playing"
_BEFORE_THE_END_S = 0.01
_MARKS = uuid.UUID("5d0c7ab5-2f4e-4b54-9a55-6d7f1f0f5c1e")


class Finisher:
    """Files recordings; whatever fails, their PCM stays."""

    def __init__(self, store: Store, clock: Clock, filer: TakeFiler, attempts: Attempts) -> None:
        self._store = store
        self._clock = clock
        self._filer = filer
        self._attempts = attempts

    def finish(self, pending: PendingTake, progress: Progress, should_stop: ShouldStop) -> Take:
        """Encode, verify, tag and file a recording, then remove its PCM.

        Raises
        ------
        PlainFailure, Stopped
            The PCM stays.
        """
        filed = self._store.takes.get(pending.id) if pending.id else None
        if filed is not None:
            # A crash came between filing and tidying up: the take is safe already.
            self._place_marks(filed, pending.marks_s)
            unfiled.remove(pending)
            return filed
        new, pcm = self._described(pending)

        def place(path: Path, tags: dict[str, str]) -> PlacedFile:
            return _encoded(pcm, path, tags, progress, should_stop)

        with plain_failures("the recording is kept, but not filed yet"):
            take = self._filer.file(new, place)
        if pending.id:
            self._attempts.ended(replace(pending, duration_s=take.duration_s))
        self._place_marks(take, pending.marks_s)
        unfiled.remove(pending)
        progress(1.0)
        return take

    def _place_marks(self, take: Take, marks_s: tuple[float, ...]) -> None:
        """Turn the moments marked while playing into markers, each once whatever happens."""
        if not marks_s:
            return
        categories, now = self._store.settings.get().categories, self._clock()
        category = _OTHER if _OTHER in categories else categories[-1]
        last_s = max(0.0, take.duration_s - _BEFORE_THE_END_S)
        with self._store.transaction():
            for number, at_s in enumerate(marks_s):
                marker = Marker(
                    id=uuid.uuid5(_MARKS, f"{take.id}:{number}").hex,
                    take_id=take.id,
                    start_s=min(at_s, last_s),
                    end_s=None,
                    category=category,
                    weight=2,
                    text=_MARKED,
                    author=Author.SELF,
                    state=MarkerState.TO_WORK_ON,
                    created_at=now,
                    changed_at=now,
                )
                if self._store.markers.get(marker.id) is None:
                    self._store.markers.add(checked(marker, take.duration_s))

    def _described(self, pending: PendingTake) -> tuple[NewTake, Path]:
        pcm, ended, clipped = pending.pcm, pending.ended, pending.clipped_samples
        if pending.recovered:
            from audio.take_file import recover  # noqa: PLC0415 - libsndfile, only when needed

            with plain_failures("the recording stays as it is"):
                recovered = recover(pending.pcm)
            pcm, clipped = recovered.path, recovered.clipped_samples
        peak_dbfs, quiet_dbfs = levels_of(pcm)
        passage_id = pending.passage_id
        if passage_id is not None and self._store.passages.get(passage_id) is None:
            passage_id = None
        new = NewTake(
            id=pending.id,
            practice_day=day_of(self._store, pending.started_at),
            recorded_at=pending.started_at,
            passage_id=passage_id,
            origin=Origin.RECOVERED if pending.recovered else Origin.RECORDED,
            settings=pending.settings,
            suffix=".flac",
            aim=pending.aim,
            dropped_frames=pending.dropped_frames,
            clipped_samples=clipped,
            ended=" ".join(part for part in (ended, pending.input_note) if part),
            no_retake=pending.no_retake,
            retake_reason=pending.retake_reason,
            input_device=pending.input_device,
            peak_dbfs=peak_dbfs,
            quiet_dbfs=quiet_dbfs,
            input_channel=pending.input_channel,
        )
        return new, pcm


def _encoded(
    pcm: Path, path: Path, tags: dict[str, str], progress: Progress, should_stop: ShouldStop
) -> PlacedFile:
    from audio.encoding import EncodingStopped, encode_flac  # noqa: PLC0415 - only when needed
    from audio.importing import sha256_of  # noqa: PLC0415

    with stopped_by(EncodingStopped):
        made = encode_flac(pcm, path, tags, should_stop=should_stop, on_progress=progress)
    return PlacedFile(
        sha256=sha256_of(path),
        duration_s=made.frames / made.sample_rate_hz,
        sample_rate_hz=made.sample_rate_hz,
        channels=made.channels,
        note=made.note or "",
    )
