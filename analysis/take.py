"""Everything measured on one take, with progress, and stopping when asked to."""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis import (
    averages,
    dynamics,
    harmonics,
    intonation,
    judging,
    left_out,
    line,
    notes,
    notices,
    onsets,
    pitch,
    rhythm,
    score_rhythm,
    score_take,
    swells,
    tempo,
    vibrato,
)
from analysis.blocks import MonoSamples, SampleArray
from analysis.instruments import Instrument
from analysis.results import (
    LeftOut,
    Measured,
    Note,
    NotMeasurable,
    PitchTrack,
    Provenance,
    Reason,
    TakeAnalysis,
)
from analysis.score_take import WrittenLine
from analysis.stopping import (
    Progress,
    Stopped,
    StopQuestion,
    part_of,
    stop_if_asked,
    tell,
    telling,
)
from analysis.take_dynamics import TakeDynamics, dynamics_of_take
from analysis.take_rhythm import rhythm_of_take
from analysis.take_settings import TakeSettings
from analysis.tuning import STANDARD_A_HZ

__all__ = ["ALGORITHM", "Stopped", "TakeSettings", "WrittenLine", "analyse_take"]

FloatArray = NDArray[np.float64]

ALGORITHM: Final = "+".join(
    ("take-2", pitch.ALGORITHM, onsets.ALGORITHM, notes.ALGORITHM, vibrato.ALGORITHM,
     left_out.ALGORITHM, line.ALGORITHM, judging.ALGORITHM, intonation.ALGORITHM,
     averages.ALGORITHM, tempo.ALGORITHM, rhythm.ALGORITHM, dynamics.ALGORITHM,
     swells.ALGORITHM, notices.ALGORITHM, score_take.ALGORITHM, score_rhythm.ALGORITHM)
)  # fmt: skip
"""Version of the whole: it moves whenever any part could give another result."""

HIGHEST_RATE_HZ: Final = 768_000

_AFTER_PITCH: Final = 0.25
_AFTER_ONSETS: Final = 0.4
_AFTER_NOTES: Final = 0.7
_AFTER_LEFT_OUT: Final = 0.8
_AFTER_TEMPO: Final = 0.85


def analyse_take(
    samples: SampleArray,
    sample_rate_hz: int,
    settings: TakeSettings | None = None,
    *,
    score: WrittenLine | None = None,
    progress: Progress | None = None,
    should_stop: StopQuestion | None = None,
) -> TakeAnalysis:
    """Measure everything that can be measured on one take.

    Parameters
    ----------
    samples : (n,) or (n, channels) float array
        The take, full scale 1; may be memory-mapped. Pitch is measured on the mean of
        the channels.
    sample_rate_hz : int
        8 kHz to 192 kHz are measured fully.
    settings : TakeSettings, optional
        Instrument, tuning, pulse.
    score : WrittenLine, optional
        What is written; slips, rhythm, intonation and tempo are then told by it.
    progress : callable, optional
        Told the share done, 0 to 1.
    should_stop : callable, optional
        Asked often; when it answers yes the measuring stops.

    Returns
    -------
    TakeAnalysis
        Every part measured, or not measurable with the reason.

    Raises
    ------
    ValueError
        On settings, shapes or sample rates that make no sense.
    Stopped
        If ``should_stop`` said so.
    """
    settings = settings or TakeSettings()
    player = settings.checked()
    if samples.ndim not in (1, 2) or (samples.ndim == 2 and samples.shape[1] == 0):
        raise ValueError(f"samples must be (n,) or (n, channels), not {samples.shape}")
    if not 0 < sample_rate_hz <= HIGHEST_RATE_HZ:
        raise ValueError(f"no sample rate: {sample_rate_hz}")
    parameters = settings.as_parameters()
    provenance = Provenance(ALGORITHM, parameters)
    duration_s = len(samples) / sample_rate_hz
    refusal = _refusal(samples, sample_rate_hz, provenance, should_stop)
    if refusal is not None:
        tell(progress, 1.0)
        return TakeAnalysis(
            duration_s, sample_rate_hz, refusal, (), refusal, refusal, refusal, provenance
        )
    measuring = _Measuring(samples, sample_rate_hz, settings, player, progress, should_stop)
    result = measuring.run(provenance)
    if score is not None:
        result = score_take.hold_against_score(result, score, settings)
    tell(progress, 1.0)
    return result


_CHECKED_AT_ONCE: Final = 1 << 20


def _refusal(
    samples: SampleArray,
    sample_rate_hz: int,
    provenance: Provenance,
    should_stop: StopQuestion | None,
) -> NotMeasurable | None:
    if len(samples) == 0:
        return NotMeasurable(Reason.TOO_SHORT, "The take is empty.", provenance)
    if sample_rate_hz < pitch.LOWEST_RATE_HZ:
        return NotMeasurable(Reason.LOW_SAMPLE_RATE, "The sample rate is under 8 kHz.", provenance)
    loudest = 0.0
    for first in range(0, len(samples), _CHECKED_AT_ONCE):
        stop_if_asked(should_stop)
        piece = samples[first : first + _CHECKED_AT_ONCE]
        if not np.isfinite(piece).all():
            return NotMeasurable(
                Reason.INPUT_BROKEN, "The take holds samples that are not numbers.", provenance
            )
        loudest = max(loudest, float(np.max(np.abs(piece))))
    if loudest == 0.0:
        return NotMeasurable(Reason.SILENT, "The take is silent.", provenance)
    return None


