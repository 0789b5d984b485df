"""What is answered by ear, as JSON: marked problems carried over, and blind questions.

``app/schemas/follow.schema.json`` describes the objects.
"""

from collections.abc import Iterable

from app.journal.blind_ear import BlindTrial
from app.journal.records import Marker
from app.services.following_json import SCHEMA, iso_day, reading_object
from app.services.following_views import CarriedMarker, EarRow, LifeRow
from app.services.plain_json import Json, finite


def carried_object(take_id: str, carried: Iterable[CarriedMarker]) -> Json:
    """Describe the markers of earlier takes at their place in a take."""
    return {
        "schema": SCHEMA,
        "take": take_id,
        "markers": [
            _marker(one.marker)
            | {
                "from_day": one.from_day.isoformat(),
                "here_start_s": finite(one.start_s, 3),
                "here_end_s": finite(one.end_s, 3),
                "confidence": finite(one.confidence, 4),
                "measured": {
                    "word": one.measured.word,
                    "then": reading_object(one.measured.then),
                    "now": reading_object(one.measured.now),
                    "sentence": one.measured.sentence,
                },
                "answer": one.answer,
            }
            for one in carried
        ],
    }


def lives_object(passage_id: str, rows: Iterable[LifeRow]) -> Json:
    """Describe the lives of the problems of a passage."""
    return {
        "schema": SCHEMA,
        "passage": passage_id,
        "problems": [
            _marker(row.marker)
            | {
                "first_heard": row.life.first_heard.isoformat(),
                "last_heard": row.life.last_heard.isoformat(),
                "days_worked_on": row.life.days_worked_on,
                "settled_on": iso_day(row.life.settled_on),
                "returned_on": iso_day(row.life.returned_on),
                "times_returned": row.life.times_returned,
                "stage": str(row.life.stage),
                "sentence": row.sentence,
            }
            for row in rows
        ],
    }


def trial_object(trial: BlindTrial) -> Json:
    """Describe a blind question; without dates."""
    return {
        "schema": SCHEMA,
        "trial": trial.id,
        "passage": trial.passage_id,
        "question": str(trial.question),
        "first_take": trial.first_take_id,
        "second_take": trial.second_take_id,
        "seed": trial.seed,
        "choice": None if trial.choice is None else str(trial.choice),
    }


def ear_object(rows: Iterable[EarRow]) -> Json:
    """Describe whether the ear and the measurements agree."""
    return {
        "schema": SCHEMA,
        "questions": [
            {
                "question": str(row.question),
                "answered": row.result.answered,
                "comparable": row.result.comparable,
                "alike": row.result.alike,
                "chance": finite(row.result.chance, 6),
                "share_low": finite(row.result.share_low, 4),
                "share_high": finite(row.result.share_high, 4),
                "word": str(row.result.word),
                "sentence": row.sentence,
            }
            for row in rows
        ],
    }


def _marker(marker: Marker) -> Json:
    return {
        "marker": marker.id,
        "category": marker.category,
        "weight": marker.weight,
        "text": marker.text,
        "state": str(marker.state),
        "start_s": finite(marker.start_s, 3),
        "end_s": finite(marker.end_s, 3),
    }
