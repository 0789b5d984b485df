"""Numbers as the window's language writes them."""

import re

from PySide6.QtCore import QLocale

_DECIMALS = re.compile(r"(?<![\w.])(\d+)\.(\d+)(?![\w.]|:)")

_GROUPS = re.compile(r"(?<![\w.,])\d{1,3}(?:,\d{3})+(?![\w,])")


def local_numbers(text: str) -> str:
    """Return `text` with its numbers' decimals after the decimal sign of the language.

    For numbers alone or among words of the program; a player's words are not to pass here.
    """
    locale = QLocale()
    sign, group = locale.decimalPoint(), locale.groupSeparator()
    if sign == ".":
        return text
    grouped = _GROUPS.sub(lambda found: found[0].replace(",", group), text)
    return grouped if grouped != text else _DECIMALS.sub(rf"\1{sign}\2", text)


def locale_of(code: str) -> QLocale:
    """Give the locale of a language: the system's where it speaks it too, else the usual one."""
    system, wanted = QLocale.system(), QLocale(code)
    return system if system.language() == wanted.language() else wanted
