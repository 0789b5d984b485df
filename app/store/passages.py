"""The passages of a journal."""

from app.journal.natural_order import natural_key
from app.journal.records import Passage
from app.store.kept_by_id import KeptById
from app.store.models import PASSAGE_TABLE

_PASSAGE = PASSAGE_TABLE.c


class PassageRepository(KeptById[Passage]):
    """Passages by piece and name, a second movement before a tenth."""

    table = PASSAGE_TABLE
    record = Passage
    order = (_PASSAGE.piece, _PASSAGE.name, _PASSAGE.created_at, _PASSAGE.id)

    def get(self, record_id: str | None) -> Passage | None:
        """Give a passage; ``None`` for no id too: a take need not have a passage."""
        return super().get(record_id) if record_id else None

    def list(self) -> tuple[Passage, ...]:
        """List all passages in their order."""
        return tuple(
            sorted(self._all(), key=lambda one: (natural_key(one.piece), natural_key(one.name)))
        )
