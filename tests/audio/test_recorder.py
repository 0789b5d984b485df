"""Recording for real, through the virtual sound device.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

import signal
import subprocess
import sys
import threading
import time
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import soundfile

from audio import devices
from audio.errors import AudioFailure
from audio.recorder import Ended, Recorder, RecorderState, Recording
from audio.take_file import recover

pytestmark = pytest.mark.room
RATE = 48_000


def tone(frequency_hz: float, seconds: float, level: float = 0.5) -> np.ndarray:
    time_s = np.arange(round(seconds * RATE)) / RATE
    return (level * np.sin(2 * np.pi * frequency_hz * time_s)).astype(np.float32)


def ticking(seconds: float) -> np.ndarray:
    """A counter in sound: sample n has the value (n mod 2**15) / 2**15, exact in 16 bit."""
    return ((np.arange(round(seconds * RATE)) % 2**15) / 2**15).astype(np.float32)


def assert_counts_on(path: Path, seconds: float | None = None) -> None:
    """Every sample from the first heard on is the next of the counter."""
    counted = soundfile.read(path, dtype="int32")[0] >> 16
    heard = counted[np.flatnonzero(counted)[0] :]
    run = heard if seconds is None else heard[: round(seconds * RATE)]
    assert len(run) > 1000
    np.testing.assert_array_equal(np.diff(run) % 2**15, 1)


def room_input(room: Any) -> devices.Device:
    return next(device for device in devices.input_devices() if device.name == room.device)


def frequency_of(samples: np.ndarray) -> float:
    windowed = samples * np.hanning(len(samples))
    spectrum = np.log(np.abs(np.fft.rfft(windowed)) + 1e-12)
    peak = int(spectrum.argmax())
    left, middle, right = spectrum[peak - 1 : peak + 2]
    offset = 0.5 * (left - right) / (left - 2 * middle + right)
    return (peak + offset) * RATE / len(samples)


def test_a_known_tone_is_recorded_at_its_pitch_and_level(virtual_room: Any, tmp_path: Path) -> None:
    recorder = Recorder(tmp_path / "take.wav", room_input(virtual_room))
    assert recorder.state is RecorderState.CLOSED
    recorder.start()
    assert recorder.wait_until_heard()
    with virtual_room.playing(tone(443.0, 2.5), RATE):
        time.sleep(2.0)
        level = recorder.level()
        assert recorder.state is RecorderState.RECORDING
        assert recorder.elapsed_s > 1.5
    recording = recorder.stop()
    assert recording is not None
    assert recorder.state is RecorderState.ENDED
    samples, rate = soundfile.read(recording.path)
    assert (rate, recording.subtype, recording.channels) == (RATE, "PCM_24", 1)
    assert (recording.overruns, recording.dropped_frames) == (0, 0)
    assert recording.frames == len(samples)
    loud = np.flatnonzero(np.abs(samples) > 0.1)
    steady = samples[loud[0] + 4800 : loud[0] + 4800 + RATE]
    assert frequency_of(steady) == pytest.approx(443.0, abs=0.01)
    assert level.peak_dbfs == pytest.approx(-6.02, abs=0.1)
    assert recording.peak_dbfs == pytest.approx(-6.02, abs=0.1)
    assert recording.ended is Ended.STOPPED
    assert recording.sentence is None


def test_not_one_sample_is_lost_or_doubled(virtual_room: Any, tmp_path: Path) -> None:
    recorder = Recorder(tmp_path / "take.wav", room_input(virtual_room))
    recorder.start()
    assert recorder.wait_until_heard()
    with virtual_room.playing(ticking(4.0), RATE) as playing:
        playing.wait()
    recording = recorder.stop()
    assert recording is not None
    assert_counts_on(recording.path, 3.5)


def test_monitoring_shows_the_level_without_a_file(virtual_room: Any, tmp_path: Path) -> None:
    recorder = Recorder(None, room_input(virtual_room))
    recorder.start()
    assert recorder.wait_until_heard()
    with virtual_room.playing(tone(440.0, 1.5), RATE):
        time.sleep(1.2)
        assert recorder.level().peak_dbfs == pytest.approx(-6.02, abs=0.1)
    assert recorder.state is RecorderState.MONITORING
    assert recorder.elapsed_s == 0
    with pytest.raises(AudioFailure, match="cannot be scanned"):
        devices.refresh()
    assert recorder.stop() is None
    assert not list(tmp_path.iterdir())
    devices.refresh()


def test_a_recording_begun_while_monitoring_keeps_the_pre_roll(
    virtual_room: Any, tmp_path: Path
) -> None:
    recorder = Recorder(None, room_input(virtual_room), pre_roll_s=1.0)
    recorder.start()
    assert recorder.wait_until_heard()
    with virtual_room.playing(ticking(4.0), RATE):
        time.sleep(2.0)
        recorder.begin(tmp_path / "take.wav")
        at_begin = recorder.elapsed_s
        time.sleep(1.0)
        recording = recorder.stop()
    assert recording is not None
    assert 1.0 <= at_begin < 1.3
    assert_counts_on(recording.path, 1.8)


def test_clipping_is_counted(virtual_room: Any, tmp_path: Path) -> None:
    recorder = Recorder(tmp_path / "take.wav", room_input(virtual_room), channels=2)
    recorder.start()
    assert recorder.wait_until_heard()
    with virtual_room.playing(np.clip(tone(440.0, 1.0, 1.5), -1, 1), RATE) as playing:
        playing.wait()
    recording = recorder.stop()
    assert recording is not None
    assert recording.channels == 2
    assert recording.clipped_samples > 10_000
    assert recording.peak_dbfs > -0.01


def test_a_pulled_plug_keeps_the_take(virtual_room: Any, tmp_path: Path) -> None:
    told: list[Recording] = []
    ended = threading.Event()

    def on_ended(recording: Recording) -> None:
        told.append(recording)
        ended.set()

    recorder = Recorder(tmp_path / "take.wav", room_input(virtual_room), on_ended=on_ended)
    recorder.start()
    assert recorder.wait_until_heard()
    with virtual_room.playing(ticking(4.0), RATE):
        time.sleep(1.5)
        virtual_room.unplug()
        assert ended.wait(10)
    assert recorder.state is RecorderState.ENDED
    recording = recorder.stop()
    assert recording == told[0] == recorder.ended
    assert recording is not None
    assert recording.ended is Ended.DEVICE_LOST
    assert recording.sentence is not None
    assert "went away" in recording.sentence
    assert recording.duration_s > 1.0
    assert soundfile.info(recording.path).frames == recording.frames


def test_a_lost_device_is_named_when_only_monitoring(virtual_room: Any) -> None:
    recorder = Recorder(None, room_input(virtual_room))
    recorder.start()
    assert recorder.wait_until_heard()
    virtual_room.unplug()
    deadline = time.monotonic() + 10
    while recorder.state is not RecorderState.ENDED and time.monotonic() < deadline:
        time.sleep(0.05)
    with pytest.raises(AudioFailure, match="has gone"):
        recorder.stop()


def test_a_stream_that_stalls_counts_as_lost(
    virtual_room: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("audio.input._STALL_S", 1.0)
    recorder = Recorder(tmp_path / "take.wav", room_input(virtual_room))
    recorder.start()
    assert recorder.wait_until_heard()
    time.sleep(0.5)
    virtual_room.pause_devices()
    try:
        deadline = time.monotonic() + 10
        while recorder.ended is None and time.monotonic() < deadline:
            time.sleep(0.05)
    finally:
        virtual_room.resume_devices()
    recording = recorder.stop()
    assert recording is not None
    assert recording.ended is Ended.DEVICE_LOST


@pytest.mark.skipif(sys.platform == "win32", reason="file-size limits are a Unix facility")
def test_a_disk_that_fills_up_ends_the_take_and_keeps_it(virtual_room: Any, tmp_path: Path) -> None:
    import resource

    limits = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (200_000, limits[1]))
    try:
        recorder = Recorder(tmp_path / "take.wav", room_input(virtual_room))
        recorder.start()
        deadline = time.monotonic() + 15
        while recorder.ended is None and time.monotonic() < deadline:
            time.sleep(0.05)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, limits)
    recording = recorder.stop()
    assert recording is not None
    assert recording.ended is Ended.DISK_FULL
    assert recording.frames == soundfile.info(recording.path).frames == (200_000 - 80) // 3


def test_an_existing_file_is_refused_and_the_input_closed(
    virtual_room: Any, tmp_path: Path
) -> None:
    (tmp_path / "take.wav").write_bytes(b"mine")
    recorder = Recorder(tmp_path / "take.wav", room_input(virtual_room))
    with pytest.raises(AudioFailure, match="exists already"):
        recorder.start()
    assert (tmp_path / "take.wav").read_bytes() == b"mine"
    assert recorder.state is RecorderState.CLOSED
    assert recorder.stop() is None
    devices.refresh()


_SUBPROCESS = """
import sys, time
from pathlib import Path
from audio import devices
from audio.recorder import Recorder

