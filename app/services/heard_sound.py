"""A take as it is played: read from its file where it is needed, never held whole for long."""

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.records import Take
from app.services.plain import plain_failures
from app.services.records_there import take_there
from app.services.stopping import Progress, ShouldStop, never_stop, no_progress, stopped_by
from app.store.store import Store

if TYPE_CHECKING:
    from audio.sources import FileSource, SoundSource

_LONG_S = 300.0
"""A compressed take that is longer is unpacked to disk once instead of held in memory."""


@dataclass(frozen=True, slots=True)
class HeardSound:
    """A take that is ready to be played, at the level it is played at."""

    take_id: str
    gain_db: float
    source: "SoundSource"
    sample_rate_hz: int
    file: "FileSource | None" = None

    def close(self) -> None:
        """Let go of the file; what still sounds goes over into silence."""
        if self.file is not None:
            self.file.close()


def heard_sound(
    store: Store,
    take_id: str,
    gain_db: float = 0.0,
    progress: Progress = no_progress,
    should_stop: ShouldStop = never_stop,
) -> HeardSound:
    """Open a take for playing.

    WAV, FLAC and AIFF are read where they are played, so an hour opens at once. Of other
    kinds no place can be found to the sample: short ones are decoded into memory, long
    ones once into the journal's cache folder.

    Raises
    ------
    PlainFailure
        Where the take is not there or cannot be read.
    """
    from audio.errors import AudioFailure  # noqa: PLC0415 - loads libsndfile; only when played
    from audio.sources import FileSource, ScaledSource, open_source  # noqa: PLC0415

    take = take_there(store, take_id)
    path = store.folders.absolute(take.file)
    source: SoundSource
    try:
        source = FileSource(path)
    except AudioFailure:
        if take.duration_s > _LONG_S:
            path = _unpacked(store, take, progress, should_stop)
        with plain_failures("the take was not read"):
            source, rate = open_source(path)
    else:
        rate = source.sample_rate_hz
    file = source if isinstance(source, FileSource) else None
    if gain_db:
        source = ScaledSource(source, gain_db)
    return HeardSound(take_id, gain_db, source, rate, file)


def _unpacked(store: Store, take: Take, progress: Progress, should_stop: ShouldStop) -> Path:
    """Give the decoded copy of a take, made on first use; it may be deleted at any time."""
    from audio.encoding import EncodingStopped  # noqa: PLC0415 - only where a long clip is played
    from audio.wave_copies import write_wave  # noqa: PLC0415

    kept = store.folders.cache / "sound" / f"{take.sha256[:32]}.wav"
    if kept.exists():
        return kept
    unfinished = kept.with_suffix(".part")
    with plain_failures("the take was not unpacked"), stopped_by(EncodingStopped):
        kept.parent.mkdir(parents=True, exist_ok=True)
        unfinished.unlink(missing_ok=True)
        try:
            write_wave(
                store.folders.absolute(take.file),
                unfinished,
                subtype="PCM_16",
                large=True,
                should_stop=should_stop,
                on_progress=progress,
            )
            unfinished.replace(kept)
        finally:
            unfinished.unlink(missing_ok=True)
    return kept
