"""Talk and tuning-up in a take: found, so that they are shown and enter no average.

Talk is what sounds while the instrument does not (:mod:`analysis.sounding`) and hardly
ever rests on a pitch. Tuning-up is a stretch at the start or the end, set off by a pause,
of nothing but open strings, alone or in neighbouring pairs, in which a string is moved or
several pairs are tried. The thresholds are this project's own, set on generated playing
and synthesised speech.
"""

import itertools
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis import sounding
from analysis.blocks import SampleArray
from analysis.instruments import Instrument
from analysis.results import LeftOut, LeftOutReason, Measured, Note, NoteKind
from analysis.stopping import Progress, StopQuestion, stop_if_asked, tell
from analysis.tuning_up import tuning_up_at_end, tuning_up_at_start

FloatArray = NDArray[np.float64]
BoolArray = NDArray[np.bool_]

ALGORITHM: Final = "left-out-2"

_ANSWER_LAG_S: Final = 1.0
_SEARCH_S: Final = 1.2  # around where the answer would have changed
_SHORTEST_PAUSE_S: Final = 0.2
_AT_AN_END: Final = (0.5, 0.55)  # seconds without a settled pitch, and their share
_WITHIN: Final = (2.5, 0.8)
_ONE_TALK_S: Final = 3.5
_FAINT_DB: Final = 35.0
_SURE_WITHIN_CENTS: Final = 10.0
_WITH_A_PITCH: Final = (
    NoteKind.DOUBLE_STOP,
    NoteKind.TRILL,
    NoteKind.TREMOLO,
    NoteKind.HARMONIC,
    NoteKind.PIZZICATO,
)


def find_left_out(
    samples: SampleArray,
    sample_rate_hz: int,
    notes: tuple[Note, ...],
    player: Instrument,
    *,
    progress: Progress | None = None,
    should_stop: StopQuestion | None = None,
) -> tuple[LeftOut, ...]:
    """Find the stretches of a take that are no playing of the piece.

    Parameters
    ----------
    samples : (n,) or (n, channels) float array
        The take; may be memory-mapped.
    sample_rate_hz : int
        At least 8000.
    notes : tuple of Note
        Everything that was found in it.
    player : Instrument
        What is played; tuning-up is looked for where it has strings.
    progress, should_stop : callable, optional
        Told the share done, 0 to 1, and asked for every second of sound.

    Returns
    -------
    tuple of LeftOut
        In order of time, not overlapping. One that reaches from the first note to the
        last says that there is nothing but talk.
    """
    if not notes:
        return ()
    loudest = max(note.level_dbfs for note in notes)
    clear = tuple(n for n in notes if n.level_dbfs > loudest - _FAINT_DB)
    found: list[LeftOut] = []
    if _unsettled_s(clear) >= min(_AT_AN_END[0], _WITHIN[0]):
        found = _talk(_Heard.of(samples, sample_rate_hz, progress, should_stop), clear)
    rest = tuple(n for n in clear if not is_left_out(n, tuple(found)))
    strings = player.open_strings
    if strings:
        found += tuning_up_at_start(rest, strings) + tuning_up_at_end(rest, strings)
    return _in_order(found)


def is_left_out(note: Note, spans: tuple[LeftOut, ...]) -> bool:
    """Say whether a note's middle lies in a stretch that is left out."""
    middle_s = (note.start_s + note.end_s) / 2
    return any(span.start_s <= middle_s <= span.end_s for span in spans)


@dataclass(frozen=True, slots=True)
class _Heard:
    """Where the instrument sounds, by frames; the answer follows the sound by a second."""

    sounds: BoolArray
    frame_s: float

    @classmethod
    def of(
        cls,
        samples: SampleArray,
        sample_rate_hz: int,
        progress: Progress | None,
        should_stop: StopQuestion | None,
    ) -> "_Heard":
        state = sounding.begin(sample_rate_hz)
        answers = []
        for first in range(0, len(samples), sample_rate_hz):
            stop_if_asked(should_stop)
            state, sounds = sounding.listen(state, samples[first : first + sample_rate_hz])
            answers.append(sounds)
            tell(progress, min(1.0, (first + sample_rate_hz) / len(samples)))
        return cls(np.concatenate(answers), state.frame_s)

    def silences(self) -> list[tuple[float, float]]:
        """Where the instrument does not sound; infinite ends are those of the take."""
        edges = np.flatnonzero(np.diff(np.concatenate(([False], ~self.sounds, [False]))))
        spans = []
        for first, last in zip(edges[::2], edges[1::2], strict=True):
            start = -np.inf if first == 0 else float(first) * self.frame_s
            end = np.inf if last == len(self.sounds) else float(last) * self.frame_s
            spans.append((start, end))
        return spans


def _talk(heard: _Heard, notes: tuple[Note, ...]) -> list[LeftOut]:
    found: list[LeftOut] = []
    for start, end in heard.silences():
        inside = _between(notes, _edge(notes, start), _edge(notes, end))
        is_within = np.isfinite(start) and np.isfinite(end)
        if not inside or not _is_talk(inside, *(_WITHIN if is_within else _AT_AN_END)):
            continue
        begins = inside[0].start_s
        if found and begins - found[-1].end_s < _ONE_TALK_S:
            begins = found.pop().start_s  # a drawn vowel between two sentences
        found.append(LeftOut(begins, inside[-1].end_s, LeftOutReason.TALK))
    return found


def _edge(notes: tuple[Note, ...], answer_s: float) -> float:
    """Return the moment to which an answer belongs: the longest pause near a second before."""
    if not np.isfinite(answer_s):
        return answer_s
    about = answer_s - _ANSWER_LAG_S
    pauses = [
        (after.start_s - before.end_s, (before.end_s + after.start_s) / 2)
        for before, after in itertools.pairwise(notes)
        if before.end_s >= about - _SEARCH_S and after.start_s <= about + _SEARCH_S
    ]
    length, middle = max(pauses, default=(0.0, about))
    return middle if length >= _SHORTEST_PAUSE_S else about


def _between(notes: tuple[Note, ...], start_s: float, end_s: float) -> list[Note]:
    return [n for n in notes if start_s <= (n.start_s + n.end_s) / 2 <= end_s]


def _is_talk(notes: Sequence[Note], least_s: float, least_share: float) -> bool:
    length_s, unsettled_s = sum(n.end_s - n.start_s for n in notes), _unsettled_s(notes)
    return unsettled_s >= least_s and unsettled_s >= least_share * length_s


def _unsettled_s(notes: Sequence[Note]) -> float:
    return sum(n.end_s - n.start_s for n in notes if not _settled(n))


def _settled(note: Note) -> bool:
    if note.kind in _WITH_A_PITCH:
        return True
    return (
        isinstance(note.pitch, Measured)
        and note.pitch.value.uncertainty_cents <= _SURE_WITHIN_CENTS
    )


def _in_order(found: list[LeftOut]) -> tuple[LeftOut, ...]:
    return tuple(sorted(found, key=lambda span: span.start_s))
