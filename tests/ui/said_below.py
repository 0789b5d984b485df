"""Gather the sentences that the rooms below the window can say, from their source.

These rooms make English sentences with their values filled in: f-strings and literals. Here
each becomes a template with named fields, which the catalogue translates and
:mod:`app.ui.spoken` recognises. What a template cannot be read from (single words, sentences
put together from parts) stands in ``said_by_hand.json``, with the reasons why some modules
and strings are left out.
"""

import ast
import json
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
ROOMS = ("app/services", "app/journal", "app/store", "audio", "analysis")
BY_HAND = Path(__file__).with_name("said_by_hand.json")

_BUGS = {
    "ValueError", "TypeError", "RuntimeError", "KeyError", "LookupError", "AssertionError",
    "NotImplementedError", "IndexError", "OSError", "UnpicklingError", "Unreadable",
    "UnreadableValue",
}  # fmt: skip
_INWARD = {
    "debug", "info", "warning", "exception", "error", "execute", "cast", "TypeVar", "text",
    "compile", "strftime", "encode", "startswith", "endswith", "getattr", "CheckConstraint",
}  # fmt: skip
_COUNTS = "counted"
_WHOLE_NUMBERS = {
    "number", "take_number", "weight", "hours", "years", "octaves", "rest_taken", "rest_left",
    "count", "of_count",
}  # fmt: skip
_UNITS = ("_bpm", "_cents", "_hz", "_db", "_lufs", "_percent", "_ms", "_minutes", "_octaves")
_NUMBER_CALLS = {
    "_size",
    "number_text",
    "position_text",
    "length_text",
    "counted",
    "size_text",
    "len",
}
_NUMBERS = {
    "n", "day", "days", "minutes", "hours", "year", "value", "rest", "low", "high", "number",
    "octaves",
}  # fmt: skip
"""Fields that begin with a number in sentences kept by hand."""

_FIELD = re.compile(r"\{[^}]*\}")
_CODE = re.compile(r"_|[<>=]=|[<>|]|^[\w.{}/-]*$|^PRAGMA|^SELECT|^UPDATE|^BEGIN|%s|@|//|;base64")


@dataclass(frozen=True, slots=True)
class Said:
    """A template and those of its fields that begin with a number."""

    template: str
    numbers: frozenset[str] = field(default=frozenset())


def by_hand() -> dict[str, dict[str, str] | list[str]]:
    """Return what is kept by hand: sentences, words, and what is left out."""
    found: dict[str, dict[str, str] | list[str]] = json.loads(BY_HAND.read_text("utf-8"))
    return found


def gathered() -> dict[str, str]:
    """Give every template of the rooms, with its number fields in one string."""
    kept = by_hand()
    left_out = set(kept["not_shown"])
    found: dict[str, set[str]] = {}
    for path in sorted((ROOT / "app" / "ui").rglob("*.py")):
        for said in counts_of(path.read_text("utf-8")):
            found.setdefault(said.template, set()).update(said.numbers)
    for room in ROOMS:
        for path in sorted((ROOT / room).rglob("*.py")):
            name = path.relative_to(ROOT).as_posix()
            if any(name.startswith(module) for module in kept["modules_not_shown"]):
                continue
            for said in sentences_of(path.read_text("utf-8")):
                if said.template not in left_out:
                    found.setdefault(said.template, set()).update(said.numbers)
    return {template: " ".join(sorted(found[template])) for template in sorted(found)}


def everything() -> dict[str, object]:
    """Give what ``said.json`` holds."""
    kept = by_hand()
    own = {
        template: " ".join(sorted(_NUMBERS & set(re.findall(r"\{(\w+)\}", template))))
        for template in kept["sentences"]
    }
    sentences = gathered() | own
    # An exclamation mark: the player's own words do not look like this.
    sentences |= {template: f"{sentences[template]} !".strip() for template in kept["sure"]}
    return {
        "sentences": dict(sorted(sentences.items())),
        "words": sorted(kept["words"]),
        "dative": sorted(kept["dative"]),
    }


def sentences_of(source: str) -> Iterator[Said]:
    """Give the templates of one module."""
    tree = ast.parse(source)
    inward = set(_inward(tree))
    for node in ast.walk(tree):
        if id(node) in inward:
            continue
        if isinstance(node, ast.JoinedStr):
            yield from _of_f_string(node)
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            if _is_sentence(node.value):
                yield Said(node.value.strip())
        elif isinstance(node, ast.Call) and _called(node) == _COUNTS:
            yield from _of_count(node)


