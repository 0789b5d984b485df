"""A player's sitting at the real window, in a process that may be killed at any moment.

Run by ``soak.py``, which sends the sitting as one line of JSON and answers each line that
waits. Every line that is written here says what the window said at that moment; what is
written counts as confirmed. Nothing of the journal is asked but through the window.

Longer than 300 lines because all that a player does shares one pair of hands and eyes.
"""

import json
import logging
import sys
import time
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.journal.failures import PlainFailure
from app.services.workbench import Workbench
from app.ui.application import Window, application_object
from app.ui.models.recorder import RecorderState
from app.ui.widgets.basics import Button
from app.wiring import open_workbench
from tests.network_attempts import report

PRACTICE, LISTEN, COMPARE, CALENDAR, LESSON = range(5)
NOW: list[Callable[[], datetime]] = []
_PATIENCE_S = 600.0
_BEAT_MIN = 4
_TRIES = 3


class StuckError(Exception):
    """The window did not do what it was waited for."""


def say(what: str, **more: Any) -> None:
    """Tell the parent what the window says."""
    print(json.dumps({"said": what, **more}), flush=True)


def wait_at(phase: str) -> None:
    """Tell the parent where the sitting stands, and wait for leave to go on."""
    print(json.dumps({"phase": phase, "now": NOW[0]().isoformat()}), flush=True)
    sys.stdin.readline()


class Told(logging.Handler):
    """Passes what the program logs on."""

    def emit(self, record: logging.LogRecord) -> None:
        """Say it with its traceback."""
        self.setFormatter(logging.Formatter("%(levelname)s %(name)s: %(message)s"))
        say("log", words=self.format(record))


