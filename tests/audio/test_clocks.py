"""Clicks and takes on one time axis: the arithmetic, through the virtual device.

The virtual room has one clock for both directions; what two real devices drift
apart cannot be shown here.
"""

import time
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import soundfile

from audio import devices
from audio.guides import Click
from audio.player import Player
from audio.recorder import Recorder
from audio.round_trip import measure_round_trip

pytestmark = pytest.mark.room
RATE = 48_000


def room_devices(room: Any) -> tuple[devices.Device, devices.Device]:
    return (
        next(found for found in devices.output_devices() if found.name == room.device),
        next(found for found in devices.input_devices() if found.name == room.device),
    )


def test_the_beats_of_a_click_are_found_in_the_take(virtual_room: Any, tmp_path: Path) -> None:
    output, source = room_devices(virtual_room)
    blocks: list[int] = []
    recorder = Recorder(
        None, source, pre_roll_s=0.5, on_block=lambda block: blocks.append(len(block))
    )
    player = Player(output)
    recorder.start()
    player.open()
    assert recorder.wait_until_heard()
    assert player.wait_until_running()
    click = Click(132.0, RATE, level_dbfs=-6.0)
    player.load(click, RATE)
    player.play()
    time.sleep(1.0)
    assert recorder.take_s_at(0.0) is None, "there is no take yet"
    recorder.begin(tmp_path / "take.wav")
    time.sleep(2.5)
    beats_s = []
    for number in range(3, 7):
        heard_s = player.heard_at_s(click.beat_s(number))
        assert heard_s is not None
        beats_s.append(recorder.take_s_at(heard_s))
    player.close()
    recording = recorder.stop()
    assert recording is not None
    assert sum(blocks) >= recording.frames
    sound = np.abs(soundfile.read(recording.path)[0])
    errors_s = []
    for beat_s in beats_s:
        assert beat_s is not None
        around = slice(round((beat_s - 0.1) * RATE), round((beat_s + 0.1) * RATE))
        found_s = (around.start + int(np.argmax(sound[around] > 0.1))) / RATE
        errors_s.append(abs(found_s - beat_s))
    # An underrun on a busy machine may make one click late.
    assert sorted(errors_s)[-2] < 0.010


def test_a_loop_from_output_to_input_is_measured(virtual_room: Any) -> None:
    measured = measure_round_trip(*room_devices(virtual_room))
    assert measured is not None
    assert measured.bursts >= 3
    assert abs(measured.offset_s) < 0.010
    assert measured.scatter_s < 0.005


def test_measuring_a_loop_can_be_cancelled(virtual_room: Any) -> None:
    assert measure_round_trip(*room_devices(virtual_room), should_stop=lambda: True) is None
