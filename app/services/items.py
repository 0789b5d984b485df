"""Items: the player's own list of what is practised."""

import uuid
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from app.journal.blocks import Item
from app.journal.failures import PlainFailure
from app.journal.kinds import ItemKind
from app.journal.practice_days import Clock
from app.journal.records import Passage
from app.services.clock_views import ItemRow
from app.services.passages import passage_title
from app.services.records_there import passage_there
from app.services.wording import NO_ITEM, listed
from app.store.store import Store

_MOST_NAMED = 8


def _nothing() -> None:
    """Tell nobody."""


def item_title(item: Item, passages: Mapping[str, Passage]) -> str:
    """Name an item in one line; a passage goes by its own name, whatever it is by now."""
    passage = passages.get(item.passage_id or "")
    return passage_title(passage) if passage else item.name


@dataclass(frozen=True, slots=True)
class NamedItem:
    """An item as lists of minutes show it; ``kind`` is ``None`` where it is no item."""

    title: str
    kind: ItemKind | None


NOTHING_NAMED = NamedItem(NO_ITEM, None)


def named_items(store: Store) -> dict[str, NamedItem]:
    """Name all items, in their own order; an id that is not among them is no item."""
    passages = {passage.id: passage for passage in store.passages.list()}
    return {
        item.id: NamedItem(item_title(item, passages), item.kind) for item in store.items.list()
    }


class ItemService:
    """Lists, adds, renames and retires items.

    Parameters
    ----------
    store, clock
    changed : callable
        Told after every change, so that what shows names can look again.
    """

    def __init__(self, store: Store, clock: Clock, changed: Callable[[], None] = _nothing) -> None:
        self._store = store
        self._clock = clock
        self._changed = changed

    def list(self) -> tuple[ItemRow, ...]:
        """Give what can be practised: what was practised last first, then the rest.

        Every passage is among them, whether it has been an item yet or not.
        """
        passages = {passage.id: passage for passage in self._store.passages.list()}
        used = self._store.blocks.last_use_of_items()
        items = self._store.items.list()
        rows = [
            ItemRow(
                item.id, item_title(item, passages), item.kind, item.passage_id, used.get(item.id)
            )
            for item in items
            if item.retired_at is None
        ]
        taken = {item.passage_id for item in items}
        rows += [
            ItemRow("", passage_title(passage), ItemKind.PASSAGE, passage.id, None)
            for passage in passages.values()
            if passage.id not in taken
        ]
        recent = sorted(
            (row for row in rows if row.last_used_at is not None),
            key=lambda row: -row.last_used_at.timestamp() if row.last_used_at else 0.0,
        )
        return (*recent, *(row for row in rows if row.last_used_at is None))

    def retired(self) -> tuple[Item, ...]:
        """Give the items that are no longer offered."""
        return tuple(item for item in self._store.items.list() if item.retired_at is not None)

    def add(self, kind: ItemKind, name: str) -> Item:
        """Add an item of the player's own.

        Raises
        ------
        PlainFailure
            Where it has no name, or there is one of that name already.
        """
        if kind is ItemKind.PASSAGE:
            raise PlainFailure(
                "A passage is on the list by itself.", "Add it as a passage, with its piece."
            )
        with self._store.transaction():
            item = Item(uuid.uuid4().hex, kind, self._checked(name), self._clock())
            self._store.items.add(item)
        self._changed()
        return item

    def for_passage(self, passage_id: str) -> Item:
        """Give the item that stands for a passage; it is made when first needed."""
        with self._store.transaction():
            passage_there(self._store, passage_id)
            for item in self._store.items.list():
                if item.passage_id == passage_id:
                    return self._brought_back(item)
            made = Item(uuid.uuid4().hex, ItemKind.PASSAGE, "", self._clock(), passage_id)
            self._store.items.add(made)
        self._changed()
        return made

    def rename(self, item_id: str, name: str, kind: ItemKind | None = None) -> Item:
        """Give an item another name, and another kind if one is given."""
        with self._store.transaction():
            item = self._item(item_id)
            if item.passage_id is not None:
                raise PlainFailure("This item is a passage.", "Change the passage's own name.")
            renamed = replace(item, name=self._checked(name, item_id), kind=kind or item.kind)
            self._store.items.replace(renamed)
        self._changed()
        return renamed

    def retire(self, item_id: str) -> None:
        """Offer an item no longer; its minutes stay."""
        with self._store.transaction():
            item = self._item(item_id)
            self._store.items.replace(replace(item, retired_at=item.retired_at or self._clock()))
        self._changed()

    def bring_back(self, item_id: str) -> Item:
        """Offer a retired item again."""
        with self._store.transaction():
            item = self._brought_back(self._item(item_id))
        self._changed()
        return item

    def find(self, text: str) -> Item:
        """Find an item by its name or id, a passage by its name or ``piece: name``.

        Raises
        ------
        PlainFailure
            Where there is none or more than one; names those that there are.
        """
        wanted = _folded(text)
        passages = {passage.id: passage for passage in self._store.passages.list()}
        rows = self.list()
        exact = [row for row in rows if row.id and row.id == text.strip()]
        titled = [row for row in rows if _folded(row.title) == wanted]
        named = [
            row
            for row in rows
            if row.passage_id and _folded(passages[row.passage_id].name) == wanted
        ]
        for found in (exact, titled, named):
            if len(found) == 1:
                return self._item_of(found[0])
            if found:
                titles = listed([f"'{row.title}'" for row in found])
                raise PlainFailure(f"'{text}' could be {titles}.", "Name the piece too.")
        raise PlainFailure(f"There is nothing called '{text}' to practise.", _known(rows))

    def find_or_add(self, text: str, kind: ItemKind) -> tuple[Item, bool]:
        """Find an item, or add one of this name and kind; says whether it is new."""
        titles = {_folded(row.title) for row in self.list()}
        try:
            return self.find(text), False
        except PlainFailure as failure:
            if _folded(text) in titles or "could be" in failure.sentence:
                raise
        return self.add(kind, text), True

    def _item_of(self, row: ItemRow) -> Item:
        if row.id:
            return self._item(row.id)
        assert row.passage_id is not None  # noqa: S101 - only a passage can be without an id
        return self.for_passage(row.passage_id)

    def _item(self, item_id: str) -> Item:
        item = self._store.items.get(item_id)
        if item is None:
            raise PlainFailure("That item is not there.", "Choose another one.")
        return item

    def _brought_back(self, item: Item) -> Item:
        if item.retired_at is None:
            return item
        offered = replace(item, retired_at=None)
        self._store.items.replace(offered)
        return offered

    def _checked(self, name: str, item_id: str | None = None) -> str:
        cleaned = " ".join(name.split())
        if not cleaned:
            raise PlainFailure("An item needs a name.", "Type one, for instance a scale.")
        for row in self.list():
            if row.id != item_id and _folded(row.title) == _folded(cleaned):
                raise PlainFailure(f"'{row.title}' is on the list already.", "Choose it there.")
        return cleaned


def _folded(text: str) -> str:
    return " ".join(text.replace(":", ": ").split()).casefold()


def _known(rows: tuple[ItemRow, ...]) -> str:
    if not rows:
        return "Add it first."
    titles = [f"'{row.title}'" for row in rows[:_MOST_NAMED]]
    if len(rows) > _MOST_NAMED:
        titles.append("others")
    return f"There are {listed(titles)}." if len(titles) > 1 else f"There is {titles[0]}."
