"""The window records and plays through a real, if virtual, sound device."""

import time

import pytest
from PySide6.QtCore import Qt

from app.services.reading_views import Reading
from app.ui.models.recorder import RecorderState
from sample_audio.generator import NoteSpec, PhraseSpec, render

MIDI = (62, 66, 69, 64, 67, 71)
DEVIATIONS = (8.0, -12.0, 0.0, 15.0, -6.0, 5.0)

pytestmark = pytest.mark.room


@pytest.fixture
def phrase():
    notes = tuple(
        NoteSpec(midi, 1.0, deviation_cents=cents)
        for midi, cents in zip(MIDI, DEVIATIONS, strict=True)
    )
    return render(PhraseSpec(notes, tempo=90.0, seed=3, instrument="violin"))


@pytest.fixture
def window(virtual_room, real_bench, open_window):
    window = open_window(real_bench)
    window.main.recorder.find_inputs()
    assert window.jobs.wait_until_idle()
    panel = window.main.practice.panel
    key = next(row.key for row in real_bench.recording.inputs() if row.name == virtual_room.device)
    assert panel.input.choose(key)
    window.main.recorder.choose_input(key)
    return window


def test_a_phrase_is_recorded_filed_measured_and_heard(  # noqa: PLR0917 - fixtures
    window, virtual_room, real_bench, phrase, qtbot, settle
):
    main = window.main
    main.practice.panel.passage.choose("")
    qtbot.keyClick(main, "R")
    qtbot.waitUntil(lambda: main.recorder.state is RecorderState.RECORDING, timeout=10_000)
    with virtual_room.playing(phrase.samples, phrase.sample_rate_hz) as player:
        qtbot.waitUntil(lambda: "peak" in main.practice.panel.level_words, timeout=10_000)
        qtbot.waitUntil(lambda: player.poll() is not None, timeout=30_000)
    qtbot.wait(300)
    before = {row.id for row in real_bench.filing.takes()}
    qtbot.keyClick(main, "R")
    assert window.jobs.wait_until_idle(30)
    qtbot.waitUntil(lambda: real_bench.measuring.waiting() == (), timeout=60_000)
    settle(window)
    (take,) = [row for row in real_bench.filing.takes() if row.id not in before]
    assert take.file.suffix == ".flac"
    main.show_page(1)
    settle(window)
    notes = [n for n in main.listen.view.notes if isinstance(n.deviation, Reading)]
    found = {note.midi: note.deviation.value for note in notes}
    for midi, cents in zip(MIDI, DEVIATIONS, strict=True):
        # The generator's own truth; the room resamples, nothing else.
        assert found[midi] == pytest.approx(cents, abs=3.0)


def test_playback_moves_with_the_devices_clock(window, qtbot, settle):
    main = window.main
    main.show_page(1)
    assert window.jobs.wait_until_idle(30)
    settle(window)
    transport = main.listen.transport
    qtbot.keyClick(main, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: transport.position_s > 0.5, timeout=10_000)
    started, place = time.monotonic(), transport.position_s
    qtbot.wait(1000)
    # The device's clock is the computer's here; the picture is refreshed every 30 ms.
    assert transport.position_s - place == pytest.approx(time.monotonic() - started, abs=0.15)
    qtbot.keyClick(main, "2")
    settle(window)
    assert transport.is_playing, "a marker does not stop the sound"
    marker = main.listen.markers.shown
    assert 0.0 < marker.start_s < transport.position_s
    qtbot.keyClick(main, Qt.Key.Key_Space)
    assert not transport.is_playing


def test_unplugging_while_recording_keeps_the_take(window, virtual_room, real_bench, qtbot, settle):
    main = window.main
    before = len(real_bench.filing.takes())
    qtbot.keyClick(main, "R")
    qtbot.waitUntil(lambda: main.recorder.state is RecorderState.RECORDING, timeout=10_000)
    qtbot.wait(2500)
    virtual_room.unplug()
    qtbot.waitUntil(lambda: main.messages.text != "", timeout=15_000)
    assert window.jobs.wait_until_idle(30)
    settle(window)
    assert main.recorder.state is RecorderState.IDLE
    assert len(real_bench.filing.takes()) == before + 1


def test_a_take_begins_with_the_first_note_and_ends_after_silence(  # noqa: PLR0917 - fixtures
    window, virtual_room, real_bench, phrase, qtbot, settle
):
    main = window.main
    main.practice.panel.passage.choose("")
    before = {row.id for row in real_bench.filing.takes()}
    qtbot.keyClick(main, "W")
    qtbot.waitUntil(lambda: main.recorder.state is RecorderState.ARMED, timeout=10_000)
    qtbot.wait(2500)
    assert main.recorder.state is RecorderState.ARMED, "silence is no first note"
    with virtual_room.playing(phrase.samples, phrase.sample_rate_hz):
        qtbot.waitUntil(lambda: main.recorder.state is RecorderState.RECORDING, timeout=15_000)
        qtbot.keyClick(main, "M")
        qtbot.waitUntil(lambda: main.recorder.state is RecorderState.IDLE, timeout=40_000)
    assert window.jobs.wait_until_idle(60)
    settle(window)
    (take,) = [row for row in real_bench.filing.takes() if row.id not in before]
    assert take.duration_s > phrase.samples.size / phrase.sample_rate_hz
    assert [m.text for m in real_bench.marking.for_take(take.id)] == ["marked while playing"]


def test_a_click_is_counted_in_and_its_beats_are_kept(window, real_bench, qtbot, settle):
    main = window.main
    before = {row.id for row in real_bench.filing.takes()}
    form = main.practice.forms.guides
    main.practice.choose_guides()
    form.click.setChecked(True)
    form.bpm.setValue(120)
    form.count_in.setValue(1)
    form.use()
    qtbot.keyClick(main, "R")
    qtbot.waitUntil(lambda: main.recorder.state is RecorderState.RECORDING, timeout=15_000)
    qtbot.wait(5000)
    qtbot.keyClick(main, "R")
    assert window.jobs.wait_until_idle(60)
    settle(window)
    (take,) = [row for row in real_bench.filing.takes() if row.id not in before]
    click = real_bench.listening.open_take(take.id).settings.click
    assert click is not None
    # 120 BPM is a beat every 0.5 s.
    assert click.interval_s == pytest.approx(0.5, abs=0.001)
