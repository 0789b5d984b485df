"""A view with its axes and nothing else: no menus, no buttons, no mouse of its own.

pyqtgraph's complete plot brings a context menu and controls for each plot; the lanes
need neither, and eight of them would slow the start down.
"""

from typing import Any

import pyqtgraph as pg
from PySide6.QtGui import QColor, QPen

from app.ui.theme import SMALL_PT, Colours, font
from app.ui.words import number_text

AXIS_WIDTH_PX = 48
TIME_AXIS_PX = 26


def value_ticks(values: list[float], _scale: float, spacing: float) -> list[str]:
    """Write the numbers of a value axis, with a true minus sign."""
    return [number_text(value, 0 if spacing >= 1 else 1) for value in values]


def thin_pen(colour: str) -> QPen:
    """Return a pen one pixel wide at every zoom."""
    pen = QPen(QColor(colour), 1)
    pen.setCosmetic(True)
    return pen


def with_title_room(low: float, high: float) -> tuple[float, float]:
    """Leave room at the top of a lane, so that its title hides nothing."""
    return low, high + 0.25 * (high - low)


class Plot:
    """One view with a value axis; lies in a row of a pyqtgraph layout.

    Attributes
    ----------
    box : pyqtgraph.ViewBox
    axes : list of pyqtgraph.AxisItem
        The value axis first.
    """

    def __init__(self, layout: Any, row: int) -> None:
        self.box: Any = pg.ViewBox(enableMenu=False, enableMouse=False, defaultPadding=0)
        left = pg.AxisItem("left")
        left.tickStrings = value_ticks
        left.setWidth(AXIS_WIDTH_PX)
        left.linkToView(self.box)
        layout.addItem(left, row, 0)
        layout.addItem(self.box, row, 1)
        self.axes: list[Any] = [left]
        self._zero: Any = None

    def add_bottom_axis(self, layout: Any, row: int, tick_strings: Any) -> None:
        """Put an axis below the view."""
        bottom = pg.AxisItem("bottom")
        bottom.tickStrings = tick_strings
        bottom.setHeight(TIME_AXIS_PX)
        bottom.linkToView(self.box)
        layout.addItem(bottom, row, 1)
        self.axes.append(bottom)

    def set_visible(self, visible: bool) -> None:
        """Show or hide the view and its value axis; the time axis stays."""
        self.box.setVisible(visible)
        self.axes[0].setVisible(visible)

    def add_zero_line(self, colours: Colours) -> None:
        """Draw the zero."""
        self._zero = pg.InfiniteLine(pos=0, angle=0, pen=thin_pen(colours.ink_soft))
        self.box.addItem(self._zero, ignoreBounds=True)

    def recolour(self, colours: Colours) -> None:
        """Use another palette."""
        for axis in self.axes:
            axis.setPen(thin_pen(colours.line))
            axis.setTextPen(thin_pen(colours.ink_soft))
            axis.setTickFont(font(SMALL_PT))
        if self._zero is not None:
            self._zero.setPen(thin_pen(colours.ink_soft))
