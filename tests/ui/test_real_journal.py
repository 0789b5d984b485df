"""The window on real services and a small journal on disk."""

import os
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication

from app.services.reading_views import Reading
from app.wiring import open_workbench

ROOT = Path(__file__).parents[2]
TAKES = ROOT / "sample_audio" / "takes"


@pytest.fixture
def window(open_window, real_bench):
    return open_window(real_bench)


def test_a_journal_closed_under_its_window_lets_the_jobs_end(real_journal, open_window):
    bench = open_workbench(real_journal)
    window = open_window(bench)
    begun, found = threading.Event(), []

    def read_slowly(_progress, _should_stop):
        begun.set()
        time.sleep(0.3)
        found.append(len(bench.filing.takes()))

    window.jobs.analyse(read_slowly)
    assert begun.wait(10)
    bench.close()
    assert found == [2], "a job that had begun met a closed journal"
    window.close()
    assert bench.working == []


def test_import_measure_listen(window, settle, real_bench, qtbot):
    main = window.main
    main.import_files([TAKES / "violin-uneven-pulse.flac"])
    settle(window)
    (row,) = main.practice.forms.imports.rows
    assert row.problem == ""
    main.practice.forms.imports.file_all()
    settle(window)
    # It is measured in the background without being asked for.
    qtbot.waitUntil(lambda: real_bench.measuring.waiting() == (), timeout=120_000)
    settle(window)
    main.show_page(1)
    settle(window)
    view = main.listen.view
    assert view.row.passage_name.endswith("Opening")
    assert any(isinstance(note.deviation, Reading) for note in view.notes)


def test_markers_survive_a_restart(  # noqa: PLR0917 - fixtures
    window, settle, real_journal, real_bench, open_window, qtbot
):
    window.main.show_page(1)
    settle(window)
    window.main.listen.transport.seek(5.0)
    qtbot.keyClick(window.main, "1")
    settle(window)
    qtbot.keyClick(window.main, "E")
    field = window.main.focusWidget()
    qtbot.keyClicks(field, "too high after the shift")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    settle(window)
    window.close()
    real_bench.close()
    with open_workbench(real_journal, read_only=True) as again:
        second = open_window(again)
        second.main.show_page(1)
        settle(second)
        (marker,) = second.main.listen.markers.markers
        assert marker.text == "too high after the shift"
        assert marker.start_s == pytest.approx(5.0, abs=0.01)
        second.close()


def test_first_take_against_last(window, settle):
    window.main.show_page(2)
    assert window.jobs.wait_until_idle(60)
    settle(window)
    view = window.main.compare.view
    assert view.aligned
    assert len(view.notes) > 10
    # The two committed takes are the same study, worse on the first day by construction.
    word = {row.key: row.word for row in view.changes}["mean_absolute_cents"]
    assert word in ("better", "no clear change", "too few takes")
    assert window.main.compare.trend.verdict


def test_deleted_take_comes_back(window, settle, real_bench, qtbot):
    window.main.show_page(1)
    settle(window)
    before = {row.id for row in real_bench.filing.takes()}
    ctrl = Qt.KeyboardModifier.ControlModifier
    qtbot.keyClick(window.main, Qt.Key.Key_Delete, modifier=ctrl)
    settle(window)
    assert len(real_bench.filing.takes()) == 1
    qtbot.keyClick(window.main, "Z", modifier=ctrl)
    settle(window)
    assert {row.id for row in real_bench.filing.takes()} == before


def test_calendar_and_lesson_read_the_journal(window, settle):
    window.main.show_page(3)
    settle(window)
    assert "40 min" in window.main.calendar.day_words
    window.main.show_page(4)
    settle(window)
    window.main.lesson.copy()
    settle(window)
    assert "Opening" in QGuiApplication.clipboard().text()


def test_nothing_heavy_is_loaded_when_the_window_shows(tmp_path):
    pages = [f"app.ui.pages.{name}" for name in ("listen", "compare", "calendar", "lesson")]
    script = """
import sys
import threading
import time
from pathlib import Path
from app.ui.application import Window, application_object
from app.wiring import open_workbench
application = application_object()
with open_workbench(Path(sys.argv[1])) as bench:
    window = Window(bench, preferences_file=Path(sys.argv[1]) / "window.ini")
    window.main.show()
    later = ("sqlalchemy", "app.journal.records", "app.services.views", "app.services.clock",
        "app.services.keeping_views", "app.services.recording", "app.services.clock_views")
    print([name for name in later if name in sys.modules])
    for _ in range(5):
        application.processEvents()
    late = ("librosa", "numba", "matplotlib", "scipy", "music21", "av", "reportlab", "soundfile",
        "jinja2", "icalendar", "mutagen", "mido", "pyqtgraph", "PySide6.QtMultimedia",
        "PySide6.QtPrintSupport", "sqlalchemy.orm", "numpy", "typer", "pydantic",
        "rich", "app.services.comparing", "app.ui.widgets.passage_form",
        "app.journal.history", "app.journal.first_listen", "app.journal.bundles", *sys.argv[2:])
    print([name for name in late if name in sys.modules])
    for index in range(5):
        window.main.show_page(index)
    print([name for name in sys.argv[2:] if name in sys.modules])
    window.close()
"""
    journal = tmp_path / "journal"
    open_workbench(journal).close()  # a new one is made by what is to be loaded late
    done = subprocess.run(
        [sys.executable, "-c", script, str(journal), *pages],
        cwd=ROOT,
        env=os.environ | {"QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
        timeout=120,
        check=True,
    )
    shown, at_first, later = done.stdout.splitlines()
    assert shown == "[]", "the journal is read once the window stands"
    assert at_first == "[]"
    assert later == str(pages)


def test_emitting_keeps_the_references_of_true(qapp):
    """A version of PySide6 took one away with every emit until the interpreter died of it."""
    from PySide6.QtCore import QObject, Signal

    class Bell(QObject):
        rung = Signal()

    bell = Bell()
    before = sys.getrefcount(True)
    for _ in range(50):
        bell.rung.emit()
    assert sys.getrefcount(True) >= before - 5
