"""Playing for real, into the virtual sound device, heard back from its other end."""

import threading
import time
from collections.abc import Iterator
from typing import Any

import numpy as np
import pytest

from audio import devices
from audio.errors import AudioFailure
from audio.player import Player

RATE = 48_000


def clicks(seconds: float, every_s: float = 0.5, first_s: float = 0.25) -> np.ndarray:
    sound = np.zeros(round(seconds * RATE), np.float32)
    for place in np.arange(first_s, seconds - 0.01, every_s):
        at = round(place * RATE)
        sound[at : at + 144] = 0.9 * np.sin(2 * np.pi * 3000 * np.arange(144) / RATE)
    return sound


def tone(seconds: float, frequency_hz: float = 440.0, rate: int = RATE) -> np.ndarray:
    phase = 2 * np.pi * frequency_hz * np.arange(round(seconds * rate)) / rate
    return (0.5 * np.sin(phase)).astype(np.float32)


class Listener:
    """What comes out of the room, each sample with its time on PortAudio's clock."""

    def __init__(self, device: str) -> None:
        import sounddevice

        self._blocks: list[tuple[float, np.ndarray]] = []
        self._heard = threading.Event()
        self.stream = sounddevice.InputStream(
            device=device, channels=1, samplerate=RATE, callback=self._callback
        )

    def __enter__(self) -> "Listener":
        self.stream.start()
        assert self._heard.wait(10)
        return self

    def __exit__(self, *_: object) -> None:
        self.stream.close()

    def _callback(self, block: np.ndarray, frames: int, when: Any, status: Any) -> None:
        self._blocks.append((when.inputBufferAdcTime, block[:, 0].copy()))
        self._heard.set()

    def sound(self) -> tuple[np.ndarray, np.ndarray]:
        blocks = list(self._blocks)
        times = [start + np.arange(len(block)) / RATE for start, block in blocks]
        return np.concatenate(times), np.concatenate([block for _, block in blocks])


def onsets(time_s: np.ndarray, sound: np.ndarray, threshold: float = 0.3) -> np.ndarray:
    loud = time_s[np.abs(sound) > threshold]
    return loud[np.flatnonzero(np.diff(loud, prepend=-1.0) > 0.1)]


def room_output(room: Any) -> devices.Device:
    return next(found for found in devices.output_devices() if found.name == room.device)


@pytest.fixture(scope="module")
def running(_room_daemon: Any) -> Iterator[Player]:
    """A player whose output runs already: opening one takes two seconds here."""
    if not _room_daemon.plugged_in:
        _room_daemon.plug_in()
    devices.portaudio()
    devices.refresh()
    player = Player(room_output(_room_daemon))
    player.open()
    assert player.wait_until_running()
    yield player
    player.close()


@pytest.fixture
def player(virtual_room: Any, running: Player) -> Player:
    running.pause()
    running.loop_off()
    running.speed = 1.0
    return running


@pytest.mark.room
@pytest.mark.parametrize("speed", [1.0, 0.5])
def test_line_and_sound_agree(virtual_room: Any, player: Player, speed: float) -> None:
    sound = clicks(10.0)
    player.load(sound, RATE)
    player.speed = speed
    shown: list[tuple[float, float]] = []
    with Listener(virtual_room.device) as listener:
        player.play()
        until = time.monotonic() + 3.0
        while time.monotonic() < until:
            shown.append((listener.stream.time, player.position_s))
            time.sleep(0.004)
        player.pause()
        heard = onsets(*listener.sound())
    times, positions = np.array(shown).T
    heard = heard[(heard > times[0]) & (heard < times[-1])]
    assert len(heard) >= 2
    places = np.interp(heard, times, positions)
    marks = np.arange(0.25, 10.0, 0.5)
    errors_s = [place - marks[np.argmin(np.abs(marks - place))] for place in places]
    # An underrun on a busy machine may make one click late.
    assert np.sort(np.abs(errors_s))[-2] < 0.030


@pytest.mark.room
def test_sound_follows_the_key_at_once(virtual_room: Any, player: Player) -> None:
    player.load(tone(5.0), RATE)
    time.sleep(0.1)
    with Listener(virtual_room.device) as listener:
        time.sleep(0.5)
        pressed_s = listener.stream.time
        player.play()
        time.sleep(1.0)
        heard_s = onsets(*listener.sound(), threshold=0.05)
    first_s = heard_s[heard_s > pressed_s][0]
    # 40 ms of it is the output's buffer; generous, as other programs may be busy here.
    assert 0 < first_s - pressed_s < 0.15


