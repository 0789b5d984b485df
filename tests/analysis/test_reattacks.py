"""A note begun again is told from one that swells, on sounds made here."""

import numpy as np
import pytest

from analysis.bands import band_mean_level
from analysis.blocks import MonoSamples
from analysis.envelope import level_envelope
from analysis.instruments import INSTRUMENTS
from analysis.onsets import detect_onsets
from analysis.pitch import track_pitch
from analysis.reattacks import dip_before, keeps_pitch
from analysis.results import Measured, PitchTrack
from sample_audio.generator import NoteSpec, PhraseSpec, render

RATE_HZ = 44_100
VIOLIN = INSTRUMENTS["violin"]


def tracked(samples: np.ndarray, rate_hz: int = RATE_HZ) -> PitchTrack:
    track = track_pitch(samples, rate_hz, floor_hz=VIOLIN.floor_hz, ceiling_hz=VIOLIN.ceiling_hz)
    assert isinstance(track, Measured)
    return track.value


def reed_tone(level_db: np.ndarray) -> np.ndarray:
    """Ten harmonics of 740 Hz whose amplitude follows a level in dB."""
    t = np.arange(len(level_db)) / RATE_HZ
    tone = sum(np.sin(2 * np.pi * 740.0 * k * t + k) / k for k in range(1, 11))
    return 0.1 * tone * 10.0 ** (level_db / 20.0)


@pytest.mark.parametrize("depth_db", [6.0, 9.0, 12.0])
def test_a_slow_tremulant_is_one_note(depth_db: float) -> None:
    t = np.arange(int(2.5 * RATE_HZ)) / RATE_HZ
    swell = -0.5 * depth_db * (1.0 - np.cos(2 * np.pi * 4.7 * (t - 0.3)))
    samples = reed_tone(swell - 60.0 * (t < 0.3))
    onset_s, strength = detect_onsets(samples, RATE_HZ, track=tracked(samples))
    assert np.count_nonzero(strength >= 0.3) == 1
    assert onset_s[0] == pytest.approx(0.3, abs=0.03)


@pytest.mark.parametrize("room_s", [None, 0.5])
@pytest.mark.parametrize("midi", [57, 69, 81])
def test_bowing_one_pitch_again_is_a_new_note(midi: int, room_s: float | None) -> None:
    notes = tuple(NoteSpec(midi, 0.4, attack_s=0.03) for _ in range(8))
    phrase = render(PhraseSpec(notes, tempo=60.0, reverb_time_s=room_s, reverb_db=-14.0))
    track = tracked(phrase.samples, phrase.sample_rate_hz)
    onset_s, _ = detect_onsets(phrase.samples, phrase.sample_rate_hz, track=track)
    true_s = np.array([note.start_s for note in phrase.truth.notes])
    found = [np.min(np.abs(onset_s - time_s)) < 0.03 for time_s in true_s]
    assert np.count_nonzero(found) >= 7 if room_s else all(found)


def test_the_dip_before_an_attack_is_measured_as_it_was_made() -> None:
    t = np.arange(RATE_HZ) / RATE_HZ
    # 12 dB down within 20 ms, there for 40 ms, and up again
    level = np.interp(t, (0.46, 0.48, 0.52, 0.54), (0.0, -12.0, -12.0, 0.0))
    samples = reed_tone(level)
    track = tracked(samples)
    source = MonoSamples(samples, RATE_HZ)
    envelope = level_envelope(source, track)
    bands = band_mean_level(source, np.full(501, 1.0 / 740.0), 0.002)
    dip = dip_before(envelope, bands, 0.002, 0.53)
    assert dip.depth_db == pytest.approx(12.0, abs=0.5)
    assert dip.climb_db == pytest.approx(12.0, abs=0.5)
    assert dip.bands_depth_db == pytest.approx(12.0, abs=1.0)
    assert dip.rise_db == pytest.approx(dip.fall_db, abs=0.5)
    assert dip.width_s == pytest.approx(0.06, abs=0.005)  # from -6 dB to -6 dB


def test_a_change_of_pitch_is_no_kept_pitch() -> None:
    t = np.arange(RATE_HZ) / RATE_HZ
    f0 = np.where(t < 0.5, 440.0, 466.16)
    samples = 0.3 * np.sin(2 * np.pi * np.cumsum(f0) / RATE_HZ)
    track = tracked(samples)
    assert not keeps_pitch(track, 0.5)
    assert keeps_pitch(track, 0.3)
