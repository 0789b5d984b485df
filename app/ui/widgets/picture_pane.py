"""The picture of a filmed take, and the room it shares with lanes and panes."""

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QSplitter, QWidget

from app.ui.language import tr
from app.ui.theme import GRID_PX

_LEAST_PX = 96
_SIDE_PX = 336
_LEAST_LEFT_PX = 520
_LARGE_PART = 0.48
_MOST_HEIGHT_PART = 0.42
_LARGE_HEIGHT_PART = 0.62
_ANY_WIDTH = 16_777_215


class PicturePane(QWidget):
    """Paints the newest picture as large as there is room, its shape kept.

    Signals
    -------
    roomChanged(int)
        How many pixels of the screen the longest side of a picture may have.
    """

    roomChanged = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self._image = QImage()
        self.place_s = 0.0
        self.setMinimumHeight(_LEAST_PX)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setAccessibleName(tr("Picture of the take"))

    @property
    def image(self) -> QImage:
        """The picture that is shown; empty before the first."""
        return self._image

    def show_picture(self, image: QImage, place_s: float) -> None:
        """Show a picture, and remember the place it belongs to."""
        self._image = image
        self.place_s = place_s
        self.update()

    def clear(self) -> None:
        """Show nothing."""
        self._image = QImage()
        self.update()

    def sizeHint(self) -> QSize:
        """Room for a picture across the side column."""
        return QSize(_SIDE_PX, _SIDE_PX * 9 // 16)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Ask for pictures of the new size."""
        super().resizeEvent(event)
        longest = max(self.width(), self.height())
        self.roomChanged.emit(round(longest * self.devicePixelRatioF()))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the picture in the middle."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), self.palette().window())
        if self._image.isNull():
            return
        size = self._image.size().scaled(self.size(), Qt.AspectRatioMode.KeepAspectRatio)
        place = QRect((self.width() - size.width()) // 2, 0, size.width(), size.height())
        place.moveTop((self.height() - size.height()) // 2)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawImage(place, self._image)


class PictureSplit(QSplitter):
    """Lanes on the left, panes on the right, and over these the picture where there is one.

    Both dividers can be dragged; without a picture the right column has its usual width.
    """

    def __init__(self, left: QWidget, side: QWidget, picture: PicturePane) -> None:
        super().__init__(Qt.Orientation.Horizontal)
        self._picture = picture
        self._aspect = 16 / 9
        self.is_large = False
        self._right = QSplitter(Qt.Orientation.Vertical)
        for splitter in (self, self._right):
            splitter.setHandleWidth(2 * GRID_PX if splitter is self else GRID_PX)
            splitter.setChildrenCollapsible(False)
        self._right.addWidget(picture)
        self._right.addWidget(side)
        self._right.setStretchFactor(1, 1)
        # Less than the words over the lanes would like: a large picture matters more.
        left.setMinimumWidth(_LEAST_LEFT_PX)
        side.setMinimumWidth(_SIDE_PX)
        self.addWidget(left)
        self.addWidget(self._right)
        self.setStretchFactor(0, 1)
        self.show_room(has_picture=False)

    def show_room(self, *, has_picture: bool, width: int = 16, height: int = 9) -> None:
        """Make room for a picture of this shape, or take it away."""
        self._aspect = width / max(height, 1)
        self._picture.setVisible(has_picture)
        self.handle(1).setEnabled(has_picture)
        self._right.setMaximumWidth(_ANY_WIDTH if has_picture else _SIDE_PX)
        self._share()

    def toggle_large(self) -> None:
        """Give the picture more room, or its usual room again."""
        self.is_large = not self.is_large
        self._share()

    def _share(self) -> None:
        width, height = self.width(), self.height()
        is_large = self.is_large and not self._picture.isHidden()
        column = max(_SIDE_PX, round(width * _LARGE_PART)) if is_large else _SIDE_PX
        most = height * (_LARGE_HEIGHT_PART if self.is_large else _MOST_HEIGHT_PART)
        tall = round(min(column / self._aspect, most))
        self.setSizes([max(width - column, 1), column])
        self._right.setSizes([tall, max(height - tall, 1)])
