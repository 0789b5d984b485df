"""The take-level measures in one table, and how each becomes a :class:`Reading`.

Everything that names, rounds or explains a take-level measure reads it from
:data:`MEASURES`: the summary beside a take, lists, comparisons and trends.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from app.services.views import AnyReading, NamedReading, NoReading, Reading

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


@dataclass(frozen=True, slots=True)
class Measure:
    """One take-level number: where it stands in the summary and how it is shown."""

    key: str
    group: str
    label: str
    unit: str
    digits: int
    explanation: str
    signed: bool = False
    scale: float = 1.0
    uncertainty_key: str = ""
    reason_key: str = ""
    smaller_is_better: bool = False


MEASURES: tuple[Measure, ...] = (
    Measure(
        "mean_absolute_cents",
        "intonation",
        "Mean deviation",
        "cents",
        1,
        "How far the notes lie from their targets on average, whichever way.",
        smaller_is_better=True,
    ),
    Measure(
        "accuracy_cents",
        "intonation",
        "Tendency",
        "cents",
        1,
        "The signed mean: plus is sharp, minus is flat.",
        signed=True,
        uncertainty_key="accuracy_uncertainty_cents",
        reason_key="accuracy_reason",
    ),
    Measure(
        "precision_cents",
        "intonation",
        "Spread",
        "cents",
        1,
        "Standard deviation of the notes around their own mean.",
        smaller_is_better=True,
    ),
    Measure(
        "within_10_cents",
        "intonation",
        "Within 10 cents",
        "%",
        0,
        "Share of the measured notes.",
        scale=100.0,
    ),
    Measure(
        "within_25_cents",
        "intonation",
        "Within 25 cents",
        "%",
        0,
        "Share of the measured notes.",
        scale=100.0,
    ),
    Measure(
        "reference_a_hz",
        "intonation",
        "A in use",
        "Hz",
        1,
        "The A4 the notes were held against.",
    ),
    Measure(
        "measured_share",
        "intonation",
        "Notes measured",
        "%",
        0,
        "Share of the notes that entered these numbers.",
        scale=100.0,
    ),
    Measure(
        "mean_bpm",
        "tempo",
        "Tempo",
        "BPM",
        1,
        "Mean tempo of the take.",
        uncertainty_key="mean_bpm_uncertainty",
    ),
    Measure(
        "steadiness_cv_percent",
        "tempo",
        "Unevenness",
        "%",
        1,
        "Variation of the beat lengths; less is steadier.",
    ),
    Measure(
        "drift_bpm_per_min",
        "tempo",
        "Drift",
        "BPM per minute",
        1,
        "Plus: it gets faster; minus: slower.",
        signed=True,
    ),
    Measure(
        "dynamic_span_db",
        "dynamics",
        "Dynamic span",
        "dB",
        1,
        "From soft to loud while playing (10th to 95th percentile of momentary loudness).",
        reason_key="dynamic_span_reason",
    ),
    Measure(
        "integrated_lufs",
        "dynamics",
        "Loudness",
        "LUFS",
        1,
        "Of the whole take, relative to full scale; not a sound pressure level.",
    ),
    Measure("max_momentary_lufs", "dynamics", "Loudest moment", "LUFS", 1, "Loudest 0.4 seconds."),
    Measure(
        "noise_floor_dbfs",
        "dynamics",
        "Noise floor",
        "dBFS",
        0,
        "Level of the quietest parts.",
    ),
    Measure("true_peak_dbtp", "dynamics", "Peak", "dBTP", 1, "Highest peak; 0 is full scale."),
    Measure(
        "clipped_samples",
        "dynamics",
        "Clipped samples",
        "",
        0,
        "Samples at full scale; more than a few are heard as distortion.",
    ),
)

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
    return tuple(
        NamedReading(m.key, m.label, reading_of(summary, m.key), m.explanation) for m in MEASURES
    )
