"""Draws the program's icon in the sizes that desktops ask for.

``python app/packaging/draw_icons.py FOLDER`` writes PNG files for Linux, an ``.ico`` for
Windows and an ``.icns`` for macOS, all from ``app/ui/passagework.svg``.
"""

import sys
from pathlib import Path

from PIL import Image
from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage, QPainter
from PySide6.QtSvg import QSvgRenderer

DRAWING = Path(__file__).parents[1] / "ui" / "passagework.svg"
SIZES_PX = (16, 22, 24, 32, 48, 64, 128, 256, 512, 1024)


def drawn(size_px: int) -> QImage:
    """Return the icon on a transparent square of `size_px`."""
    image = QImage(size_px, size_px, QImage.Format.Format_ARGB32_Premultiplied)
    image.fill(0)
    painter = QPainter(image)
    QSvgRenderer(str(DRAWING)).render(painter, QRectF(0, 0, size_px, size_px))
    painter.end()
    return image


def write_icons(folder: Path) -> tuple[Path, ...]:
    """Write every size as ``passagework-<size>.png``, and the icons of both other systems."""
    folder.mkdir(parents=True, exist_ok=True)
    written = []
    for size_px in SIZES_PX:
        path = folder / f"passagework-{size_px}.png"
        if not drawn(size_px).save(str(path)):
            msg = f"{path} could not be written"
            raise OSError(msg)
        written.append(path)
    with Image.open(written[-1]) as largest:
        for ending in (".ico", ".icns"):
            path = folder / f"passagework{ending}"
            largest.save(path)
            written.append(path)
    return tuple(written)


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit("Say where to: python app/packaging/draw_icons.py FOLDER")
    for icon in write_icons(Path(sys.argv[1])):
        print(icon)
