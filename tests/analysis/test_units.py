import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.units import (
    cents_between,
    hz_to_midi,
    midi_to_hz,
    note_name,
    parse_note_name,
    parse_pitch_class,
)

# Source: equal-tempered frequencies, ISO 16's A4 = 440 Hz; the values agree with the
# table of note frequencies at miniscript.org (NoteFreq).
EQUAL_TEMPERED = [
    ("E1", 28, 41.2034), ("A1", 33, 55.0), ("C2", 36, 65.4064), ("D2", 38, 73.4162),
    ("E2", 40, 82.4069), ("G2", 43, 97.9989), ("A2", 45, 110.0), ("C3", 48, 130.8128),
    ("D3", 50, 146.8324), ("G3", 55, 195.9977), ("A3", 57, 220.0), ("B3", 59, 246.9417),
    ("C4", 60, 261.6256), ("D4", 62, 293.6648), ("E4", 64, 329.6276), ("A4", 69, 440.0),
    ("E5", 76, 659.2551), ("A7", 105, 3520.0), ("C8", 108, 4186.009),
]  # fmt: skip


@pytest.mark.parametrize(("name", "midi", "hertz"), EQUAL_TEMPERED)
def test_equal_tempered_table(name: str, midi: int, hertz: float) -> None:
    assert parse_note_name(name) == midi
    assert note_name(midi) == name
    assert midi_to_hz(midi) == pytest.approx(hertz, abs=6e-4)
    assert hz_to_midi(hertz) == pytest.approx(midi, abs=2e-4)


@pytest.mark.parametrize(
    ("reference_a_hz", "cents"),
    # Source: 1200 log2(f / 440), computed outside the project.
    [(441.0, 3.930), (442.0, 7.851), (443.0, 11.764), (415.0, -101.271)],
)
def test_references_against_440(reference_a_hz: float, cents: float) -> None:
    assert cents_between(440.0, reference_a_hz) == pytest.approx(cents, abs=5e-4)


@pytest.mark.parametrize(
    ("name", "midi"),
    [("Eb4", 63), ("E♭4", 63), ("D#4", 63), ("F♯3", 54), ("C-1", 0), ("B##3", 61), ("Cb4", 59)],
)
def test_spellings(name: str, midi: int) -> None:
    assert parse_note_name(name) == midi


@pytest.mark.parametrize("name", ["", "H4", "A", "4A", "A4 flat", "C###4", "A4\n4"])
def test_what_is_no_note_is_refused(name: str) -> None:
    with pytest.raises(ValueError, match=r"note name|octave"):
        parse_note_name(name)


def test_pitch_class_ignores_the_octave() -> None:
    assert parse_pitch_class("Bb") == parse_pitch_class("A#3") == 10


@given(st.floats(20.0, 20_000.0), st.floats(380.0, 480.0))
def test_midi_and_hertz_are_inverse(hertz: float, reference: float) -> None:
    assert midi_to_hz(hz_to_midi(hertz, reference), reference) == pytest.approx(hertz, rel=1e-12)


@given(st.integers(0, 127))
def test_names_come_back(midi: int) -> None:
    assert parse_note_name(note_name(midi)) == midi


def test_arrays_keep_their_shape_and_nan() -> None:
    midi = hz_to_midi(np.array([[440.0, np.nan], [880.0, 220.0]]))
    assert midi.shape == (2, 2)
    assert np.isnan(midi[0, 1])
    np.testing.assert_allclose(midi_to_hz(midi)[1], [880.0, 220.0])
    np.testing.assert_allclose(cents_between(220.0, np.array([440.0, 330.0])), [1200.0, 701.955])


def test_agrees_with_librosa() -> None:
    librosa = pytest.importorskip("librosa")
    for midi in range(12, 109, 7):
        assert midi_to_hz(midi) == pytest.approx(float(librosa.midi_to_hz(midi)), rel=1e-12)
        assert note_name(midi) == librosa.midi_to_note(midi, unicode=False)
