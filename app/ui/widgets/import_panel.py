"""Files to be filed: each with its proposed day and passage, corrected before filing."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QScrollArea, QWidget

from app.journal.failures import PlainFailure
from app.journal.records import Passage
from app.services.views import ImportProposal, TakeRow
from app.services.wording import counted, day_text
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.day_numbers import day_number_text
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, fill, row, sentence, soft
from app.ui.widgets.choices import Choice, DayEdit, passage_text
from app.ui.widgets.part_edit import PartEdit
from app.ui.widgets.progress_bar import ThinProgressBar
from app.ui.widgets.take_pane import NO_PASSAGE

_NO_DAY = ""


class ImportRow:
    """The fields of one proposal."""

    def __init__(self, proposal: ImportProposal, passages: Sequence[Passage]) -> None:
        self._proposal = proposal
        name = proposal.path.name
        self.name = QLabel(name)
        self.name.setToolTip(str(proposal.path))
        self.name.setTextFormat(Qt.TextFormat.PlainText)
        self.day = DayEdit(tr("Practice day of {name}").format(name=name))
        self.day.show_day(proposal.practice_day)
        self.answer: Choice[str] = Choice(tr("Which day was {name} played?").format(name=name))
        days = [(day.isoformat(), day_text(day)) for day in proposal.days]
        self.answer.offer([(_NO_DAY, tr("Which day?")), *days], _NO_DAY)
        is_asked = bool(proposal.question) and not proposal.failure
        self._either = QWidget()
        fill(row(self._either, spacing=0), self.day, self.answer)
        self.day.setVisible(not is_asked)
        self.answer.setVisible(is_asked)
        self.number = sentence()
        self.passage: Choice[str] = Choice(tr("Passage of {name}").format(name=name))
        entries = [(passage.id, passage_text(passage)) for passage in passages]
        self.passage.offer([(NO_PASSAGE, tr("No passage")), *entries], proposal.passage_id)
        self.part = PartEdit(name, proposal.duration_s)
        self.problem = proposal.failure
        if proposal.duplicate_of:
            duplicate = tr("Already in the journal: {place}.")
            self.problem = duplicate.format(place=proposal.duplicate_of)
        self.source = sentence(self.problem or _about(proposal))
        if self.problem or proposal.question:
            self.source.setProperty("tone", "attention")
        if self.problem:
            for field in (self.day, self.passage, self.part):
                field.setEnabled(False)

    @property
    def fields(self) -> tuple[QWidget, ...]:
        """The widgets in the order of the headings."""
        return (self.name, self._either, self.number, self.passage, self.part, self.source)

    @property
    def practice_day(self) -> date | None:
        """The day it will be filed under; ``None`` while that is asked."""
        if not self._proposal.question:
            return self.day.day
        return date.fromisoformat(self.answer.key) if self.answer.key else None

    @property
    def proposal(self) -> ImportProposal | None:
        """The corrected proposal; ``None`` where there is nothing to file, or no day yet."""
        day = self.practice_day
        if self.problem or day is None:
            return None
        from_s, to_s = self.part.part_s
        corrected = replace(
            self._proposal, passage_id=self.passage.key or None, from_s=from_s, to_s=to_s
        )
        return corrected.on_day(day)


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
        self._busy(f"Reading {counted(len(paths), 'file')}")
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
        """Show the table."""
        self.rows = [ImportRow(proposal, passages) for proposal in proposals]
        inside = QWidget()
        grid = QGridLayout(inside)
        grid.setContentsMargins(0, 0, GRID_PX, 0)
        grid.setHorizontalSpacing(2 * GRID_PX)
        for at, words in enumerate(_headings()):
            grid.addWidget(soft(words, wrap=False), 0, at)
        for line, entry in enumerate(self.rows, 1):
            for at, field in enumerate(entry.fields):
                grid.addWidget(field, line, at)
        grid.setColumnStretch(2, 2)
        grid.setColumnStretch(3, 2)
        grid.setColumnStretch(5, 5)
        grid.setRowStretch(len(self.rows) + 1, 1)
        for entry in self.rows:
            entry.day.dateChanged.connect(self._number_days)
            entry.answer.picked.connect(lambda _: self._number_days())
        self._scroll.setWidget(inside)
        self._number_days()
        good = sum(entry.problem == "" for entry in self.rows)
        self._words.setText(_kept_words() if good else tr("None of these can be filed."))
        self._bar.hide()
        self._file.setText(f"File {counted(good, 'recording')}" if good else "File them")
        self._file.setEnabled(good > 0)
        if good:
            self._file.setFocus()

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
        self._busy(f"Filing {counted(len(chosen), 'recording')}")
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
            f"{counted(len(rows), 'take')} filed under {counted(len(days), 'practice day')}."
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
        tr("Where the day comes from"),
    )


def _about(proposal: ImportProposal) -> str:
    """Say where the day comes from, what is asked, and what else is known of the file."""
    picture = tr("The picture is kept too.") if proposal.has_video else ""
    parts = (f"{proposal.recorded_at_source}.", proposal.question, proposal.notice, picture)
    return " ".join(part for part in parts if part)