def counts_of(source: str) -> Iterator[Said]:
    """Give the counted nouns of a module of the window; its other words are marked there."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Call) and _called(node) == _COUNTS:
            yield from _of_count(node)


def _is_sentence(text: str) -> bool:
    own = _FIELD.sub("0", text).strip()
    words = re.findall(r"[A-Za-z][a-z']+", own)
    return bool(words) and " " in own and not _CODE.search(own)


def _of_f_string(node: ast.JoinedStr) -> Iterator[Said]:
    named: dict[str, str] = {}
    numbers = set()
    text = ""
    for part in node.values:
        if isinstance(part, ast.Constant):
            text += str(part.value)
            continue
        assert isinstance(part, ast.FormattedValue)
        source = ast.dump(part.value)
        base = name = _name(part.value)
        count = 1
        while named.setdefault(name, source) != source:
            count += 1
            name = f"{base}{count}"
        if _is_number(part):
            numbers.add(name)
        text += f"{{{name}}}"
    if _is_sentence(text):
        yield Said(text.strip(), frozenset(numbers))


def _of_count(node: ast.Call) -> Iterator[Said]:
    words = [arg.value for arg in node.args[1:] if isinstance(arg, ast.Constant)]
    if words:
        yield Said(f"1 {words[0]}")
        yield Said(f"{{n}} {words[1] if len(words) > 1 else words[0] + 's'}", frozenset({"n"}))


def _is_number(part: ast.FormattedValue) -> bool:
    if part.format_spec is not None and re.search(r"[fgd]'", ast.unparse(part.format_spec)):
        return True
    if isinstance(part.value, ast.Call):
        return _called(part.value) in _NUMBER_CALLS
    name = _name(part.value)
    return name in _WHOLE_NUMBERS or name.endswith(_UNITS)


def _called(call: ast.Call) -> str:
    return call.func.id if isinstance(call.func, ast.Name) else getattr(call.func, "attr", "")


def _name(value: ast.expr) -> str:  # noqa: PLR0911 - one line a kind of expression
    """Name a field after what it is made from."""
    if isinstance(value, ast.Name):
        return value.id.strip("_").lower()
    if isinstance(value, ast.Attribute):
        plain = value.attr in ("name", "text", "value", "title")
        return _name(value.value) if plain else value.attr.strip("_").lower()
    if isinstance(value, ast.Call):
        if value.args and not isinstance(value.args[0], ast.Constant):
            return _name(value.args[0])
        inner = isinstance(value.func, ast.Attribute)
        return _name(value.func.value) if inner else _called(value).strip("_")
    if isinstance(value, ast.Subscript):
        return _name(value.value)
    if isinstance(value, ast.BinOp):
        return _name(value.left)
    if isinstance(value, ast.IfExp):
        return _name(value.orelse if isinstance(value.body, ast.Constant) else value.body)
    if isinstance(value, ast.GeneratorExp | ast.ListComp):
        return _name(value.generators[0].iter)
    return "value"


def _inward(tree: ast.AST) -> Iterator[int]:
    """Give the ids of all nodes that no player sees."""
    for node in ast.walk(tree):
        for hidden in _hidden_parts(node):
            yield from (id(inner) for inner in ast.walk(hidden))


def _hidden_parts(node: ast.AST) -> Iterator[ast.AST]:
    match node:
        case ast.Expr(value=ast.Constant()):
            yield node.value
        case ast.Raise(exc=ast.Call() as call) if _called(call) in _BUGS:
            yield call
        case ast.Call() if _called(node) in _INWARD:
            yield from node.args
        case ast.arg(annotation=ast.AST() as found) | ast.AnnAssign(annotation=found):
            yield found
        case ast.FunctionDef(returns=ast.AST() as found):
            yield found
        case ast.Assign(targets=[ast.Name(id="__all__" | "__slots__")]):
            yield node.value
        case ast.Subscript():
            yield node.slice
        case ast.JoinedStr():
            for part in node.values:
                if isinstance(part, ast.Constant):
                    yield part
                elif isinstance(part, ast.FormattedValue) and part.format_spec is not None:
                    yield part.format_spec
        case _:
            return
