"""The common period of two tones is not a note; a low note of its own is one."""

import numpy as np
import pytest

from analysis.blocks import MonoSamples
from analysis.overlaps import begins_in_lower_octave, is_common_period, is_octave_below

RATE_HZ = 44_100
NAN = float("nan")


def tone(f0_hz: float, harmonics: int = 8) -> np.ndarray:
    t = np.arange(int(0.3 * RATE_HZ)) / RATE_HZ
    return sum(0.1 / k * np.sin(2 * np.pi * k * f0_hz * t + k) for k in range(1, harmonics + 1))


@pytest.mark.parametrize(("old", "new"), [(3, 4), (4, 5), (2, 3), (5, 6), (3, 5)])
def test_two_tones_in_a_simple_ratio_have_a_common_period(old: int, new: int) -> None:
    common_hz = 110.0
    source = MonoSamples(tone(old * common_hz) + tone(new * common_hz), RATE_HZ)
    assert is_common_period(source, 0.15, common_hz, old * common_hz)
    assert is_common_period(source, 0.15, common_hz, new * common_hz)


@pytest.mark.parametrize("multiple", [2, 3, 4])
def test_a_low_note_beside_its_harmonic_is_a_note(multiple: int) -> None:
    source = MonoSamples(tone(110.0, harmonics=12), RATE_HZ)
    assert not is_common_period(source, 0.15, 110.0, multiple * 110.0)


def test_a_neighbour_that_is_no_multiple_says_nothing() -> None:
    source = MonoSamples(tone(330.0) + tone(440.0), RATE_HZ)
    assert not is_common_period(source, 0.15, 110.0, 290.0)
    assert not is_common_period(source, 0.15, 110.0, 110.0)
    assert not is_common_period(source, 0.15, 110.0, NAN)


def test_a_note_under_its_octave_is_told_by_the_note_before_and_what_follows() -> None:
    assert begins_in_lower_octave(116.5, 116.9, 233.0)
    assert not begins_in_lower_octave(116.5, 130.8, 233.0)  # another note before
    assert not begins_in_lower_octave(116.5, 116.5, 174.6)  # a fifth follows
    assert not begins_in_lower_octave(116.5, 116.5, NAN)


def test_a_soft_note_in_the_rest_of_another_is_not_read_an_octave_below() -> None:
    """939 Hz in what is left of 740 Hz, 75 ms: the correlation finds 469 Hz."""
    source = MonoSamples(tone(939.0) + 0.7 * tone(740.0), RATE_HZ)
    assert is_octave_below(source, 0.1, 0.175, 469.5)
    assert not is_octave_below(source, 0.1, 0.175, 939.0)
    assert not is_octave_below(source, 0.1, 0.175, NAN)


@pytest.mark.parametrize("f0_hz", [110.0, 196.0, 469.5, 1500.0])
def test_a_note_whose_first_partials_are_weak_stays_what_it_is(f0_hz: float) -> None:
    """A violin's body hardly passes its lowest fundamental (common practice, no source)."""
    t = np.arange(int(0.3 * RATE_HZ)) / RATE_HZ
    first = np.sin(2 * np.pi * f0_hz * t)
    source = MonoSamples(tone(f0_hz, harmonics=10) - 0.097 * first, RATE_HZ)
    assert not is_octave_below(source, 0.1, 0.18, f0_hz)
