"""Beats and target pitches: against calculus, tables of notes and exact ratios."""

import numpy as np
import pytest
from scipy import integrate

from sample_audio.generator import NoteSpec, PhraseSpec, target_hz
from sample_audio.timing import BeatClock


def cents(hz, against_hz):
    return 1200.0 * np.log2(hz / against_hz)


def place_beats(spec):
    return BeatClock(spec).whole_beats_s()


def test_a_tempo_map_is_the_integral_of_its_beats():
    points = ((0.0, 60.0), (4.0, 90.0), (8.0, 72.0), (16.0, 72.0))
    spec = PhraseSpec(notes=(NoteSpec(69, 18),), tempo=points)
    beat_s = place_beats(spec)
    assert beat_s.size == 19

    def seconds_a_beat(beat):
        return 60.0 / np.interp(beat, *zip(*points, strict=True))

    for beat in (1, 4, 7, 12, 18):
        elapsed, _ = integrate.quad(seconds_a_beat, 0.0, beat, points=[4.0, 8.0])
        assert beat_s[beat] - 0.3 == pytest.approx(elapsed, abs=1e-7)


def test_drift_is_linear_in_time():
    spec = PhraseSpec(notes=(NoteSpec(69, 64),), tempo=120.0, tempo_drift_bpm_per_min=12.0)
    beat_s = place_beats(spec)
    middles = (beat_s[:-1] + beat_s[1:]) / 2 - 0.3
    slope, start = np.polyfit(middles, 60.0 / np.diff(beat_s), 1)
    assert slope * 60.0 == pytest.approx(12.0, rel=1e-3)
    assert start == pytest.approx(120.0, rel=1e-3)


def test_uneven_beats_have_exactly_the_spread_that_was_asked_for():
    spec = PhraseSpec(notes=(NoteSpec(69, 24),), tempo=90.0, interval_spread_percent=2.5)
    intervals = np.diff(place_beats(spec))
    assert intervals.std(ddof=1) / intervals.mean() * 100 == pytest.approx(2.5, abs=1e-9)
    assert intervals.mean() == pytest.approx(60.0 / 90.0, abs=1e-9)


# Equal temperament, A4 = 440 Hz (ISO 16:1975 gives the A): published note tables.
@pytest.mark.parametrize(
    ("midi", "hz"),
    [(28, 41.2034), (36, 65.4064), (48, 130.8128), (55, 195.9977), (60, 261.6256), (76, 659.2551)],
)
def test_equal_targets_agree_with_note_tables(midi, hz):
    assert target_hz(midi) == pytest.approx(hz, abs=1e-4)


# Interval sizes in cents: exact ratios, as any table of intervals gives them.
@pytest.mark.parametrize(
    ("temperament", "degree", "size_cents"),
    [
        ("pythagorean", 1, 90.225),
        ("pythagorean", 4, 407.820),
        ("pythagorean", 7, 701.955),
        ("pythagorean", 11, 1109.775),
        ("just", 3, 315.641),
        ("just", 4, 386.314),
        ("just", 9, 884.359),
        ("just", 11, 1088.269),
    ],
)
@pytest.mark.parametrize("tonic", [0, 7])
def test_other_temperaments_have_their_intervals_and_keep_the_a(
    temperament, degree, size_cents, tonic
):
    low, high = (target_hz(60 + tonic + d, 442.0, temperament, tonic) for d in (0, degree))
    assert cents(high, low) == pytest.approx(size_cents, abs=5e-4)
    assert target_hz(69, 442.0, temperament, tonic) == pytest.approx(442.0)
