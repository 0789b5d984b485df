"""Backups in the window: listed, made, and gone back to by closing and opening again."""

import pytest

OFFSCREEN = ("propagateSizeHints", "raise")


@pytest.mark.qt_log_ignore(*OFFSCREEN)
def test_a_backup_is_made_listed_and_asked_for_twice_before_going_back(
    open_window, real_bench, settle, qtbot
):
    window = open_window(real_bench)
    window.main.sheets.show_backups()
    settle(window)
    sheet = window.main.sheets.backups
    before = sheet.list.count()
    sheet.make.click()
    settle(window)
    assert sheet.list.count() == before + 1
    sheet.back.click()
    assert window.main.isVisible()
    assert "come back" in sheet.words.text()
    with qtbot.waitSignal(window.desk.closeWanted):
        sheet.back.click()
    assert not window.main.isVisible()
    assert window.desk.restore_wanted == real_bench.backups.list()[0].name


@pytest.mark.qt_log_ignore(*OFFSCREEN)
def test_choosing_another_backup_asks_anew(open_window, real_bench, settle):
    real_bench.backups.make()
    real_bench.backups.make()
    window = open_window(real_bench)
    window.main.sheets.show_backups()
    settle(window)
    sheet = window.main.sheets.backups
    sheet.back.click()
    sheet.list.setCurrentRow(1)
    assert sheet.words.text() == ""
    sheet.back.click()
    assert window.desk.restore_wanted == ""


def test_a_running_recording_is_not_cut_off(window, bench, monkeypatch):
    told = []
    window.desk.told.connect(told.append)
    bench.recording.is_recording = True
    window.desk.close_to_restore("journal-2026-03-14-193000.db")
    assert window.main.isVisible()
    assert window.desk.restore_wanted == ""
    assert told[-1].sentence == "A take is being recorded."
