"""Make a journal's database again from the sidecars beside the recordings.

Passages and items are taken from the journal's own sidecar, sessions with their blocks
from those of the days; the copies beside the takes fill in what is missing there, the
one written last first.
A sidecar that cannot be read is passed over and reported; a recording that was moved
together with its sidecar is found where it is now.
"""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from sqlalchemy import Connection, delete, select

from app.journal.codec import encoded
from app.journal.contents import Contents
from app.journal.failures import PlainFailure
from app.journal.markers import HEAVIEST, LIGHTEST
from app.journal.promises import Promise
from app.journal.promises import checked as checked_promise
from app.journal.records import Marker, Take
from app.journal.sidecar import SCHEMA, Card, DayCard, JournalCard, TakeCard, read_card, schema_of
from app.journal.stopping import Progress, ShouldStop, Stopped
from app.store.columns import json_text
from app.store.folders import SIDECAR_SUFFIX, Folders
from app.store.keeping_models import (
    ASSIGNMENT_TABLE,
    EARLIER_HOURS_TABLE,
    LESSON_REMARK_TABLE,
    OCCASION_TABLE,
    PLAN_TABLE,
    PROMISE_TABLE,
    REHEARSAL_TABLE,
    SHARED_CLIP_TABLE,
    SHARED_NUMBER_TABLE,
)
from app.store.listening_models import DISMISSAL_TABLE, FIRST_LISTEN_TABLE
from app.store.models import (
    ATTEMPT_TABLE,
    BLOCK_TABLE,
    ITEM_TABLE,
    MARKER_TABLE,
    PASSAGE_TABLE,
    PUT_ASIDE_TABLE,
    REST_DAY_TABLE,
    SESSION_TABLE,
    SETTING_TABLE,
    TAKE_TABLE,
)
from app.store.rebuild_following import write_followed
from app.store.upserting import upsert
from app.store.work import chunks, values_of

_TAKE = TAKE_TABLE.c
_MARKER = MARKER_TABLE.c
_PASSAGE = PASSAGE_TABLE.c
_REST = REST_DAY_TABLE.c
_ITEM = ITEM_TABLE.c
_BLOCK = BLOCK_TABLE.c
_ATTEMPT = ATTEMPT_TABLE.c
_PLAN = PLAN_TABLE.c


def read_sidecars(folders: Folders, progress: Progress, should_stop: ShouldStop) -> Contents:
    """Read all sidecars of a journal; changes nothing.

    Raises
    ------
    Stopped
        Where ``should_stop`` says so.
    """
    found = Contents()
    cards: list[Card] = []
    paths = [path for path in folders.day_files() if path.suffix.lower() == SIDECAR_SUFFIX]
    if folders.journal_card.exists():
        paths.append(folders.journal_card)
    for done, path in enumerate(paths):
        if should_stop():
            raise Stopped
        try:
            text = path.read_text(encoding="utf-8")
            card = read_card(text)
            found.newer |= schema_of(text) > SCHEMA
            cards.append(_placed(card, path, folders) if isinstance(card, TakeCard) else card)
        except (OSError, ValueError):  # what is no UTF-8 or no card is a ValueError
            found.unreadable.append(folders.relative(path))
        progress((done + 1) / len(paths))
    gather(cards, found)
    return found


def gather(cards: Iterable[Card], found: Contents) -> None:
    """Add what cards say, each record once."""
    for card in sorted(cards, key=_weight):
        _gather(card, found)


def _weight(card: Card) -> tuple[int, datetime]:
    """Order cards so that the one that knows best comes last.

    The journal's and the days' own cards are written with every change, the copies
    beside the takes are not. The clock decides only between equals: it may have been
    set back.
    """
    rank = {TakeCard: 0, DayCard: 1, JournalCard: 2}[type(card)]
    return rank, card.written_at


