"""The Lesson page on a real journal: written, answered, bundled, shared, saved openly."""

from datetime import date, timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtWidgets import QLabel

from app.services.bundling.visiting import VISITING, open_visit
from app.services.sharing.choice import ShareForm
from app.services.stopping import never_stop, no_progress
from app.wiring import open_workbench

LAST = date(2026, 3, 14)
OFFSCREEN = ("propagateSizeHints", "raise")
pytestmark = pytest.mark.qt_log_ignore(*OFFSCREEN)


@pytest.fixture
def window(open_window, real_bench, settle):
    opened = open_window(real_bench)
    opened.main.show_page(4)
    settle(opened)
    return opened


@pytest.fixture
def lesson(window):
    return window.main.lesson


def words_of(widget) -> str:
    return "\n".join(label.text() for label in widget.findChildren(QLabel))


def test_the_report_is_read_part_by_part_and_a_marked_place_is_heard(
    lesson, window, real_bench, settle, qtbot
):
    take = next(t for t in real_bench.filing.takes() if t.practice_day == LAST)
    real_bench.marking.add(take.id, 5.0, category="shift", text="late")
    lesson.refresh()
    settle(window)
    words = words_of(lesson.report)
    for said in ("14 Mar 2026", "40 min", "Study: Opening", "shift, weight 2", "late", "cents"):
        assert said in words, said
    hear = next(b for b in lesson.report.findChildren(type(lesson._page)) if b.text() == "Hear")
    with qtbot.waitSignal(window.desk.listenWanted) as told:
        hear.click()
    assert told.args == [take.id, pytest.approx(3.0)]


def test_page_and_paper_are_written_by_key_with_a_proposed_name(
    lesson, window, settle, tmp_path, qtbot
):
    qtbot.keyClick(lesson, "H")
    assert not lesson.asking.isModal()
    assert Path(lesson.asking.selectedFiles()[0]).name == "lesson-2026-03-14.html"
    lesson.asking.fileSelected.emit(str(tmp_path / "lesson.html"))
    lesson.asking.close()
    settle(window)
    assert "<html" in (tmp_path / "lesson.html").read_text(encoding="utf-8")
    assert lesson.job.words.text() == "lesson.html was written."
    assert lesson.job.open_button.isVisible()
    lesson.write_paper(tmp_path / "lesson.pdf")
    settle(window)
    assert (tmp_path / "lesson.pdf").read_bytes().startswith(b"%PDF")
    lesson.write_paper(tmp_path / "lesson.pdf")
    settle(window)
    assert "lesson.pdf" in lesson.job.words.text()
    assert "was written" not in lesson.job.words.text()


def test_writing_that_is_cancelled_leaves_no_file(lesson, window, settle, tmp_path):
    lesson.write_page(tmp_path / "lesson.html")
    window.desk.keys.action("work.cancel").trigger()
    settle(window)
    assert not list(tmp_path.glob("*.html*"))
    assert not lesson.job.is_busy


def test_a_remark_is_written_changed_and_becomes_tasks(lesson, window, real_bench, settle):
    pane = lesson.remarks
    pane.text.setPlainText("Scales at 84\nShift earlier")
    pane.keep.click()
    settle(window)
    kept = real_bench.lessons.remarks()[0]
    assert (kept.lesson_day, kept.first_day, kept.last_day) == (
        LAST,
        LAST - timedelta(days=6),
        LAST,
    )
    assert "Scales at 84" in words_of(lesson.report)
    pane.change.click()
    pane.text.setPlainText("Scales at 88\nShift earlier")
    pane.keep.click()
    settle(window)
    assert [r.text for r in real_bench.lessons.remarks()] == ["Scales at 88\nShift earlier"]
    pane.due_on.show_day(LAST + timedelta(days=5))
    pane.tasks.click()
    settle(window)
    assert {(r.assignment.goal, r.assignment.due_on) for r in real_bench.assignments.open()} == {
        ("Scales at 88", LAST + timedelta(days=5)),
        ("Shift earlier", LAST + timedelta(days=5)),
    }


