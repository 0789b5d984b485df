import numpy as np
import pytest

from analysis.dynamics import measure_dynamics
from analysis.results import Measured, NotMeasurable, Reason
from analysis.swells import find_swells, measure_hairpin
from sample_audio.generator import NoteSpec, PhraseSpec, render

RATE_HZ = 22_050


def dynamics_of(points):
    """A 440 Hz tone whose peak level in dB runs straight between (second, level)."""
    seconds, levels = zip(*points, strict=True)
    time = np.arange(round(seconds[-1] * RATE_HZ)) / RATE_HZ
    gain = 10 ** (np.interp(time, seconds, levels) / 20)
    result = measure_dynamics(gain * np.sin(2 * np.pi * 440 * time), RATE_HZ)
    assert isinstance(result, Measured)
    return result.value


def test_a_crescendo_and_a_diminuendo_come_back_with_their_extent():
    swells = find_swells(dynamics_of([(0, -35), (5, -20), (7, -20), (12, -32)]))
    assert [swell.kind for swell in swells] == ["crescendo", "diminuendo"]
    rise, fall = swells
    assert rise.change_db == pytest.approx(15, abs=2.0)
    assert fall.change_db == pytest.approx(-12, abs=2.0)
    assert rise.start_s < 1.5
    assert 4.0 < rise.end_s <= fall.start_s < 8.0
    assert fall.end_s == pytest.approx(12.0, abs=0.8)


def test_an_even_level_has_no_swells():
    assert find_swells(dynamics_of([(0, -20), (10, -20)])) == ()


def test_small_waves_are_not_named():
    waves = [(float(k), -20.0 + (-1) ** k) for k in range(12)]
    assert find_swells(dynamics_of(waves)) == ()


def test_pauses_are_no_diminuendos():
    points = [(0, -20), (4, -20), (4.05, -120), (6, -120), (6.05, -20), (10, -20)]
    playing = [(0.0, 4.0), (6.1, 10.0)]
    assert find_swells(dynamics_of(points), playing=playing) == ()


@pytest.mark.parametrize("extent_db", [-12.0, 6.0, 15.0])
def test_an_intended_hairpin_on_bowed_notes(extent_db):
    notes = tuple(NoteSpec(60.0 + k % 5, 1.0, level_db=(-1.0) ** k) for k in range(16))
    low = min(0.0, extent_db) - max(0.0, extent_db)
    shape = ((0.0, low if extent_db > 0 else 0.0), (16.0, 0.0 if extent_db > 0 else low))
    phrase = render(PhraseSpec(notes, tempo=96.0, dynamics=shape, level_dbfs=-18.0))
    playing = [(note.start_s, note.end_s) for note in phrase.truth.notes]
    dynamics = measure_dynamics(phrase.samples, phrase.sample_rate_hz, playing=playing)
    assert isinstance(dynamics, Measured)
    start_s, end_s = playing[0][0], playing[-1][1]
    result = measure_hairpin(dynamics.value, start_s, end_s, playing=playing)
    assert isinstance(result, Measured)
    print(f"\nhairpin {extent_db:+.0f} dB: {result.value}")
    assert result.value.change_db == pytest.approx(extent_db, abs=result.value.uncertainty_db + 0.5)
    assert result.value.uncertainty_db < 4.0


def test_a_hairpin_over_silence_is_not_measurable():
    result = measure_hairpin(dynamics_of([(0, -20), (3, -20)]), 2.5, 2.9)
    assert isinstance(result, NotMeasurable)
    assert result.reason is Reason.TOO_SHORT