@pytest.mark.room
def test_pause_seek_loop_and_speed_are_heard(virtual_room: Any, player: Player) -> None:
    player.load(tone(20.0), RATE)
    assert player.duration_s == 20.0
    player.play()
    time.sleep(0.5)
    assert player.is_playing
    player.seek(10.0)
    time.sleep(0.5)
    assert 10.1 < player.position_s < 10.8
    player.pause()
    time.sleep(0.2)
    held = player.position_s
    time.sleep(0.2)
    assert player.position_s == held
    player.seek(3.0)
    assert player.position_s == 3.0
    player.loop(5.0, 5.23)
    player.play()
    seen = []
    for _ in range(40):
        time.sleep(0.02)
        seen.append(player.position_s)
    assert min(seen[10:]) >= 5.0
    assert max(seen[10:]) <= 5.23
    player.loop_off()
    player.speed = 0.5
    time.sleep(0.5)
    begun, at = player.position_s, time.monotonic()
    time.sleep(0.8)
    assert (player.position_s - begun) / (time.monotonic() - at) == pytest.approx(0.5, abs=0.05)


@pytest.mark.room
def test_another_rate_is_heard_at_its_pitch(virtual_room: Any, player: Player) -> None:
    player.load(tone(4.0, 443.0, 44_100), 44_100)
    with Listener(virtual_room.device) as listener:
        player.play()
        time.sleep(2.0)
        time_s, sound = listener.sound()
    begin = int(np.flatnonzero(np.abs(sound) > 0.3)[0]) + 4800
    part = sound[begin : begin + RATE]
    spectrum = np.log(np.abs(np.fft.rfft(part * np.hanning(len(part)))))
    peak = int(spectrum.argmax())
    left, middle, right = spectrum[peak - 1 : peak + 2]
    found = (peak + 0.5 * (left - right) / (left - 2 * middle + right)) * RATE / len(part)
    assert found == pytest.approx(443.0, abs=0.05)
    assert np.abs(part).max() == pytest.approx(0.5, abs=0.01)
    assert len(time_s) == len(sound)


@pytest.mark.room
def test_the_end_is_told_once_and_play_begins_again(virtual_room: Any) -> None:
    told: list[float] = []
    done = threading.Event()

    def finished() -> None:
        told.append(time.monotonic())
        done.set()

    player = Player(on_finished=finished)
    player.load(tone(0.3), RATE)
    player.play()
    assert done.wait(10)
    assert player.is_finished
    assert not player.is_playing
    assert player.position_s == pytest.approx(0.3)
    time.sleep(0.2)
    assert len(told) == 1
    done.clear()
    player.play()
    assert done.wait(10)
    player.close()
    assert len(told) == 2
    assert not player.is_open


@pytest.mark.room
def test_a_scan_lets_go_of_the_output_and_takes_it_again(virtual_room: Any, player: Player) -> None:
    player.load(tone(20.0), RATE)
    player.play()
    time.sleep(0.5)
    devices.refresh()
    assert player.is_open
    before = player.position_s
    time.sleep(0.5)
    assert player.position_s > before


@pytest.mark.room
def test_a_pulled_plug_stops_playing_and_says_so(virtual_room: Any, player: Player) -> None:
    # The last test of the room here: the shared player is lost with it.
    player.load(tone(20.0), RATE)
    player.play()
    time.sleep(0.5)
    virtual_room.unplug()
    deadline = time.monotonic() + 10
    while player.failure is None and time.monotonic() < deadline:
        time.sleep(0.05)
    assert player.failure is not None
    assert "has gone" in player.failure.sentence
    assert not player.is_playing


def test_everything_but_sound_works_without_an_output(monkeypatch: pytest.MonkeyPatch) -> None:
    failure = AudioFailure("No loudspeaker was found.", "Plug one in.")

    def none(_: str, key: str | None = None) -> devices.Device:
        raise failure

    monkeypatch.setattr(devices, "portaudio", lambda: None)
    monkeypatch.setattr(devices, "find_device", none)
    player = Player()
    player.load(tone(5.0), RATE)
    player.seek(2.0)
    player.loop(1.0, 3.0)
    player.speed = 0.1
    player.volume = 7
    assert (player.position_s, player.speed, player.volume) == (2.0, 0.25, 1.0)
    with pytest.raises(AudioFailure, match="No loudspeaker"):
        player.play()
    assert not player.is_open
    assert not player.is_playing
    assert player.latency_s == 0
    player.close()


def test_a_loop_is_held_within_the_sound() -> None:
    player = Player()
    player.load(tone(1.0), RATE)
    player.loop(0.99, 7.0)
    assert player.position_s == pytest.approx(0.95)
    player.loop_off()
    player.seek(-3.0)
    assert player.position_s == 0
    player.seek(9.0)
    assert player.position_s == 1.0
