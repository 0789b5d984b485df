"""Minutes kept elsewhere: which column is what, what will be added, what is there already."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFileDialog,
    QTableWidget,
    QTableWidgetItem,
)

from app.journal.minutes_table import AmountUnit, Mapped, Table
from app.journal.written_days import DateOrder
from app.services.minutes_import import MinutesProposal
from app.ui.desk import Desk
from app.ui.language import mark, tr
from app.ui.models.rows import Column
from app.ui.theme import SMALL_PT, font
from app.ui.widgets.basics import Button, Card, fill, heading, labelled, row, sentence, soft
from app.ui.widgets.choices import Choice
from app.ui.widgets.table import RowTable
from app.ui.words import counted, minutes_text, short_day_text

_PREVIEW_ROWS = 6
_MOST_LISTED = 400
_UNITS = (
    (AmountUnit.MINUTES, mark("minutes")),
    (AmountUnit.HOURS, mark("hours")),
    (AmountUnit.HOURS_AND_MINUTES, mark("hours:minutes")),
    (AmountUnit.MINUTES_AND_SECONDS, mark("minutes:seconds")),
)
_ORDERS = (
    (DateOrder.YEAR_MONTH_DAY, mark("year, month, day")),
    (DateOrder.DAY_MONTH_YEAR, mark("day, month, year")),
    (DateOrder.MONTH_DAY_YEAR, mark("month, day, year")),
)
_NOT_SAID = -1
_Line = tuple[str, str, str]


class MinutesImportForm(Card):
    """Maps the columns of a table and shows what filing it would do.

    Signals
    -------
    closed()
        Nothing more to do here.
    """

    closed = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__(tr("Minutes from a table"))
        self._desk = desk
        self._proposal: MinutesProposal | None = None
        self.preview = QTableWidget()
        self.preview.setAccessibleName(tr("First rows of the file"))
        self.preview.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.preview.setFont(font(SMALL_PT))
        self.preview.setShowGrid(False)
        self.preview.setTabKeyNavigation(False)
        self.preview.verticalHeader().hide()
        self.days: Choice[int] = Choice(tr("Column of the days"))
        self.amounts: Choice[int] = Choice(tr("Column of the practice"))
        self.unit: Choice[AmountUnit] = Choice(tr("The numbers are"))
        self.unit.offer([(unit, tr(words)) for unit, words in _UNITS])
        self.order: Choice[DateOrder | None] = Choice(tr("Days are written as"))
        self.words = sentence()
        self._question = soft()
        self.lines: RowTable[_Line] = RowTable(tr("Day by day"), _columns(), stretch=2)
        self.choose = Button(tr("Choose a file"), "import")
        self.file = Button(tr("Add the minutes"), primary=True)
        close = Button(tr("Back to the year"), plain=True)
        head, fields, buttons = row(), row(), row()
        about = soft(
            tr(
                "A CSV file with one row a day or a session. Days that have minutes in the"
                " journal keep them, so nothing is counted twice."
            )
        )
        fill(head, about, self.choose)
        head.setStretch(0, 1)
        for words, field in (
            (tr("Days"), self.days),
            (tr("Written as"), self.order),
            (tr("Practice"), self.amounts),
            (tr("In"), self.unit),
        ):
            fields.addLayout(labelled(words, field))
        fill(buttons, self.file, 1, close)
        fill(self.box, head, self.preview, fields, self._question, self.words)
        fill(self.box, heading(tr("What will happen")), self.lines, buttons)
        self.box.setStretch(7, 1)
        self.choose.clicked.connect(self.choose_file)
        self.file.clicked.connect(self._file)
        close.clicked.connect(self.closed)
        for choice in (self.days, self.amounts, self.unit, self.order):
            choice.picked.connect(lambda _: self._map_again())
        self._show_nothing()

    def start(self) -> None:
        """Begin anew."""
        self._show_nothing()
        self.choose.setFocus()

    def choose_file(self) -> None:
        """Ask for a table and read it."""
        kinds = tr("Table (*.csv *.tsv *.txt);;Every file (*)")
        name, _ = QFileDialog.getOpenFileName(self, tr("Minutes from a table"), "", kinds)
        if name:
            self.read(Path(name))

    def read(self, file: Path, mapped: Mapped | None = None) -> None:
        """Read a table and say what filing it would do; changes nothing."""
        importing = self._desk.workbench.minutes_import
        self._desk.jobs.store(
            lambda: importing.propose(file, mapped), self._show, subject="calendar.import"
        )

    def _show_nothing(self) -> None:
        self._proposal = None
        self.preview.clear()
        self.preview.setRowCount(0)
        self.preview.setColumnCount(0)
        self.preview.setFixedHeight(40)
        self.words.setText(tr("No file is chosen yet."))
        self._question.setText("")
        self.lines.show_rows(())
        for field in (self.days, self.amounts, self.unit, self.order, self.file):
            field.setEnabled(False)

    def _show(self, proposal: MinutesProposal) -> None:
        self._proposal = proposal
        self._show_table(proposal.table)
        mapped = proposal.mapped
        columns = [(at, name) for at, name in enumerate(proposal.table.header)]
        for choice, chosen in (
            (self.days, mapped.date_column if mapped else _NOT_SAID),
            (self.amounts, mapped.amount_column if mapped else _NOT_SAID),
        ):
            # A column that could not be guessed is asked for, not taken for granted.
            first = [] if mapped else [(_NOT_SAID, tr("choose"))]
            choice.offer([*first, *columns], chosen)
            choice.setEnabled(True)
        orders = [(order, tr(words)) for order, words in _ORDERS]
        settled = mapped is not None and mapped.date_order is not None
        unsaid: list[tuple[DateOrder | None, str]] = [] if settled else [(None, tr("choose"))]
        self.order.offer([*unsaid, *orders], mapped.date_order if mapped else None)
        self.unit.choose(mapped.unit if mapped else AmountUnit.MINUTES)
        self.unit.setEnabled(True)
        self.order.setEnabled(True)
        self._question.setText(_question_words(proposal))
        self._question.setVisible(bool(proposal.question))
        ready = mapped is not None and not proposal.question
        self.words.setText(_words_of(proposal))
        self.lines.show_rows(_lines_of(proposal))
        self.file.setEnabled(ready and bool(proposal.new))

    def _show_table(self, table: Table) -> None:
        shown = table.rows[:_PREVIEW_ROWS]
        self.preview.setColumnCount(len(table.header))
        self.preview.setRowCount(len(shown))
        self.preview.setHorizontalHeaderLabels(list(table.header))
        for at, cells in enumerate(shown):
            for column, text in enumerate(cells):
                self.preview.setItem(at, column, QTableWidgetItem(text))
        self.preview.resizeColumnsToContents()
        self.preview.resizeRowsToContents()
        rows = sum(self.preview.rowHeight(at) for at in range(len(shown)))
        self.preview.setFixedHeight(self.preview.horizontalHeader().sizeHint().height() + rows + 16)

    def _map_again(self) -> None:
        if self._proposal is None:
            return
        days, amounts = self.days.key, self.amounts.key
        if days in (None, _NOT_SAID) or amounts in (None, _NOT_SAID):
            return
        before = self._proposal.mapped
        order = self.order.key
        if before is not None and days != before.date_column:
            order = self._desk.workbench.minutes_import.way_written(self._proposal, days or 0)
        self.read(
            self._proposal.path,
            Mapped(days or 0, amounts or 0, self.unit.key or AmountUnit.MINUTES, order),
        )

    def _file(self) -> None:
        proposal = self._proposal
        if proposal is None or not proposal.new:
            return
        self.file.setEnabled(False)
        importing = self._desk.workbench.minutes_import
        self._desk.jobs.analyse(
            lambda progress, _stop: importing.file(proposal, progress),
            lambda days: self._filed(proposal, days),
            subject="calendar.import.file",
        )

    def _filed(self, proposal: MinutesProposal, days: int) -> None:
        self._desk.tell(tr("Minutes of {days} were added.").format(days=counted(days, "day")))
        self._desk.daysChanged.emit()
        self.read(proposal.path, proposal.mapped)


def _words_of(proposal: MinutesProposal) -> str:
    if proposal.mapped is None:
        return tr("Say which column holds the days and which the practice.")
    if proposal.question:
        return tr("Say how the days are written; some can be read in several ways.")
    return proposal.sentence


def _question_words(proposal: MinutesProposal) -> str:
    said = []
    for order, words in _ORDERS:
        for text, day in proposal.question.get(order, ())[:1]:
            means = tr("{order}: '{text}' would be {day}.")
            said.append(means.format(order=tr(words), text=text, day=short_day_text(day)))
    return " ".join(said)


def _lines_of(proposal: MinutesProposal) -> Sequence[_Line]:
    lines: list[tuple[str, str, str]] = []
    for day, minutes in sorted(proposal.new.items()):
        lines.append((day.isoformat(), minutes_text(minutes), tr("will be added")))
    for day, (known, minutes) in sorted(proposal.already.items()):
        stays = tr("stays at {minutes}, as in the journal").format(minutes=minutes_text(known))
        lines.append((day.isoformat(), minutes_text(minutes), stays))
    lines += [(day.isoformat(), "", tr("not over yet, left out")) for day in proposal.ahead]
    for number, why in (*proposal.unread, *proposal.repeated):
        lines.append((tr("row {number}").format(number=number), "", why))
    return lines[:_MOST_LISTED]


def _columns() -> tuple[Column[_Line], ...]:
    return (
        Column(tr("Day"), lambda line: line[0]),
        Column(tr("In the file"), lambda line: line[1], is_number=True),
        Column("", lambda line: line[2]),
    )
