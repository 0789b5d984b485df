"""Promises, shared numbers, assignments, occasions, earlier hours and plans are kept."""

from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from app.journal.assignments import EarlierHours
from app.journal.plans import PlanLine, PlanReason, PracticePlan, ReasonKind
from app.journal.sidecar import JournalCard, read_card
from app.store.repair import repair
from app.store.store import Store
from tests.store.making import (
    DAY,
    NOW,
    Ticking,
    make_assignment,
    make_occasion,
    make_passage,
    make_promise,
    make_session,
    make_shared_number,
    make_take,
    opened,
)


def test_a_promise_with_its_history_comes_back(store: Store) -> None:
    promise = make_promise()
    store.promises.add(promise)
    assert store.promises.get(promise.id) == promise
    closed = replace(promise, closed_on=DAY, breaks=())
    store.promises.replace(closed)
    assert store.promises.list() == (closed,)
    with pytest.raises(KeyError):
        store.promises.replace(make_promise())


def test_shared_numbers_of_one_promise_in_order(store: Store) -> None:
    one, other = make_promise(), make_promise("Takes")
    store.promises.add(one)
    store.promises.add(other)
    late = make_shared_number(one, shared_at=NOW + timedelta(days=2))
    early = make_shared_number(one)
    for shared in (late, early, make_shared_number(other)):
        store.shared_numbers.add(shared)
    assert store.shared_numbers.list(one.id) == (early, late)
    assert len(store.shared_numbers.list()) == 3


def test_assignments_by_their_day(store: Store) -> None:
    passage = make_passage()
    store.passages.add(passage)
    soon = make_assignment(passage, due_on=DAY + timedelta(days=1))
    later = make_assignment(due_on=DAY + timedelta(days=8))
    store.assignments.add(later)
    store.assignments.add(soon)
    assert store.assignments.list() == (soon, later)
    assert store.assignments.list(first_due=DAY + timedelta(days=2)) == (later,)
    assert store.assignments.list(last_due=DAY + timedelta(days=2)) == (soon,)
    store.assignments.replace(replace(soon, done_on=DAY))
    assert store.assignments.remove(soon.id) == replace(soon, done_on=DAY)
    assert store.assignments.get(soon.id) is None


def test_occasions_ahead(store: Store) -> None:
    passage = make_passage()
    store.passages.add(passage)
    over, ahead = make_occasion(day=DAY - timedelta(days=1)), make_occasion(passage)
    store.occasions.put(over)
    store.occasions.put(ahead)
    store.occasions.put(replace(ahead, name="moved"))
    assert store.occasions.list(first_day=DAY) == (replace(ahead, name="moved"),)
    store.occasions.remove(over.id)
    assert len(store.occasions.list()) == 1


def test_one_entry_of_earlier_hours(store: Store) -> None:
    assert store.earlier_hours.get() is None
    store.earlier_hours.put(EarlierHours(100.0))
    store.earlier_hours.put(EarlierHours(200.0, DAY, "an estimate"))
    assert store.earlier_hours.get() == EarlierHours(200.0, DAY, "an estimate")
    store.earlier_hours.put(None)
    assert store.earlier_hours.get() is None


def test_one_plan_a_day(store: Store) -> None:
    reason = PlanReason(ReasonKind.MARKER, "ab" * 16, "To work on: shift, weight 3.")
    line = PlanLine("cd" * 16, "first line", 15, (reason,), passage_id="cd" * 16, done_at=NOW)
    plan = PracticePlan(DAY, 45, NOW, (line,), 5)
    store.plans.put(replace(plan, lines=()))
    store.plans.put(plan)
    assert store.plans.get(DAY) == plan
    store.plans.remove(DAY)
    assert store.plans.get(DAY) is None


def test_a_rebuild_passes_over_what_makes_no_sense(journal: Path) -> None:
    with opened(journal) as store:
        session, passage = make_session(), make_passage()
        store.sessions.add(session)
        store.passages.add(passage)
        take = make_take(session, passage)
        store.takes.add(take)
        promise = make_promise()
        store.promises.add(promise)
        store.shared_numbers.add(make_shared_number(promise, take))
        store.assignments.add(make_assignment(passage))
        card = store.folders.journal_card
        database = store.folders.database
    kept = read_card(card.read_text(encoding="utf-8"))
    assert isinstance(kept, JournalCard)
    assert kept.promises == (promise,)
    text = card.read_text(encoding="utf-8")
    card.write_text(text.replace('"days": 40', '"days": -4'), encoding="utf-8")
    for part in journal.glob(f"{database.name}*"):
        part.unlink()
    repair(journal, compare_bytes=False, clock=Ticking())
    with opened(journal, read_only=True) as store:
        assert store.promises.list() == ()
        assert store.shared_numbers.list() == ()
        assert store.assignments.list() == kept.assignments
