"""The demo's music: two passages of an invented viola study in G minor.

Written for this project; nobody else's melody. Notes are (MIDI number, beats,
articulation) with the bar they stand in; ``None`` is a rest.
"""

from dataclasses import dataclass, field

from sample_audio.specs import Articulation, Instrument, NoteSpec

_BEATS_A_BAR = 4.0


@dataclass(frozen=True, slots=True)
class DemoPassage:
    """A passage of the demo's piece.

    Attributes
    ----------
    key : str
        Stable name within the scenario.
    piece, name, bars : str
        As the player would write them.
    first_bar : int
    notes : tuple of NoteSpec
        As written: no deviations, no vibrato.
    hairpins : tuple of (beat, share)
        Shape of the written dynamics, 0 soft to 1 loud.
    pulse_bpm : float
        The tempo the player works towards.
    tonic : str
        Of the key it is written in, which spells the notes: B flat, not A sharp.
    """

    key: str
    piece: str
    name: str
    bars: str
    first_bar: int
    notes: tuple[NoteSpec, ...]
    hairpins: tuple[tuple[float, float], ...]
    pulse_bpm: float
    tonic: str = "G"
    instrument: Instrument = "viola"
    reference_a_hz: float = 440.0
    beats_a_bar: float = field(default=_BEATS_A_BAR)

    def bar_of(self, note_index: int) -> int:
        """Return the printed number of the bar a note begins in."""
        beat = sum(note.beats for note in self.notes[:note_index])
        return self.first_bar + int((beat + 1e-9) // self.beats_a_bar)


def _written(*notes: tuple[int | None, float, Articulation]) -> tuple[NoteSpec, ...]:
    return tuple(
        NoteSpec(midi, beats, articulation=articulation, glide_s=_GLIDE_S.get(articulation, 0.02))
        for midi, beats, articulation in notes
    )


_GLIDE_S: dict[Articulation, float] = {"legato": 0.025, "slide_in": 0.11}

_OPENING = _written(
    # bar 1: out of the open G string
    (55, 1.5, "detache"), (57, 0.5, "legato"), (58, 1.0, "detache"), (62, 1.0, "detache"),
    # bar 2: down to the leading note
    (60, 0.5, "detache"), (58, 0.5, "legato"), (57, 1.0, "detache"), (54, 2.0, "detache"),
    # bar 3: the broken chord
    (55, 0.5, "detache"), (58, 0.5, "legato"), (62, 0.5, "detache"), (67, 0.5, "legato"),
    (65, 1.0, "detache"), (63, 1.0, "legato"),
    # bar 4: a held open string or fourth finger, a breath, the same note again
    (62, 2.0, "detache"), (None, 1.0, "detache"), (62, 1.0, "detache"),
    # bar 5: the shift
    (63, 1.0, "detache"), (67, 1.0, "detache"), (72, 2.0, "slide_in"),
    # bar 6: down the scale
    (70, 0.5, "detache"), (69, 0.5, "legato"), (67, 0.5, "detache"), (66, 0.5, "legato"),
    (67, 1.0, "detache"), (69, 1.0, "detache"),
    # bar 7
    (70, 1.5, "detache"), (69, 0.5, "legato"), (67, 1.0, "detache"), (66, 1.0, "detache"),
    # bar 8: home, then the open fifth below
    (67, 2.0, "detache"), (55, 2.0, "detache"),
)  # fmt: skip

_RUN = _written(
    # bar 17: crossing to and fro
    (55, 0.5, "detache"), (62, 0.5, "detache"), (58, 0.5, "detache"), (62, 0.5, "detache"),
    (57, 0.5, "detache"), (62, 0.5, "detache"), (60, 0.5, "detache"), (62, 0.5, "detache"),
    # bar 18: the same, a step lower
    (54, 0.5, "detache"), (62, 0.5, "detache"), (57, 0.5, "detache"), (62, 0.5, "detache"),
    (55, 0.5, "detache"), (62, 0.5, "detache"), (58, 0.5, "detache"), (62, 0.5, "detache"),
    # bar 19: the climb
    (60, 0.5, "legato"), (62, 0.5, "legato"), (63, 0.5, "detache"), (65, 0.5, "legato"),
    (67, 0.5, "detache"), (69, 0.5, "legato"), (70, 0.5, "detache"), (72, 0.5, "legato"),
    # bar 20
    (74, 1.0, "detache"), (69, 1.0, "detache"), (67, 2.0, "detache"),
)  # fmt: skip


def _ending_in_a_fifth(notes: tuple[NoteSpec, ...]) -> tuple[NoteSpec, ...]:
    last = notes[-1]
    return (*notes[:-1], NoteSpec(last.midi, last.beats, second_midi=62, release_s=0.12))


_PIECE = "Study in G minor"

PASSAGES: tuple[DemoPassage, ...] = (
    DemoPassage(
        key="opening",
        piece=_PIECE,
        name="Opening, with the shift",
        bars="1-8",
        first_bar=1,
        notes=_ending_in_a_fifth(_OPENING),
        hairpins=((0, 0.3), (4, 0.45), (8, 0.2), (12, 0.5), (16, 0.4), (19, 1.0), (24, 0.7),
                  (28, 0.35), (32, 0.1)),
        pulse_bpm=76.0,
    ),
    DemoPassage(
        key="crossings",
        piece=_PIECE,
        name="String crossings and climb",
        bars="17-20",
        first_bar=17,
        notes=_RUN,
        hairpins=((0, 0.2), (8, 0.3), (12, 1.0), (16, 0.5)),
        pulse_bpm=80.0,
    ),
)  # fmt: skip
