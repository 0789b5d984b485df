"""A passage over the weeks: a point a take, each week's median, the trend and its band."""

from datetime import date, timedelta
from typing import Any

import pyqtgraph as pg
from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QColor, QPen, QPolygonF
from PySide6.QtWidgets import QGraphicsPolygonItem, QSizePolicy, QWidget

from app.services.views import TrendView
from app.ui.language import tr
from app.ui.spoken import said, word
from app.ui.theme import Colours
from app.ui.widgets.basics import column
from app.ui.widgets.plot import Plot
from app.ui.words import day_and_month

_ROOM = 0.12


class TrendPlot(QWidget):
    """Draws a :class:`TrendView`.

    Signals
    -------
    takeChosen(str)
        A point was clicked.
    """

    takeChosen = Signal(str)

    def __init__(self, colours: Colours) -> None:
        super().__init__()
        self._colours = colours
        self._view: TrendView | None = None
        self._chosen: tuple[str, ...] = ()
        self._graphics = pg.GraphicsLayoutWidget()
        self._graphics.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._graphics.viewport().setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._graphics.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Ignored)
        self._plot = Plot(self._graphics.ci, 0)
        self._plot.add_bottom_axis(self._graphics.ci, 1, _day_ticks)
        self._band = QGraphicsPolygonItem()
        self._spread = pg.PlotCurveItem(connect="pairs")
        self._line = pg.PlotCurveItem()
        self._weeks = pg.PlotCurveItem(connect="pairs")
        self._week_spread = pg.PlotCurveItem(connect="pairs")
        self._points = pg.ScatterPlotItem(size=9)
        self._points.sigClicked.connect(self._clicked)
        items = (self._band, self._spread, self._line, self._weeks, self._week_spread, self._points)
        for item in items:
            self._plot.box.addItem(item, ignoreBounds=True)
        column(self).addWidget(self._graphics)
        self.setMinimumHeight(120)
        self.setAccessibleName(tr("Trend of the passage"))

    def show_trend(self, view: TrendView, chosen: tuple[str, ...] = ()) -> None:
        """Draw a trend; the chosen takes are filled."""
        self._view, self._chosen = view, chosen
        c = self._colours
        days = [point.practice_day.toordinal() for point in view.points]
        values = [point.value for point in view.points]
        self._plot.axes[0].setLabel(word(view.unit))
        brushes = [
            pg.mkBrush(c.accent if point.take_id in chosen else c.card) for point in view.points
        ]
        self._points.setData(days, values, brush=brushes, pen=pg.mkPen(c.ink, width=1.3))
        ends_x, ends_y = [], []
        for day, point in zip(days, view.points, strict=True):
            if point.uncertainty is not None:
                ends_x += [day, day]
                ends_y += [point.value - point.uncertainty, point.value + point.uncertainty]
        self._spread.setData(ends_x, ends_y, pen=pg.mkPen(c.ink_soft, width=1))
        week_ends = self._show_weeks(view)
        self._line.setData(
            [day.toordinal() for day, _ in view.line],
            [value for _, value in view.line],
            pen=pg.mkPen(c.accent, width=2),
        )
        edge = [QPointF(day.toordinal(), low) for day, low, _ in view.band]
        edge += [QPointF(day.toordinal(), high) for day, _, high in reversed(view.band)]
        self._band.setPolygon(QPolygonF(edge))
        wash = QColor(c.accent)
        wash.setAlpha(40)
        self._band.setBrush(wash)
        self._band.setPen(QPen(Qt.PenStyle.NoPen))
        self._frame(days, [*values, *ends_y, *week_ends, *(point.y() for point in edge)])
        self.setAccessibleDescription(said(f"{view.label}: {view.verdict or view.sentence}"))

    def _show_weeks(self, view: TrendView) -> list[float]:
        """Draw a level stroke for each week's median, its interval in the middle."""
        level_x, level_y, ends_x, ends_y = [], [], [], []
        for week in view.weeks:
            monday = week.monday.toordinal()
            level_x += [monday, monday + 6]
            level_y += [week.median, week.median]
            if week.half_width is not None:
                ends_x += [monday + 3, monday + 3]
                ends_y += [week.median - week.half_width, week.median + week.half_width]
        ink = self._colours.ink
        self._weeks.setData(level_x, level_y, pen=pg.mkPen(ink, width=2.4))
        self._week_spread.setData(ends_x, ends_y, pen=pg.mkPen(ink, width=1.2))
        return [*level_y, *ends_y]

    def recolour(self, colours: Colours) -> None:
        """Use another palette."""
        self._colours = colours
        self._graphics.setBackground(colours.card)
        self._plot.recolour(colours)
        if self._view is not None:
            self.show_trend(self._view, self._chosen)

    def _frame(self, days: list[int], values: list[float]) -> None:
        if not days:
            return
        low, high = min(values), max(values)
        room = max((high - low) * _ROOM, 0.5)
        self._plot.box.setYRange(low - room, high + room, padding=0)
        self._plot.box.setXRange(min(days) - 2, max(days) + 2, padding=0)

    def _clicked(self, _item: object, points: list[Any]) -> None:
        if self._view is not None and len(points):
            self.takeChosen.emit(self._view.points[points[0].index()].take_id)


def _day_ticks(values: list[float], _scale: float, _spacing: float) -> list[str]:
    made = []
    for value in values:
        day = date.fromordinal(1) + timedelta(days=max(0, round(value) - 1))
        made.append(day_and_month(day) if value == round(value) else "")
    return made
