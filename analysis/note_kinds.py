"""Which sort of event a note is, as far as its sound tells."""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.blocks import MonoSamples
from analysis.note_centre import Reading
from analysis.note_spans import Span
from analysis.onset_sharpness import rises
from analysis.results import NoteKind, PitchTrack
from analysis.units import hz_to_midi, midi_to_hz

FloatArray = NDArray[np.float64]

_PLUCK_DECAY_DB_PER_S: Final = -8.0
_LOW_PLUCK_DECAY_DB_PER_S: Final = -6.0
_LOW_MIDI: Final = 45.0
_SHORTEST_SLOW_PLUCK_S: Final = 0.25
_QUICK_RISE_S: Final = 0.009
_PLUCK_PEAK_WITHIN_S: Final = 0.06
_LOW_PLUCK_PEAK_WITHIN_S: Final = 0.1
_SHORTEST_SURE_PLUCK_S: Final = 0.25
_HARD_RISE_S: Final = 0.008
_RISE_LOOKED_FOR_S: Final = 0.03
_RISE_BIN_S: Final = 0.001
_LONGEST_GRACE_S: Final = 0.11
_GRACE_SHORTER_BY: Final = 3.0
_GRACE_WITHIN_CENTS: Final = 450.0
_SMALLEST_TRILL_CENTS: Final = 38.0
_SLOWEST_TRILL_HZ: Final = 5.5
_SQUARE_KURTOSIS: Final = 1.38
_LONGEST_PASSAGE_WAY_S: Final = 0.1
_OFF_BOTH_CENTS: Final = 25.0
_SEMITONE_AT_MOST_CENTS: Final = 130.0

_ROLES: Final = {
    "trill": NoteKind.TRILL,
    "tremolo": NoteKind.TREMOLO,
    "slide": NoteKind.SLIDE,
}


def kind_of(
    track: PitchTrack, spans: list[Span], index: int, source: MonoSamples | None
) -> NoteKind:
    """Tell the kind of a span from its neighbours, its level and its attack.

    Harmonics sound like notes; only a score or the player can tell them.

    Parameters
    ----------
    track : PitchTrack
        The pitch of the take.
    spans : list of Span
        All notes of the take.
    index : int
        Which of them.
    source : MonoSamples or None
        The take; without it plucked notes are not told from bowed ones.
    """
    span = spans[index]
    if span.role != "note":
        return _ROLES[span.role]
    if source is not None and _is_plucked(track, spans, index, source):
        return NoteKind.PIZZICATO
    following = spans[index + 1] if index + 1 < len(spans) else None
    if following is not None and index and _is_passage_way(track, spans[index - 1 : index + 2]):
        return NoteKind.SLIDE
    if following is not None and _is_grace(track, span, following):
        return NoteKind.GRACE
    return NoteKind.NOTE


def may_be_trill(f0_hz: FloatArray) -> bool:
    """Whether the middle of a note is wide enough for :func:`is_quick_trill` to be asked."""
    edge = len(f0_hz) // 10
    f0_hz = f0_hz[edge : len(f0_hz) - edge]
    f0_hz = f0_hz[np.isfinite(f0_hz)]
    if not f0_hz.size:
        return False
    return 1200.0 * float(np.log2(np.max(f0_hz) / np.min(f0_hz))) >= _SMALLEST_TRILL_CENTS


def is_quick_trill(reading: Reading | None) -> bool:
    """Whether a fast, wide wobble rests on two pitches instead of swinging like a vibrato.

    The kurtosis of a sinusoid is 1.5, that of going to and fro between two values 1.
    """
    wobble = None if reading is None else reading.wobble
    if reading is None or wobble is None or wobble.extent < _SMALLEST_TRILL_CENTS:
        return False
    if wobble.rate_hz < _SLOWEST_TRILL_HZ:
        return False
    swing = reading.cents - float(np.mean(reading.cents))
    return float(np.mean(swing**4) / np.mean(swing**2) ** 2) < _SQUARE_KURTOSIS


def _is_plucked(track: PitchTrack, spans: list[Span], index: int, source: MonoSamples) -> bool:
    """Whether a note begins hard and dies away; a short one only beside another such.

    In a room the end of a short bowed note falls like a plucked one. Nobody plucks a
    single short note between bowed ones.
    """

    def plucked(span: Span) -> bool:
        return _dies_away(track, span) and _is_struck(source, track, span)

    if not plucked(spans[index]):
        return False
    if spans[index].duration_s >= _SHORTEST_SURE_PLUCK_S or len(spans) == 1:
        return True
    beside = (*spans[max(index - 1, 0) : index], *spans[index + 1 : index + 2])
    return any(plucked(span) for span in beside)


