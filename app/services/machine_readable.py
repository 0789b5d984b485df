"""The machine-readable objects, schema 1: fixed names, ``null`` where nothing was measured.

``app/schemas/measure.schema.json`` describes them with their units. No NaN and no
infinity ever leaves this module.
"""

from analysis.results import (
    Dynamics,
    Intonation,
    JudgedNote,
    Measured,
    NotePair,
    NotMeasurable,
    PitchTrack,
    Provenance,
    TakeAnalysis,
    Tempo,
)
from app.services.machine_findings import (
    averages_object,
    evenness_object,
    judged_object,
    left_out_objects,
    notices_objects,
    places_objects,
    swells_objects,
    targets_object,
)
from app.services.plain_json import Json, column, finite, state_object
from app.services.score_findings import score_object

__all__ = ["SCHEMA", "Json", "column", "finite", "measure_object", "pair_object",
           "parameters_object"]  # fmt: skip

SCHEMA = 1


def measure_object(analysis: TakeAnalysis, file: str, *, curves: bool = False) -> Json:
    """Describe everything measured on one take.

    Parameters
    ----------
    analysis : TakeAnalysis
    file : str
        What the object is about: a path as the caller gave it.
    curves : bool
        Whether to add the curves (pitch, tempo, loudness).

    Returns
    -------
    dict
        JSON-compatible; see ``app/schemas/measure.schema.json``.
    """
    return {
        "schema": SCHEMA,
        "file": file,
        "duration_s": finite(analysis.duration_s, 6),
        "sample_rate_hz": int(analysis.sample_rate_hz),
        "algorithm": analysis.provenance.algorithm,
        "parameters": parameters_object(analysis.provenance),
        "pitch": _pitch_object(analysis.pitch, curves),
        "notes": [
            _note_object(note) | judged_object(note, analysis.left_out) for note in analysis.notes
        ],
        "intonation": _intonation_object(analysis.intonation),
        "tempo": _tempo_object(analysis.tempo, curves) | {"places": places_objects(analysis)},
        "evenness": evenness_object(analysis.evenness),
        "dynamics": _dynamics_object(analysis.dynamics, curves)
        | {"swells": swells_objects(analysis)},
        "left_out": left_out_objects(analysis),
        "notices": notices_objects(analysis),
        "score": score_object(analysis),
    }


def parameters_object(provenance: Provenance) -> Json:
    """Give the settings a result was made with, free of NaN."""
    return {
        name: finite(value) if isinstance(value, float) else value
        for name, value in provenance.parameters.items()
    }


def _pitch_object(result: Measured[PitchTrack] | NotMeasurable, curves: bool) -> Json:
    track = result.value if isinstance(result, Measured) else None
    found = state_object(result) | {
        "hop_s": finite(track.hop_s) if track else None,
        "voiced_fraction": finite(track.voiced_fraction, 6) if track else None,
    }
    if curves:
        found["time_s"] = column(track.time_s) if track else []
        found["f0_hz"] = column(track.f0_hz, 4) if track else []
        found["confidence"] = column(track.confidence, 4) if track else []
    return found


def _note_object(judged: JudgedNote) -> Json:
    note = judged.note
    pitch = note.pitch.value if isinstance(note.pitch, Measured) else None
    deviation = judged.deviation.value if isinstance(judged.deviation, Measured) else None
    uncertainty = deviation.uncertainty_cents if deviation else None
    if uncertainty is None and pitch is not None:
        uncertainty = pitch.uncertainty_cents
    return {
        "start_s": finite(note.start_s, 6),
        "end_s": finite(note.end_s, 6),
        "midi": judged.midi,
        "name": judged.name,
        "pitch_hz": finite(pitch.pitch_hz, 4) if pitch else None,
        "deviation_cents": finite(deviation.deviation_cents, 3) if deviation else None,
        "uncertainty_cents": finite(uncertainty, 3),
        "vibrato": _vibrato_object(judged),
        "kind": str(note.kind),
        "open_string": judged.is_open_string,
        **state_object(judged.deviation),
    }


def _vibrato_object(judged: JudgedNote) -> Json:
    result = judged.note.vibrato
    found = result.value if isinstance(result, Measured) else None
    # "measured" with both numbers null is a finding too: the note has no vibrato.
    return {
        "status": result.status,
        "reason": str(result.reason) if isinstance(result, NotMeasurable) else None,
        "rate_hz": finite(found.rate_hz, 3) if found else None,
        "extent_cents": finite(found.extent_cents, 3) if found else None,
    }