def _placed(card: TakeCard, path: Path, folders: Folders) -> TakeCard:
    """Give a take's card with the place at which its recording really lies."""
    take = card.take
    here = path.with_suffix(Path(take.file).suffix)
    if not folders.absolute(take.file).exists() and here.exists():
        take = replace(take, file=folders.relative(here))
        folders.absolute(take.file)  # a name that this system knows and others do not
    markers = tuple(_acceptable(marker, take.id) for marker in card.markers)
    return replace(card, take=replace(take, number=max(1, take.number)), markers=markers)


def _acceptable(marker: Marker, take_id: str) -> Marker:
    weight = min(max(marker.weight, LIGHTEST), HEAVIEST)
    return replace(marker, take_id=take_id, weight=weight)


def _gather(card: Card, found: Contents) -> None:
    """Add what a card says; later cards overrule earlier ones."""
    match card:
        case TakeCard():
            found.takes[card.take.id] = replace(card.take, session_id=card.session.id)
            found.sessions[card.session.id] = card.session
            found.markers[card.take.id] = card.markers
            if card.passage is not None:
                found.passages[card.passage.id] = card.passage
        case DayCard():
            found.days[card.practice_day] = card
            found.sessions |= {session.id: session for session in card.sessions}
            found.items |= {item.id: item for item in card.items}
        case JournalCard():
            found.journal = card
            found.passages |= {passage.id: passage for passage in card.passages}
            found.items |= {item.id: item for item in card.items}


def write_found(connection: Connection, found: Contents) -> None:
    """Write what the sidecars say into a database, over what it says itself.

    The database may be empty or come from a backup; what the sidecars do not
    mention stays. One recording has one take: of two that claim it, the one whose
    sidecar was written last.
    """
    upsert(connection, PASSAGE_TABLE, map(values_of, found.passages.values()))
    upsert(connection, SESSION_TABLE, map(values_of, found.sessions.values()))
    takes = _takes_to_write(connection, found)
    upsert(connection, TAKE_TABLE, map(values_of, takes))
    for some in chunks(take.id for take in takes):
        connection.execute(delete(MARKER_TABLE).where(_MARKER.take_id.in_(some)))
    markers = {marker.id: marker for take in takes for marker in found.markers[take.id]}
    upsert(connection, MARKER_TABLE, map(values_of, markers.values()))
    _write_time_spent(connection, found)
    if found.journal is not None:
        _write_kept(connection, found.journal)
    for day in found.days.values():
        connection.execute(delete(REST_DAY_TABLE).where(_REST.practice_day == day.practice_day))
        connection.execute(delete(PLAN_TABLE).where(_PLAN.practice_day == day.practice_day))
    rests = [replace(d.rest, practice_day=d.practice_day) for d in found.days.values() if d.rest]
    upsert(connection, REST_DAY_TABLE, map(values_of, rests))
    plans = [replace(d.plan, practice_day=d.practice_day) for d in found.days.values() if d.plan]
    upsert(connection, PLAN_TABLE, map(values_of, plans))
    if found.journal is not None:
        settings = encoded(found.journal.settings)
        rows = [{"key": key, "value": json_text(value)} for key, value in settings.items()]
        upsert(connection, SETTING_TABLE, rows)


