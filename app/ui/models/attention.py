"""At most one thing on a page asks for attention at a time."""

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QScrollArea, QWidget

_MARGIN_PX = 16


class Attention:
    """Shows the first of some widgets that wants to be seen; the others wait.

    One that begins to ask is scrolled into view, no further than it needs. A widget that
    is added earlier goes before one that is added later.
    """

    def __init__(self) -> None:
        self._asking: dict[QWidget, bool] = {}

    def add(self, widget: QWidget) -> None:
        """Let a widget ask from now on; it is hidden until it does."""
        self._asking[widget] = False
        widget.hide()

    def want(self, widget: QWidget, wanted: bool) -> None:
        """Say whether a widget wants to be seen."""
        before = self.asking
        self._asking[widget] = wanted
        first = self.asking
        for other in self._asking:
            other.setVisible(other is first)
        if first is not None and first is not before:
            # Its place is known once the layout has made room for it.
            QTimer.singleShot(0, first, lambda: bring_into_view(first))

    @property
    def asking(self) -> QWidget | None:
        """Who asks at the moment."""
        return next((widget for widget, wanted in self._asking.items() if wanted), None)


def bring_into_view(widget: QWidget) -> None:
    """Scroll what a widget lies in as far as it takes to see it."""
    around = widget.parentWidget()
    while around is not None and not isinstance(around, QScrollArea):
        around = around.parentWidget()
    if isinstance(around, QScrollArea) and widget.isVisible():
        inside = around.widget()
        layout = inside.layout() if inside is not None else None
        if layout is not None:
            layout.activate()
        around.ensureWidgetVisible(widget, 0, _MARGIN_PX)
