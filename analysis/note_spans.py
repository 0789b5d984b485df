"""Where notes begin and end, before anything is said about their pitch."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.attacks import pitched_frames
from analysis.onsets import LEAST_ATTACK_STRENGTH
from analysis.releases import frames_until_release, without_forerunner
from analysis.results import PitchTrack
from analysis.slides import slide_direction
from analysis.stopping import StopQuestion, stop_if_asked
from analysis.units import hz_to_midi
from analysis.vibrato import pitch_wobble

FloatArray = NDArray[np.float64]

SHORTEST_NOTE_S: Final = 0.05
_WOBBLING_CENTS: Final = 5.0
_IN_STEP: Final = 0.8
_FEWEST_WOBBLING: Final = 5  # four cuts; two are in step by chance in four of ten cases
_STRONGER_THAN_A_WOBBLE: Final = 0.55
_CLEAR_ATTACK: Final = 0.75
_ECHO_BELOW_DB: Final = 13.0
_OLD_ECHO_BELOW_DB: Final = 20.0
_ECHOING_NOTES: Final = 4
_LONGEST_ECHO_S: Final = 2.5
_ECHO_CENTS: Final = 120.0
_SMALLEST_TRILL_CENTS: Final = 70.0
_LARGEST_TRILL_CENTS: Final = 430.0
_LONGEST_TRILL_PIECE_S: Final = 0.17
_FEWEST_TRILL_PIECES: Final = 5
_LONGEST_TREMOLO_PIECE_S: Final = 0.135
_FEWEST_TREMOLO_PIECES: Final = 6
_SAME_PITCH_CENTS: Final = 45.0
_WENT_OVER_S: Final = 0.03


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of the track that is one note.

    ``first`` and ``last`` (exclusive) are frames; ``strength`` is that of its onset;
    ``role`` is ``'note'``, or ``'trill'``, ``'tremolo'`` or ``'slide'`` for pieces joined
    into one.
    """

    first: int
    last: int
    start_s: float
    end_s: float
    strength: float
    role: str = "note"

    @property
    def attacked(self) -> bool:
        """Whether it begins with an attack and not with a slurred change of pitch."""
        return self.strength >= LEAST_ATTACK_STRENGTH

    @property
    def duration_s(self) -> float:
        """Length of the note in seconds."""
        return self.end_s - self.start_s


def note_spans(
    track: PitchTrack,
    onset_s: FloatArray,
    onset_strength: FloatArray,
    should_stop: StopQuestion | None = None,
) -> list[Span]:
    """Cut the track at the onsets, end each note where it dies away, join ornaments.

    Parameters
    ----------
    track : PitchTrack
        The pitch of the take.
    onset_s, onset_strength : (n,) arrays
        From :func:`analysis.onsets.detect_onsets`; whether to stop is asked for each.

    Returns
    -------
    list of Span
        In order, none overlapping.
    """
    end_of_take = float(track.time_s[-1]) if track.time_s.size else 0.0
    bounds = np.append(onset_s, end_of_take)
    pitched = pitched_frames(track)
    pieces = []
    for (start, following), strength in zip(pairwise(bounds), onset_strength, strict=True):
        stop_if_asked(should_stop)
        piece = _sounding(track, pitched, float(start), float(following))
        if piece is not None:
            pieces.append(replace(piece, strength=float(strength)))
    joined = _without_echoes(track, join_wobbling(track, pieces))
    stop_if_asked(should_stop)
    joined = _join_alternating(track, _join_tremolo(track, joined))
    stop_if_asked(should_stop)
    joined = _join_slides(track, joined)
    return [span for span in joined if span.duration_s >= SHORTEST_NOTE_S]


def _without_echoes(track: PitchTrack, spans: list[Span]) -> list[Span]:
    """Leave out what is only the room going on with the notes before, beating as they die."""
    kept: list[tuple[Span, float, float]] = []
    for span in spans:
        top = float(np.max(track.level_dbfs[span.first : span.last]))
        midi = _middle(track, span)
        if span.strength >= _CLEAR_ATTACK or not any(
            top < loudness - (_ECHO_BELOW_DB if before is kept[-1][0] else _OLD_ECHO_BELOW_DB)
            and span.start_s - before.end_s < _LONGEST_ECHO_S
            and not abs(midi - pitch) * 100.0 > _ECHO_CENTS
            for before, loudness, pitch in kept[-_ECHOING_NOTES:]
        ):
            kept.append((span, top, midi))
    return [span for span, _, _ in kept]


def _sounding(
    track: PitchTrack, pitched: NDArray[np.bool_], start_s: float, following_s: float
) -> Span | None:
    first = int(np.ceil(start_s / track.hop_s))
    last = min(int(np.floor(following_s / track.hop_s)), len(track.time_s))
    if last - first < 3:
        return None
    tonal = pitched[first:last]
    last = first + frames_until_release(track.level_dbfs[first:last], track.hop_s)
    sounding = np.flatnonzero(tonal[: last - first])
    if not sounding.size:
        return None
    last = first + without_forerunner(sounding, track.hop_s)
    return Span(first, last, start_s, min(last * track.hop_s, following_s), 1.0)


def middle_hz(track: PitchTrack, span: Span) -> float:
    """Return the median pitch of a span, NaN where it has none."""
    pitch = track.f0_hz[span.first : span.last]
    pitch = pitch[np.isfinite(pitch)]
    return float(np.median(pitch)) if pitch.size else float("nan")


