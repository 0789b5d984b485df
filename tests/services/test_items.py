"""Items: the player's own list, passages among them."""

from datetime import timedelta

import pytest

from app.journal.failures import PlainFailure
from app.journal.kinds import ItemKind


def titles(bench):
    return [row.title for row in bench.items.list()]


def test_an_empty_journal_offers_its_passages(bench):
    assert bench.items.list() == ()
    passage = bench.passages.add("Study", "Opening")
    (row,) = bench.items.list()
    assert (row.id, row.title, row.kind) == ("", "Study: Opening", ItemKind.PASSAGE)
    item = bench.items.for_passage(passage.id)
    assert bench.items.for_passage(passage.id) == item
    (row,) = bench.items.list()
    assert row.id == item.id


def test_a_renamed_passage_renames_its_item(bench):
    from dataclasses import replace

    passage = bench.passages.add("Study", "Opening")
    bench.clock.start(bench.items.for_passage(passage.id).id)
    bench.passages.change(replace(passage, name="First page"))
    assert titles(bench) == ["Study: First page"]
    bench.clock.refresh()
    assert bench.clock.state().item_title == "Study: First page"


def test_what_was_practised_last_comes_first(bench, clock):
    ids = [bench.items.add(ItemKind.SCALE, name).id for name in ("one", "two", "three")]
    for item_id in (ids[2], ids[0]):
        bench.clock.start(item_id)
        clock.now += timedelta(minutes=5)
    bench.clock.stop()
    assert titles(bench) == ["one", "three", "two"]
    assert bench.items.list()[2].last_used_at is None


def test_a_retired_item_keeps_its_minutes(bench, clock):
    item = bench.items.add(ItemKind.STUDY, "Study in D")
    bench.clock.start(item.id)
    clock.now += timedelta(minutes=5)
    bench.clock.stop()
    bench.items.retire(item.id)
    assert titles(bench) == []
    assert [gone.id for gone in bench.items.retired()] == [item.id]
    day = clock.now.date()
    assert [row.title for row in bench.minutes.by_item(day, day)] == ["Study in D"]
    bench.items.bring_back(item.id)
    assert titles(bench) == ["Study in D"]


def test_a_retired_passage_comes_back_when_it_is_chosen(bench):
    passage = bench.passages.add("Study", "Opening")
    item = bench.items.for_passage(passage.id)
    bench.items.retire(item.id)
    assert titles(bench) == []
    assert bench.items.for_passage(passage.id).id == item.id
    assert titles(bench) == ["Study: Opening"]


def test_renaming(bench):
    item = bench.items.add(ItemKind.OTHER, "G  major ")
    assert item.name == "G major"
    renamed = bench.items.rename(item.id, "g major", ItemKind.SCALE)
    assert (renamed.name, renamed.kind) == ("g major", ItemKind.SCALE)
    bench.items.add(ItemKind.SCALE, "D major")
    with pytest.raises(PlainFailure, match="on the list already"):
        bench.items.rename(item.id, "d major")
    passage = bench.items.for_passage(bench.passages.add("Study", "Opening").id)
    with pytest.raises(PlainFailure, match="is a passage"):
        bench.items.rename(passage.id, "other")


@pytest.mark.parametrize("name", ["", "  ", "G MAJOR", "study:opening"])
def test_names_that_are_none(bench, name):
    bench.items.add(ItemKind.SCALE, "G major")
    bench.passages.add("Study", "Opening")
    with pytest.raises(PlainFailure):
        bench.items.add(ItemKind.SCALE, name)


def test_a_passage_is_no_item_of_its_own(bench):
    with pytest.raises(PlainFailure, match="by itself"):
        bench.items.add(ItemKind.PASSAGE, "Opening")
    for act in (bench.items.for_passage, bench.items.retire, bench.items.bring_back):
        with pytest.raises(PlainFailure, match="not there"):
            act("0" * 32)


def test_finding(bench):
    scale = bench.items.add(ItemKind.SCALE, "G major")
    bench.passages.add("Study", "Opening")
    bench.passages.add("Sonata", "Opening")
    assert bench.items.find("g MAJOR") == scale
    assert bench.items.find(scale.id) == scale
    assert bench.items.find("sonata: opening").kind is ItemKind.PASSAGE
    with pytest.raises(PlainFailure, match="could be"):
        bench.items.find("Opening")
    with pytest.raises(PlainFailure, match="could be"):
        bench.items.find_or_add("Opening", ItemKind.OTHER)
    with pytest.raises(PlainFailure, match="nothing called 'D major'"):
        bench.items.find("D major")
    made, is_new = bench.items.find_or_add("D major", ItemKind.SCALE)
    assert is_new
    assert bench.items.find_or_add("d major", ItemKind.OTHER) == (made, False)
