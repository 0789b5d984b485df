"""From the pitch track and the onsets to notes: spans, steady parts, centres, kinds."""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.instruments import Instrument
from analysis.results import (
    Measured,
    Note,
    NoteKind,
    NotePitch,
    NotMeasurable,
    PitchTrack,
    Provenance,
    Reason,
    Vibrato,
)
from analysis.units import hz_to_midi, midi_to_hz
from analysis.vibrato import measure_vibrato, pitch_wobble
from analysis.windows import WindowPlan
from analysis.wobbles import Wobble

FloatArray = NDArray[np.float64]

ALGORITHM: Final = "notes-1"
_PROVENANCE: Final = Provenance(ALGORITHM)

_SHORTEST_NOTE_S: Final = 0.05
_SHORTEST_STEADY_S: Final = 0.03
_RELEASE_DB: Final = 6.0
_STEADY_DB: Final = 9.0
_STEADY_CENTS: Final = 60.0
_FLOOR_CENTS: Final = 0.3
_CORRELATION_S: Final = 0.02


@dataclass(frozen=True, slots=True)
class _Span:
    first: int
    last: int
    start_s: float
    end_s: float


def find_notes(
    track: PitchTrack,
    onset_s: FloatArray,
    onset_strength: FloatArray,
    instrument: Instrument,
    *,
    windows: WindowPlan | None = None,
) -> tuple[Note, ...]:
    """Find the notes of a single line.

    Parameters
    ----------
    track : PitchTrack
        The pitch of the take.
    onset_s, onset_strength : (n,) arrays
        Beginnings of notes, rising, and how sure they are.
    instrument : Instrument
        What is played.
    windows : WindowPlan, optional
        The windows the track was measured with; by default those of the instrument.

    Returns
    -------
    tuple of Note
        In order of their starts.
    """
    windows = windows or WindowPlan(instrument.floor_hz, instrument.window_periods)
    notes = []
    for span in _spans(track, onset_s):
        note = _note(track, span, windows)
        if note is not None:
            notes.append(note)
    return tuple(notes)


def _spans(track: PitchTrack, onset_s: FloatArray) -> list[_Span]:
    end_of_take = float(track.time_s[-1]) if track.time_s.size else 0.0
    bounds = np.append(onset_s, end_of_take)
    spans = []
    for start, following in zip(bounds[:-1], bounds[1:], strict=True):
        first = int(np.ceil(start / track.hop_s))
        last = min(int(np.floor(following / track.hop_s)), len(track.time_s))
        if last - first < 3:
            continue
        level = track.level_dbfs[first:last]
        top = float(np.percentile(level, 90.0))
        sounding = np.flatnonzero(
            (level >= top - _RELEASE_DB) & np.isfinite(track.f0_hz[first:last])
        )
        if not sounding.size:
            continue
        end = min((first + int(sounding[-1]) + 1) * track.hop_s, float(following))
        spans.append(_Span(first, first + int(sounding[-1]) + 1, float(start), end))
    return [s for s in spans if s.end_s - s.start_s >= _SHORTEST_NOTE_S]


def _note(track: PitchTrack, span: _Span, windows: WindowPlan) -> Note | None:
    midi = hz_to_midi(track.f0_hz[span.first : span.last])
    level = track.level_dbfs[span.first : span.last]
    voiced = np.isfinite(midi)
    if np.count_nonzero(voiced) < 3:
        return None
    time_s = track.time_s[span.first : span.last]
    middle = float(np.median(midi[voiced]))
    window_s = windows.length_s(midi_to_hz(middle))
    guard = 0.35 * window_s
    steady = voiced & (np.abs(midi - middle) * 100.0 < _STEADY_CENTS)
    steady &= (time_s >= span.start_s + guard) & (time_s <= span.end_s - guard)
    steady &= level >= float(np.max(level)) - _STEADY_DB
    steady = _longest_run(steady)
    top = float(np.max(level))
    if np.count_nonzero(steady) * track.hop_s < _SHORTEST_STEADY_S:
        pitch: Measured[NotePitch] | NotMeasurable = NotMeasurable(
            Reason.TOO_SHORT, "The note has no steady part long enough to measure.", _PROVENANCE
        )
        vibrato: Measured[Vibrato | None] | NotMeasurable = NotMeasurable(
            Reason.TOO_SHORT, "The note is too short to tell vibrato.", _PROVENANCE
        )
        return Note(
            span.start_s, span.end_s, span.start_s, span.end_s,
            NoteKind.NOTE, top, pitch, vibrato,
        )  # fmt: skip
    t, cents = time_s[steady], 100.0 * (midi[steady] - middle)
    wobble = pitch_wobble(t, cents)
    pitch = Measured(_pitch(t, cents, middle, wobble), _PROVENANCE)
    vibrato = measure_vibrato(
        t, level[steady], wobble, window_s=window_s, period_s=1.0 / midi_to_hz(middle)
    )
    return Note(
        start_s=span.start_s,
        end_s=span.end_s,
        steady_start_s=float(t[0]),
        steady_end_s=float(t[-1]),
        kind=NoteKind.NOTE,
        level_dbfs=float(np.median(level[steady])),
        pitch=pitch,
        vibrato=vibrato,
    )


def _longest_run(mask: NDArray[np.bool_]) -> NDArray[np.bool_]:
    edges = np.flatnonzero(np.diff(np.concatenate(([False], mask, [False])).astype(np.int8)))
    if not edges.size:
        return mask
    starts, ends = edges[::2], edges[1::2]
    longest = int(np.argmax(ends - starts))
    out = np.zeros_like(mask)
    out[starts[longest] : ends[longest]] = True
    return out


def _pitch(time_s: FloatArray, cents: FloatArray, middle_midi: float, wobble: Wobble | None) -> NotePitch:
    span_s = float(time_s[-1] - time_s[0])
    if wobble is not None and wobble.cycles >= 1.0 and wobble.explained > 0.3:
        centre, slope, residual = wobble.centre, wobble.slope_per_s, wobble.residual
        fitted = 5.0
    else:
        slope = float(np.polyfit(time_s - time_s.mean(), cents, 1)[0])
        centre = float(np.mean(cents))
        residual, fitted = cents - centre, 1.0
    independent = max(span_s / _CORRELATION_S, 2.0)
    spread = float(np.sqrt(np.sum(residual**2) / max(len(cents) - fitted, 1.0)))
    half_width = float(np.hypot(1.96 * spread / np.sqrt(independent), _FLOOR_CENTS))
    return NotePitch(midi_to_hz(middle_midi + centre / 100.0), half_width, slope)
