import mir_eval
import numpy as np
import parselmouth
import pytest

from analysis.blocks import MonoSamples
from analysis.pitch import decimation_for, track_pitch
from analysis.results import Measured, NotMeasurable, PitchTrack, Reason
from analysis.stopping import Stopped


def tone(
    f0_hz: float,
    rate: int = 44_100,
    *,
    seconds: float = 1.5,
    extent_cents: float = 0.0,
    vibrato_hz: float = 6.0,
    snr_db: float | None = None,
    partials: int = 20,
) -> tuple[np.ndarray, np.ndarray]:
    """A tone with falling partials, and its true frequency at every sample."""
    t = np.arange(int(seconds * rate)) / rate
    f = f0_hz * 2.0 ** (extent_cents * np.sin(2 * np.pi * vibrato_hz * t) / 1200.0)
    phase = 2 * np.pi * np.cumsum(f) / rate
    x = sum(np.sin(k * phase + k) / k for k in range(1, partials + 1) if k * f0_hz < 0.45 * rate)
    x = 0.5 * x / np.max(np.abs(x))
    if snr_db is not None:
        noise = np.random.default_rng(1).standard_normal(len(x))
        x = x + noise * np.std(x) * 10 ** (-snr_db / 20)
    return x, f


def tracked(samples: np.ndarray, rate: int, floor: float, ceiling: float) -> PitchTrack:
    result = track_pitch(samples, rate, floor_hz=floor, ceiling_hz=ceiling)
    assert isinstance(result, Measured)
    return result.value


def errors_cents(track: PitchTrack, f: np.ndarray, rate: int) -> np.ndarray:
    inner = (track.time_s > 0.2) & (track.time_s < len(f) / rate - 0.2)
    true = np.interp(track.time_s[inner], np.arange(len(f)) / rate, f)
    assert np.isfinite(track.f0_hz[inner]).all()
    return 1200.0 * np.log2(track.f0_hz[inner] / true)


RANGES = [  # pitch, floor, ceiling: C1 to C8 as the instruments would search for them
    (32.703, 30.0, 440.0), (41.203, 30.0, 440.0), (65.406, 60.0, 1200.0),
    (130.813, 120.0, 1500.0), (196.0, 180.0, 3950.0), (659.255, 180.0, 3950.0),
    (2093.005, 180.0, 3950.0), (3520.0, 180.0, 3950.0), (4186.009, 180.0, 4900.0),
]  # fmt: skip


@pytest.mark.parametrize(("f0", "floor", "ceiling"), RANGES)
@pytest.mark.parametrize("snr_db", [None, 30.0, 20.0])
def test_no_octave_error_from_c1_to_c8(
    f0: float, floor: float, ceiling: float, snr_db: float | None
) -> None:
    x, f = tone(f0 * 2 ** (5 / 1200), snr_db=snr_db)
    errors = errors_cents(tracked(x, 44_100, floor, ceiling), f, 44_100)
    assert np.max(np.abs(errors)) < 10.0
    assert abs(float(np.median(errors))) < 0.3


@pytest.mark.parametrize(("f0", "floor", "ceiling"), RANGES)
def test_as_accurate_as_praat_on_a_clean_tone(f0: float, floor: float, ceiling: float) -> None:
    x, f = tone(f0, extent_cents=20.0)
    ours = np.median(np.abs(errors_cents(tracked(x, 44_100, floor, ceiling), f, 44_100)))
    praat = parselmouth.Sound(x, 44_100).to_pitch_ac(
        time_step=0.005, pitch_floor=floor, pitch_ceiling=ceiling
    )
    hertz = praat.selected_array["frequency"]
    inner = (praat.xs() > 0.2) & (praat.xs() < 1.3) & (hertz > 0)
    true = np.interp(praat.xs()[inner], np.arange(len(f)) / 44_100, f)
    theirs = np.median(np.abs(1200 * np.log2(hertz[inner] / true)))
    assert ours <= theirs + 0.05


@pytest.mark.parametrize("rate", [8_000, 11_025, 22_050, 44_100, 48_000, 96_000, 192_000])
def test_every_sample_rate(rate: int) -> None:
    x, f = tone(445.0, rate, extent_cents=15.0)
    errors = errors_cents(tracked(x, rate, 180.0, 3950.0), f, rate)
    assert np.median(np.abs(errors)) < 0.3


@pytest.mark.parametrize("f0", [65.406, 110.0, 196.0, 440.0, 1760.0])
def test_vibrato_of_30_cents_reads_at_least_28(f0: float) -> None:
    x, _ = tone(f0, seconds=2.0, extent_cents=30.0)
    floor = 60.0 if f0 < 190 else 180.0
    track = tracked(x, 44_100, floor, 20 * floor)
    inner = (track.time_s > 0.3) & (track.time_s < 1.7)
    cents = 1200 * np.log2(track.f0_hz[inner] / f0)
    assert 28.0 <= 0.5 * (np.max(cents) - np.min(cents)) <= 31.0