def _write_time_spent(connection: Connection, found: Contents) -> None:
    """Write items, blocks and attempts; of a day whose card is there, only what it says."""
    passages = set(connection.scalars(select(_PASSAGE.id)))

    def known(passage_id: str | None) -> str | None:
        return passage_id if passage_id in passages else None

    items = [replace(item, passage_id=known(item.passage_id)) for item in found.items.values()]
    upsert(connection, ITEM_TABLE, map(values_of, items))
    there = set(connection.scalars(select(_ITEM.id)))
    cards = found.days.values()
    for some in chunks(session.id for card in cards for session in card.sessions):
        connection.execute(delete(BLOCK_TABLE).where(_BLOCK.session_id.in_(some)))
    blocks = {
        block.id: replace(block, item_id=block.item_id if block.item_id in there else None)
        for card in cards
        for block in card.blocks
        if block.session_id in found.sessions
    }
    upsert(connection, BLOCK_TABLE, map(values_of, blocks.values()))
    for card in cards:
        connection.execute(delete(ATTEMPT_TABLE).where(_ATTEMPT.practice_day == card.practice_day))
    attempts = {
        attempt.id: replace(attempt, passage_id=known(attempt.passage_id))
        for card in cards
        for attempt in card.attempts
    }
    upsert(connection, ATTEMPT_TABLE, map(values_of, attempts.values()))
    if found.journal is not None:
        aside = [{"sha256": sha256} for sha256 in found.journal.put_aside]
        upsert(connection, PUT_ASIDE_TABLE, aside)


def _write_kept(connection: Connection, card: JournalCard) -> None:
    """Write promises with their shared numbers, assignments, coming dates, earlier hours."""
    passages = set(connection.scalars(select(_PASSAGE.id)))
    items = set(connection.scalars(select(_ITEM.id)))
    takes = set(connection.scalars(select(_TAKE.id)))
    upsert(connection, PROMISE_TABLE, map(values_of, filter(_makes_sense, card.promises)))
    promises = set(connection.scalars(select(PROMISE_TABLE.c.id)))
    shared = [
        replace(number, take_id=number.take_id if number.take_id in takes else None)
        for number in card.shared_numbers
        if number.promise_id in promises
    ]
    upsert(connection, SHARED_NUMBER_TABLE, map(values_of, shared))
    connection.execute(delete(ASSIGNMENT_TABLE))
    assignments = [
        replace(
            made,
            passage_id=made.passage_id if made.passage_id in passages else None,
            item_id=made.item_id if made.item_id in items else None,
        )
        for made in card.assignments
    ]
    upsert(connection, ASSIGNMENT_TABLE, map(values_of, assignments))
    connection.execute(delete(OCCASION_TABLE))
    upsert(connection, OCCASION_TABLE, map(values_of, card.occasions))
    upsert(connection, REHEARSAL_TABLE, map(values_of, card.rehearsals))
    upsert(connection, LESSON_REMARK_TABLE, map(values_of, card.remarks))
    clips = [clip for clip in card.shared_clips if clip.take_id in takes]
    upsert(connection, SHARED_CLIP_TABLE, map(values_of, clips))
    upsert(connection, DISMISSAL_TABLE, map(values_of, card.dismissals))
    upsert(connection, FIRST_LISTEN_TABLE, map(values_of, card.first_listens))
    write_followed(connection, card, passages, takes)
    connection.execute(delete(EARLIER_HOURS_TABLE))
    if card.earlier_hours is not None:
        upsert(connection, EARLIER_HOURS_TABLE, [{"number": 1, **values_of(card.earlier_hours)}])


def _makes_sense(promise: Promise) -> bool:
    try:
        checked_promise(promise)
    except (PlainFailure, ValueError):
        return False
    return True


def _takes_to_write(connection: Connection, found: Contents) -> tuple[Take, ...]:
    """Give the takes of the sidecars in a form that the database can hold."""
    passages = set(connection.scalars(select(_PASSAGE.id)))
    rows = connection.execute(select(_TAKE.id, _TAKE.file))
    owners = {file: take_id for take_id, file in rows if take_id not in found.takes}
    backed_up = set(owners.values())
    for take in found.takes.values():  # in the order in which the sidecars were written
        if owners.get(take.file) not in backed_up:
            owners[take.file] = take.id
    kept = []
    for take in found.takes.values():
        if owners[take.file] != take.id:
            found.unreadable.append(f"{take.file} (a second take {take.id})")
            continue
        known = take.passage_id if take.passage_id in passages else None
        kept.append(replace(take, passage_id=known))
    return tuple(kept)
