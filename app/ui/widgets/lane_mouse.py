"""What mouse and fingers do in the lanes.

A click seeks, a drag selects, the middle button pans, the wheel zooms and (sideways or
with Shift) pans, two fingers zoom, and the edge between two lanes can be dragged.
"""

from math import log
from typing import Protocol

from PySide6.QtCore import QEvent, QObject, QPoint, QPointF, Qt, SignalInstance
from PySide6.QtGui import QContextMenuEvent, QMouseEvent, QNativeGestureEvent, QWheelEvent
from PySide6.QtWidgets import QGestureEvent, QPinchGesture

from app.journal.records import Marker
from app.ui.widgets.lane_layout import LaneLayout

_DRAG_PX = 5
_WHEEL_NOTCH = 120
_PAN_SHARE = 0.1
_ZOOM_OF_A_STEP = 1.3


class Lanes(Protocol):
    """What the mouse needs of the lanes."""

    seekWanted: SignalInstance
    selectionMade: SignalInstance
    markerClicked: SignalInstance
    hovered: SignalInstance
    pointerLeft: SignalInstance
    layout_of_lanes: LaneLayout

    @property
    def view_range(self) -> tuple[float, float]:
        """The stretch of time in view."""

    @property
    def seconds_per_px(self) -> float:
        """How much time a pixel column stands for."""

    def time_of(self, x: float) -> float:
        """Return the moment at a pixel column."""

    def marker_at(self, point: QPointF) -> Marker | None:
        """Return the marker whose flag lies under a pixel."""

    def preview_selection(self, selection: tuple[float, float]) -> None:
        """Show a selection while it is being drawn."""

    def show_range(self, start_s: float, end_s: float) -> None:
        """Show a stretch of time."""

    def setFocus(self) -> None:
        """Take the keys from whatever field has them."""

    def zoom(self, steps: float, about_s: float | None = None) -> None:
        """Zoom around a moment."""

    def setCursor(self, shape: Qt.CursorShape) -> None:
        """Let the pointer say what can be done."""

    def show_lane_menu(self, place: QPoint, lane: int | None) -> None:
        """Offer what can be done to a lane, at a place of the screen."""


class LaneMouse(QObject):
    """Takes the mouse before the plots do."""

    def __init__(self, lanes: "Lanes") -> None:
        super().__init__()
        self._lanes = lanes
        self._press: QPointF | None = None
        self._pan_from: tuple[float, float, float] | None = None
        self._edge: tuple[int, int] | None = None

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Swallow what the mouse does; everything else goes on."""
        kind = event.type()
        if isinstance(event, QWheelEvent):
            self._wheel(event)
            return True
        if self._is_gesture(event):
            return True
        if isinstance(event, QContextMenuEvent):
            lane = self._lanes.layout_of_lanes.lane_at(event.pos().y())
            self._lanes.show_lane_menu(event.globalPos(), lane)
            return True
        if kind == QEvent.Type.Leave:
            self._lanes.pointerLeft.emit()
        if not isinstance(event, QMouseEvent):
            return super().eventFilter(watched, event)
        if kind in (QEvent.Type.MouseButtonPress, QEvent.Type.MouseButtonDblClick):
            self._pressed(event)
        elif kind == QEvent.Type.MouseMove:
            self._moved(event)
        elif kind == QEvent.Type.MouseButtonRelease:
            self._released(event)
        return True

    def _is_gesture(self, event: QEvent) -> bool:
        """Zoom where two fingers say so, on a touch pad or on a screen."""
        if isinstance(event, QNativeGestureEvent):
            if event.gestureType() == Qt.NativeGestureType.ZoomNativeGesture:
                self._zoom_by(1.0 + event.value(), event.position().x())
            return True
        if isinstance(event, QGestureEvent):
            pinch = event.gesture(Qt.GestureType.PinchGesture)
            if isinstance(pinch, QPinchGesture):
                centre = pinch.centerPoint().toPoint()
                self._zoom_by(pinch.scaleFactor(), event.widget().mapFromGlobal(centre).x())
                event.accept()
            return True
        return False

    def _zoom_by(self, factor: float, x: float) -> None:
        if factor > 0.0:
            self._lanes.zoom(log(factor) / log(_ZOOM_OF_A_STEP), self._lanes.time_of(x))

    def _pressed(self, event: QMouseEvent) -> None:
        place = event.position()
        if event.button() == Qt.MouseButton.LeftButton:
            self._edge = self._lanes.layout_of_lanes.edge_at(place.y())
            if self._edge is not None:
                return
        if event.button() == Qt.MouseButton.LeftButton:
            self._press = place
            self._lanes.setFocus()
        elif event.button() == Qt.MouseButton.MiddleButton:
            self._pan_from = (place.x(), *self._lanes.view_range)

    def _moved(self, event: QMouseEvent) -> None:
        place = event.position()
        layout = self._lanes.layout_of_lanes
        if self._edge is not None:
            layout.drag_edge(*self._edge, place.y())
            return
        on_edge = event.buttons() == Qt.MouseButton.NoButton and layout.edge_at(place.y())
        shapes = Qt.CursorShape
        self._lanes.setCursor(shapes.SplitVCursor if on_edge else shapes.ArrowCursor)
        if self._pan_from is not None:
            x, left, right = self._pan_from
            shift = (place.x() - x) * self._lanes.seconds_per_px
            self._lanes.show_range(left - shift, right - shift)
        elif self._press is not None and abs(place.x() - self._press.x()) > _DRAG_PX:
            self._lanes.preview_selection(self._span(self._press, place))
        self._lanes.hovered.emit(self._lanes.time_of(place.x()), place.y())

    def _released(self, event: QMouseEvent) -> None:
        place = event.position()
        self._pan_from = self._edge = None
        if self._press is None or event.button() != Qt.MouseButton.LeftButton:
            return
        press, self._press = self._press, None
        if abs(place.x() - press.x()) > _DRAG_PX:
            self._lanes.selectionMade.emit(*self._span(press, place))
            return
        marker = self._lanes.marker_at(place)
        if marker is not None:
            self._lanes.markerClicked.emit(marker.id)
        else:
            self._lanes.seekWanted.emit(self._lanes.time_of(place.x()))

    def _wheel(self, event: QWheelEvent) -> None:
        turned = event.angleDelta()
        left, right = self._lanes.view_range
        with_shift = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
        sideways = turned.x() or (turned.y() if with_shift else 0)
        if sideways:
            shift = -sideways / _WHEEL_NOTCH * (right - left) * _PAN_SHARE
            self._lanes.show_range(left + shift, right + shift)
        else:
            self._lanes.zoom(turned.y() / _WHEEL_NOTCH, self._lanes.time_of(event.position().x()))

    def _span(self, one: QPointF, other: QPointF) -> tuple[float, float]:
        first, second = sorted((self._lanes.time_of(one.x()), self._lanes.time_of(other.x())))
        return first, second
