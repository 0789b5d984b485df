"""What the player calls days of a few minutes: up to four names, each with its minutes."""

from dataclasses import replace

from PySide6.QtCore import QSize, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QGridLayout, QLineEdit, QSpinBox, QWidget

from app.journal.day_names import MOST_NAMES, DayName
from app.journal.records import JournalSettings
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.theme import GRID_PX, Theme
from app.ui.widgets.basics import Button, Card, fill, row, sentence, soft
from app.ui.widgets.year_marks import SWATCH, draw_bar

_MOST_MINUTES = 24 * 60
_NAME_WIDTH_PX = 220


class DayNamesForm(Card):
    """Four rows of a name and minutes; an empty name takes a row away.

    Signals
    -------
    closed()
        Nothing more to do here.
    """

    closed = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__(tr("Kinds of day"))
        self._desk = desk
        self.names: list[QLineEdit] = []
        self.minutes: list[QSpinBox] = []
        grid = QGridLayout()
        grid.setSpacing(GRID_PX)
        grid.addWidget(soft(tr("Name"), wrap=False), 0, 1)
        grid.addWidget(soft(tr("Up to, minutes a day"), wrap=False), 0, 2)
        for at in range(MOST_NAMES):
            self._add_row(grid, at)
        grid.setColumnStretch(3, 1)
        self.keep = Button(tr("Keep the names"), primary=True)
        close = Button(tr("Back to the year"), plain=True)
        buttons = row()
        fill(buttons, self.keep, 1, close)
        about = sentence(
            tr(
                "Give short days a name of your own: a bar up to these minutes is hatched, and"
                " its name stands in the legend and in what is saved. A short day counts as any"
                " other; only a promise can ask for more."
            )
        )
        fill(self.box, about, grid, buttons, 1)
        self.keep.clicked.connect(self._keep)
        close.clicked.connect(self.closed)

    def start(self) -> None:
        """Read the names there are."""
        self._desk.jobs.store(
            self._desk.workbench.practising.settings, self._show, subject="calendar.names"
        )
        self.names[0].setFocus()

    def _add_row(self, grid: QGridLayout, at: int) -> None:
        name, minutes = QLineEdit(), QSpinBox()
        name.setMaxLength(24)
        name.setFixedWidth(_NAME_WIDTH_PX)
        name.setAccessibleName(tr("Name of kind {number}").format(number=at + 1))
        name.setPlaceholderText(tr("short day") if at == 0 else "")
        name.returnPressed.connect(self._keep)
        minutes.setRange(0, _MOST_MINUTES)
        minutes.setSuffix(tr(" min"))
        minutes.setSpecialValueText("\N{EN DASH}")
        minutes.setAccessibleName(tr("Kind {number} up to, minutes").format(number=at + 1))
        for column, field in enumerate((_Swatch(self._desk.theme, at), name, minutes)):
            grid.addWidget(field, at + 1, column)
        self.names.append(name)
        self.minutes.append(minutes)

    def _show(self, settings: JournalSettings) -> None:
        for at, (name, minutes) in enumerate(zip(self.names, self.minutes, strict=True)):
            known = settings.day_names[at] if at < len(settings.day_names) else None
            name.setText(known.name if known else "")
            minutes.setValue(round(known.up_to_min) if known else 0)

    def _keep(self) -> None:
        given = tuple(
            DayName(name.text(), minutes.value())
            for name, minutes in zip(self.names, self.minutes, strict=True)
            if name.text().strip()
        )
        practising = self._desk.workbench.practising

        def change() -> JournalSettings:
            return practising.change_settings(replace(practising.settings(), day_names=given))

        self._desk.jobs.store(change, self._kept)

    def _kept(self, settings: JournalSettings) -> None:
        self._show(settings)
        self._desk.tell(tr("The names of days are kept."))
        self._desk.daysChanged.emit()
        self.closed.emit()


class _Swatch(QWidget):
    """How bars of a kind look; the kinds are hatched in the order of their minutes."""

    def __init__(self, theme: Theme, kind: int) -> None:
        super().__init__()
        self._theme = theme
        self._kind = kind
        self.setFixedSize(QSize(18, 18))
        theme.changed.connect(lambda _: self.update())

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw it."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        draw_bar(painter, SWATCH.translated(2, 2), self._kind, self._theme.colours)
