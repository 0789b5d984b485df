"""The passages of a journal."""

from sqlalchemy import insert, select, update

from app.journal.records import Passage
from app.store.models import PassageModel
from app.store.work import JOURNAL_KEY, Work, values_of

_PASSAGE = PassageModel.__table__.c


class PassageRepository:
    """Passages in and out of the database."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def add(self, passage: Passage) -> None:
        """Keep a new passage."""
        with self._work.connection() as connection:
            connection.execute(insert(PassageModel), values_of(passage))
            self._work.touch(JOURNAL_KEY)

    def replace(self, passage: Passage) -> None:
        """Keep a changed passage in the place of the one with its id.

        Raises
        ------
        KeyError
            Where there is none.
        """
        with self._work.connection() as connection:
            changed = connection.execute(
                update(PassageModel).where(_PASSAGE.id == passage.id).values(values_of(passage))
            )
            if changed.rowcount != 1:
                raise KeyError(passage.id)
            self._work.touch(JOURNAL_KEY)

    def get(self, passage_id: str) -> Passage | None:
        """Give a passage."""
        wanted = select(PassageModel.__table__).where(_PASSAGE.id == passage_id)
        with self._work.connection() as connection:
            row = connection.execute(wanted).one_or_none()
        return None if row is None else Passage(**row._mapping)

    def list(self) -> tuple[Passage, ...]:
        """List all passages by piece and name."""
        wanted = select(PassageModel.__table__).order_by(
            _PASSAGE.piece, _PASSAGE.name, _PASSAGE.created_at, _PASSAGE.id
        )
        with self._work.connection() as connection:
            return tuple(Passage(**row._mapping) for row in connection.execute(wanted))
