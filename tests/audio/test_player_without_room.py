"""The player against a stand-in for PortAudio that takes buffers when it is told to."""

import time
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest

from audio.player import Player

FINE = SimpleNamespace(output_underflow=False)
LATE = SimpleNamespace(output_underflow=True)


def take_buffers(fake: Any, count: int, status: Any = FINE, frames: int = 441) -> np.ndarray:
    """Ask the latest stream for sound as a device would."""
    settings = fake.opened[-1]
    buffers = []
    for number in range(count):
        out = np.zeros((frames, settings["channels"]), np.float32)
        when = SimpleNamespace(outputBufferDacTime=number * frames / settings["samplerate"])
        settings["callback"](out, frames, when, status)
        buffers.append(out)
        time.sleep(0.002)
    return np.concatenate(buffers)


@pytest.fixture
def player(fake: Any) -> Any:
    player = Player()
    yield player
    player.close()


def test_a_device_of_another_rate_plays_the_same_place_and_pitch(fake: Any, player: Player) -> None:
    fake.accepted_rates = {44_100}
    phase = 2 * np.pi * 443.0 * np.arange(10 * 48_000) / 48_000
    player.load((0.5 * np.sin(phase)).astype(np.float32), 48_000)
    player.loop(1.0, 6.0)
    player.seek(3.0)
    player.play()
    assert player.position_s == pytest.approx(3.0, abs=1e-4)
    time.sleep(0.2)
    sound = take_buffers(fake, 110)[4410:, 0].astype(float)
    assert player.underruns == 0
    spectrum = np.abs(np.fft.rfft(sound * np.hanning(len(sound))))
    peak = int(spectrum.argmax())
    left, middle, right = np.log(spectrum[peak - 1 : peak + 2])
    place = peak + 0.5 * (left - right) / (left - 2 * middle + right)
    assert place * 44_100 / len(sound) == pytest.approx(443.0, abs=0.05)
    player.pause()
    take_buffers(fake, 2)
    assert player.position_s == pytest.approx(3.0 + 1.1, abs=0.02)


def test_underflows_of_the_device_are_counted(fake: Any, player: Player) -> None:
    player.load(np.zeros(48_000, np.float32), 48_000)
    player.play()
    time.sleep(0.1)
    take_buffers(fake, 3, LATE)
    assert player.underruns == 3


def test_a_lost_output_can_be_opened_again(fake: Any, player: Player) -> None:
    player.load(np.ones(48_000, np.float32), 48_000)
    player.play()
    fake.opened[-1]["finished_callback"]()
    assert not player.is_open
    assert not player.is_playing
    assert player.failure is not None
    player.play()
    assert player.is_open
    assert player.failure is None
    time.sleep(0.1)
    assert take_buffers(fake, 5).any()


def test_a_wanted_close_is_no_loss(fake: Any, player: Player) -> None:
    player.open()
    ended = fake.opened[-1]["finished_callback"]
    player.close()
    ended()
    assert player.failure is None
    assert not player.is_open


def test_the_output_is_known_to_run_once_it_has_asked_for_a_while(
    fake: Any, player: Player
) -> None:
    player.open()
    take_buffers(fake, 3)
    assert not player.wait_until_running(0.0)
    take_buffers(fake, 40)
    assert player.wait_until_running(0.0)


def test_takes_are_switched_while_they_play(fake: Any, player: Player) -> None:
    player.load(np.full(96_000, 0.25, np.float32), 48_000)
    player.play()
    time.sleep(0.1)
    first = take_buffers(fake, 10, frames=480)
    player.load(np.full(96_000, 0.75, np.float32), 48_000, position_s=1.0, keep_playing=True)
    time.sleep(0.1)
    second = take_buffers(fake, 10, frames=480)
    assert first[-1, 0] == 0.25
    assert second[-1, 0] == 0.75
    assert np.abs(np.diff(np.concatenate([first, second])[480:, 0])).max() < 0.01
    assert player.is_playing


def test_sweeping_the_speed_does_not_run_away(fake: Any, player: Player) -> None:
    player.load(np.zeros(20 * 48_000, np.float32), 48_000)
    player.play()
    time.sleep(0.1)
    take_buffers(fake, 10, frames=480)
    for speed in np.linspace(1.0, 0.5, 30):
        player.speed = float(speed)
        take_buffers(fake, 1, frames=480)
    time.sleep(0.2)
    take_buffers(fake, 30, frames=480)
    # 70 buffers of 10 ms at no more than full speed.
    assert player.speed == 0.5
    assert 0.3 < player._place() / 48_000 < 0.75


def test_play_after_the_end_begins_again_at_another_speed_too(fake: Any, player: Player) -> None:
    player.load(np.full(4_800, 0.5, np.float32), 48_000)
    player.play()
    time.sleep(0.1)
    take_buffers(fake, 20, frames=480)
    assert player.is_finished
    player.speed = 0.5
    player.play()
    time.sleep(0.1)
    assert np.abs(take_buffers(fake, 8, frames=480)).max() > 0.3
