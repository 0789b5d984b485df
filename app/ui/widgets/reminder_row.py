"""Whether to be reminded of practice, and when; off unless wished."""

from PySide6.QtCore import QTime
from PySide6.QtWidgets import QCheckBox, QTimeEdit, QWidget

from app.ui.language import tr
from app.ui.widgets.basics import column, fill

_USUAL_MINUTE = 18 * 60


class ReminderRow(QWidget):
    """A tick and a time of day."""

    def __init__(self) -> None:
        super().__init__()
        self.wanted = QCheckBox(tr("Remind me of practice at"))
        self.wanted.setAccessibleName(self.wanted.text())
        self.wanted.setToolTip(
            tr("At most once a day while the program runs, and never once the day is done.")
        )
        self.time = QTimeEdit()
        self.time.setDisplayFormat("HH:mm")
        self.time.setAccessibleName(tr("Time of the reminder"))
        self.wanted.toggled.connect(self.time.setEnabled)
        fill(column(self, spacing=2), self.wanted, self.time)
        self.show_minute(None)

    def show_minute(self, minute: int | None) -> None:
        """Show a minute of the day; ``None``: no reminder."""
        shown = _USUAL_MINUTE if minute is None else minute
        self.time.setTime(QTime(shown // 60, shown % 60))
        self.wanted.setChecked(minute is not None)
        self.time.setEnabled(minute is not None)

    @property
    def minute(self) -> int | None:
        """The minute of the day, ``None`` where no reminder is wished."""
        shown = self.time.time()
        return shown.hour() * 60 + shown.minute() if self.wanted.isChecked() else None
