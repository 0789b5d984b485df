"""Items, blocks, the clock, attempts and clips put aside, in and out of the database."""

from dataclasses import replace
from datetime import timedelta

import pytest

from app.journal.blocks import ClockRecord
from app.journal.sidecar import DayCard, JournalCard, read_card
from app.store.repair import repair
from tests.store.making import (
    DAY,
    NOW,
    everything,
    make_attempt,
    make_block,
    make_item,
    make_passage,
    make_session,
    opened,
)


@pytest.fixture
def session(store):
    session = make_session()
    store.sessions.add(session)
    return session


def make_clock(session, **changes):
    clock = ClockRecord(session.id, "b" * 32, None, True, NOW, NOW)
    return replace(clock, **changes)


def test_there_is_one_clock_or_none(store, session):
    assert store.clock.get() is None
    item = make_item()
    store.items.add(item)
    store.clock.put(make_clock(session))
    later = make_clock(
        session,
        item_id=item.id,
        running=False,
        seen_at=NOW + timedelta(seconds=30),
        unbroken_s=61.5,
        break_put_off_at=NOW,
    )
    store.clock.put(later)
    assert store.clock.get() == later
    store.clock.put(None)
    assert store.clock.get() is None


def test_a_heartbeat_writes_no_sidecar(store, session, journal):
    store.clock.put(make_clock(session))
    card = store.folders.day_card(DAY)
    before = card.stat().st_mtime_ns
    for beat in range(3):
        store.clock.put(make_clock(session, seen_at=NOW + timedelta(seconds=beat)))
    assert card.stat().st_mtime_ns == before


def test_the_clock_survives_the_end_of_the_program(store, session, journal):
    store.clock.put(make_clock(session))
    store.close()
    with opened(journal, read_only=True) as again:
        assert again.clock.get() == make_clock(session)


def test_blocks_come_in_order_and_by_day(store, session):
    other = make_session(DAY + timedelta(days=1))
    store.sessions.add(other)
    blocks = [make_block(session, None, at, 5) for at in (20, 0, 10)] + [make_block(other)]
    for block in blocks:
        store.blocks.add(block)
    assert store.blocks.of_session(session.id) == (blocks[1], blocks[2], blocks[0])
    assert store.blocks.of_session("0" * 32) == ()
    assert store.blocks.of_days(DAY, DAY) == (blocks[1], blocks[2], blocks[0])
    assert store.blocks.of_days(DAY, other.practice_day)[-1] == blocks[3]


def test_when_an_item_was_practised_last(store, session):
    item = make_item()
    store.items.add(item)
    store.items.add(make_item("never"))
    for at in (0, 30, 15):
        store.blocks.add(make_block(session, item, at, 5))
    expected = session.started_at + timedelta(minutes=35)
    assert store.blocks.last_use_of_items() == {item.id: expected}


def test_what_belongs_to_nothing_is_refused(store, session):
    with pytest.raises(Exception, match="FOREIGN KEY"):
        store.blocks.add(make_block(make_session()))
    with pytest.raises(Exception, match="FOREIGN KEY"):
        store.blocks.add(make_block(session, make_item()))
    with pytest.raises(KeyError):
        store.items.replace(make_item())
    assert store.blocks.of_session(session.id) == ()
    assert store.sidecars.due() == frozenset()


def test_attempts_are_put_moved_and_removed(store):
    passage = make_passage()
    store.passages.add(passage)
    first = make_attempt(DAY, passage)
    second = make_attempt(DAY, None, started_at=first.started_at + timedelta(minutes=5))
    for attempt in (second, first):
        store.attempts.put(attempt)
    assert store.attempts.list() == (first, second)
    assert store.attempts.list(passage_id=passage.id) == (first,)
    moved = replace(second, practice_day=DAY + timedelta(days=1), failure="The disk is full.")
    store.attempts.put(moved)
    assert store.attempts.list(last_day=DAY) == (first,)
    assert store.attempts.by_passage_and_day([DAY, moved.practice_day]) == {
        (passage.id, DAY): (first,),
        (None, moved.practice_day): (moved,),
    }
    assert store.attempts.by_passage_and_day([]) == {}
    card = read_card(store.folders.day_card(DAY).read_text(encoding="utf-8"))
    assert isinstance(card, DayCard)
    assert card.attempts == (first,)
    store.attempts.remove(first.id)
    store.attempts.remove(first.id)
    assert store.attempts.list() == (moved,)


def test_clips_put_aside(store):
    for digest in ("b" * 64, "a" * 64, "b" * 64):
        store.put_aside.add(digest)
    assert store.put_aside.list() == ("a" * 64, "b" * 64)
    store.put_aside.remove("a" * 64)
    card = read_card(store.folders.journal_card.read_text(encoding="utf-8"))
    assert isinstance(card, JournalCard)
    assert card.put_aside == ("b" * 64,)


def test_a_lost_journal_card_leaves_the_items_of_the_blocks(filled):
    with opened(filled) as store:
        before = everything(store)
    (filled / "journal.db").unlink()
    (filled / "journal.json").unlink()
    repair(filled)
    with opened(filled) as store:
        after = everything(store)
    assert after["blocks"] == before["blocks"]
    used = {block.item_id for some in before["blocks"].values() for block in some} - {None}
    assert {item.id for item in after["items"]} == used
    assert after["attempts"] == before["attempts"]


def test_a_day_card_overrules_a_backup(filled):
    with opened(filled) as store:
        store.back_up()
        session = store.sessions.list()[0]
        store.blocks.add(make_block(session, None, 50, 3))
        store.attempts.remove(store.attempts.list()[0].id)
        before = everything(store)
    (filled / "journal.db").write_bytes(b"not a database" * 400)
    assert repair(filled).backup_used
    with opened(filled) as store:
        assert everything(store) == before
