"""What a clip will be, before anything is written."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QFrame, QLabel, QScrollArea, QWidget

from app.services.sharing.service import SharePreview
from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import column, fill, heading, sentence, soft
from app.ui.words import length_text

_PICTURE_WIDTH_PX = 440


class SharePreviewPane(QScrollArea):
    """Pictures, title, level, and what stays behind."""

    def __init__(self) -> None:
        super().__init__()
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setAccessibleName(tr("Preview; nothing is written yet"))

    def clear(self, words: str) -> None:
        """Show words in the place of a preview."""
        self._put([sentence(words)])

    def show_preview(self, found: SharePreview) -> None:
        """Show another preview."""
        parts: list[QWidget] = [heading(tr("Preview; nothing is written yet"))]
        for png, name in (
            (found.card_png, tr("The title card")),
            (found.picture_png, tr("The picture while it sounds")),
        ):
            if png:
                parts += [_picture(png, name), soft(name)]
        length = tr("{length} long.").format(length=length_text(found.duration_s))
        parts.append(sentence(f"{length} {found.sound_sentence}"))
        title = "\n".join(line for line in found.title if line)
        parts.append(sentence(tr("The title says:") + f"\n{title}"))
        told = "\n".join(found.left_out)
        parts.append(
            sentence(tr("Stays behind, and is not in the clip:") + f"\n{told}")
            if told
            else sentence(tr("The recording's file says nothing of place, device or dates."))
        )
        parts.append(sentence(found.caution))
        self._put(parts)

    def words(self) -> str:
        """All that is said, for those who do not see it."""
        return "\n".join(label.text() for label in self.findChildren(QLabel))

    def _put(self, parts: list[QWidget]) -> None:
        inside = QWidget()
        box = column(inside, spacing=GRID_PX)
        fill(box, *parts, 1)
        self.setWidget(inside)


def _picture(png: bytes, name: str) -> QLabel:
    label = QLabel()
    label.setAccessibleName(name)
    pixmap = QPixmap()
    pixmap.loadFromData(png)
    ratio = label.devicePixelRatioF()
    pixmap = pixmap.scaledToWidth(
        round(_PICTURE_WIDTH_PX * ratio), Qt.TransformationMode.SmoothTransformation
    )
    pixmap.setDevicePixelRatio(ratio)
    label.setPixmap(pixmap)
    return label
