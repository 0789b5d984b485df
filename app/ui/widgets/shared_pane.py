"""What was made to be shared, and when."""

from PySide6.QtWidgets import QListWidget, QWidget

from app.journal.sharing import SharedClip
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.widgets.basics import column, fill, soft
from app.ui.words import day_text, position_text


class SharedPane(QWidget):
    """Lists the clips, the newest first."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Clips that were made to be shared"))
        self.list.setWordWrap(True)
        self.words = soft()
        fill(column(self), self.words, self.list)

    def refresh(self) -> None:
        """Read the list again."""
        self._desk.jobs.store(
            self._desk.workbench.sharing.shared, self._show, subject="lesson.shared"
        )

    def _show(self, clips: tuple[SharedClip, ...]) -> None:
        self.words.setText(
            tr("Clips you made, the newest first. The program itself sends nothing.")
            if clips
            else tr("No clip was made yet.")
        )
        self.list.clear()
        for clip in reversed(clips):
            span = f"{position_text(clip.start_s)}\N{EN DASH}{position_text(clip.end_s)}"
            made = tr("made {when}").format(when=f"{clip.shared_at:%Y-%m-%d %H:%M}")
            words = [f"{day_text(clip.practice_day)}, {span}, {made}", clip.file_name]
            self.list.addItem("\n".join((*words, clip.numbers)).strip())
