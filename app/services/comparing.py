"""Two takes of a passage beside each other, and a passage over the weeks."""

from pathlib import Path

from app.journal.records import PlayingSettings
from app.services.stopping import Progress, ShouldStop, never_stop, no_progress
from app.services.views import CompareView, TrendView


class ComparingService:
    """Aligns takes note against note and follows a passage over time."""

    def compare(
        self,
        take_a: str,
        take_b: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> CompareView:
        """Put two takes beside each other; changes are b minus a."""
        raise NotImplementedError

    def compare_json(
        self,
        take_a: str,
        take_b: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> dict[str, object]:
        """Give the machine-readable object (app/schemas/compare.schema.json)."""
        raise NotImplementedError

    def compare_files(
        self,
        path_a: Path,
        path_b: Path,
        settings: PlayingSettings,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> dict[str, object]:
        """Compare two files that need not be in any journal."""
        raise NotImplementedError

    def trend(self, passage_id: str, key: str = "mean_absolute_cents") -> TrendView:
        """Follow one measure of a passage over the weeks."""
        raise NotImplementedError

    def trend_keys(self) -> tuple[tuple[str, str], ...]:
        """Give the measures a trend can follow: key and label."""
        raise NotImplementedError
