import math

import numpy as np
import pytest

from audio.levels import (
    FLOOR_DBFS,
    LevelJudgement,
    LevelMeter,
    amplitude_to_dbfs,
    clipped_count,
    judge_level,
    peak_dbfs,
    rms_dbfs,
)

RATE = 48_000


def sine(level_dbfs: float, seconds: float = 1.0) -> np.ndarray:
    time_s = np.arange(round(seconds * RATE)) / RATE
    return (10 ** (level_dbfs / 20) * np.sin(2 * np.pi * 997 * time_s)).astype(np.float32)


def test_a_full_scale_sine_reads_zero_in_peak_and_rms() -> None:
    # AES17: 0 dBFS is the rms level of a full-scale 997 Hz sine (from memory).
    assert peak_dbfs(sine(0.0)) == pytest.approx(0.0, abs=0.001)
    assert rms_dbfs(sine(0.0)) == pytest.approx(0.0, abs=0.001)


@pytest.mark.parametrize("level", [-3.0, -20.0, -60.0, -100.0])
def test_levels_follow_the_decibel(level: float) -> None:
    assert peak_dbfs(sine(level)) == pytest.approx(level, abs=0.01)
    assert rms_dbfs(sine(level)) == pytest.approx(level, abs=0.01)


def test_a_full_scale_square_wave_is_three_decibels_above_the_sine() -> None:
    # 20 log10(sqrt 2) = 3.0103 dB, the crest factor of a sine.
    square = np.sign(sine(0.0) + 1e-9).astype(np.float32)
    assert rms_dbfs(square) == pytest.approx(3.0103, abs=0.001)


def test_silence_and_nothing_read_as_the_floor() -> None:
    assert peak_dbfs(np.zeros((10, 2), np.float32)) == FLOOR_DBFS
    assert rms_dbfs(np.zeros(0, np.float32)) == FLOOR_DBFS
    assert peak_dbfs(np.zeros(0, np.float32)) == FLOOR_DBFS
    assert math.isfinite(amplitude_to_dbfs(0.0))


def test_clipping_counts_full_scale_of_a_16_bit_converter_on_both_sides() -> None:
    block = np.array([[32767 / 32768, -1.0], [0.9999, 1.3], [32766 / 32768, 0.0]], np.float32)
    assert clipped_count(block) == 3


def test_the_meter_holds_a_peak_and_then_falls_twenty_decibels_in_1_7_seconds() -> None:
    # Return time of a type I programme meter, IEC 60268-10 (from memory).
    meter = LevelMeter(RATE, hold_s=1.5)
    meter.update(sine(-6.0, 0.1))
    quiet = sine(-80.0, 0.1)
    for _ in range(15):
        held = meter.update(quiet)
    assert held.hold_dbfs == pytest.approx(-6.0, abs=0.1)
    for _ in range(17):
        held = meter.update(quiet)
    assert held.hold_dbfs == pytest.approx(-26.0, abs=0.2)
    assert held.highest_dbfs == pytest.approx(-6.0, abs=0.1)
    assert held.peak_dbfs == pytest.approx(-80.0, abs=0.1)


def test_the_meter_does_not_depend_on_the_size_of_its_blocks() -> None:
    sound = np.concatenate([np.full(4800, 0.5, np.float32), sine(-80.0, 3.0)])
    readings = []
    for size in (160, 480, 4800):
        meter = LevelMeter(RATE)
        for start in range(0, len(sound), size):
            meter.update(sound[start : start + size])
        readings.append(meter.level.hold_dbfs)
    assert np.ptp(readings) < 0.05


def test_the_meter_counts_clipping_until_it_is_reset() -> None:
    meter = LevelMeter(RATE)
    meter.update(np.ones(3, np.float32))
    meter.update(np.ones(2, np.float32))
    assert meter.level.clipped_samples == 5
    meter.update(np.zeros(0, np.float32))
    assert meter.level.clipped_samples == 5
    meter.reset()
    assert meter.level.clipped_samples == 0
    assert meter.level.hold_dbfs == FLOOR_DBFS


def test_levels_are_judged_in_words() -> None:
    assert judge_level(-45.0) is LevelJudgement.TOO_QUIET
    assert judge_level(-12.0) is LevelJudgement.GOOD
    assert judge_level(-0.5) is LevelJudgement.TOO_LOUD
