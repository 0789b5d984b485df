"""Two journals made one, without doubling or losing anything.

The union of two contents has every record of both once. Of two forms of one record the
one stays that was changed last, else the one that says more; the choice does not depend
on which journal is asked, so merging twice, or in another order, ends in the same place.

Things that both journals name for themselves are recognised: a passage by its piece,
name and bars, an item by its kind and name, a take by the bytes of its recording. They
keep the ids of the first journal. Settings stay the first journal's own.
"""

import json
from collections.abc import Iterable, Mapping
from dataclasses import fields, replace
from datetime import UTC, date, datetime
from typing import Any, TypeVar

from app.journal.blocks import Item
from app.journal.codec import decoded, encoded
from app.journal.contents import Contents
from app.journal.kinds import MinutesSource
from app.journal.records import Passage, RestDay, Session, Take
from app.journal.sidecar import DayCard, JournalCard

R = TypeVar("R")

_LONG_AGO = datetime.min.replace(tzinfo=UTC)
_SURER = (None, MinutesSource.SOUNDING, MinutesSource.CLOCK, MinutesSource.TYPED)
_JOURNAL_LISTS = tuple(
    f.name
    for f in fields(JournalCard)
    if f.name not in {"written_at", "settings", "earlier_hours", "put_aside"}
)


def union(ours: Contents, theirs: Contents) -> Contents:
    """Give everything that either of two journals says.

    Parameters
    ----------
    ours : Contents
        The journal that receives: its ids, settings and recordings' places stay.
    theirs : Contents
        What arrives.

    Returns
    -------
    Contents
        A new value; neither argument is changed.
    """
    theirs = _renamed(theirs, _known_by_another_id(ours, theirs))
    takes = _takes(ours.takes, theirs.takes)
    return Contents(
        takes=takes,
        markers={
            take_id: merged(ours.markers.get(take_id, ()), theirs.markers.get(take_id, ()))
            for take_id in takes
        },
        passages=_by_id(merged(ours.passages.values(), theirs.passages.values())),
        sessions={
            key: _session(ours.sessions.get(key), theirs.sessions.get(key))
            for key in ours.sessions | theirs.sessions
        },
        days={
            day: _day(day, ours.days.get(day), theirs.days.get(day))
            for day in ours.days | theirs.days
        },
        items=_by_id(merged(ours.items.values(), theirs.items.values())),
        journal=_journal(ours.journal, theirs.journal),
        unreadable=[*ours.unreadable, *theirs.unreadable],
        newer=ours.newer or theirs.newer,
    )


def merged(ours: Iterable[R], theirs: Iterable[R]) -> tuple[R, ...]:
    """Give every record of two lists once, in the order in which they are met."""
    found: dict[str, R] = {}
    for record in (*ours, *theirs):
        key = _key(record)
        found[key] = max(found[key], record, key=_weight) if key in found else record
    return tuple(found.values())


def _key(record: object) -> str:
    """Tell records apart: by id, else by the take they are about, else by all they say."""
    for name in ("id", "take_id"):
        if (key := getattr(record, name, None)) is not None:
            return str(key)
    return _text(record)


def _weight(record: object) -> tuple[datetime, int, str]:
    changed_at: datetime = getattr(record, "changed_at", _LONG_AGO)
    said = sum(_amount(value) for value in encoded(record).values())
    return changed_at, said, _text(record)


def _amount(value: object) -> int:
    if isinstance(value, list | tuple):
        return len(value)
    return 0 if value in (None, "", False) else 1


def _text(record: object) -> str:
    return json.dumps(encoded(record), sort_keys=True)


def _by_id(records: Iterable[R]) -> dict[str, R]:
    return {_key(record): record for record in records}


def _takes(ours: Mapping[str, Take], theirs: Mapping[str, Take]) -> dict[str, Take]:
    """Join takes; a known one keeps its place and state, a new one gets a free number."""
    found = dict(ours)
    used = {(t.practice_day, t.passage_id, t.number) for t in ours.values()}
    for take in theirs.values():
        if take.id in found:
            found[take.id] = _said_more_of(found[take.id], take)
            continue
        number = take.number
        while (take.practice_day, take.passage_id, number) in used:
            number += 1
        used.add((take.practice_day, take.passage_id, number))
        found[take.id] = replace(take, number=number)
    return found


def _said_more_of(ours: Take, theirs: Take) -> Take:
    """Take over what the player said of a take in the other journal alone."""
    return replace(
        ours,
        passage_id=ours.passage_id or theirs.passage_id,
        aim=ours.aim or theirs.aim,
        aim_met=ours.aim_met or theirs.aim_met,
    )


