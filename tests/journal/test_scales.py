"""Scales by rule, against the spellings of handbooks of music theory (common practice).

The circle of fifths fixes every key signature: sharps come in the order F C G D A E B,
flats in the reverse order. The melodic minor scale is raised going up only.
"""

import itertools

import pytest

from app.journal.failures import PlainFailure
from app.journal.scale_records import MODES_OF, Figure, Mode, Rhythm, ScaleSpec
from app.journal.scales import (
    MAJOR_TONICS,
    MINOR_TONICS,
    scale_score,
    scale_title,
    spelled_notes,
    start_octaves,
    tonics_of,
)

SHARPS = "FCGDAEB"
# Signs of the key signature, sharps positive (circle of fifths).
MAJOR_SIGNS = {
    "C": 0, "G": 1, "D": 2, "A": 3, "E": 4, "B": 5, "F#": 6, "C#": 7,
    "F": -1, "Bb": -2, "Eb": -3, "Ab": -4, "Db": -5, "Gb": -6, "Cb": -7,
}  # fmt: skip
MINOR_SIGNS = {
    "A": 0, "E": 1, "B": 2, "F#": 3, "C#": 4, "G#": 5, "D#": 6, "A#": 7,
    "D": -1, "G": -2, "C": -3, "F": -4, "Bb": -5, "Eb": -6, "Ab": -7,
}  # fmt: skip


def in_signature(letter: str, signs: int) -> str:
    if signs >= 0:
        return letter + ("#" if letter in SHARPS[:signs] else "")
    return letter + ("b" if letter in SHARPS[::-1][:-signs] else "")


def classes(spec: ScaleSpec) -> list[str]:
    return [name.rstrip("0123456789-") for name in spelled_notes(spec)]


@pytest.mark.parametrize("tonic", MAJOR_TONICS)
def test_a_major_scale_has_the_notes_of_its_key_signature(tonic):
    up = classes(ScaleSpec(tonic))[:8]
    first = "CDEFGAB".index(tonic[0])
    letters = [("CDEFGAB" * 2)[first + k] for k in range(8)]
    assert up == [in_signature(letter, MAJOR_SIGNS[tonic]) for letter in letters]


@pytest.mark.parametrize("tonic", MINOR_TONICS)
def test_a_natural_minor_scale_has_the_notes_of_its_key_signature(tonic):
    up = classes(ScaleSpec(tonic, Mode.NATURAL_MINOR))[:8]
    first = "CDEFGAB".index(tonic[0])
    letters = [("CDEFGAB" * 2)[first + k] for k in range(8)]
    assert up == [in_signature(letter, MINOR_SIGNS[tonic]) for letter in letters]


@pytest.mark.parametrize(
    ("spec", "written"),
    [
        (ScaleSpec("A", Mode.HARMONIC_MINOR), "A B C D E F G# A G# F E D C B A"),
        (ScaleSpec("G#", Mode.HARMONIC_MINOR), "G# A# B C# D# E F## G# F## E D# C# B A# G#"),
        (ScaleSpec("C", Mode.MELODIC_MINOR), "C D Eb F G A B C Bb Ab G F Eb D C"),
        (ScaleSpec("F#", Mode.MELODIC_MINOR), "F# G# A B C# D# E# F# E D C# B A G# F#"),
        (
            ScaleSpec("C", Mode.CHROMATIC),
            "C C# D D# E F F# G G# A A# B C B Bb A Ab G Gb F E Eb D Db C",
        ),
        (ScaleSpec("D", Mode.MAJOR, Figure.ARPEGGIO), "D F# A D A F# D"),
        (ScaleSpec("Eb", Mode.NATURAL_MINOR, Figure.ARPEGGIO), "Eb Gb Bb Eb Bb Gb Eb"),
        (ScaleSpec("G", Mode.DOMINANT_SEVENTH, Figure.ARPEGGIO), "G B D F G F D B G"),
        (ScaleSpec("B", Mode.DIMINISHED_SEVENTH, Figure.ARPEGGIO), "B D F Ab B Ab F D B"),
        (ScaleSpec("C#", Mode.DIMINISHED_SEVENTH, Figure.ARPEGGIO), "C# E G Bb C# Bb G E C#"),
        (
            ScaleSpec("C", figure=Figure.BROKEN_THIRDS),
            "C E D F E G F A G B A C B D C A B G A F G E F D E C D B C",
        ),
    ],
    ids=lambda value: value.tonic + " " + value.mode if isinstance(value, ScaleSpec) else "",
)
def test_scales_are_spelled_as_in_print(spec, written):
    assert classes(spec) == written.split()


