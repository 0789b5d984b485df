"""The menu of all actions, with their keys."""

from collections.abc import Callable

from PySide6.QtWidgets import QMenu, QWidget

from app.ui.keys import ACTIONS, KeyMap, Where
from app.ui.language import tr


def actions_menu(keys: KeyMap, parent: QWidget, page_index: Callable[[], int]) -> QMenu:
    """Return the menu of all actions; those of other pages are greyed out.

    The entries only show the keys. With the bound actions themselves in a menu, the
    keys of hidden pages would answer.
    """
    menu = QMenu(tr("All actions"), parent)

    def fill() -> None:
        # Only now, and with the keys of now: the first window does not wait for it.
        for part in menu.findChildren(QMenu):
            part.deleteLater()
        menu.clear()
        here = (Where.EVERYWHERE, list(Where)[1 + page_index()])
        parts = {where: QMenu(tr(where.value), menu) for where in Where}
        for where, part in parts.items():
            menu.addMenu(part)
            part.setEnabled(where in here)
        for spec in ACTIONS:
            entry = parts[spec.where].addAction(f"{tr(spec.text)}\t{keys.text(spec.id)}")
            # Looked up only then: a page binds its actions when it is first opened.
            entry.triggered.connect(lambda _=False, key=spec.id: keys.action(key).trigger())

    menu.aboutToShow.connect(fill)
    return menu
