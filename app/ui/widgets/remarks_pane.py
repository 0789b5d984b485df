"""What the teacher said: written down, changed, and made tasks of."""

from datetime import date, timedelta

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QListWidget, QPlainTextEdit, QWidget

from app.journal.assignments import Assignment
from app.journal.remarks import LessonRemark, tasks_of
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.widgets.basics import Button, column, fill, labelled, row, soft
from app.ui.widgets.choices import DayEdit
from app.ui.words import counted, day_text

_NEXT_LESSON = timedelta(days=7)


class RemarksPane(QWidget):
    """Lists remarks, edits one, and sets its lines as tasks until a day.

    Signals
    -------
    changed()
        Remarks or tasks are other ones now.
    """

    changed = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._span: tuple[date, date] | None = None
        self._changing: LessonRemark | None = None
        self._remarks: tuple[LessonRemark, ...] = ()
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Remarks, by lesson"))
        self.list.setWordWrap(True)
        self.lesson_day = DayEdit(tr("Day of the lesson"))
        self.due_on = DayEdit(tr("Tasks until"))
        self.text = QPlainTextEdit()
        self.text.setAccessibleName(tr("What the teacher said"))
        self.text.setPlaceholderText(tr("One thing a line: each line can become a task."))
        self.text.setTabChangesFocus(True)
        self.keep = Button(tr("Write down"), action_id="lesson.remark")
        self.new = Button(tr("New"), plain=True)
        self.change = Button(tr("Change it"), action_id="lesson.change_remark")
        self.tasks = Button(tr("Make tasks"), action_id="lesson.tasks")
        self._build()
        self.keep.clicked.connect(self.keep_text)
        self.new.clicked.connect(self.begin)
        self.change.clicked.connect(self.begin_change)
        self.tasks.clicked.connect(self.make_tasks)
        self.list.currentRowChanged.connect(lambda _: self._enable())
        may_write = not desk.workbench.read_only
        for field in (self.text, self.keep):
            field.setEnabled(may_write)
        self._enable()

    def _build(self) -> None:
        chosen = row()
        fill(chosen, self.change, 1)
        set_until = row()
        set_until.addLayout(labelled(tr("Tasks until"), self.due_on), 1)
        set_until.addWidget(self.tasks, 0, Qt.AlignmentFlag.AlignBottom)
        writing = row()
        writing.addLayout(labelled(tr("Day of the lesson"), self.lesson_day), 1)
        writing.addWidget(self.new, 0, Qt.AlignmentFlag.AlignBottom)
        writing.addWidget(self.keep, 0, Qt.AlignmentFlag.AlignBottom)
        hint = soft(tr("Kept with the days shown here; tasks enter the plan of each day."))
        box = column(self)
        fill(box, self.list, chosen, set_until, self.text, writing, hint)
        box.setStretch(0, 2)
        box.setStretch(3, 1)

    def show_span(self, first: date, last: date, today: date) -> None:
        """Remarks that are written now are about these days."""
        if self._span is None:
            self.lesson_day.show_day(today)
            self.due_on.show_day(today + _NEXT_LESSON)
        self._span = (first, last)
        lessons = self._desk.workbench.lessons
        self._desk.jobs.store(lessons.remarks, self._show, subject="lesson.remarks")

    @property
    def chosen(self) -> LessonRemark | None:
        """The remark that is chosen in the list."""
        at = self.list.currentRow()
        return self._remarks[at] if 0 <= at < len(self._remarks) else None

    def write(self) -> None:
        """Go to the text, or keep it where there is one."""
        if self.text.toPlainText().strip():
            self.keep_text()
        else:
            self.text.setFocus()

    def begin(self) -> None:
        """Begin a new remark."""
        self._changing = None
        self.text.clear()
        self.lesson_day.setEnabled(True)
        self.text.setFocus()

    def begin_change(self) -> None:
        """Take the chosen remark into the text field."""
        remark = self.chosen
        if remark is None:
            self._desk.tell(tr("No remark is chosen."), tr("Choose one in the list first."))
            return
        self._changing = remark
        self.text.setPlainText(remark.text)
        self.lesson_day.show_day(remark.lesson_day)
        self.lesson_day.setEnabled(False)
        self.text.setFocus()

    def keep_text(self) -> None:
        """Keep what is written, as a new remark or in the place of the one changed."""
        if self._span is None:
            return
        lessons, text, span = self._desk.workbench.lessons, self.text.toPlainText(), self._span
        changing, day = self._changing, self.lesson_day.day
        self._desk.jobs.store(
            lambda: (
                lessons.change_remark(changing, text)
                if changing is not None
                else lessons.add_remark(text, day, *span)
            ),
            lambda _: self._kept(),
        )

    def make_tasks(self) -> None:
        """Make a task of each line of the chosen remark."""
        remark = self.chosen
        if remark is None:
            self._desk.tell(tr("No remark is chosen."), tr("Choose one in the list first."))
            return
        lessons, due_on = self._desk.workbench.lessons, self.due_on.day
        self._desk.jobs.store(lambda: lessons.make_tasks(remark, due_on), self._set)

    def _kept(self) -> None:
        self.begin()
        self.list.setFocus()
        self.changed.emit()

    def _set(self, made: tuple[Assignment, ...]) -> None:
        if made:
            self._desk.tell(
                tr("{count} set until {day}; the plan knows them.").format(
                    count=counted(len(made), "task"), day=day_text(made[0].due_on)
                )
            )
        else:
            self._desk.tell(tr("These tasks are set for that day already."))
        self.changed.emit()

    def _show(self, remarks: tuple[LessonRemark, ...]) -> None:
        before = self.chosen
        self._remarks = tuple(reversed(remarks))
        self.list.clear()
        self.list.addItems([f"{day_text(r.lesson_day)}\n{r.text}" for r in self._remarks])
        ids = [remark.id for remark in self._remarks]
        if ids:
            kept = before is not None and before.id in ids
            self.list.setCurrentRow(ids.index(before.id) if before is not None and kept else 0)
        self._enable()

    def _enable(self) -> None:
        remark = self.chosen
        may_write = remark is not None and not self._desk.workbench.read_only
        self.change.setEnabled(may_write)
        self.tasks.setEnabled(may_write and remark is not None and bool(tasks_of(remark)))
