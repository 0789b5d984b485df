"""The take-level measures in one table, and how each becomes a :class:`Reading`.

Everything that names, rounds or explains a take-level measure reads it from
:data:`app.services.measures.MEASURES`: the summary beside a take, lists, comparisons and trends.
"""

from collections.abc import Mapping

from app.services.measures import MEASURES, Measure
from app.services.reading_views import AnyReading, NamedReading, NoReading, Reading

Summary = Mapping[str, object]

NOT_MEASURED = "Not measured yet."
_NO_NUMBER = "This take has no such number."
# The reasons of numbers that can be missing while the rest of their group is there.
_PART_SENTENCES = {
    "reference_estimated": "The A was estimated from this take, so it shows no general offset.",
    "too_short": "The take is too short for it.",
    "too_few_notes": "Too few notes were measured.",
    "silent": "Nothing is loud enough.",
    "clipped": "The recording is overdriven.",
}


_BY_KEY = {measure.key: measure for measure in MEASURES}

TREND_KEYS = (
    "mean_absolute_cents",
    "precision_cents",
    "accuracy_cents",
    "within_10_cents",
    "mean_bpm",
    "steadiness_cv_percent",
    "dynamic_span_db",
)
CHANGE_KEYS = (
    "accuracy_cents",
    "mean_absolute_cents",
    "precision_cents",
    "mean_bpm",
    "steadiness_cv_percent",
    "dynamic_span_db",
)


def measure_named(key: str) -> Measure:
    """Give a measure by its key; KeyError where there is none."""
    return _BY_KEY[key]


def reading_of(summary: Summary, key: str) -> AnyReading:
    """Give one number of a stored summary, or the sentence why there is none.

    Parameters
    ----------
    summary : mapping
        As :func:`app.services.machine_readable.measure_object` makes it; empty
        where the take was not measured.
    key : str
        One of the keys of :data:`MEASURES`.
    """
    measure = measure_named(key)
    group = summary.get(measure.group)
    if not isinstance(group, Mapping):
        return NoReading(NOT_MEASURED)
    value = group.get(measure.key)
    if not isinstance(value, int | float):
        return NoReading(_sentence(group, measure))
    uncertainty = group.get(measure.uncertainty_key) if measure.uncertainty_key else None
    return Reading(
        value=float(value) * measure.scale,
        unit=measure.unit,
        uncertainty=(
            float(uncertainty) * measure.scale if isinstance(uncertainty, int | float) else None
        ),
        digits=measure.digits,
        signed=measure.signed,
    )


def _sentence(group: Mapping[str, object], measure: Measure) -> str:
    sentence = group.get("sentence")
    if isinstance(sentence, str) and sentence:
        return sentence
    reason = group.get(measure.reason_key) if measure.reason_key else None
    return _PART_SENTENCES.get(str(reason), _NO_NUMBER)


def named_readings(summary: Summary) -> tuple[NamedReading, ...]:
    """Give every take-level number of a stored summary, in the order of the table."""
    basis = basis_text(summary)
    return tuple(
        NamedReading(
            m.key,
            m.label,
            reading_of(summary, m.key),
            f"{m.explanation} From {basis}." if m.is_average and basis else m.explanation,
            basis if m.is_average else "",
        )
        for m in MEASURES
    )


def basis_text(summary: Summary) -> str:
    """Say what the averages over notes rest on; empty where nothing was measured.

    Leaving out fast notes must not flatter: the shares stand beside every average.
    """
    group = summary.get("intonation")
    if not isinstance(group, Mapping):
        return ""
    notes, time = group.get("measured_share"), group.get("measured_time_share")
    if not isinstance(notes, int | float) or not isinstance(time, int | float):
        return ""
    return f"{100 * notes:.0f} % of the notes, {100 * time:.0f} % of the sounding time"
