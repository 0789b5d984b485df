"""Score files before they are read as music: what they are, and what is refused.

A score comes from anywhere. So nothing in a file is trusted: archives are unpacked in
memory and only so far, a document that declares entities is refused, and numbers that no
printed music has are taken for damage before they can become hours of work.
"""

import io
import re
import zipfile
from pathlib import Path
from typing import Final
from xml.etree import ElementTree as ET  # entities are refused before anything is parsed

from app.journal.failures import PlainFailure

SUFFIXES: Final = (".musicxml", ".mxl", ".xml", ".mid", ".midi")

_MOST_BYTES: Final = 16 << 20
_MOST_UNPACKED: Final = 64 << 20
_MOST_NOTES: Final = 100_000
_MOST_QUARTERS: Final = 20_000
_DEEPEST: Final = 40
_DECLARED: Final = re.compile(rb"""<\?xml[^>]*encoding\s*=\s*["']([A-Za-z0-9._-]{1,40})["']""")
_ROOT_FILE: Final = "META-INF/container.xml"
_LONGEST_NAME: Final = 80

# Most that a printed number can be; beyond, the file is damaged.
_BOUNDS: Final = {
    "divisions": (1, 100_000),
    "beats": (1, 64),
    "beat-type": (1, 128),
    "octave": (-1, 10),
    "alter": (-4, 4),
    "fifths": (-14, 14),
    "chromatic": (-48, 48),
    "octave-change": (-5, 5),
    "clef-octave-change": (-5, 5),
    "staves": (1, 20),
    "actual-notes": (1, 256),
    "normal-notes": (1, 256),
    "multiple-rest": (1, 2_000),
    "measure-repeat": (1, 64),
    "slash": (1, 64),
    "times": (1, 16),
}


def read_bytes(path: Path) -> bytes:
    """Read a score file.

    Raises
    ------
    PlainFailure
        Where it is not there, cannot be read or is too large for a score.
    """
    try:
        with path.open("rb") as file:
            data = file.read(_MOST_BYTES + 1)
    except FileNotFoundError as problem:
        raise PlainFailure(f"{path.name} is not there.", "Check the name.") from problem
    except OSError as problem:
        raise PlainFailure(
            f"{path.name} could not be read.", "Check that it is a file you may open."
        ) from problem
    if len(data) > _MOST_BYTES:
        raise PlainFailure(f"{path.name} is too large for a score.", _NEXT)
    if not data:
        raise PlainFailure(f"{path.name} is empty.", _NEXT)
    return data


def is_midi(data: bytes) -> bool:
    """Say whether these are the bytes of a MIDI file."""
    return data[:4] == b"MThd"


def partwise_root(data: bytes, name: str) -> ET.Element:
    """Give the checked document of a MusicXML file, compressed or not.

    Parameters
    ----------
    data : bytes
        Of a ``.musicxml``, ``.xml`` or ``.mxl`` file.
    name : str
        What to call the file.

    Returns
    -------
    Element
        ``score-partwise``; a score written bar by bar is turned round.

    Raises
    ------
    PlainFailure
        Where it is no MusicXML, is damaged, or declares entities.
    """
    if data[:2] == b"PK":
        data = _unpacked(data, name)
    root = _parsed(data, name)
    if root.tag == "score-timewise":
        root = _turned_round(root)
    if root.tag != "score-partwise":
        raise not_a_score(name)
    _check(root, name)
    return root


def not_a_score(name: str) -> PlainFailure:
    """Say that a file is none of the kinds that are read."""
    return PlainFailure(f"{shortened(name)} is no score that can be read.", _NEXT)


def damaged(name: str, what: str = "") -> PlainFailure:
    """Say that a file is damaged."""
    why = f": {what}" if what else ""
    return PlainFailure(
        f"{shortened(name)} is damaged{why}.", "Write it out again, or take another file."
    )


def shortened(name: str) -> str:
    """Give a file's name, cut where it is long."""
    return name if len(name) <= _LONGEST_NAME else name[: _LONGEST_NAME - 1] + "…"


_NEXT: Final = "Take a MusicXML file (.musicxml, .mxl, .xml) or a MIDI file (.mid)."


def _unpacked(data: bytes, name: str) -> bytes:
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            inside = {info.filename: info for info in archive.infolist()}
            chosen = _root_file(archive, inside)
            if chosen is None or chosen.flag_bits & 1:
                raise not_a_score(name)
            return _member(archive, chosen, name)
    except (zipfile.BadZipFile, OSError, ValueError, EOFError, NotImplementedError,
            RuntimeError, zipfile.zlib.error) as problem:  # type: ignore[attr-defined]  # fmt: skip
        raise damaged(name) from problem