def _intonation_object(result: Measured[Intonation] | NotMeasurable) -> Json:
    value = result.value if isinstance(result, Measured) else None
    accuracy = value.accuracy_cents if value else None
    measured = accuracy.value if isinstance(accuracy, Measured) else None
    return state_object(result) | {
        "reference_a_hz": finite(value.reference_a_hz, 4) if value else None,
        "reference_a_uncertainty_cents": (
            finite(value.reference_a_uncertainty_cents, 3) if value else None
        ),
        "temperament": value.temperament if value else None,
        "tonic": value.tonic if value else None,
        "offset_cents": finite(value.offset_cents, 3) if value else None,
        "accuracy_cents": finite(measured.deviation_cents, 3) if measured else None,
        "accuracy_uncertainty_cents": finite(measured.uncertainty_cents, 3) if measured else None,
        "accuracy_reason": str(accuracy.reason) if isinstance(accuracy, NotMeasurable) else None,
        "mean_absolute_cents": finite(value.mean_absolute_cents, 3) if value else None,
        "precision_cents": finite(value.precision_cents, 3) if value else None,
        "within_10_cents": finite(value.within_10_cents, 6) if value else None,
        "within_25_cents": finite(value.within_25_cents, 6) if value else None,
        "measured_share": finite(value.measured_share, 6) if value else None,
        **averages_object(value),
    }


def _tempo_object(result: Measured[Tempo] | NotMeasurable, curves: bool) -> Json:
    value = result.value if isinstance(result, Measured) else None
    found = state_object(result) | {
        "anchor": value.anchor if value else None,
        "mean_bpm": finite(value.mean_bpm, 4) if value else None,
        "mean_bpm_uncertainty": finite(value.mean_bpm_uncertainty, 4) if value else None,
        "steadiness_cv_percent": finite(value.steadiness_cv_percent, 4) if value else None,
        "steadiness_floor_percent": finite(value.steadiness_floor_percent, 4) if value else None,
        "steadiness_uncertainty_percent": (
            finite(value.steadiness_uncertainty_percent, 4) if value else None
        ),
        "drift_bpm_per_min": finite(value.drift_bpm_per_min, 4) if value else None,
        "drift_uncertainty_bpm_per_min": (
            finite(value.drift_uncertainty_bpm_per_min, 4) if value else None
        ),
        "beat_s": column(value.beat_s) if value else [],
    }
    if curves:
        found["local_time_s"] = column(value.local_time_s) if value else []
        found["local_bpm"] = column(value.local_bpm, 4) if value else []
    return found


def _dynamics_object(result: Measured[Dynamics] | NotMeasurable, curves: bool) -> Json:
    value = result.value if isinstance(result, Measured) else None
    span = value.dynamic_span_db if value else None
    found = state_object(result) | {
        "integrated_lufs": finite(value.integrated_lufs, 3) if value else None,
        "max_momentary_lufs": finite(value.max_momentary_lufs, 3) if value else None,
        "max_short_term_lufs": finite(value.max_short_term_lufs, 3) if value else None,
        "dynamic_span_db": finite(span.value, 3) if isinstance(span, Measured) else None,
        "dynamic_span_reason": str(span.reason) if isinstance(span, NotMeasurable) else None,
        "noise_floor_dbfs": finite(value.noise_floor_dbfs, 3) if value else None,
        "true_peak_dbtp": finite(value.true_peak_dbtp, 3) if value else None,
        "clipped_samples": int(value.clipped_samples) if value else None,
    }
    if curves:
        found["momentary_time_s"] = column(value.momentary_time_s) if value else []
        found["momentary_lufs"] = column(value.momentary_lufs, 3) if value else []
    return found


def pair_object(pair: NotePair, a: JudgedNote, b: JudgedNote) -> Json:
    """Describe one note found in both takes; the change is b minus a."""
    return {
        "a_start_s": finite(a.note.start_s, 6),
        "b_start_s": finite(b.note.start_s, 6),
        "midi": pair.midi,
        "change_cents": finite(pair.change_cents, 3),
        "uncertainty_cents": finite(pair.uncertainty_cents, 3),
        "a_targets": targets_object(a),
        "b_targets": targets_object(b),
    }
