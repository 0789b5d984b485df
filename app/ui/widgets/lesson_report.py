"""The lesson report to read in the window: one card a part, markers with a way to hear them."""

from collections.abc import Iterable, Iterator
from itertools import islice

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QBoxLayout, QFrame, QLabel, QScrollArea, QWidget

from app.services.lesson.report import DayPart, LessonReport, MarkerPart, PassagePart, TaskPart
from app.ui.language import tr
from app.ui.spoken import word
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, column, fill, row, sentence, soft
from app.ui.words import counted, day_text, minutes_text

_LINES_AT_ONCE = 24
"""A line is a label or two; so many of them keep the window waiting for some 20 ms."""


class LessonReportView(QScrollArea):
    """Shows a report in the order in which it is said.

    Signals
    -------
    hearWanted(take_id, position_s)
        A marked place is to be heard.
    """

    hearWanted = Signal(str, float)

    def __init__(self) -> None:
        super().__init__()
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName(tr("What the report says"))
        self._shown: LessonReport | None = None
        self._lines: Iterator[None] = iter(())
        self._later = QTimer(self, interval=0)
        self._later.timeout.connect(self._go_on)

    def show_report(self, report: LessonReport) -> None:
        """Show another report: its beginning now, a long rest of it little by little."""
        if report == self._shown:
            return
        self._shown = report
        inside = QWidget()
        box = column(inside, spacing=2 * GRID_PX)
        box.setContentsMargins(0, 0, GRID_PX, 0)
        box.addStretch(1)
        if before := self.takeWidget():
            before.deleteLater()  # on its own: hundreds of labels take a while to go
        self.setWidget(inside)
        self._lines = self._written(report, box)
        self._go_on()

    @property
    def is_whole(self) -> bool:
        """Whether everything of the report is there."""
        return not self._later.isActive()

    def _go_on(self) -> None:
        written = sum(1 for _ in islice(self._lines, _LINES_AT_ONCE))
        if written == _LINES_AT_ONCE:
            self._later.start()
        else:
            self._later.stop()

    def _written(self, report: LessonReport, box: QBoxLayout) -> Iterator[None]:
        """Write the report, a line before each yield."""
        for title, lines in self._cards(report):
            card = Card(title)
            box.insertWidget(box.count() - 1, card)
            for line in lines:
                card.box.addWidget(line)
                yield

    def _cards(self, report: LessonReport) -> Iterator[tuple[str, Iterable[QWidget]]]:
        words = [report.summary, *report.promises, report.caution]
        yield tr("In short"), (sentence(text) for text in words if text)
        widest = _widest([minutes_text(day.minutes) for day in report.days])
        yield tr("Days"), (_day(day, widest) for day in report.days)
        if report.items:
            texts = (f"{name}: {minutes_text(minutes)}" for name, minutes in report.items)
            yield tr("Minutes by item"), map(_as_it_is, texts)
        if report.tasks:
            yield tr("What was set"), map(_task, report.tasks)
        for passage in report.passages:
            yield passage.title, _passage(passage)
        if report.markers:
            yield tr("Marked while listening"), map(self._marker, report.markers)
        if report.remarks:
            yield tr("Remarks"), map(sentence, report.remarks)

    def _marker(self, marker: MarkerPart) -> QWidget:
        line = QWidget()
        text = f"{marker.what}: {marker.text}" if marker.text else marker.what
        hear = Button(tr("Hear"), "play", plain=True)
        hear.setAccessibleName(tr("Hear {where}").format(where=marker.where))
        hear.clicked.connect(
            lambda _=False: self.hearWanted.emit(marker.take_id, marker.listen_from_s)
        )
        words = column(spacing=0)
        fill(words, sentence(text), soft(marker.where))
        box = row(line)
        box.addLayout(words, 1)
        box.addWidget(hear, 0, Qt.AlignmentFlag.AlignTop)
        return line


def _as_it_is(text: str) -> QLabel:
    """Show a player's words: an item called "Lesson" keeps its name in every language."""
    label = sentence()
    QLabel.setText(label, text)
    return label


def _widest(texts: list[str]) -> int:
    """Give the width in pixels that all these texts fit into."""
    label = sentence()
    return max((label.fontMetrics().horizontalAdvance(text) for text in texts), default=0)


def _day(day: DayPart, minutes_px: int) -> QWidget:
    line = QWidget()
    box = row(line)
    parts = [counted(day.takes, "take")] if day.takes else []
    if day.rest:
        parts.append(tr("rest, planned") if day.rest == "planned" else tr("rest"))
    parts += [f"{name} {minutes_text(minutes)}" for name, minutes in day.items]
    name, minutes = sentence(day_text(day.day)), sentence(minutes_text(day.minutes))
    minutes.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
    for label, width in ((name, 128), (minutes, max(112, minutes_px))):
        label.setWordWrap(False)
        label.setMinimumWidth(width)
    fill(box, name, minutes, soft("; ".join(parts)))
    box.setStretch(2, 1)
    return line


def _task(task: TaskPart) -> QWidget:
    line = QWidget()
    state = tr("Done") if task.is_done else tr("Open")
    fill(column(line, spacing=0), sentence(f"{state}: {task.text}"), soft(task.sentence))
    return line


def _passage(passage: PassagePart) -> Iterator[QWidget]:
    for take in passage.takes:
        yield sentence(take.title)
        if take.measured:
            yield soft("; ".join(take.measured))
        if take.aim:
            met = f" ({word(take.met)})" if take.met else ""
            yield soft(tr("Aim: {aim}").format(aim=take.aim) + met)
    if passage.changes:
        yield sentence(tr("Over all takes of this passage:"))
        for text in (*passage.changes, passage.notice):
            if text:
                yield soft(text)
