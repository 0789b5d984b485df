"""Playing for real, into the virtual sound device, heard back from its other end.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

import math
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from typing import Any, TypeVar

import numpy as np
import pytest
import sounddevice

from audio import devices
from audio.errors import AudioFailure
from audio.player import Player

RATE = 48_000
_T = TypeVar("_T")


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


def wait_for(met: Callable[[], bool], timeout_s: float = 15.0) -> None:
    """Wait on a machine that may be busy: after an underrun a sound server takes its time."""
    deadline = time.monotonic() + timeout_s
    while not met():
        assert time.monotonic() < deadline, "it never came about"
        time.sleep(0.005)


def places_until(player: Player, met: Callable[[list[float]], bool]) -> list[float]:
    """Every place that is seen on the way."""
    places: list[float] = []

    def looked() -> bool:
        places.append(player.position_s)
        return met(places)

    wait_for(looked)
    return places


def without_a_gap(player: Player, measure: Callable[[], _T]) -> _T:
    """Measure again when the machine was too busy to play meanwhile; the last of eight counts."""
    for _ in range(8):
        before = player.underruns
        measured = measure()
        if player.underruns == before:
            break
        # After a gap the sound server keeps still for up to two seconds.
        player.pause()
        time.sleep(2.5)
    return measured


def last_stretch(sound: np.ndarray) -> np.ndarray:
    """What was heard since the last gap, if sound is heard at all."""
    loud = np.flatnonzero(np.abs(sound) > 0.1)
    if not len(loud):
        return sound[:0]
    after_gap = np.flatnonzero(np.diff(loud, prepend=-RATE) > 480)[-1]
    return sound[loud[after_gap] : loud[-1] + 1]


def wait_until_held(player: Player, for_s: float = 0.25) -> float:
    """Wait until the place has not moved for a while, and say it."""
    place, since = player.position_s, time.monotonic()
    deadline = since + 10
    while time.monotonic() < since + for_s:
        assert time.monotonic() < deadline, "it never stood still"
        time.sleep(0.005)
        if player.position_s != place:
            place, since = player.position_s, time.monotonic()
    return place


def turns(places: list[float]) -> int:
    """How often a loop has gone back to its start."""
    return int((np.diff(places) < -0.1).sum())


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


@pytest.fixture(scope="module")
def running_calmly(_room_daemon: Any) -> Iterator[Player]:
    """Another with so long a buffer that a busy machine plays it without a gap.

    After a gap the sound server keeps still for two seconds: what is asked of
    places, loops and speeds has no answer then.
    """
    if not _room_daemon.plugged_in:
        _room_daemon.plug_in()
    devices.portaudio()
    devices.refresh()
    player = Player(room_output(_room_daemon), latency_s=0.5)
    player.open()
    assert player.wait_until_running()
    yield player
    player.close()


@pytest.fixture
def calm_player(virtual_room: Any, running_calmly: Player) -> Iterator[Player]:
    running_calmly.pause()
    running_calmly.loop_off()
    running_calmly.speed = 1.0
    yield running_calmly
    running_calmly.pause()
    # What is in the buffer is heard all the same.
    time.sleep(running_calmly.latency_s + 0.3)


@pytest.fixture
def player(virtual_room: Any, running: Player) -> Iterator[Player]:
    running.pause()
    running.loop_off()
    running.speed = 1.0
    yield running
    running.pause()


@pytest.mark.room
@pytest.mark.parametrize("speed", [1.0, 0.5])
def test_line_and_sound_agree(virtual_room: Any, player: Player, speed: float) -> None:
    player.load(clicks(10.0), RATE)
    player.speed = speed
    errors_s = without_a_gap(player, lambda: line_errors_s(virtual_room.device, player))
    assert len(errors_s) >= 2
    # An underrun on a busy machine may make one click late.
    assert np.sort(np.abs(errors_s))[-2] < 0.030


def line_errors_s(device: str, player: Player) -> list[float]:
    """How far the line is from each click when the click is heard."""
    player.seek(0.0)
    shown: list[tuple[float, float]] = []
    with Listener(device) as listener:
        player.play()
        until = time.monotonic() + 3.0
        while time.monotonic() < until:
            shown.append((listener.stream.time, player.position_s))
            time.sleep(0.004)
        player.pause()
        heard = onsets(*listener.sound())
    times, positions = np.array(shown).T
    heard = heard[(heard > times[0]) & (heard < times[-1])]
    marks = np.arange(0.25, 10.0, 0.5)
    places = np.interp(heard, times, positions)
    return [place - marks[np.argmin(np.abs(marks - place))] for place in places]


@pytest.mark.room
def test_sound_follows_the_key_at_once(virtual_room: Any, player: Player) -> None:
    player.load(tone(5.0), RATE)
    time.sleep(0.1)
    delay_s = without_a_gap(player, lambda: delay_of_sound_s(virtual_room.device, player))
    # 40 ms of it is the output's buffer; generous, as other programs may be busy here.
    assert 0 < delay_s < 0.15


def delay_of_sound_s(device: str, player: Player) -> float:
    """How long after the key the sound is heard; infinite when it is not heard for a second."""
    player.seek(0.0)
    with Listener(device) as listener:
        time.sleep(0.5)
        pressed_s = float(listener.stream.time)
        player.play()
        time.sleep(1.0)
        heard_s = onsets(*listener.sound(), threshold=0.05)
    player.pause()
    after = heard_s[heard_s > pressed_s]
    return float(after[0]) - pressed_s if len(after) else math.inf


@pytest.mark.room
def test_pause_seek_and_loop_are_heard(virtual_room: Any, calm_player: Player) -> None:
    calm_player.load(tone(20.0), RATE)
    assert calm_player.duration_s == 20.0
    calm_player.play()
    wait_for(lambda: calm_player.position_s > 0.2)
    assert calm_player.is_playing
    sought = time.monotonic()
    calm_player.seek(10.0)
    seen = places_until(calm_player, lambda places: places[-1] > 10.1)
    # However late a busy machine looks: sound cannot have come further than time has.
    assert seen[-1] < 10.0 + (time.monotonic() - sought) + 0.1
    assert not [place for place in seen if 5.0 < place < 10.0], "it glided there"
    before = calm_player.position_s
    calm_player.pause()
    assert not calm_player.is_playing
    held = wait_until_held(calm_player)
    assert before - 0.01 <= held < before + calm_player.latency_s + 0.5
    calm_player.seek(3.0)
    assert calm_player.position_s == 3.0
    calm_player.loop(5.0, 5.23)
    calm_player.play()
    wait_for(lambda: calm_player.position_s > 5.05)
    seen = places_until(calm_player, lambda places: turns(places) >= 3)
    assert min(seen) >= 5.0
    assert max(seen) <= 5.23


@pytest.mark.room
def test_half_the_speed_is_half_the_way(virtual_room: Any, calm_player: Player) -> None:
    calm_player.load(tone(20.0), RATE)
    calm_player.speed = 0.5
    speed = without_a_gap(calm_player, lambda: speed_of_the_line(calm_player))
    assert speed == pytest.approx(0.5, abs=0.05)


def speed_of_the_line(player: Player) -> float:
    """How fast the shown place moves: the median, as a busy machine looks late at times."""
    begun = player.position_s
    player.play()
    wait_for(lambda: player.position_s > begun + 0.3)
    line: list[tuple[float, float]] = []

    def has_come_on() -> bool:
        # As far as the place, not as long as time goes: a gap counts as one when sound goes on.
        line.append((time.monotonic(), player.position_s))
        return line[-1][1] > line[0][1] + 0.4

    wait_for(has_come_on)
    times, places = np.array(line).T
    steps = max(1, len(line) // 4)
    return float(np.median((places[steps:] - places[:-steps]) / (times[steps:] - times[:-steps])))


@pytest.mark.room
def test_another_rate_is_heard_at_its_pitch(virtual_room: Any, calm_player: Player) -> None:
    calm_player.load(tone(20.0, 443.0, 44_100), 44_100)
    with Listener(virtual_room.device) as listener:
        calm_player.play()
        wait_for(lambda: len(last_stretch(listener.sound()[1])) > 1.5 * RATE)
        time_s, sound = listener.sound()
    part = last_stretch(sound)[-RATE:]
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
    wait_for(lambda: player.position_s > 0.1)
    devices.refresh()
    assert player.is_open
    before = player.position_s
    wait_for(lambda: player.position_s > before + 0.2)


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


def silence_around(time_s: np.ndarray, sound: np.ndarray, begin_s: float, end_s: float) -> float:
    """The longest stretch without any sound between two moments, seconds."""
    near = sound[(time_s > begin_s) & (time_s < end_s)]
    loud = np.flatnonzero(np.abs(near) > 0.02)
    if not len(loud):
        return end_s - begin_s
    edges = np.concatenate([[0], loud, [len(near) - 1]])
    return float(np.diff(edges).max()) / RATE


def gap_when_switching_s(device: str, player: Player) -> float:
    """Play a tone, go over to another one twice, and return the longest silence."""
    other, first = tone(20.0, 660.0, 44_100), tone(20.0)
    player.load(first, RATE, position_s=1.0)
    with Listener(device) as listener:
        player.play()
        time.sleep(0.6)
        begun_s = float(listener.stream.time)
        player.switch(other, 44_100, lambda place_s: 0.8 * place_s)
        time.sleep(0.5)
        player.switch(first, RATE, lambda place_s: place_s / 0.8)
        time.sleep(0.6)
        time_s, sound = listener.sound()
    player.pause()
    return silence_around(time_s, sound, begun_s, time_s[-1] - 0.15)


def heard_gap_s(device: str, player: Player) -> float:
    for _ in range(3):
        with suppress(sounddevice.PortAudioError):  # a busy server lost the listener
            return gap_when_switching_s(device, player)
        time.sleep(2.5)
    return math.inf


@pytest.mark.room
def test_switching_takes_leaves_no_gap(virtual_room: Any, player: Player) -> None:
    gap_s = without_a_gap(player, lambda: heard_gap_s(virtual_room.device, player))
    print(f"longest silence around two switches: {1000 * gap_s:.1f} ms")
    assert gap_s < 0.05


def beats_across_a_switch(device: str, player: Player) -> np.ndarray:
    """Switch from a beat every 0.5 s to the same music with one every 0.4 s."""
    player.load(clicks(20.0), RATE)
    with Listener(device) as listener:
        time.sleep(0.5)
        begun_s = float(listener.stream.time)
        player.play()
        time.sleep(1.4)
        player.switch(clicks(20.0, 0.4, 0.2), RATE, lambda place_s: 0.8 * place_s)
        time.sleep(1.8)
        heard = onsets(*listener.sound())
    player.pause()
    return np.diff(heard[heard > begun_s])


@pytest.mark.room
def test_the_beat_goes_on_across_a_switch_between_tempi(virtual_room: Any, player: Player) -> None:
    """The musical moment is kept: no beat is lost, doubled or moved by 50 ms."""
    steps = without_a_gap(player, lambda: beats_across_a_switch(virtual_room.device, player))
    print("from beat to beat, s:", np.round(steps, 3))
    assert steps[0] == pytest.approx(0.5, abs=0.01)
    assert steps[-1] == pytest.approx(0.4, abs=0.01)
    turning = steps[(steps < 0.49) & (steps > 0.41)]
    assert len(turning) <= 1, "one beat lies between the two tempi"
    assert np.all((steps > 0.35) & (steps < 0.55))
