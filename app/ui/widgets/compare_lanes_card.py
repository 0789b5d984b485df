"""The lanes of two takes with what belongs over them."""

from PySide6.QtWidgets import QSizePolicy

from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, fill, row, soft
from app.ui.widgets.compare_lanes import CompareLanes


class LanesCard(Card):
    """Words of what lies under the pointer, three buttons, and the lanes."""

    def __init__(self, lanes: CompareLanes) -> None:
        super().__init__()
        self.hover = soft(wrap=False)
        # Words under the pointer never ask the page for more room.
        self.hover.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.then_now = Button(tr("Then and now"), "play", action_id="compare.then_now")
        self.switch = Button(tr("Hear B"), "switch", action_id="compare.switch")
        self.layout_button = Button(tr("Overlaid"), action_id="compare.layout")
        self.layout_button.setCheckable(True)
        self.layout_button.setChecked(True)
        self.box.setContentsMargins(GRID_PX, GRID_PX, GRID_PX, GRID_PX)
        over = row()
        fill(over, self.hover, self.then_now, self.switch, self.layout_button)
        over.setStretch(0, 1)
        fill(self.box, over, lanes)
        self.box.setStretch(1, 1)
