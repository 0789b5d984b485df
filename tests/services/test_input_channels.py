"""One channel of an input with several: chosen, remembered, heard, recorded, gone."""

import json
import time
from dataclasses import replace

import numpy as np
import pytest
import soundfile

from app.journal.failures import PlainFailure
from app.wiring import open_workbench

RATE = 48_000
TONES_HZ = (300.0, 500.0, 700.0, 900.0)
AMPLITUDES = (0.02, 0.3, 0.05, 0.15)


def four_tones(seconds):
    """Give a tone of its own to each of four channels."""
    t = np.arange(round(seconds * RATE)) / RATE
    tones = [a * np.sin(2 * np.pi * f * t) for a, f in zip(AMPLITUDES, TONES_HZ, strict=True)]
    return np.column_stack(tones)


def amplitudes_of(samples):
    """Measure each of the four tones in a recording."""
    window = np.hanning(len(samples))
    t = np.arange(len(samples)) / RATE
    return [
        2 * abs(np.sum(samples * window * np.exp(-2j * np.pi * f * t))) / window.sum()
        for f in TONES_HZ
    ]


def room_key(bench, room):
    return next(row.key for row in bench.recording.inputs() if row.name == room.device)


def level_near(bench, peak_dbfs, within_s=8.0):
    """Wait until the meter shows a level."""
    until = time.monotonic() + within_s
    while time.monotonic() < until:
        found = bench.recording.level().peak_dbfs
        if found is not None and abs(found - peak_dbfs) < 0.5:
            return True
        time.sleep(0.05)
    return False


def record_at_least(bench, seconds):
    """Wait until so much is recorded."""
    until = time.monotonic() + 20
    while bench.recording.level().elapsed_s < seconds:
        assert time.monotonic() < until
        time.sleep(0.02)


@pytest.mark.room
def test_the_chosen_channel_alone_is_metered_and_lands_in_the_file(bench, virtual_room, clock):
    key = room_key(bench, virtual_room)
    with virtual_room.interface() as four, virtual_room.playing(four_tones(60), RATE, four):
        bench.recording.use_channel(key, 2)
        bench.recording.listen(key)
        assert level_near(bench, 20 * np.log10(AMPLITUDES[1]))
        bench.recording.use_channel(key, 3)
        bench.recording.listen(key)
        assert level_near(bench, 20 * np.log10(AMPLITUDES[2])), "the meter follows the choice"
        bench.recording.remember_channel(key, 3)
        bench.recording.start(device_key=key)
        record_at_least(bench, 0.8)
        row = bench.recording.finish(bench.recording.stop())
    samples, _ = soundfile.read(row.file)
    assert samples.ndim == 1
    found = amplitudes_of(samples[-RATE // 2 :])
    assert found[2] == pytest.approx(AMPLITUDES[2], rel=0.01)
    for other in (0, 1, 3):
        assert found[other] < 1e-3 * AMPLITUDES[other], "nothing of another channel is in it"
    take = json.loads(row.file.with_suffix(".json").read_text("utf-8"))["take"]
    assert (take["input_device"], take["input_channel"]) == (key, 3)
    assert row.notice == ""
    bench.close()
    with open_workbench(bench.journal_dir, clock=clock) as again:
        assert {r.key: r.channel for r in again.recording.inputs()}[key] == 3


@pytest.mark.room
def test_a_channel_that_is_gone_is_said_on_the_take_of_the_first(bench, virtual_room):
    key = room_key(bench, virtual_room)
    bench.recording.remember_channel(key, 40)
    with virtual_room.interface() as four, virtual_room.playing(four_tones(60), RATE, four):
        bench.recording.start(device_key=key)
        record_at_least(bench, 0.6)
        pending = bench.recording.stop()
    assert (pending.input_channel, pending.ended) == (1, "")
    row = bench.recording.finish(pending)
    assert "has no channel 40 any more; its first channel is recorded" in row.notice
    found = amplitudes_of(soundfile.read(row.file)[0][-RATE // 3 :])
    assert found[0] == pytest.approx(AMPLITUDES[0], rel=0.02)
    assert max(found[1:]) < 1e-3


def test_another_channel_than_last_time_is_warned_of(bench, add_take, wav_a):
    passage = bench.passages.add("Study", "Opening")
    take = bench.recording._store.takes.get(add_take(wav_a, "Study").id)
    bench.recording._store.takes.replace(
        replace(take, passage_id=passage.id, input_device="ALSA: four", input_channel=2)
    )
    bench.recording.remember_channel("ALSA: four", 2)
    assert "channel" not in bench.input_memory.warning(passage.id, "ALSA: four")
    bench.recording.remember_channel("ALSA: four", None)
    warning = bench.input_memory.warning(passage.id, "ALSA: four")
    assert "Another channel of the input: channel 2, then the usual one." in warning
    assert "not comparable" in warning


def test_a_journal_to_look_at_takes_no_choice(bench, clock):
    bench.close()
    with (
        open_workbench(bench.journal_dir, clock=clock, read_only=True) as again,
        pytest.raises(PlainFailure, match="looking only"),
    ):
        again.recording.remember_channel("ALSA: four", 2)
