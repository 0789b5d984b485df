"""What is printed at the notes of a part: slurs, hairpins, dynamics, fingers, techniques."""

from bisect import bisect_right
from dataclasses import dataclass, field
from typing import Any, Final

from analysis.spelling import spelled_name
from app.journal.scores import ScoreNote, midi_of

# Semitones from the stopped note to what an artificial harmonic sounds, by the interval
# that is touched above it (handbook knowledge: the fourth sounds two octaves higher, the
# fifth an octave and a fifth, the major third two octaves and a third, the minor third
# two octaves and a fifth, the octave an octave).
TOUCHED: Final = {3: 31, 4: 28, 5: 24, 7: 19, 12: 12}


@dataclass(slots=True)
class Marks:
    """Stretches and changes of a part, in quarter notes from its beginning as printed."""

    slurs: list[tuple[float, float]] = field(default_factory=list)
    hairpins: list[tuple[float, float, str]] = field(default_factory=list)
    dynamics: list[tuple[float, str]] = field(default_factory=list)
    plucked: list[tuple[float, bool]] = field(default_factory=list)

    def slurred_at(self, at: float) -> bool:
        """Say whether a slur leads to a note that begins here."""
        return any(begin < at <= end for begin, end in self.slurs)

    def hairpin_at(self, at: float) -> str:
        """Name the hairpin that a note lies in."""
        return next((kind for begin, end, kind in self.hairpins if begin <= at < end), "")

    def dynamic_at(self, at: float) -> str:
        """Give the dynamic mark that holds."""
        place = bisect_right(self.dynamics, at, key=lambda mark: mark[0])
        return self.dynamics[place - 1][1] if place else ""

    def plucked_at(self, at: float) -> bool:
        """Say whether 'pizz.' holds."""
        place = bisect_right(self.plucked, at, key=lambda mark: mark[0])
        return self.plucked[place - 1][1] if place else False


def marks_of(part: Any) -> Marks:
    """Gather what is printed over stretches of a part."""
    marks = Marks()

    def place(element: Any) -> float | None:
        try:
            return float(element.getOffsetInHierarchy(part))
        except Exception:
            return None

    for spanner in part.recurse().getElementsByClass("Spanner"):
        kinds = spanner.classes
        ends = [p for e in spanner.getSpannedElements() if (p := place(e)) is not None]
        if len(ends) < 2:
            continue
        if "Slur" in kinds:
            marks.slurs.append((min(ends), max(ends)))
        elif "DynamicWedge" in kinds:
            kind = "crescendo" if "Crescendo" in kinds else "diminuendo"
            marks.hairpins.append((min(ends), max(ends), kind))
    for dynamic in part.recurse().getElementsByClass("Dynamic"):
        if dynamic.value and (at := place(dynamic)) is not None:
            marks.dynamics.append((at, str(dynamic.value)[:8]))
    for text in part.recurse().getElementsByClass("TextExpression"):
        words = str(text.content or "").casefold()
        if ("pizz" in words or "arco" in words) and (at := place(text)) is not None:
            marks.plucked.append((at, "pizz" in words))
    marks.dynamics.sort()
    marks.plucked.sort()
    return marks


def note_of(element: Any, marks: Marks, at: float, tonic: str | None) -> tuple[ScoreNote, bool]:
    """Turn a note or chord into a record, without its place.

    Parameters
    ----------
    element : music21 Note or Chord
        At sounding pitch.
    marks : Marks
    at : float
        Where it is printed.
    tonic : str or None
        Spells the notes of a file that has no spelling.

    Returns
    -------
    (note, is_held) : ScoreNote, bool
        ``is_held``: a tie leads to it.
    """
    pitches = sorted(element.pitches, key=lambda p: p.ps)
    articulations = [*element.articulations]
    expressions = [*element.expressions]
    for member in getattr(element, "notes", ()):
        articulations += member.articulations
        expressions += member.expressions
    harmonics = [a for a in articulations if "Harmonic" in a.classes]
    step, alter, octave = _spelling(pitches[-1], tonic)
    midi = midi_of(step, alter, octave)
    chord = tuple(round(p.ps) for p in pitches[:-1])
    if harmonics and chord:
        midi, chord = _sounding_harmonic(midi, chord, harmonics)
        # A harmonic sounds a note of its own; its printed letters are where it is touched.
        step, alter, octave = _by_key(midi, tonic or "C")
    note = ScoreNote(
        onset_beats=0.0,
        duration_beats=0.0 if element.duration.isGrace else float(element.duration.quarterLength),
        midi_pitch=midi,
        step=step,
        alter=alter,
        octave=octave,
        dynamic=marks.dynamic_at(at),
        hairpin=marks.hairpin_at(at),
        slurred=marks.slurred_at(at),
        grace=bool(element.duration.isGrace),
        harmonic=bool(harmonics),
        technique=_technique(articulations, expressions, marks.plucked_at(at)),
        string=_number(articulations, "StringIndication", "number"),
        finger=_number(articulations, "Fingering", "fingerNumber"),
        chord=chord,
    )
    tie = element.tie
    return note, tie is not None and tie.type in ("stop", "continue")


def _spelling(pitch: Any, tonic: str | None) -> tuple[str, int, int]:
    if tonic is not None:
        return _by_key(round(pitch.ps), tonic)
    # Quarter tones are rounded to the accidental of the letter.
    return str(pitch.step), round(pitch.alter), int(pitch.implicitOctave)


def _by_key(midi: int, tonic: str) -> tuple[str, int, int]:
    name = spelled_name(midi, tonic)
    letter, rest = name[0], name[1:]
    sharps, flats = rest.count("#"), rest.count("b")
    return letter, sharps - flats, int(rest.lstrip("#b"))


def _sounding_harmonic(
    top: int, chord: tuple[int, ...], harmonics: list[Any]
) -> tuple[int, tuple[int, ...]]:
    """Give the sounding note of a harmonic printed as a stopped and a touched note."""
    if any(h.pitchType == "sounding" for h in harmonics) and len(chord) > 1:
        return top, ()
    raised = TOUCHED.get(top - chord[0])
    return (chord[0] + raised, ()) if raised is not None else (top, chord)


def _technique(articulations: list[Any], expressions: list[Any], plucked: bool) -> str:
    kinds = {kind for mark in (*articulations, *expressions) for kind in mark.classes}
    if plucked or "Pizzicato" in kinds:
        return "pizzicato"
    if "Tremolo" in kinds:
        return "tremolo"
    return "trill" if "Trill" in kinds else ""


def _number(articulations: list[Any], kind: str, attribute: str) -> int | None:
    for mark in articulations:
        if kind in mark.classes:
            value = getattr(mark, attribute, None)
            if isinstance(value, int) and not isinstance(value, bool) and 0 <= value <= 12:
                return value
    return None
