"""``passagework demo`` on a machine without a display."""

from datetime import datetime, timedelta

import pytest

from app.services.demo import is_demo
from app.services.display import display_problem
from sample_audio import scenario


@pytest.fixture(autouse=True)
def short_story(monkeypatch):
    whole = scenario.demo_days
    monkeypatch.setattr("sample_audio.scenario.demo_days", lambda end: whole(end)[:2])


def test_it_builds_once_and_finds_it_ready(run, tmp_path, journal_dir, monkeypatch):
    monkeypatch.setattr("app.services.display.display_problem", lambda: "There is no display here.")
    place = tmp_path / "demo"
    first = run("demo", "--folder", place)
    assert first.code == 0, first.err
    assert "2 takes, 2 measured." in first.out
    assert "There is no display here." in first.out
    assert (place / "summary.txt").read_text(encoding="utf-8").strip() in first.out
    for picture in (place / "pictures").iterdir():
        assert str(picture) in first.out
    assert is_demo(place / "journal")
    days = [path.name for path in (place / "journal").glob("20*/20*")]
    # Before six in the morning the story ends yesterday.
    end = (datetime.now().astimezone() - timedelta(hours=6)).date()
    assert min(days) == scenario.demo_days(end)[0].date.isoformat()
    assert not journal_dir.exists()

    def not_again(*_arguments, **_options):
        raise AssertionError("built again")

    monkeypatch.setattr("app.wiring.build_demo", not_again)
    second = run("demo", "--folder", place, "--no-window")
    assert second.code == 0
    assert "Building" not in second.err
    assert second.out.startswith(first.out.splitlines()[0])


def test_it_refuses_the_players_own_journal(run, journal_dir, tone_file):
    assert run("import", tone_file()).code == 0
    before = sorted(path.name for path in journal_dir.iterdir())
    for folder in (journal_dir, journal_dir.parent):
        ran = run("demo", "--folder", folder, "--no-window")
        assert ran.code == 2
        assert "left alone" in ran.err or "leaves it alone" in ran.err
    assert sorted(path.name for path in journal_dir.iterdir()) == before


@pytest.mark.parametrize(
    ("environment", "platform", "has_display"),
    [
        ({}, "linux", False),
        ({"DISPLAY": ":0"}, "linux", True),
        ({"WAYLAND_DISPLAY": "wayland-0"}, "linux", True),
        ({"QT_QPA_PLATFORM": "offscreen"}, "linux", True),
        ({"QT_QPA_PLATFORM": "xcb"}, "linux", False),
        ({}, "darwin", True),
        ({}, "win32", True),
    ],
)
def test_whether_there_is_a_display(environment, platform, has_display):
    found = display_problem(environment, platform, lambda _library: True)
    assert (found == "") == has_display


@pytest.mark.parametrize(
    ("environment", "missing", "said"),
    [
        ({"DISPLAY": ":0"}, {"libxcb-cursor.so.0"}, "apt install libxcb-cursor0)"),
        ({"WAYLAND_DISPLAY": "wayland-0"}, {"libxcb-cursor.so.0"}, ""),
        ({"QT_QPA_PLATFORM": "offscreen"}, {"libGL.so.1", "libEGL.so.1"}, "libgl1 libegl1)"),
        ({"DISPLAY": ":0"}, set(), ""),
    ],
)
def test_a_library_that_is_missing_is_named_before_qt_ends_the_program(environment, missing, said):
    # What Qt 6.5 and later need under X: doc.qt.io, "Qt for Linux Requirements".
    problem = display_problem(environment, "linux", lambda library: library not in missing)
    assert said in problem
    assert (problem == "") == (said == "")
