"""Recording a take: what sounds is on disk within a second."""

from app.services.stopping import Progress, ShouldStop, never_stop, no_progress
from app.services.views import InputRow, LevelReading, PendingTake, TakeRow


class RecordingService:
    """Listens to an input, records from it, and files what was recorded."""

    def inputs(self) -> tuple[InputRow, ...]:
        """Give the recording inputs; PlainFailure with what to plug in when there are none."""
        raise NotImplementedError

    def listen(self, device_key: str | None = None) -> None:
        """Open an input to show its level."""
        raise NotImplementedError

    def stop_listening(self) -> None:
        """Close the input that shows its level."""
        raise NotImplementedError

    def level(self) -> LevelReading:
        """Give the level now (instant)."""
        raise NotImplementedError

    def start(
        self, passage_id: str | None = None, aim: str = "", device_key: str | None = None
    ) -> None:
        """Start to record."""
        raise NotImplementedError

    @property
    def is_recording(self) -> bool:
        """Whether a recording runs (instant)."""
        raise NotImplementedError

    def stop(self) -> PendingTake:
        """Stop the recording; quick."""
        raise NotImplementedError

    def poll(self) -> PendingTake | None:
        """Give the recording that ended by itself, once (instant)."""
        raise NotImplementedError

    def finish(
        self,
        pending: PendingTake,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> TakeRow:
        """Encode, verify, tag and file a recording; then remove its PCM."""
        raise NotImplementedError

    def unfinished(self) -> tuple[PendingTake, ...]:
        """Give recordings that a crash left unfiled."""
        raise NotImplementedError

    def discard(self, pending: PendingTake) -> None:
        """Move an unfiled recording to the journal's trash."""
        raise NotImplementedError
