"""Following a passage as JSON: fixed names, ``null`` where nothing was measured.

``app/schemas/follow.schema.json`` describes the objects with their units.
"""

from collections.abc import Mapping
from datetime import date

from app.journal.bounds import PassageBounds
from app.journal.records import Passage
from app.services.following_views import (
    AlignedPair,
    ChangeReport,
    LadderView,
    OnlyPart,
    PassageProposal,
    RepetitionsView,
    ShapeView,
    VerdictRow,
)
from app.services.passages import passage_title
from app.services.plain_json import Json, column, finite
from app.services.reading_views import AnyReading, Reading

SCHEMA = 1


def reading_object(reading: AnyReading) -> Json:
    """Describe a number with its unit and uncertainty, or why there is none."""
    if not isinstance(reading, Reading):
        return {
            "value": None,
            "unit": None,
            "uncertainty": None,
            "interval": None,
            "sentence": reading.sentence,
        }
    low_high = reading.interval
    return {
        "value": finite(reading.value, 4),
        "unit": reading.unit,
        "uncertainty": finite(reading.uncertainty, 4),
        "interval": None if low_high is None else [finite(end, 4) for end in low_high],
        "sentence": None,
    }


def alignment_object(pair: AlignedPair) -> Json:
    """Describe the alignment of two takes of the journal, with what was left out."""
    return {
        "schema": SCHEMA,
        "a": pair.take_a,
        "b": pair.take_b,
        "aligned": pair.aligned,
        "sentence": pair.sentence or None,
        "confidence": finite(pair.confidence, 4) if pair.aligned else None,
        "a_s": column(pair.a_s, 4),
        "b_s": column(pair.b_s, 4),
        "only_a": [_only(part) for part in pair.only_a],
        "only_b": [_only(part) for part in pair.only_b],
    }


def change_object(report: ChangeReport) -> Json:
    """Describe all changes of a passage."""
    return {
        "schema": SCHEMA,
        "passage": report.passage.id,
        "title": passage_title(report.passage),
        "sentence": report.sentence or None,
        "changes": [_verdict(row) for row in report.rows],
        "left_out": list(report.left_out),
        "notices": list(report.notices),
    }


def bounds_object(bounds: PassageBounds) -> Json:
    """Describe the player's bounds of a passage."""
    return {
        "passage": bounds.id,
        "mean_absolute_cents": finite(bounds.mean_absolute_cents, 3),
        "steadiness_cv_percent": finite(bounds.steadiness_cv_percent, 3),
        "target_bpm": finite(bounds.target_bpm, 3),
        "step_bpm": finite(bounds.step_bpm, 3),
        "is_rubato": bounds.is_rubato,
    }


def passage_object(passage: Passage) -> Json:
    """Describe a passage and how its new takes are measured."""
    settings = passage.settings
    return {
        "passage": passage.id,
        "piece": passage.piece,
        "name": passage.name,
        "bars": passage.bars,
        "instrument": settings.instrument,
        "temperament": settings.temperament,
        "tonic": settings.tonic,
        "reference_a_hz": finite(settings.reference_a_hz, 3),
        "tempo_bpm": finite(settings.pulse_bpm, 3),
        "open_strings": list(settings.open_strings) if settings.open_strings else None,
        "is_accompanied": settings.accompanied,
        "has_score": passage.score is not None,
    }


def ladder_object(view: LadderView) -> Json:
    """Describe a passage's way up to its target."""
    climbed = view.ladder
    return {
        "schema": SCHEMA,
        "passage": view.passage.id,
        "bounds": bounds_object(view.bounds),
        "held_bpm": finite(climbed.held_bpm, 3),
        "next_bpm": finite(climbed.next_bpm, 3),
        "target_bpm": finite(climbed.target_bpm, 3),
        "rungs": [
            {
                "bpm": finite(rung.bpm, 3),
                "days": [day.isoformat() for day in rung.days],
                "held_on": iso_day(rung.held_on),
            }
            for rung in climbed.rungs
        ],
        "judged": climbed.judged,
        "outside": climbed.outside,
        "not_judged": climbed.not_judged,
        "sentence": view.sentence,
    }


def repetitions_object(view: RepetitionsView) -> Json:
    """Describe the runs through a passage in a take."""
    return {
        "schema": SCHEMA,
        "take": view.take.id,
        "passage": view.passage.id,
        "runs": [
            {
                "number": run.number,
                "start_s": finite(run.start_s, 3),
                "end_s": finite(run.end_s, 3),
                "complete": run.complete,
                "bpm": reading_object(run.bpm),
                "mean_absolute_cents": reading_object(run.mean_absolute_cents),
                "steadiness_cv_percent": reading_object(run.steadiness),
                "holds": run.holds,
            }
            for run in view.runs
        ],
        "complete": view.complete,
        "longest_in_a_row": view.longest_in_a_row,
        "in_a_row_now": view.in_a_row_now,
        "sentence": view.sentence,
    }


def shape_object(view: ShapeView) -> Json:
    """Describe the shapes of two takes."""
    return {
        "schema": SCHEMA,
        "a": view.take_a,
        "b": view.take_b,
        "time_s": column(view.time_s, 3),
        "a_db": column(view.a_db, 3),
        "b_db": column(view.b_db, 3),
        "offset_db": finite(view.offset_db, 3),
        "likeness": reading_object(view.likeness),
        "hairpins": [
            {
                "start_s": finite(one.start_s, 3),
                "end_s": finite(one.end_s, 3),
                "kind": one.kind,
                "a": reading_object(one.a),
                "b": reading_object(one.b),
            }
            for one in view.hairpins
        ],
        "notices": list(view.notices),
        "sentence": view.sentence,
    }


def proposal_object(found: PassageProposal) -> Json:
    """Describe which passage a take is."""
    return {
        "schema": SCHEMA,
        "passage": found.passage_id,
        "confidence": finite(found.confidence, 4),
        "ranked": [
            {
                "passage": one.passage.id,
                "title": passage_title(one.passage),
                "confidence": finite(one.confidence, 4),
            }
            for one in found.ranked
        ],
        "sentence": found.sentence,
    }


def _only(part: OnlyPart) -> Mapping[str, object]:
    return {
        "start_s": finite(part.start_s, 3),
        "end_s": finite(part.end_s, 3),
        "kind": part.kind,
        "sentence": part.sentence,
    }


def _verdict(row: VerdictRow) -> Json:
    return {
        "scope": row.scope,
        "place": row.place or None,
        "at_s": finite(row.at_s, 3),
        "midi": row.midi,
        "measure": row.key,
        "label": row.label,
        "period": row.period,
        "a_days": [row.a_from.isoformat(), row.a_to.isoformat()],
        "b_days": [row.b_from.isoformat(), row.b_to.isoformat()],
        "a": reading_object(row.a),
        "b": reading_object(row.b),
        "change": reading_object(row.change),
        "scatter": reading_object(row.scatter),
        "practice_days_a": row.days_a,
        "practice_days_b": row.days_b,
        "word": row.word,
        "is_clear": row.is_clear,
    }


def iso_day(day: date | None) -> str | None:
    """Write a day, or ``null`` where there is none."""
    return None if day is None else day.isoformat()
