"""The menu of the lanes: which are shown, and how high."""

from PySide6.QtWidgets import QMenu, QWidget

from app.ui.keys import keys_text
from app.ui.language import tr
from app.ui.widgets.lane_layout import LaneLayout


def lane_menu(layout: LaneLayout, names: list[str], owner: QWidget) -> QMenu:
    """Make the menu for the lanes as they are now.

    Parameters
    ----------
    layout : LaneLayout
        What the entries change.
    names : list of str
        Of the lanes, from above.
    owner : QWidget
        The menu goes with it.
    """
    menu = QMenu(tr("Lanes"), owner)
    for lane, name in enumerate(names):
        entry = menu.addAction(name)
        entry.setCheckable(True)
        entry.setChecked(lane not in layout.hidden)
        entry.setEnabled(lane in layout.hidden or len(layout.shown) > 1)
        entry.toggled.connect(lambda shown, at=lane: layout.hide(at, hidden=not shown))
    menu.addSeparator()
    chosen = names[layout.chosen]
    taller = menu.addAction(_with_keys(tr("{lane} taller"), "listen.lane_taller", chosen))
    lower = menu.addAction(_with_keys(tr("{lane} lower"), "listen.lane_lower", chosen))
    usual = menu.addAction(_with_keys(tr("All lanes, usual heights"), "listen.lanes_usual"))
    taller.triggered.connect(lambda: layout.resize(layout.chosen, 1))
    lower.triggered.connect(lambda: layout.resize(layout.chosen, -1))
    usual.triggered.connect(layout.reset)
    menu.aboutToHide.connect(menu.deleteLater)
    return menu


def _with_keys(words: str, action_id: str, lane: str = "") -> str:
    return f"{words.format(lane=lane)}\t{keys_text(action_id)}"
