"""Lanes on one shared time axis, with everything the mouse can do to them."""

import pyqtgraph as pg
from PySide6.QtCore import QPoint, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QContextMenuEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.journal.records import Marker
from app.ui.theme import GRID_PX, Colours
from app.ui.widgets.basics import column
from app.ui.widgets.lane_items import LaneItem
from app.ui.widgets.lane_layout import LaneLayout
from app.ui.widgets.lane_menu import lane_menu
from app.ui.widgets.lane_mouse import LaneMouse
from app.ui.widgets.lane_overlay import LaneFrame, LaneOverlay
from app.ui.widgets.marker_flags import FLAG_ROOM_PX
from app.ui.widgets.plot import TIME_AXIS_PX, Plot
from app.ui.widgets.time_axis import TimeAxis

_SHORTEST_VIEW_S = 0.25
_ZOOM_STEP = 1.3
_PAN_SHARE = 0.5


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
    hovered(float, float), pointerLeft()
        Seconds and pixel row under the pointer, until it leaves.
    """

    seekWanted = Signal(float)
    selectionMade = Signal(float, float)
    markerClicked = Signal(str)
    viewMoved = Signal(float, float)
    hovered = Signal(float, float)
    pointerLeft = Signal()

    def __init__(self, colours: Colours) -> None:
        super().__init__()
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.colours = colours
        self.duration_s = 1.0
        self._view = (0.0, 1.0)
        self._plots: list[Plot] = []
        self._items: list[LaneItem] = []
        self._graphics = pg.GraphicsLayoutWidget()
        self._graphics.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._graphics.ci.layout.setContentsMargins(0, FLAG_ROOM_PX, GRID_PX, 0)
        self._graphics.ci.layout.setVerticalSpacing(6)
        self._graphics.ci.layout.setHorizontalSpacing(0)
        self._graphics.setMinimumHeight(200)
        # The lanes take what the page gives them, whatever size the plots would like.
        self._graphics.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Ignored)
        column(self).addWidget(self._graphics)
        self._axis = TimeAxis(colours)
        self._overlay = LaneOverlay(colours, self.x_of)
        self._graphics.scene().addItem(self._overlay)
        self.layout_of_lanes = LaneLayout(self._graphics.ci.layout, self._overlay.frames)
        self.layout_of_lanes.changed.connect(self._overlay.update)
        self._mouse = LaneMouse(self)
        self._graphics.viewport().installEventFilter(self._mouse)
        self._graphics.viewport().setMouseTracking(True)
        self._graphics.viewport().grabGesture(Qt.GestureType.PinchGesture)
        self._graphics.viewport().setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._graphics.setBackground(colours.card)

    def add_lane(
        self, title: str, stretch: int, low: float, high: float, *, zero_line: bool = False
    ) -> Plot:
        """Add a lane below the others.

        Parameters
        ----------
        title : str
            Words in its corner, with the unit.
        stretch : int
            Share of the height.
        low, high : float
            Range of its value axis.
        zero_line : bool
            Draw the zero.
        """
        row = len(self._plots)
        plot = Plot(self._graphics.ci, row)
        plot.box.setYRange(low, high, padding=0)
        if zero_line:
            plot.add_zero_line(self.colours)
        plot.box.sigResized.connect(self._place_overlay)
        self._plots.append(plot)
        self._overlay.frames.append(LaneFrame(title))
        self.layout_of_lanes.add(plot, stretch)
        plot.recolour(self.colours)
        return plot

    def add_time_axis(self) -> None:
        """Put the time axis below the last lane."""
        self._graphics.ci.addItem(self._axis, len(self._plots), 1)

    def put(self, lane: int, item: LaneItem) -> None:
        """Put an item into a lane."""
        item.lie_in(self._plots[lane].box)
        self._plots[lane].box.addItem(item, ignoreBounds=True)
        self._items.append(item)

    def set_value_range(self, lane: int, low: float, high: float) -> None:
        """Change a lane's value axis."""
        self._plots[lane].box.setYRange(low, high, padding=0)

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
        self._overlay.selection, self._overlay.playhead_s = None, 0.0
        self.show_all()

    @property
    def view_range(self) -> tuple[float, float]:
        """The stretch of time in view, seconds."""
        return self._view

    @property
    def is_whole(self) -> bool:
        """True while the whole take is in view."""
        return self._view[1] - self._view[0] >= 0.999 * self.duration_s

    @property
    def gap_sentences(self) -> list[str]:
        """Why a lane is empty, lane by lane; empty words where it is not."""
        return [frame.gap_sentence for frame in self._overlay.frames]

    @property
    def lane_names(self) -> list[str]:
        """What each lane is called, in short."""
        return [frame.title.partition(",")[0] for frame in self._overlay.frames]

    @property
    def viewport(self) -> QWidget:
        """The widget that gets the mouse."""
        return self._graphics.viewport()  # type: ignore[no-any-return]

    def show_range(self, start_s: float, end_s: float) -> None:
        """Show this stretch, kept inside the take."""
        length = min(max(end_s - start_s, _SHORTEST_VIEW_S), self.duration_s)
        start = min(max(0.0, start_s), self.duration_s - length)
        self._view = (start, start + length)
        # The views are not linked with each other: a hidden one has no width to go by.
        for plot in self._plots:
            plot.box.setXRange(start, start + length, padding=0)
        self._axis.show_range(*self._view)
        self._overlay.update()
        self.viewMoved.emit(*self._view)

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

    def pan(self, steps: float) -> None:
        """Move the stretch in view by half of itself a step."""
        left, right = self.view_range
        shift = steps * (right - left) * _PAN_SHARE
        self.show_range(left + shift, right + shift)

    def choose_lane(self, lane: int | None) -> None:
        """Mark the lane that keys make taller, lower or hide."""
        if lane is not None:
            self.layout_of_lanes.chosen = lane
        self._overlay.chosen_lane = lane
        self._overlay.update()

    def show_lane_menu(self, place: QPoint, lane: int | None) -> None:
        """Offer what can be done to the lanes, at a place of the screen."""
        if lane is not None:
            self.choose_lane(lane)
        lane_menu(self.layout_of_lanes, self.lane_names, self).popup(place)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Show the menu of the chosen lane to the menu key."""
        lane = self.layout_of_lanes.chosen
        corner = self._overlay.frames[lane].rect.topLeft().toPoint()
        self.show_lane_menu(self._graphics.viewport().mapToGlobal(corner), lane)
        event.accept()

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
        self._overlay.selection, self._overlay.is_looping = selection, looping
        self._overlay.update()

    def set_markers(self, markers: tuple[Marker, ...], categories: tuple[str, ...]) -> None:
        """Show markers through all lanes."""
        self._overlay.marker_flags.show(markers, categories)
        self._overlay.update()

    def choose_marker(self, marker_id: str) -> None:
        """Show one marker as chosen."""
        self._overlay.marker_flags.chosen = marker_id
        self._overlay.update()

    def show_pending(self, span: tuple[float, float] | None) -> None:
        """Show the span of a marker whose key is still held."""
        self._overlay.pending = span
        self._overlay.update()

    def preview_selection(self, selection: tuple[float, float]) -> None:
        """Show a selection while it is still being drawn."""
        self._overlay.selection = selection
        self._overlay.update()

    def marker_at(self, point: QPointF) -> Marker | None:
        """Return the marker whose flag lies under a pixel."""
        return self._overlay.marker_flags.at(point)

    @property
    def seconds_per_px(self) -> float:
        """How much time a pixel column stands for."""
        left, right = self.view_range
        return (right - left) / max(self._frame_rect.width(), 1.0)

    def x_of(self, time_s: float) -> float:
        """Return the pixel column of a moment."""
        if not self._plots:
            return 0.0
        left, right = self.view_range
        rect = self._frame_rect
        return rect.left() + (time_s - left) / max(right - left, 1e-9) * rect.width()

    def time_of(self, x: float) -> float:
        """Return the moment at a pixel column, inside the take."""
        left, right = self.view_range
        rect = self._frame_rect
        time_s = left + (x - rect.left()) / max(rect.width(), 1.0) * (right - left)
        return min(max(0.0, time_s), self.duration_s)

    @property
    def _frame_rect(self) -> QRectF:
        return self._overlay.frames[self.layout_of_lanes.shown[0]].rect

    @property
    def columns(self) -> int:
        """How many pixel columns a lane has, on this screen."""
        width = self._frame_rect.width() if self._plots else 0.0
        return max(64, round(width * self.devicePixelRatioF()))

    def recolour(self, colours: Colours) -> None:
        """Use another palette."""
        self.colours = colours
        self._graphics.setBackground(colours.card)
        for plot in self._plots:
            plot.recolour(colours)
        for item in self._items:
            item.recolour(colours)
        self._axis.recolour(colours)
        self._overlay.recolour(colours)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the overlay over the lanes."""
        super().resizeEvent(event)
        self.layout_of_lanes.fit(self.height() - FLAG_ROOM_PX - TIME_AXIS_PX)
        self._place_overlay()

    def _place_overlay(self) -> None:
        rects = [plot.box.sceneBoundingRect() for plot in self._plots]
        self._overlay.cover(QRectF(self._graphics.viewport().rect()), rects)
