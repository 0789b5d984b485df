"""The parts of the machine-readable object that list places, strings, habits and notices."""

from analysis.results import (
    Evenness,
    Intonation,
    JudgedNote,
    LeftOut,
    Measured,
    NotMeasurable,
    ReferenceDrift,
    TakeAnalysis,
    TargetReading,
)
from analysis.spelling import spelled_name
from app.services.plain_json import Json, finite, state_object


def judged_object(judged: JudgedNote, left_out: tuple[LeftOut, ...]) -> Json:
    """Give what a note's plausible targets say of it."""
    is_judged = isinstance(judged.deviation, Measured)
    return {
        "spelled": judged.spelled,
        "readings": [_reading_object(reading) for reading in judged.readings],
        "plausible_low_cents": finite(judged.plausible_low_cents, 3) if is_judged else None,
        "plausible_high_cents": finite(judged.plausible_high_cents, 3) if is_judged else None,
        "depends_on_temperament": judged.depends_on_temperament,
        "verdict": str(judged.verdict) if judged.verdict else None,
        "double_stop": _two_strings_object(judged),
        "may_be_stopped": judged.may_be_stopped,
        "left_out": is_aside(judged, left_out),
    }


def targets_object(judged: JudgedNote) -> Json:
    """Give a note's deviation and its readings against every plausible target."""
    deviation = judged.deviation.value if isinstance(judged.deviation, Measured) else None
    return {
        "deviation_cents": finite(deviation.deviation_cents, 3) if deviation else None,
        "readings": [_reading_object(reading) for reading in judged.readings],
        "verdict": str(judged.verdict) if judged.verdict else None,
    }


def _reading_object(reading: TargetReading) -> Json:
    return {
        "target": str(reading.target),
        "string": reading.string or None,
        "deviation_cents": finite(reading.deviation_cents, 3),
        "uncertainty_cents": finite(reading.uncertainty_cents, 3),
    }


def _two_strings_object(judged: JudgedNote) -> Json | None:
    found = judged.two_strings
    if found is None:
        return None
    return {
        "interval": found.interval,
        "semitones": found.semitones,
        "interval_cents": finite(found.interval_cents, 3),
        "uncertainty_cents": finite(found.uncertainty_cents, 3),
        "readings": [_reading_object(reading) for reading in found.readings],
        "verdict": str(found.verdict),
        "upper_midi": found.upper_midi,
        "upper_name": found.upper_name,
        "upper_pitch_hz": finite(judged.note.second_pitch_hz, 4),
        "upper_deviation_cents": finite(found.upper_deviation_cents, 3),
        "upper_uncertainty_cents": finite(found.upper_uncertainty_cents, 3),
    }


def is_aside(judged: JudgedNote, left_out: tuple[LeftOut, ...]) -> bool:
    """Say whether a note lies in a stretch that is left out."""
    middle_s = (judged.note.start_s + judged.note.end_s) / 2
    return any(span.start_s <= middle_s <= span.end_s for span in left_out)


def averages_object(value: Intonation | None) -> Json:
    """Give how sure the averages are, what they rest on, and what lies behind them."""
    sure = value.uncertainty if value else None
    reference_hz = None
    if value and value.reference_a_uncertainty_cents is not None:
        wider = 2.0 ** (value.reference_a_uncertainty_cents / 1200.0) - 1.0
        reference_hz = value.reference_a_hz * wider
    return {
        "mean_absolute_uncertainty_cents": finite(sure.mean_absolute_cents, 3) if sure else None,
        "precision_uncertainty_cents": finite(sure.precision_cents, 3) if sure else None,
        "within_10_uncertainty": finite(sure.within_10_cents, 6) if sure else None,
        "within_25_uncertainty": finite(sure.within_25_cents, 6) if sure else None,
        "reference_a_uncertainty_hz": finite(reference_hz, 4),
        "measured_time_share": finite(value.measured_time_share, 6) if value else None,
        "note_count": int(value.note_count) if value else None,
        **_drift_object(value.drift if value else None),
        "habits": [_habit_object(value, index) for index in range(len(value.habits))]
        if value
        else [],
        "strings": [
            {
                "midi": string.midi,
                "name": string.name,
                "pitch_hz": finite(string.pitch_hz, 4),
                "deviation_cents": finite(string.deviation_cents, 3),
                "uncertainty_cents": finite(string.uncertainty_cents, 3),
                "count": string.count,
            }
            for string in (value.strings if value else ())
        ],
    }


def _drift_object(result: Measured[ReferenceDrift] | NotMeasurable | None) -> Json:
    value = result.value if isinstance(result, Measured) else None
    return {
        "drift_cents_per_min": finite(value.cents_per_min, 3) if value else None,
        "drift_uncertainty_cents_per_min": (
            finite(value.uncertainty_cents_per_min, 3) if value else None
        ),
        "drift_reason": str(result.reason) if isinstance(result, NotMeasurable) else None,
    }


def _habit_object(value: Intonation, index: int) -> Json:
    row = value.habits[index]
    return {
        "midi": row.midi,
        "name": row.name,
        "spelled": row.spelled or spelled_name(row.midi, value.tonic),
        "count": row.count,
        "mean_cents": finite(row.mean_cents, 3),
        "uncertainty_cents": finite(row.uncertainty_cents, 3),
        "spread_cents": finite(row.spread_cents, 3) if row.count > 1 else None,
    }


def places_objects(analysis: TakeAnalysis) -> list[Json]:
    """List where a take rushes or drags."""
    return [
        {
            "start_s": finite(place.start_s, 4),
            "end_s": finite(place.end_s, 4),
            "change_percent": finite(place.change_percent, 3),
            "kind": place.kind,
        }
        for place in analysis.tempo_places
    ]


def swells_objects(analysis: TakeAnalysis) -> list[Json]:
    """List the crescendos and diminuendos of a take."""
    return [
        {
            "start_s": finite(swell.start_s, 4),
            "end_s": finite(swell.end_s, 4),
            "change_db": finite(swell.change_db, 3),
            "kind": swell.kind,
        }
        for swell in analysis.swells
    ]


def evenness_object(result: Measured[Evenness] | NotMeasurable | None) -> Json:
    """Give how evenly running notes follow each other."""
    value = result.value if isinstance(result, Measured) else None
    found = state_object(result) if result is not None else dict(_NOT_LOOKED_FOR)
    return found | {
        "spread_ms": finite(value.spread_ms, 3) if value else None,
        "spread_percent": finite(value.spread_percent, 3) if value else None,
        "floor_ms": finite(value.floor_ms, 3) if value else None,
        "run_count": value.run_count if value else None,
        "interval_count": value.interval_count if value else None,
    }


_NOT_LOOKED_FOR: Json = {
    "status": "not_measurable",
    "reason": "too_few_onsets",
    "sentence": "Nothing was measured on this take.",
}


def left_out_objects(analysis: TakeAnalysis) -> list[Json]:
    """List the stretches that enter no average."""
    return [
        {
            "start_s": finite(span.start_s, 4),
            "end_s": finite(span.end_s, 4),
            "reason": str(span.reason),
        }
        for span in analysis.left_out
    ]


def notices_objects(analysis: TakeAnalysis) -> list[Json]:
    """List what changes how the numbers may be read."""
    return [{"code": str(n.code), "sentence": n.sentence} for n in analysis.notices]
