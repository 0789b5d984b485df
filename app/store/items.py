"""The items of a journal: what the player practises."""

from app.journal.blocks import Item
from app.store.kept_by_id import KeptById
from app.store.models import ITEM_TABLE

_ITEM = ITEM_TABLE.c


class ItemRepository(KeptById[Item]):
    """Items in the order in which they were added, retired ones too.

    A block may name an item, so none is ever removed.
    """

    table = ITEM_TABLE
    record = Item
    order = (_ITEM.created_at, _ITEM.id)