device = next(d for d in devices.input_devices() if d.name == sys.argv[2])
recorder = Recorder(Path(sys.argv[1]), device)
recorder.start()
assert recorder.wait_until_heard()
print("heard", flush=True)
while True:
    time.sleep(1)
"""


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no SIGKILL")
def test_a_killed_program_loses_less_than_the_last_second(
    virtual_room: Any, tmp_path: Path
) -> None:
    generator = np.random.default_rng(20_260_314)
    with virtual_room.playing(ticking(20.0), RATE):
        for attempt, wait_s in enumerate(generator.uniform(0.2, 1.2, 3)):
            path = tmp_path / f"take {attempt}.wav"
            process = subprocess.Popen(
                [sys.executable, "-c", _SUBPROCESS, str(path), virtual_room.device],
                cwd=Path(__file__).parents[2],
                stdout=subprocess.PIPE,
            )
            with process:
                assert process.stdout is not None
                assert process.stdout.readline().strip() == b"heard"
                heard_at = time.monotonic()
                time.sleep(wait_s)
                process.send_signal(signal.SIGKILL)
                sounded_s = time.monotonic() - heard_at
            recording = recover(path)
            assert recording.duration_s > sounded_s - 1.0
            assert soundfile.info(path).frames * 1.0 / RATE > sounded_s - 1.0
            assert_counts_on(recording.path)


_SLEEPER = """
import sys, time
from pathlib import Path
from audio import devices, waking
from audio.recorder import Recorder

