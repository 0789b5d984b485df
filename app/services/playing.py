"""Playing a take."""

from app.services.stopping import Progress, ShouldStop, never_stop, no_progress
from app.services.views import InputRow, PlaybackState


class PlayingService:
    """Plays one take at a time; everything but ``load`` is instant."""

    def outputs(self) -> tuple[InputRow, ...]:
        """Give the playback outputs; empty where there are none."""
        raise NotImplementedError

    def load(
        self,
        take_id: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> None:
        """Read a take into memory, ready to play."""
        raise NotImplementedError

    def unload(self) -> None:
        """Stop and forget the take."""
        raise NotImplementedError

    def play(self) -> None:
        """Play from the position; PlainFailure where nothing can play."""
        raise NotImplementedError

    def pause(self) -> None:
        """Stop at the position."""
        raise NotImplementedError

    def toggle(self) -> None:
        """Play or pause."""
        raise NotImplementedError

    def seek(self, position_s: float) -> None:
        """Move the position."""
        raise NotImplementedError

    def set_loop(self, start_s: float | None, end_s: float | None = None) -> None:
        """Repeat a span; ``set_loop(None)`` plays straight on."""
        raise NotImplementedError

    def set_speed(self, speed: float) -> None:
        """Set the speed, 0.25 to 2, pitch unchanged."""
        raise NotImplementedError

    def set_volume(self, volume: float) -> None:
        """Set the volume, 0 to 1."""
        raise NotImplementedError

    def state(self) -> PlaybackState:
        """Say where playback stands."""
        raise NotImplementedError
