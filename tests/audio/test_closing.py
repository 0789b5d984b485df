"""Streams that hang while they are closed, as PortAudio's do when their device is pulled out."""

import atexit
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest

from audio import closing, devices
from audio.closing import close_stream, is_hanging
from audio.errors import AudioFailure
from audio.input import Input
from audio.output import Output
from audio.recorder import Recorder

ROOT = Path(__file__).parents[2]


@pytest.fixture
def release(monkeypatch: pytest.MonkeyPatch) -> Iterator[threading.Event]:
    """Let hanging streams go at the end, and wait only a moment for them."""
    monkeypatch.setattr(closing, "PATIENCE_S", 0.1)
    event = threading.Event()
    yield event
    event.set()
    while is_hanging():
        time.sleep(0.01)


@pytest.fixture
def hanging(fake: Any, release: threading.Event, monkeypatch: pytest.MonkeyPatch) -> Any:
    """Streams of which none ever comes back from closing."""

    def opened(**settings: Any) -> Any:
        fake.opened.append(settings)
        return SimpleNamespace(
            start=lambda: None, close=lambda **_: release.wait(), latency=0.04, time=0.0
        )

    monkeypatch.setattr(fake, "InputStream", opened, raising=False)
    monkeypatch.setattr(fake, "OutputStream", opened, raising=False)
    return fake


def test_a_well_stream_is_closed(fake: Any) -> None:
    closed: list[bool] = []
    assert close_stream(SimpleNamespace(close=lambda **_: closed.append(True)))
    assert closed == [True]
    assert not is_hanging()


def test_a_stream_that_refuses_to_close_is_done_with() -> None:
    def refuses(**_: Any) -> None:
        raise OSError("the device has gone")

    assert close_stream(SimpleNamespace(close=refuses))
    assert not is_hanging()


def test_a_hanging_stream_is_left_behind_and_said(
    release: threading.Event, caplog: pytest.LogCaptureFixture
) -> None:
    assert not close_stream(SimpleNamespace(close=lambda **_: release.wait()))
    assert is_hanging()
    assert "left behind" in caplog.text
    release.set()
    deadline = time.monotonic() + 10
    while is_hanging() and time.monotonic() < deadline:
        time.sleep(0.01)
    assert not is_hanging(), "it came round after all"


def test_nothing_is_scanned_under_a_hanging_stream(
    hanging: Any, caplog: pytest.LogCaptureFixture, release: threading.Event
) -> None:
    source = Input(None)
    source.open(48_000, 1)
    source.close()
    with pytest.raises(AudioFailure, match="hangs") as told:
        devices.refresh()
    assert "start it again" in told.value.next_step
    assert hanging.scans == 0
    release.set()
    wait_until(lambda: not is_hanging())
    devices.refresh()
    assert hanging.scans == 1


def test_a_stream_that_was_left_behind_is_not_heard_any_more(
    hanging: Any, caplog: pytest.LogCaptureFixture
) -> None:
    source = Input(None)
    source.open(48_000, 1)
    source.close()
    late = SimpleNamespace(inputBufferAdcTime=1.0)
    hanging.opened[-1]["callback"](
        np.ones((10, 1), np.int32), 10, late, SimpleNamespace(input_overflow=False)
    )
    assert not source.is_heard
    assert len(source.ring.read(10)) == 0


def test_another_output_plays_beside_one_that_hangs(
    hanging: Any, caplog: pytest.LogCaptureFixture
) -> None:
    lost: list[str] = []

    def ones(out: Any, _at: float) -> None:
        out[:] = 1

    output = Output(None, lambda *_: None, ones, lambda: lost.append("lost"))
    output.open(48_000)
    output.close()
    output.open(48_000)
    old, new = hanging.opened
    sounds = []
    for stream in (old, new):
        out = np.full((10, 2), 7, np.float32)
        when = SimpleNamespace(outputBufferDacTime=1.0)
        stream["callback"](out, 10, when, SimpleNamespace(output_underflow=False))
        sounds.append(float(out.max()))
    assert sounds == [0.0, 1.0], "the old one is silent"
    old["finished_callback"]()
    assert (output.is_open, lost) == (True, [])
    new["finished_callback"]()
    assert (output.is_open, lost) == (False, ["lost"])
    output.close()


def test_a_recorder_stops_although_its_stream_hangs(
    hanging: Any, caplog: pytest.LogCaptureFixture
) -> None:
    recorder = Recorder(None)
    recorder.start()
    begun = time.monotonic()
    assert recorder.stop() is None
    assert time.monotonic() - begun < 5


def test_the_program_does_not_end_portaudio_while_a_stream_hangs(
    release: threading.Event, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    def end() -> None:
        raise AssertionError("it would hang here")

    taken_back: list[Any] = []
    monkeypatch.setattr(atexit, "unregister", taken_back.append)
    monkeypatch.setitem(sys.modules, "sounddevice", SimpleNamespace(_exit_handler=end))
    close_stream(SimpleNamespace(close=lambda **_: release.wait()))
    assert taken_back == [end]


PULLED_BEFORE_THE_FIRST_BLOCK = """
import sys
from audio.errors import AudioFailure
from audio.player import Player
from audio.recorder import Recorder
import virtual_room

with virtual_room.VirtualRoom() as room:
    recorder, player = Recorder(), Player()
    recorder.start()
    player.open()
    room.unplug()
    player.close()
    try:
        recorder.stop()
    except AudioFailure:
        pass
print("done")
"""

HANGS_FOR_EVER = """
import sounddevice
from audio import closing
from audio.player import Player
import threading
import virtual_room

with virtual_room.VirtualRoom() as room:
    player = Player()
    player.open()
    never = threading.Event()
    sounddevice.OutputStream.close = lambda self, **_: never.wait()
    player.close()
    assert closing.is_hanging()
    print("done")
    # The room restarts PortAudio at its end, which the program never does now.
    virtual_room.restart_portaudio = lambda: None
"""


@pytest.mark.room
@pytest.mark.parametrize("script", [PULLED_BEFORE_THE_FIRST_BLOCK, HANGS_FOR_EVER])
def test_the_program_ends_without_its_device(virtual_room: Any, script: str) -> None:
    done = subprocess.run(
        [sys.executable, "-c", f"import sys; sys.path.insert(0, 'tests')\n{script}"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=90,
        check=True,
    )
    assert done.stdout.split() == ["done"]
    # A driver that spins prints millions of lines.
    assert done.stderr.count("\n") < 100


def wait_until(met: Callable[[], bool], timeout_s: float = 10.0) -> None:
    deadline = time.monotonic() + timeout_s
    while not met():
        assert time.monotonic() < deadline
        time.sleep(0.01)
