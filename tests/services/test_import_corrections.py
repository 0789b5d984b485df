"""What the player corrects before a clip is filed: its day where that is in doubt, its part."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest
import soundfile

from app.journal.failures import PlainFailure
from app.services.clip_days import day_question, days_in_doubt
from app.services.importing import SomeNotFiled
from audio.importing import ClipInfo

TURN = 4


def info_at(when, *, offset_known=False):
    return ClipInfo(30.0, 48_000, 1, "mov", "aac", True, 0, when, "container", offset_known)


@pytest.mark.parametrize(
    ("local_hour", "in_doubt"), [(3, True), (5, True), (1, True), (8, False), (19, False)]
)
def test_only_near_the_turn_of_the_day_a_clip_without_a_zone_is_in_doubt(local_hour, in_doubt):
    local = datetime(2026, 3, 11, local_hour, 20, tzinfo=UTC)
    days = days_in_doubt(info_at(local), local, TURN)
    assert days == ((date(2026, 3, 10), date(2026, 3, 11)) if in_doubt else ())


def test_a_clip_that_says_its_zone_is_never_in_doubt():
    local = datetime(2026, 3, 11, 3, 59, tzinfo=UTC)
    assert days_in_doubt(info_at(local, offset_known=True), local, TURN) == ()
    naive = replace(info_at(local), recorded_at=local.replace(tzinfo=None))
    assert days_in_doubt(naive, local, TURN) == ()  # local where it was played: a file's name


def test_the_question_names_both_days():
    local = datetime(2026, 3, 11, 3, 20, tzinfo=UTC)
    words = day_question(local, (date(2026, 3, 10), date(2026, 3, 11)))
    assert "03:20" in words
    assert "10 Mar" in words
    assert "11 Mar" in words


@pytest.fixture
def in_doubt(bench, tone_file):
    (proposal,) = bench.importing.propose([tone_file("clip.wav", seconds=3.0)])
    days = (date(2026, 3, 10), date(2026, 3, 11))
    return replace(proposal, question="Was it the 10th or the 11th?", days=days)


def test_a_clip_in_doubt_is_filed_once_its_day_is_said(bench, in_doubt):
    with pytest.raises(SomeNotFiled, match="10th or the 11th"):
        bench.importing.file([in_doubt])
    assert bench.filing.takes() == ()
    (row,) = bench.importing.file([in_doubt.on_day(date(2026, 3, 10))])
    assert row.practice_day == date(2026, 3, 10)


@pytest.fixture
def clip(tone_file):
    return tone_file("2026-03-10 18.15.00.wav", seconds=3.0)


def test_a_take_may_be_a_part_and_the_whole_clip_is_kept(bench, clip, journal_dir):
    (proposal,) = bench.importing.propose([clip])
    (row,) = bench.importing.file([replace(proposal, from_s=0.5, to_s=2.0)])
    assert row.duration_s == pytest.approx(1.5)
    assert row.file.suffix == ".flac"
    assert row.recorded_at == proposal.recorded_at + timedelta(seconds=0.5)
    assert "kept whole as originals/" in row.notice
    (kept,) = (journal_dir / "originals").iterdir()
    assert kept.read_bytes() == clip.read_bytes()
    whole, _ = soundfile.read(clip, dtype="int32")
    part, _ = soundfile.read(row.file, dtype="int32")
    assert (part == whole[24_000:96_000]).all()


def test_a_clip_of_which_a_part_is_kept_is_known_again(bench, clip):
    (proposal,) = bench.importing.propose([clip])
    bench.importing.file([replace(proposal, from_s=1.0)])
    (again,) = bench.importing.propose([clip])
    assert "part of this clip" in again.duplicate_of


def test_a_part_that_cannot_be_filed_leaves_no_original(bench, clip, journal_dir, monkeypatch):
    (proposal,) = bench.importing.propose([clip])

    def full(*_arguments):
        raise PlainFailure("The disk is full.", "Make room.")

    monkeypatch.setattr(bench.recording._store.takes, "add", full)
    with pytest.raises(SomeNotFiled, match="disk is full"):
        bench.importing.file([replace(proposal, from_s=1.0)])
    assert list((journal_dir / "originals").iterdir()) == []
    assert not list(journal_dir.rglob("*.flac"))


def test_too_little_is_no_part(bench, clip, journal_dir):
    (proposal,) = bench.importing.propose([clip])
    with pytest.raises(SomeNotFiled, match="too little"):
        bench.importing.file([replace(proposal, from_s=1.0, to_s=1.01)])
    assert list((journal_dir / "originals").iterdir()) == []


def test_a_folder_stands_for_the_clips_in_it(bench, tone_file, tmp_path):
    (tmp_path / "trip" / "later").mkdir(parents=True)
    first = tone_file("trip/2026-03-08 10.00.00.wav", frequency_hz=300)
    second = tone_file("trip/later/2026-03-09 10.00.00.wav", frequency_hz=310)
    alone = tone_file("2026-03-10 10.00.00.wav", frequency_hz=320)
    (tmp_path / "trip" / "notes.txt").write_text("no clip")
    (tmp_path / "trip" / ".hidden.wav").write_bytes(first.read_bytes())
    found = bench.importing.propose([alone, tmp_path / "trip"])
    assert [proposal.path for proposal in found] == [alone, first, second]
    assert [proposal.practice_day.day for proposal in found] == [10, 8, 9]
    rows = bench.importing.file(found)
    assert len({row.practice_day for row in rows}) == 3
    assert all(row.is_late_entry for row in rows)


def test_an_empty_folder_proposes_nothing(bench, tmp_path):
    (tmp_path / "empty").mkdir()
    assert bench.importing.propose([tmp_path / "empty"]) == ()