waking._LONGEST_NAP_S = 0.5
device = next(d for d in devices.input_devices() if d.name == sys.argv[2])
recorder = Recorder(Path(sys.argv[1]), device)
recorder.start()
assert recorder.wait_until_heard()
print("heard", flush=True)
while recorder.ended is None:
    time.sleep(0.05)
recording = recorder.stop()
print(recording.ended, recording.frames, recording.sentence, flush=True)
"""


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no SIGSTOP")
def test_a_program_put_to_sleep_keeps_the_take_up_to_then(
    virtual_room: Any, tmp_path: Path
) -> None:
    path = tmp_path / "take.wav"
    process = subprocess.Popen(
        [sys.executable, "-c", _SLEEPER, str(path), virtual_room.device],
        cwd=Path(__file__).parents[2],
        stdout=subprocess.PIPE,
        text=True,
    )
    with process:
        assert process.stdout is not None
        assert process.stdout.readline().strip() == "heard"
        time.sleep(1.0)
        process.send_signal(signal.SIGSTOP)
        time.sleep(1.2)
        process.send_signal(signal.SIGCONT)
        ended, frames, sentence = process.stdout.readline().strip().split(" ", 2)
    assert ended == "suspended"
    assert soundfile.info(path).frames == int(frames) > RATE // 2
    assert "put to sleep" in sentence
