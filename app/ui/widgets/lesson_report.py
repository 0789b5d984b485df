"""The lesson report to read in the window: one card a part, markers with a way to hear them."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QScrollArea, QWidget

from app.services.lesson.report import DayPart, LessonReport, MarkerPart, PassagePart, TaskPart
from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, column, fill, row, sentence, soft
from app.ui.words import counted, day_text, minutes_text


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

    def show_report(self, report: LessonReport) -> None:
        """Show another report."""
        inside = QWidget()
        box = column(inside, spacing=2 * GRID_PX)
        box.setContentsMargins(0, 0, GRID_PX, 0)
        words = [report.summary, *report.promises, report.caution]
        box.addWidget(_card(tr("In short"), *(sentence(text) for text in words if text)))
        box.addWidget(_card(tr("Days"), *(_day(day) for day in report.days)))
        if report.items:
            lines = (f"{name}: {minutes_text(minutes)}" for name, minutes in report.items)
            box.addWidget(_card(tr("Minutes by item"), *map(sentence, lines)))
        if report.tasks:
            box.addWidget(_card(tr("What was set"), *map(_task, report.tasks)))
        for passage in report.passages:
            box.addWidget(_passage(passage))
        if report.markers:
            lines_of = (self._marker(marker) for marker in report.markers)
            box.addWidget(_card(tr("Marked while listening"), *lines_of))
        if report.remarks:
            box.addWidget(_card(tr("Remarks"), *map(sentence, report.remarks)))
        box.addStretch(1)
        self.setWidget(inside)

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


def _card(title: str, *lines: QWidget) -> Card:
    card = Card(title)
    for line in lines:
        card.box.addWidget(line)
    return card


def _day(day: DayPart) -> QWidget:
    line = QWidget()
    box = row(line)
    parts = [counted(day.takes, "take")] if day.takes else []
    if day.rest:
        parts.append(tr("rest, planned") if day.rest == "planned" else tr("rest"))
    parts += [f"{name} {minutes_text(minutes)}" for name, minutes in day.items]
    name, minutes = sentence(day_text(day.day)), sentence(minutes_text(day.minutes))
    minutes.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
    for label, width in ((name, 128), (minutes, 112)):
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


def _passage(passage: PassagePart) -> Card:
    card = Card(passage.title)
    for take in passage.takes:
        card.box.addWidget(sentence(take.title))
        if take.measured:
            card.box.addWidget(soft("; ".join(take.measured)))
        if take.aim:
            card.box.addWidget(soft(tr("Aim: {aim}").format(aim=take.aim)))
    if passage.changes:
        card.box.addWidget(sentence(tr("Over all takes of this passage:")))
        for text in (*passage.changes, passage.notice):
            if text:
                card.box.addWidget(soft(text))
    return card
