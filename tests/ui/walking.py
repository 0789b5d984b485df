"""Walks through everything a window shows, for the test of its words.

:class:`Marked` is a language of its own: whatever goes through Qt's translation comes out in
full-width letters, while values filled in afterwards stay as they are. So an ordinary letter
in what is shown is either the player's own, a name or a unit, or a word that no translation
reaches.
"""

import re
import unicodedata
from collections.abc import Callable, Iterator
from contextlib import contextmanager

from PySide6.QtCore import QAbstractTableModel, QCoreApplication, QModelIndex, Qt, QTranslator
from PySide6.QtGui import QAction, QPainter
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QDialog,
    QGraphicsTextItem,
    QGraphicsView,
    QHeaderView,
    QLabel,
    QLineEdit,
    QMenu,
    QTabBar,
    QTextEdit,
    QWidget,
)

_KEPT = re.compile(r"\{[^}]*\}|<[^>]*>|&\w+;")
_SHIFT = 0xFEE0
_MOST_CELLS = 4000


def full_width(text: str) -> str:
    """Return `text` with its ASCII letters in full width, fields and tags left alone."""
    out, at = [], 0
    for kept in _KEPT.finditer(text):
        out += [_wide(text[at : kept.start()]), kept[0]]
        at = kept.end()
    return "".join([*out, _wide(text[at:])])


def _wide(text: str) -> str:
    return "".join(chr(ord(c) + _SHIFT) if c.isascii() and c.isalpha() else c for c in text)


def narrow(text: str) -> str:
    """Return a text as it was before :func:`full_width`."""
    return unicodedata.normalize("NFKC", text)


class Marked(QTranslator):
    """Knows every sentence, in full-width letters."""

    def translate(
        self, context: str, source: str, disambiguation: str | None = None, n: int = -1
    ) -> str:
        """Give the sentence, marked."""
        return full_width(source)

    def isEmpty(self) -> bool:  # noqa: N802 - Qt's name
        """Tell Qt that there is something in it."""
        return False


@contextmanager
def marked_language() -> Iterator[None]:
    """Let the program speak in full width."""
    application = QCoreApplication.instance()
    assert application is not None
    # Not the application's child: a window that chooses its language would take it away.
    translator = Marked()
    application.installTranslator(translator)
    try:
        yield
    finally:
        application.removeTranslator(translator)
        translator.deleteLater()


@contextmanager
def painted_words() -> Iterator[set[str]]:
    """Collect what is painted by hand."""
    found: set[str] = set()
    true = QPainter.drawText

    def draw(self: QPainter, *given: object) -> object:
        found.update(part for part in given if isinstance(part, str))
        return true(self, *given)

    QPainter.drawText = draw  # type: ignore[method-assign,assignment]
    try:
        yield found
    finally:
        QPainter.drawText = true  # type: ignore[method-assign]


def shown_words(without: tuple[type, ...] = ()) -> set[tuple[str, str]]:
    """Give everything all widgets say, with where; hidden ones too."""
    found: set[tuple[str, str]] = set()
    for widget in QApplication.allWidgets():
        if not without or not _inside(widget, without):
            where = type(widget).__name__
            found |= {(where, text) for text in _words_of(widget) if text}
    return found


def _inside(widget: QWidget | None, kinds: tuple[type, ...]) -> bool:
    while widget is not None:
        if isinstance(widget, kinds):
            return True
        widget = widget.parentWidget()
    return False


def _words_of(widget: QWidget) -> Iterator[str]:
    yield widget.toolTip()
    yield widget.accessibleName()
    yield widget.accessibleDescription()
    if isinstance(widget, QDialog) or widget.isWindow():
        yield widget.windowTitle()
    for kind, words in _READERS:
        if isinstance(widget, kind):
            yield from words(widget)
    for action in widget.actions():
        yield from _of_action(action)


def _of_action(action: QAction) -> Iterator[str]:
    yield action.text()
    yield action.toolTip()


def _of_spin_box(box: QAbstractSpinBox) -> Iterator[str]:
    yield box.specialValueText()
    yield box.text()
    for part in ("prefix", "suffix"):
        if hasattr(box, part):
            yield getattr(box, part)()


def _of_line(line: QLineEdit) -> Iterator[str]:
    yield line.placeholderText()
    if line.isReadOnly():
        yield line.text()


def _of_scene(view: QGraphicsView) -> Iterator[str]:
    for item in view.scene().items() if view.scene() is not None else ():
        if isinstance(item, QGraphicsTextItem):
            yield item.toPlainText()