class Sitting:
    """One window from opening to closing, driven by its keys and buttons.

    Parameters
    ----------
    bench : Workbench
    scratch : Path
        For the window's own settings.
    seconds : list of float
        How much later than the real clock it is; grows as simulated time passes.
    """

    def __init__(self, bench: Workbench, scratch: Path, seconds: list[float]) -> None:
        self._application = application_object()
        self._seconds = seconds
        self._messages = 0
        self._taken: set[str] = set()
        self.window = Window(bench, preferences_file=scratch / "window.ini")
        sys.excepthook = self.window.take_exception
        self.main = self.window.main
        self.desk = self.window.desk
        self.desk.told.connect(self._told)
        self.main.resize(self.main.minimumSize())
        self.main.show()
        self.settle()

    # -- hands and eyes -----------------------------------------------------------------

    def wait(self, what: str, met: Callable[[], object], patience_s: float = _PATIENCE_S) -> None:
        """Let the window run until something can be seen."""
        end = time.monotonic() + patience_s
        while not met():
            if time.monotonic() > end:
                raise StuckError(what)
            self._application.processEvents()
            time.sleep(0.02)

    def settle(self) -> None:
        """Let everything that was asked for arrive, and look for faults."""
        for _ in range(3):
            if not self.window.jobs.wait_until_idle(_PATIENCE_S):
                raise StuckError("jobs that end")
            self._application.processEvents()
        for dialog in tuple(self.window.bug_dialogs):
            say("bug", words=dialog.details)
            dialog.close()
            self._application.processEvents()

    def press(self, action: str) -> None:
        """Press a key of the window."""
        self.desk.keys.action(action).trigger()

    def _told(self, message: Any) -> None:
        self._messages += 1
        say("message", words=f"{message.sentence} {message.next_step}".strip())

    # -- what can be done ---------------------------------------------------------------

    def sleep_until(self, wanted: str) -> None:
        """Leave the window open over night, and come back to the Practice page."""
        day = str(self.main.practice._view.practice_day) if self.main.practice._view else ""
        self._seconds[0] += (datetime.fromisoformat(wanted) - NOW[0]()).total_seconds()
        self.main.practice.clock._beat.timeout.emit()  # its half minute is over
        self.settle()
        self._taken.clear()
        view = self.main.practice._view
        if self.main.page_index == PRACTICE and view is not None:
            say("woke", day=str(view.practice_day), before=day)
        self.main.show_page(CALENDAR)
        self.main.show_page(PRACTICE)
        self.settle()

    def passage(self, piece: str, name: str) -> None:
        """Add a passage by its form."""
        self.press("practice.passage")
        form = self.main.practice.forms.passage
        form._piece.setText(piece)
        form._name.setText(name)
        form._add.click()
        self.settle()

    def file_what_was_left(self) -> None:
        """File recordings that the window offers, as a player would after a crash."""
        self.main.show_page(PRACTICE)
        self.main.recorder.find_unfinished()
        self.settle()
        card = self.main.practice.panel._recovered
        for _ in range(20):
            if card.isHidden():
                return
            say("offered", words=card._words.text())
            _button(card, "File it").click()
            self.settle()
            self._read_takes()
        say("not filed", words=card._words.text())

    def record(self, passage: int, seconds: float, marks: int) -> None:
        """Record a take with the key, mark moments of it, and see it in today's table."""
        main, recorder = self.main, self.main.recorder
        main.show_page(PRACTICE)
        choice = main.practice.panel.passage
        choice.setCurrentIndex(passage % max(1, choice.count() - 1))
        for attempt in range(_TRIES):
            before = self._messages
            self.press("practice.record")
            self.wait(
                "a recording that begins",
                lambda: recorder.state in (RecorderState.RECORDING, RecorderState.IDLE),
            )
            if recorder.state is RecorderState.RECORDING:
                break
            self.settle()
            say("no recording", attempt=attempt, told=self._messages - before)
            self._look_for_inputs()
        else:
            return
        say("recording")
        self._while_recording(seconds, marks)

    def _look_for_inputs(self) -> None:
        wait_at("help wanted")
        button = self.main.practice.panel._look_again
        if button.isVisible():
            button.click()
        else:
            self.main.recorder.find_inputs()
        self.settle()

    def _while_recording(self, seconds: float, marks: int) -> None:
        panel, recorder = self.main.practice.panel, self.main.recorder
        begun, shown, is_asked = time.monotonic(), "", False
        while time.monotonic() - begun < seconds and recorder.state is RecorderState.RECORDING:
            self._application.processEvents()
            time.sleep(0.02)
            words = panel._elapsed.text()
            if words != shown and words[:1].isdigit():
                shown = words
                length, _, marked = words.partition("  ")
                say("elapsed", length=length, marks=marked)
                if marks and len(length) > 3 and length > "0:00":
                    marks -= 1
                    self.press("practice.mark")
                if not is_asked and length >= "0:01":
                    is_asked = True
                    wait_at("recording")
        wait_at("stopping")
        if recorder.state is RecorderState.RECORDING:
            self.press("practice.record")
        wait_at("filing")
        self.wait("the end of a recording", lambda: recorder.state is RecorderState.IDLE)
        self.settle()
        self._read_takes()

    def _read_takes(self) -> None:
        """Say which takes of today the table shows."""
        table = self.main.practice.takes.table
        model = table.rows_model
        for at, row in enumerate(model.rows):
            if row.id not in self._taken:
                self._taken.add(row.id)
                words = [model.data(model.index(at, col)) for col in range(3)]
                say("take", id=row.id, day=str(row.practice_day), words=words)

    def bring_in(self, files: list[str]) -> None:
        """Import files as if they were dropped on the window."""
        main, panel = self.main, self.main.practice.forms.imports
        main.import_files([Path(name) for name in files])
        self.settle()
        if not panel.isVisible():
            return
        told: list[str] = []
        self.desk.told.connect(lambda message: told.append(message.sentence))
        wait_at("importing")
        panel._file.click()
        wait_at("import running")
        self.settle()
        if any("filed under" in words for words in told):
            say("imported", files=files, words=told[-1])
        main.practice.show_today()
        self.settle()
        self._read_takes()

    def mark(self, words: list[str]) -> None:
        """Put markers with a text on the latest take, by key, and read the list."""
        main = self.main
        main.show_page(LISTEN)
        self.settle()
        if main.listen.view is None:
            return
        self.wait("a take to hear", lambda: main.listen.transport.is_ready)
        pane = main.listen.markers
        take_id = main.listen.view.row.id
        for at, text in enumerate(words):
            before = {marker.id for marker in pane.markers}
            main.listen.transport.seek(0.4 + 0.5 * at)
            wait_at("marking")
            self.press(f"listen.mark_{1 + at % 3}")
            self.settle()
            placed = [marker for marker in pane.markers if marker.id not in before]
            if not placed or pane.shown is None or pane.shown.id != placed[0].id:
                continue
            self.press("listen.edit_marker")
            QTest.keyClicks(pane.text, text)
            wait_at("writing")
            QTest.keyClick(pane.text, Qt.Key.Key_Return)
            self.settle()
            self._read_markers(take_id)

    def _read_markers(self, take_id: str) -> None:
        model = self.main.listen.markers._table.rows_model
        listed = [
            (marker.id, [model.data(model.index(at, col)) for col in range(3)])
            for at, marker in enumerate(model.rows)
        ]
        say("markers", take=take_id, listed=listed)

    def unmark(self) -> None:
        """Delete the first marker of the take that is shown; at times think better of it."""
        pane = self.main.listen.markers
        if self.main.page_index != LISTEN or not pane.markers:
            return
        take_id, marker = self.main.listen.view.row.id, pane.markers[0]
        pane.choose(marker.id)
        pane.delete_chosen()
        self.settle()
        if marker.id not in {one.id for one in pane.markers}:
            say("deleted", marker=marker.id, take=take_id)
        if len(pane.markers) % 2:
            self.press("undo")
            self.settle()
        self._read_markers(take_id)

    def play(self) -> None:
        """Play the take that is shown for a moment."""
        transport = self.main.listen.transport
        if not transport.is_ready:
            return
        self.press("listen.play")
        wait_at("playing")
        end = time.monotonic() + 1.0
        while time.monotonic() < end:
            self._application.processEvents()
            time.sleep(0.02)
        transport.stop()
        self.settle()

    def compare(self) -> None:
        """Compare the latest take with the first of its passage."""
        self.main.show_page(COMPARE)
        self.settle()
        view = self.main.compare.view
        if view is not None:
            say("compared", words=self.main.compare.words, aligned=view.aligned)

    def practise(self, minutes: int) -> None:
        """Let the practice clock run for so long, in simulated time, and stop it."""
        self.main.show_page(PRACTICE)
        clock = self.main.practice.clock
        if clock.view.phase == "forgotten":
            say("forgotten")
            self._answer()
        if clock.view.phase != "running":
            self.press("clock.toggle")
            self.settle()
        if clock.view.phase != "running":
            return
        for _ in range(0, minutes, _BEAT_MIN):
            self._seconds[0] += 60 * _BEAT_MIN
            clock._beat.timeout.emit()  # its half minute is over
            self.settle()
            self.read_minutes()
            wait_at("clock running")
        self.press("clock.stop")
        self.settle()
        if clock.view.phase == "running":
            wait_at("help wanted")  # the disk is full; the window says to make room and try again
            self.press("clock.stop")
            self.settle()
        if clock.view.phase == "running":
            say("stuck", step="practise", words="a clock that stops")
        self.read_minutes()

    def _answer(self) -> None:
        card = self.main.practice.clock_card.forgotten
        buttons = [one for one in card.findChildren(Button) if one.isVisible()]
        if buttons:
            buttons[-1].click()
            self.settle()

    def type_minutes(self, minutes: int) -> None:
        """Type today's minutes; they count once the calendar reads them back."""
        self.main.show_page(PRACTICE)
        self.settle()
        field = self.main.practice.head.minutes
        before = self._messages
        self.press("practice.minutes")
        wait_at("typing")
        QTest.keyClicks(field.line, str(minutes))
        QTest.keyClick(field.line, Qt.Key.Key_Return)
        wait_at("typed")
        self.settle()
        if self._messages == before:
            say("minutes typed", minutes=field._field.value())
        self.read_minutes()

    def read_minutes(self) -> None:
        """Say how many minutes the Practice page shows for today."""
        view = self.main.practice._view
        shown = self.main.practice.head.minutes._field.value()
        if view is not None and shown >= 0:
            say("minutes", day=str(view.practice_day), minutes=shown)

    def report(self, target: str) -> None:
        """Write the week for the teacher."""
        lesson = self.main.lesson
        self.main.show_page(LESSON)
        self.settle()
        path = Path(target)
        (lesson.write_paper if path.suffix == ".pdf" else lesson.write_page)(path)
        wait_at("reporting")
        self.settle()
        if path.name in lesson.job.words.text() and "was written" in lesson.job.words.text():
            say("report", file=target)
        else:
            say("no report", words=lesson.job.words.text())

    def look_over(self) -> None:
        """Say what the window shows of every day and of every take."""
        main, take_ids = self.main, []
        main.show_page(CALENDAR)
        self.settle()
        for bar in main.calendar.chart.bars:
            day = bar.practice_day
            if bar.minutes is None and not bar.take_count:
                continue
            main.calendar.chart.choose(day)
            self.settle()
            for row in main.calendar.takes.rows_model.rows:
                say("shown take", id=row.id, day=str(day))
                take_ids.append(row.id)
            say("shown minutes", day=str(day), minutes=bar.minutes)
        main.show_page(LISTEN)
        self.settle()
        for take_id in take_ids:
            main.listen.show_take(take_id)
            self.settle()
            self._read_markers(take_id)

    def close(self) -> None:
        """Close the window."""
        wait_at("closing")
        self.settle()
        self.window.close()


