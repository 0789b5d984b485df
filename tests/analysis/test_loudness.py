import numpy as np
import pyloudnorm
import pytest
from scipy import signal

from analysis.k_weighting import PUBLISHED_SECTIONS, k_weighting_sections
from analysis.loudness import measure_loudness, to_lufs
from analysis.oversampling import Interpolator

RATES_HZ = [8_000, 11_025, 16_000, 22_050, 32_000, 44_100, 48_000, 88_200, 96_000, 176_400, 192_000]


def gain_db(sections, frequency_hz, rate_hz):
    _, response = signal.freqz_sos(sections, [frequency_hz], fs=rate_hz)
    return float(20 * np.log10(np.abs(response[0])))


def test_sections_at_48_khz_are_the_published_ones():
    # ITU-R BS.1770-4 tables 1 and 2 (transcribed: the reading most code copies share).
    assert np.array_equal(k_weighting_sections(48_000), PUBLISHED_SECTIONS)
    # The way to and from the prototype is exact, so nearby rates give nearby filters.
    assert k_weighting_sections(48_000.001) == pytest.approx(PUBLISHED_SECTIONS, abs=1e-7)


@pytest.mark.parametrize(
    ("frequency_hz", "published_db"),
    # Computed from the published coefficients, independently of this project.
    [(997.0, 0.6910), (100.0, -1.134), (2000.0, 3.071), (10_000.0, 4.042)],
)
def test_response_at_listed_frequencies(frequency_hz, published_db):
    sections = k_weighting_sections(48_000)
    assert gain_db(sections, frequency_hz, 48_000) == pytest.approx(published_db, abs=6e-4)


@pytest.mark.parametrize("rate_hz", [32_000, 44_100, 88_200, 96_000, 192_000])
@pytest.mark.parametrize("frequency_hz", [30.0, 100.0, 997.0, 2000.0, 5000.0])
def test_response_does_not_depend_on_the_rate(rate_hz, frequency_hz):
    at_48_khz = gain_db(k_weighting_sections(48_000), frequency_hz, 48_000)
    moved = gain_db(k_weighting_sections(rate_hz), frequency_hz, rate_hz)
    assert moved == pytest.approx(at_48_khz, abs=0.02)


def test_too_low_a_rate_is_refused():
    with pytest.raises(ValueError, match="4000"):
        k_weighting_sections(3_999)


@pytest.mark.parametrize("rate_hz", RATES_HZ)
def test_full_scale_997_hz_reads_minus_3_01(rate_hz):
    # ITU-R BS.1770-4, annex 1: a 0 dBFS 997 Hz sine on one channel reads -3.01 LKFS.
    sine = np.sin(2 * np.pi * 997 * np.arange(3 * rate_hz) / rate_hz)
    one = measure_loudness(sine, rate_hz)
    assert one.integrated_lufs == pytest.approx(-3.01, abs=0.015)
    both = measure_loudness(np.column_stack((sine, sine)), rate_hz)
    assert both.integrated_lufs == pytest.approx(0.00, abs=0.015)


@pytest.mark.parametrize("rate_hz", [44_100, 48_000, 96_000])
def test_integrated_agrees_with_pyloudnorm(rate_hz):
    # pyloudnorm derives its own filter and reads 0.04 LU low at 997 Hz, hence the bound.
    rng = np.random.default_rng(7)
    envelope = 10 ** (np.repeat(rng.uniform(-40, -15, 24), rate_hz // 2) / 20)
    noise = signal.lfilter([1.0], [1.0, -0.95], rng.standard_normal(envelope.size)) * 0.3
    samples = np.column_stack((noise * envelope, 0.5 * noise * envelope))
    reference = pyloudnorm.Meter(rate_hz).integrated_loudness(samples)
    assert measure_loudness(samples, rate_hz).integrated_lufs == pytest.approx(reference, abs=0.1)


def test_blocks_do_not_show(monkeypatch):
    samples = np.random.default_rng(1).standard_normal(40_000) * 0.1
    whole = {rate: measure_loudness(samples, rate).power for rate in (11_025, 44_100)}
    monkeypatch.setattr("analysis.loudness._BLOCK_SAMPLES", 977)
    for rate, power in whole.items():
        assert measure_loudness(samples, rate).power == pytest.approx(power, rel=1e-9)


def test_everything_gated_has_no_integrated_loudness():
    curve = measure_loudness(np.zeros(48_000), 48_000)
    assert curve.integrated_lufs is None
    assert curve.range_lu is None
    assert np.all(np.isneginf(curve.momentary_lufs))


def test_silence_after_sound_reads_as_silence():
    samples = np.concatenate((0.5 * np.ones(48_000), np.zeros(3 * 48_000)))
    samples[:48_000] *= np.sin(np.arange(48_000))
    assert measure_loudness(samples, 48_000).momentary_lufs[-1] < -120


def test_shorter_than_a_window_has_no_values():
    curve = measure_loudness(np.ones(100), 48_000)
    assert curve.momentary_lufs.size == 0
    assert curve.momentary_time_s.size == 0


def test_one_weight_for_each_channel():
    with pytest.raises(ValueError, match="2 weights for 1 channels"):
        measure_loudness(np.zeros(48_000), 48_000, weights=[1.0, 1.0])


def test_power_of_one_is_the_offset():
    assert to_lufs(np.array([1.0]))[0] == pytest.approx(-0.691)


@pytest.mark.parametrize("factor", [2, 3, 4, 8])
def test_interpolation_keeps_the_samples_and_fills_in_between(factor):
    count = 2000
    index = np.arange(count)
    wave = np.cos(2 * np.pi * 0.11 * index + 0.4)
    interpolator = Interpolator(factor)
    dense = np.concatenate(
        [interpolator.process(part) for part in np.array_split(wave, 7)] + [interpolator.flush()]
    )
    assert dense.size == factor * count
    assert dense[::factor] == pytest.approx(wave, abs=1e-12)
    inner = slice(50 * factor, -50 * factor)
    exact = np.cos(2 * np.pi * 0.11 * np.arange(factor * count) / factor + 0.4)
    assert np.max(np.abs(dense[inner] - exact[inner])) < 1e-3
