"""A thin bar for work that takes a while."""

from PySide6.QtWidgets import QProgressBar

from app.ui.theme import GRID_PX

_STEPS = 1000


class ThinProgressBar(QProgressBar):
    """How much of something long is done; the words for it stand elsewhere."""

    def __init__(self, accessible_name: str) -> None:
        super().__init__()
        self.setRange(0, _STEPS)
        self.setTextVisible(False)
        self.setFixedHeight(GRID_PX)
        self.setAccessibleName(accessible_name)

    def show_fraction(self, fraction: float) -> None:
        """Show how much is done, 0 to 1."""
        self.setValue(round(_STEPS * fraction))