def _button(widget: Any, words: str) -> Button:
    return next(one for one in widget.findChildren(Button) if one.text() == words)


def main() -> None:
    """Read the sitting and sit through it."""
    given = json.loads(sys.stdin.readline())
    logging.getLogger("app").addHandler(Told(logging.WARNING))
    for name in ("audio", "analysis"):
        logging.getLogger(name).addHandler(Told(logging.WARNING))
    begin, begun, later = datetime.fromisoformat(given["now"]), time.monotonic(), [0.0]

    def clock() -> datetime:
        return begin + timedelta(seconds=later[0] + time.monotonic() - begun)

    NOW.append(clock)
    report(lambda words: say("network", words=words))
    wait_at("opening")
    try:
        bench = open_workbench(Path(given["journal"]), clock=clock)
    except PlainFailure as failure:
        say("refused", words=f"{failure.sentence} {failure.next_step}")
        sys.exit(2)
    with bench:
        sitting = Sitting(bench, Path(given["scratch"]), later)
        wait_at("opened")
        sitting.file_what_was_left()
        for name, arguments in given["steps"]:
            try:
                getattr(sitting, name)(*arguments)
                sitting.settle()
            except StuckError as stuck:
                say("stuck", step=name, words=str(stuck))
            print(json.dumps({"done": name}), flush=True)
        sitting.close()
    say("closed")


if __name__ == "__main__":
    main()
