"""Sidecars: small JSON files beside the recordings that outlive the database.

Three kinds, each with a schema number and the instant it was written:

``take``
    beside each recording: the take, its markers, and a copy of its passage and
    session.
``day``
    one in the folder of a practice day: its sessions with their blocks, the items
    these were spent on, every recording that was begun, its plan, and whether it was a
    rest day.
``journal``
    one in the journal's folder: passages, items, settings, clips put aside, promises
    with the numbers that were shared, assignments, coming dates, earlier hours,
    rehearsals, suggestions put aside, takes first heard without their measurements,
    what was heard of marked problems, bounds, blind trials, remarks of lessons,
    clips that were shared.

The database is the truth and the sidecars follow it; from the sidecars alone it can
be made again, except for the measurements, which are made again from the recordings.
Reading is tolerant (see :mod:`app.journal.codec`), writing is strict.
"""

import dataclasses
import json
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from app.journal.assignments import Assignment, EarlierHours, Occasion
from app.journal.blind_ear import BlindTrial
from app.journal.blocks import Attempt, Block, Item
from app.journal.bounds import PassageBounds
from app.journal.codec import JsonDict, Unreadable, decoded, encoded, readable
from app.journal.first_listen import FirstListen
from app.journal.plans import PracticePlan
from app.journal.promises import Promise, SharedNumber
from app.journal.records import JournalSettings, Marker, Passage, RestDay, Session, Take
from app.journal.rehearsals import Rehearsal
from app.journal.remarks import LessonRemark
from app.journal.sharing import SharedClip
from app.journal.still_there import StillThere
from app.journal.suggestions import Dismissal

SCHEMA = 4


@dataclass(frozen=True, slots=True)
class TakeCard:
    """What stands beside a recording."""

    written_at: datetime
    take: Take
    session: Session
    passage: Passage | None = None
    markers: tuple[Marker, ...] = ()


@dataclass(frozen=True, slots=True)
class DayCard:
    """What stands in the folder of a practice day."""

    written_at: datetime
    practice_day: date
    sessions: tuple[Session, ...] = ()
    rest: RestDay | None = None
    blocks: tuple[Block, ...] = ()
    items: tuple[Item, ...] = ()
    attempts: tuple[Attempt, ...] = ()
    plan: PracticePlan | None = None


@dataclass(frozen=True, slots=True)
class JournalCard:
    """What stands in the journal's own folder."""

    written_at: datetime
    passages: tuple[Passage, ...] = ()
    settings: JournalSettings = dataclasses.field(default_factory=JournalSettings)
    items: tuple[Item, ...] = ()
    put_aside: tuple[str, ...] = ()
    promises: tuple[Promise, ...] = ()
    shared_numbers: tuple[SharedNumber, ...] = ()
    assignments: tuple[Assignment, ...] = ()
    occasions: tuple[Occasion, ...] = ()
    earlier_hours: EarlierHours | None = None
    rehearsals: tuple[Rehearsal, ...] = ()
    dismissals: tuple[Dismissal, ...] = ()
    first_listens: tuple[FirstListen, ...] = ()
    still_there: tuple[StillThere, ...] = ()
    bounds: tuple[PassageBounds, ...] = ()
    blind_trials: tuple[BlindTrial, ...] = ()
    remarks: tuple[LessonRemark, ...] = ()
    shared_clips: tuple[SharedClip, ...] = ()


Card = TakeCard | DayCard | JournalCard

_KINDS: dict[str, type[TakeCard] | type[DayCard] | type[JournalCard]] = {
    "take": TakeCard,
    "day": DayCard,
    "journal": JournalCard,
}

_LISTS: dict[str, type[Any]] = {
    "markers": Marker,
    "sessions": Session,
    "passages": Passage,
    "blocks": Block,
    "items": Item,
    "attempts": Attempt,
    "promises": Promise,
    "shared_numbers": SharedNumber,
    "assignments": Assignment,
    "occasions": Occasion,
    "rehearsals": Rehearsal,
    "dismissals": Dismissal,
    "first_listens": FirstListen,
    "still_there": StillThere,
    "bounds": PassageBounds,
    "blind_trials": BlindTrial,
    "remarks": LessonRemark,
    "shared_clips": SharedClip,
}


def card_text(card: Card) -> str:
    """Write a card as JSON text.

    Raises
    ------
    ValueError
        Where a record holds what it does not promise.
    """
    kind = next(name for name, known in _KINDS.items() if isinstance(card, known))
    data: JsonDict = {"schema": SCHEMA, "kind": kind} | encoded(card)
    return json.dumps(data, ensure_ascii=False, allow_nan=False, indent=1) + "\n"


def read_card(text: str) -> Card:
    """Read a card of this schema, an older or a newer one.

    A single record of a list that cannot be read is left out rather than the whole card.

    Raises
    ------
    Unreadable
        Where the text is no card, or the card's own take or day cannot be read.
    """
    data = _object(text)
    kind = _KINDS.get(str(data.get("kind")))
    if kind is None:
        msg = f"unknown kind of sidecar: {data.get('kind')!r}"
        raise Unreadable(msg)
    cleaned = dict(data)
    for key, record in _LISTS.items():
        if key in cleaned:
            cleaned[key] = [encoded(item) for item in readable(record, cleaned[key])]
    return decoded(kind, cleaned)


def schema_of(text: str) -> int:
    """Give the schema number of a card; 0 where there is none."""
    schema = _object(text).get("schema")
    return schema if isinstance(schema, int) and not isinstance(schema, bool) else 0


def _object(text: str) -> JsonDict:
    try:
        data: Any = json.loads(text)
    except (ValueError, RecursionError) as error:
        msg = f"not JSON: {error}"
        raise Unreadable(msg) from error
    if not isinstance(data, dict):
        msg = "not a JSON object"
        raise Unreadable(msg)
    return data
