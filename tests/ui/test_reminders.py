"""Reminders: off by default, once a day at the chosen time, never after the day is done."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from PySide6.QtCore import QTime

from app.ui.models.reminders import Reminders
from app.wiring import open_workbench

EVENING = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)


class SetClock:
    now = EVENING

    def __call__(self):
        return self.now


@pytest.fixture
def clock():
    return SetClock()


@pytest.fixture
def bench(real_journal, clock):
    with open_workbench(real_journal, clock=clock) as bench:
        bench.practising.set_minutes(EVENING.date(), 0)
        for row in bench.practising.today().takes:
            bench.filing.delete(row.id)
        yield bench


@pytest.fixture
def said(bench, open_window, settle):
    """What the desktop was asked to show each time somebody looked."""
    window = open_window(bench)
    shown: list[str] = []
    reminders = Reminders(window.desk, window.main, shown.append)

    def look() -> list[str]:
        reminders.look()
        settle(window)
        return shown

    look.window = window
    yield look
    reminders.close()


def wish(bench, minute: int | None) -> None:
    settings = bench.practising.settings()
    bench.practising.change_settings(replace(settings, reminder_minute=minute))


def test_it_is_off_until_it_is_wished(said, bench):
    assert bench.practising.settings().reminder_minute is None
    assert said() == []


def test_it_comes_once_a_day_from_its_time_on(said, bench, clock):
    wish(bench, 20 * 60)
    assert said() == []
    clock.now += timedelta(minutes=31)
    assert said() == ["There is still time to play today, if you like; a few minutes count too."]
    clock.now += timedelta(minutes=30)
    assert len(said()) == 1
    clock.now += timedelta(days=1)
    assert len(said()) == 2


def test_none_after_the_day_is_done(said, bench, clock):
    wish(bench, 20 * 60)
    bench.practising.set_minutes(EVENING.date(), 5)
    clock.now += timedelta(hours=2)
    assert said() == []


def test_without_a_tray_it_is_a_note_in_the_window(said, bench, settle, monkeypatch):
    from PySide6.QtWidgets import QSystemTrayIcon

    monkeypatch.setattr(QSystemTrayIcon, "isSystemTrayAvailable", staticmethod(lambda: False))
    wish(bench, 19 * 60)
    window = said.window
    window.main.reminders.look()
    settle(window)
    assert "There is still time to play today" in window.main.messages.text


def test_with_a_tray_the_desktop_shows_it(said, bench, settle, monkeypatch):
    from PySide6.QtWidgets import QSystemTrayIcon

    shown = []
    for name in ("isSystemTrayAvailable", "supportsMessages"):
        monkeypatch.setattr(QSystemTrayIcon, name, staticmethod(lambda: True))
    monkeypatch.setattr(QSystemTrayIcon, "show", lambda _self: None)
    monkeypatch.setattr(
        QSystemTrayIcon, "showMessage", lambda _self, title, words, *_: shown.append((title, words))
    )
    wish(bench, 19 * 60)
    window = said.window
    window.main.reminders.look()
    settle(window)
    ((title, words),) = shown
    assert title == "Passagework"
    assert "if you like" in words
    assert window.main.messages.text == ""


@pytest.mark.qt_log_ignore("propagateSizeHints", "raise")
def test_the_wish_and_its_time_are_kept_in_the_settings(said, bench, settle):
    window = said.window
    window.main.sheets.show_settings()
    settle(window)
    sheet = window.main.sheets.settings
    assert not sheet.reminder.wanted.isChecked()
    assert not sheet.reminder.time.isEnabled()
    sheet.reminder.wanted.setChecked(True)
    sheet.reminder.time.setTime(QTime(18, 45))
    sheet.keep.click()
    settle(window)
    assert bench.practising.settings().reminder_minute == 18 * 60 + 45
    window.main.sheets.show_settings()
    settle(window)
    assert sheet.reminder.minute == 18 * 60 + 45
    sheet.reminder.wanted.setChecked(False)
    sheet.keep.click()
    settle(window)
    assert bench.practising.settings().reminder_minute is None
