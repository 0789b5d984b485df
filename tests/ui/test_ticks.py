"""A ticked box is filled in its middle, in both colour schemes and at any scale."""

import numpy as np
import pytest
from PySide6.QtGui import QColor, QImage
from PySide6.QtWidgets import QApplication, QCheckBox, QStyle, QStyleOptionButton

from app.ui.theme import Scheme, Theme

LIKE = 40
"""How far a blended pixel may be from the accent and still belong to the mark."""


@pytest.fixture
def theme(qapp):
    made = Theme(qapp)
    before = qapp.styleSheet(), qapp.palette()
    made.dress()
    yield made
    qapp.setStyleSheet(before[0])
    qapp.setPalette(before[1])


@pytest.mark.parametrize("scheme", [Scheme.LIGHT, Scheme.DARK])
def test_the_mark_of_a_tick_lies_in_the_middle_of_its_box(theme, qtbot, scheme):
    theme.choose(scheme)
    box = QCheckBox("until")
    qtbot.addWidget(box)
    box.setChecked(True)
    box.resize(box.sizeHint())
    box.show()
    QApplication.processEvents()
    option = QStyleOptionButton()
    box.initStyleOption(option)
    place = box.style().subElementRect(QStyle.SubElement.SE_CheckBoxIndicator, option, box)
    image = box.grab(place).toImage().convertToFormat(QImage.Format.Format_RGB32)
    accent = QColor(theme.colours.accent)
    marked = np.array(
        [
            (x + 0.5, y + 0.5)
            for x in range(image.width())
            for y in range(image.height())
            if _distance(image.pixelColor(x, y), accent) < LIKE
        ]
    )
    assert len(marked) > 0.25 * image.width() * image.height()
    middle = np.array([image.width() / 2, image.height() / 2])
    assert np.abs(marked.mean(axis=0) - middle).max() <= 0.5


def _distance(one: QColor, other: QColor) -> int:
    return max(
        abs(one.red() - other.red()),
        abs(one.green() - other.green()),
        abs(one.blue() - other.blue()),
    )
