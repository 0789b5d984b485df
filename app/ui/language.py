"""Words that the window shows, through Qt's translation.

Every sentence the window shows goes through :func:`tr`; placeholders are filled in
afterwards (``tr("{count} takes").format(count=3)``), so that a translation may move them.
A table made when its module is imported marks its words with :func:`mark`, and whoever
shows them calls :func:`tr`. Words that come from below the window: :mod:`app.ui.spoken`.
"""

from PySide6.QtCore import QCoreApplication

CONTEXT = ""
"""What the window's own words are filed under."""

SYSTEM = ""
ENGLISH = "en"
LANGUAGES: tuple[tuple[str, str], ...] = ((ENGLISH, "English"), ("de", "Deutsch"))
"""The languages there are, by code, each named in itself."""

_TRANSLATIONS = "translations"


def tr(text: str) -> str:
    """Return `text` in the language of the window, or as it is without a translation."""
    # To Qt an empty source is the head of the file.
    return QCoreApplication.translate(CONTEXT, text) if text else text


def mark(text: str) -> str:
    """Return `text` itself; says that it is shown through :func:`tr` later."""
    return text
