"""Usable without the mouse and without the eyes: names, focus, contrast."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractScrollArea,
    QAbstractSpinBox,
    QLineEdit,
    QPushButton,
    QSlider,
    QWidget,
)

from app.ui.theme import BODY_PT, DARK, LARGE_PT, LIGHT, SMALL_PT
from app.ui.widgets.rail import PAGES


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
    wanted = _reachable(shown)
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


def _reachable(root: QWidget) -> set[QWidget]:
    return {
        widget
        for widget in _focusable(root)
        if widget.isVisible()
        and widget.isEnabled()
        and widget.focusPolicy() & Qt.FocusPolicy.TabFocus
        and not _is_bare_scroll_area(widget)
        and not _is_reached_by_arrows(widget)
    }


def _tab_through(window, qtbot) -> list[QWidget]:
    """Press Tab until it comes round; give what had the focus, in that order."""
    window.main.activateWindow()
    window.main.rail.setFocus()
    return _tab_round(window.main, qtbot)


def _tab_round(root: QWidget, qtbot) -> list[QWidget]:
    stops: list[QWidget] = []
    for _ in range(200):
        qtbot.keyClick(root.focusWidget() or root, Qt.Key.Key_Tab)
        focused = root.focusWidget()
        if stops and focused is stops[-1]:
            continue  # a page of the guide goes through its links
        if focused is None or focused in stops:
            break
        stops.append(focused)
    return stops


def _backwards(stops: list[QWidget], root: QWidget) -> list[str]:
    """Name pairs in which Tab comes first to what the eye comes to later.

    The eye goes down what stands one below the other, and to the right along what stands
    side by side; between the rest no order is asked for.
    """
    places = [QRect(widget.mapTo(root, QPoint(0, 0)), widget.size()) for widget in stops]
    found = []
    for at, later in enumerate(places):
        for before, sooner in zip(stops[:at], places[:at], strict=True):
            beside = min(later.bottom(), sooner.bottom()) - max(later.top(), sooner.top())
            over = min(later.right(), sooner.right()) - max(later.left(), sooner.left())
            is_above = over > 0 and later.bottom() <= sooner.top()
            is_left = (
                2 * beside > min(later.height(), sooner.height()) and later.right() <= sooner.left()
            )
            if is_above or is_left:
                names = (before.accessibleName(), stops[at].accessibleName())
                found.append(f"{names[0]!r} before {names[1]!r}")
    return found


def _states(window) -> Iterator[tuple[str, Callable[[], object]]]:
    main = window.main
    for page, (name, _) in enumerate(PAGES):
        yield name, lambda at=page: main.show_page(at)
    forms = (
        main.practice.choose_guides, main.practice.change_items, main.practice.show_assignments,
        main.practice.new_passage,
        lambda: main.import_files([Path("clip 2.m4a"), Path("clip 1.m4a")]),
    )  # fmt: skip
    for form in forms:
        yield "a form of practice", form
    for pane in range(5):
        yield f"listen {pane}", lambda at=pane: (main.show_page(1), main.listen.side.show_pane(at))
        yield f"compare {pane}", lambda at=pane: (
            main.show_page(2), main.compare.sections.show_pane(at),
        )  # fmt: skip
    yield "listen, all strips", lambda: (
        main.show_page(1), main.listen.along.toggle(), main.listen.marking.toggle_filter(),
    )  # fmt: skip
    for view in (main.calendar.show_names, main.calendar.show_import):
        yield "a view of calendar", lambda show=view: (main.show_page(3), show())
    yield "promises", lambda: (main.show_page(3), main.calendar.toggle_promises())


def test_tab_goes_in_the_order_of_the_eye_on_every_page(window, settle, qtbot):
    window.main.resize(1280, 800)
    wrong: list[str] = []
    for name, show in _states(window):
        show()
        settle(window)
        stops = _tab_through(window, qtbot)
        assert len(stops) > 3, name
        wrong += [f"{name}: {pair}" for pair in _backwards(stops, window.main)]
    assert wrong == []


def _sheets(window) -> Iterator[tuple[str, Callable[[], object]]]:
    sheets, takes = window.main.sheets, window.desk.workbench.filing.takes()
    yield "guide", sheets.show_guide
    yield "settings", sheets.show_settings
    yield "own_keys", sheets.show_keys
    yield "backups", sheets.show_backups
    yield "categories", sheets.show_categories
    yield "share", lambda: sheets.show_share(takes[:1], 0.0, 5.0)
    yield "export", lambda: sheets.show_export(takes[0].id, None, None)


@pytest.mark.qt_log_ignore("propagateSizeHints", "raise")
def test_tab_goes_in_the_order_of_the_eye_on_sheets_and_what_needs_takes(
    open_window, real_bench, settle, qtbot
):
    window = open_window(real_bench)
    main, wrong = window.main, []
    for name, show in (
        ("rehearsal", main.practice.show_rehearsal),
        ("record", lambda: (main.show_page(3), main.calendar.show_record())),
    ):
        show()
        settle(window)
        stops = _tab_through(window, qtbot)
        assert len(stops) > 3, name
        wrong += [f"{name}: {pair}" for pair in _backwards(stops, main)]
    for name, show in _sheets(window):
        show()
        settle(window)
        sheet = getattr(main.sheets, name)
        sheet.activateWindow()
        stops = _tab_round(sheet, qtbot)
        missed = _reachable(sheet) - set(stops)
        wrong += [f"{name}: {widget.accessibleName()!r} is not reached" for widget in missed]
        # Where Tab begins is the sheet's own choice; the rest of the round is asked for.
        at_top = min(stops, key=lambda w: w.mapTo(sheet, QPoint(0, 0)).toTuple()[::-1])
        begun = stops.index(at_top)
        stops = stops[begun:] + stops[:begun]
        wrong += [f"{name}: {pair}" for pair in _backwards(stops, sheet)]
        sheet.hide()
    assert wrong == []


def test_an_order_against_the_eye_is_found(qtbot):
    root = QWidget()
    qtbot.addWidget(root)
    root.resize(200, 100)
    buttons = [QPushButton(str(at), root) for at in range(3)]
    for at, (button, place) in enumerate(zip(buttons, ((0, 0), (80, 0), (0, 50)), strict=True)):
        button.setGeometry(*place, 60, 30)
        button.setAccessibleName(str(at))
    assert _backwards(buttons, root) == []
    assert _backwards([buttons[1], buttons[0], buttons[2]], root) == ["'1' before '0'"]
    assert _backwards([buttons[2], buttons[0]], root) == ["'2' before '0'"]


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
