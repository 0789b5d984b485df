"""The help sheet: every key, made from the table of actions."""

from html import escape

from PySide6.QtWidgets import QTextBrowser, QWidget

from app.ui.keys import ACTIONS, KeyMap, Where
from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import column
from app.ui.widgets.focus_order import OrderedDialog


def help_html(keys: KeyMap) -> str:
    """Return all actions with their keys, page by page."""
    parts = []
    for where in Where:
        parts.append(f"<p><b>{escape(tr(where.value))}</b></p><table cellpadding='3'>")
        parts.extend(
            f"<tr><td width='150'><b>{escape(keys.text(spec.id))}</b></td>"
            f"<td>{escape(tr(spec.text))}</td></tr>"
            for spec in ACTIONS
            if spec.where is where
        )
        parts.append("</table>")
    parts.append(
        tr(
            "<p>Tab walks through the controls; Space or Enter presses the one in focus. "
            "Letters and digits go to a text field while it is being written in.</p>"
        )
    )
    return "".join(parts)


class HelpSheet(OrderedDialog):
    """A window beside the main one, so that playback goes on."""

    def __init__(self, keys: KeyMap, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Keys"))
        self.setModal(False)
        self.resize(520, 640)
        self._browser = QTextBrowser()
        self._browser.setAccessibleName(tr("All keys"))
        self._browser.setHtml(help_html(keys))
        keys.changed.connect(lambda: self._browser.setHtml(help_html(keys)))
        column(self, margin=GRID_PX).addWidget(self._browser)

    @property
    def text(self) -> str:
        """What the sheet says, without markup."""
        return self._browser.toPlainText()
