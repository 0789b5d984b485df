"""What to play, and what was truly played: the generator's inputs and outputs.

Times are seconds from the first sample, pitches Hz or (fractional) MIDI note
numbers, levels dB. Everything is a value: the same :class:`PhraseSpec` always
renders the same samples.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]

Articulation = Literal[
    "detache", "legato", "slide_in", "staccato", "pizzicato", "harmonic", "tremolo", "trill"
]
Instrument = Literal["violin", "viola", "cello", "double bass"]
Temperament = Literal["equal", "pythagorean", "just"]


@dataclass(frozen=True, slots=True)
class NoteSpec:
    """One note, double stop or rest, as it is to be played.

    Attributes
    ----------
    midi : float or None
        Note number (69 = A4); ``None`` is a rest.
    beats : float
        Written length in beats of the phrase's tempo.
    deviation_cents : float
        How far the centre pitch lies from the target; positive is sharp.
    vibrato_rate_hz, vibrato_extent_cents, vibrato_delay_s : float
        Sinusoidal in cents; the extent is half of peak to peak; the delay counts
        from the note's start.
    drift_cents : float
        Linear change of pitch over the whole note, half below and half above the
        centre, so that the centre stays where ``deviation_cents`` puts it.
    scoop_cents : float
        How far off the pitch starts at the attack; gone (to 5 %) after 60 ms.
    level_db : float
        Against the phrase's ``level_dbfs``.
    attack_s, release_s : float
        Length of the level ramps at the start and end of the bow stroke.
    articulation : str
        ``legato`` and ``slide_in`` keep the bow moving from the note before;
        ``trill`` alternates with ``trill_cents`` above, ``tremolo`` restrikes,
        both at ``repeat_rate_hz``.
    glide_s : float
        Length of the pitch change into a ``legato`` or ``slide_in`` note.
    slide_from_cents : float
        Where a ``slide_in`` begins when no note sounds before it.
    onset_shift_s : float
        Displaces this note's start against its beat (positive is late).
    second_midi, second_deviation_cents : float
        The other string of a double stop.
    """

    midi: float | None
    beats: float
    deviation_cents: float = 0.0
    vibrato_rate_hz: float = 0.0
    vibrato_extent_cents: float = 0.0
    vibrato_delay_s: float = 0.0
    drift_cents: float = 0.0
    scoop_cents: float = 0.0
    level_db: float = 0.0
    attack_s: float = 0.04
    release_s: float = 0.04
    articulation: Articulation = "detache"
    glide_s: float = 0.02
    slide_from_cents: float = -200.0
    trill_cents: float = 200.0
    repeat_rate_hz: float = 7.0
    onset_shift_s: float = 0.0
    second_midi: float | None = None
    second_deviation_cents: float = 0.0


@dataclass(frozen=True, slots=True)
class PhraseSpec:
    """A phrase and the circumstances it is recorded in.

    Attributes
    ----------
    notes : tuple of NoteSpec
    tempo : float or tuple of (beat, bpm)
        Constant, or a map with BPM linear in beats between its points and held
        outside them.
    tempo_drift_bpm_per_min : float
        Linear change of BPM with time; only with a constant tempo.
    interval_spread_percent : float
        Coefficient of variation (n - 1) that the seeded, random part of the
        inter-beat intervals has exactly (before any tempo map or drift).
    reference_a_hz : float
        Frequency of A4.
    temperament, tonic : str, int
        Targets of the notes; ``tonic`` is a pitch class (0 = C). A4 keeps
        ``reference_a_hz`` in every temperament.
    dynamics : tuple of (beat, dB)
        Hairpins: added to the notes' levels, linear between the points.
    level_dbfs : float
        RMS level of a note at 0 dB, in dB relative to an amplitude of 1.
    bow_change_s : float
        From the end of one detached note to the start of the next.
    bow_noise_db : float or None
        Bow noise against the note's level.
    pitch_jitter_cents : float
        Standard deviation of slow random pitch movement, zero on average over
        each note.
    snr_db : float or None
        White noise against the mean power of the sounding part.
    room_noise_dbfs : float or None
        RMS of a pink noise floor, present in the silences too.
    reverb_time_s, reverb_db : float
        Time to fall by 60 dB (``None``: no room), and the energy of the room's
        answer against the direct sound.
    lead_in_s, tail_s : float
        Silence before beat 0 and after the last note.
    """

    notes: tuple[NoteSpec, ...]
    tempo: float | tuple[tuple[float, float], ...] = 72.0
    tempo_drift_bpm_per_min: float = 0.0
    interval_spread_percent: float = 0.0
    reference_a_hz: float = 440.0
    temperament: Temperament = "equal"
    tonic: int = 0
    dynamics: tuple[tuple[float, float], ...] = ()
    level_dbfs: float = -20.0
    bow_change_s: float = 0.02
    bow_noise_db: float | None = -38.0
    pitch_jitter_cents: float = 0.0
    snr_db: float | None = None
    room_noise_dbfs: float | None = None
    reverb_time_s: float | None = None
    reverb_db: float = -10.0
    sample_rate_hz: int = 48_000
    instrument: Instrument = "violin"
    lead_in_s: float = 0.3
    tail_s: float = 0.5
    seed: int = 0


@dataclass(frozen=True, slots=True)
class NoteTruth:
    """One note as it truly sounds.

    ``start_s`` is where the level, rising, passes half of the note's amplitude
    (-6 dB), ``end_s`` where it passes half of it falling; into a legato or
    slide_in note it is where the pitch passes the middle between the two notes
    (in cents). ``steady_start_s`` and ``steady_end_s`` leave out attack, glide,
    scoop and release. ``centre_hz`` is the target moved by ``deviation_cents``.
    ``index`` counts in ``PhraseSpec.notes``, rests included.
    """

    index: int
    start_s: float
    end_s: float
    steady_start_s: float
    steady_end_s: float
    beat: float
    midi: float
    target_hz: float
    deviation_cents: float
    centre_hz: float
    vibrato_rate_hz: float
    vibrato_extent_cents: float
    level_db: float
    articulation: Articulation
    second_midi: float | None
    second_centre_hz: float | None


@dataclass(frozen=True, slots=True, eq=False)
class Truth:
    """What the samples of a phrase truly are.

    Attributes
    ----------
    time_s : (n,) array
        Time of each sample.
    f0_hz, second_f0_hz : (n,) arrays
        Instantaneous fundamental of the line and of the second string of double
        stops; NaN where the bow's level is more than 40 dB below its note.
    level_dbfs : (n,) array
        RMS level of the direct sound without noise, dB relative to an amplitude
        of 1; -inf in rests.
    notes : tuple of NoteTruth
    beat_s : (m,) array
        Time of every whole beat from 0 to the end of the last note.
    """

    time_s: FloatArray
    f0_hz: FloatArray
    second_f0_hz: FloatArray
    level_dbfs: FloatArray
    notes: tuple[NoteTruth, ...]
    beat_s: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class Phrase:
    """Rendered sound: ``samples`` (n,) float64 within [-1, 1], and its truth."""

    samples: FloatArray
    sample_rate_hz: int
    truth: Truth
