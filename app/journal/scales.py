"""Scales, arpeggios and broken thirds, written by rule and spelled as in print.

The letters of a seven-note scale follow each other and its accidentals follow from the
steps of its mode. The melodic minor has its sixth and seventh raised going up and not
coming down; the chromatic scale raises degrees going up and lowers them coming down.
"""

from itertools import pairwise
from typing import Final

from app.journal.failures import PlainFailure
from app.journal.scale_records import MODES_OF, Figure, Mode, Rhythm, ScaleSpec
from app.journal.scores import BarStart, Score, ScoreNote, midi_of, spelled

MOST_OCTAVES: Final = 4
MOST_SLURRED: Final = 24
BEATS_A_BAR: Final = 4

_LETTERS: Final = "CDEFGAB"
_SEMITONES: Final = (0, 2, 4, 5, 7, 9, 11)
_ACCIDENTALS: Final = {"": 0, "#": 1, "b": -1}

MAJOR_TONICS: Final = (
    "C",
    "G",
    "D",
    "A",
    "E",
    "B",
    "F#",
    "C#",
    "F",
    "Bb",
    "Eb",
    "Ab",
    "Db",
    "Gb",
    "Cb",
)
MINOR_TONICS: Final = (
    "A",
    "E",
    "B",
    "F#",
    "C#",
    "G#",
    "D#",
    "A#",
    "D",
    "G",
    "C",
    "F",
    "Bb",
    "Eb",
    "Ab",
)
"""The fifteen tonics of each mode whose key signature has at most seven signs."""

_STEPS: Final[dict[Mode, tuple[int, ...]]] = {
    Mode.MAJOR: (0, 2, 4, 5, 7, 9, 11),
    Mode.NATURAL_MINOR: (0, 2, 3, 5, 7, 8, 10),
    Mode.HARMONIC_MINOR: (0, 2, 3, 5, 7, 8, 11),
    Mode.MELODIC_MINOR: (0, 2, 3, 5, 7, 9, 11),
}
# Letter steps above the tonic, and semitones.
_CHROMATIC_UP: Final = (
    (0, 0), (0, 1), (1, 2), (1, 3), (2, 4), (3, 5), (3, 6), (4, 7), (4, 8), (5, 9), (5, 10), (6, 11)
)  # fmt: skip
_CHROMATIC_DOWN: Final = (
    (0, 0), (1, 1), (1, 2), (2, 3), (2, 4), (3, 5), (4, 6), (4, 7), (5, 8), (5, 9), (6, 10), (6, 11)
)  # fmt: skip
_CHORDS: Final[dict[Mode, tuple[tuple[int, int], ...]]] = {
    Mode.MAJOR: ((0, 0), (2, 4), (4, 7)),
    Mode.NATURAL_MINOR: ((0, 0), (2, 3), (4, 7)),
    Mode.DOMINANT_SEVENTH: ((0, 0), (2, 4), (4, 7), (6, 10)),
    Mode.DIMINISHED_SEVENTH: ((0, 0), (2, 3), (4, 6), (6, 9)),
}

# Letters above the first tonic, and semitones above it.
_Place = tuple[int, int]


def tonics_of(mode: Mode) -> tuple[str, ...]:
    """Give the tonics a mode is offered in, along the circle of fifths."""
    minor = (Mode.NATURAL_MINOR, Mode.HARMONIC_MINOR, Mode.MELODIC_MINOR, Mode.DIMINISHED_SEVENTH)
    return MINOR_TONICS if mode in minor else MAJOR_TONICS


def checked(spec: ScaleSpec) -> ScaleSpec:
    """Give a scale back once it can be written.

    Raises
    ------
    PlainFailure
        Where it cannot; the sentence says why.
    """
    if spec.mode not in MODES_OF[spec.figure]:
        known = ", ".join(MODES_OF[spec.figure])
        raise PlainFailure(f"There is no {spec.figure} in {spec.mode}.", f"Choose one of {known}.")
    if spec.tonic not in tonics_of(spec.mode):
        raise PlainFailure(
            f"'{spec.tonic}' is no tonic of a {spec.mode} key.",
            f"Choose one of {' '.join(tonics_of(spec.mode))}.",
        )
    if not 1 <= spec.octaves <= MOST_OCTAVES:
        raise PlainFailure(f"A scale has 1 to {MOST_OCTAVES} octaves.", "Choose another number.")
    if spec.notes_a_beat not in (1, 2, 3, 4):
        raise PlainFailure("A beat holds 1 to 4 notes.", "Choose another number.")
    if spec.rhythm is not Rhythm.EVEN and spec.notes_a_beat == 3:
        raise PlainFailure("Three notes a beat cannot be dotted.", "Choose 2 or 4 notes a beat.")
    if not 1 <= spec.slurred <= MOST_SLURRED:
        raise PlainFailure(f"A bow holds 1 to {MOST_SLURRED} notes.", "Choose another number.")
    return spec


