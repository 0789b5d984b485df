"""The items of a journal: what the player practises."""

from app.journal.blocks import Item
from app.store.kept_by_id import KeptById
from app.store.models import ItemModel

_ITEM = ItemModel.__table__.c


class ItemRepository(KeptById[Item]):
    """Items in the order in which they were added, retired ones too.

    A block may name an item, so none is ever removed.
    """

    model = ItemModel
    record = Item
    order = (_ITEM.created_at, _ITEM.id)
