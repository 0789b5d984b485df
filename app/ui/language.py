"""Words that the window shows, through Qt's translation.

Every sentence the window shows goes through :func:`tr`; placeholders are filled in
afterwards (``tr("{count} takes").format(count=3)``), so that a translation may move them;
what is filled in is translated as well where it comes from below the window.
A table made when its module is imported marks its words with :func:`mark`, and whoever
shows them calls :func:`tr`. Words that come from below the window: :mod:`app.ui.spoken`.
"""

from importlib.resources import files
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, QTranslator

from app.ui.numbers import locale_of
from app.ui.spoken import forget, said_in

CONTEXT = ""
"""What the window's own words are filed under."""

SYSTEM = ""
ENGLISH = "en"
LANGUAGES: tuple[tuple[str, str], ...] = ((ENGLISH, "English"), ("de", "Deutsch"))
"""The languages there are, by code, each named in itself."""

_CODES = tuple(code for code, _ in LANGUAGES)


def tr(text: str) -> str:
    """Return `text` in the language of the window, or as it is without a translation."""
    # To Qt an empty source is the head of the file.
    return _Phrase(QCoreApplication.translate(CONTEXT, text)) if text else text


class _Phrase(str):
    """A translated text; what is filled into its fields comes in the language too."""

    __slots__ = ()

    def format(self, *values: object, **fields: object) -> str:
        """Fill in the fields; sentences and numbers from below the window are translated."""
        return super().format(
            *(said_in("", value) for value in values),
            **{name: said_in(name, value) for name, value in fields.items()},
        )


def mark(text: str) -> str:
    """Return `text` itself; says that it is shown through :func:`tr` later."""
    return text


def use_language(wanted: str = SYSTEM) -> str:
    """Show what is made from now on in a language; return its code.

    Windows made before keep their words. Without a catalogue of a language the system
    asks for, the window speaks English.

    Parameters
    ----------
    wanted : str
        A code of :data:`LANGUAGES`, or :data:`SYSTEM`.
    """
    application = QCoreApplication.instance()
    if application is None:
        return ENGLISH
    for translator in application.findChildren(QTranslator):
        application.removeTranslator(translator)
        translator.deleteLater()
    code = wanted if wanted in _CODES else _system_language()
    QLocale.setDefault(locale_of(code))
    forget()
    if code != ENGLISH:
        folder = Path(str(files("app.ui") / "translations"))
        _install(application, f"passagework_{code}", folder)
        qt_folder = QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)
        # Where this PySide6 comes without it, Qt's own buttons stay English.
        _install(application, f"qtbase_{code}", Path(qt_folder))
    return code


def language_in_use() -> str:
    """Return the code of the language that :func:`use_language` chose last."""
    code = QLocale().name().partition("_")[0]
    return code if code in _CODES else ENGLISH


def _system_language() -> str:
    for name in QLocale.system().uiLanguages():
        code = name.replace("_", "-").partition("-")[0]
        if code in _CODES:
            return code
    return ENGLISH


def _install(application: QCoreApplication, name: str, folder: Path) -> None:
    translator = QTranslator(application)
    if translator.load(name, str(folder)):
        application.installTranslator(translator)
    else:
        translator.deleteLater()