def _root_file(
    archive: zipfile.ZipFile, inside: dict[str, zipfile.ZipInfo]
) -> zipfile.ZipInfo | None:
    if _ROOT_FILE in inside:
        with archive.open(inside[_ROOT_FILE]) as file:
            found = re.search(rb"""full-path\s*=\s*["']([^"']{1,300})["']""", file.read(1 << 16))
        if found is not None:
            return inside.get(found.group(1).decode("utf-8", "replace"))
    scores = [
        name
        for name in sorted(inside)
        if name.lower().endswith((".xml", ".musicxml")) and not name.startswith("META-INF")
    ]
    return inside[scores[0]] if scores else None


def _member(archive: zipfile.ZipFile, info: zipfile.ZipInfo, name: str) -> bytes:
    with archive.open(info) as file:
        data = file.read(_MOST_UNPACKED + 1)
    if len(data) > _MOST_UNPACKED:
        raise PlainFailure(f"{shortened(name)} unpacks to more than a score can be.", _NEXT)
    return data


def _parsed(data: bytes, name: str) -> ET.Element:
    text = _text(data, name)
    if "<!ENTITY" in text:
        raise PlainFailure(
            f"{shortened(name)} declares entities, which no score needs.",
            "It was not read. Write it out again from your notation program.",
        )
    if not text.lstrip("\ufeff \t\r\n").startswith("<"):
        raise not_a_score(name)
    try:
        return ET.fromstring(text)  # noqa: S314 - without entities nothing can grow
    except (ET.ParseError, ValueError, RecursionError) as problem:
        raise damaged(name, "it is cut short or not well formed") from problem


def _text(data: bytes, name: str) -> str:
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        encoding = "utf-16"
    else:
        declared = _DECLARED.search(data[:200])
        encoding = declared.group(1).decode("ascii") if declared else "utf-8"
    try:
        text = data.decode(encoding)
    except (LookupError, ValueError, TypeError) as problem:
        raise not_a_score(name) from problem
    if not isinstance(text, str):
        raise not_a_score(name)
    # The text is decoded now; what the declaration says would only confuse.
    return re.sub(r"^\s*<\?xml[^>]*\?>", "", text.lstrip("\ufeff"), count=1)


def _turned_round(root: ET.Element) -> ET.Element:
    """Turn a score of measures that hold parts into one of parts that hold measures."""
    turned = ET.Element("score-partwise", root.attrib)
    parts: dict[str, ET.Element] = {}
    for element in root:
        if element.tag != "measure":
            turned.append(element)
            continue
        for part in element.findall("part"):
            key = part.get("id", "")
            if key not in parts:
                parts[key] = ET.Element("part", {"id": key})
            measure = ET.SubElement(parts[key], "measure", element.attrib)
            measure.extend(list(part))
    turned.extend(parts.values())
    return turned


def _check(root: ET.Element, name: str) -> None:
    notes, stack = 0, [(root, 1)]
    while stack:
        element, depth = stack.pop()
        if depth > _DEEPEST:
            raise damaged(name)
        notes += element.tag == "note"
        if notes > _MOST_NOTES:
            raise PlainFailure(
                f"{shortened(name)} has more than {_MOST_NOTES} notes.", "Take the part alone."
            )
        _check_number(element, name)
        stack.extend((child, depth + 1) for child in element)
    for part in root.findall("part"):
        _check_length(part, name)


def _check_number(element: ET.Element, name: str) -> None:
    values = [element.text] if element.tag in _BOUNDS else []
    bounds = _BOUNDS.get(element.tag, _BOUNDS["times"])
    if element.tag == "repeat" and element.get("times") is not None:
        values.append(element.get("times"))
    for value in values:
        try:
            # '3+2' beats is a printed time signature.
            numbers = [float(part) for part in (value or "").split("+")]
        except ValueError as problem:
            raise damaged(name, f"'{(value or '')[:20]}' is no {element.tag}") from problem
        if not all(bounds[0] <= number <= bounds[1] for number in numbers):
            raise damaged(name, f"{(value or '')[:20]} is no {element.tag}")


def _check_length(part: ET.Element, name: str) -> None:
    """Add up the durations, which could claim years."""
    divisions, total = 1.0, 0.0
    for measure in part.findall("measure"):
        for element in measure:
            if element.tag == "attributes":
                divisions = float(element.findtext("divisions") or divisions)
            duration = element.findtext("duration")
            if duration is None:
                continue
            try:
                quarters = float(duration) / divisions
            except ValueError as problem:
                raise damaged(name, f"'{duration[:20]}' is no duration") from problem
            if not 0 <= quarters <= 1_000:
                raise damaged(name, f"{duration[:20]} is no duration")
            total += quarters
    if total > 20 * _MOST_QUARTERS:
        raise damaged(name, "it is longer than any piece")
