"""Render bowed-string phrases whose pitch, notes, beats and levels are exactly known.

The phase of every string is the running sum of its own true frequency, so the
truth is what was sounded, not what was asked of a synthesiser::

    phrase = render(PhraseSpec((NoteSpec(69, 2, deviation_cents=7),), tempo=60))
    phrase.samples, phrase.truth.f0_hz, phrase.truth.notes
"""

import numpy as np

from sample_audio.lines import StringLine, string_line
from sample_audio.placing import place_notes, second_string
from sample_audio.room import noise_floor, with_room
from sample_audio.specs import (
    Articulation,
    FloatArray,
    Instrument,
    NoteSpec,
    NoteTruth,
    Phrase,
    PhraseSpec,
    Temperament,
    Truth,
)
from sample_audio.targets import target_hz
from sample_audio.timbre import bow_noise, sound
from sample_audio.timing import BeatClock

__all__ = [
    "Articulation",
    "Instrument",
    "NoteSpec",
    "NoteTruth",
    "Phrase",
    "PhraseSpec",
    "Temperament",
    "Truth",
    "place_phrase",
    "render",
    "target_hz",
]


def place_phrase(spec: PhraseSpec) -> tuple[NoteTruth, ...]:
    """Return the notes' truth without sounding anything; the same as ``render(spec)`` gives."""
    return tuple(note.truth for note in place_notes(spec, BeatClock(spec)))


def render(spec: PhraseSpec) -> Phrase:
    """Sound a phrase.

    Parameters
    ----------
    spec : PhraseSpec
        Everything that is to be heard; the same spec gives the same samples.

    Returns
    -------
    Phrase
        Samples (n,) float64 within [-1, 1] at ``spec.sample_rate_hz``, and their
        truth.

    Raises
    ------
    ValueError
        When the tempo or the notes make no sense, or the phrase would clip:
        lower ``level_dbfs`` then.
    """
    clock = BeatClock(spec)
    placed = place_notes(spec, clock)
    written_end_s = clock.time_s(clock.total_beats)
    sounding_end_s = max([written_end_s, *(note.truth.end_s for note in placed)])
    n = round((sounding_end_s + spec.tail_s) * spec.sample_rate_hz)
    time_s = np.arange(n) / spec.sample_rate_hz
    hairpin = _hairpin_gain(spec, clock, time_s)

    rng = np.random.default_rng([spec.seed, 5])
    dry, power = np.zeros(n), np.zeros(n)
    tracks: list[FloatArray] = []
    for number, notes in enumerate((placed, second_string(placed))):
        if not notes:
            tracks.append(np.full(n, np.nan))
            continue
        line = string_line(spec, notes, time_s, number)
        tone, rms = _sound_string(spec, line, rng)
        dry += tone * hairpin
        power += (rms * hairpin) ** 2
        tracks.append(np.where(line.sounding, line.f0_hz, np.nan))

    heard = np.isfinite(tracks[0]) | np.isfinite(tracks[1])
    sounding_power = float(np.mean(dry[heard] ** 2)) if heard.any() else 0.0
    samples = with_room(dry, spec) + noise_floor(spec, sounding_power, n)
    peak = float(np.max(np.abs(samples))) if n else 0.0
    if peak > 1.0:
        raise ValueError(f"The phrase clips at {20 * np.log10(peak):+.1f} dBFS: lower level_dbfs.")
    with np.errstate(divide="ignore"):
        level_dbfs = 10.0 * np.log10(power)
    truth = Truth(
        time_s=time_s,
        f0_hz=tracks[0],
        second_f0_hz=tracks[1],
        level_dbfs=level_dbfs,
        notes=tuple(note.truth for note in placed),
        beat_s=clock.whole_beats_s(),
    )
    return Phrase(samples, spec.sample_rate_hz, truth)


def _sound_string(
    spec: PhraseSpec, line: StringLine, rng: np.random.Generator
) -> tuple[FloatArray, FloatArray]:
    tone, rms = sound(line, spec.instrument, spec.sample_rate_hz)
    if spec.bow_noise_db is not None:
        tone += bow_noise(line, spec.instrument, spec.sample_rate_hz, spec.bow_noise_db, rng)
    return tone, rms


def _hairpin_gain(spec: PhraseSpec, clock: BeatClock, time_s: FloatArray) -> FloatArray:
    if not spec.dynamics:
        return np.ones(time_s.size)
    at_s = [clock.time_s(beat) for beat, _ in spec.dynamics]
    return np.asarray(10.0 ** (np.interp(time_s, at_s, [db for _, db in spec.dynamics]) / 20.0))