def _session(ours: Session | None, theirs: Session | None) -> Session:
    known = [session for session in (ours, theirs) if session is not None]
    # The minutes of one session never add up: the surer source counts, then the larger.
    surest = max(known, key=lambda s: (_SURER.index(s.minutes_source), s.minutes or 0.0, _text(s)))
    note = max((session.note for session in known), key=lambda note: (len(note), note))
    return replace(surest, note=note)


def _day(day: date, ours: DayCard | None, theirs: DayCard | None) -> DayCard:
    known = [card for card in (ours, theirs) if card is not None]
    first, last = known[0], known[-1]
    rests = [card.rest for card in known if card.rest is not None]
    return DayCard(
        written_at=max(card.written_at for card in known),
        practice_day=day,
        sessions=tuple(
            _session(
                next((s for s in first.sessions if s.id == key), None),
                next((s for s in last.sessions if s.id == key), None),
            )
            for key in dict.fromkeys(s.id for s in (*first.sessions, *last.sessions))
        ),
        rest=RestDay(day, planned=any(rest.planned for rest in rests)) if rests else None,
        blocks=merged(first.blocks, last.blocks),
        items=merged(first.items, last.items),
        attempts=merged(first.attempts, last.attempts),
        plan=next((card.plan for card in known if card.plan is not None), None),
    )


def _journal(ours: JournalCard | None, theirs: JournalCard | None) -> JournalCard | None:
    if ours is None or theirs is None:
        return ours or theirs
    lists: dict[str, Any] = {
        name: merged(getattr(ours, name), getattr(theirs, name)) for name in _JOURNAL_LISTS
    }
    hours = [card.earlier_hours for card in (ours, theirs) if card.earlier_hours is not None]
    return replace(
        ours,
        written_at=max(ours.written_at, theirs.written_at),
        put_aside=tuple(dict.fromkeys((*ours.put_aside, *theirs.put_aside))),
        earlier_hours=max(hours, key=lambda h: (h.hours, _text(h)), default=None),
        **lists,
    )


def _known_by_another_id(ours: Contents, theirs: Contents) -> dict[str, str]:
    """Find what both journals have under ids of their own: theirs to ours."""
    passages = {_passage_key(p): p.id for p in ours.passages.values()}
    takes = {t.sha256: t.id for t in ours.takes.values()}
    aliases = {
        p.id: passages[_passage_key(p)]
        for p in theirs.passages.values()
        if p.id not in ours.passages and _passage_key(p) in passages
    }
    aliases |= {
        t.id: takes[t.sha256]
        for t in theirs.takes.values()
        if t.id not in ours.takes and t.sha256 in takes
    }
    items = {_item_key(item, {}): item.id for item in ours.items.values()}
    aliases |= {
        item.id: items[_item_key(item, aliases)]
        for item in theirs.items.values()
        if item.id not in ours.items and _item_key(item, aliases) in items
    }
    return aliases


def _passage_key(passage: Passage) -> tuple[str, ...]:
    return tuple(text.casefold() for text in (passage.piece, passage.name, passage.bars))


def _item_key(item: Item, aliases: Mapping[str, str]) -> tuple[object, ...]:
    passage_id = aliases.get(item.passage_id or "", item.passage_id)
    return item.kind, item.name.casefold(), passage_id


def _renamed(contents: Contents, aliases: Mapping[str, str]) -> Contents:
    """Give contents in which ids are replaced, wherever a record mentions them."""
    if not aliases:
        return contents

    def again(record: R) -> R:
        return decoded(type(record), _replaced(encoded(record), aliases))

    takes = _by_id(merged((), map(again, contents.takes.values())))
    markers: dict[str, tuple[Any, ...]] = {}
    for take_id, some in contents.markers.items():
        key = aliases.get(take_id, take_id)
        markers[key] = merged(markers.get(key, ()), map(again, some))
    return Contents(
        takes=takes,
        markers=markers,
        passages=_by_id(merged((), map(again, contents.passages.values()))),
        sessions=dict(contents.sessions),
        days={day: again(card) for day, card in contents.days.items()},
        items=_by_id(merged((), map(again, contents.items.values()))),
        journal=None if contents.journal is None else again(contents.journal),
        unreadable=list(contents.unreadable),
        newer=contents.newer,
    )


def _replaced(value: Any, aliases: Mapping[str, str]) -> Any:
    if isinstance(value, str):
        return aliases.get(value, value)
    if isinstance(value, list | tuple):
        return [_replaced(one, aliases) for one in value]
    if isinstance(value, dict):
        return {key: _replaced(one, aliases) for key, one in value.items()}
    return value
