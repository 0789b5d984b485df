"""Passages: what is practised and compared."""

from app.journal.records import Passage, PlayingSettings


class PassageService:
    """Lists, adds, changes and finds passages."""

    def list(self) -> tuple[Passage, ...]:
        """All passages, by piece and name."""
        raise NotImplementedError

    def add(self, piece: str, name: str, bars: str, settings: PlayingSettings) -> Passage:
        """Add a passage; PlainFailure where piece and name are taken."""
        raise NotImplementedError

    def change(self, passage: Passage) -> Passage:
        """Replace a passage by its changed record."""
        raise NotImplementedError

    def find(self, text: str) -> Passage:
        """Find a passage by id, name, or ``piece: name``."""
        raise NotImplementedError
