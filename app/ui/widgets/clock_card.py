"""The practice clock: its time, its item, and the minutes of every item today."""

from typing import TYPE_CHECKING

from app.services.wording import NO_ITEM
from app.ui.icons import icon
from app.ui.language import mark, tr
from app.ui.models.attention import Attention
from app.ui.models.item_lines import ItemLine, item_lines
from app.ui.models.practice_clock import PracticeClock
from app.ui.models.rows import Column
from app.ui.models.sounding_minutes import SoundingMinutes
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, column, fill, heading, large, row, sentence, soft
from app.ui.widgets.forgotten_card import ForgottenCard
from app.ui.widgets.sounding_row import SoundingOfferCard, sounding_words
from app.ui.widgets.table import RowTable
from app.ui.words import length_text, minutes_text

if TYPE_CHECKING:
    from app.services.clock_views import ClockView, ForgottenView, ItemRow
    from app.services.sounding import SoundingState

_TABLE_HEIGHT_PX = 116
_PHASE_WORDS = {
    "stopped": mark("Not running"),
    "running": mark("Running"),
    "paused": mark("Paused"),
    "forgotten": mark("Waiting for your answer"),
}
_TOGGLE = {"stopped": (mark("Start"), "play"), "running": (mark("Pause"), "pause")}
_GO_ON = (mark("Go on"), "play")


class ClockCard(Card):
    """Shows the clock and switches its item."""

    def __init__(
        self, clock: PracticeClock, sounding: SoundingMinutes, attention: Attention
    ) -> None:
        super().__init__()
        self._sounding = sounding
        self._clock = clock
        self._attention = attention
        self._rows: tuple[ItemRow, ...] = ()
        self._time = large("0:00")
        self._item = heading(tr("Practice clock"))
        self._item.setWordWrap(True)
        self._phase = soft(wrap=False)
        self._toggle = Button(tr("Start"), "play", action_id="clock.toggle")
        self._stop = Button(tr("Stop"), "stop", action_id="clock.stop")
        self._edit = Button(tr("Items"), action_id="clock.items", plain=True)
        self.table: RowTable[ItemLine] = RowTable(
            tr("Items and their minutes today"), _columns(), stretch=1
        )
        self.table.setFixedHeight(_TABLE_HEIGHT_PX)
        self.table.horizontalHeader().hide()  # a key, a name, minutes: said by themselves
        self.forgotten = ForgottenCard()
        self._break = self._build_break()
        self._build()
        self._connect()

    @property
    def edit(self) -> Button:
        """Opens the list of items."""
        return self._edit

    def _build(self) -> None:
        words = column(spacing=0)
        fill(words, self._item, self._phase)
        head = row(spacing=2 * GRID_PX)
        fill(head, self._time, words, self._toggle, self._stop)
        head.setStretch(1, 1)
        head.setSpacing(GRID_PX)
        foot = row()
        self._today = soft(wrap=False)
        self._heard = soft()
        self._heard.hide()
        self.listen = Button(tr("Listen along"), action_id="clock.listen", plain=True)
        fill(foot, self._today, 1, self.listen, self._edit)
        fill(self.box, head, self._break, self.table, self._heard, foot)
        self._attention.add(self.forgotten)
        self._offer = SoundingOfferCard(self._sounding, self._attention)
        self.box.insertWidget(1, self._offer)
        self._sounding.changed.connect(self._show_heard)

    def _build_break(self) -> Card:
        card = Card()
        self._break_words = sentence()
        now = Button(tr("Pause the clock"))
        now.clicked.connect(self._clock.toggle)
        later = Button(tr("Later"), plain=True)
        later.clicked.connect(self._clock.put_off_break)
        buttons = row()
        fill(buttons, now, later, 1)
        fill(card.box, self._break_words, buttons)
        return card

    def _connect(self) -> None:
        clock = self._clock
        self._toggle.clicked.connect(clock.toggle)
        self._stop.clicked.connect(clock.stop)
        self.table.rowOpened.connect(self._open)
        self.forgotten.answered.connect(clock.answer)
        clock.changed.connect(self.show_clock)
        clock.forgotten.connect(self._ask)
        clock.itemsRead.connect(self._take_rows)

    def let_break_ask(self) -> None:
        """Let the break ask for attention, after what is more urgent."""
        self._attention.add(self._break)

    def show_clock(self, view: "ClockView") -> None:
        """Show the clock as it stands."""
        self._time.setText(length_text(60 * view.session_min))
        self._time.setAccessibleName(tr("Time of this sitting"))
        is_on = view.phase != "stopped"
        title = view.item_title if view.item_id else tr("Without an item")
        self._item.setText(title if is_on else tr("Practice clock"))
        block = (
            tr(", this item {block_s}").format(block_s=length_text(view.block_s))
            if view.phase == "running"
            else ""
        )
        self._phase.setText(tr(_PHASE_WORDS[view.phase]) + block)
        source, picture = _TOGGLE.get(view.phase, _GO_ON)
        words = tr(source)
        if self._toggle.text() != words:
            self._toggle.setText(words)
            self._toggle.setAccessibleName(tr("{words} the practice clock").format(words=words))
            self._toggle.setIcon(icon(picture))
        self._toggle.setEnabled(view.phase != "forgotten")
        self._stop.setEnabled(view.phase in ("running", "paused"))
        self.table.show_rows(item_lines(self._rows, view))
        self._today.setText(
            tr("{today_min} today").format(today_min=minutes_text(view.today_min))
            if view.today_min >= 1
            else tr("No minutes yet today")
        )
        self._break_words.setText(view.break_sentence)
        self._attention.want(self._break, bool(view.break_sentence))

    def _show_heard(self, state: "SoundingState | None") -> None:
        words = sounding_words(state)
        self._heard.setText(words)
        self._heard.setVisible(bool(words))
        self.listen.setText(tr("Listen along") if state is None else tr("Stop listening"))

    def _take_rows(self, rows: tuple["ItemRow", ...]) -> None:
        self._rows = rows

    def _ask(self, question: "ForgottenView | None") -> None:
        if question is not None:
            self.forgotten.show_question(question)
        self._attention.want(self.forgotten, question is not None)

    def _open(self, line: ItemLine) -> None:
        if line.row is not None:
            self._clock.choose(line.row)


def _columns() -> tuple[Column[ItemLine], ...]:
    def title(line: ItemLine) -> str:
        mark = "\N{BLACK RIGHT-POINTING SMALL TRIANGLE} " if line.is_now else ""
        return mark + (NO_ITEM.capitalize() if line.title == NO_ITEM else line.title)

    def words(line: ItemLine) -> str:
        return line.words

    return (
        Column(tr("Key"), lambda line: line.key, words),
        Column(tr("Item"), title, words),
        Column(tr("Today"), lambda line: line.minutes, words, is_number=True),
    )
