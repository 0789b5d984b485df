"""Vector icons, drawn for this program on a 24 by 24 field.

Each is a list of SVG paths: ``s:`` is stroked, ``f:`` filled. They take the colour of
the text beside them, so they follow light, dark and disabled by themselves.
"""

from pathlib import Path

from PySide6.QtCore import QByteArray, QPoint, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QGuiApplication, QIcon, QIconEngine, QPainter, QPalette, QPixmap
from PySide6.QtSvg import QSvgRenderer

SHAPES: dict[str, tuple[str, ...]] = {
    # A desk with a page on its stand.
    "practice": ("s:M4 5h16l-2 9H6z", "s:M12 14v6", "s:M8 20h8", "s:M8 8h8", "s:M8.5 11h5"),
    # Bars above and below a zero line.
    "listen": ("s:M3 12h18", "f:M5 7h3v5H5z", "f:M10 12h3v6h-3z", "f:M15 9h4v3h-4z"),
    # Two lines that meet at the same places.
    "compare": ("s:M3 7h18", "s:M3 17h18", "s:M6 7l4 10", "s:M12 7l2 10", "s:M18 7v10"),
    # Two rows of bars.
    "calendar": (
        "s:M3 11h18",
        "s:M3 20h18",
        "s:M6 11V7",
        "s:M10 11V4",
        "s:M14 11V9",
        "s:M18 11V5",
        "s:M6 20v-5",
        "s:M10 20v-2",
        "s:M14 20v-6",
    ),
    # A page with a slur.
    "lesson": ("s:M5 3h10l4 4v14H5z", "s:M8 13c2-3 6-3 8 0", "f:M7 14h2v2H7z", "f:M15 14h2v2h-2z"),
    "record": ("f:M12 6a6 6 0 1 0 .01 0z",),
    "stop": ("f:M7 7h10v10H7z",),
    "play": ("f:M8 5l11 7-11 7z",),
    "pause": ("f:M7 5h4v14H7z", "f:M14 5h4v14h-4z"),
    "loop": ("s:M6 9h10a3.5 3.5 0 0 1 0 8H8", "s:M9 6L6 9l3 3"),
    "start": ("s:M6 5v14", "f:M19 5L9 12l10 7z"),
    "marker": ("s:M7 21V4", "f:M7 4h11l-3 4 3 4H7z"),
    "import": ("s:M12 3v11", "s:M7.5 10L12 14.5 16.5 10", "s:M4 15v5h16v-5"),
    "level": ("s:M4 20V14", "s:M9 20V9", "s:M14 20V4", "s:M19 20v-8"),
    "delete": ("s:M5 7h14", "s:M9 7V4h6v3", "s:M7 7l1 13h8l1-13"),
    "undo": ("s:M5 9h9a5 5 0 0 1 0 10H9", "s:M9 5L5 9l4 4"),
    "add": ("s:M12 5v14", "s:M5 12h14"),
    "previous": ("s:M15 5l-7 7 7 7",),
    "next": ("s:M9 5l7 7-7 7",),
    "theme": ("s:M12 4a8 8 0 1 0 .01 0z", "f:M12 4a8 8 0 0 1 0 16z"),
    "help": ("s:M8.5 9a3.5 3.5 0 1 1 5 3.2c-1 .6-1.5 1.2-1.5 2.3", "f:M11 17.5h2v2h-2z"),
    "close": ("s:M6 6l12 12", "s:M18 6L6 18"),
    "folder": ("s:M3 6h7l2 3h9v11H3z",),
    "switch": ("s:M4 8h14", "s:M15 5l3 3-3 3", "s:M20 16H6", "s:M9 13l-3 3 3 3"),
    "save": ("s:M12 4v10", "s:M8 10l4 4 4-4", "s:M5 19h14"),
    "large": ("s:M14 5h5v5", "s:M19 5l-6 6", "s:M10 19H5v-5", "s:M5 19l6-6"),
    "menu": ("s:M4 7h16", "s:M4 12h16", "s:M4 17h16"),
}


def _svg(name: str, colour: str) -> QByteArray:
    parts = []
    for shape in SHAPES[name]:
        kind, path = shape.split(":", 1)
        if kind == "s":
            parts.append(
                f'<path d="{path}" fill="none" stroke="{colour}" stroke-width="1.8" '
                'stroke-linecap="round" stroke-linejoin="round"/>'
            )
        else:
            parts.append(f'<path d="{path}" fill="{colour}"/>')
    text = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 24 24">{"".join(parts)}</svg>'
    return QByteArray(text.encode())


class _ShapeEngine(QIconEngine):
    """Paints one shape in the palette's current colour, at any scale."""

    def __init__(self, name: str, role: QPalette.ColorRole) -> None:
        super().__init__()
        self._name = name
        self._role = role

    def paint(self, painter: QPainter, rect: QRect, mode: QIcon.Mode, _state: QIcon.State) -> None:
        group = (
            QPalette.ColorGroup.Disabled
            if mode == QIcon.Mode.Disabled
            else QPalette.ColorGroup.Active
        )
        colour = QGuiApplication.palette().color(group, self._role)
        side = min(rect.width(), rect.height())
        target = QRectF(
            rect.x() + (rect.width() - side) / 2, rect.y() + (rect.height() - side) / 2, side, side
        )
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setOpacity(colour.alphaF())
        QSvgRenderer(_svg(self._name, colour.name())).render(painter, target)

    def pixmap(self, size: QSize, mode: QIcon.Mode, state: QIcon.State) -> QPixmap:
        pixmap = QPixmap(size)
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        self.paint(painter, QRect(QPoint(0, 0), size), mode, state)
        painter.end()
        return pixmap

    def clone(self) -> "_ShapeEngine":
        return _ShapeEngine(self._name, self._role)


def icon(name: str, *, on_accent: bool = False) -> QIcon:
    """Return the icon `name`; `on_accent` for buttons filled with the accent colour."""
    if name not in SHAPES:
        raise KeyError(name)
    role = QPalette.ColorRole.HighlightedText if on_accent else QPalette.ColorRole.ButtonText
    return QIcon(_ShapeEngine(name, role))


def program_icon() -> QIcon:
    """Return the program's own icon, in the sizes that task bars and switchers ask for."""
    drawing = QSvgRenderer(str(Path(__file__).with_name("passagework.svg")))
    icon = QIcon()
    for size_px in (16, 24, 32, 48, 64, 128, 256):
        pixmap = QPixmap(size_px, size_px)
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        drawing.render(painter, QRectF(0, 0, size_px, size_px))
        painter.end()
        icon.addPixmap(pixmap)
    return icon
