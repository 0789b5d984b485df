"""Bundles: out of one journal, into another, to a teacher and back, with nothing lost.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

import json
import shutil
import stat
import zipfile
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import numpy as np
import pytest
import soundfile
from hypothesis import given, settings
from hypothesis import strategies as st

from app.journal.bundles import belongs_into_a_journal
from app.journal.failures import PlainFailure
from app.journal.kinds import Author
from app.journal.records import PlayingSettings
from app.journal.remarks import LessonRemark
from app.services.bundling.replying import ReplyReport
from app.services.bundling.service import MergeReport
from app.services.bundling.unpacking import unpack
from app.services.bundling.visiting import open_visit
from app.services.bundling.words import brought_sentence
from app.services.stopping import Stopped, never_stop, no_progress
from app.services.workbench import Workbench
from app.wiring import open_workbench

EVENING = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)
LATER = EVENING + timedelta(days=1)
DAYS = (date(2026, 3, 7), date(2026, 3, 14))


def sound(folder: Path, number: int) -> Path:
    path = folder / f"clip-{number}.wav"
    noise = np.random.default_rng(number).uniform(-0.3, 0.3, 4800)
    soundfile.write(path, noise, 48_000, "PCM_24")
    return path


def bring(bench: Workbench, path: Path, passage_id: str | None, day: date) -> str:
    return bench.importing.file(bench.importing.propose([path], passage_id, day))[0].id


@pytest.fixture(scope="module")
def _home_once(tmp_path_factory) -> Path:
    sounds = tmp_path_factory.mktemp("sounds")
    folder = tmp_path_factory.mktemp("home") / "journal"
    with open_workbench(folder, clock=lambda: EVENING) as bench:
        passage = bench.passages.add("Study", "Opening", "1-8", PlayingSettings("viola"))
        for number in range(3):
            take_id = bring(bench, sound(sounds, number), passage.id, date(2026, 3, 7 + number))
            bench.marking.add(take_id, 0.05, category="rhythm", text=f"late {number}")
        bring(bench, sound(sounds, 9), None, date(2026, 1, 1))
        bench.practising.set_minutes(date(2026, 3, 8), 35)
        bench.practising.mark_rest(date(2026, 3, 10), planned=True)
        bench.assignments.add(date(2026, 3, 14), "third finger")
    return folder


@pytest.fixture
def home(_home_once, tmp_path) -> Path:
    """Give the player's journal, closed."""
    return Path(shutil.copytree(_home_once, tmp_path / "home"))


def bundled(home: Path, target: Path, **options: bool) -> Path:
    with open_workbench(home, read_only=True, clock=lambda: EVENING) as bench:
        bench.bundles.write(*DAYS, target, **options)
    return target


def said(folder: Path) -> dict[str, object]:
    """Give what a journal says of the bundled days."""
    with open_workbench(folder, read_only=True, clock=lambda: LATER) as bench:
        rows = [row for row in bench.filing.takes() if DAYS[0] <= row.practice_day <= DAYS[1]]
        return {
            "takes": sorted((r.practice_day, r.id, r.passage_name) for r in rows),
            "markers": {r.id: bench.marking.for_take(r.id) for r in rows},
            "minutes": [
                (bar.practice_day, bar.minutes, bar.rest)
                for bar in bench.practising.year(2026)
                if DAYS[0] <= bar.practice_day <= DAYS[1]
            ],
        }


def test_a_second_computer_gets_everything_and_merging_again_adds_nothing(home, tmp_path):
    bundle = bundled(home, tmp_path / "days.pwbundle", whole_record=True)
    before = bundle.read_bytes()
    other = tmp_path / "other"
    with open_workbench(other, clock=lambda: LATER) as bench:
        assert bench.bundles.merge(bundle) == MergeReport(3, 0, 3)
        assert bench.bundles.merge(bundle) == MergeReport(0, 3, 0)
        assert [row.assignment.goal for row in bench.assignments.all()] == ["third finger"]
    assert said(other) == said(home)
    assert bundle.read_bytes() == before
    ours = sorted(path.read_bytes() for path in home.glob("2026/2026-03-*/*.wav"))
    assert sorted(path.read_bytes() for path in other.glob("2026/2026-03-*/*.wav")) == ours
    # The days of the bundle and no others.
    assert not list(other.glob("2026/2026-01-*"))


