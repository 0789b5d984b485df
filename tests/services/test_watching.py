"""A folder in which clips arrive: each content is offered once."""

import os
import shutil
from dataclasses import replace
from datetime import datetime, timedelta, timezone

import pytest

from app.journal.failures import PlainFailure
from app.journal.kinds import ItemKind
from app.services.stopping import Stopped

HOUR = 3600


@pytest.fixture(autouse=True)
def _zone(monkeypatch):
    monkeypatch.setattr("app.wiring.local_zone", lambda: timezone(timedelta(hours=1)))


@pytest.fixture
def folder(tmp_path):
    made = tmp_path / "from the phone"
    made.mkdir()
    return made


@pytest.fixture
def arrive(folder, tone_file, clock):
    """Let a clip arrive in the folder, so many seconds ago."""

    def arrived(name, frequency_hz=440.0, ago_s=HOUR, where=folder):
        path = where / name
        where.mkdir(exist_ok=True)
        shutil.copy(tone_file("clip.wav", frequency_hz=frequency_hz), path)
        at = clock.now.timestamp() - ago_s
        os.utime(path, (at, at))
        return path

    return arrived


@pytest.fixture
def watching(bench, clock, folder):
    bench.watching._wall_s = lambda: clock().timestamp()
    bench.watching.watch(folder)
    return bench.watching


def names(offers):
    return [proposal.path.name for proposal in offers]


def test_without_a_folder_there_is_nothing(bench):
    assert bench.watching.folder() is None
    assert bench.watching.offers() == ()


def test_new_clips_are_offered_and_filed_once(bench, watching, arrive, folder, clock):
    arrive("b.wav", 440.0, ago_s=HOUR)
    arrive("a.wav", 330.0, ago_s=2 * HOUR)
    offers = watching.offers()
    assert names(offers) == ["a.wav", "b.wav"]
    assert {proposal.practice_day for proposal in offers} == {clock.now.date()}
    assert all(not proposal.failure for proposal in offers)
    (row,) = watching.file(offers[:1])
    assert (folder / "a.wav").exists()  # the phone's file stays
    assert names(watching.offers()) == ["b.wav"]
    arrive("a copy of it.wav", 330.0, ago_s=60)
    assert names(watching.offers()) == ["b.wav"]
    bench.filing.delete(row.id)
    assert names(watching.offers()) == ["b.wav"]  # deleted takes do not come back this way


def test_what_is_put_aside_stays_aside(watching, arrive):
    arrive("b.wav")
    watching.put_aside(watching.offers())
    arrive("b again.wav")
    assert watching.offers() == ()
    watching.offer_again()
    assert len(watching.offers()) == 1  # the two hold the same sound


def test_what_still_arrives_waits(watching, arrive, clock):
    arrive("b.wav", ago_s=2)
    assert watching.offers() == ()
    clock.now += timedelta(seconds=30)
    assert names(watching.offers()) == ["b.wav"]


def test_what_is_no_clip_is_passed_over(watching, arrive, folder):
    (folder / "notes.txt").write_text("buy strings")
    (folder / "empty.wav").touch()
    arrive(".hidden.wav")
    arrive("old.wav", 220.0, ago_s=15 * 24 * HOUR)
    arrive("deep.wav", 330.0, where=folder / "2026")
    assert names(watching.offers()) == ["deep.wav"]


def test_a_damaged_clip_is_offered_with_its_reason(watching, folder, clock):
    path = folder / "broken.m4a"
    path.write_bytes(b"this is no sound" * 100)
    at = clock.now.timestamp() - HOUR
    os.utime(path, (at, at))
    (offer,) = watching.offers()
    assert offer.failure
    assert watching.file([offer]) == ()
    watching.put_aside([offer])
    assert watching.offers() == ()


def test_the_passage_practised_then_is_proposed(bench, watching, arrive, clock):
    one = bench.passages.add("Study", "Opening")
    other = bench.passages.add("Study", "Ending")
    arrive("b.wav", ago_s=0)
    bench.clock.start(bench.items.for_passage(other.id).id)
    clock.now += timedelta(minutes=20)
    bench.clock.switch(bench.items.for_passage(one.id).id)
    clock.now += timedelta(minutes=20)
    arrive("c.wav", 330.0, ago_s=10)
    clock.now += timedelta(minutes=20)
    bench.clock.switch(bench.items.add(ItemKind.SCALE, "G").id)
    assert [p.passage_id for p in watching.offers()] == [other.id, one.id]


def test_else_the_passage_recorded_last(bench, watching, arrive, add_take, tone_file):
    arrive("b.wav")
    (offer,) = watching.offers()
    assert offer.passage_id is None
    add_take(tone_file("x.wav", frequency_hz=500.0), "Opening", offer.practice_day)
    (offer,) = watching.offers()
    assert offer.passage_id == bench.passages.find("Opening").id


def test_the_player_corrects_an_offer(bench, watching, arrive, clock):
    passage = bench.passages.add("Study", "Opening")
    arrive("b.wav")
    (offer,) = watching.offers()
    day = clock.now.date() - timedelta(days=2)
    (row,) = watching.file([replace(offer, practice_day=day, passage_id=passage.id)])
    assert (row.practice_day, row.passage_id, row.is_late_entry) == (day, passage.id, True)


def test_a_folder_that_is_gone_is_told(watching, folder):
    folder.rmdir()
    with pytest.raises(PlainFailure, match="is not there"):
        watching.offers()


def test_which_folders_can_be_watched(bench, watching, folder, journal_dir, clock):
    for wrong in (folder / "nowhere", journal_dir, journal_dir / "backups"):
        with pytest.raises(PlainFailure):
            bench.watching.watch(wrong)
    since = bench.practising.settings().watched_since
    clock.now += timedelta(days=1)
    assert watching.watch(folder).watched_since == since  # the same one: nothing is new
    assert watching.watch(None).watched_folder is None
    assert watching.offers() == ()
    assert isinstance(watching.watch(folder).watched_since, datetime)


def test_looking_can_be_stopped(watching, arrive):
    arrive("b.wav")
    with pytest.raises(Stopped):
        watching.offers(should_stop=lambda: True)
    told = []
    assert len(watching.offers(told.append)) == 1
    assert told[-1] == 1.0
