"""Held-out phrases: how every bowed string may be played, from seeds nobody tunes on."""

from dataclasses import replace
from typing import Final

import numpy as np

from sample_audio.specs import Articulation, Instrument, NoteSpec, PhraseSpec

FIRST_SEED: Final = 810_000
"""Seeds 810 000 to 819 999 are held out: they must never be used for tuning anything in
``analysis``. Whoever tunes uses others; otherwise the table shows what was learned by
heart, not what is measured."""

INSTRUMENTS: Final[tuple[Instrument, ...]] = ("violin", "viola", "cello", "double bass")
CONDITIONS: Final = ("clean", "room", "30 dB", "20 dB")
_RANGES: Final = {"violin": (55, 98), "viola": (48, 86), "cello": (36, 79), "double bass": (24, 62)}
_INTERVALS: Final = (0, 0, 1, -1, 1, -1, 2, -2, 2, -2, 3, -3, 4, -4, 5, -5, 7, -7, 12, -12)
_LENGTHS_S: Final = (0.08, 0.11, 0.15, 0.22, 0.35, 0.5, 0.8, 1.3)
_TEMPO: Final = 90.0


def instrument_of(seed: int) -> Instrument:
    """Give the instrument that a seed's phrase is for; the four take turns."""
    return INSTRUMENTS[seed % len(INSTRUMENTS)]


def phrase_of(seed: int, condition: str = "clean", *, count: int = 14) -> PhraseSpec:
    """Make up a phrase.

    Parameters
    ----------
    seed : int
        From :data:`FIRST_SEED` on; the same seed plays the same notes in every condition.
    condition : str
        One of :data:`CONDITIONS`: dry and quiet, in a room, or dry with white noise.
    count : int
        Number of notes.
    """
    rng = np.random.default_rng([seed, 41])
    low, high = _RANGES[instrument_of(seed)]
    midi = int(rng.integers(low + 6, low + (high - low) * 2 // 3))
    attack_s = float(rng.uniform(0.015, 0.06))
    notes: list[NoteSpec] = []
    for _ in range(count):
        before, midi = midi, _moved(rng, midi, low, high)
        notes.append(_note(rng, midi, attack_s, is_repeated=bool(notes) and midi == before))
    beats = sum(note.beats for note in notes)
    softest_db = float(rng.uniform(-12.0, -3.0))
    spec = PhraseSpec(
        tuple(notes),
        tempo=_TEMPO,
        instrument=instrument_of(seed),
        reference_a_hz=440.0 * 2.0 ** (float(rng.uniform(-30.0, 30.0)) / 1200.0),
        dynamics=((0.0, softest_db), (beats / 2.0, 0.0), (beats, softest_db)),
        level_dbfs=-24.0,
        bow_noise_db=float(rng.uniform(-45.0, -34.0)),
        pitch_jitter_cents=float(rng.choice([0.0, 1.0, 2.0])),
        sample_rate_hz=44_100 if seed % 3 else 48_000,
        seed=seed,
    )
    if condition == "room":
        return replace(spec, reverb_time_s=float(rng.uniform(0.3, 1.0)), reverb_db=-12.0)
    return replace(spec, snr_db={"clean": None, "30 dB": 30.0, "20 dB": 20.0}[condition])


def _moved(rng: np.random.Generator, midi: int, low: int, high: int) -> int:
    step = int(rng.choice(_INTERVALS))
    return midi + step if low <= midi + step <= high else midi - step


def _note(rng: np.random.Generator, midi: int, attack_s: float, *, is_repeated: bool) -> NoteSpec:
    length_s = float(rng.choice(_LENGTHS_S)) * float(rng.uniform(0.95, 1.15))
    has_vibrato = length_s > 0.4 and rng.random() < 0.6
    drawn = rng.random()
    articulation: Articulation = "detache"
    if not is_repeated and length_s > 0.1 and drawn < 0.35:
        articulation = "slide_in" if drawn < 0.06 else "legato"
    return NoteSpec(
        midi,
        length_s * _TEMPO / 60.0,
        deviation_cents=float(np.clip(rng.normal(0.0, 8.0), -24.0, 24.0)),
        vibrato_rate_hz=float(rng.uniform(5.0, 7.5)) if has_vibrato else 0.0,
        vibrato_extent_cents=float(rng.uniform(6.0, 40.0)) if has_vibrato else 0.0,
        vibrato_delay_s=float(rng.uniform(0.0, 0.1)) if has_vibrato else 0.0,
        drift_cents=float(rng.normal(0.0, 3.0)) if rng.random() < 0.3 else 0.0,
        scoop_cents=float(rng.normal(0.0, 12.0)) if rng.random() < 0.2 else 0.0,
        level_db=float(rng.uniform(-5.0, 3.0)),
        attack_s=attack_s,
        articulation=articulation,
        glide_s=float(rng.uniform(0.03, 0.08)) if articulation == "slide_in" else 0.02,
    )
