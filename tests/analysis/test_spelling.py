"""Spellings checked against the key signatures of any primer of theory."""

import pytest

from analysis.spelling import spelled_name
from analysis.units import parse_note_name


@pytest.mark.parametrize(
    ("tonic", "scale"),
    [
        ("C", "C D E F G A B"),
        ("G", "G A Bb C D Eb F# G"),  # harmonic minor
        ("G", "G A B C D E F#"),
        ("Eb", "Eb F G Ab Bb C D"),
        ("F#", "F# G# A# B C# D# E#"),
        ("Gb", "Gb Ab Bb Cb Db Eb F"),
        ("C#", "C# D# E F# G# A B#"),
        ("A", "A B C D E F G#"),
        ("D", "D E F# G A B C#"),
    ],
)
def test_scales_are_spelled_as_they_are_written(tonic: str, scale: str) -> None:
    for name in scale.split():
        midi = parse_note_name(f"{name}4")
        assert spelled_name(midi, tonic) == f"{name}4"


def test_every_note_keeps_its_pitch() -> None:
    for tonic in ("C", "C#", "Db", "F#", "Gb", "B", "Ab", "e", "G♯"):
        for midi in range(20, 110):
            name = spelled_name(midi, tonic)
            if "##" not in name and "bbb" not in name:
                assert parse_note_name(name) == midi


def test_without_a_tonic_names_have_sharps() -> None:
    assert spelled_name(70, None) == "A#4"
    assert spelled_name(70, "G") == "Bb4"
    with pytest.raises(ValueError, match="note name"):
        spelled_name(70, "H")
