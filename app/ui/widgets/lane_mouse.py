"""What the mouse does in the lanes: a click seeks, a drag selects, the wheel zooms."""

from typing import Protocol

from PySide6.QtCore import QEvent, QObject, QPointF, Qt, SignalInstance
from PySide6.QtGui import QMouseEvent, QWheelEvent

from app.journal.records import Marker

_DRAG_PX = 5
_WHEEL_NOTCH = 120
_PAN_SHARE = 0.1


class Lanes(Protocol):
    """What the mouse needs of the lanes."""

    seekWanted: SignalInstance
    selectionMade: SignalInstance
    markerClicked: SignalInstance
    hovered: SignalInstance

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


class LaneMouse(QObject):
    """Takes the mouse before the plots do."""

    def __init__(self, lanes: "Lanes") -> None:
        super().__init__()
        self._lanes = lanes
        self._press: QPointF | None = None
        self._pan_from: tuple[float, float, float] | None = None

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Swallow what the mouse does; everything else goes on."""
        kind = event.type()
        if isinstance(event, QWheelEvent):
            self._wheel(event)
            return True
        if not isinstance(event, QMouseEvent):
            return super().eventFilter(watched, event)
        if kind in (QEvent.Type.MouseButtonPress, QEvent.Type.MouseButtonDblClick):
            self._pressed(event)
        elif kind == QEvent.Type.MouseMove:
            self._moved(event)
        elif kind == QEvent.Type.MouseButtonRelease:
            self._released(event)
        return True

    def _pressed(self, event: QMouseEvent) -> None:
        place = event.position()
        if event.button() == Qt.MouseButton.LeftButton:
            self._press = place
            self._lanes.setFocus()
        elif event.button() == Qt.MouseButton.MiddleButton:
            self._pan_from = (place.x(), *self._lanes.view_range)

    def _moved(self, event: QMouseEvent) -> None:
        place = event.position()
        if self._pan_from is not None:
            x, left, right = self._pan_from
            shift = (place.x() - x) * self._lanes.seconds_per_px
            self._lanes.show_range(left - shift, right - shift)
        elif self._press is not None and abs(place.x() - self._press.x()) > _DRAG_PX:
            self._lanes.preview_selection(self._span(self._press, place))
        self._lanes.hovered.emit(self._lanes.time_of(place.x()))

    def _released(self, event: QMouseEvent) -> None:
        place = event.position()
        self._pan_from = None
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
