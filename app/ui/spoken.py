"""Sentences and words from below the window, in the window's language.

The rooms below know no Qt: they make English sentences with their numbers filled in, which
the command line prints as they are. The templates of all these sentences are gathered from
the rooms' source (``tests/ui/gather_words.py``) into ``translations/said.json``. Here a
sentence is recognised by its template; the translation is filled with the same values, those
values that are sentences of the program are translated in their turn, and their decimals get
the decimal sign of the language.

What a player wrote stays as it is: in fields that hold a player's words, and where nothing
but a few letters would say that a text is the program's. A single word is translated where
its place says that it is the program's (:func:`word`), or inside a template, so that a
passage called "Tempo" keeps its name.
"""

import json
import re
from collections.abc import Mapping
from functools import cache, lru_cache
from importlib.resources import files
from typing import Final, NamedTuple

from PySide6.QtCore import QCoreApplication

from app.ui.numbers import local_numbers

SAID = "said"
"""What these sentences are filed under in the catalogue."""

DATIVE = f"{SAID} dative"
"""Other forms of them: a field written ``{days:dative}`` in a translation asks for one."""

_FIELD = re.compile(r"\{(\w+)(?::(\w+))?\}")
_OWN = frozenset({
    "name", "text", "title", "titles", "passage", "passage_name", "path", "folder", "journal",
    "file", "source", "target", "stem", "others", "other", "promise", "made", "after", "current",
    "row", "kept", "one", "chosen", "nearest", "what", "aim", "device", "device2", "error",
    "strerror", "table", "known", "gone", "bundle", "backups", "database", "parent", "relative",
    "retake_reason", "after_failure", "recent", "item", "piece", "why_typed",
})  # fmt: skip
"""Fields that hold what a player typed, or names of files and devices."""

_DEEPEST: Final = 6
_REMEMBERED: Final = 8192
_WHOLE_NUMBERS: Final = frozenset({"n", "day", "year"})
_SINGLE: Final = frozenset({"kind", "size", "finding"})
_SURE: Final = "!"
_SURE_LETTERS: Final = 6
_SENTENCE_END = re.compile(r"(?<=[.?!]) (?=[A-Z'(0-9+\N{MINUS SIGN}±])")
_BARE_NUMBER = re.compile(r"[-+\N{MINUS SIGN}±]? ?\d[\d.,:]*(?: ± [\d.]+)?(?: ?%)?")
_SEPARATORS = ("\n", "   ", "  ", "; ", " \N{MIDDLE DOT} ", ": ", ", ", " (", " and ", " or ")


class _Pattern(NamedTuple):
    literal: str
    pattern: re.Pattern[str]
    template: str
    is_sure: bool
    is_long: bool


@cache
def _table() -> Mapping[str, object]:
    text = (files("app.ui") / "translations" / "said.json").read_text("utf-8")
    table: dict[str, object] = json.loads(text)
    return table


def _sentences() -> dict[str, str]:
    return dict(_table()["sentences"])  # type: ignore[call-overload,no-any-return]


SENTENCES: tuple[str, ...] = tuple(_sentences())
"""Templates of sentences and parts of them; a field in braces stands for any text."""

WORDS: tuple[str, ...] = tuple(_table()["words"])  # type: ignore[arg-type]
"""Words of closed lists: states, kinds, verdicts, months."""

DATIVES: tuple[str, ...] = tuple(_table()["dative"])  # type: ignore[arg-type]
"""Those templates that have another form."""

_WORDS = frozenset(WORDS)
_LITERALS = frozenset(text for text in SENTENCES if "{" not in text) | _WORDS


def said(text: str) -> str:
    """Return a text from below the window in its language, or as it is."""
    if not text or not _is_translated():
        return text
    return _said(text, 0) or text


def word(text: str) -> str:
    """Return a word of a closed list in the window's language, or as it is."""
    if text in _WORDS and _is_translated():
        return QCoreApplication.translate(SAID, text)
    return said(text)


def said_in(field: str, value: object) -> object:
    """Return what is to be filled into a field of a text of the window.

    Parameters
    ----------
    field : str
        Its name tells whether it holds a player's words.
    value : object
        A text from below is translated, anything else returned as it is.
    """
    if not isinstance(value, str) or not value or not _is_translated():
        return value
    return _value(field, value, "", 0)


def forget() -> None:
    """Forget what was translated; the language has changed."""
    _is_translated.cache_clear()
    _said.cache_clear()


@cache
def _is_translated() -> bool:
    """Tell whether the window's catalogue knows these sentences."""
    return any(QCoreApplication.translate(SAID, text) != text for text in SENTENCES[:9])


@lru_cache(maxsize=_REMEMBERED)
def _said(text: str, depth: int, form: str = "") -> str | None:
    """Translate a text that is recognised; none where it is not."""
    core = text.strip()
    if not core or depth >= _DEEPEST:
        return None
    if core != text:
        found = _said(core, depth, form)
        return None if found is None else text.replace(core, found, 1)
    if _BARE_NUMBER.fullmatch(core):
        return local_numbers(core)
    if "\n" in core:
        # Each line is a sentence of its own; no template reaches into the next.
        found = _joined(core.split("\n"), "\n", depth)
        if found is not None:
            return found
    found = _whole(core, depth, form)
    if found is None and core[-1] in ".:":
        # Only the end of the sentence may keep it from being known.
        found = _whole(core[:-1], depth, form) if len(core) > 1 else None
        found = found and found + core[-1]
    return found or _in_parts(core, depth)