def test_two_computers_used_in_turn_end_up_the_same(home, tmp_path):
    other = tmp_path / "other"
    shutil.copytree(home, other)
    with open_workbench(other, clock=lambda: LATER) as bench:
        passage = bench.passages.list()[0]
        take_id = bring(bench, sound(tmp_path, 5), passage.id, date(2026, 3, 9))
        bench.marking.add(take_id, 0.02, category="sound")
    with open_workbench(home, clock=lambda: LATER) as bench:
        passage = bench.passages.list()[0]
        take_id = bring(bench, sound(tmp_path, 6), passage.id, date(2026, 3, 9))
        first = bench.filing.takes()[-1].id
        marker = bench.marking.for_take(take_id)
        assert marker == ()
        bench.marking.add(first, 0.01, category="memory")
    a, b = tmp_path / "a.pwbundle", tmp_path / "b.pwbundle"
    bundled(home, a, whole_record=True)
    bundled(other, b, whole_record=True)
    for folder, bundle in ((home, b), (other, a)):
        with open_workbench(folder, clock=lambda: LATER) as bench:
            bench.bundles.merge(bundle)
    assert said(home) == said(other)
    with open_workbench(home, read_only=True) as bench:
        numbers = [row.number for row in bench.practising.day(date(2026, 3, 9))]
        assert sorted(numbers) == [1, 2, 3]


def test_a_clip_that_both_computers_imported_is_one_take(home, tmp_path):
    other = tmp_path / "other"
    with open_workbench(other, clock=lambda: LATER) as bench:
        mine = bring(bench, sound(tmp_path, 0), None, date(2026, 3, 7))
        bench.marking.add(mine, 0.09, category="shift")
        report = bench.bundles.merge(bundled(home, tmp_path / "days.pwbundle"))
        assert (report.takes_new, report.takes_known, report.markers_new) == (2, 1, 3)
        assert len(bench.practising.day(date(2026, 3, 7))) == 1
        assert {m.category for m in bench.marking.for_take(mine)} == {"shift", "rhythm"}


@pytest.fixture
def visit(home, tmp_path) -> Path:
    bundle = bundled(home, tmp_path / "lesson.pwbundle")
    return open_visit(bundle, tmp_path / "visits", lambda: LATER, no_progress, never_stop)


def test_a_teacher_looks_writes_and_sends_back(home, visit, tmp_path):
    reply = tmp_path / "reply.pwreply"
    with open_workbench(visit, clock=lambda: LATER) as bench:
        assert bench.bundles.visiting is not None
        with pytest.raises(PlainFailure, match="Nothing was added"):
            bench.replies.write(reply)
        takes = bench.filing.takes()
        placed = bench.marking.add(takes[0].id, 0.03, category="intonation", text="hear the D")
        assert placed.author is Author.TEACHER
        bench.assignments.add(date(2026, 3, 21), "slow, with a drone", author=Author.TEACHER)
        bench.replies.write(reply)
    with open_workbench(home, clock=lambda: LATER) as bench:
        mine = {m.id: m for row in bench.filing.takes() for m in bench.marking.for_take(row.id)}
        assert bench.replies.receive(reply) == ReplyReport(1, 0, 0, 1, 0)
        assert bench.replies.receive(reply) == ReplyReport(0, 0, 0, 0, 0)
        there = bench.marking.for_take(takes[0].id)
        assert [m.text for m in there if m.author is Author.TEACHER] == ["hear the D"]
        after = {m.id: m for row in bench.filing.takes() for m in bench.marking.for_take(row.id)}
        assert mine.items() < after.items()


def test_a_reply_never_changes_what_the_player_wrote(home, visit, tmp_path):
    reply = tmp_path / "reply.pwreply"
    with open_workbench(visit, clock=lambda: LATER) as bench:
        bench.marking.add(bench.filing.takes()[0].id, 0.03, category="sound")
        bench.replies.write(reply)
    data = json.loads(reply.read_text(encoding="utf-8"))
    with open_workbench(home, clock=lambda: LATER) as bench:
        own = next(m for row in bench.filing.takes() for m in bench.marking.for_take(row.id))
        data["markers"][0] |= {"id": own.id, "text": "not yours"}
        data["markers"].append(data["markers"][0] | {"id": "f" * 32, "take_id": "gone"})
        data["markers"].append({"nonsense": 1})
        reply.write_text(json.dumps(data), encoding="utf-8")
        assert bench.replies.receive(reply) == ReplyReport(0, 0, 0, 0, 1)
        assert own in bench.marking.for_take(own.take_id)


