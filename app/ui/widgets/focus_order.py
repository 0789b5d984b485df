"""Tab goes through a window in the order of the eye, which its layouts know.

Qt lets Tab go in the order in which widgets were made. Here pages are made in parts, forms when
they are first wanted, and a table's fields whenever it is filled: the order is asked of the
layouts when a key needs it.
"""

from collections.abc import Iterator
from itertools import pairwise
from typing import cast

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QAbstractSpinBox,
    QComboBox,
    QDialog,
    QGridLayout,
    QLayout,
    QScrollArea,
    QSplitter,
    QWidget,
)

# What is inside of these goes with them.
_WHOLES = (QAbstractItemView, QAbstractSpinBox, QComboBox)


class OrderedDialog(QDialog):
    """A window beside the main one in which Tab goes in the order of the eye."""

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Go on to what comes next for the eye."""
        order_focus(self)
        return super().focusNextPrevChild(forward)


def order_focus(root: QWidget) -> None:
    """Let Tab go through what is shown of `root` from above, and from left to right."""
    for one, following in pairwise(focus_stops(root)):
        QWidget.setTabOrder(one, following)


def focus_stops(root: QWidget) -> list[QWidget]:
    """Return the widgets that Tab stops at, as their layouts have them."""
    return [
        widget
        for widget in _in_order(root)
        if widget is not root and widget.focusPolicy() & Qt.FocusPolicy.TabFocus
    ]


def _in_order(widget: QWidget) -> Iterator[QWidget]:
    yield widget
    if isinstance(widget, _WHOLES):
        return
    inside: list[QWidget] = []
    layout = widget.layout()
    if isinstance(widget, QScrollArea):
        inside += filter(None, (widget.widget(),))
    elif isinstance(widget, QSplitter):
        inside += filter(None, map(widget.widget, range(widget.count())))
    elif layout is not None:
        inside += _of_layout(layout)
    for child in inside:
        if not child.isHidden():
            yield from _in_order(child)


def _of_layout(layout: QLayout) -> Iterator[QWidget]:
    places = list(range(layout.count()))
    if isinstance(layout, QGridLayout):
        # Row and column come first of what is given.
        cells = [cast("tuple[int, ...]", layout.getItemPosition(at)) for at in places]
        places.sort(key=lambda at: cells[at])
    for at in places:
        item = layout.itemAt(at)
        if item is None:
            continue
        if (widget := item.widget()) is not None:
            yield widget
        elif (inner := item.layout()) is not None:
            yield from _of_layout(inner)
