"""Hours from before the journal, typed in as one entry and shown as such."""

from collections.abc import Callable
from datetime import date

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCheckBox, QLineEdit, QSpinBox, QWidget

from app.journal.assignments import MOST_HOURS
from app.services.keeping_views import LifetimeView
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.widgets.basics import Button, column, fill, labelled, row, sentence
from app.ui.widgets.choices import DayEdit


class EarlierHoursForm(QWidget):
    """All hours there are, and the one entry from before."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self.words = sentence()
        self.hours = QSpinBox()
        self.hours.setRange(0, int(MOST_HOURS))
        self.hours.setSuffix(tr(" h"))
        self.hours.setSpecialValueText("\N{EN DASH}")
        self.has_until = QCheckBox(tr("until"))
        self.has_until.setAccessibleName(tr("The hours reach up to a day"))
        self.until = DayEdit(tr("Until"))
        self.until.setEnabled(False)
        self.note = QLineEdit()
        self.note.setMaxLength(200)
        self.note.setPlaceholderText(tr("reckoned at an hour a day"))
        self.keep = Button(tr("Keep the hours"))
        self.clear = Button(tr("Take them away"), plain=True)
        fields, buttons = row(), row()
        fields.addLayout(labelled(tr("Hours before the journal"), self.hours))
        until = column(spacing=2)
        fill(until, self.has_until, self.until)
        fields.addLayout(until)
        note = labelled(tr("Remark"), self.note)
        fields.addLayout(note, 1)
        fields.setAlignment(until, Qt.AlignmentFlag.AlignBottom)
        fill(buttons, self.keep, self.clear, 1)
        fill(column(self), self.words, fields, buttons)
        self.has_until.toggled.connect(self.until.setEnabled)
        self.keep.clicked.connect(self._keep)
        self.clear.clicked.connect(lambda: self._run(desk.workbench.record.clear_earlier_hours))

    def show_lifetime(self, view: LifetimeView, first_day: date) -> None:
        """Show what there is; `first_day` is offered as the end of the time before."""
        earlier = view.earlier
        note = f" ({earlier.note})" if earlier and earlier.note else ""
        self.words.setText(view.sentence + note)
        self.hours.setValue(round(earlier.hours) if earlier else 0)
        self.has_until.setChecked(bool(earlier and earlier.until))
        self.until.show_day(earlier.until if earlier and earlier.until else first_day)
        self.note.setText(earlier.note if earlier else "")
        self.clear.setEnabled(earlier is not None)

    def _keep(self) -> None:
        hours, note = float(self.hours.value()), self.note.text()
        until = self.until.day if self.has_until.isChecked() else None
        record = self._desk.workbench.record
        self._run(lambda: record.set_earlier_hours(hours, until, note))

    def _run(self, change: Callable[[], LifetimeView]) -> None:
        self._desk.jobs.store(change, lambda view: self.show_lifetime(view, self.until.day))
