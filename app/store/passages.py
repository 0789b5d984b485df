"""The passages of a journal."""

from app.journal.records import Passage
from app.store.kept_by_id import KeptById
from app.store.models import PASSAGE_TABLE

_PASSAGE = PASSAGE_TABLE.c


class PassageRepository(KeptById[Passage]):
    """Passages by piece and name."""

    table = PASSAGE_TABLE
    record = Passage
    order = (_PASSAGE.piece, _PASSAGE.name, _PASSAGE.created_at, _PASSAGE.id)