def test_a_visit_takes_no_recordings_and_shows_no_more_than_it_was_given(home, visit, tmp_path):
    with open_workbench(visit, clock=lambda: LATER) as bench:
        with pytest.raises(PlainFailure, match="nothing is recorded"):
            bring(bench, sound(tmp_path, 7), None, date(2026, 3, 9))
        with pytest.raises(PlainFailure, match="nothing is recorded"):
            bench.recording.start()
        assert len(bench.filing.takes()) == 3
        assert bench.promises.list() == ()
        for begin in (
            bench.clock.toggle,
            bench.clock.start,
            bench.sounding.start,
            lambda: bench.practising.set_minutes(date(2026, 3, 9), 30.0),
            lambda: bench.practising.mark_rest(date(2026, 3, 9), planned=False),
            lambda: bench.practising.clear_rest(date(2026, 3, 9)),
            lambda: bench.rehearsals.start([bench.passages.list()[0].id]),
        ):
            with pytest.raises(PlainFailure, match="nothing is recorded, imported or counted"):
                begin()
        assert bench.clock.state().phase == "stopped"
    # The same bundle opens again as it was left, and the player's own journal is no visit.
    again = open_visit(
        tmp_path / "lesson.pwbundle", tmp_path / "visits", lambda: LATER, no_progress, never_stop
    )
    assert again == visit
    with open_workbench(home, read_only=True) as bench:
        assert bench.bundles.visiting is None
        with pytest.raises(PlainFailure, match="your own"):
            bench.replies.write(tmp_path / "x.pwreply")


def test_remarks_of_a_lesson_come_home(home, visit, tmp_path):
    from app.store.store import open_store

    reply = tmp_path / "reply.pwreply"
    with open_store(visit, clock=lambda: LATER) as store:
        store.remarks.add(LessonRemark("a" * 32, DAYS[1], *DAYS, "Much better.", LATER, LATER))
    with open_workbench(visit, clock=lambda: LATER) as bench:
        bench.replies.write(reply)
    with open_workbench(home, clock=lambda: LATER) as bench:
        report = bench.replies.receive(reply)
    assert report == ReplyReport(0, 0, 1, 0, 0)
    assert brought_sentence(report) == "The reply brought 1 remark."
    with open_store(home, read_only=True) as store:
        assert [remark.text for remark in store.remarks.list()] == ["Much better."]


EVIL = (
    "../outside.flac",
    "/etc/passwd",
    "2026/2026-03-07/../../../outside",
    "2026/2026-03-07/a\\..\\b",
    "C:/x",
    "2026/2026-03-07/.hidden",
    "scores/../journal.db",
    "journal.db",
    "backups/journal-2026-03-07-000000.db",
    "2026/2026-03-07/name\x07.flac",
    "2026/2026-03-07/trailing. ",
)


@pytest.mark.parametrize("name", EVIL)
def test_names_that_lead_elsewhere_are_passed_over(home, tmp_path, name):
    bundle = bundled(home, tmp_path / "days.pwbundle")
    with zipfile.ZipFile(bundle, "a") as archive:
        info = zipfile.ZipInfo("x")
        info.filename = name
        archive.writestr(info, b"evil")
    folder = tmp_path / "deep" / "deeper" / "out"
    unpack(bundle, folder, no_progress, never_stop)
    written = {path for path in tmp_path.rglob("*") if path.is_file()}
    assert not any(path.read_bytes() == b"evil" for path in written if path.stat().st_size == 4)


def test_a_link_in_a_bundle_is_not_followed_or_made(home, tmp_path):
    bundle = bundled(home, tmp_path / "days.pwbundle")
    with zipfile.ZipFile(bundle, "a") as archive:
        info = zipfile.ZipInfo("2026/2026-03-07/link.flac")
        info.external_attr = (stat.S_IFLNK | 0o777) << 16
        archive.writestr(info, "/etc/passwd")
    unpack(bundle, tmp_path / "out", no_progress, never_stop)
    assert not (tmp_path / "out/2026/2026-03-07/link.flac").exists()


