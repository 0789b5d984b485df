"""The pitch read from all partials, against sounds whose truth is their formula."""

import numpy as np
import parselmouth
import pytest

from analysis.blocks import MonoSamples
from analysis.instruments import INSTRUMENTS
from analysis.partial_pitch import with_all_partials
from analysis.pitch import track_instrument, track_pitch
from analysis.results import FloatArray, Measured, PitchTrack
from analysis.stopping import Stopped
from app.services.accuracy.phrases import instrument_of, phrase_of
from app.services.accuracy.scoring import frame_errors
from sample_audio.generator import render

RATE_HZ = 44_100


def swinging(hz: float, seconds: float, extent_cents: float, rate_hz: float = 6.0) -> FloatArray:
    """Frequency of each sample: a sinusoid in cents around ``hz``."""
    t = np.arange(int(seconds * RATE_HZ)) / RATE_HZ
    return np.asarray(hz * 2.0 ** (extent_cents * np.sin(2 * np.pi * rate_hz * t) / 1200.0))


def partial(f0_hz: FloatArray, number: int) -> FloatArray:
    return np.asarray(np.sin(2 * np.pi * number * np.cumsum(f0_hz) / RATE_HZ + number))


def rough(samples: FloatArray, floor_hz: float, ceiling_hz: float) -> PitchTrack:
    found = track_pitch(
        samples, RATE_HZ, floor_hz=floor_hz, ceiling_hz=ceiling_hz, all_partials=False
    )
    assert isinstance(found, Measured)
    return found.value


def cents_off(track: PitchTrack, true_hz: FloatArray) -> FloatArray:
    """Errors of the frames that are not at the ends."""
    inner = (track.time_s > 0.2) & (track.time_s < len(true_hz) / RATE_HZ - 0.2)
    time_s = track.time_s[inner]
    there = np.interp(time_s, np.arange(len(true_hz)) / RATE_HZ, true_hz)
    return np.asarray(1200.0 * np.log2(track.f0_hz[inner] / there))


@pytest.mark.parametrize("count", [1, 2, 20])
@pytest.mark.parametrize("hz", [65.406, 440.0, 2093.0])
def test_a_wide_vibrato_is_read_as_it_is(hz: float, count: int) -> None:
    true_hz = swinging(hz, 2.0, 30.0)
    samples = 0.1 * sum(partial(true_hz, k) / k for k in range(1, count + 1) if k * hz < 18_000)
    track = with_all_partials(rough(samples, hz / 2, 2 * hz), MonoSamples(samples, RATE_HZ))
    off = cents_off(track, true_hz)
    assert np.quantile(np.abs(off), 0.95) < 0.25


def test_one_partial_that_the_walls_bend_does_not_bend_the_pitch() -> None:
    still_hz, bent_hz = swinging(220.0, 2.0, 0.0), swinging(220.0, 2.0, 6.0, 3.0)
    others = (0.02 * partial(still_hz, k) for k in range(1, 16) if k != 5)
    samples = 0.1 * partial(bent_hz, 5) + sum(others)
    before = rough(samples, 100.0, 900.0)
    after = with_all_partials(before, MonoSamples(samples, RATE_HZ))
    assert np.max(np.abs(cents_off(before, still_hz))) > 1.0
    assert np.max(np.abs(cents_off(after, still_hz))) < 0.1


def test_pieces_that_long_takes_are_read_in_leave_no_seam() -> None:
    true_hz = swinging(330.0, 25.0, 25.0)
    samples = 0.1 * sum(partial(true_hz, k) / k for k in range(1, 12))
    track = with_all_partials(rough(samples, 180.0, 900.0), MonoSamples(samples, RATE_HZ))
    assert np.max(np.abs(cents_off(track, true_hz))) < 0.2


def test_what_has_no_pitch_still_has_none_and_a_wish_to_stop_is_heard() -> None:
    samples = np.concatenate([0.1 * partial(swinging(440.0, 0.5, 0.0), 1), np.zeros(RATE_HZ // 2)])
    before = rough(samples, 180.0, 900.0)
    source = MonoSamples(samples, RATE_HZ)
    after = with_all_partials(before, source)
    assert np.array_equal(np.isfinite(before.f0_hz), np.isfinite(after.f0_hz))
    assert np.isnan(after.f0_hz).any()
    with pytest.raises(Stopped):
        with_all_partials(before, source, should_stop=lambda: True)


@pytest.mark.parametrize("seed", [700_000, 700_002])
def test_in_a_room_it_lies_nearer_than_any_one_period(seed: int) -> None:
    # Reference: praat's autocorrelation (praat-parselmouth), same hop, floor and ceiling.
    phrase, player = render(phrase_of(seed, "room")), INSTRUMENTS[instrument_of(seed)]
    periods, fine = track_instrument(phrase.samples, phrase.sample_rate_hz, player)
    assert isinstance(periods, Measured)
    assert isinstance(fine, Measured)
    found = parselmouth.Sound(phrase.samples, phrase.sample_rate_hz).to_pitch_ac(
        periods.value.hop_s, pitch_floor=player.floor_hz, pitch_ceiling=player.ceiling_hz
    )
    heard = found.selected_array["frequency"]
    praat = np.interp(periods.value.time_s, found.xs(), np.where(heard > 0.0, heard, np.nan))
    by_praat = PitchTrack(periods.value.time_s, praat, praat, praat, periods.value.hop_s)
    ours = np.median(frame_errors(fine.value, phrase.truth))
    assert ours < 0.5 * np.median(frame_errors(by_praat, phrase.truth))
    assert ours < 0.5 * np.median(frame_errors(periods.value, phrase.truth))
