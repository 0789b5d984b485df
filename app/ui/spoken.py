"""Sentences and words from below the window, in the window's language.

The rooms below know no Qt: they make English sentences with their numbers filled in, which
the command line prints as they are. Here such a sentence is recognised by its pattern, its
translation is filled with the same values, and values that are sentences or words of the
program themselves are translated in their turn.

What stands in no pattern is shown as it is, in English; so is everything a player wrote.
A single word is translated where its place says that it is the program's
(:func:`word`), or inside a pattern, so that a passage called "Tempo" keeps its name.
"""

import json
import re
from collections.abc import Mapping
from functools import cache, lru_cache
from importlib.resources import files

from PySide6.QtCore import QCoreApplication

SAID = "said"
"""What these sentences are filed under in the catalogue."""

_FIELD = re.compile(r"\{(\w+)\}")
_NUMBERS = frozenset({"n", "day", "days", "year", "value", "rest", "low", "high", "number"})
"""Fields that begin with a number, so that a player's own words are not taken for them."""

_DEEPEST = 4
_REMEMBERED = 4096
_SENTENCE_END = re.compile(r"(?<=[.?!]) (?=[A-Z'0-9])")


def _read(name: str) -> tuple[str, ...]:
    text = (files("app.ui") / "translations" / "said.json").read_text("utf-8")
    return tuple(json.loads(text)[name])


SENTENCES: tuple[str, ...] = _read("sentences")
"""Templates of sentences and parts of them; a field in braces stands for any text."""

WORDS: tuple[str, ...] = _read("words")
"""Words of closed lists: states, kinds, verdicts, months."""

_WORDS = frozenset(WORDS)


def said(text: str) -> str:
    """Return a text from below the window in its language, or as it is."""
    return _said(text, 0) if text and _is_translated() else text


def word(text: str) -> str:
    """Return a word of a closed list in the window's language, or as it is."""
    if text in _WORDS and _is_translated():
        return QCoreApplication.translate(SAID, text)
    return said(text)


def forget() -> None:
    """Forget what was translated; the language has changed."""
    _is_translated.cache_clear()
    _said.cache_clear()


@cache
def _is_translated() -> bool:
    """Tell whether the window's catalogue knows these sentences."""
    return any(QCoreApplication.translate(SAID, text) != text for text in SENTENCES[:3])


@lru_cache(maxsize=_REMEMBERED)
def _said(text: str, depth: int) -> str:
    found = QCoreApplication.translate(SAID, text)
    if found != text and (depth or " " in text):
        return found
    # The pattern with most letters of its own says most about the sentence.
    for literal, pattern, template in _patterns():
        if literal in text and (match := pattern.fullmatch(text)):
            return _filled(template, match.groupdict(), depth)
    parts = _SENTENCE_END.split(text)
    if len(parts) > 1 and depth < _DEEPEST:
        return " ".join(_said(part, depth + 1) for part in parts)
    return text


def _filled(template: str, values: Mapping[str, str], depth: int) -> str:
    into = values
    if depth < _DEEPEST:
        into = {name: _said(value, depth + 1) if value else "" for name, value in values.items()}
    translated = QCoreApplication.translate(SAID, template)
    return _FIELD.sub(lambda field: into.get(field[1], field[0]), translated)


@cache
def _patterns() -> tuple[tuple[str, re.Pattern[str], str], ...]:
    """Give the longest literal part, the pattern and the template of each with a field."""
    found = []
    for template in SENTENCES:
        literals = _FIELD.split(template)[::2]
        if len(literals) == 1:
            continue
        found.append((sum(map(len, literals)), max(literals, key=len), template))
    found.sort(key=lambda row: -row[0])
    return tuple((literal, _compiled(template), template) for _, literal, template in found)


def _compiled(template: str) -> re.Pattern[str]:
    seen: set[str] = set()
    parts = []
    for at, part in enumerate(_FIELD.split(template)):
        if at % 2 == 0:
            parts.append(re.escape(part))
        elif part in seen:
            parts.append(f"(?P={part})")
        else:
            seen.add(part)
            # A value does not run over the end of a sentence.
            first = "(?=[+\N{MINUS SIGN}±0-9])" if part in _NUMBERS else ""
            parts.append(f"(?P<{part}>{first}(?:(?![.?!] [A-Z]).)+?)")
    return re.compile("".join(parts), re.DOTALL)