@settings(deadline=None)
@given(st.text(max_size=60))
def test_no_accepted_name_ever_leaves_the_folder(name):
    if belongs_into_a_journal(name):
        parts = name.split("/")
        assert ".." not in parts
        assert not Path(name).is_absolute()
        assert (Path("/journal") / name).resolve().is_relative_to("/journal")


def test_a_changed_recording_is_left_out_and_named(home, tmp_path):
    bundle = bundled(home, tmp_path / "days.pwbundle")
    broken = tmp_path / "broken.pwbundle"
    changed = ""
    with zipfile.ZipFile(bundle) as old, zipfile.ZipFile(broken, "w") as new:
        for info in old.infolist():
            content = old.read(info)
            if info.filename.endswith(".wav") and not changed:
                changed, content = info.filename, content[:-10]
            new.writestr(info.filename, content)
    with open_workbench(tmp_path / "other", clock=lambda: LATER) as bench:
        report = bench.bundles.merge(broken)
        assert report.recordings_missing == (changed,)
        assert report.takes_new == 2
        assert changed in brought_sentence(report)


@pytest.mark.parametrize("how", ["no text", "elsewhere"])
def test_takes_whose_notes_cannot_be_read_are_counted(home, tmp_path, how):
    bundle = bundled(home, tmp_path / "days.pwbundle")
    broken = tmp_path / "broken.pwbundle"
    held = 0
    with zipfile.ZipFile(bundle) as old, zipfile.ZipFile(broken, "w") as new:
        for info in old.infolist():
            name, content = info.filename, old.read(info)
            if name.startswith("2026/") and name.endswith(".json") and "take" in name:
                held += 1
                name = name if how == "no text" else f"../{name}"
                content = b"\xff" + content
            new.writestr(name, content)
    with open_workbench(tmp_path / "other", clock=lambda: LATER) as bench:
        report = bench.bundles.merge(broken)
        assert (report.takes_new, report.takes_unread) == (0, held)
        assert f"cannot be read: {held} takes." in brought_sentence(report)
        assert bench.bundles.merge(bundle).takes_unread == 0


@pytest.mark.parametrize("content", [b"", b"no zip", b"PK\x03\x04 half"])
def test_what_is_no_bundle_is_told_in_one_sentence(home, tmp_path, content):
    path = tmp_path / "x.pwbundle"
    path.write_bytes(content)
    with (
        open_workbench(home, clock=lambda: LATER) as bench,
        pytest.raises(PlainFailure, match="no bundle"),
    ):
        bench.bundles.merge(path)
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("bundle.json", '{"kind": "bundle", "schema": 1, "id": "../../x"}')
    with pytest.raises(PlainFailure, match="no bundle"):
        open_visit(path, tmp_path / "visits", lambda: LATER, no_progress, never_stop)


def test_stopping_a_merge_or_a_bundle_leaves_everything_as_it_was(home, tmp_path):
    bundle = bundled(home, tmp_path / "days.pwbundle")
    asked = []

    def soon() -> bool:
        asked.append(1)
        return len(asked) > 12

    other = tmp_path / "other"
    with open_workbench(other, clock=lambda: LATER) as bench:
        with pytest.raises(Stopped):
            bench.bundles.merge(bundle, should_stop=soon)
        assert bench.filing.takes() == ()
    assert not list(other.glob("2026/*/*.wav"))
    with open_workbench(home, read_only=True) as bench:
        with pytest.raises(Stopped):
            bench.bundles.write(*DAYS, tmp_path / "b.pwbundle", should_stop=lambda: True)
        with pytest.raises(PlainFailure, match="exists already"):
            bench.bundles.write(*DAYS, bundle)
        with pytest.raises(PlainFailure, match="no take"):
            bench.bundles.write(date(2020, 1, 1), date(2020, 1, 2), tmp_path / "c.pwbundle")
    assert not (tmp_path / "b.pwbundle").exists()
    assert not list(tmp_path.glob(".*part"))
