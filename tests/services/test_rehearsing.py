"""Audition rehearsals: the order, one chance each, listening afterwards."""

import random
from datetime import date

import pytest

from app.journal.failures import PlainFailure
from app.journal.rehearsals import order_of
from app.wiring import open_workbench

TODAY = date(2026, 3, 14)


@pytest.fixture
def passages(bench):
    return [bench.passages.add("Excerpts", name).id for name in ("one", "two", "three")]


@pytest.fixture
def play(bench, add_take, tone_file):
    counter = iter(range(200, 400))

    def record():
        due = bench.rehearsals.begin().due
        hz = next(counter)
        row = add_take(tone_file(f"{hz}.wav", frequency_hz=hz), f"Excerpts: {due.name}", TODAY)
        return bench.rehearsals.recorded(row.id)

    return record


def test_it_is_recorded_through_and_listened_to_afterwards(bench, passages, play):
    view = bench.rehearsals.start(passages)
    assert (view.due.id, view.number, view.titles[1]) == (passages[0], 1, "Excerpts: two")
    for number in (2, 3):
        view = play()
        assert (view.number, view.to_listen_to) == (number, ())
    view = play()
    assert view.due is None
    assert [row.passage_name for row in view.to_listen_to] == [
        "Excerpts: one", "Excerpts: two", "Excerpts: three",
    ]  # fmt: skip
    assert bench.rehearsals.running() is None
    assert bench.rehearsals.past() == (view,)


def test_one_chance_each(bench, passages, play):
    bench.rehearsals.start(passages)
    bench.rehearsals.begin()
    with pytest.raises(PlainFailure, match="one chance"):
        bench.rehearsals.begin()
    assert bench.rehearsals.move_on().number == 2
    play()
    view = play()
    assert len(view.to_listen_to) == 2
    with pytest.raises(PlainFailure, match="No rehearsal"):
        bench.rehearsals.begin()


def test_a_chance_that_the_device_spoilt_comes_back(bench, passages, play):
    bench.rehearsals.start(passages[:1])
    bench.rehearsals.begin()
    view = bench.rehearsals.spoilt("The input went away.")
    assert view.rehearsal.chances[0].spoilt == "The input went away."
    assert len(play().to_listen_to) == 1


def test_a_take_of_another_passage_is_refused(bench, passages, add_take, tone_file):
    bench.rehearsals.start(passages)
    bench.rehearsals.begin()
    other = add_take(tone_file(), "Excerpts: two", TODAY)
    with pytest.raises(PlainFailure, match="passage that is due"):
        bench.rehearsals.recorded(other.id)


def test_what_cannot_be_rehearsed(bench, passages):
    for wrong in ([], [passages[0]] * 2, ["f" * 32]):
        with pytest.raises(PlainFailure):
            bench.rehearsals.start(wrong)
    bench.rehearsals.start(passages)
    with pytest.raises(PlainFailure, match="running"):
        bench.rehearsals.start(passages)
    assert bench.rehearsals.end().due is None
    bench.rehearsals.start(passages)


def test_the_order_is_drawn_by_lot():
    ids = ["a", "b", "c"]
    assert order_of(ids, draw=False, chance=random.Random(1)) == ("a", "b", "c")
    drawn = [order_of(ids, draw=True, chance=random.Random(seed)) for seed in range(60)]
    assert {"".join(order) for order in drawn} == {"abc", "acb", "bac", "bca", "cab", "cba"}


def test_a_rehearsal_survives_closing(bench, passages, journal_dir, clock):
    bench.rehearsals.start(passages, draw=True)
    bench.rehearsals.begin()
    before = bench.rehearsals.running()
    bench.close()
    with open_workbench(journal_dir, clock=clock) as again:
        assert again.rehearsals.running() == before