def scale_score(spec: ScaleSpec) -> Score:
    """Write a scale, an arpeggio or broken thirds as a score.

    Raises
    ------
    PlainFailure
        Where it cannot be written.
    """
    checked(spec)
    places = _places(spec)
    onsets = _onsets(len(places), spec)
    notes = tuple(
        _note(spec, place, onset, end - onset, index)
        for index, (place, (onset, end)) in enumerate(zip(places, pairwise(onsets), strict=True))
    )
    bars = int(-(-onsets[-1] // BEATS_A_BAR))
    return Score(
        part="",
        notes=notes,
        counted_beats=tuple(float(beat) for beat in range(int(-(-onsets[-1] // 1)))),
        bars=tuple(BarStart(bar + 1, float(bar * BEATS_A_BAR)) for bar in range(bars)),
        end_beats=float(bars * BEATS_A_BAR),
        title=scale_title(spec),
    )


def scale_title(spec: ScaleSpec) -> str:
    """Name a scale in words: ``D major scale, 2 octaves``."""
    octaves = "1 octave" if spec.octaves == 1 else f"{spec.octaves} octaves"
    mode = spec.mode
    if spec.figure is Figure.ARPEGGIO and mode is Mode.NATURAL_MINOR:
        return f"{spec.tonic} minor {spec.figure}, {octaves}"
    return f"{spec.tonic} {mode} {spec.figure}, {octaves}"


def start_octaves(spec: ScaleSpec, lowest_midi: int, highest_midi: int) -> tuple[int, ...]:
    """Give the octaves in which a scale can begin on an instrument of some range."""
    low, high = _reach(spec)
    tonic = _tonic_midi(spec.tonic, 0)
    return tuple(
        octave
        for octave in range(-1, 10)
        if lowest_midi <= tonic + 12 * octave + low and tonic + 12 * octave + high <= highest_midi
    )


def _reach(spec: ScaleSpec) -> tuple[int, int]:
    """Semitones from the first tonic to the lowest and to the highest note."""
    turns = _places(spec, turn_below=False)
    return min(s for _, s in turns), max(s for _, s in turns)


def _tonic_midi(tonic: str, octave: int) -> int:
    return midi_of(tonic[0], _ACCIDENTALS[tonic[1:]], octave)


def _places(spec: ScaleSpec, *, turn_below: bool | None = None) -> list[_Place]:
    if spec.figure is Figure.ARPEGGIO:
        up = _rows(_CHORDS[spec.mode], spec.octaves)
        return [*up, *reversed(up[:-1])]
    if spec.mode is Mode.CHROMATIC:
        up, down = _rows(_CHROMATIC_UP, spec.octaves), _rows(_CHROMATIC_DOWN, spec.octaves)
    else:
        up = _rows(tuple(enumerate(_STEPS[spec.mode])), spec.octaves)
        falling = Mode.NATURAL_MINOR if spec.mode is Mode.MELODIC_MINOR else spec.mode
        down = _rows(tuple(enumerate(_STEPS[falling])), spec.octaves)
    if spec.figure is Figure.SCALE:
        return [*up, *reversed(down[:-1])]
    return _thirds(spec, turn_below)


def _thirds(spec: ScaleSpec, turn_below: bool | None) -> list[_Place]:
    """Up: 1 3, 2 4 ... 7 9, 8. Down: 8 6, 7 5 ... 2 7, 1; the top note once."""
    falling = Mode.NATURAL_MINOR if spec.mode is Mode.MELODIC_MINOR else spec.mode
    top = 7 * spec.octaves

    def place(degree: int, mode: Mode) -> _Place:
        octave, step = divmod(degree, 7)
        return degree, 12 * octave + _STEPS[mode][step]

    up = [place(d, spec.mode) for low in range(top) for d in (low, low + 2)]
    down = [place(d, falling) for high in range(top, 1, -1) for d in (high, high - 2)]
    # The turn under the tonic leads back to it, with the leading note of the way up.
    below = place(-1, spec.mode)
    if turn_below is None:
        lowest = _tonic_midi(spec.tonic, spec.start_octave) + below[1]
        turn_below = lowest >= spec.lowest_midi
    turn = [place(1, falling), below, place(0, falling)] if turn_below else []
    return [*up, *down, *turn]


def _rows(steps: tuple[_Place, ...], octaves: int) -> list[_Place]:
    """Repeat the steps of one octave and close with the tonic."""
    rows = [
        (7 * o + letter, 12 * o + semitones) for o in range(octaves) for letter, semitones in steps
    ]
    return [*rows, (7 * octaves, 12 * octaves)]


def _onsets(count: int, spec: ScaleSpec) -> list[float]:
    """Give where each note begins, and where the last one ends, in beats."""
    unit = 1.0 / spec.notes_a_beat
    long, short = 1.5 * unit, 0.5 * unit
    pair = {
        Rhythm.EVEN: (unit, unit),
        Rhythm.DOTTED: (long, short),
        Rhythm.REVERSE_DOTTED: (short, long),
    }[spec.rhythm]
    onsets = [
        round(index // 2 * 2 * unit + (pair[0] if index % 2 else 0.0), 9) for index in range(count)
    ]
    return [*onsets, onsets[-1] + 1.0]  # the last tonic is held for a beat


def _note(spec: ScaleSpec, place: _Place, onset: float, duration: float, index: int) -> ScoreNote:
    letters, semitones = place
    octave_up, letter = divmod(_LETTERS.index(spec.tonic[0]) + letters, 7)
    octave = spec.start_octave + octave_up
    midi = _tonic_midi(spec.tonic, spec.start_octave) + semitones
    step = _LETTERS[letter]
    return ScoreNote(
        onset_beats=onset,
        duration_beats=duration,
        midi_pitch=midi,
        step=step,
        alter=midi - midi_of(step, 0, octave),
        octave=octave,
        bar=int(onset // BEATS_A_BAR) + 1,
        beat=onset % BEATS_A_BAR + 1.0,
        slurred=index % spec.slurred != 0,
    )


def spelled_notes(spec: ScaleSpec) -> tuple[str, ...]:
    """Give the names of the notes in order, ``('D4', 'E4', 'F#4', ...)``."""
    return tuple(spelled(n.step, n.alter, n.octave) for n in scale_score(spec).notes)
