"""How the demo's player plays on a given day: habits that shrink, and chance.

Chance is seeded by passage, day and take, so that the eight weeks are the same
every time and every deviation is known.
"""

import math
from dataclasses import dataclass, replace

import numpy as np

from sample_audio.specs import NoteSpec, PhraseSpec
from sample_audio.study import DemoPassage

_OPEN_STRINGS = {48: -5.87, 55: -3.91, 62: -1.96}  # cents off equal when tuned in pure fifths
_VIBRATO_FROM_BEATS = 1.0
_SHIFT_NOTE = 72


@dataclass(frozen=True, slots=True)
class Form:
    """What the player can do on one day.

    Attributes
    ----------
    habit : float
        Share of the first week's habits that is left, 1 to 0.
    shift_cents : float
        Where the shift to C5 lands on average.
    spread_cents : float
        Standard deviation of the chance part of each note.
    tempo_share : float
        Tempo against the aimed one.
    unevenness_percent : float
        Spread of the inter-beat intervals.
    rush_bpm_per_min : float
    vibrato_cents : float
    span_db : float
        From the softest to the loudest of the written dynamics.
    """

    habit: float
    shift_cents: float
    spread_cents: float
    tempo_share: float
    unevenness_percent: float
    rush_bpm_per_min: float
    vibrato_cents: float
    span_db: float


# Cents by pitch class in the first week: flat leading notes, wide E flats, low B flats.
_HABITS = {6: -24.0, 3: 14.0, 10: -11.0, 9: 6.0, 0: 8.0, 5: -8.0, 7: 5.0}


def form_on(day: int, setback: float = 0.0) -> Form:
    """Return the form on a day of the eight weeks.

    Parameters
    ----------
    day : int
        0 to 55.
    setback : float
        0 on an ordinary day, 1 when things are as far back as half-way.
    """
    learned = (1.0 - math.exp(-day / 20.0)) * (1.0 - 0.5 * setback)
    return Form(
        habit=1.0 - 0.75 * learned,
        shift_cents=29.0 - 24.0 * learned,
        spread_cents=12.0 - 7.0 * learned,
        tempo_share=0.86 + 0.15 * learned,
        unevenness_percent=4.4 - 2.9 * learned,
        rush_bpm_per_min=7.0 - 6.0 * learned,
        vibrato_cents=6.0 + 13.0 * learned,
        span_db=4.0 + 8.0 * learned,
    )


def play(passage: DemoPassage, form: Form, seed: int) -> PhraseSpec:
    """Play a passage once in the given form; the same arguments give the same take."""
    rng = np.random.default_rng([seed, 11])
    softest_db = -form.span_db
    return PhraseSpec(
        notes=tuple(_played(note, form, rng) for note in passage.notes),
        tempo=round(passage.pulse_bpm * form.tempo_share, 2),
        tempo_drift_bpm_per_min=round(form.rush_bpm_per_min, 2),
        interval_spread_percent=round(form.unevenness_percent * float(rng.uniform(0.85, 1.15)), 2),
        reference_a_hz=passage.reference_a_hz,
        dynamics=tuple(
            (beat, round(softest_db + share * form.span_db, 2)) for beat, share in passage.hairpins
        ),
        level_dbfs=-19.0,
        pitch_jitter_cents=1.5,
        reverb_time_s=0.4,
        reverb_db=-14.0,
        room_noise_dbfs=-66.0,
        instrument=passage.instrument,
        lead_in_s=round(float(rng.uniform(0.6, 1.2)), 2),
        tail_s=1.0,
        seed=seed,
    )


def _played(note: NoteSpec, form: Form, rng: np.random.Generator) -> NoteSpec:
    chance = float(rng.standard_normal())
    late_s = 0.008 * float(rng.standard_normal())
    if note.midi is None:
        return note
    written = round(note.midi)
    open_string = written in _OPEN_STRINGS and (written != 62 or note.beats < 2.0)
    if open_string:
        deviation = _OPEN_STRINGS[written]
    elif written == _SHIFT_NOTE and note.articulation == "slide_in":
        deviation = form.shift_cents + 1.3 * form.spread_cents * chance
    else:
        deviation = form.habit * _HABITS.get(written % 12, 0.0) + form.spread_cents * chance
    vibrated = not open_string and note.beats >= _VIBRATO_FROM_BEATS and note.second_midi is None
    return replace(
        note,
        deviation_cents=round(deviation, 1),
        vibrato_rate_hz=round(5.4 + 0.3 * chance, 2) if vibrated else 0.0,
        vibrato_extent_cents=round(form.vibrato_cents * (1.0 + 0.1 * chance), 1)
        if vibrated
        else 0.0,
        vibrato_delay_s=0.08 if vibrated else 0.0,
        onset_shift_s=round(late_s, 4),
        attack_s=0.03,
        second_deviation_cents=_OPEN_STRINGS[62],
    )