def test_octave_numbers_follow_the_letters():
    assert spelled_notes(ScaleSpec("A", start_octave=3))[:4] == ("A3", "B3", "C#4", "D4")
    assert spelled_notes(ScaleSpec("Cb"))[:2] == ("Cb4", "Db4")
    assert scale_score(ScaleSpec("Cb")).notes[0].midi_pitch == 59
    assert scale_score(ScaleSpec("C#")).notes[6].name == "B#4"
    assert scale_score(ScaleSpec("C#")).notes[6].midi_pitch == 72


def test_three_octaves_go_through_the_tonic_of_each():
    notes = scale_score(ScaleSpec("G", octaves=3, start_octave=3)).notes
    assert [n.midi_pitch for n in notes if n.step == "G"] == [55, 67, 79, 91, 79, 67, 55]
    assert len(notes) == 3 * 7 * 2 + 1


@pytest.mark.parametrize(
    ("rhythm", "onsets"),
    [
        (Rhythm.EVEN, [0, 0.5, 1, 1.5]),
        (Rhythm.DOTTED, [0, 0.75, 1, 1.75]),
        (Rhythm.REVERSE_DOTTED, [0, 0.25, 1, 1.25]),
    ],
)
def test_rhythms_share_the_beat(rhythm, onsets):
    notes = scale_score(ScaleSpec("D", rhythm=rhythm)).notes
    assert [n.onset_beats for n in notes[:4]] == onsets
    assert all(
        a.onset_beats + a.duration_beats == pytest.approx(b.onset_beats)
        for a, b in itertools.pairwise(notes)
    )


def test_bows_hold_as_many_notes_as_asked():
    notes = scale_score(ScaleSpec("D", slurred=4)).notes
    assert [n.slurred for n in notes[:9]] == [False, True, True, True] * 2 + [False]


def test_bars_have_four_beats():
    score = scale_score(ScaleSpec("D", octaves=2, notes_a_beat=4))
    assert [(n.bar, n.beat) for n in score.notes[15:18]] == [(1, 4.75), (2, 1.0), (2, 1.25)]
    assert [bar.onset_beats for bar in score.bars] == [0.0, 4.0]
    assert score.counted_beats[:3] == (0.0, 1.0, 2.0)


def test_every_figure_can_be_written_in_every_key_it_is_offered_in():
    for figure, modes in MODES_OF.items():
        for mode in modes:
            for tonic in tonics_of(mode):
                spec = ScaleSpec(tonic, mode, figure, octaves=2)
                score = scale_score(spec)
                assert all(abs(note.alter) <= 2 for note in score.notes), scale_title(spec)
                assert score.notes[0].midi_pitch == score.notes[-1].midi_pitch


def test_a_scale_begins_only_where_the_instrument_reaches():
    # Violin: G3 (55) up; G major over three octaves can begin on the open G or above.
    assert start_octaves(ScaleSpec("G", octaves=3), 55, 100) == (3,)
    assert start_octaves(ScaleSpec("F#", octaves=1), 55, 100)[0] == 4
    assert start_octaves(ScaleSpec("C", octaves=4), 55, 90) == ()


def test_thirds_leave_out_the_turn_below_the_lowest_note():
    thirds = ScaleSpec("G", figure=Figure.BROKEN_THIRDS, start_octave=3, lowest_midi=55)
    assert min(n.midi_pitch for n in scale_score(thirds).notes) == 55
    assert spelled_notes(thirds)[-3:] == ("A3", "B3", "G3")
    higher = ScaleSpec("A", figure=Figure.BROKEN_THIRDS, start_octave=3, lowest_midi=55)
    assert spelled_notes(higher)[-3:] == ("B3", "G#3", "A3")


@pytest.mark.parametrize(
    "spec",
    [
        ScaleSpec("G#"),
        ScaleSpec("H"),
        ScaleSpec("Db", Mode.NATURAL_MINOR),
        ScaleSpec("D", Mode.DOMINANT_SEVENTH),
        ScaleSpec("D", octaves=0),
        ScaleSpec("D", notes_a_beat=3, rhythm=Rhythm.DOTTED),
        ScaleSpec("D", notes_a_beat=5),
        ScaleSpec("D", slurred=0),
    ],
)
def test_what_cannot_be_written_is_said_in_a_sentence(spec):
    with pytest.raises(PlainFailure) as told:
        scale_score(spec)
    assert told.value.sentence.endswith(".")
    assert told.value.next_step.endswith(".")
