"""Words that the window shows, through Qt's translation.

Every sentence the window shows goes through :func:`tr`; placeholders are filled in
afterwards (``tr("{count} takes").format(count=3)``), so that a translation may move them.
"""

from PySide6.QtCore import QCoreApplication

CONTEXT = ""
"""What pyside6-lupdate files a plain ``tr(...)`` under."""


def tr(text: str) -> str:
    """Return `text` in the language of the window, or as it is without a translation."""
    return QCoreApplication.translate(CONTEXT, text)