def _dies_away(track: PitchTrack, span: Span) -> bool:
    """Whether the note is loudest at once and every part of what follows falls."""
    level = track.level_dbfs[span.first : span.last]
    if not span.attacked or len(level) * track.hop_s < 0.1:
        return False
    top = int(np.argmax(level))
    tail = level[top:]
    low = _median_midi(track, span) < _LOW_MIDI
    latest_s = _LOW_PLUCK_PEAK_WITHIN_S if low else _PLUCK_PEAK_WITHIN_S
    if top * track.hop_s > latest_s or len(tail) < 12:
        return False
    slopes = [
        float(np.polyfit(np.arange(len(part)) * track.hop_s, part, 1)[0])
        for part in np.array_split(tail, 3)
    ]
    # A bowed note's release falls as well, but the parts before it do not.
    return max(slopes) <= (_LOW_PLUCK_DECAY_DB_PER_S if low else _PLUCK_DECAY_DB_PER_S)


def _is_struck(source: MonoSamples, track: PitchTrack, span: Span) -> bool:
    """Whether a note that dies away was plucked: it rises hard, or at once over what rings.

    A low string needs some of its slow periods to show its level, and what still rings
    hides the foot of the attack. Where a note is long enough for its decay to be seen,
    a quick rise of the level is enough.
    """
    if _hard_attack(source, span):
        return True
    if span.duration_s < _SHORTEST_SLOW_PLUCK_S:
        return False
    midi = _median_midi(track, span)
    period_s = 1.0 / midi_to_hz(midi) if np.isfinite(midi) else 0.0
    rise_s = float(rises(source, np.array([span.start_s])).rise_s[0])
    return rise_s <= _QUICK_RISE_S + 0.5 * period_s


def _hard_attack(source: MonoSamples, span: Span) -> bool:
    """Whether the level rises from a tenth to most of its height within 8 ms."""
    rate = source.sample_rate_hz
    first = round((span.start_s - _RISE_LOOKED_FOR_S) * rate)
    piece = source.read(first, round((span.start_s + _RISE_LOOKED_FOR_S) * rate))
    size = max(round(_RISE_BIN_S * rate), 1)
    bins = np.abs(piece[: len(piece) // size * size].reshape(-1, size)).max(axis=1)
    height = np.maximum.accumulate(bins)
    before = float(np.median(bins[: len(bins) // 3]))
    low, high = before + 0.15 * (height[-1] - before), before + 0.7 * (height[-1] - before)
    rise = int(np.argmax(height >= high)) - int(np.argmax(height >= low))
    return rise * _RISE_BIN_S <= _HARD_RISE_S


def _is_grace(track: PitchTrack, span: Span, following: Span) -> bool:
    """Whether the note is a short slurred step to a much longer one."""
    if span.duration_s > _LONGEST_GRACE_S or following.attacked:
        return False
    if following.start_s - span.end_s > 0.03:
        return False
    if following.duration_s < _GRACE_SHORTER_BY * span.duration_s:
        return False
    here, there = (_median_midi(track, s) for s in (span, following))
    return abs(here - there) * 100.0 <= _GRACE_WITHIN_CENTS


def _is_passage_way(track: PitchTrack, spans: list[Span]) -> bool:
    """Whether a moment between two notes a semitone apart lies between the two.

    Nobody writes such a note: the finger rolls over, or both notes sound for a moment.
    """
    before, span, following = spans
    if span.duration_s > _LONGEST_PASSAGE_WAY_S:
        return False
    if span.start_s - before.end_s > 0.03 or following.start_s - span.end_s > 0.03:
        return False
    old, here, new = (100.0 * _median_midi(track, s) for s in spans)
    between = min(old, new) + _OFF_BOTH_CENTS < here < max(old, new) - _OFF_BOTH_CENTS
    return between and abs(new - old) <= _SEMITONE_AT_MOST_CENTS


def _median_midi(track: PitchTrack, span: Span) -> float:
    pitch = track.f0_hz[span.first : span.last]
    pitch = pitch[np.isfinite(pitch)]
    return hz_to_midi(float(np.median(pitch))) if pitch.size else float("nan")
