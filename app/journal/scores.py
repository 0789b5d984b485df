"""The score of a passage: where it comes from, and the notes it asks for.

A passage's score is a file that was put beside it, or a scale, arpeggio or row of broken
thirds that is written by rule (:mod:`app.journal.scales`). Either becomes a
:class:`Score`: every note once for each time it is to be played, repeats unfolded, at the
pitch that sounds. Beats are quarter notes from the beginning of the score, whatever the
time signature; the beats a player counts are listed apart.
"""

from dataclasses import dataclass, replace

from app.journal.failures import PlainFailure
from app.journal.scale_records import ScaleSpec

_LETTERS = "CDEFGAB"
_SEMITONES = (0, 2, 4, 5, 7, 9, 11)


@dataclass(frozen=True, slots=True)
class ScoreNote:
    """One note that the score asks for, at the pitch that sounds.

    Attributes
    ----------
    onset_beats, duration_beats : float
        Quarter notes; tied notes are one note. A grace note has no duration.
    midi_pitch : int
        Sounding note number (69 is A4); of a chord its highest note.
    step, alter, octave
        Its spelling: letter, sharps (positive) or flats, octave of the letter. B#3
        sounds as C4.
    bar : int
        Number of the bar as printed; 0 for an upbeat.
    beat : float
        Place in the bar as it is counted: 1.0 is the first beat.
    dynamic, hairpin : str
        The mark that holds (``"p"``), and ``"crescendo"`` or ``"diminuendo"`` inside one.
    tied, slurred, grace, harmonic : bool
        Held over a tie; under a slur from the note before it (no new bow); a grace
        note; a harmonic.
    technique : str
        ``"pizzicato"``, ``"tremolo"``, ``"trill"`` or empty.
    string, finger : int or None
        Where the score prints them; string 1 is the highest.
    chord : tuple of int
        Note numbers that sound with it, lower ones.
    turn : int
        1 the first time the bar is played, 2 when it is repeated, and so on.
    """

    onset_beats: float
    duration_beats: float
    midi_pitch: int
    step: str
    alter: int
    octave: int
    bar: int = 1
    beat: float = 1.0
    dynamic: str = ""
    hairpin: str = ""
    tied: bool = False
    slurred: bool = False
    grace: bool = False
    harmonic: bool = False
    technique: str = ""
    string: int | None = None
    finger: int | None = None
    chord: tuple[int, ...] = ()
    turn: int = 1

    @property
    def name(self) -> str:
        """Scientific pitch notation as spelled: ``'Bb4'``, ``'F##5'``."""
        return spelled(self.step, self.alter, self.octave)


@dataclass(frozen=True, slots=True)
class BarStart:
    """Where a bar begins, in quarter notes; ``turn`` counts its repetitions."""

    number: int
    onset_beats: float
    turn: int = 1


@dataclass(frozen=True, slots=True)
class BarSpan:
    """A stretch of whole bars, both ends included."""

    first: int
    last: int


@dataclass(frozen=True, slots=True)
class Score:
    """A line to be played, in the order in which it is played.

    ``counted_beats`` are the beats that a player counts (dotted quarters in 6/8), in
    quarter notes; ``bars`` the bars in playing order; ``end_beats`` where the last one
    ends. ``notices`` are plain sentences on what could not be read as printed.
    """

    part: str
    notes: tuple[ScoreNote, ...]
    counted_beats: tuple[float, ...]
    bars: tuple[BarStart, ...]
    end_beats: float
    title: str = ""
    tempo_bpm: float | None = None
    notices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ScoreFile:
    """A score that was put beside a passage.

    ``file`` names the journal's own copy, relative to the journal; ``part`` counts from
    0. Without ``bars`` the whole part is meant.
    """

    file: str
    sha256: str
    original_name: str
    part: int = 0
    part_name: str = ""
    bars: BarSpan | None = None


@dataclass(frozen=True, slots=True)
class PassageScore:
    """What the notes of a passage are read from: one of the two."""

    file: ScoreFile | None = None
    scale: ScaleSpec | None = None


def spelled(step: str, alter: int, octave: int) -> str:
    """Name a spelled note: ``('B', -1, 4)`` is ``'Bb4'``."""
    return f"{step}{'#' * alter if alter > 0 else 'b' * -alter}{octave}"


def midi_of(step: str, alter: int, octave: int) -> int:
    """Give the note number of a spelled note; the octave is that of the letter."""
    return 12 * (octave + 1) + _SEMITONES[_LETTERS.index(step)] + alter


def bar_span(text: str) -> BarSpan:
    """Read bars as they are typed: ``1-8``, ``5``.

    Raises
    ------
    PlainFailure
        Where that is no stretch of bars.
    """
    first, _, last = text.replace("–", "-").strip().partition("-")
    try:
        span = BarSpan(int(first), int(last or first))
    except ValueError as problem:
        raise _no_bars(text) from problem
    if not 0 <= span.first <= span.last:
        raise _no_bars(text)
    return span


def bar_spans(text: str) -> tuple[BarSpan, ...]:
    """Read several stretches of bars: ``1-8, 17-24``; none of an empty text."""
    return tuple(bar_span(part) for part in text.replace(";", ",").split(",") if part.strip())


def spans_text(spans: tuple[BarSpan, ...]) -> str:
    """Write stretches of bars: ``1-8, 17``."""
    return ", ".join(
        f"{span.first}-{span.last}" if span.last > span.first else f"{span.first}" for span in spans
    )


def within_bars(score: Score, spans: tuple[BarSpan, ...]) -> Score:
    """Keep the bars of some stretches, in playing order, closed up to the beginning.

    Parameters
    ----------
    score : Score
    spans : tuple of BarSpan
        Empty: the whole score.

    Returns
    -------
    Score
        Bars that are not kept leave no gap. A note is kept with the bar it begins in.

    Raises
    ------
    PlainFailure
        Where the score has none of the bars.
    """
    if not spans:
        return score
    ends = [*(bar.onset_beats for bar in score.bars[1:]), score.end_beats]
    kept: list[tuple[float, float, float, BarStart]] = []
    at = 0.0
    for bar, end in zip(score.bars, ends, strict=True):
        if any(span.first <= bar.number <= span.last for span in spans):
            kept.append((bar.onset_beats, end, at - bar.onset_beats, bar))
            at += end - bar.onset_beats
    if not kept:
        numbers = [bar.number for bar in score.bars]
        there = f"It has bars {min(numbers)} to {max(numbers)}." if numbers else "It has no bars."
        raise PlainFailure(f"The score has no bars {spans_text(spans)}.", there)
    return replace(
        score,
        notes=tuple(
            replace(note, onset_beats=note.onset_beats + moved)
            for begin, end, moved, _ in kept
            for note in score.notes
            if begin <= note.onset_beats < end
        ),
        counted_beats=tuple(
            beat + moved
            for begin, end, moved, _ in kept
            for beat in score.counted_beats
            if begin <= beat < end
        ),
        bars=tuple(replace(bar, onset_beats=begin + moved) for begin, _, moved, bar in kept),
        end_beats=at,
    )


def _no_bars(text: str) -> PlainFailure:
    return PlainFailure(f"'{text.strip()}' is no stretch of bars.", "Write for instance 1-8.")
