"""Files to be filed: each with its proposed day and passage, corrected before filing."""

from collections.abc import Mapping, Sequence
from datetime import date, datetime
from functools import partial
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QScrollArea, QWidget

from app.journal.failures import PlainFailure
from app.journal.natural_order import natural_key
from app.journal.records import Passage
from app.services.views import ImportProposal, TakeRow
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.day_numbers import day_number_text
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, fill, row, soft
from app.ui.widgets.import_row import ImportRow
from app.ui.widgets.progress_bar import ThinProgressBar
from app.ui.words import counted

_RECOGNISING = "import.passage:"


class ImportPanel(Card):
    """The table of files before they are filed.

    Signals
    -------
    closed()
        Everything is filed, or the player changed their mind.
    """

    closed = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__(tr("Import recordings"))
        self._desk = desk
        self.rows: list[ImportRow] = []
        self._words = soft(_kept_words())
        self._bar = ThinProgressBar(tr("Progress of the import"))
        self._scroll = QScrollArea()
        self._scroll.setWidgetResizable(True)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._file = Button(tr("File them"), "import", primary=True)
        self._file.clicked.connect(self.file_all)
        self._cancel = Button(tr("Cancel"), plain=True)
        self._cancel.clicked.connect(self.cancel)
        buttons = row()
        fill(buttons, self._words, 1, self._cancel, self._file)
        buttons.setStretch(0, 1)
        fill(self.box, self._scroll, self._bar, buttons)
        self.box.setStretch(1, 1)

    def look_at(
        self, paths: Sequence[Path], passage_id: str | None, passages: Sequence[Passage]
    ) -> None:
        """Read the files and propose where they belong."""
        self._busy(tr("Reading {paths}").format(paths=counted(len(paths), "file")))
        importing = self._desk.workbench.importing
        chosen = tuple(paths)
        self._desk.jobs.analyse(
            lambda progress, should_stop: importing.propose(
                chosen, passage_id, None, progress, should_stop
            ),
            lambda proposals: self.show_proposals(proposals, passages),
            subject="import",
            progress=self._moved,
            failed=self._unreadable,
        )

    def show_proposals(
        self, proposals: Sequence[ImportProposal], passages: Sequence[Passage]
    ) -> None:
        """Show the table, in the order in which the recordings were played."""
        self.rows = [ImportRow(proposal, passages) for proposal in sorted(proposals, key=_played)]
        inside = QWidget()
        grid = QGridLayout(inside)
        grid.setContentsMargins(0, 0, GRID_PX, 0)
        grid.setHorizontalSpacing(2 * GRID_PX)
        for at, words in enumerate(_headings()):
            grid.addWidget(soft(words, wrap=False), 0, at)
        for line, entry in enumerate(self.rows, 1):
            for at, field in enumerate(entry.fields):
                grid.addWidget(field, line, at)
        grid.setColumnStretch(2, 4)
        grid.setColumnStretch(3, 2)
        grid.setColumnStretch(5, 4)
        grid.setRowStretch(len(self.rows) + 1, 1)
        for entry in self.rows:
            entry.day.dateChanged.connect(self._number_days)
            entry.answer.picked.connect(lambda _: self._number_days())
        self._scroll.setWidget(inside)
        self._number_days()
        good = sum(entry.problem == "" for entry in self.rows)
        self._words.setText(_kept_words() if good else tr("None of these can be filed."))
        self._bar.hide()
        self._file.setText(
            tr("File {good}").format(good=counted(good, "recording")) if good else tr("File them")
        )
        self._file.setEnabled(good > 0)
        if good:
            self._file.setFocus()
        self._recognise()

    def _recognise(self) -> None:
        """Listen to files without a passage and propose one; the player may file meanwhile."""
        proposing = self._desk.workbench.proposing
        for entry in self.rows:
            if entry.wants_a_passage:
                self._desk.jobs.analyse(
                    partial(proposing.of_file, entry.path),
                    entry.show_passage,
                    subject=f"{_RECOGNISING}{entry.path}",
                    failed=lambda _failure: None,  # a proposal less; the table says what is wrong
                )

    def _recognise_no_more(self) -> None:
        for entry in self.rows:
            self._desk.jobs.forget(f"{_RECOGNISING}{entry.path}")

    def _number_days(self) -> None:
        """Say beside each day which number it has, and whether it is entered late."""
        bench, rows = self._desk.workbench, self.rows
        days = {entry.practice_day for entry in rows if not entry.problem} - {None}
        self._desk.jobs.store(
            lambda: {day: day_number_text(bench, day) for day in days if day is not None},
            lambda found: _show_numbers(rows, found),
            subject="import.numbers",
        )

    @property
    def is_busy(self) -> bool:
        """True while files are read or filed."""
        return not self._bar.isHidden() and self.isVisible()

    def file_all(self) -> None:
        """File what has no problem."""
        proposals = [entry.proposal for entry in self.rows]
        chosen = tuple(proposal for proposal in proposals if proposal is not None)
        asking = sum(entry.practice_day is None for entry in self.rows if not entry.problem)
        if asking:
            self._desk.tell(
                tr("{count} have no day yet.").format(count=counted(asking, "recording")),
                tr("Answer the question beside each; then file them."),
            )
        if not chosen or asking:
            return
        self._recognise_no_more()
        self._busy(tr("Filing {chosen}").format(chosen=counted(len(chosen), "recording")))
        importing = self._desk.workbench.importing
        self._desk.jobs.analyse(
            lambda progress, should_stop: importing.file(chosen, progress, should_stop),
            self._filed,
            subject="import",
            progress=self._moved,
            failed=self._failed,
        )

    def cancel(self) -> None:
        """Stop reading or filing and close."""
        self._recognise_no_more()
        self._desk.jobs.forget("import")
        self._desk.takesChanged.emit()
        self.closed.emit()

    def _busy(self, words: str) -> None:
        self._words.setText(words)
        self._bar.setValue(0)
        self._bar.show()
        self._file.setEnabled(False)

    def _moved(self, fraction: float) -> None:
        self._bar.show_fraction(fraction)

    def _filed(self, rows: tuple[TakeRow, ...]) -> None:
        days = {take.practice_day for take in rows}
        self._desk.tell(
            tr("{rows} filed under {days}.").format(
                rows=counted(len(rows), "take"), days=counted(len(days), "practice day")
            )
        )
        self._desk.takesChanged.emit()
        self._desk.daysChanged.emit()
        self.closed.emit()

    def _unreadable(self, failure: PlainFailure) -> None:
        self._desk.tell_failure(failure)
        self.closed.emit()

    def _failed(self, failure: PlainFailure) -> None:
        self._bar.hide()
        self._file.setEnabled(True)
        self._desk.tell_failure(failure)
        self._desk.takesChanged.emit()


def _played(proposal: ImportProposal) -> tuple[bool, date, datetime, tuple[str | int, ...]]:
    """Sort by day and moment; what cannot be filed comes last."""
    return (
        bool(proposal.failure),
        proposal.practice_day,
        proposal.recorded_at,
        natural_key(proposal.path.name),
    )


def _show_numbers(rows: Sequence[ImportRow], found: Mapping[date, str]) -> None:
    for entry in rows:
        day = entry.practice_day
        entry.number.setText("" if entry.problem or day is None else found.get(day, ""))


def _kept_words() -> str:
    return tr(
        "The original file is copied as it is and kept, also where a take is only a part of it."
    )


def _headings() -> tuple[str, ...]:
    return (
        tr("File"),
        tr("Practice day"),
        tr("Day number"),
        tr("Passage"),
        tr("Part that is kept"),
        tr("Where that comes from"),
    )
