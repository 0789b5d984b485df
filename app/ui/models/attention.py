"""At most one thing on a page asks for attention at a time."""

from PySide6.QtWidgets import QWidget


class Attention:
    """Shows the first of some widgets that wants to be seen; the others wait.

    A widget that is added earlier goes before one that is added later.
    """

    def __init__(self) -> None:
        self._asking: dict[QWidget, bool] = {}

    def add(self, widget: QWidget) -> None:
        """Let a widget ask from now on; it is hidden until it does."""
        self._asking[widget] = False
        widget.hide()

    def want(self, widget: QWidget, wanted: bool) -> None:
        """Say whether a widget wants to be seen."""
        self._asking[widget] = wanted
        first = self.asking
        for other in self._asking:
            other.setVisible(other is first)

    @property
    def asking(self) -> QWidget | None:
        """Who asks at the moment."""
        return next((widget for widget, wanted in self._asking.items() if wanted), None)
