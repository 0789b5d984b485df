"""Random phrases for the accuracy tables: every bowed string, many ways of playing.

Seeds under 10 000 may be tuned on; the tables of a release use 20 000 and above.
"""

from dataclasses import replace
from typing import Final

import numpy as np

from sample_audio.generator import Articulation, Instrument, NoteSpec, Phrase, PhraseSpec, render

FIRST_HELD_OUT_SEED: Final = 20_000
INSTRUMENTS: Final[tuple[Instrument, ...]] = ("violin", "viola", "cello", "double bass")
RANGES: Final = {"violin": (55, 100), "viola": (48, 88), "cello": (36, 84), "double bass": (24, 67)}
CONDITIONS: Final[dict[str, float | None]] = {"clean": None, "30 dB": 30.0, "20 dB": 20.0}


def random_spec(seed: int, *, room: bool | None = None, count: int = 14) -> PhraseSpec:
    """Make up a phrase: lengths from 80 ms, repeated notes, slurs, slides, vibrato."""
    rng = np.random.default_rng([seed, 77])
    instrument = INSTRUMENTS[int(rng.integers(len(INSTRUMENTS)))]
    low, high = RANGES[instrument]
    centre = int(rng.triangular(low + 4, low + 0.35 * (high - low), high - 4))
    tempo = float(rng.uniform(60.0, 110.0))
    vibrato_player = rng.random() < 0.7
    attack_s = float(rng.uniform(0.015, 0.06))
    notes = []
    midi = centre
    while len(notes) < count:
        before, midi = midi, _next(rng, midi, centre, low, high)
        if rng.random() < 0.2:  # a run of short notes
            short_s = float(rng.uniform(0.08, 0.16))
            for _ in range(int(rng.integers(3, 6))):
                before, midi = midi, _next(rng, midi, centre, low, high)
                beats = short_s * tempo / 60.0
                notes.append(
                    _note(
                        rng, midi, beats, vibrato=False, attack_s=attack_s, repeated=midi == before
                    )
                )
            continue
        seconds = float(rng.choice([0.25, 0.4, 0.6, 0.9, 1.4]) * rng.uniform(0.8, 1.2))
        vibrato = vibrato_player and seconds > 0.35 and rng.random() < 0.8
        repeated = bool(notes) and midi == before
        notes.append(
            _note(
                rng,
                midi,
                seconds * tempo / 60.0,
                vibrato=vibrato,
                attack_s=attack_s,
                repeated=repeated,
            )
        )
    room = bool(rng.random() < 0.4) if room is None else room
    total = float(sum(note.beats for note in notes))
    return PhraseSpec(
        tuple(notes),
        tempo=tempo,
        instrument=instrument,
        dynamics=(
            (0.0, float(rng.uniform(-12, 0))),
            (total / 2, 0.0),
            (total, float(rng.uniform(-12, 0))),
        ),
        bow_noise_db=float(rng.uniform(-45.0, -32.0)),
        pitch_jitter_cents=float(rng.choice([0.0, 1.0, 2.0])),
        reverb_time_s=float(rng.uniform(0.3, 1.2)) if room else None,
        reverb_db=float(rng.uniform(-16.0, -9.0)),
        sample_rate_hz=44_100 if rng.random() < 0.5 else 48_000,
        seed=seed,
    )


_STEPS: Final = (0, 1, -1, 2, -2, 3, -3, 4, 5, -5, 7, -7, 12, -12)
_SHARES: Final = (14, 13, 13, 16, 16, 6, 6, 3, 3, 3, 3, 2, 1, 1)


def _next(rng: np.random.Generator, midi: int, centre: int, low: int, high: int) -> int:
    while True:
        step = int(rng.choice(_STEPS, p=np.array(_SHARES) / sum(_SHARES)))
        if low <= midi + step <= high and abs(midi + step - centre) <= 14:
            return midi + step


def _note(
    rng: np.random.Generator,
    midi: int,
    beats: float,
    *,
    vibrato: bool,
    attack_s: float,
    repeated: bool,
) -> NoteSpec:
    articulation: Articulation = "legato" if rng.random() < 0.35 else "detache"
    if rng.random() < 0.05:
        articulation = "slide_in"
    if repeated:  # slurred onto itself a note would only be longer
        articulation = "detache"
    return NoteSpec(
        midi,
        beats,
        deviation_cents=float(np.clip(rng.normal(0.0, 10.0), -35.0, 35.0)),
        vibrato_rate_hz=float(rng.uniform(5.0, 7.5)) if vibrato else 0.0,
        vibrato_extent_cents=float(rng.uniform(6.0, 40.0)) if vibrato else 0.0,
        vibrato_delay_s=float(rng.uniform(0.0, 0.15)) if vibrato else 0.0,
        drift_cents=float(rng.normal(0.0, 3.0)) if rng.random() < 0.4 else 0.0,
        scoop_cents=float(rng.normal(0.0, 15.0)) if rng.random() < 0.3 else 0.0,
        level_db=float(rng.uniform(-6.0, 3.0)),
        attack_s=attack_s,
        articulation=articulation,
        glide_s=float(rng.uniform(0.015, 0.08)) if articulation == "slide_in" else 0.02,
    )


def random_phrase(seed: int, snr_db: float | None = None, *, room: bool | None = None) -> Phrase:
    """Render the phrase of a seed, with white noise where asked for."""
    spec = replace(random_spec(seed, room=room), snr_db=snr_db)
    try:
        return render(spec)
    except ValueError:
        return render(replace(spec, level_dbfs=spec.level_dbfs - 8.0))
