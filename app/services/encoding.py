"""What is kept of an analysis: every result type to bytes and back.

A kept block is a zip-free, self-describing thing: lines of JSON, a tree in which every
dataclass carries its name, and how something was measured is written once for all the
notes that share it, followed by the arrays the tree refers to, the whole
compressed. Arrays with more than :data:`EXACT_SIZE` elements are kept in single
precision (about 0.0001 cents at any pitch), evenly spaced ones as start, step and
count; short ones stay exact. A block that names a type or a field this version
does not know is refused with :class:`UnreadableMeasurement`; the take is then
measured again from its sound, which is never touched.
"""

import dataclasses
import functools
import json
import struct
import zlib
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum
from typing import Any

import numpy as np
from numpy.typing import NDArray

from analysis import results
from analysis.results import Provenance, TakeAnalysis

FORMAT = 1
EXACT_SIZE = 2000
_EVENNESS_S = 1e-7
_MAGIC = b"PWM"
_SAME = "same"
_LINES = "lines"
# Reading one line of JSON stops every other thread, the window's too: longer lists have a
# line for each of their items.
_MOST_IN_A_LINE = 64
_HEADER = struct.Struct("<3sBI")


class UnreadableMeasurement(ValueError):  # noqa: N818 - a state of stored data, told as "stale"
    """A kept block is damaged or was written by another version."""


@dataclass(slots=True)
class _Written:
    """What a tree refers to, while it is made."""

    arrays: list[NDArray[Any]] = field(default_factory=list)
    shared: dict[str, int] = field(default_factory=dict)
    lines: list[str] = field(default_factory=list)


class _Reading:
    """Makes results of lines of JSON, each object as soon as it is read.

    The inner ones come first and in the order of the text, so what a later one refers
    to is there.

    Parameters
    ----------
    body : memoryview
        The bytes of all arrays.
    lines : list of str
        The lines that the first one refers to.
    """

    def __init__(self, body: memoryview, lines: list[str]) -> None:
        self._body = body
        self._lines = lines
        self._shared: list[object] = []
        self._types: dict[str, type] = _result_types()
        self._enums = _enum_types()
        self.result_of = json.JSONDecoder(object_hook=self._made).decode

    def _made(self, tree: dict[str, Any]) -> object:
        kind = tree.get("=")
        if kind is None:
            return tree  # the parts of one that is still to come
        if kind in self._types:
            return self._of_type(kind, tree["f"])
        if kind == _SAME:
            return self._shared[tree["at"]]
        if kind in self._enums:
            return self._enums[kind](tree["v"])
        return self._unnamed(kind, tree)

    def _of_type(self, kind: str, parts: dict[str, Any]) -> object:
        for name, part in parts.items():
            if type(part) is list:
                parts[name] = _as_tuple(part)
        made: object = self._types[kind](**parts)
        if kind == Provenance.__name__:
            self._shared.append(made)
        return made

    def _unnamed(self, kind: str, tree: dict[str, Any]) -> object:
        if kind == _LINES:
            lines = self._lines[tree["at"] : tree["at"] + tree["n"]]
            return tuple(_as_tuple(self.result_of(line)) for line in lines)
        if kind == "{}":
            return {key: _as_tuple(item) for key, item in tree["m"].items()}
        if kind == "even":
            return tree["start"] + tree["step"] * np.arange(int(tree["n"]), dtype=np.float64)
        if kind == "array":
            return _array_from_tree(tree, self._body)
        raise LookupError(kind)


def _as_tuple(item: object) -> object:
    return tuple(map(_as_tuple, item)) if type(item) is list else item


def _line(tree: object) -> str:
    return json.dumps(tree, separators=(",", ":"), allow_nan=True)


@functools.cache
def _result_types() -> dict[str, type]:
    found = vars(results).values()
    return {t.__name__: t for t in found if isinstance(t, type) and dataclasses.is_dataclass(t)}


@functools.cache
def _enum_types() -> dict[str, type[Enum]]:
    found = vars(results).values()
    return {t.__name__: t for t in found if isinstance(t, type) and issubclass(t, Enum)}


