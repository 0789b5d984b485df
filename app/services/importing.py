"""Filing recordings that were made elsewhere."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path

from app.services.stopping import Progress, ShouldStop, never_stop, no_progress
from app.services.views import ImportProposal, TakeRow


class ImportingService:
    """Looks at files, proposes where they belong, and files them."""

    def propose(
        self,
        paths: Sequence[Path],
        passage_id: str | None = None,
        day: date | None = None,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> tuple[ImportProposal, ...]:
        """Say for each file where it would be filed, or what is wrong with it."""
        raise NotImplementedError

    def file(
        self,
        proposals: Sequence[ImportProposal],
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> tuple[TakeRow, ...]:
        """File the proposals that carry no failure."""
        raise NotImplementedError
