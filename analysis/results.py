"""What a measurement returns: a value, or the reason why there is none.

Every measure is either :class:`Measured` or :class:`NotMeasurable`; zero and
NaN are never used for 'nothing to measure'. Both carry the
:class:`Provenance` they were made with, so that a stored result can be
recognised as stale when the algorithm moves on.

Units live in the names. Times are seconds from the first sample of the take,
pitches are Hz or MIDI note numbers (69 = A4), deviations are cents (positive
is sharp), uncertainties are half the width of a 95 % interval.

Longer than 300 lines because everything that is stored is found under this one name.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Generic, Literal, TypeVar

import numpy as np
from numpy.typing import NDArray

from analysis.findings import (
    AverageUncertainty,
    Evenness,
    LeftOut,
    LeftOutReason,
    Notice,
    NoticeCode,
    ReferenceDrift,
    StringPitch,
    Swell,
    TargetKind,
    TargetReading,
    TempoPlace,
    TwoStrings,
    Verdict,
)
from analysis.score_results import (
    PlaceHabit,
    ScorePair,
    ScoreReading,
    ScoreRhythm,
    ScoreStretch,
    Slip,
    SlipKind,
    StretchKind,
    WrittenPlace,
)

__all__ = [
    "Alignment",
    "AverageUncertainty",
    "Deviation",
    "Dynamics",
    "Evenness",
    "FloatArray",
    "HabitRow",
    "Intonation",
    "JudgedNote",
    "LeftOut",
    "LeftOutReason",
    "Measured",
    "NotMeasurable",
    "Note",
    "NoteKind",
    "NotePair",
    "NotePitch",
    "Notice",
    "NoticeCode",
    "ParameterValue",
    "PitchTrack",
    "PlaceHabit",
    "Provenance",
    "Reason",
    "ReferenceDrift",
    "ScorePair",
    "ScoreReading",
    "ScoreRhythm",
    "ScoreStretch",
    "Slip",
    "SlipKind",
    "StretchKind",
    "StringPitch",
    "Swell",
    "TakeAnalysis",
    "TakeChange",
    "TargetKind",
    "TargetReading",
    "Tempo",
    "TempoPlace",
    "TwoStrings",
    "Verdict",
    "Vibrato",
    "WrittenPlace",
]

FloatArray = NDArray[np.float64]

T_co = TypeVar("T_co", covariant=True)

ParameterValue = str | int | float | bool | None


class Reason(StrEnum):
    """Why something could not be measured; stable codes, stored with results."""

    SILENT = "silent"
    TOO_SHORT = "too_short"
    NO_PITCH = "no_pitch"
    NO_NOTES = "no_notes"
    TOO_FEW_NOTES = "too_few_notes"
    TWO_NOTES_SOUND = "two_notes_sound"
    TARGET_UNCLEAR = "target_unclear"
    NO_CLEAR_PULSE = "no_clear_pulse"
    TOO_FEW_ONSETS = "too_few_onsets"
    NOT_STEADY = "not_steady"
    LEVEL_LED = "level_led"
    REFERENCE_ESTIMATED = "reference_estimated"
    NOT_A_NOTE = "not_a_note"
    NO_MATCH = "no_match"
    NO_SCORE = "no_score"
    TOO_FEW_TAKES = "too_few_takes"
    ACCOMPANIED = "accompanied"
    CLIPPED = "clipped"
    INPUT_BROKEN = "input_broken"
    LOW_SAMPLE_RATE = "low_sample_rate"
    SPEECH = "speech"
    SEVERAL_NOTES_SOUND = "several_notes_sound"
    AUTOMATIC_GAIN = "automatic_gain"


class NoteKind(StrEnum):
    """What sort of event a note is; only ``NOTE`` enters the averages."""

    NOTE = "note"
    HARMONIC = "harmonic"
    PIZZICATO = "pizzicato"
    TRILL = "trill"
    TREMOLO = "tremolo"
    GRACE = "grace"
    SLIDE = "slide"
    DOUBLE_STOP = "double_stop"


@dataclass(frozen=True, slots=True)
class Provenance:
    """How a result was made.

    Attributes
    ----------
    algorithm : str
        Name and version, e.g. ``"pitch-1"``; the version moves whenever the
        same input could give another result.
    parameters : mapping
        Every setting that influenced the result, JSON-compatible scalars only.
    """

    algorithm: str
    parameters: Mapping[str, ParameterValue] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Measured(Generic[T_co]):
    """A value that was measured, and how."""

    value: T_co
    provenance: Provenance

    @property
    def status(self) -> Literal["measured"]:
        """The word used in machine-readable output."""
        return "measured"


@dataclass(frozen=True, slots=True)
class NotMeasurable:
    """Nothing could be measured; ``sentence`` says why in plain words."""

    reason: Reason
    sentence: str
    provenance: Provenance

    @property
    def status(self) -> Literal["not_measurable"]:
        """The word used in machine-readable output."""
        return "not_measurable"


@dataclass(frozen=True, slots=True)
class PitchTrack:
    """Fundamental frequency against time.

    Attributes
    ----------
    time_s : (n,) array
        Frame centres, evenly spaced by ``hop_s``.
    f0_hz : (n,) array
        Fundamental frequency; NaN in unvoiced frames (an array has no other
        mark for 'nothing here'; everything the player sees turns it into a gap).
    confidence : (n,) array
        0 to 1: how periodic the frame is.
    level_dbfs : (n,) array
        RMS level of the frame, dB relative to a full-scale sine's peak of 1.
    hop_s : float
        Distance of two frames.
    """

    time_s: FloatArray
    f0_hz: FloatArray
    confidence: FloatArray
    level_dbfs: FloatArray
    hop_s: float

    @property
    def voiced_fraction(self) -> float:
        """Share of the frames that carry a pitch, 0 to 1."""
        return float(np.mean(np.isfinite(self.f0_hz))) if self.f0_hz.size else 0.0


@dataclass(frozen=True, slots=True)
class Vibrato:
    """A regular pitch wobble: rate in Hz, extent = half of peak to peak in cents."""

    rate_hz: float
    extent_cents: float


@dataclass(frozen=True, slots=True)
class NotePitch:
    """Where a note's pitch lies.

    ``pitch_hz`` is the geometric mean over whole vibrato cycles of the steady
    part; ``uncertainty_cents`` is half of its 95 % interval; ``drift_cents_per_s``
    is the slope inside the steady part.
    """

    pitch_hz: float
    uncertainty_cents: float
    drift_cents_per_s: float


@dataclass(frozen=True, slots=True)
class Note:
    """One note of a take, before anybody says where it should have been.

    ``midi`` is the nearest equal-tempered note number on A = 440 Hz times the
    reference in use (see :class:`JudgedNote` for the judged one).
    ``second_pitch_hz`` is the other pitch of a double stop where it could be
    measured. ``vibrato`` measured with extent 0 does not occur: 'no vibrato' is
    ``Measured(None)``, 'too short to tell' is ``NotMeasurable``.
    """

    start_s: float
    end_s: float
    steady_start_s: float
    steady_end_s: float
    kind: NoteKind
    level_dbfs: float
    pitch: Measured[NotePitch] | NotMeasurable
    vibrato: Measured[Vibrato | None] | NotMeasurable
    second_pitch_hz: float | None = None


@dataclass(frozen=True, slots=True)
class Deviation:
    """A note held against its target: signed cents (positive is sharp)."""

    deviation_cents: float
    uncertainty_cents: float


@dataclass(frozen=True, slots=True)
class JudgedNote:
    """A note with the target it was held against.

    ``midi`` and ``name`` (sharps, scientific octave: A4 = 69) name the target;
    both are ``None`` where no pitch was found. ``target_hz`` follows the
    temperament and reference A in use. ``is_open_string`` says that the target
    is an open string tuned in pure fifths, which no temperament flags.

    ``readings`` hold the note against every plausible target, ``plausible_low_cents`` and
    ``plausible_high_cents`` are the lowest and highest of those targets, in cents from
    the target in use (over all keys where no tonic is known). ``depends_on_temperament``
    says that the choice of temperament moves the target by more than the deviation.
    ``spelled`` is the name by the tonic (``'Bb4'`` in G minor), without one as ``name``.
    ``two_strings`` judges a double stop by its interval first. ``may_be_stopped`` says of
    a note taken for an open string that a finger on the string below could have played it
    too: nothing in the sound tells.
    """

    note: Note
    midi: int | None
    name: str | None
    target_hz: float | None
    is_open_string: bool
    deviation: Measured[Deviation] | NotMeasurable
    readings: tuple[TargetReading, ...] = ()
    plausible_low_cents: float = 0.0
    plausible_high_cents: float = 0.0
    depends_on_temperament: bool = False
    verdict: Verdict | None = None
    spelled: str | None = None
    two_strings: TwoStrings | None = None
    may_be_stopped: bool = False


@dataclass(frozen=True, slots=True)
class HabitRow:
    """How one written pitch came out over a take.

    ``spread_cents`` says nothing (0) for a single note; ``uncertainty_cents`` is half of
    the 95 % interval of ``mean_cents``, from the uncertainty of the notes. ``spelled`` is
    the name by the score or by the key, ``None`` in results of an older version.
    """

    midi: int
    name: str
    count: int
    mean_cents: float
    spread_cents: float
    uncertainty_cents: float = 0.0
    spelled: str | None = None


@dataclass(frozen=True, slots=True)
class Intonation:
    """Intonation of a take against its targets.

    Attributes
    ----------
    reference_a_hz, reference_a_uncertainty_cents
        The A in use; the uncertainty is ``None`` where the A was entered.
    offset_cents : float
        The A in use against 440 Hz, signed. Always shown: an estimated A hides a
        player who is flat throughout.
    accuracy_cents : Measured or NotMeasurable
        Signed mean deviation; not measurable when A was estimated from this take.
    mean_absolute_cents, precision_cents : float
        Mean size of the deviation; standard deviation around the take's own mean.
    within_10_cents, within_25_cents : float
        Shares (0 to 1) of the measured notes, weighted by nothing.
    measured_share, measured_time_share : float
        Share of the notes, and of the sounding time, that entered the averages.
    uncertainty : AverageUncertainty or None
        Of the averages; ``None`` in results of an older version.
    drift : Measured, NotMeasurable or None
        How the level of the pitch moves through the take.
    strings : tuple of StringPitch
        The open strings that were played alone, as they are tuned in the take.
    """

    reference_a_hz: float
    reference_a_uncertainty_cents: float | None
    temperament: str
    tonic: str | None
    offset_cents: float
    accuracy_cents: Measured[Deviation] | NotMeasurable
    mean_absolute_cents: float
    precision_cents: float
    within_10_cents: float
    within_25_cents: float
    measured_share: float
    measured_time_share: float
    note_count: int
    habits: tuple[HabitRow, ...]
    uncertainty: AverageUncertainty | None = None
    drift: Measured[ReferenceDrift] | NotMeasurable | None = None
    strings: tuple[StringPitch, ...] = ()


@dataclass(frozen=True, slots=True)
class Tempo:
    """Pulse of a take, and what it was anchored by.

    ``anchor`` is ``"given"``, ``"reference"``, ``"score"``, ``"click"`` or
    ``"evidence"``. ``beat_s`` are the beats' times, ``local_time_s``/``local_bpm`` the local tempo
    curve, ``steadiness_cv_percent`` the coefficient of variation (n - 1) of the
    inter-beat intervals with ``steadiness_floor_percent`` the part of it that the
    onset detector alone could make, ``drift_bpm_per_min`` the slope. The uncertainties
    are half of the 95 % intervals, ``None`` where too few beats tell.
    """

    anchor: str
    mean_bpm: float
    mean_bpm_uncertainty: float
    steadiness_cv_percent: float
    steadiness_floor_percent: float
    drift_bpm_per_min: float
    beat_s: FloatArray
    local_time_s: FloatArray
    local_bpm: FloatArray
    steadiness_uncertainty_percent: float | None = None
    drift_uncertainty_bpm_per_min: float | None = None


@dataclass(frozen=True, slots=True)
class Dynamics:
    """Loudness of a take (ITU-R BS.1770 K-weighting); never dB SPL.

    Loudness in LUFS, ``dynamic_span_db`` the spread between the 10th and 95th
    percentile of momentary loudness while playing, ``noise_floor_dbfs`` and
    ``true_peak_dbtp`` in dB relative to full scale. Entries are
    ``None`` only where the standard gives none (integrated loudness when all
    blocks are gated; short-term under 3 s).
    """

    integrated_lufs: float | None
    max_momentary_lufs: float | None
    max_short_term_lufs: float | None
    dynamic_span_db: Measured[float] | NotMeasurable
    noise_floor_dbfs: float
    true_peak_dbtp: float
    clipped_samples: int
    momentary_time_s: FloatArray
    momentary_lufs: FloatArray


@dataclass(frozen=True, slots=True)
class TakeAnalysis:
    """Everything measured on one take.

    ``left_out`` are stretches of tuning-up and talk: their notes are listed, but no
    average holds them. ``score`` holds it
    against its score, where it has one. ``notices`` say what about the recording changes
    how its numbers may be read.
    """

    duration_s: float
    sample_rate_hz: int
    pitch: Measured[PitchTrack] | NotMeasurable
    notes: tuple[JudgedNote, ...]
    intonation: Measured[Intonation] | NotMeasurable
    tempo: Measured[Tempo] | NotMeasurable
    dynamics: Measured[Dynamics] | NotMeasurable
    provenance: Provenance
    left_out: tuple[LeftOut, ...] = ()
    evenness: Measured[Evenness] | NotMeasurable | None = None
    tempo_places: tuple[TempoPlace, ...] = ()
    swells: tuple[Swell, ...] = ()
    notices: tuple[Notice, ...] = ()
    score: Measured[ScoreReading] | NotMeasurable | None = None


@dataclass(frozen=True, slots=True)
class Alignment:
    """Monotone map between two takes: equal musical moments ``a_s[i]``, ``b_s[i]``.

    Both (n,), seconds, non-decreasing. ``confidence`` 0 to 1.
    """

    a_s: FloatArray
    b_s: FloatArray
    confidence: float


@dataclass(frozen=True, slots=True)
class NotePair:
    """The same written note in two takes; ``change_cents`` is b minus a."""

    a_index: int
    b_index: int
    midi: int
    change_cents: float
    uncertainty_cents: float


@dataclass(frozen=True, slots=True)
class TakeChange:
    """Two takes of one passage, note against note; all changes are b minus a."""

    alignment: Alignment
    notes: tuple[NotePair, ...]
    a_only: tuple[int, ...]
    b_only: tuple[int, ...]