def encode(analysis: TakeAnalysis) -> bytes:
    """Turn an analysis into a compact block of bytes.

    Parameters
    ----------
    analysis : TakeAnalysis
        As :func:`analysis.take.analyse_take` returns it.

    Returns
    -------
    bytes
    """
    written = _Written()
    whole = _line(_to_tree(analysis, written))
    tree = "\n".join((whole, *written.lines)).encode()
    body = b"".join(_shuffled(array) for array in written.arrays)
    return _HEADER.pack(_MAGIC, FORMAT, len(tree)) + zlib.compress(tree + body, 6)


def decode(block: bytes) -> TakeAnalysis:
    """Turn a kept block back into the analysis.

    Raises
    ------
    UnreadableMeasurement
        Where the block is damaged or of another version.
    """
    try:
        magic, version, tree_size = _HEADER.unpack_from(block)
        if (magic, version) != (_MAGIC, FORMAT):
            raise UnreadableMeasurement("kept by another version")
        raw = zlib.decompress(block[_HEADER.size :])
        whole, *lines = raw[:tree_size].decode().split("\n")
        found = _Reading(memoryview(raw)[tree_size:], lines).result_of(whole)
    except (
        struct.error,
        zlib.error,
        ValueError,
        LookupError,
        TypeError,
        AttributeError,
    ) as problem:
        raise UnreadableMeasurement(str(problem)) from problem
    if not isinstance(found, TakeAnalysis):
        raise UnreadableMeasurement("not the analysis of a take")
    return found


def _to_tree(  # noqa: PLR0911 - one way out per kind
    value: object, written: _Written
) -> object:
    if isinstance(value, np.ndarray):
        return _array_to_tree(value, written.arrays)
    if isinstance(value, Enum):
        return {"=": type(value).__name__, "v": value.value}
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        fields = dataclasses.fields(value)
        parts = {f.name: _to_tree(getattr(value, f.name), written) for f in fields}
        if isinstance(value, Provenance):
            # The same for thousands of notes: later ones refer to the first.
            known = json.dumps(parts)
            if known in written.shared:
                return {"=": _SAME, "at": written.shared[known]}
            written.shared[known] = len(written.shared)
        return {"=": type(value).__name__, "f": parts}
    if isinstance(value, tuple):
        items = [_to_tree(item, written) for item in value]
        if len(items) <= _MOST_IN_A_LINE:
            return items
        written.lines.extend(map(_line, items))
        return {"=": _LINES, "at": len(written.lines) - len(items), "n": len(items)}
    if isinstance(value, Mapping):
        entries = value.items()
        return {"=": "{}", "m": {key: _to_tree(item, written) for key, item in entries}}
    if isinstance(value, np.generic):
        return value.item()
    if value is None or isinstance(value, str | int | float | bool):
        return value
    raise TypeError(f"results hold no {type(value).__name__}")


def _array_to_tree(array: NDArray[Any], arrays: list[NDArray[Any]]) -> dict[str, object]:
    values = np.asarray(array, dtype=np.float64)
    if values.ndim != 1:
        raise TypeError("results hold only plain curves")
    if values.size > EXACT_SIZE:
        step = (values[-1] - values[0]) / (values.size - 1)
        even = values[0] + step * np.arange(values.size)
        if np.all(np.abs(values - even) < _EVENNESS_S):
            return {"=": "even", "start": float(values[0]), "step": float(step), "n": values.size}
    kept = values.astype("<f4" if values.size > EXACT_SIZE else "<f8")
    at = sum(other.nbytes for other in arrays)
    arrays.append(kept)
    return {"=": "array", "at": at, "n": kept.size, "bytes": kept.itemsize}


def _shuffled(array: NDArray[Any]) -> bytes:
    """Put the first bytes of all numbers first, then the second ones: smooth curves shrink."""
    return array.view(np.uint8).reshape(-1, array.itemsize).T.tobytes()


def _array_from_tree(tree: dict[str, int], body: memoryview) -> NDArray[np.float64]:
    size, item = tree["n"], tree["bytes"]
    raw = body[tree["at"] : tree["at"] + size * item]
    if len(raw) != size * item:
        raise UnreadableMeasurement("cut short")
    plain = np.frombuffer(raw, np.uint8).reshape(item, size).T
    return np.ascontiguousarray(plain).view(f"<f{item}").reshape(size).astype(np.float64)
