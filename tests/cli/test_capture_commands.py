"""``no-retake``, ``watched``, ``import --start --end`` and minutes by item, as they are typed."""

import os
import time

import pytest
import soundfile


@pytest.fixture
def clip(tone_file):
    """A clip that has arrived whole: it has not changed for a minute."""
    path = tone_file("phone/2026-03-10 18.15.00.wav", seconds=3.0)
    arrived = time.time() - 60
    os.utime(path, (arrived, arrived))
    return path


def test_the_no_retake_rule_is_switched_and_said(run, tone_file):
    assert run("import", tone_file(), "--passage", "Scale", "--date", "2026-03-01").code == 0
    assert "as often as you like" in run("no-retake", "Scale").out
    switched = run("no-retake", "Scale", "--on", "--json").json
    assert (switched["on"], switched["may_record"]) == (True, True)
    assert "kept whatever it is" in run("no-retake", "Scale").out
    assert run("no-retake", "Scale", "--off", "--json").json["on"] is False
    spoilt = run("no-retake", "Scale", "--device-failed", "it was muted")
    assert (spoilt.code, "no take of this passage today" in spoilt.err) == (2, True)
    assert run("no-retake", "Nothing").code == 2


def test_new_clips_of_the_watched_folder_are_shown_and_filed(run, clip):
    assert "No folder is watched" in run("watched").out
    shown = run("watched", "--folder", clip.parent)
    assert shown.code == 0, shown.err
    assert clip.name in shown.out
    assert "file's name" in shown.out
    assert run("watched", "--json").json["clips"][0]["practice_day"] == "2026-03-10"
    filed = run("watched", "--file", "--passage", "Scale", "--json").json["filed"]
    assert [(row["practice_day"], row["passage"]) for row in filed] == [("2026-03-10", "Scale")]
    assert "nothing new" in run("watched").out
    assert run("watched", "--none", "--json").json["folder"] is None


def test_a_clip_put_aside_is_not_offered_again(run, clip):
    assert run("watched", "--folder", clip.parent, "--aside").code == 0
    assert run("watched", "--json").json["clips"] == []
    assert clip.exists()


def test_a_folder_that_is_not_there_is_one_sentence(run, tmp_path):
    ran = run("watched", "--folder", tmp_path / "gone")
    assert ran.code == 2
    assert "There is no folder" in ran.err


def test_a_part_of_a_clip_becomes_a_take(run, clip, journal_dir):
    ran = run("import", clip, "--start", "0.5", "--end", "2", "--json")
    assert ran.code == 0, ran.err
    assert ran.json["filed"][0]["duration_s"] == pytest.approx(1.5)
    (whole,) = (journal_dir / "originals").iterdir()
    assert soundfile.info(whole).duration == pytest.approx(3.0)
    assert "part of this clip" in run("import", clip).err


def test_the_report_says_where_the_minutes_went(run):
    assert run("clock", "start", "G major", "--new", "scale").code == 0
    time.sleep(0.1)
    assert run("clock", "stop").code == 0
    report = run("report").out
    assert "Minutes by item" in report
    assert "G major" in report
