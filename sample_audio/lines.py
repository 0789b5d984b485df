"""From placed notes to each string's pitch, level and bowing at every sample."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sample_audio.placing import SCOOP_TIME_S, PlacedNote
from sample_audio.specs import FloatArray, PhraseSpec

BoolArray = NDArray[np.bool_]

_HEARD_AMPLITUDE = 0.01  # -40 dB: below this share of its note a sample has no pitch
_DOUBLE_STOP_DB = -10.0 * np.log10(2.0)  # two strings share the level of one
_HARMONIC_TILT = 2.0
_JITTER_STEP_S = 0.06


@dataclass(frozen=True, slots=True, eq=False)
class StringLine:
    """One string at every sample, all (n,).

    ``f0_hz`` is positive everywhere (held through rests, so that phase stays
    defined), ``shape`` the bow's level from 0 to 1, ``gain`` the note's amplitude,
    ``tilt`` how much darker than a bowed note, ``age_s`` the time since a pluck
    (0 while bowed), ``sounding`` where a pitch can be heard.
    """

    f0_hz: FloatArray
    shape: FloatArray
    gain: FloatArray
    tilt: FloatArray
    age_s: FloatArray
    sounding: BoolArray


def string_line(
    spec: PhraseSpec, placed: tuple[PlacedNote, ...], time_s: FloatArray, line_seed: int
) -> StringLine:
    """Lay the notes of one string out over the samples at ``time_s``."""
    rate = spec.sample_rate_hz
    n = time_s.size
    pitch = np.zeros(n)  # cents above the reference, weighted
    level = np.zeros(n)
    tilt = np.zeros(n)
    weight = np.zeros(n)
    shape = np.zeros(n)
    age = np.zeros(n)
    rng = np.random.default_rng([spec.seed, 2, line_seed])
    for i, note in enumerate(placed):
        before = placed[i - 1] if i > 0 else None
        after = placed[i + 1] if i + 1 < len(placed) else None
        first, last, w = _region(note, before, after, time_s, rate)
        t = time_s[first:last]
        pitch[first:last] += w * _cents(note, t, spec, rng)
        level[first:last] += w * _level_db(note)
        tilt[first:last] += w * (_HARMONIC_TILT if note.spec.articulation == "harmonic" else 0.0)
        weight[first:last] += w
        shape[first:last] += _bow_shape(note, after, t, w)
        if note.spec.articulation == "pizzicato":
            pluck_s = note.truth.start_s - _attack_s(note) / 2.0
            age[first:last] = np.where(w > 0.5, np.maximum(t - pluck_s, 1e-6), 0.0)
    covered = weight > 1e-9
    np.divide(pitch, weight, out=pitch, where=covered)
    np.divide(level, weight, out=level, where=covered)
    gain = 10.0 ** ((level + spec.level_dbfs) / 20.0)
    f0_hz = spec.reference_a_hz * np.exp2(_held(pitch, covered) / 1200.0)
    shape = np.clip(shape, 0.0, 1.0)
    return StringLine(f0_hz, shape, gain, tilt, age, sounding=shape > _HEARD_AMPLITUDE)


def _region(
    note: PlacedNote,
    before: PlacedNote | None,
    after: PlacedNote | None,
    time_s: FloatArray,
    rate: int,
) -> tuple[int, int, FloatArray]:
    """Find the samples a note has a say in, and its weight there (0 to 1)."""
    half_glide = note.spec.glide_s / 2.0 if note.slurred else 0.0
    begin = note.truth.start_s
    if not note.slurred:
        begin -= _attack_s(note) / 2.0
        if before is not None:
            begin = max(begin, (before.truth.end_s + note.truth.start_s) / 2.0)
    end = note.truth.end_s
    half_next = after.spec.glide_s / 2.0 if after is not None and after.slurred else 0.0
    if after is None or not after.slurred:
        end += note.spec.release_s / 2.0
        if after is not None:
            end = min(end, (note.truth.end_s + after.truth.start_s) / 2.0)
    first = int(np.clip(np.ceil((begin - half_glide) * rate), 0, time_s.size))
    last = int(np.clip(np.ceil((end + half_next) * rate), first, time_s.size))
    t = time_s[first:last]
    w = np.ones(t.size)
    if half_glide:
        w *= _rise(t, begin, 2.0 * half_glide)
    if half_next:
        w *= 1.0 - _rise(t, end, 2.0 * half_next)
    return first, last, w


def _rise(t: FloatArray, centre_s: float, length_s: float) -> FloatArray:
    """Rise from 0 to 1 in a raised cosine, passing one half at ``centre_s``."""
    x = np.clip((t - centre_s) / max(length_s, 1e-6), -0.5, 0.5)
    return np.asarray(0.5 + 0.5 * np.sin(np.pi * x))


def _attack_s(note: PlacedNote) -> float:
    longest = 0.6 * (note.truth.end_s - note.truth.start_s)
    wanted = 0.004 if note.spec.articulation == "pizzicato" else note.spec.attack_s
    return min(wanted, longest)


def _bow_shape(
    note: PlacedNote, after: PlacedNote | None, t: FloatArray, weight: FloatArray
) -> FloatArray:
    shape = weight.copy()
    if not note.slurred:
        shape *= _rise(t, note.truth.start_s, _attack_s(note))
    if after is None or not after.slurred:
        shape *= 1.0 - _rise(t, note.truth.end_s, note.spec.release_s)
    if note.spec.articulation == "tremolo":
        stroke = np.abs(np.sin(np.pi * note.spec.repeat_rate_hz * (t - note.truth.start_s)))
        shape *= 0.15 + 0.85 * np.minimum(1.0, 2.5 * stroke)
    return shape


def _level_db(note: PlacedNote) -> float:
    shared = _DOUBLE_STOP_DB if note.truth.second_centre_hz is not None else 0.0
    return note.spec.level_db + float(shared)


def _cents(
    note: PlacedNote, t: FloatArray, spec: PhraseSpec, rng: np.random.Generator
) -> FloatArray:
    """Pitch of one note over ``t``, in cents above the reference A."""
    truth, played = note.truth, note.spec
    since = t - truth.start_s
    length = truth.end_s - truth.start_s
    cents = np.full(t.size, 1200.0 * np.log2(truth.centre_hz / spec.reference_a_hz))
    if played.drift_cents:
        cents += played.drift_cents * (np.clip(since / length, 0.0, 1.0) - 0.5)
    if played.vibrato_extent_cents and played.vibrato_rate_hz:
        swing = np.maximum(since - played.vibrato_delay_s, 0.0)
        cents += played.vibrato_extent_cents * np.sin(2 * np.pi * played.vibrato_rate_hz * swing)
    if played.scoop_cents:
        begun = np.maximum(since + _attack_s(note) / 2.0, 0.0)
        cents += played.scoop_cents * np.exp(-begun / SCOOP_TIME_S)
    if played.articulation == "slide_in" and not note.slurred:
        cents += played.slide_from_cents * (1.0 - _rise(since, played.glide_s / 2, played.glide_s))
    if played.articulation == "trill":
        turn = np.sin(2 * np.pi * played.repeat_rate_hz * since)
        cents += played.trill_cents * 0.5 * (1.0 - np.tanh(8.0 * turn))
    if spec.pitch_jitter_cents:
        cents += _jitter(since, length, spec.pitch_jitter_cents, rng)
    return cents


def _jitter(
    since: FloatArray, length_s: float, spread_cents: float, rng: np.random.Generator
) -> FloatArray:
    knots = np.arange(-2, int(np.ceil(length_s / _JITTER_STEP_S)) + 3) * _JITTER_STEP_S
    moved = np.interp(since, knots, spread_cents * rng.standard_normal(knots.size))
    inside = (since >= 0.0) & (since <= length_s)
    return np.asarray(moved - (moved[inside].mean() if inside.any() else 0.0))


def _held(values: FloatArray, known: BoolArray) -> FloatArray:
    """Keep the last known value where there is none, the first before it."""
    index = np.where(known, np.arange(values.size), -1)
    np.maximum.accumulate(index, out=index)
    if not known.any():
        return np.zeros_like(values)
    index[index < 0] = int(np.argmax(known))
    return np.asarray(values[index])
