"""Takes that are filed: finding, refiling, deleting."""

from datetime import date

from app.journal.records import AimMet, PlayingSettings
from app.services.views import TakeRow


class FilingService:
    """Changes where a take belongs and what is known about it, never its sound."""

    def row(self, take_id: str) -> TakeRow:
        """Give one take as a list shows it."""
        raise NotImplementedError

    def takes(self, passage_id: str | None = None) -> tuple[TakeRow, ...]:
        """Give all takes, or those of one passage, oldest first."""
        raise NotImplementedError

    def refile(self, take_id: str, practice_day: date, passage_id: str | None) -> TakeRow:
        """File a take under another day or passage; its audio file stays as it is."""
        raise NotImplementedError

    def set_aim(self, take_id: str, aim: str) -> TakeRow:
        """Set what the player wanted from this take."""
        raise NotImplementedError

    def answer_aim(self, take_id: str, answer: AimMet | None) -> TakeRow:
        """Keep the player's own answer whether the aim was met."""
        raise NotImplementedError

    def change_settings(self, take_id: str, settings: PlayingSettings) -> TakeRow:
        """Change what the measures know about the playing; the measurement turns stale."""
        raise NotImplementedError

    def delete(self, take_id: str) -> None:
        """Delete a take; :meth:`restore` undoes it."""
        raise NotImplementedError

    def restore(self, take_id: str) -> TakeRow:
        """Bring a deleted take back."""
        raise NotImplementedError

    def resolve(self, text: str) -> str:
        """Find a take's id from an id prefix, a file in the journal, or PASSAGE:DATE:N."""
        raise NotImplementedError
