"""Lanes on one shared time axis, with everything the mouse can do to them."""

from typing import Any

import pyqtgraph as pg
from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QPen, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.journal.records import Marker
from app.services.wording import number_text, position_text
from app.ui.theme import GRID_PX, SMALL_PT, Colours, font
from app.ui.widgets.basics import column
from app.ui.widgets.lane_items import LaneItem
from app.ui.widgets.lane_mouse import LaneMouse
from app.ui.widgets.lane_overlay import FLAG_ROOM_PX, LaneFrame, LaneOverlay

AXIS_WIDTH_PX = 48
_SHORTEST_VIEW_S = 0.25
_ZOOM_STEP = 1.3


class LaneStack(QWidget):
    """Stacked lanes; a click seeks, a drag selects, the wheel zooms.

    Signals
    -------
    seekWanted(float)
        Seconds.
    selectionMade(float, float)
        Start and end in seconds, in this order.
    markerClicked(str)
        Id of a marker whose flag was clicked.
    viewMoved(float, float)
        The stretch of time in view.
    hovered(float)
        Seconds under the pointer.
    """

    seekWanted = Signal(float)
    selectionMade = Signal(float, float)
    markerClicked = Signal(str)
    viewMoved = Signal(float, float)
    hovered = Signal(float)

    def __init__(self, colours: Colours) -> None:
        super().__init__()
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.colours = colours
        self.duration_s = 1.0
        self._plots: list[Any] = []
        self._items: list[LaneItem] = []
        self._zero_lines: list[Any] = []
        self._graphics = pg.GraphicsLayoutWidget()
        self._graphics.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._graphics.ci.layout.setContentsMargins(0, FLAG_ROOM_PX, GRID_PX, 0)
        self._graphics.ci.layout.setVerticalSpacing(6)
        self._graphics.setMinimumHeight(200)
        # The lanes take what the page gives them, whatever size the plots would like.
        self._graphics.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Ignored)
        column(self).addWidget(self._graphics)
        self._overlay = LaneOverlay(colours, self.x_of)
        self._graphics.scene().addItem(self._overlay)
        self._mouse = LaneMouse(self)
        self._graphics.viewport().installEventFilter(self._mouse)
        self._graphics.viewport().setMouseTracking(True)
        self._graphics.setBackground(colours.card)

    def add_lane(self, title: str, stretch: int, low: float, high: float) -> Any:
        """Add a lane below the others and return its plot.

        Parameters
        ----------
        title : str
            Words in its corner, with the unit.
        stretch : int
            Share of the height.
        low, high : float
            Fixed range of its value axis.
        """
        plot = self._graphics.addPlot(row=len(self._plots), col=0)
        plot.hideButtons()
        plot.setMenuEnabled(False)
        plot.vb.setMouseEnabled(x=False, y=False)
        plot.vb.setDefaultPadding(0)
        plot.setYRange(low, high, padding=0)
        plot.getAxis("left").setWidth(AXIS_WIDTH_PX)
        plot.getAxis("bottom").tickStrings = _time_ticks
        plot.getAxis("left").tickStrings = value_ticks
        for earlier in self._plots[-1:]:
            earlier.getAxis("bottom").setStyle(showValues=False, tickLength=0)
            earlier.getAxis("bottom").setHeight(2)
            plot.setXLink(self._plots[0])
        self._graphics.ci.layout.setRowStretchFactor(len(self._plots), stretch)
        self._plots.append(plot)
        self._overlay.frames.append(LaneFrame(title))
        plot.vb.sigResized.connect(self._place_overlay)
        if len(self._plots) == 1:
            plot.vb.sigXRangeChanged.connect(self._tell_view)
        self._colour_plot(plot)
        return plot

    def add_zero_line(self, lane: int) -> None:
        """Draw a lane's zero."""
        line = self._plots[lane].addLine(y=0, pen=_thin_pen(self.colours.ink_soft))
        self._zero_lines.append(line)

    def put(self, lane: int, item: LaneItem) -> None:
        """Put an item into a lane."""
        self._plots[lane].vb.addItem(item, ignoreBounds=True)
        self._items.append(item)

    def set_value_range(self, lane: int, low: float, high: float) -> None:
        """Change a lane's value axis."""
        self._plots[lane].setYRange(low, high, padding=0)

    def set_lane_words(self, lane: int, title: str, gap_sentence: str = "") -> None:
        """Change a lane's title, and say why there is nothing in it."""
        self._overlay.frames[lane].title = title
        self._overlay.frames[lane].gap_sentence = gap_sentence
        self._overlay.update()

    def set_duration(self, duration_s: float) -> None:
        """Start with a new take, shown whole."""
        self.duration_s = max(duration_s, 0.1)
        for item in self._items:
            item.set_duration(self.duration_s)
        self._overlay.selection = None
        self._overlay.playhead_s = 0.0
        self.show_all()

    @property
    def view_range(self) -> tuple[float, float]:
        """The stretch of time in view, seconds."""
        left, right = self._plots[0].vb.viewRange()[0]
        return float(left), float(right)

    @property
    def is_whole(self) -> bool:
        """True while the whole take is in view."""
        left, right = self.view_range
        return right - left >= 0.999 * self.duration_s

    def show_range(self, start_s: float, end_s: float) -> None:
        """Show this stretch, kept inside the take."""
        length = min(max(end_s - start_s, _SHORTEST_VIEW_S), self.duration_s)
        start = min(max(0.0, start_s), self.duration_s - length)
        self._plots[0].setXRange(start, start + length, padding=0)

    def show_all(self) -> None:
        """Show the whole take."""
        self.show_range(0.0, self.duration_s)

    def zoom(self, steps: float, about_s: float | None = None) -> None:
        """Zoom in (positive) or out around a moment, the playhead by default."""
        left, right = self.view_range
        if about_s is None:
            head = self._overlay.playhead_s
            about_s = head if head is not None and left <= head <= right else (left + right) / 2
        factor = _ZOOM_STEP**-steps
        self.show_range(about_s - (about_s - left) * factor, about_s + (right - about_s) * factor)

    def follow(self, position_s: float) -> None:
        """Turn the page when the playhead leaves the view."""
        left, right = self.view_range
        if not left <= position_s <= right:
            self.show_range(position_s, position_s + (right - left))

    def set_playhead(self, position_s: float | None) -> None:
        """Move the playhead."""
        self._overlay.set_playhead(position_s)

    def set_selection(self, selection: tuple[float, float] | None, *, looping: bool) -> None:
        """Show the selection."""
        self._overlay.selection = selection
        self._overlay.is_looping = looping
        self._overlay.update()

    def set_markers(self, markers: tuple[Marker, ...], categories: tuple[str, ...]) -> None:
        """Show markers through all lanes."""
        self._overlay.set_markers(markers, categories)

    def choose_marker(self, marker_id: str) -> None:
        """Show one marker as chosen."""
        self._overlay.chosen_marker = marker_id
        self._overlay.update()

    def preview_selection(self, selection: tuple[float, float]) -> None:
        """Show a selection while it is still being drawn."""
        self._overlay.selection = selection
        self._overlay.update()

    def marker_at(self, point: QPointF) -> Marker | None:
        """Return the marker whose flag lies under a pixel."""
        return self._overlay.marker_at(point)

    @property
    def seconds_per_px(self) -> float:
        """How much time a pixel column stands for."""
        left, right = self.view_range
        return (right - left) / max(self._overlay.frames[0].rect.width(), 1.0)

    def x_of(self, time_s: float) -> float:
        """Return the pixel column of a moment."""
        if not self._plots:
            return 0.0
        left, right = self.view_range
        rect = self._overlay.frames[0].rect
        return rect.left() + (time_s - left) / max(right - left, 1e-9) * rect.width()

    def time_of(self, x: float) -> float:
        """Return the moment at a pixel column, inside the take."""
        left, right = self.view_range
        rect = self._overlay.frames[0].rect
        time_s = left + (x - rect.left()) / max(rect.width(), 1.0) * (right - left)
        return min(max(0.0, time_s), self.duration_s)

    @property
    def columns(self) -> int:
        """How many pixel columns a lane has, on this screen."""
        width = self._overlay.frames[0].rect.width() if self._plots else 0.0
        return max(64, round(width * self.devicePixelRatioF()))

    def recolour(self, colours: Colours) -> None:
        """Use another palette."""
        self.colours = colours
        self._overlay.colours = colours
        self._graphics.setBackground(colours.card)
        for plot in self._plots:
            self._colour_plot(plot)
        for line in self._zero_lines:
            line.setPen(_thin_pen(colours.ink_soft))
        for item in self._items:
            item.recolour(colours)
        self._overlay.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the overlay over the lanes."""
        super().resizeEvent(event)
        self._place_overlay()

    def _place_overlay(self) -> None:
        for plot, frame in zip(self._plots, self._overlay.frames, strict=True):
            frame.rect = plot.vb.sceneBoundingRect()
        self._overlay.cover(QRectF(self._graphics.viewport().rect()))

    def _tell_view(self) -> None:
        self._overlay.update()
        self.viewMoved.emit(*self.view_range)

    def _colour_plot(self, plot: Any) -> None:
        plot.showGrid(x=False, y=False)
        for side in ("left", "bottom"):
            axis = plot.getAxis(side)
            axis.setPen(QPen(QColor(self.colours.line), 1))
            axis.setTextPen(QPen(QColor(self.colours.ink_soft), 1))
            axis.setTickFont(font(SMALL_PT))


def _thin_pen(colour: str) -> QPen:
    pen = QPen(QColor(colour), 1)
    pen.setCosmetic(True)
    return pen


def with_title_room(low: float, high: float) -> tuple[float, float]:
    """Leave room at the top of a lane, so that its title hides nothing."""
    return low, high + 0.25 * (high - low)


def value_ticks(values: list[float], _scale: float, spacing: float) -> list[str]:
    """Write the numbers of a value axis, with a true minus sign."""
    return [number_text(value, 0 if spacing >= 1 else 1) for value in values]


def _time_ticks(values: list[float], _scale: float, spacing: float) -> list[str]:
    if spacing >= 1:
        return [f"{int(value) // 60}:{int(value) % 60:02d}" for value in values]
    return [position_text(value) for value in values]
