"""Usable without the mouse and without the eyes: names, focus, contrast."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractScrollArea,
    QAbstractSpinBox,
    QLineEdit,
    QSlider,
    QWidget,
)

from app.ui.theme import BODY_PT, DARK, LARGE_PT, LIGHT, SMALL_PT


def _focusable(root: QWidget) -> list[QWidget]:
    return [
        widget
        for widget in root.findChildren(QWidget)
        if widget.focusPolicy() != Qt.FocusPolicy.NoFocus and not _is_part(widget)
    ]


def _is_part(widget: QWidget) -> bool:
    """A part that Qt makes inside a control, spoken with that control."""
    if widget.objectName().startswith("qt_"):
        return True
    parent = widget.parentWidget()
    while parent is not None:
        if isinstance(parent, QAbstractSpinBox | QAbstractItemView):
            return True
        if parent.metaObject().className() in ("QComboBoxPrivateContainer", "QCalendarWidget"):
            return True
        if isinstance(widget, QLineEdit) and parent.metaObject().className() == "QComboBox":
            return True
        parent = parent.parentWidget()
    return False


@pytest.mark.qt_log_ignore("propagateSizeHints", "raise")
def test_every_control_has_an_accessible_name(window, settle):
    for page in range(5):
        window.main.show_page(page)
        settle(window)
    window.main.sheets.show_help()
    nameless = [
        f"{type(widget).__name__} in {type(widget.parentWidget()).__name__}"
        for widget in _focusable(window.main)
        if not widget.accessibleName()
    ]
    assert nameless == []


def test_every_button_says_what_it_does(window):
    for page in range(5):
        window.main.show_page(page)
    for button in window.main.findChildren(QAbstractButton):
        if not _is_part(button):
            assert button.text() or button.accessibleName()


@pytest.mark.parametrize("page", range(5))
def test_tab_reaches_every_control_of_a_page(window, settle, qtbot, page):
    window.main.show_page(page)
    settle(window)
    shown = window.main.pages.page(page)
    wanted = {
        widget
        for widget in _focusable(shown)
        if widget.isVisible()
        and widget.isEnabled()
        and widget.focusPolicy() & Qt.FocusPolicy.TabFocus
        and not _is_bare_scroll_area(widget)
        and not _is_reached_by_arrows(widget)
    }
    window.main.activateWindow()
    shown.setFocus()
    reached: set[QWidget] = set()
    for _ in range(150):
        qtbot.keyClick(window.main.focusWidget() or window.main, Qt.Key.Key_Tab)
        focused = window.main.focusWidget()
        if focused is not None:
            reached.add(focused)
    missed = [f"{type(w).__name__} {w.accessibleName()}" for w in wanted - reached]
    assert missed == []


def _is_reached_by_arrows(widget: QWidget) -> bool:
    """Of buttons that exclude each other Tab reaches the pressed one, arrows the others."""
    group = widget.group() if isinstance(widget, QAbstractButton) else None
    return group is not None and group.exclusive() and not widget.isChecked()


def _is_bare_scroll_area(widget: QWidget) -> bool:
    return isinstance(widget, QAbstractScrollArea) and not isinstance(widget, QAbstractItemView)


def test_sliders_move_with_the_keys(window, settle, qtbot):
    window.main.show_page(1)
    settle(window)
    speed = next(
        slider
        for slider in window.main.listen.findChildren(QSlider)
        if slider.accessibleName().startswith("Speed")
    )
    before = speed.value()
    qtbot.keyClick(speed, Qt.Key.Key_Down)
    assert speed.value() != before


def test_there_are_three_text_sizes(window, settle):
    sizes = set()
    for page in range(5):
        window.main.show_page(page)
        settle(window)
        widgets = window.main.findChildren(QWidget)
        sizes |= {round(w.font().pointSizeF(), 1) for w in widgets if w.isVisible()}
    assert sizes <= {SMALL_PT, BODY_PT, LARGE_PT}


def _luminance(colour: str) -> float:
    channels = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """Contrast ratio as defined by WCAG 2.1, 'relative luminance' and 'contrast ratio'."""
    low, high = sorted((_luminance(one), _luminance(other)))
    return (high + 0.05) / (low + 0.05)


def test_contrast_formula():
    # WCAG 2.1: black on white is 21:1, a colour on itself 1:1.
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)
    assert contrast("#6b2f6f", "#6b2f6f") == pytest.approx(1.0)


@pytest.mark.parametrize("colours", [LIGHT, DARK])
def test_text_and_marks_can_be_read(colours):
    grounds = (colours.window, colours.card, colours.field)
    for ground in grounds:
        # WCAG 2.1, 1.4.6 (7:1) for text, 1.4.3 (4.5:1) for the quiet kind.
        assert contrast(colours.ink, ground) >= 7.0
        assert contrast(colours.ink_soft, ground) >= 4.5
        assert contrast(colours.attention, ground) >= 4.5
    assert contrast(colours.accent_ink, colours.accent) >= 4.5
    assert contrast(colours.ink, colours.accent_wash) >= 4.5
    # 1.4.11: 3:1 for marks that carry meaning.
    for mark in (colours.flat, colours.sharp, colours.wave, colours.accent):
        assert contrast(mark, colours.card) >= 3.0
