"""The lesson report: one page that needs nothing else, a PDF, and remarks that lead on."""

import base64
import io
import re
import shutil
import subprocess
from datetime import UTC, date, datetime, timedelta
from html.parser import HTMLParser
from pathlib import Path

import av
import pytest

from app.journal.failures import PlainFailure
from app.journal.kinds import Author, MarkerState
from app.journal.records import Marker, PlayingSettings
from app.services.lesson.gathering import heard_around
from app.services.stopping import Stopped
from app.wiring import open_workbench

EVENING = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)
WEEK = (date(2026, 3, 8), date(2026, 3, 14))
TAKES = Path(__file__).parents[2] / "sample_audio" / "takes"
EVIL = '<script>alert("x")</script> & <img src=http://a.example/x.png onerror=x>'


@pytest.fixture(scope="module")
def journal(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("lesson") / "journal"
    with open_workbench(folder, clock=lambda: EVENING) as bench:
        passage = bench.passages.add(EVIL, "Öffnung ♯♭", "1-8", PlayingSettings("viola"))
        for day, name in ((9, "viola-study-first-day"), (14, "viola-study-last-day")):
            path = TAKES / f"{name}.flac"
            proposals = bench.importing.propose([path], passage.id, date(2026, 3, day))
            take = bench.importing.file(proposals)[0]
            bench.measuring.measure(take.id)
            bench.marking.add(take.id, 2.0, category="rhythm", text=EVIL, weight=3)
            bench.marking.add(take.id, 3.0, 5.5, category="sound", author=Author.TEACHER)
        bench.practising.set_minutes(date(2026, 3, 9), 95)
        bench.practising.mark_rest(date(2026, 3, 10), planned=True)
        bench.assignments.add(date(2026, 3, 14), f"slowly {EVIL}", set_on=date(2026, 3, 8))
    return folder


@pytest.fixture
def bench(journal):
    with open_workbench(journal, create=False, read_only=True, clock=lambda: EVENING) as opened:
        yield opened


class Page(HTMLParser):
    """What a page would load and say."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.addresses: list[str] = []
        self.tags: list[str] = []
        self.words = ""
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        self.tags.append(tag)
        self.addresses += [v for k, v in attrs if k in {"src", "href"} and v]
        assert not [k for k, _ in attrs if k.startswith("on")]

    def handle_data(self, data):
        self.words += data


@pytest.fixture
def page(bench, tmp_path) -> Page:
    path = bench.lessons.write_page(*WEEK, tmp_path / "lesson.html")
    return Page(path.read_text(encoding="utf-8"))


def test_the_page_loads_nothing_and_runs_nothing(page):
    assert page.addresses
    assert all(address.startswith("data:") for address in page.addresses)
    assert "script" not in page.tags
    assert page.tags.count("img") == 1  # minutes; two takes are too few for a line
    assert page.tags.count("audio") == 4


def test_what_was_typed_is_shown_as_typed(page):
    assert page.words.count(EVIL) >= 4
    assert "Öffnung ♯♭" in page.words


def test_no_text_turns_around_what_follows_it(tmp_path):
    """The marks of Unicode Standard Annex #9, section 2: overrides, embeddings, isolates."""
    turned = "\u202ex\u202a\u202b\u202d\u2066y\u2067\u2068"
    with open_workbench(tmp_path / "journal", clock=lambda: EVENING) as bench:
        bench.lessons.add_remark(f"{turned}\u05e9\u05dc\u05d5\u05dd", WEEK[1], *WEEK)
        path = bench.lessons.write_page(*WEEK, tmp_path / "lesson.html")
    text = path.read_text(encoding="utf-8")
    assert "xy\u05e9\u05dc\u05d5\u05dd" in text
    assert not set(turned) - {"x", "y"} & set(text)


def test_it_says_the_days_minutes_tasks_takes_and_markers(page):
    words = " ".join(page.words.split())
    assert "2 days practised of 7, 1 h 35 min, 2 takes, 1 rest day." in words
    assert "Mon 9 Mar 2026 1 h 35 min 1" in words
    assert "rest, planned" in words
    assert "Open: slowly" in words
    assert re.search(r"mean deviation \d+\.\d ± \d+\.\d cents", words)
    assert "rhythm, weight 3, to work on (self)" in words
    assert "sound, weight 2, to work on (teacher)" in words


def test_the_clips_sound_and_are_as_long_as_they_should_be(page):
    clips = [a for a in page.addresses if a.startswith("data:audio/mp4;base64,")]
    lengths = []
    for clip in clips:
        content = base64.b64decode(clip.partition(",")[2])
        with av.open(io.BytesIO(content)) as container:
            frames = [frame.to_ndarray() for frame in container.decode(audio=0)]
        lengths.append(sum(f.shape[-1] for f in frames) / 44_100)
        assert max(abs(f).max() for f in frames) > 0.01
    # From 2 s before the place to 3 s after it: 0 to 5 s, and 1 to 8.5 s.
    assert lengths == pytest.approx([5.0, 7.5, 5.0, 7.5], abs=0.1)


def test_headless_chromium_shows_the_page_without_a_complaint(bench, tmp_path):
    chromium = shutil.which("chromium") or shutil.which("chromium-browser")
    if chromium is None:
        pytest.skip("Chromium is not installed")
    path = bench.lessons.write_page(*WEEK, tmp_path / "lesson.html")
    shot = tmp_path / "phone.png"
    done = subprocess.run(
        [
            chromium, "--headless=new", "--no-sandbox", "--disable-gpu", "--enable-logging=stderr",
            "--window-size=400,900", f"--screenshot={shot}", path.as_uri(),
        ],
        capture_output=True, text=True, timeout=120, check=False,
        env={"HOME": str(tmp_path), "PATH": "/usr/bin:/bin"},
    )  # fmt: skip
    assert shot.stat().st_size > 20_000, done.stderr
    assert "CONSOLE" not in done.stderr


def test_the_pdf_has_its_fonts_inside_and_says_the_same(bench, tmp_path):
    path = bench.lessons.write_paper(*WEEK, tmp_path / "lesson.pdf")
    content = path.read_bytes()
    assert content.startswith(b"%PDF-")
    assert b"DejaVuSans" in content
    reader = shutil.which("pdftotext")
    if reader is None:
        pytest.skip("poppler's pdftotext is not installed")
    text = subprocess.run(
        [reader, "-layout", str(path), "-"], capture_output=True, text=True, check=True
    ).stdout
    words = " ".join(text.split())
    assert "2 days practised of 7, 1 h 35 min, 2 takes, 1 rest day." in words
    assert '<script>alert("x")</script> &' in words
    assert "Öffnung ♯♭" in words


def test_the_same_days_give_the_same_page(bench, tmp_path):
    a = bench.lessons.write_page(*WEEK, tmp_path / "a.html", with_clips=False)
    b = bench.lessons.write_page(*WEEK, tmp_path / "b.html", with_clips=False)
    assert a.read_bytes() == b.read_bytes()


def test_days_without_anything_still_make_a_report(bench, tmp_path):
    days = (date(2025, 1, 1), date(2025, 1, 3))
    words = Page(bench.lessons.write_page(*days, tmp_path / "a.html").read_text("utf-8")).words
    assert "0 days practised of 3, no minutes entered." in words
    assert bench.lessons.write_paper(*days, tmp_path / "a.pdf").stat().st_size > 5000


def test_a_recording_that_is_gone_costs_its_clip_and_no_more(journal, tmp_path):
    copy = tmp_path / "journal"
    shutil.copytree(journal, copy)
    for path in copy.glob("2026/2026-03-14/*.flac"):
        path.unlink()
    with open_workbench(copy, clock=lambda: EVENING) as bench:
        page = Page(bench.lessons.write_page(*WEEK, tmp_path / "x.html").read_text("utf-8"))
    assert page.tags.count("audio") == 2
    assert "is not there" in page.words


def test_nothing_is_written_over_and_stopping_leaves_nothing(bench, tmp_path):
    taken = tmp_path / "mine.html"
    taken.write_text("mine")
    for write in (bench.lessons.write_page, bench.lessons.write_paper):
        with pytest.raises(PlainFailure, match="exists already"):
            write(*WEEK, taken)
        with pytest.raises(Stopped):
            write(*WEEK, tmp_path / "other", should_stop=lambda: True)
        with pytest.raises(PlainFailure, match="first day"):
            write(*reversed(WEEK), tmp_path / "other")
    assert [path.name for path in tmp_path.iterdir()] == ["mine.html"]


def test_remarks_become_tasks_once_and_stand_in_the_next_report(tmp_path):
    with open_workbench(tmp_path / "journal", clock=lambda: EVENING) as bench:
        remark = bench.lessons.add_remark(
            "Much better.\n- slow bows\n\n* slow bows", WEEK[1], *WEEK
        )
        due = WEEK[1] + timedelta(days=7)
        tasks = bench.lessons.make_tasks(remark, due)
        assert [task.goal for task in tasks] == ["Much better.", "slow bows"]
        assert bench.lessons.make_tasks(remark, due) == ()
        page = Page(bench.lessons.write_page(*WEEK, tmp_path / "a.html").read_text("utf-8"))
        assert "Much better." in page.words
        plan = bench.planning.propose(30)
        assert "slow bows" in str(plan)
        changed = bench.lessons.change_remark(remark, "Other words")
        assert [r.text for r in bench.lessons.remarks()] == [changed.text]
        with pytest.raises(PlainFailure, match="empty"):
            bench.lessons.add_remark("  \n ", WEEK[1], *WEEK)


@pytest.mark.parametrize(
    ("start_s", "end_s", "heard"),
    [(0.5, None, (0.0, 3.5)), (9.5, None, (7.5, 10.0)), (1.0, 30.0, (0.0, 10.0))],
)
def test_what_is_heard_stays_inside_the_take(start_s, end_s, heard):
    marker = Marker(
        "m", "t", start_s, end_s, "rhythm", 2, "", Author.SELF,
        MarkerState.TO_WORK_ON, EVENING, EVENING,
    )  # fmt: skip
    assert heard_around(marker, 10.0) == heard