def hz_after(track: PitchTrack, spans: list[Span], index: int) -> float:
    """Return the pitch that a span goes over into without an attack, NaN for none."""
    first = spans[index].last + 1
    last = first + round(_WENT_OVER_S / track.hop_s)
    if index + 1 < len(spans) and spans[index + 1].attacked:
        last = min(last, spans[index + 1].first)
    pitch = track.f0_hz[first:last]
    pitch = pitch[np.isfinite(pitch)]
    return float(np.median(pitch)) if pitch.size >= 3 else float("nan")


def _middle(track: PitchTrack, span: Span) -> float:
    return hz_to_midi(middle_hz(track, span))


def join_wobbling(track: PitchTrack, spans: list[Span]) -> list[Span]:
    """Join what a vibrato in a room has cut up.

    Direct and reflected sound of a vibrato meet in and out of phase at the same points
    of every turn, which looks like bow changes; but bow changes do not keep to the phase
    of a vibrato that goes on through them.
    """
    joined: list[Span] = []
    i = 0
    while i < len(spans):
        j = i + 1
        while j < len(spans) and _goes_on(track, spans[j - 1], spans[j]):
            j += 1
        while j >= i + _FEWEST_WOBBLING and not _cut_in_step(track, spans[i:j]):
            j -= 1
        if j >= i + _FEWEST_WOBBLING:
            joined.append(replace(spans[i], last=spans[j - 1].last, end_s=spans[j - 1].end_s))
        else:
            j = i + 1
            joined.append(spans[i])
        i = j
    return joined


def _goes_on(track: PitchTrack, span: Span, following: Span) -> bool:
    return (
        following.start_s - span.end_s < 0.05
        and following.strength < _STRONGER_THAN_A_WOBBLE
        and abs(_middle(track, following) - _middle(track, span)) * 100.0 <= _SAME_PITCH_CENTS
    )


def _cut_in_step(track: PitchTrack, spans: list[Span]) -> bool:
    """Whether all cuts lie at the same phase of a vibrato (half turns count as whole)."""
    frames = slice(spans[0].first, spans[-1].last)
    time_s, cents = track.time_s[frames], 100.0 * hz_to_midi(track.f0_hz[frames])
    known = np.isfinite(cents)
    if np.count_nonzero(known) < 20:
        return False
    wobble = pitch_wobble(time_s[known], cents[known])
    if wobble is None or wobble.extent < _WOBBLING_CENTS or wobble.explained < 0.5:
        return False
    cuts = np.array([span.start_s for span in spans[1:]])
    step = np.mean(np.exp(4j * np.pi * wobble.rate_hz * cuts))
    return bool(np.abs(step) > _IN_STEP)


def _join_tremolo(track: PitchTrack, spans: list[Span]) -> list[Span]:
    """Join many quick repeats of one pitch."""
    return _join_runs(
        spans,
        [_middle(track, span) for span in spans],
        lambda span, midis: (
            span.duration_s <= _LONGEST_TREMOLO_PIECE_S
            and abs(midis[-1] - midis[0]) * 100.0 <= _SAME_PITCH_CENTS
        ),
        _FEWEST_TREMOLO_PIECES,
        "tremolo",
    )


def _join_alternating(track: PitchTrack, spans: list[Span]) -> list[Span]:
    """Join slurred pieces that go to and fro between two neighbouring pitches."""

    def belongs(span: Span, midis: list[float]) -> bool:
        if span.role != "note" or span.duration_s > _LONGEST_TRILL_PIECE_S:
            return False
        if len(midis) == 1:
            return True
        step = abs(midis[-1] - midis[-2]) * 100.0
        back = len(midis) < 3 or abs(midis[-1] - midis[-3]) * 100.0 <= _SAME_PITCH_CENTS
        slurred = not span.attacked
        return slurred and back and _SMALLEST_TRILL_CENTS <= step <= _LARGEST_TRILL_CENTS

    midis = [_middle(track, span) for span in spans]
    return _join_runs(spans, midis, belongs, _FEWEST_TRILL_PIECES, "trill")


def _join_runs(
    spans: list[Span],
    midis: list[float],
    belongs: Callable[[Span, list[float]], bool],
    fewest: int,
    role: str,
) -> list[Span]:
    joined: list[Span] = []
    i = 0
    while i < len(spans):
        j = i
        while j < len(spans) and belongs(spans[j], midis[i : j + 1]):
            if j > i and spans[j].start_s - spans[j - 1].end_s > 0.06:
                break
            j += 1
        if j - i >= fewest:
            joined.append(
                replace(spans[i], last=spans[j - 1].last, end_s=spans[j - 1].end_s, role=role)
            )
            i = j
        else:
            joined.append(spans[i])
            i += 1
    return joined


def _join_slides(track: PitchTrack, spans: list[Span]) -> list[Span]:
    """Join the pieces a long slide was cut into, and say of them that they slide."""
    joined: list[Span] = []
    for span in spans:
        way = slide_direction(track, span.first, span.last) if span.role == "note" else 0
        if not way:
            joined.append(span)
            continue
        before = joined[-1] if joined else None
        if (
            before is not None
            and before.role == "slide"
            and not span.attacked
            and span.start_s - before.end_s < 0.03
            and slide_direction(track, before.first, before.last) == way
        ):
            joined[-1] = replace(before, last=span.last, end_s=span.end_s)
        else:
            joined.append(replace(span, role="slide"))
    return joined
