"""What the sections beside the lanes of the Compare page have in common."""

from PySide6.QtWidgets import QWidget

from app.services.views import CompareView
from app.ui.desk import Desk


class ComparePane(QWidget):
    """A section; it reads what it shows only while somebody looks at it."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self.desk = desk
        self.view: CompareView | None = None
        self._is_read = False

    def show_compared(self, view: CompareView) -> None:
        """Take over another pair."""
        self.view = view
        self.read_again()

    def read_again(self) -> None:
        """Read anew, at once where the section is in view."""
        self._is_read = False
        if self.isVisible():
            self.look()

    def look(self) -> None:
        """Come into view."""
        if self.view is not None and not self._is_read:
            self._is_read = True
            self.read(self.view)

    def read(self, view: CompareView) -> None:
        """Read and show what belongs to this pair."""
        raise NotImplementedError

    @property
    def passage_id(self) -> str | None:
        """The passage of take B."""
        return self.view.b.row.passage_id if self.view is not None else None
