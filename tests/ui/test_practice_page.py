"""Practice: minutes, recording, the aim's question, importing, passages.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import fakes
import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtWidgets import QComboBox, QLineEdit, QPushButton

from app.journal.failures import PlainFailure
from app.journal.kinds import AimMet
from app.services.sounding import SoundingState
from app.services.views import LevelReading
from app.ui.models.recorder import RecorderState


def labels_of(widget) -> str:
    from PySide6.QtWidgets import QLabel

    shown = [label for label in widget.findChildren(QLabel) if label.isVisibleTo(widget)]
    return "\n".join(label.text() for label in shown)


def button(widget, text) -> QPushButton:
    return next(b for b in widget.findChildren(QPushButton) if b.text() == text)


def test_two_counts_are_shown_as_two_numbers(window):
    text = labels_of(window.main.practice.head)
    assert "41\ndays practised" in text
    assert "56\ndays since first entry" in text


def test_minutes_are_typed(window, settle, qtbot, bench):
    qtbot.keyClick(window.main, "T")
    field = window.main.focusWidget()
    qtbot.keyClicks(field, "55")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    settle(window)
    assert bench.state.minutes[fakes.TODAY] == 55


def test_a_channel_is_chosen_for_an_input_with_several(window, settle, bench):
    panel, channel = window.main.practice.panel, window.main.practice.panel.channel
    assert not channel.isVisibleTo(panel), "the desk microphone has one"
    panel.input.choose("line")
    panel.input.picked.emit("line")
    settle(window)
    assert channel.isVisibleTo(panel)
    assert [channel.itemText(at) for at in range(channel.count())] == [
        "Usual channel", "Channel 1", "Channel 2",
    ]  # fmt: skip
    assert channel.accessibleName() == "Channel of the input"
    window.main.recorder.toggle_level()
    settle(window)
    channel.choose(2)
    channel.picked.emit(2)
    settle(window)
    assert bench.recording.channels == {"line": 2}
    assert bench.recording.listened_to == ("line", ("line", 2)), "the level follows at once"
    window.main.recorder.toggle_level()
    settle(window)
    window.main.recorder.find_inputs()
    settle(window)
    assert channel.key == 2


def test_a_channel_that_is_gone_is_said_and_the_first_is_shown(window, settle, bench):
    bench.recording.channels["line"] = 5
    panel = window.main.practice.panel
    window.main.recorder.device_key = "line"
    window.main.recorder.find_inputs()
    settle(window)
    assert panel.channel.key == 1
    assert "The input 'Line' has no channel 5 any more" in labels_of(panel)
    panel.channel.picked.emit(2)
    settle(window)
    assert "any more" not in labels_of(panel)
    assert bench.recording.channels["line"] == 2


def test_minutes_that_were_refused_are_not_shown_as_kept(window, settle, qtbot, bench):
    def refuse(_day, _minutes):
        raise PlainFailure("The disk is full.", "Make room.")

    kept, bench.practising.set_minutes = bench.state.minutes[fakes.TODAY], refuse
    for page in (0, 3):
        window.main.show_page(page)
        settle(window)
        at = window.main.calendar if page else window.main.practice.head
        if page:
            window.main.calendar.chart.choose(fakes.TODAY)
            settle(window)
        field = at.minutes.line
        field.setFocus()
        field.selectAll()
        qtbot.keyClicks(field, "77")
        qtbot.keyClick(field, Qt.Key.Key_Return)
        settle(window)
        assert window.main.messages.text == "The disk is full. Make room."
        assert field.text() == f"{kept:.0f} min"
        window.main.messages.put_away()


def test_record_with_one_key_and_answer_the_aim(window, settle, qtbot, bench):
    page = window.main.practice
    qtbot.keyClick(window.main, "A")
    qtbot.keyClicks(window.main.focusWidget(), "third finger higher in bar 5")
    qtbot.keyClick(window.main.focusWidget(), Qt.Key.Key_Return)
    qtbot.keyClick(window.main.focusWidget(), "R")
    settle(window)
    assert window.main.recorder.state is RecorderState.RECORDING
    assert button(page.panel, "Stop").isEnabled()
    assert window.main.rail.marked_words(0) == "A take is being recorded"
    qtbot.wait(120)
    assert "0:03" in labels_of(page.panel)
    qtbot.keyClick(window.main, "R")
    settle(window)
    assert window.main.recorder.state is RecorderState.IDLE
    assert window.main.rail.marked_words(0) == ""
    take = next(row for row in bench.state.rows.values() if row.id.startswith("take102"))
    assert take.passage_id == fakes.STUDY.id
    assert "Was the aim met?" in labels_of(page.panel)
    qtbot.keyClick(window.main, "2", Qt.KeyboardModifier.AltModifier)
    settle(window)
    assert bench.state.rows[take.id].aim_met is AimMet.PARTLY
    # It is measured in the background without being asked for.
    qtbot.waitUntil(lambda: bench.state.rows[take.id].state == "measured", timeout=20_000)
    assert "Was the aim met?" not in labels_of(page.panel)


def test_level_is_a_word_not_a_colour_only(window, settle, qtbot, bench):
    qtbot.keyClick(window.main, "L")
    settle(window)
    assert bench.recording.is_listening
    qtbot.waitUntil(lambda: "Good" in window.main.practice.panel.level_words)
    window.main.show_page(1)
    settle(window)
    assert not bench.recording.is_listening, "the input is closed when the page is left"


def test_without_an_input_the_page_says_what_to_plug_in(open_window, bench, settle, qtbot):
    bench.recording.has_input = False
    window = open_window(bench)
    panel = window.main.practice.panel
    assert "Plug in a microphone." in labels_of(panel)
    assert not button(panel, "Record").isEnabled()
    qtbot.keyClick(window.main, "R")
    assert window.main.recorder.state is RecorderState.IDLE
    bench.recording.is_plugged_in = True  # a scan finds it, the list of the start does not
    button(panel, "Look again").click()
    settle(window)
    assert button(panel, "Record").isEnabled()
    assert "Plug in a microphone." not in labels_of(panel)


def test_an_input_that_came_back_is_found_after_a_failed_start(window, settle, bench):
    def refuse(*_arguments, **_named):
        bench.recording.has_input = False
        raise PlainFailure("The input would not open.", "Plug it in again.")

    bench.recording.start, start = refuse, bench.recording.start
    bench.recording.is_plugged_in = True
    window.main.practice.panel.toggle()
    settle(window)
    assert bench.recording.has_input, "scanned again by itself"
    bench.recording.start = start
    window.main.practice.panel.toggle()
    settle(window)
    assert window.main.recorder.state is RecorderState.RECORDING


def test_a_mark_is_counted_once_it_is_kept(window, settle, bench):
    panel = window.main.practice.panel
    panel.toggle()
    settle(window)

    def refuse(_at_s):
        raise PlainFailure("Nothing is being recorded.", "Record first, then mark.")

    bench.recording.mark = refuse
    window.main.recorder.mark()
    settle(window)
    assert window.main.recorder.mark_count == 0


def test_a_window_left_open_over_night_shows_the_new_day(window, settle, bench):
    clock = window.main.practice.clock
    shown = []
    clock._note()
    settle(window)
    window.desk.daysChanged.connect(lambda: shown.append(bench.state.day_now))
    clock._note()
    settle(window)
    assert shown == [], "the same day"
    bench.state.day_now += timedelta(days=1)
    clock._note()
    settle(window)
    assert len(shown) == 1


def test_recording_that_ends_by_itself_is_kept_and_told(window, settle, qtbot, bench):
    window.main.practice.panel.toggle()
    settle(window)
    bench.recording.ended = bench.recording.pending("The microphone was unplugged.")
    qtbot.waitUntil(lambda: "unplugged" in window.main.messages.text)
    settle(window)
    assert "is kept" in window.main.messages.text
    assert any(row.id.startswith("take102") for row in bench.state.rows.values())


def test_start_that_fails_is_told(window, settle, bench):
    def refuse(*_arguments, **_named):
        raise PlainFailure("The disk is full.", "Make room.")

    bench.recording.start = refuse
    window.main.practice.panel.toggle()
    settle(window)
    assert window.main.messages.text == "The disk is full. Make room."
    assert window.main.recorder.state is RecorderState.IDLE


def test_recovered_recording_is_offered_and_filed(open_window, bench, settle):
    left = replace(bench.recording.pending(), recovered=True, duration_s=83.0)
    bench.recording.left = (replace(left, started_at=datetime(2026, 3, 17, 20, 4, tzinfo=UTC)),)
    window = open_window(bench)
    panel = window.main.practice.panel
    assert "Tue 17 Mar 2026, 20:04, 1:23 long" in labels_of(panel)
    before = len(bench.state.rows)
    button(panel, "File it").click()
    settle(window)
    assert len(bench.state.rows) == before + 1
    assert "never filed" not in labels_of(panel)


@pytest.fixture
def dropped(window, settle):
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile("/clips/lesson 1.m4a"), QUrl.fromLocalFile("/clips/b.txt")])
    drop = QDropEvent(
        QPointF(700, 400), Qt.DropAction.CopyAction, mime, Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )  # fmt: skip
    window.main.show_page(3)
    window.main.dropEvent(drop)
    settle(window)
    return window


def test_files_dropped_on_any_page_are_proposed(dropped):
    assert dropped.main.page_index == 0
    text = labels_of(dropped.main.practice.forms.imports)
    assert "lesson 1.m4a" in text
    assert "This is not a recording." in text
    assert "date inside the file" in text


def test_day_and_passage_are_corrected_before_filing(dropped, settle, bench):
    imports = dropped.main.practice.forms.imports
    imports.rows[0].day.show_day(fakes.TODAY.replace(day=2))
    imports.rows[0].passage.choose("")
    button(imports, "File 1 recording").click()
    settle(dropped)
    (filed,) = bench.importing.filed
    assert filed.path == Path("/clips/lesson 1.m4a")
    assert filed.practice_day == fakes.TODAY.replace(day=2)
    assert filed.passage_id is None
    assert dropped.main.messages.text == "1 take filed under 1 practice day."
    assert not imports.isVisible()


def test_a_part_is_kept_and_the_day_is_asked_where_it_is_in_doubt(dropped, settle, bench):
    imports = dropped.main.practice.forms.imports
    days = (fakes.TODAY.replace(day=2), fakes.TODAY.replace(day=3))
    (asked, _) = bench.importing.propose([Path("/clips/night.mov"), Path("/clips/b.txt")])
    imports.show_proposals([replace(asked, question="Was it the 2nd or the 3rd?", days=days)], ())
    (entry,) = imports.rows
    assert "2nd or the 3rd" in labels_of(imports)
    imports.file_all()
    assert "no day yet" in dropped.main.messages.text
    assert bench.importing.filed == ()
    entry.answer.choose(days[0].isoformat())
    entry.part.start.setValue(4.0)
    entry.part.end.setValue(20.0)
    assert entry.part.words.text() == "0:31, trimmed to 0:16"
    imports.file_all()
    settle(dropped)
    (filed,) = bench.importing.filed
    assert (filed.practice_day, filed.question) == (days[0], "")
    assert (filed.from_s, filed.to_s) == (4.0, 20.0)


def test_rows_come_in_the_order_of_day_and_moment_and_of_numbers_in_names(window, bench):
    imports = window.main.practice.forms.imports
    names = ("clip 10.m4a", "b.txt", "clip 2.m4a", "clip 1.m4a", "later.m4a", "before.m4a")
    found = {
        p.path.stem: p for p in bench.importing.propose([Path(f"/clips/{name}") for name in names])
    }
    one = found["clip 1"]
    found["later"] = replace(one, path=Path("later"), recorded_at=fakes.NOW + timedelta(hours=1))
    found["before"] = replace(
        one, path=Path("before"), practice_day=fakes.TODAY - timedelta(days=1),
        recorded_at=fakes.NOW + timedelta(hours=2),
    )  # fmt: skip
    imports.show_proposals(tuple(found.values()), ())
    order = [entry.path.stem for entry in imports.rows]
    assert order == ["before", "clip 1", "clip 2", "clip 10", "later", "b"]


def test_all_of_a_clip_is_kept_unless_a_part_is_chosen(dropped, settle, bench):
    button(dropped.main.practice.forms.imports, "File 1 recording").click()
    settle(dropped)
    assert not bench.importing.filed[0].is_trimmed


def test_cancelled_import_files_nothing(dropped, settle, bench):
    button(dropped.main.practice.forms.imports, "Cancel").click()
    settle(dropped)
    assert bench.importing.filed == ()
    assert not dropped.main.practice.forms.imports.isVisible()


def test_new_passage_is_made_and_chosen(window, settle, qtbot, bench):
    qtbot.keyClick(window.main, "N")
    form = window.main.practice.forms.passage
    piece, name, bars = (
        field for field in form.findChildren(QLineEdit)[:3] if field.isVisibleTo(form)
    )
    qtbot.keyClicks(piece, "Concerto")
    qtbot.keyClick(piece, Qt.Key.Key_Return)
    settle(window)
    assert window.main.messages.text.startswith("A passage needs a piece and a name.")
    qtbot.keyClicks(name, "Cadenza")
    qtbot.keyClicks(bars, "90-101")
    qtbot.keyClick(bars, Qt.Key.Key_Return)
    settle(window)
    assert bench.state.passages[-1].name == "Cadenza"
    assert window.main.practice.panel.passage.key == bench.state.passages[-1].id
    assert not form.isVisible()


def test_enter_keeps_a_passage_from_any_of_its_fields(window, settle, qtbot, bench):
    qtbot.keyClick(window.main, "E")
    form = window.main.practice.forms.passage
    boxes = form.findChildren(QComboBox)
    instrument = next(box for box in boxes if box.accessibleName() == "Instrument")
    qtbot.keyClick(instrument, Qt.Key.Key_Down)
    qtbot.keyClick(instrument, Qt.Key.Key_Return)
    settle(window)
    assert not form.isVisible()
    assert bench.state.passages[0].settings.instrument == "cello"


def test_marker_to_work_on_opens_its_take_at_its_place(window, settle, qtbot, bench):
    table = window.main.practice.markers.table
    table.selectRow(0)
    qtbot.keyClick(table, Qt.Key.Key_Return)
    settle(window)
    assert window.main.page_index == 1
    assert window.main.listen.view.row.id == "take11"
    assert bench.playing.now.position_s == pytest.approx(3.3)


def test_measuring_can_be_cancelled(window, settle, bench, qtbot):
    import threading

    started = threading.Event()

    def slow(take_id, progress, should_stop):
        from app.services.stopping import Stopped

        started.set()
        while not should_stop():
            progress(0.3)
        raise Stopped

    bench.measuring.measure = slow
    bench.state.waiting.extend(["take1", "take2"])
    window.main.queue.look()
    qtbot.waitUntil(started.is_set, timeout=20_000)
    qtbot.waitUntil(window.main.work.isVisible)
    qtbot.keyClick(window.main, Qt.Key.Key_Period, modifier=Qt.KeyboardModifier.ControlModifier)
    settle(window)
    assert not window.main.work.isVisible()
    assert window.main.queue.left_count == 0
    assert "Measuring was stopped." in window.main.messages.text
    window.main.practice.refresh()
    settle(window)
    assert window.main.queue.left_count == 0, "what was cancelled does not start again by itself"


def test_passage_is_changed(window, settle, qtbot, bench):
    qtbot.keyClick(window.main, "E")
    form = window.main.practice.forms.passage
    name = next(f for f in form.findChildren(QLineEdit) if f.text() == "Opening")
    name.setText("Opening, slower")
    button(form, "Keep").click()
    settle(window)
    assert [p.name for p in bench.state.passages] == ["Opening, slower"]


@pytest.mark.qt_log_ignore("propagateSizeHints", "raise")
def test_settings_are_the_players_own(window, settle, qtbot, bench):
    window.main.desk.keys.action("settings").trigger()
    settle(window)
    sheet = window.main.sheets.settings
    assert not sheet.isModal()
    sheet.turn.setValue(3)
    sheet.output.choose("box")
    sheet.reaction.setValue(0.2)
    sheet.turn.setFocus()
    qtbot.keyClick(sheet.turn, Qt.Key.Key_Return)
    settle(window)
    assert not sheet.isVisible()
    assert bench.state.settings.day_turn_hour == 3
    assert bench.playing.output == "box"
    assert window.desk.preferences.reaction_s == pytest.approx(0.2)


def test_the_recording_side_stays_as_wide_as_its_column(window, settle, bench):
    """Whatever is said while a take is recorded and the input listened to, nothing is cut off."""
    page = window.main.practice
    bench.recording.channels["line"] = 5
    window.main.recorder.device_key = "line"
    window.main.recorder.find_inputs()
    page.clock_card._show_heard(SoundingState(True, True, 134.0, 150.0))
    page.panel.toggle()
    settle(window)
    for _ in range(12):
        window.main.recorder.mark()
    settle(window)
    window.main.recorder._timer.stop()  # the input's own level would overwrite this one
    page.panel._show_level(LevelReading(-18.0, -9.5, "good", False, 4000.0, 123_456))
    assert "12 marks, 123456 samples lost" in labels_of(page.panel)
    column = page.panel.parentWidget()
    scroll_bar_px = 16
    assert column.minimumSizeHint().width() <= column.parentWidget().parentWidget().width() - (
        scroll_bar_px
    )
    page.panel.toggle()
    settle(window)
