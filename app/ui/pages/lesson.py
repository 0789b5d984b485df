"""Lesson: a span of days in words, for the teacher."""

from datetime import date, timedelta
from pathlib import Path

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog, QPlainTextEdit

from app.journal.failures import PlainFailure
from app.ui.desk import Desk
from app.ui.pages.page import Page
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, column, fill, heading, row, soft
from app.ui.widgets.choices import DayEdit

_WEEK = timedelta(days=7)


class LessonPage(Page):
    """What was done between two days; copied or saved as text."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk, "Lesson")
        self._today: date | None = None
        self._first = DayEdit("First day")
        self._last = DayEdit("Last day")
        self._previous = Button("", "previous", action_id="lesson.previous")
        self._next = Button("", "next", action_id="lesson.next")
        self._week = Button("Last seven days", action_id="lesson.this_week")
        self._copy = Button("Copy", action_id="lesson.copy")
        self._save = Button("Save as text", "folder", action_id="lesson.save", primary=True)
        self.text = QPlainTextEdit()
        self.text.setReadOnly(True)
        self.text.setAccessibleName("The span of days in words")
        self.text.setPlaceholderText("Choose the days to be told.")
        self.text.setTabChangesFocus(True)
        self._build()
        self._connect()

    def _build(self) -> None:
        head = row()
        fill(head, heading("From"), self._first, heading("to"), self._last)
        fill(head, self._previous, self._next, self._week, 1, self._copy, self._save)
        card = Card()
        card.box.addWidget(self.text)
        self.text.setStyleSheet("border: none; background: transparent;")
        words = soft("Read it through before the lesson: it says what was measured, no more.")
        box = column(self, spacing=2 * GRID_PX, margin=2 * GRID_PX)
        fill(box, head, card, words)
        box.setStretch(1, 1)

    def _connect(self) -> None:
        bind = self.desk.keys.bind
        self._first.dateChanged.connect(lambda _: self._read())
        self._last.dateChanged.connect(lambda _: self._read())
        for button, action_id, slot in (
            (self._previous, "lesson.previous", lambda: self._move(-_WEEK)),
            (self._next, "lesson.next", lambda: self._move(_WEEK)),
            (self._week, "lesson.this_week", self._this_week),
            (self._copy, "lesson.copy", self.copy),
            (self._save, "lesson.save", self._choose_file),
        ):
            button.clicked.connect(slot)
            bind(self, action_id, slot)

    def refresh(self) -> None:
        """Read the span again; the first time, the last seven days."""
        practising = self.desk.workbench.practising
        self.desk.jobs.store(
            lambda: practising.today().practice_day, self._know_today, subject="lesson.today"
        )

    def copy(self) -> None:
        """Copy the text."""
        QGuiApplication.clipboard().setText(self.text.toPlainText())
        self.desk.tell("The text was copied.")

    def save(self, path: Path) -> None:
        """Write the text to a file."""
        text = self.text.toPlainText()
        self.desk.jobs.store(
            lambda: _write(path, text), lambda _: self.desk.tell(f"Saved as {path.name}.")
        )

    def _know_today(self, today: date) -> None:
        is_first = self._today is None
        self._today = today
        if is_first:
            self._this_week()
        else:
            self._read()

    def _this_week(self) -> None:
        if self._today is not None:
            self._show_span(self._today - _WEEK + timedelta(days=1), self._today)

    def _move(self, step: timedelta) -> None:
        self._show_span(self._first.day + step, self._last.day + step)

    def _show_span(self, first: date, last: date) -> None:
        self._first.show_day(first)
        self._last.show_day(last)
        self._read()

    def _read(self) -> None:
        first, last = sorted((self._first.day, self._last.day))
        reporting = self.desk.workbench.reporting
        self.desk.jobs.store(
            lambda: reporting.text(first, last), self.text.setPlainText, subject="lesson.text"
        )

    def _choose_file(self) -> None:
        name, _ = QFileDialog.getSaveFileName(
            self, "Save the text", f"lesson-{self._last.day.isoformat()}.txt", "Text (*.txt)"
        )
        if name:
            self.save(Path(name))


def _write(path: Path, text: str) -> None:
    try:
        path.write_text(text + "\n", encoding="utf-8")
    except OSError as error:
        raise PlainFailure(
            f"{path.name} could not be written: {error.strerror or error}.",
            "Choose another folder.",
        ) from error