def _of_model(view: QAbstractItemView) -> Iterator[str]:
    model = view.model()
    if model is None or isinstance(view, QHeaderView):
        return
    roles = (
        Qt.ItemDataRole.DisplayRole,
        Qt.ItemDataRole.ToolTipRole,
        Qt.ItemDataRole.AccessibleTextRole,
    )
    root = QModelIndex()
    rows = model.rowCount(root)
    columns = model.columnCount(root) if isinstance(model, QAbstractTableModel) else 1
    for column in range(columns):
        heading = model.headerData(column, Qt.Orientation.Horizontal)
        if isinstance(heading, str):
            yield heading
    for row in range(min(rows, _MOST_CELLS // max(1, columns))):
        for column in range(columns):
            index = model.index(row, column)
            yield from (text for role in roles if isinstance(text := index.data(role), str))


_READERS: tuple[tuple[type, Callable[..., Iterator[str]]], ...] = (
    (QLabel, lambda label: iter((label.text(),))),
    (QAbstractButton, lambda button: iter((button.text(),))),
    (QLineEdit, _of_line),
    (QAbstractSpinBox, _of_spin_box),
    (QComboBox, lambda box: (box.itemText(at) for at in range(box.count()))),
    (QTabBar, lambda bar: (bar.tabText(at) for at in range(bar.count()))),
    (QMenu, lambda menu: iter((menu.title(),))),
    (QTextEdit, lambda edit: iter((edit.toPlainText(),) if edit.isReadOnly() else ())),
    (QAbstractItemView, _of_model),
    (QGraphicsView, _of_scene),
)


def steps(window: object, recording: object, clips: list[object]) -> Iterator[str]:
    """Bring every page, pane and sheet about, one after the other; give each one's name."""
    main = window.main  # type: ignore[attr-defined]
    listen, keys = main.listen, main.desk.keys

    def press(*names: str) -> None:
        for name in names:
            keys.action(name).trigger()

    main.rail.menu.menu().aboutToShow.emit()  # filled only then
    practice = main.practice
    for name, show in (
        ("today", practice.show_today),
        ("large", lambda: practice.show_large(large=True)),
        ("small", lambda: practice.show_large(large=False)),
        ("click", practice.choose_guides),
        ("items", practice.change_items),
        ("set work", practice.show_assignments),
        ("rehearsal", practice.show_rehearsal),
        ("passage", practice.new_passage),
        ("change passage", practice.change_passage),
        ("import", lambda: main.import_files([recording, *clips])),
    ):
        main.show_page(0)
        show()
        yield f"practice, {name}"
    practice.show_today()
    takes = main.desk.workbench.filing.takes()
    marked = max(takes, key=lambda take: take.marker_count)
    main.listen_to(marked.id)
    yield "listen"
    for pane in range(listen.side.count() if hasattr(listen.side, "count") else 5):
        listen.side.show_pane(pane)
        yield f"listen, pane {pane}"
    press("listen.mark_1")
    yield "listen, marked"
    press("listen.next_suggestion")
    yield "listen, suggestion"
    press("listen.dismiss")
    yield "listen, dismissed"
    press("undo")
    press("listen.ear_first")
    yield "listen, ear first"
    press("listen.show_measured")
    yield "listen, ear shown"
    press("listen.ear_first")
    listen.marking.toggle_filter()
    listen.along.toggle()
    yield "listen, along and filter"
    listen.marking.toggle_filter()
    listen.along.toggle()
    main.show_page(2)
    yield "compare"
    for pane in range(5):
        main.compare.sections.show_pane(pane)
        yield f"compare, pane {pane}"
    for picture in range(2):
        main.compare.pictures.next_picture()
        yield f"compare, picture {picture}"
    main.compare.toggle_blind()
    yield "compare, blind"
    if main.compare.is_blind:
        main.compare.toggle_blind()
    main.show_page(3)
    yield "calendar"
    calendar = main.calendar
    for show in (calendar.show_record, calendar.show_names, calendar.show_import):
        show()
        yield f"calendar, {show.__name__}"
        show()
    calendar.toggle_promises()
    yield "calendar, promises"
    calendar.toggle_promises()
    main.show_page(4)
    yield "lesson"
    sheets = main.sheets
    for show in (
        sheets.show_help, sheets.show_settings, sheets.show_keys, sheets.show_backups,
        sheets.show_categories,
    ):  # fmt: skip
        show()
        yield f"sheet, {show.__name__}"
        sheets.hide()
    sheets.show_share(takes[:1], 0.0, 5.0)
    yield "sheet, share"
    sheets.hide()
    sheets.show_export(takes[0].id, None, None)
    yield "sheet, export"
    sheets.hide()
