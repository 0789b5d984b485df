"""An audition rehearsal in the window: one chance each, recorded, heard afterwards."""

from pathlib import Path

import numpy as np
import pytest
import soundfile
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from app.journal.failures import PlainFailure
from app.services.guide_settings import GuideSettings
from app.services.views import LevelReading, PendingTake
from app.ui.models.recorder import RecorderState

SHIFT = Qt.KeyboardModifier.ShiftModifier
CONTROL = Qt.KeyboardModifier.ControlModifier
RATE_HZ = 48_000


def shown_text(widget) -> str:
    labels = (label for label in widget.findChildren(QLabel) if label.isVisible())
    return "\n".join(label.text() for label in labels)


class Recording:
    """An input on which a sine sounds: a recording that stops becomes a real take."""

    is_recording = False

    def __init__(self, bench, folder: Path) -> None:
        self._bench, self._folder = bench, folder
        self.starts: list[tuple] = []
        self.ended = ""
        self.refusal: PlainFailure | None = None

    def inputs(self):
        return ()

    rescan = inputs

    def unfinished(self):
        return ()

    def close(self):
        """Nothing is open."""

    def level(self):
        return LevelReading(-18.0, -9.5, "good", False, 1.0, 0)

    def poll(self):
        return None

    def start(self, passage_id, aim, device_key=None, *, guides=None):
        if self.refusal is not None:
            raise self.refusal
        self.starts.append((passage_id, aim, guides))

    def wait_until_heard(self, _patience_s):
        return True

    def stop(self):
        passage_id, aim, _ = self.starts[-1]
        settings = self._bench.practising.settings().default_settings
        started = self._bench.filing.takes()[0].recorded_at
        return PendingTake(
            "new", self._folder / "x", started, 1.0, passage_id, aim, settings, ended=self.ended
        )

    def finish(self, pending, _progress, _should_stop):
        known = {row.id for row in self._bench.filing.takes()}
        hz = 200 + len(known)
        file = self._folder / f"{hz}.wav"
        tone = 0.1 * np.sin(2 * np.pi * hz * np.arange(RATE_HZ) / RATE_HZ)
        soundfile.write(file, tone, RATE_HZ)
        day = self._bench.practising.today().practice_day
        proposals = self._bench.importing.propose([file], pending.passage_id, day)
        self._bench.importing.file(proposals)
        return next(row for row in self._bench.filing.takes() if row.id not in known)


@pytest.fixture
def bench(real_bench, tmp_path):
    for name in ("Middle", "Ending"):
        real_bench.passages.add("Study", name)
    real_bench.recording = Recording(real_bench, tmp_path)
    return real_bench


@pytest.fixture
def window(bench, open_window, settle, qtbot):
    window = open_window(bench)
    qtbot.keyClick(window.main, "A", SHIFT)
    settle(window)
    assert window.main.practice.forms.rehearsal.isVisible()
    return window


def begin(window, settle, *names: str, draw: bool = False) -> None:
    form = window.main.practice.forms.rehearsal
    for at in range(form.passages.count()):
        entry = form.passages.item(at)
        if entry.text().split(" (")[0].split(",")[0] in names:
            entry.setCheckState(Qt.CheckState.Checked)
    form.draw.setChecked(draw)
    form.begin.click()
    settle(window)


def play(window, settle, qtbot) -> None:
    """Begin the chance with the record key, and stop with it."""
    recorder = window.main.recorder
    for state in (RecorderState.RECORDING, RecorderState.IDLE):
        qtbot.keyClick(window.main, "R")
        settle(window)
        settle(window)
        assert recorder.state is state


def test_passages_are_recorded_through_in_order_and_heard_afterwards(window, bench, settle, qtbot):
    form = window.main.practice.forms.rehearsal
    window.main.recorder.guides = GuideSettings()
    form.passages.setCurrentRow(form.passages.count() - 1)
    begin(window, settle, "Opening", "Middle", "Ending")
    order = form.run.view.titles
    for number in (1, 2, 3):
        said = shown_text(form)
        assert f"{number} of 3" in said
        assert order[number - 1] in said
        assert not form.takes.isVisible()
        assert "cents" not in said
        assert form.run.view.to_listen_to == ()
        play(window, settle, qtbot)
    starts = bench.recording.starts
    names = {one.id: one.name for one in bench.passages.list()}
    assert [f"Study: {names[passage_id]}" for passage_id, _, _ in starts] == [
        title.split(",")[0] for title in order
    ]
    assert {(aim, guides) for _, aim, guides in starts} == {("", None)}, "no click, no aim"
    assert window.main.recorder.guides is not None, "the player's own click comes back"
    assert [row.passage_name for row in form.takes.rows_model.rows] == list(order)
    heard = []
    window.desk.listenWanted.connect(lambda take_id, _at: heard.append(take_id))
    for number in (1, 2, 3):
        qtbot.keyClick(window.main, "J", CONTROL)
        settle(window)
        assert window.main.page_index == 1
        assert f"Rehearsal, {number} of 3" in window.main.messages.text
    assert heard == [one.take_id for one in form.run.view.rehearsal.chances]


def test_the_record_key_gives_no_second_chance(window, bench, settle, qtbot):
    begin(window, settle, "Opening", "Middle")
    play(window, settle, qtbot)
    bench.rehearsals.begin()  # as after the program ended in the middle of a chance
    form = window.main.practice.forms.rehearsal
    form.run.read()
    settle(window)
    assert "has had its one chance" in shown_text(form)
    assert not form.record.isEnabled()
    qtbot.keyClick(window.main, "R")
    settle(window)
    assert len(bench.recording.starts) == 1
    form._move_on.click()
    settle(window)
    assert len(form.takes.rows_model.rows) == 1


@pytest.mark.parametrize("cut_off", [True, False])
def test_only_the_device_gives_a_chance_back(window, bench, settle, qtbot, cut_off):
    begin(window, settle, "Opening")
    form = window.main.practice.forms.rehearsal
    if cut_off:
        bench.recording.ended = "The microphone was unplugged."
        play(window, settle, qtbot)
        bench.recording.ended = ""
    else:
        bench.recording.refusal = PlainFailure("The microphone was unplugged.", "Plug it in.")
        qtbot.keyClick(window.main, "R")
        settle(window)
        bench.recording.refusal = None
    settle(window)
    assert "The chance was given back: The microphone was unplugged." in shown_text(form)
    assert form.record.isEnabled()
    play(window, settle, qtbot)
    assert len(form.takes.rows_model.rows) == 1


def test_a_drawn_order_is_drawn_and_the_chosen_only(window, bench, settle):
    begin(window, settle, "Opening", "Ending", draw=True)
    rehearsal = bench.rehearsals.running().rehearsal
    assert rehearsal.drawn
    assert len(rehearsal.chances) == 2


def test_without_a_passage_chosen_it_says_what_to_do(window, settle):
    begin(window, settle)
    assert "A rehearsal needs passages." in window.main.messages.text


def test_the_key_leads_back_and_nothing_is_lost(window, settle, qtbot):
    begin(window, settle, "Opening", "Middle")
    qtbot.keyClick(window.main, "A", SHIFT)
    assert window.main.practice.head.isVisible()
    assert not window.main.practice.forms.rehearsal.isVisible()
    qtbot.keyClick(window.main, "A", SHIFT)
    settle(window)
    assert "1 of 2" in shown_text(window.main.practice.forms.rehearsal)