def test_a_bundle_is_visited_answered_and_its_reply_dropped_on_the_window(  # noqa: PLR0917
    lesson, window, real_bench, open_window, settle, tmp_path, qtbot
):
    bundle, reply = tmp_path / "days.pwbundle", tmp_path / "answer.pwreply"
    lesson.bundles.write(bundle)
    settle(window)
    assert "holds 1 take" in lesson.bundles.job.words.text()
    folder = open_visit(
        bundle, tmp_path / "visits", real_bench.lessons._clock, no_progress, never_stop
    )
    with open_workbench(folder) as theirs:
        visiting = open_window(theirs)
        main = visiting.main
        assert "teacher" in main.windowTitle()
        assert not main.practice.panel.isEnabled()
        told = []
        visiting.desk.told.connect(told.append)
        main.import_files([tmp_path / "clip.wav"])
        assert told[-1].sentence == VISITING.sentence
        for name in ("clock.toggle", "clock.item_1", "clock.listen", "practice.rehearsal"):
            told.clear()
            visiting.desk.keys.action(name).trigger()
            settle(visiting)
            assert [message.sentence for message in told] == [VISITING.sentence], name
        assert not main.practice.clock_card.isEnabled()
        assert not main.practice.forms.rehearsal.isVisible()
        assert theirs.clock.state().phase == "stopped"
        main.show_page(3)
        settle(visiting)
        main.calendar.chart.choose(main.calendar.chart.today)
        assert not main.calendar.minutes.isEnabled()
        assert not main.calendar.day.rest.isEnabled()
        main.show_page(4)
        settle(visiting)
        assert main.lesson.bundles.reply_button.isVisible()
        take = theirs.filing.takes()[0]
        theirs.marking.add(take.id, 4.0, category="sound", text="more bow")
        main.lesson.bundles.write_reply(reply)
        settle(visiting)
        assert "1 marker" in main.lesson.bundles.job.words.text()
        visiting.desk.close_to_go_home()
        assert visiting.desk.home_wanted
        settle(visiting)
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(reply))])
    window.main.dropEvent(
        QDropEvent(
            QPointF(5, 5),
            Qt.DropAction.CopyAction,
            mime,
            Qt.MouseButton.LeftButton,
            Qt.KeyboardModifier.NoModifier,
        )
    )
    settle(window)
    assert lesson.bundles.came.text() == "The reply brought 1 new marker."
    assert [m.text for m in real_bench.marking.for_take(take.id)] == ["more bow"]


def test_looking_into_a_bundle_closes_the_window_and_asks_for_it(lesson, window, tmp_path, qtbot):
    with qtbot.waitSignal(window.desk.closeWanted):
        window.desk.close_to_visit(tmp_path / "days.pwbundle")
    assert window.desk.visit_wanted == tmp_path / "days.pwbundle"
    assert not window.main.isVisible()


def test_a_clip_is_shown_before_it_can_be_written_and_is_remembered(
    window, real_bench, settle, tmp_path, qtbot
):
    take = real_bench.filing.takes()[0]
    window.main.listen_to(take.id)
    settle(window)
    window.main.listen.playback.select((2.0, 6.0))
    window.desk.keys.action("listen.share").trigger()
    sheet = window.main.sheets.share
    assert not sheet.write_button.isEnabled()
    assert sheet.fields.stretch == (2.0, 6.0)
    qtbot.waitUntil(sheet.write_button.isEnabled, timeout=20_000)
    assert "LUFS" in sheet.preview.words()
    assert "for you to judge" in sheet.preview.words()
    sheet.fields.form.choose(ShareForm.CARD)
    sheet.fields.changed.emit()
    assert not sheet.write_button.isEnabled()
    qtbot.waitUntil(sheet.write_button.isEnabled, timeout=20_000)
    assert "The title card" in sheet.preview.words()
    assert not list(tmp_path.glob("*.mp4"))
    sheet.write(tmp_path / "clip.mp4")
    assert window.jobs.wait_until_idle(60)
    settle(window)
    assert (tmp_path / "clip.mp4").stat().st_size > 1000
    assert [(c.start_s, c.end_s) for c in real_bench.sharing.shared()] == [(2.0, 6.0)]
    window.main.show_page(4)
    settle(window)
    assert "clip.mp4" in window.main.lesson.shared.list.item(0).text()


def test_of_several_clips_each_is_looked_at_before_any_is_written(
    window, real_bench, settle, tmp_path, qtbot
):
    takes = real_bench.filing.takes()
    window.desk.shareWanted.emit(takes, 0.0, 0.0)
    sheet = window.main.sheets.share
    qtbot.waitUntil(lambda: "LUFS" in sheet.preview.words(), timeout=20_000)
    settle(window)
    assert len(sheet.choices) == 2
    assert not sheet.write_button.isEnabled()
    sheet.takes.setCurrentRow(1)
    qtbot.waitUntil(sheet.write_button.isEnabled, timeout=20_000)
    sheet.write(tmp_path)
    assert window.jobs.wait_until_idle(60)
    settle(window)
    assert len(real_bench.sharing.shared()) == 2


def test_days_are_saved_in_an_open_format_and_what_is_left_out_is_said(
    window, real_bench, settle, tmp_path
):
    window.desk.exportWanted.emit("", date(2026, 3, 1), LAST)
    sheet = window.main.sheets.export
    sheet.write(tmp_path)
    settle(window)
    assert len(list(tmp_path.glob("*.jams"))) == 2
    assert sheet.job.words.text() == "2 files written."
    sheet.write(tmp_path)
    settle(window)
    assert "2 takes left out" in sheet.job.words.text()