@pytest.mark.parametrize("f0", [32.703, 65.406, 110.0])
def test_no_window_flattens_a_vibrato(f0: float) -> None:
    x, _ = tone(f0, seconds=3.0, extent_cents=30.0)
    result = track_pitch(x, 44_100, floor_hz=30.0, ceiling_hz=440.0)
    assert isinstance(result, Measured)
    track = result.value
    inner = (track.time_s > 0.5) & (track.time_s < 2.5)
    cents = 1200 * np.log2(track.f0_hz[inner] / f0)
    read = np.sqrt(2.0) * np.std(cents)
    assert read == pytest.approx(30.0, abs=0.8)


def test_melody_scores_by_mir_eval() -> None:
    pitches = [196.0, 220.0, 329.6, 440.0, 659.3, 1318.5]
    parts = [tone(f, seconds=0.5) for f in pitches]
    x, f = np.concatenate([p[0] for p in parts]), np.concatenate([p[1] for p in parts])
    track = tracked(x, 44_100, 180.0, 3950.0)
    true = f[np.minimum((track.time_s * 44_100).astype(int), len(f) - 1)]
    voiced, cents, est_voiced, est_cents = mir_eval.melody.to_cent_voicing(
        track.time_s, true, track.time_s, np.nan_to_num(track.f0_hz)
    )
    assert mir_eval.melody.raw_pitch_accuracy(voiced, cents, est_voiced, est_cents, 10) > 0.95
    assert mir_eval.melody.voicing_measures(voiced, est_voiced)[0] > 0.98


def test_noise_has_no_pitch_and_silence_says_so() -> None:
    noise = 0.1 * np.random.default_rng(0).standard_normal(44_100)
    found = track_pitch(noise, 44_100, floor_hz=180.0, ceiling_hz=3950.0)
    if isinstance(found, Measured):
        assert found.value.voiced_fraction < 0.05
    else:
        assert found.reason is Reason.NO_PITCH
    silent = track_pitch(np.zeros(44_100), 44_100, floor_hz=180.0, ceiling_hz=3950.0)
    assert isinstance(silent, NotMeasurable)
    assert silent.reason is Reason.SILENT


def test_short_and_broken_input() -> None:
    short = track_pitch(np.ones(10), 44_100, floor_hz=180.0, ceiling_hz=3950.0)
    assert isinstance(short, NotMeasurable)
    assert short.reason is Reason.TOO_SHORT
    x, _ = tone(440.0, seconds=0.5)
    x[1000] = np.nan
    broken = track_pitch(x, 44_100, floor_hz=180.0, ceiling_hz=3950.0)
    assert isinstance(broken, NotMeasurable)
    assert broken.reason is Reason.INPUT_BROKEN


@pytest.mark.parametrize(
    "wrong",
    [
        {"floor_hz": 0.0, "ceiling_hz": 100.0},
        {"floor_hz": 500.0, "ceiling_hz": 100.0},
        {"floor_hz": 100.0, "ceiling_hz": 900.0, "hop_s": 0.0},
        {"floor_hz": 100.0, "ceiling_hz": 900.0, "window_periods": 1.0},
    ],
)
def test_settings_that_make_no_sense_are_refused(wrong: dict[str, float]) -> None:
    with pytest.raises(ValueError, match=r"range|hop|window"):
        track_pitch(np.zeros(1000), 44_100, **wrong)


def test_stops_when_asked() -> None:
    x, _ = tone(440.0)
    with pytest.raises(Stopped):
        track_pitch(x, 44_100, floor_hz=180.0, ceiling_hz=3950.0, should_stop=lambda: True)


def test_blocks_do_not_show() -> None:
    """Read whole or piece by piece, decimated or not, mono or not: the same samples."""
    rng = np.random.default_rng(2)
    stereo = rng.standard_normal((30_000, 2))
    source = MonoSamples(stereo, 96_000, 2)
    whole = source.read(0, len(source))
    pieces = [source.read(a, min(a + 777, len(source))) for a in range(0, len(source), 777)]
    np.testing.assert_allclose(np.concatenate(pieces), whole, atol=1e-6)
    assert len(source) == 15_000
    assert not MonoSamples(stereo, 96_000).read(-50, -10).any()
    np.testing.assert_allclose(
        MonoSamples(stereo, 96_000).read(5, 9), stereo[5:9].mean(axis=1), rtol=1e-6
    )
    with pytest.raises(ValueError, match="samples must be"):
        MonoSamples(np.zeros((2, 2, 2)), 96_000)


def test_decimation_keeps_ten_harmonics() -> None:
    assert decimation_for(192_000, 3950.0) == 4
    assert decimation_for(48_000, 3950.0) == 1
    assert decimation_for(44_100, 440.0) >= 2
    assert decimation_for(8_000, 3950.0) == 1
