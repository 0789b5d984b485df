"""The player's guide, page by page, in a window beside the main one.

Its pages are the Markdown files of ``app/guide``, which are also read on their own; other
languages have a folder of their own in it, with pages of the same names.
"""

from pathlib import Path

from PySide6.QtCore import QSize, Qt, QUrl
from PySide6.QtGui import QDesktopServices, QImage, QTextCursor
from PySide6.QtWidgets import (
    QLineEdit,
    QListWidget,
    QTextBrowser,
    QWidget,
)

from app.ui.language import language_in_use, tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import column, fill, row
from app.ui.widgets.focus_order import OrderedDialog

FOLDER = Path(__file__).parents[2] / "guide"
_IN_ORDER = (
    "first_day",
    "first_week",
    "clips_before_a_lesson",
    "before_an_audition",
    "new_computer",
    "numbers",
    "counting",
    "installing",
    "commands",
    "open_formats",
    "troubleshooting",
)
_PICTURE_WIDTH_PX = 620
_PAGES_WIDTH_PX = 240


def folder_of(language: str) -> Path:
    """Return where the pages of a language lie; the English ones where it has none."""
    own = FOLDER / language
    return own if language and own.is_dir() else FOLDER


def pages(folder: Path = FOLDER) -> list[Path]:
    """Return the guide's pages in the order in which they are read; unlisted ones last."""
    place = {name: at for at, name in enumerate(_IN_ORDER)}
    found = sorted(folder.glob("*.md"))
    return sorted(found, key=lambda page: place.get(page.stem, len(place)))


def title_of(text: str) -> str:
    """Return a page's title: its first heading."""
    headings = (line[2:].strip() for line in text.splitlines() if line.startswith("# "))
    return next(headings, "")


class GuideBrowser(QTextBrowser):
    """Shows a page of a folder, its pictures reduced to the width there is."""

    def __init__(self, folder: Path) -> None:
        super().__init__()
        self._folder = folder

    def loadResource(self, kind: int, name: QUrl | str) -> object:
        """Give pictures at a size that fits, sharp on a fine screen."""
        found = super().loadResource(kind, name)
        url = name if isinstance(name, QUrl) else QUrl(name)
        if not url.path().endswith(".png"):
            return found
        picture = QImage(str(self._folder / "pictures" / Path(url.path()).name))
        ratio = self.devicePixelRatioF()
        picture = picture.scaledToWidth(
            round(_PICTURE_WIDTH_PX * ratio), Qt.TransformationMode.SmoothTransformation
        )
        picture.setDevicePixelRatio(ratio)
        return picture


class GuideSheet(OrderedDialog):
    """The pages at the left, the chosen one beside them; never modal."""

    def __init__(self, parent: QWidget, folder: Path | None = None) -> None:
        super().__init__(parent)
        folder = folder or folder_of(language_in_use())
        self.setWindowTitle(tr("Guide"))
        self.setModal(False)
        self.resize(QSize(980, 720))
        self._texts = {page.name: page.read_text(encoding="utf-8") for page in pages(folder)}
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Pages of the guide"))
        self.list.setWordWrap(True)
        self.list.setFixedWidth(_PAGES_WIDTH_PX)
        for text in self._texts.values():
            self.list.addItem(title_of(text))
        self.search = QLineEdit()
        self.search.setPlaceholderText(tr("Find in the guide, then Enter"))
        self.search.setAccessibleName(tr("Find in the guide"))
        self.browser = GuideBrowser(folder)
        self.browser.setAccessibleName(tr("The page"))
        self.browser.setOpenLinks(False)
        self.browser.document().setDocumentMargin(2 * GRID_PX)
        self._lay_out()
        self.browser.anchorClicked.connect(self._follow)
        self.list.currentItemChanged.connect(lambda _now, _before: self._show_chosen())
        self.search.returnPressed.connect(self.find_next)
        self.list.setCurrentRow(0)

    def _lay_out(self) -> None:
        left = column()
        fill(left, self.search, self.list)
        box = row(self, margin=GRID_PX)
        box.addLayout(left)
        box.addWidget(self.browser, 1)

    @property
    def page_name(self) -> str:
        """File name of the page that is shown, e.g. ``"numbers.md"``."""
        row_shown = self.list.currentRow()
        return list(self._texts)[row_shown] if row_shown >= 0 else ""

    def show_page(self, name: str) -> bool:
        """Show the page of this file name; says whether there is one."""
        if name not in self._texts:
            return False
        self.list.setCurrentRow(list(self._texts).index(name))
        return True

    def find_next(self) -> None:
        """Go to the next place of the words, over the end of a page to the pages after it."""
        words = self.search.text().strip()
        if not words or self.browser.find(words):
            return
        names = list(self._texts)
        at = names.index(self.page_name)
        for name in (*names[at + 1 :], *names[: at + 1]):
            if words.casefold() in self._texts[name].casefold():
                self.show_page(name)
                self.browser.moveCursor(QTextCursor.MoveOperation.Start)
                if self.browser.find(words):
                    return

    def _show_chosen(self) -> None:
        self.browser.setMarkdown(self._texts.get(self.page_name, ""))
        self.browser.moveCursor(QTextCursor.MoveOperation.Start)

    def _follow(self, link: QUrl) -> None:
        if not self.show_page(link.fileName()) and link.scheme() in {"http", "https"}:
            QDesktopServices.openUrl(link)
