"""What the Listen page draws of a take."""

from app.services.stopping import Progress, ShouldStop, never_stop, no_progress
from app.services.views import TakeView, Waveform


class ListeningService:
    """Prepares a take's lanes, already sized for the screen."""

    def open_take(self, take_id: str) -> TakeView:
        """Give everything the Listen page draws of one take."""
        raise NotImplementedError

    def prepare(
        self,
        take_id: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> None:
        """Build the waveform's overview once."""
        raise NotImplementedError

    def waveform(self, take_id: str, start_s: float, end_s: float, columns: int) -> Waveform:
        """Give lowest and highest sample per screen column."""
        raise NotImplementedError
