"""The player's own list of items: order, names, what is offered."""

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QWidget

from app.journal.blocks import Item
from app.journal.kinds import ItemKind
from app.services.clock_views import KIND_WORDS, ItemRow
from app.ui.desk import Desk
from app.ui.keys import ITEM_KEY_COUNT
from app.ui.language import tr
from app.ui.models.practice_clock import PracticeClock
from app.ui.models.rows import Column
from app.ui.spoken import word
from app.ui.widgets.basics import Button, Card, column, fill, labelled, row, soft
from app.ui.widgets.choices import Choice
from app.ui.widgets.table import RowTable

_WIDTH_PX = 720
_OWN_KINDS = tuple(kind for kind in ItemKind if kind is not ItemKind.PASSAGE)


class ItemsForm(Card):
    """Adds, renames, orders and puts away what is practised.

    Signals
    -------
    closed()
        Nothing more to do here.
    """

    closed = Signal()

    def __init__(self, desk: Desk, clock: PracticeClock) -> None:
        super().__init__(tr("Items to practise"))
        self._desk = desk
        self._clock = clock
        self.table: RowTable[ItemRow] = RowTable(tr("Items"), self._columns(), stretch=1)
        self.name = QLineEdit()
        self.name.setMaxLength(120)
        self.name.setPlaceholderText(tr("Scales in two octaves, a study, quartet"))
        self.kind: Choice[ItemKind] = Choice(tr("Kind"))
        self.kind.offer([(kind, word(KIND_WORDS[kind]).capitalize()) for kind in _OWN_KINDS])
        self._add = Button(tr("Add item"), "add", primary=True)
        self._up = Button(tr("Up"), name=tr("Move the item up"))
        self._down = Button(tr("Down"), name=tr("Move the item down"))
        self._away = Button(tr("Put away"), name=tr("Offer the item no longer; its minutes stay"))
        self._retired: Choice[str] = Choice(tr("Items put away"))
        self._back = Button(tr("Bring back"))
        self._build()
        self._connect()

    def _columns(self) -> tuple[Column[ItemRow], ...]:
        return (
            Column(tr("Key"), self._key_of),
            Column(tr("Item"), lambda line: line.title, write=self._rename),
            Column(tr("Kind"), lambda line: word(KIND_WORDS[line.kind])),
        )

    def _build(self) -> None:
        inside = QWidget()
        inside.setMaximumWidth(_WIDTH_PX)
        box = column(inside)
        moves = row()
        fill(moves, self._up, self._down, self._away, 1, self._retired, self._back)
        new = row()
        fill(new, labelled(tr("New item"), self.name), labelled(tr("Kind"), self.kind))
        new.setStretch(0, 1)
        buttons = row()
        close = Button(tr("Done"), plain=True)
        close.clicked.connect(self.closed)
        fill(buttons, 1, close, self._add)
        words = soft(
            tr(
                "The first {item_key_count} have the keys 1 to {item_key_count}: one key "
                "starts the clock on an item or switches to it. Every passage is on the list "
                "by itself. Double click or F2 renames."
            ).format(item_key_count=ITEM_KEY_COUNT)
        )
        fill(box, words, self.table, moves, new, buttons)
        box.setStretch(1, 1)
        self.box.addWidget(inside, 1)

    def _connect(self) -> None:
        self._add.clicked.connect(self._make)
        self.name.returnPressed.connect(self._make)
        self._up.clicked.connect(lambda: self._move(-1))
        self._down.clicked.connect(lambda: self._move(1))
        self._away.clicked.connect(self._put_away)
        self._back.clicked.connect(self._bring_back)
        self._clock.itemsRead.connect(self.table.show_rows)

    def start(self) -> None:
        """Read the list and put the cursor into the name."""
        self._clock.read()
        self._desk.jobs.store(
            self._desk.workbench.items.retired, self._show_retired, subject="items.retired"
        )
        self.name.setFocus()

    def _show_retired(self, items: tuple[Item, ...]) -> None:
        named = [(item.id, item.name) for item in items if item.name]
        self._retired.offer(named or [("", tr("Nothing put away"))])
        self._retired.setEnabled(bool(named))
        self._back.setEnabled(bool(named))

    def _key_of(self, line: ItemRow) -> str:
        at = self._clock.items.index(line) if line in self._clock.items else ITEM_KEY_COUNT
        return str(at + 1) if at < ITEM_KEY_COUNT else ""

    def _rename(self, line: ItemRow, text: str) -> ItemRow | None:
        if text.strip() == line.title:
            return None
        if line.passage_id:
            self._desk.tell(tr("This item is a passage."), tr("Change the passage's own name."))
            return None
        items = self._desk.workbench.items
        self._desk.jobs.store(lambda: items.rename(line.id, text), lambda _: self._changed())
        return replace(line, title=text.strip())

    def _make(self) -> None:
        kind, name = self.kind.key or ItemKind.OTHER, self.name.text()
        items = self._desk.workbench.items
        self._desk.jobs.store(lambda: items.add(kind, name), self._made)

    def _made(self, _item: Item) -> None:
        self.name.clear()
        self.name.setFocus()
        self._changed()

    def _move(self, by: int) -> None:
        rows, at = list(self._clock.items), self.table.currentIndex().row()
        if not 0 <= at < len(rows) or not 0 <= at + by < len(rows):
            return
        rows[at], rows[at + by] = rows[at + by], rows[at]
        self._clock.keep_order(tuple(rows))
        self.table.choose(at + by)

    def _put_away(self) -> None:
        line, items = self.table.chosen, self._desk.workbench.items
        if line is None:
            self._desk.tell(tr("No item is chosen."), tr("Choose one in the list."))
            return

        def retire() -> None:
            items.retire(line.id or items.for_passage(line.passage_id or "").id)

        self._desk.jobs.store(retire, lambda _: self._changed())

    def _bring_back(self) -> None:
        item_id, items = self._retired.key, self._desk.workbench.items
        if item_id:
            self._desk.jobs.store(lambda: items.bring_back(item_id), lambda _: self._changed())

    def _changed(self) -> None:
        self._clock.read()
        self._desk.jobs.store(
            self._desk.workbench.items.retired, self._show_retired, subject="items.retired"
        )
