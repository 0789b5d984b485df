import numpy as np
import pytest

from analysis.dynamics import count_clipped_samples, measure_dynamics, noise_floor_dbfs
from analysis.results import Measured, NotMeasurable, Reason
from analysis.stopping import Stopped

RATE_HZ = 48_000


def tone_at(levels_db, seconds=2.0, rate_hz=RATE_HZ):
    """997 Hz, a stretch of ``seconds`` at each peak level."""
    gain = np.repeat(10 ** (np.asarray(levels_db, dtype=float) / 20), round(seconds * rate_hz))
    return gain * np.sin(2 * np.pi * 997 * np.arange(gain.size) / rate_hz)


def measured(*args, **kwargs):
    result = measure_dynamics(*args, **kwargs)
    assert isinstance(result, Measured)
    return result.value


@pytest.mark.parametrize("rate_hz", [8_000, 22_050, 44_100, 48_000, 192_000])
def test_levels_of_a_plain_tone(rate_hz):
    # ITU-R BS.1770-4: 997 Hz at 0 dBFS on one channel reads -3.01 LKFS.
    dynamics = measured(tone_at([-20.0], 4.0, rate_hz), rate_hz)
    assert dynamics.integrated_lufs == pytest.approx(-23.01, abs=0.02)
    assert dynamics.max_momentary_lufs == pytest.approx(-23.01, abs=0.02)
    assert dynamics.max_short_term_lufs == pytest.approx(-23.01, abs=0.02)
    assert dynamics.true_peak_dbtp == pytest.approx(-20.0, abs=0.2)
    assert dynamics.dynamic_span_db.value == pytest.approx(0.0, abs=0.01)


def test_span_of_two_equally_long_levels_is_their_distance():
    samples = tone_at([-30.0, -18.0], 10.0)
    assert measured(samples, RATE_HZ).dynamic_span_db.value == pytest.approx(12.0, abs=0.05)


def test_span_of_an_even_crescendo():
    # Levels spread evenly over 20 dB: the 10th and 95th percentile are 17 dB apart,
    # less what the 0.4 s windows cannot reach at either end of 40 s.
    samples = tone_at(np.linspace(-40, -20, 800), 0.05)
    assert measured(samples, RATE_HZ).dynamic_span_db.value == pytest.approx(16.83, abs=0.1)


def test_pauses_do_not_widen_the_span():
    rng = np.random.default_rng(0)
    samples = tone_at([-140, -22, -16, -140, -22, -16, -140], 3.0)
    samples += 10 ** (-60 / 20) * rng.standard_normal(samples.size)
    by_level = measured(samples, RATE_HZ).dynamic_span_db.value
    playing = [(3.0, 6.0), (6.1, 9.0), (12.0, 15.0), (15.0, 18.0)]
    given = measured(samples, RATE_HZ, playing=playing).dynamic_span_db.value
    assert given == pytest.approx(6.0, abs=0.1)
    assert by_level == pytest.approx(6.0, abs=0.6)


def test_noise_floor_is_the_level_of_the_pause():
    rng = np.random.default_rng(1)
    samples = tone_at([-20, -140, -20], 2.0)
    samples += 10 ** (-62 / 20) * rng.standard_normal(samples.size) + 0.01
    assert noise_floor_dbfs(samples, RATE_HZ) == pytest.approx(-62.0, abs=0.3)


def test_digital_silence_has_a_floor_that_is_a_number():
    samples = np.concatenate((np.zeros(RATE_HZ), tone_at([-20])))
    dynamics = measured(samples, RATE_HZ)
    assert dynamics.noise_floor_dbfs == -144.0
    assert np.isfinite(dynamics.momentary_lufs).all()


def test_clipping_counts_runs_at_full_scale(monkeypatch):
    samples = np.zeros((1000, 2))
    samples[10:15, 0] = 1.0
    samples[20, 0] = 1.0  # one sample alone is a peak, not clipping
    samples[30:33, 1] = -32768 / 32768
    samples[998:, 1] = 32767 / 32768
    assert count_clipped_samples(samples) == 5 + 3 + 2
    monkeypatch.setattr("analysis.loudness._BLOCK_SAMPLES", 13)
    assert count_clipped_samples(samples) == 5 + 3 + 2


def test_a_clipped_tone_says_so_and_peaks_above_full_scale():
    dynamics = measured(np.clip(tone_at([6.0]), -1.0, 1.0), RATE_HZ)
    assert dynamics.clipped_samples > 10_000
    assert dynamics.true_peak_dbtp > 0.0


def test_channels_count_equally_and_mono_is_3_db_below_dual_mono():
    mono = tone_at([-20.0])
    both = measured(np.column_stack((mono, mono)), RATE_HZ)
    assert both.integrated_lufs - measured(mono, RATE_HZ).integrated_lufs == pytest.approx(
        3.01, abs=0.01
    )


@pytest.mark.parametrize(
    ("samples", "rate_hz", "reason"),
    [
        (np.zeros(RATE_HZ), RATE_HZ, Reason.SILENT),
        (np.zeros(0), RATE_HZ, Reason.TOO_SHORT),
        (np.ones(1), RATE_HZ, Reason.TOO_SHORT),
        (tone_at([-20.0], 0.3), RATE_HZ, Reason.TOO_SHORT),
        (np.full(RATE_HZ, np.nan), RATE_HZ, Reason.INPUT_BROKEN),
        (tone_at([-20.0], 1.0, 4_000), 4_000, Reason.LOW_SAMPLE_RATE),
    ],
)
def test_refusals(samples, rate_hz, reason):
    result = measure_dynamics(samples, rate_hz)
    assert isinstance(result, NotMeasurable)
    assert result.reason is reason
    assert result.sentence.endswith(".")


def test_a_short_take_has_no_short_term_loudness_and_no_span():
    dynamics = measured(tone_at([-20.0], 0.9), RATE_HZ)
    assert dynamics.max_short_term_lufs is None
    assert isinstance(dynamics.dynamic_span_db, NotMeasurable)
    assert dynamics.dynamic_span_db.reason is Reason.TOO_SHORT


def test_single_precision_and_read_only_input_are_enough():
    samples = tone_at([-20.0]).astype(np.float32)
    samples.setflags(write=False)
    assert measured(samples, RATE_HZ).integrated_lufs == pytest.approx(-23.01, abs=0.02)


def test_progress_rises_to_one_and_a_stop_is_heard():
    told: list[float] = []
    measure_dynamics(tone_at([-20.0]), RATE_HZ, progress=told.append)
    assert told == sorted(told)
    assert told[-1] == 1.0
    with pytest.raises(Stopped):
        measure_dynamics(tone_at([-20.0]), RATE_HZ, should_stop=lambda: True)