def _whole(text: str, depth: int, form: str = "", *, is_retry: bool = False) -> str | None:
    """Translate what is one template as a whole."""
    if text in _LITERALS and (depth or " " in text):
        return QCoreApplication.translate(SAID, text)
    # The pattern with most letters of its own says most about the sentence.
    for known in _patterns():
        if known.literal in text and (known.is_long or (not is_retry and (depth or known.is_sure))):
            match = known.pattern.fullmatch(text)
            if match:
                return _filled(known.template, match.groupdict(), depth, form)
    if text[0].isupper() and text[1:2].islower():
        # Parts of sentences may stand at the beginning of one.
        found = _whole(text[0].lower() + text[1:], depth, form, is_retry=True)
        return found and found[0].upper() + found[1:]
    return None


def _in_parts(text: str, depth: int) -> str | None:
    """Translate the sentences of a text, or its parts, where one of them is recognised."""
    parts = _SENTENCE_END.split(text)
    if len(parts) > 1:
        return _in_sentences(parts, depth)
    for separator in _SEPARATORS:
        parts = text.split(separator)
        if len(parts) > 1:
            found = _joined(parts, separator, depth)
            if found is not None:
                return found
    return None


def _in_sentences(parts: list[str], depth: int) -> str | None:
    """Translate sentence after sentence; several of them may be one template."""
    out: list[str] = []
    is_known = False
    while len(parts) > 0:
        taken, found = 1, _said(parts[0], depth)
        for end in range(len(parts), 1, -1):
            together = _whole(" ".join(parts[:end]), depth)
            if together is not None:
                taken, found = end, together
                break
        is_known |= found is not None and not _BARE_NUMBER.fullmatch(parts[0])
        out.append(parts[0] if found is None else found)
        parts = parts[taken:]
    return " ".join(out) if is_known else None


def _joined(parts: list[str], separator: str, depth: int) -> str | None:
    # Parts are as sure as the whole: a comma does not make a player's word the program's.
    tail = ""
    if separator == " (" and parts[-1].endswith(")"):
        parts, tail = [*parts[:-1], parts[-1][:-1]], ")"
    found = [_said(part, depth) for part in parts]
    if all(
        new is None or _BARE_NUMBER.fullmatch(old) for new, old in zip(found, parts, strict=True)
    ):
        return None
    # Beside a sentence of the program, its single words are known too.
    whole = (
        new if new is not None else _said(old, depth + 1) if old in _WORDS else old
        for new, old in zip(found, parts, strict=True)
    )
    between = separator
    if separator.strip().isalpha():
        between = f" {QCoreApplication.translate(SAID, separator.strip())} "
    return between.join(part or "" for part in whole) + tail


def _filled(template: str, values: Mapping[str, str], depth: int, form: str) -> str:
    context = f"{SAID} {form}" if form and template in DATIVES else SAID
    translated = QCoreApplication.translate(context, template)
    return _FIELD.sub(
        lambda field: _value(field[1], values.get(field[1], field[0]), field[2] or "", depth),
        translated,
    )


def _value(name: str, value: str, form: str, depth: int) -> str:
    if name in _OWN:
        is_ours = value in _LITERALS and " " in value
        return QCoreApplication.translate(SAID, value) if is_ours else value
    found = _said(value, depth + 1, form) if value else value
    return value if found is None else found


@cache
def _patterns() -> tuple[_Pattern, ...]:
    """Give what a sentence is recognised by, the one with most letters of its own first."""
    found = []
    for template, numbers in _sentences().items():
        literals = _FIELD.split(template)[::3]
        if len(literals) == 1:
            continue
        letters = sum(map(len, literals))
        guarded = frozenset(numbers.split())
        used = {name for name, _ in _FIELD.findall(template)} & guarded
        own = " ".join(literals)
        is_long = sum(map(str.isalpha, own)) >= _SURE_LETTERS and len(own.split()) > 1
        pattern = _Pattern(
            max(literals, key=len),
            _compiled(template, guarded),
            template,
            bool(used) or is_long or _SURE in guarded,
            is_long,
        )
        found.append((letters, pattern))
    found.sort(key=lambda row: -row[0])
    return tuple(pattern for _, pattern in found)


def _compiled(template: str, numbers: frozenset[str]) -> re.Pattern[str]:
    seen: set[str] = set()
    parts = []
    before = " "
    pieces = _FIELD.split(template)
    if not pieces[0] and pieces[3][:1].isalpha():
        before = ""
    for at, part in enumerate(pieces):
        if at % 3 == 0:
            parts.append(re.escape(part))
            before = part or before
        elif at % 3 == 2:
            continue
        elif part in seen:
            parts.append(f"(?P={part})")
        else:
            seen.add(part)
            first = "(?=[-+\N{MINUS SIGN}±0-9])" if part in numbers else ""
            if first and part in _WHOLE_NUMBERS:
                parts.append(f"(?P<{part}>[0-9][0-9.,]*)")
                before = ""
                continue
            # What follows without a space may be missing, as in "allowed{in each run}".
            least = "+" if first or before.endswith((" ", "'", "(")) else "*"
            # A value does not run over the end of a sentence, a word not over its part.
            ends = "[.?!] [A-Z0-9]|; " if part in _SINGLE else "[.?!] [A-Z0-9]"
            parts.append(f"(?P<{part}>{first}(?:(?!{ends}).){least}?)")
            before = ""
    return re.compile("".join(parts), re.DOTALL)
