"""Finding the test sweeps in what an input heard, without a device."""

import numpy as np
import pytest

from audio.errors import AudioFailure
from audio.round_trip import _bursts, _summarise, _sweep

RATE = 48_000
BEGINS_S = 0.5 + 0.5 * np.arange(6)


def heard(delay_s: float, noise: float, rate: int = RATE) -> np.ndarray:
    """The bursts as an input of some rate hears them, one second into its stream."""
    sound = np.concatenate([np.zeros(RATE), _bursts(_sweep()), np.zeros(RATE)])
    places = np.arange(round(len(sound) * rate / RATE)) * RATE / rate
    delayed = np.interp(places - delay_s * RATE, np.arange(len(sound)), sound)
    generator = np.random.default_rng(4)
    return (0.3 * delayed + noise * generator.normal(size=len(delayed))).astype(np.float32)


@pytest.mark.parametrize("rate", [48_000, 44_100])
@pytest.mark.parametrize("delay_s", [-0.004, 0.0, 0.0373, 0.21])
def test_a_known_delay_is_found_under_noise(delay_s: float, rate: int) -> None:
    expected = [(1.0 + begin) * rate for begin in BEGINS_S]
    found = _summarise(heard(delay_s, 0.02, rate), _sweep(), expected, rate)
    assert found.bursts == 6
    assert found.offset_s == pytest.approx(delay_s, abs=0.0005)
    assert found.scatter_s < 0.0005


def test_noise_alone_is_not_taken_for_the_sweep() -> None:
    noise = np.random.default_rng(5).normal(0, 0.1, 6 * RATE).astype(np.float32)
    with pytest.raises(AudioFailure, match="not heard") as caught:
        _summarise(noise, _sweep(), [(1.0 + begin) * RATE for begin in BEGINS_S], RATE)
    assert "volume" in caught.value.next_step


def test_silence_and_a_recording_that_is_too_short_are_not_heard_either() -> None:
    expected = [(1.0 + begin) * RATE for begin in BEGINS_S]
    for sound in (np.zeros(6 * RATE, np.float32), np.zeros(10, np.float32)):
        with pytest.raises(AudioFailure, match="not heard"):
            _summarise(sound, _sweep(), expected, RATE)


def test_a_sweep_that_met_an_underrun_does_not_count() -> None:
    expected = [(1.0 + begin) * RATE for begin in BEGINS_S]
    expected[2] -= 0.023 * RATE
    found = _summarise(heard(0.012, 0.02), _sweep(), expected, RATE)
    assert found.bursts == 5
    assert found.offset_s == pytest.approx(0.012, abs=0.0005)


def test_delays_that_do_not_agree_are_no_measurement() -> None:
    expected = [(1.0 + begin - 0.03 * number) * RATE for number, begin in enumerate(BEGINS_S)]
    with pytest.raises(AudioFailure, match="does not hold still"):
        _summarise(heard(0.01, 0.02), _sweep(), expected, RATE)
