"""Whatever is done in whatever order: the store, a plain model and a rebuild agree."""

import shutil
import tempfile
from contextlib import suppress
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import Any

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, precondition, rule

from app.journal.assignments import Assignment
from app.journal.blocks import Attempt, Block, Item
from app.journal.promises import Promise, SharedNumber
from app.journal.records import Marker, Passage, RestDay, Session, Take
from app.store.repair import repair
from tests.store.making import (
    DAY,
    NOW,
    Ticking,
    everything,
    make_assignment,
    make_attempt,
    make_block,
    make_item,
    make_marker,
    make_passage,
    make_promise,
    make_session,
    make_shared_number,
    make_take,
    opened,
)

days = st.integers(0, 3).map(lambda n: DAY + timedelta(days=n))


class GivenUp(Exception):  # noqa: N818 - nothing is wrong
    """Ends a transaction that is not meant to be kept."""


class JournalMachine(RuleBasedStateMachine):
    """Keeps a journal and, beside it, dictionaries of what it should hold."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = Path(tempfile.mkdtemp(prefix="journal-"))
        self.clock = Ticking()
        self.store = opened(self.folder)
        self.takes: dict[str, Take] = {}
        self.markers: dict[str, Marker] = {}
        self.sessions: dict[str, Session] = {}
        self.passages: dict[str, Passage] = {}
        self.rest_days: dict[Any, RestDay] = {}
        self.items: dict[str, Item] = {}
        self.blocks: dict[str, Block] = {}
        self.attempts: dict[str, Attempt] = {}
        self.promises: dict[str, Promise] = {}
        self.shared: dict[str, SharedNumber] = {}
        self.assignments: dict[str, Assignment] = {}

    def teardown(self) -> None:
        self.store.close()
        shutil.rmtree(self.folder)

    def one_of(self, data: st.DataObject, records: dict[str, Any]) -> Any:
        return records[data.draw(st.sampled_from(list(records)))]

    @rule(day=days)
    def add_session(self, day: Any) -> None:
        session = make_session(day)
        self.store.sessions.add(session)
        self.sessions[session.id] = session

    @rule(name=st.text(st.characters(exclude_categories=("Cs",)), max_size=8))
    def add_passage(self, name: str) -> None:
        passage = make_passage(name)
        self.store.passages.add(passage)
        self.passages[passage.id] = passage

    @precondition(lambda self: self.sessions)
    @rule(data=st.data(), markers=st.integers(0, 3))
    def add_take(self, data: st.DataObject, markers: int) -> None:
        session = self.one_of(data, self.sessions)
        passage = self.one_of(data, self.passages) if self.passages else None
        number = self.store.takes.next_number(session.practice_day, passage.id if passage else None)
        take = make_take(session, passage, number)
        with self.store.transaction():
            self.store.takes.add(take)
            self.takes[take.id] = take
            for n in range(markers):
                marker = make_marker(take, float(n))
                self.store.markers.add(marker)
                self.markers[marker.id] = marker

    @rule(day=days, name=st.text("aä音\n", min_size=1, max_size=4))
    def add_promise(self, day: Any, name: str) -> None:
        promise = make_promise(f"p{name}p", day)
        self.store.promises.add(promise)
        self.promises[promise.id] = promise

    @precondition(lambda self: self.promises)
    @rule(data=st.data(), day=st.none() | days)
    def close_or_reopen_promise(self, data: st.DataObject, day: Any) -> None:
        changed = replace(self.one_of(data, self.promises), closed_on=day)
        self.store.promises.replace(changed)
        self.promises[changed.id] = changed

    @precondition(lambda self: self.promises)
    @rule(data=st.data())
    def share_number(self, data: st.DataObject) -> None:
        take = self.one_of(data, self.takes) if self.takes else None
        shared = make_shared_number(self.one_of(data, self.promises), take)
        self.store.shared_numbers.add(shared)
        self.shared[shared.id] = shared

    @rule(data=st.data())
    def add_assignment(self, data: st.DataObject) -> None:
        passage = self.one_of(data, self.passages) if self.passages else None
        made = make_assignment(passage)
        self.store.assignments.add(made)
        self.assignments[made.id] = made

    @precondition(lambda self: self.assignments)
    @rule(data=st.data())
    def remove_assignment(self, data: st.DataObject) -> None:
        made = self.one_of(data, self.assignments)
        assert self.store.assignments.remove(made.id) == self.assignments.pop(made.id)

    @precondition(lambda self: self.takes)
    @rule(data=st.data())
    def add_and_give_up(self, data: st.DataObject) -> None:
        take = self.one_of(data, self.takes)
        with suppress(GivenUp), self.store.transaction():
            self.store.takes.replace(replace(take, aim="given up"))
            self.store.markers.add(make_marker(take, 9.0))
            raise GivenUp

    @precondition(lambda self: self.takes)
    @rule(data=st.data(), outer=st.booleans())
    def give_up_inside(self, data: st.DataObject, outer: bool) -> None:
        take = self.one_of(data, self.takes)
        kept = replace(take, aim="kept")
        with self.store.transaction():
            if outer:
                self.store.takes.replace(kept)
                self.takes[take.id] = kept
            with suppress(GivenUp), self.store.transaction():
                self.store.takes.replace(replace(take, aim="given up"))
                raise GivenUp

    @precondition(lambda self: self.takes)
    @rule(data=st.data())
    def refile(self, data: st.DataObject) -> None:
        take = self.one_of(data, self.takes)
        session = self.one_of(data, self.sessions)
        passage_id = data.draw(st.sampled_from([None, *self.passages]))
        changed = replace(
            take,
            session_id=session.id,
            practice_day=session.practice_day,
            passage_id=passage_id,
            number=self.store.takes.next_number(session.practice_day, passage_id),
        )
        self.store.takes.replace(changed)
        self.takes[take.id] = changed

    @precondition(lambda self: self.takes)
    @rule(data=st.data())
    def delete_or_restore(self, data: st.DataObject) -> None:
        take = self.one_of(data, self.takes)
        changed = replace(take, deleted_at=None if take.deleted_at else NOW)
        self.store.takes.replace(changed)
        self.takes[take.id] = changed

    @precondition(lambda self: self.markers)
    @rule(data=st.data(), text=st.text("aä音\n", max_size=4))
    def change_marker(self, data: st.DataObject, text: str) -> None:
        changed = replace(self.one_of(data, self.markers), text=text)
        self.store.markers.replace(changed)
        self.markers[changed.id] = changed

    @precondition(lambda self: self.markers)
    @rule(data=st.data())
    def remove_marker(self, data: st.DataObject) -> None:
        marker = self.one_of(data, self.markers)
        assert self.store.markers.remove(marker.id) == self.markers.pop(marker.id)

    @precondition(lambda self: self.sessions)
    @rule(data=st.data(), minutes=st.none() | st.floats(0, 600), day=days)
    def change_session(self, data: st.DataObject, minutes: float | None, day: Any) -> None:
        changed = replace(self.one_of(data, self.sessions), minutes=minutes, practice_day=day)
        self.store.sessions.replace(changed)
        self.sessions[changed.id] = changed

    @precondition(lambda self: self.passages)
    @rule(data=st.data(), bars=st.text("1-9", max_size=4))
    def change_passage(self, data: st.DataObject, bars: str) -> None:
        changed = replace(self.one_of(data, self.passages), bars=bars)
        self.store.passages.replace(changed)
        self.passages[changed.id] = changed

    @rule(day=days, planned=st.none() | st.booleans())
    def rest(self, day: Any, planned: bool | None) -> None:
        if planned is None:
            self.store.rest_days.remove(day)
            self.rest_days.pop(day, None)
        else:
            self.rest_days[day] = RestDay(day, planned)
            self.store.rest_days.put(self.rest_days[day])

    @rule(data=st.data())
    def add_item(self, data: st.DataObject) -> None:
        passage_id = data.draw(st.sampled_from([None, *self.passages]))
        item = make_item("scale", passage_id=passage_id)
        self.store.items.add(item)
        self.items[item.id] = item

    @precondition(lambda self: self.items)
    @rule(data=st.data())
    def retire_item(self, data: st.DataObject) -> None:
        item = self.one_of(data, self.items)
        self.items[item.id] = replace(item, retired_at=None if item.retired_at else NOW)
        self.store.items.replace(self.items[item.id])

    @precondition(lambda self: self.sessions)
    @rule(data=st.data(), at_min=st.integers(0, 60))
    def add_block(self, data: st.DataObject, at_min: int) -> None:
        session = self.one_of(data, self.sessions)
        item = data.draw(st.sampled_from([None, *self.items.values()]))
        block = make_block(session, item, at_min)
        self.store.blocks.add(block)
        self.blocks[block.id] = block

    @rule(data=st.data(), day=days, failure=st.sampled_from(["", "The input went away."]))
    def put_attempt(self, data: st.DataObject, day: Any, failure: str) -> None:
        attempt = make_attempt(day, failure=failure)
        known = data.draw(st.sampled_from([None, *self.attempts]))
        if known is not None:  # moved to another day, say
            attempt = replace(attempt, id=known)
        self.store.attempts.put(attempt)
        self.attempts[attempt.id] = attempt

    @precondition(lambda self: self.attempts)
    @rule(data=st.data())
    def remove_attempt(self, data: st.DataObject) -> None:
        attempt = self.one_of(data, self.attempts)
        self.store.attempts.remove(attempt.id)
        del self.attempts[attempt.id]

    @rule()
    def reopen(self) -> None:
        self.store.close()
        self.store = opened(self.folder)

    @precondition(
        lambda self: self.store.folders.journal_card.exists() or self.sessions or self.attempts
    )
    @rule(from_backup=st.booleans())
    def lose_the_database(self, from_backup: bool) -> None:
        if from_backup:
            self.store.back_up()
        self.store.close()
        (self.folder / "journal.db").unlink()
        report = repair(self.folder, clock=self.clock)
        assert report.rebuilt
        assert report.sidecars_unreadable == ()
        self.store = opened(self.folder)

    @invariant()
    def the_store_holds_what_it_should(self) -> None:
        kept = everything(self.store)
        assert kept["takes"] == self.takes
        assert {m.id: m for some in kept["markers"].values() for m in some} == self.markers
        assert {session.id: session for session in kept["sessions"]} == self.sessions
        assert {passage.id: passage for passage in kept["passages"]} == self.passages
        assert {rest.practice_day: rest for rest in kept["rest_days"]} == self.rest_days
        assert {item.id: item for item in kept["items"]} == self.items
        assert {b.id: b for some in kept["blocks"].values() for b in some} == self.blocks
        assert {attempt.id: attempt for attempt in kept["attempts"]} == self.attempts
        assert {promise.id: promise for promise in kept["promises"]} == self.promises
        assert {shared.id: shared for shared in kept["shared_numbers"]} == self.shared
        assert {made.id: made for made in kept["assignments"]} == self.assignments
        assert self.store.sidecars.due() == frozenset()


JournalMachine.TestCase.settings = settings(max_examples=8, stateful_step_count=25, deadline=None)
TestAnyOrder = JournalMachine.TestCase
