"""The items of a journal: what the player practises."""

from sqlalchemy import insert, select, update

from app.journal.blocks import Item
from app.store.models import ItemModel
from app.store.work import JOURNAL_KEY, Work, values_of

_ITEM = ItemModel.__table__.c


class ItemRepository:
    """Items in and out of the database; a block may name one, so none is ever removed."""

    def __init__(self, work: Work) -> None:
        self._work = work

    def add(self, item: Item) -> None:
        """Keep a new item; its passage must be there."""
        with self._work.connection() as connection:
            connection.execute(insert(ItemModel), values_of(item))
            self._work.touch(JOURNAL_KEY)

    def replace(self, item: Item) -> None:
        """Keep a changed item in the place of the one with its id.

        Raises
        ------
        KeyError
            Where there is none.
        """
        with self._work.connection() as connection:
            changed = connection.execute(
                update(ItemModel).where(_ITEM.id == item.id).values(values_of(item))
            )
            if changed.rowcount != 1:
                raise KeyError(item.id)
            self._work.touch(JOURNAL_KEY)

    def get(self, item_id: str) -> Item | None:
        """Give an item, retired or not."""
        wanted = select(ItemModel.__table__).where(_ITEM.id == item_id)
        with self._work.connection() as connection:
            row = connection.execute(wanted).one_or_none()
        return None if row is None else Item(**row._mapping)

    def list(self) -> tuple[Item, ...]:
        """List all items, retired ones too, in the order in which they were added."""
        wanted = select(ItemModel.__table__).order_by(_ITEM.created_at, _ITEM.id)
        with self._work.connection() as connection:
            return tuple(Item(**row._mapping) for row in connection.execute(wanted))
