"""Bundles: some days of a journal in one file, and the reply that comes back.

A bundle is a zip file. Inside lie the recordings and sidecars of its days, in the
folders they have in a journal, scores, and ``bundle.json`` with what it is. Nothing
else is taken out of one, whatever it holds.

A reply is one JSON file: the teacher's markers, remarks and what was set.
"""

import json
import re
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any, TypeVar

from app.journal.assignments import Assignment
from app.journal.codec import Unreadable, decoded, encoded, readable
from app.journal.failures import PlainFailure
from app.journal.records import Marker
from app.journal.remarks import LessonRemark

R = TypeVar("R")

SCHEMA = 1

_DAY_FILE = re.compile(r"\d{4}/\d{4}-\d{2}-\d{2}/[^/\\:]+")
_SCORE = re.compile(r"scores/[^/\\:]+")
_CARD = "journal.json"
_ID = re.compile(r"[0-9a-f]{32}")


@dataclass(frozen=True, slots=True)
class BundleManifest:
    """What a bundle is.

    Attributes
    ----------
    id : str
        Names it, so that a reply finds back.
    first_day, last_day : date
        The days it holds, both included.
    takes : int
        How many recordings are in it.
    with_video : bool
        Filmed takes have their picture; else their sound alone.
    whole_record : bool
        It also holds promises, plans and settings, for a second computer.
    """

    id: str
    made_at: datetime
    first_day: date
    last_day: date
    takes: int
    with_video: bool = False
    whole_record: bool = False


@dataclass(frozen=True, slots=True)
class Reply:
    """What a teacher sends back about a bundle."""

    bundle_id: str
    made_at: datetime
    markers: tuple[Marker, ...] = ()
    remarks: tuple[LessonRemark, ...] = ()
    assignments: tuple[Assignment, ...] = ()


def belongs_into_a_journal(name: str) -> bool:
    """Tell whether a file of a bundle may be taken out of it, by its name alone.

    Only what a journal has: files of practice days, scores, the journal's card. No
    hidden files, and no name that leads anywhere else.
    """
    if name == _CARD:
        return True
    if _DAY_FILE.fullmatch(name) is None and _SCORE.fullmatch(name) is None:
        return False
    last = name.rpartition("/")[2]
    return not last.startswith(".") and last == last.strip(" .") and last.isprintable()


def manifest_text(manifest: BundleManifest) -> str:
    """Write a manifest as JSON."""
    return _text("bundle", manifest)


def read_manifest(text: str | bytes) -> BundleManifest:
    """Read a manifest.

    Raises
    ------
    PlainFailure
        Where it is none, or a newer version wrote it.
    """
    manifest = _read("bundle", BundleManifest, text, {})
    if _ID.fullmatch(manifest.id) is None:  # it names a folder
        raise _damaged("bundle")
    return manifest


def reply_text(reply: Reply) -> str:
    """Write a reply as JSON."""
    return _text("reply", reply)


def read_reply(text: str | bytes) -> Reply:
    """Read a reply; single records of it that cannot be read are left out.

    Raises
    ------
    PlainFailure
        Where it is none, or a newer version wrote it.
    """
    lists = {"markers": Marker, "remarks": LessonRemark, "assignments": Assignment}
    return _read("reply", Reply, text, lists)


def _text(kind: str, record: object) -> str:
    data = {"schema": SCHEMA, "kind": kind} | encoded(record)
    return json.dumps(data, ensure_ascii=False, allow_nan=False, indent=1) + "\n"


def _read(kind: str, record: type[R], text: str | bytes, lists: dict[str, type[Any]]) -> R:
    try:
        data = json.loads(text)
        if not isinstance(data, dict) or data.get("kind") != kind:
            raise Unreadable(kind)
        if isinstance(data.get("schema"), int) and data["schema"] > SCHEMA:
            raise PlainFailure(
                f"This {kind} was made by a newer version of the program.",
                "Install the newest version.",
            )
        for key, one in lists.items():
            if key in data:
                data[key] = [encoded(found) for found in readable(one, data[key])]
        return decoded(record, data)
    except (ValueError, RecursionError) as error:
        raise _damaged(kind) from error


def _damaged(kind: str) -> PlainFailure:
    return PlainFailure(
        f"This file is no {kind} of Passagework, or it is damaged.", "Ask for it once more."
    )
