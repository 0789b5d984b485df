"""The practice clock as the window sees it: it ticks, and every key reaches the journal."""

from collections.abc import Callable
from datetime import date
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.item_lines import after, in_order, item_ref

if TYPE_CHECKING:
    from app.journal.kinds import Ending
    from app.services.clock import ClockService
    from app.services.clock_views import ClockView, ItemRow

_TICK_MS = 1000
_BEAT_MS = 30_000


class PracticeClock(QObject):
    """Starts, pauses and stops the clock, and switches its item.

    Attributes
    ----------
    items : tuple of ItemRow
        In the player's order.
    view : ClockView or None
        As it was last looked at; ``None`` until the journal was read.

    Signals
    -------
    changed(ClockView)
        Every second while it runs, and after every change.
    forgotten(ForgottenView or None)
        A question waits for its answer, or no longer does.
    itemsRead(tuple of ItemRow)
        The items in the player's order.
    passageBegun(passage_id)
        The item that was switched to is a passage.
    """

    changed = Signal(object)
    forgotten = Signal(object)
    itemsRead = Signal(object)
    passageBegun = Signal(str)

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._desk = desk
        self._day: date | None = None
        self.items: tuple[ItemRow, ...] = ()
        self.view: ClockView | None = None
        self._tick = QTimer(self, interval=_TICK_MS)
        self._tick.timeout.connect(self._look)
        self._beat = QTimer(self, interval=_BEAT_MS)
        self._beat.timeout.connect(self._note)
        self._beat.start()
        for signal in (desk.daysChanged, desk.passagesChanged):
            signal.connect(self.read)

    @property
    def _clock(self) -> "ClockService":
        # Loaded by the first work off the GUI thread that asks for it.
        return self._desk.workbench.clock

    def read(self) -> None:
        """Read the items again and look at the clock."""
        bench = self._desk.workbench

        def read() -> "tuple[ItemRow, ...]":
            bench.clock.take_up()
            return bench.items.list()

        self._desk.jobs.store(read, self._take_over, subject="clock.items")

    def toggle(self) -> None:
        """Start, pause or go on."""
        self._do(self._clock.toggle)

    def stop(self) -> None:
        """End the sitting."""
        if self.view is not None and self.view.phase == "stopped":
            self._desk.tell(tr("The practice clock is not running."))
            return
        self._do(self._clock.stop)

    def choose(self, row: "ItemRow") -> None:
        """Go over to an item; the clock starts, goes on or runs on."""
        bench = self._desk.workbench

        def begin() -> "ClockView":
            item_id = row.id or bench.items.for_passage(row.passage_id or "").id
            return bench.clock.start(item_id)

        self._do(begin)
        if row.passage_id:
            self.passageBegun.emit(row.passage_id)

    def choose_at(self, at: int) -> None:
        """Go over to the item that has a place in the list."""
        if at < len(self.items):
            self.choose(self.items[at])
        else:
            self._desk.tell(
                tr("There is no item {at} yet.").format(at=at + 1),
                tr("Add it to the list of items."),
                "clock.items",
            )

    def next_item(self) -> None:
        """Go over to the item after this one."""
        row = after(self.items, self.view.item_id if self.view else None)
        if row is None:
            self._desk.tell(tr("There is no item yet."), tr("Add one to the list."), "clock.items")
        else:
            self.choose(row)

    def answer(self, ending: "Ending", minutes: float | None = None) -> None:
        """Answer the question of a forgotten clock."""
        self._do(lambda: self._clock.answer_forgotten(ending, minutes))

    def put_off_break(self) -> None:
        """Suggest the break again later."""
        self._desk.jobs.store(self._clock.put_off_break, lambda _: self._look())

    def keep_order(self, rows: "tuple[ItemRow, ...]") -> None:
        """Keep the player's own order of the items."""
        self._desk.preferences.item_order = tuple(item_ref(row) for row in rows)
        self._take_over(rows)

    def _do(self, step: "Callable[[], ClockView]") -> None:
        self._desk.jobs.store(step, lambda _: self._desk.daysChanged.emit())

    def _take_over(self, rows: "tuple[ItemRow, ...]") -> None:
        preferences = self._desk.preferences
        self.items = in_order(rows, preferences.item_order)
        preferences.item_order = tuple(item_ref(row) for row in self.items)
        self.itemsRead.emit(self.items)
        self._look()

    def _look(self) -> None:
        self.view = self._clock.state()
        if self.view.phase == "running":
            self._tick.start()
        else:
            self._tick.stop()
        self.changed.emit(self.view)
        self.forgotten.emit(self._clock.forgotten())

    def _note(self) -> None:
        bench = self._desk.workbench

        def beat() -> date:
            bench.clock.beat()
            return bench.practising.practice_day_now()

        self._desk.jobs.store(beat, self._noted, subject="clock.beat")

    def _noted(self, day: date) -> None:
        self._look()
        before, self._day = self._day, day
        if before not in (None, day):
            # The window was left open over night: 'today' is another day now.
            self._desk.daysChanged.emit()
