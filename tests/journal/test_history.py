"""Undo and redo: whatever the player does, going back and forth ends where it should."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, precondition, rule

from app.journal.history import Change, History, Record, Step
from app.journal.kinds import AimMet, Author, MarkerState, Origin
from app.journal.records import Marker, PlayingSettings, Take

NOW = datetime(2026, 3, 1, 19, 5, 9, tzinfo=UTC)


def make_marker(marker_id: str, text: str = "") -> Marker:
    state = MarkerState.TO_WORK_ON
    return Marker(marker_id, "t", 1.0, None, "rhythm", 2, text, Author.SELF, state, NOW, NOW)


TAKE = Take(
    id="t",
    session_id="s",
    passage_id=None,
    practice_day=NOW.date(),
    number=1,
    recorded_at=NOW,
    entered_at=NOW,
    origin=Origin.RECORDED,
    file="2026/2026-03-01/190509-take-1.flac",
    sha256="",
    duration_s=10.0,
    sample_rate_hz=48_000,
    channels=1,
    settings=PlayingSettings(),
)


class Shelf:
    """Holds records by id and applies changes whole or not at all."""

    def __init__(self) -> None:
        self.records: dict[str, Record] = {TAKE.id: TAKE}

    def apply(self, change: Change) -> None:
        tried = dict(self.records)
        for step in change.steps:
            made = step.onto(tried.get(step.record_id))
            if made is None:
                del tried[step.record_id]
            else:
                tried[step.record_id] = made
        self.records = tried


class UndoMachine(RuleBasedStateMachine):
    """Compares a history with a list of snapshots, one after each change."""

    def __init__(self) -> None:
        super().__init__()
        self.shelf = Shelf()
        self.history = History(depth=5)
        self.snapshots = [dict(self.shelf.records)]
        self.position = 0
        self.forgotten = 0

    def make(self, words: str, *steps: Step) -> None:
        change = Change(words, steps)
        self.shelf.apply(change)
        self.history.record(change)
        self.snapshots[self.position + 1 :] = [dict(self.shelf.records)]
        self.position += 1
        self.forgotten = max(self.forgotten, self.position - 5)

    @property
    def markers(self) -> list[Marker]:
        return [r for r in self.shelf.records.values() if isinstance(r, Marker)]

    @rule(ids=st.sets(st.integers(0, 9), min_size=1, max_size=3))
    def add(self, ids: set[int]) -> None:
        new = [str(n) for n in ids if str(n) not in self.shelf.records]
        if new:
            self.make("marker added", *(Step(None, make_marker(n)) for n in new))

    @precondition(lambda self: self.markers)
    @rule(data=st.data())
    def remove(self, data: st.DataObject) -> None:
        self.make("marker deleted", Step(data.draw(st.sampled_from(self.markers)), None))

    @precondition(lambda self: self.markers)
    @rule(data=st.data(), text=st.text(max_size=3), weight=st.integers(1, 3))
    def alter(self, data: st.DataObject, text: str, weight: int) -> None:
        marker = data.draw(st.sampled_from(self.markers))
        self.make("marker changed", Step(marker, replace(marker, text=text, weight=weight)))

    @rule()
    def delete_or_restore_take(self) -> None:
        take = self.shelf.records[TAKE.id]
        assert isinstance(take, Take)
        gone = None if take.deleted_at else NOW
        self.make("take deleted", Step(take, replace(take, deleted_at=gone)))

    @rule()
    def undo(self) -> None:
        words = self.history.undo(self.shelf.apply)
        if self.position > self.forgotten:
            assert words
            self.position -= 1
        else:
            assert words is None

    @rule()
    def redo(self) -> None:
        words = self.history.redo(self.shelf.apply)
        if self.position < len(self.snapshots) - 1:
            assert words
            self.position += 1
        else:
            assert words is None

    @invariant()
    def records_are_those_of_the_snapshot(self) -> None:
        assert self.shelf.records == self.snapshots[self.position]
        assert self.history.can_undo == (self.position > self.forgotten)
        assert self.history.can_redo == (self.position < len(self.snapshots) - 1)
        assert (self.history.undo_words is None) != self.history.can_undo
        assert (self.history.redo_words is None) != self.history.can_redo


TestUndo = UndoMachine.TestCase


def test_undoing_keeps_what_was_noted_meanwhile() -> None:
    deleted = replace(TAKE, deleted_at=NOW)
    step = Step(TAKE, deleted)
    meanwhile = replace(deleted, aim_met=AimMet.YES)
    assert step.inverse.onto(meanwhile) == replace(TAKE, aim_met=AimMet.YES)


def test_a_failure_leaves_the_history_as_it_was() -> None:
    history = History()
    history.record(Change("marker added", (Step(None, make_marker("1")),)))

    def refuse(_change: Change) -> None:
        raise OSError("disk full")

    with pytest.raises(OSError, match="disk full"):
        history.undo(refuse)
    assert (history.can_undo, history.can_redo) == (True, False)
    shelf = Shelf()
    shelf.records["1"] = make_marker("1")
    assert history.undo(shelf.apply) == "marker added"
    with pytest.raises(OSError, match="disk full"):
        history.redo(refuse)
    assert (history.can_undo, history.can_redo) == (False, True)


def test_a_step_that_does_not_fit_is_refused() -> None:
    step = Step(make_marker("1"), make_marker("1", "x"))
    with pytest.raises(LookupError):
        step.onto(None)
    with pytest.raises(LookupError):
        Step(None, make_marker("1")).onto(make_marker("1"))


@pytest.mark.parametrize(
    ("before", "after"),
    [(None, None), (make_marker("1"), make_marker("2")), (make_marker("t"), TAKE)],
)
def test_a_step_is_about_one_record(before: Record | None, after: Record | None) -> None:
    with pytest.raises(ValueError, match="step"):
        Step(before, after)


def test_new_changes_end_what_could_be_redone() -> None:
    history = History()
    shelf = Shelf()
    for number in "12":
        change = Change(f"marker {number} added", (Step(None, make_marker(number)),))
        shelf.apply(change)
        history.record(change)
    assert history.undo(shelf.apply) == "marker 2 added"
    assert (history.undo_words, history.redo_words) == ("marker 1 added", "marker 2 added")
    history.record(Change("marker 3 added", (Step(None, make_marker("3")),)))
    assert history.redo_words is None
    history.clear()
    assert not history.can_undo
    with pytest.raises(ValueError, match="at least one"):
        History(depth=0)
