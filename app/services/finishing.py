"""From a recording's PCM to a filed take: encoded, verified, tagged, and only then tidied up."""

from dataclasses import replace
from pathlib import Path

from app.journal.practice_days import practice_day
from app.journal.records import Origin, Take
from app.services import unfiled
from app.services.attempts import Attempts
from app.services.input_levels import levels_of
from app.services.plain import plain_failures
from app.services.stopping import Progress, ShouldStop, stopped_by
from app.services.take_filing import NewTake, PlacedFile, TakeFiler
from app.services.views import PendingTake
from app.store.store import Store


class Finisher:
    """Files recordings; whatever fails, their PCM stays."""

    def __init__(self, store: Store, filer: TakeFiler, attempts: Attempts) -> None:
        self._store = store
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
            unfiled.remove(pending)
            return filed
        new, pcm = self._described(pending)

        def place(path: Path, tags: dict[str, str]) -> PlacedFile:
            return _encoded(pcm, path, tags, progress, should_stop)

        with plain_failures("the recording is kept, but not filed yet"):
            take = self._filer.file(new, place)
        if pending.id:
            self._attempts.ended(replace(pending, duration_s=take.duration_s))
        unfiled.remove(pending)
        progress(1.0)
        return take

    def _described(self, pending: PendingTake) -> tuple[NewTake, Path]:
        pcm, ended, clipped = pending.pcm, pending.ended, pending.clipped_samples
        if pending.recovered:
            from audio.take_file import recover  # noqa: PLC0415 - libsndfile, only when needed

            with plain_failures("the recording stays as it is"):
                recovered = recover(pending.pcm)
            pcm, clipped = recovered.path, recovered.clipped_samples
        settings = self._store.settings.get()
        peak_dbfs, quiet_dbfs = levels_of(pcm)
        passage_id = pending.passage_id
        if passage_id is not None and self._store.passages.get(passage_id) is None:
            passage_id = None
        new = NewTake(
            id=pending.id,
            practice_day=practice_day(pending.started_at, turn_hour=settings.day_turn_hour),
            recorded_at=pending.started_at,
            passage_id=passage_id,
            origin=Origin.RECOVERED if pending.recovered else Origin.RECORDED,
            settings=pending.settings,
            suffix=".flac",
            aim=pending.aim,
            dropped_frames=pending.dropped_frames,
            clipped_samples=clipped,
            ended=ended,
            no_retake=pending.no_retake,
            retake_reason=pending.retake_reason,
            input_device=pending.input_device,
            peak_dbfs=peak_dbfs,
            quiet_dbfs=quiet_dbfs,
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
