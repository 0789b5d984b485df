"""The table of the take-level measures: where each stands, its words, unit and decimals.

Longer than a module should be only by its table.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Measure:
    """One take-level number: where it stands in the summary and how it is shown.

    ``is_average`` marks an average over notes: what it rests on is shown beside it.
    """

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
    is_average: bool = False


MEASURES: tuple[Measure, ...] = (
    Measure(
        "mean_absolute_cents",
        "intonation",
        "Mean deviation",
        "cents",
        1,
        "How far the notes lie from their targets on average, whichever way.",
        smaller_is_better=True,
        uncertainty_key="mean_absolute_uncertainty_cents",
        is_average=True,
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
        is_average=True,
    ),
    Measure(
        "precision_cents",
        "intonation",
        "Spread",
        "cents",
        1,
        "Standard deviation of the notes around their own mean.",
        smaller_is_better=True,
        uncertainty_key="precision_uncertainty_cents",
        is_average=True,
    ),
    Measure(
        "within_10_cents",
        "intonation",
        "Within 10 cents",
        "%",
        0,
        "Share of the measured notes.",
        scale=100.0,
        uncertainty_key="within_10_uncertainty",
        is_average=True,
    ),
    Measure(
        "within_25_cents",
        "intonation",
        "Within 25 cents",
        "%",
        0,
        "Share of the measured notes.",
        scale=100.0,
        uncertainty_key="within_25_uncertainty",
        is_average=True,
    ),
    Measure(
        "reference_a_hz",
        "intonation",
        "A in use",
        "Hz",
        1,
        "The A4 the notes were held against.",
        uncertainty_key="reference_a_uncertainty_hz",
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
        "measured_time_share",
        "intonation",
        "Time measured",
        "%",
        0,
        "Share of the sounding time that entered these numbers.",
        scale=100.0,
    ),
    Measure(
        "offset_cents",
        "intonation",
        "A against 440 Hz",
        "cents",
        1,
        "How far the A in use lies from 440 Hz. An A estimated from the take hides a take"
        " that is flat or sharp throughout.",
        signed=True,
        uncertainty_key="reference_a_uncertainty_cents",
    ),
    Measure(
        "drift_cents_per_min",
        "intonation",
        "Drift of the pitch",
        "cents per minute",
        1,
        "Plus: the take goes sharp from its start to its end; minus: flat.",
        signed=True,
        uncertainty_key="drift_uncertainty_cents_per_min",
        reason_key="drift_reason",
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
        uncertainty_key="steadiness_uncertainty_percent",
    ),
    Measure(
        "steadiness_floor_percent",
        "tempo",
        "Least unevenness seen",
        "%",
        1,
        "What placing the notes' beginnings adds to the unevenness by itself.",
    ),
    Measure(
        "drift_bpm_per_min",
        "tempo",
        "Drift",
        "BPM per minute",
        1,
        "Plus: it gets faster; minus: slower.",
        signed=True,
        uncertainty_key="drift_uncertainty_bpm_per_min",
    ),
    Measure(
        "spread_ms",
        "evenness",
        "Running notes",
        "ms",
        0,
        "Spread of the intervals inside runs of equally long notes; less is more even.",
    ),
    Measure(
        "floor_ms",
        "evenness",
        "Least spread seen",
        "ms",
        0,
        "What placing the notes' beginnings adds to that spread by itself.",
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
