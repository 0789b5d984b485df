"""Expected failures are one sentence; bugs say where the log is; neither stops the sound."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QGuiApplication

from app.journal.failures import PlainFailure
from app.ui.application import show_failure
from app.ui.widgets.bug_dialog import BugDialog
from app.ui.widgets.failure_dialog import FailureDialog

OFFSCREEN = ("propagateSizeHints", "raise")


def test_plain_failure_is_shown_with_its_next_step_and_stays(window, qtbot):
    window.desk.tell_failure(PlainFailure("The disk is full.", "Make room, then record again."))
    assert window.main.messages.text == "The disk is full. Make room, then record again."
    assert not window.main.messages.is_passing
    qtbot.keyClick(window.main, Qt.Key.Key_Escape)
    assert window.main.messages.text == ""


def test_news_goes_away_by_itself(window):
    window.desk.tell("Undone: marker deleted.")
    assert window.main.messages.is_passing


def test_message_offers_to_undo(window, settle, qtbot, bench):
    window.main.show_page(1)
    settle(window)
    window.main.desk.keys.action("listen.delete_take").trigger()
    settle(window)
    assert "take11" in bench.state.deleted
    window.main.messages.act()
    settle(window)
    assert window.main.messages.text


@pytest.mark.qt_log_ignore(*OFFSCREEN)
def test_bug_says_where_the_log_is_and_is_not_modal(window, settle, bench, caplog):
    bench.practising.today = lambda: 1 / 0
    window.main.practice.refresh()
    settle(window)
    (dialog,) = window.bug_dialogs
    assert isinstance(dialog, BugDialog)
    assert not dialog.isModal()
    assert "passagework.log" in dialog.words
    assert "ZeroDivisionError" in dialog.details
    dialog.close()


@pytest.mark.qt_log_ignore(*OFFSCREEN)
def test_after_a_fault_nothing_is_said_to_be_still_at_work(window, settle, caplog):
    strip = window.main.lesson.job
    strip.run("Writing", lambda _progress, _should_stop: 1 / 0, lambda _: None)
    assert strip.words.text() == "Writing"
    settle(window)
    assert strip.words.text() == "It could not be finished; nothing unfinished is left."
    assert not strip.is_busy
    window.bug_dialogs[0].close()


@pytest.mark.qt_log_ignore(*OFFSCREEN)
def test_what_escapes_from_a_slot(window, caplog):
    failure = PlainFailure("No room.", "Make room.")
    window.take_exception(PlainFailure, failure, None)
    assert window.main.messages.text == "No room. Make room."
    assert window.bug_dialogs == []
    window.take_exception(ValueError, ValueError("odd"), None)
    assert len(window.bug_dialogs) == 1
    window.bug_dialogs[0].close()


@pytest.mark.qt_log_ignore(*OFFSCREEN)
def test_the_log_holds_the_bug(window, caplog):
    window.take_exception(ValueError, ValueError("odd thing"), None)
    window.bug_dialogs[0].close()
    assert "odd thing" in caplog.text


@pytest.mark.qt_log_ignore(*OFFSCREEN)
def test_the_details_of_a_bug_are_copied_without_names_of_folders(window, bench):
    home = Path.home()
    words = f"{home / 'Music' / 'x.wav'}"
    with pytest.raises(ValueError, match="is not in the subpath") as caught:
        Path(words).relative_to(bench.journal_dir / "journal.db")
    window.show_bug(caught.value)
    (dialog,) = window.bug_dialogs
    dialog.copy.click()
    copied = QGuiApplication.clipboard().text()
    assert "<home>/Music/x.wav" in copied.replace("\\", "/")
    assert "<journal>/journal.db" in copied.replace("\\", "/")
    assert "test_the_details_of_a_bug" in copied, "where it happened is still told"
    assert str(home) not in copied
    assert f"'{bench.journal_dir}" not in copied
    dialog.close()


@pytest.mark.qt_log_ignore(*OFFSCREEN)
def test_without_a_window_a_failure_has_a_dialog_of_its_own(qtbot, qapp, tmp_path):
    seen = []

    def press_return() -> None:
        dialog = next(w for w in qapp.topLevelWidgets() if isinstance(w, FailureDialog))
        seen.append((dialog.isVisible(), dialog.words))
        qtbot.keyClick(dialog, Qt.Key.Key_Return)

    QTimer.singleShot(0, press_return)
    show_failure(
        PlainFailure("days.pwbundle is damaged.", "Ask for it again."),
        preferences_file=tmp_path / "window.ini",
    )
    assert seen == [(True, "days.pwbundle is damaged. Ask for it again.")]
