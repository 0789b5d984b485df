"""The few short takes kept in the repository, and the truth beside each.

``python -m sample_audio`` writes them anew. They are there to be heard, and so that
checks of files and players have sound whose truth does not come from the same run.
"""

import json
from dataclasses import asdict, replace
from datetime import date
from pathlib import Path

import numpy as np
import soundfile

from sample_audio.generator import render
from sample_audio.scenario import demo_days
from sample_audio.specs import NoteSpec, Phrase, PhraseSpec

FOLDER = Path(__file__).parent / "takes"

# Rounding to 16 bit may fall either way where another machine's sine differs in
# its last digit; nothing else may differ.
TOLERANCE = 1.01 / 32768.0

_THREE_BARS = 14  # notes of the study


def committed_specs() -> dict[str, PhraseSpec]:
    """Return the specs of the committed takes by file name (without ending)."""
    played = {
        "violin-hard-cases": _violin_hard_cases(),
        "viola-study-first-day": _study_excerpt(0),
        "viola-study-last-day": _study_excerpt(-1),
        "cello-double-stops": _cello_double_stops(),
        "double-bass-low-notes": _double_bass_low_notes(),
        "violin-uneven-pulse": _violin_uneven_pulse(),
    }
    return {name: _in_a_quiet_room(spec) for name, spec in played.items()}


def _in_a_quiet_room(spec: PhraseSpec) -> PhraseSpec:
    # Little noise, because noise is what makes the files big.
    return replace(
        spec, reverb_time_s=0.35, reverb_db=-15.0, room_noise_dbfs=-78.0, bow_noise_db=-46.0
    )


def _violin_hard_cases() -> PhraseSpec:
    return PhraseSpec(
        notes=(
            NoteSpec(69, 1, deviation_cents=6.0),
            NoteSpec(69, 1, deviation_cents=-4.0),
            NoteSpec(71, 2, 7.0, vibrato_rate_hz=6.0, vibrato_extent_cents=20.0),
            NoteSpec(76, 1, -11.0, articulation="slide_in", glide_s=0.15),
            NoteSpec(74, 0.25, 3.0),
            NoteSpec(73, 0.25, -3.0),
            NoteSpec(74, 0.5, 9.0, articulation="legato"),
            NoteSpec(81, 1, 2.0, articulation="harmonic"),
            NoteSpec(69, 1, 0.0, articulation="pizzicato"),
        ),
        tempo=90.0,
        instrument="violin",
        seed=101,
    )


def _study_excerpt(which: int) -> PhraseSpec:
    # The date of the scenario's end does not change what is played.
    takes = [
        take
        for day in demo_days(date(2001, 1, 1))
        for take in day.takes
        if take.passage_key == "opening"
    ]
    phrase = takes[which].phrase
    return replace(phrase, notes=phrase.notes[:_THREE_BARS], dynamics=(), lead_in_s=0.3)


def _cello_double_stops() -> PhraseSpec:
    return PhraseSpec(
        notes=(
            NoteSpec(43, 2, -3.9, second_midi=50, second_deviation_cents=-2.0),
            NoteSpec(45, 2, 0.0, second_midi=53, second_deviation_cents=12.0),
            NoteSpec(48, 2, 5.0),
        ),
        tempo=84.0,
        instrument="cello",
        seed=104,
    )


def _double_bass_low_notes() -> PhraseSpec:
    return PhraseSpec(
        notes=(
            NoteSpec(28, 2, 0.0, attack_s=0.08),
            NoteSpec(31, 1, 14.0, attack_s=0.08),
            NoteSpec(33, 2, -8.0, attack_s=0.08),
        ),
        tempo=66.0,
        instrument="double bass",
        seed=105,
    )


def _violin_uneven_pulse() -> PhraseSpec:
    pitches = (67, 69, 71, 72, 74, 72, 71, 69, 67, 71, 74, 67)
    return PhraseSpec(
        notes=tuple(NoteSpec(midi, 1, articulation="staccato") for midi in pitches),
        tempo=132.0,
        tempo_drift_bpm_per_min=40.0,
        interval_spread_percent=3.0,
        instrument="violin",
        seed=106,
    )


def write_takes(folder: Path = FOLDER) -> tuple[Path, ...]:
    """Render every committed take into ``folder``: FLAC (16 bit) and its truth as JSON."""
    folder.mkdir(parents=True, exist_ok=True)
    written = []
    for name, spec in committed_specs().items():
        phrase = render(spec)
        path = folder / f"{name}.flac"
        soundfile.write(path, as_16_bit(phrase), phrase.sample_rate_hz, subtype="PCM_16")
        truth = json.dumps(truth_record(spec, phrase), indent=1, ensure_ascii=False)
        path.with_suffix(".json").write_text(truth + "\n", encoding="utf-8")
        written.append(path)
    return tuple(written)


def as_16_bit(phrase: Phrase) -> np.ndarray[tuple[int], np.dtype[np.int16]]:
    """Return the samples rounded to 16 bit, (n,) int16."""
    return np.clip(np.round(phrase.samples * 32768.0), -32768, 32767).astype(np.int16)


def truth_record(spec: PhraseSpec, phrase: Phrase) -> dict[str, object]:
    """Return a take's truth as JSON-compatible values; times in s, rounded to 1 µs."""
    truth = phrase.truth
    return {
        "instrument": spec.instrument,
        "sample_rate_hz": phrase.sample_rate_hz,
        "duration_s": round(phrase.samples.size / phrase.sample_rate_hz, 6),
        "reference_a_hz": spec.reference_a_hz,
        "temperament": spec.temperament,
        "tempo_bpm": spec.tempo,
        "tempo_drift_bpm_per_min": spec.tempo_drift_bpm_per_min,
        "interval_spread_percent": spec.interval_spread_percent,
        "level_dbfs": spec.level_dbfs,
        "room_noise_dbfs": spec.room_noise_dbfs,
        "reverb_time_s": spec.reverb_time_s,
        "seed": spec.seed,
        "beat_s": [round(float(beat), 6) for beat in truth.beat_s],
        "notes": [
            {
                key: round(value, 6) if isinstance(value, float) else value
                for key, value in asdict(note).items()
            }
            for note in truth.notes
        ],
    }