@dataclass(frozen=True, slots=True)
class _Measuring:
    """One run over one take: its inputs, and the order in which things are measured."""

    samples: SampleArray
    sample_rate_hz: int
    settings: TakeSettings
    player: Instrument
    progress: Progress | None
    should_stop: StopQuestion | None

    def run(self, provenance: Provenance) -> TakeAnalysis:
        """Measure one thing after the other."""
        source = MonoSamples(self.samples, self.sample_rate_hz)
        rough, fine = pitch.track_instrument(
            self.samples,
            self.sample_rate_hz,
            self.player,
            progress=part_of(self.progress, 0.0, _AFTER_PITCH),
            should_stop=self.should_stop,
        )
        onset_s, strength = onsets.detect_onsets(
            source,
            self.sample_rate_hz,
            track=rough.value if isinstance(rough, Measured) and not self.player.plucked else None,
            progress=part_of(self.progress, _AFTER_PITCH, _AFTER_ONSETS),
            should_stop=self.should_stop,
        )
        found = self._notes(rough, fine, onset_s, strength, source)
        aside = self._left_out(found)
        stop_if_asked(self.should_stop)
        if judging.is_speech(found, aside):
            return self._of_speech(aside, provenance)
        judged = judging.judge_take(fine, found, aside, self.settings, self.player)
        playing = tuple(note for note in found if not left_out.is_left_out(note, aside))
        if found and self.player.single_line:
            # What turned out not to be a note (an echo, a wobble) is no onset either.
            started = np.isin(onset_s, [n.start_s for n in playing])
            onset_s, strength = onset_s[started], strength[started]
        to_tempo = part_of(self.progress, _AFTER_LEFT_OUT, _AFTER_TEMPO)
        question = telling(self.should_stop, to_tempo, len(onset_s) + 1)
        beat = rhythm_of_take(source, onset_s, strength, self.settings, question)
        tell(self.progress, _AFTER_TEMPO)
        stop_if_asked(self.should_stop)
        loud = self._dynamics(playing, aside)
        return TakeAnalysis(
            duration_s=source.duration_s,
            sample_rate_hz=self.sample_rate_hz,
            pitch=fine,
            notes=judged.notes,
            intonation=judged.intonation,
            tempo=beat.tempo,
            dynamics=loud.dynamics,
            provenance=provenance,
            left_out=aside,
            evenness=beat.evenness,
            tempo_places=beat.places,
            swells=loud.swells,
            notices=loud.notices,
        )

    def _of_speech(self, aside: tuple[LeftOut, ...], provenance: Provenance) -> TakeAnalysis:
        speech = judging.SPEECH
        return TakeAnalysis(
            duration_s=len(self.samples) / self.sample_rate_hz,
            sample_rate_hz=self.sample_rate_hz,
            pitch=speech,
            notes=(),
            intonation=speech,
            tempo=speech,
            dynamics=speech,
            provenance=provenance,
            left_out=aside,
            evenness=speech,
        )

    def _left_out(self, found: tuple[Note, ...]) -> tuple[LeftOut, ...]:
        return left_out.find_left_out(
            self.samples,
            self.sample_rate_hz,
            found,
            self.player,
            progress=part_of(self.progress, _AFTER_NOTES, _AFTER_LEFT_OUT),
            should_stop=self.should_stop,
        )

    def _dynamics(self, playing: tuple[Note, ...], aside: tuple[LeftOut, ...]) -> TakeDynamics:
        return dynamics_of_take(
            self.samples,
            self.sample_rate_hz,
            playing,
            aside,
            automatic_gain=self.settings.automatic_gain,
            with_mute=self.settings.with_mute,
            progress=part_of(self.progress, _AFTER_TEMPO, 1.0),
            should_stop=self.should_stop,
        )

    def _notes(
        self,
        rough: Measured[PitchTrack] | NotMeasurable,
        fine: Measured[PitchTrack] | NotMeasurable,
        onset_s: FloatArray,
        strength: FloatArray,
        source: MonoSamples,
    ) -> tuple[Note, ...]:
        if isinstance(rough, NotMeasurable) or isinstance(fine, NotMeasurable):
            return ()
        found = notes.find_notes(
            rough.value,
            onset_s,
            strength,
            self.player,
            source=source,
            fine=fine.value,
            progress=part_of(self.progress, _AFTER_ONSETS, _AFTER_NOTES),
            should_stop=self.should_stop,
        )
        given_hz = self.settings.reference_a_hz
        reference_a_hz = STANDARD_A_HZ if given_hz == "auto" else given_hz
        return harmonics.mark_harmonics(found, self.settings.harmonics, reference_a_hz)
