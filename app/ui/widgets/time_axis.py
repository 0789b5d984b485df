"""The time axis below the lanes: strokes at whole minutes, seconds or tenths."""

from math import ceil

from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen
from PySide6.QtWidgets import (
    QGraphicsWidget,
    QSizePolicy,
    QStyleOptionGraphicsItem,
    QWidget,
)

from app.ui.theme import GRID_PX, SMALL_PT, Colours, font
from app.ui.widgets.plot import TIME_AXIS_PX
from app.ui.words import position_text

# Seconds from one label to the next, and from stroke to stroke between them.
_STEPS_S = (
    (0.1, 0.02), (0.2, 0.05), (0.5, 0.1), (1.0, 0.2), (2.0, 0.5), (5.0, 1.0), (10.0, 2.0),
    (15.0, 5.0), (30.0, 5.0), (60.0, 10.0), (120.0, 30.0), (300.0, 60.0), (600.0, 120.0),
    (900.0, 300.0), (1800.0, 300.0), (3600.0, 600.0),
)  # fmt: skip
_LEAST_LABEL_PX = 72.0
_LONG_PX, _SHORT_PX = 5.0, 3.0
_LABEL_TOP_PX = 7.0


def steps_for(seconds_per_px: float) -> tuple[float, float]:
    """Return how far apart labels and strokes are, seconds, so that labels keep apart."""
    return next(
        (steps for steps in _STEPS_S if steps[0] >= _LEAST_LABEL_PX * seconds_per_px),
        _STEPS_S[-1],
    )


def ticks_in(start_s: float, end_s: float, step_s: float) -> list[float]:
    """Return the multiples of a step from start to end, seconds."""
    first = ceil(start_s / step_s - 1e-6)
    return [at * step_s for at in range(first, int(end_s / step_s + 1e-6) + 1)]


class TimeAxis(QGraphicsWidget):
    """Draws the axis of the stretch in view, as wide as the lanes."""

    def __init__(self, colours: Colours) -> None:
        super().__init__()
        self.colours = colours
        self._view = (0.0, 1.0)
        self.setMinimumHeight(TIME_AXIS_PX)
        self.setMaximumHeight(TIME_AXIS_PX)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_range(self, start_s: float, end_s: float) -> None:
        """Show the times of this stretch."""
        self._view = (start_s, end_s)
        self.update()

    def recolour(self, colours: Colours) -> None:
        """Use another palette."""
        self.colours = colours
        self.update()

    def boundingRect(self) -> QRectF:
        """Cover the labels at both ends too."""
        return self.rect().adjusted(-4 * GRID_PX, 0.0, GRID_PX, 0.0)

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionGraphicsItem,
        widget: QWidget | None = None,
    ) -> None:
        """Draw the line, the strokes and the labels."""
        del option, widget
        start_s, end_s = self._view
        width = self.rect().width()
        per_s = width / max(end_s - start_s, 1e-9)
        label_s, stroke_s = steps_for(1.0 / max(per_s, 1e-9))
        labels = [((at - start_s) * per_s, at) for at in ticks_in(start_s, end_s, label_s)]
        strokes = [QLineF(0.0, 0.0, width, 0.0)]
        strokes += [
            QLineF((at - start_s) * per_s, 0.0, (at - start_s) * per_s, _SHORT_PX)
            for at in ticks_in(start_s, end_s, stroke_s)
        ]
        strokes += [QLineF(x, 0.0, x, _LONG_PX) for x, _ in labels]
        painter.setPen(QPen(QColor(self.colours.line), 1))
        painter.drawLines(strokes)
        painter.setPen(QColor(self.colours.ink_soft))
        painter.setFont(font(SMALL_PT))
        metrics = QFontMetricsF(painter.font())
        for x, time_s in labels:
            text = _label(time_s, label_s)
            size = metrics.horizontalAdvance(text)
            left = min(x - size / 2, width + GRID_PX - size)
            place = QRectF(left, _LABEL_TOP_PX, size + 1.0, TIME_AXIS_PX - _LABEL_TOP_PX)
            painter.drawText(place, Qt.AlignmentFlag.AlignTop, text)


def _label(time_s: float, step_s: float) -> str:
    """Write a moment, with tenths where they tell labels apart."""
    if step_s < 1.0:
        return position_text(time_s)
    return f"{round(time_s) // 60}:{round(time_s) % 60:02d}"
