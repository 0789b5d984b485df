"""The tempo of a take, where it rushes and drags, and how even its running notes are."""

from dataclasses import dataclass

from analysis.blocks import MonoSamples
from analysis.onset_sharpness import onset_sd_s, rises
from analysis.results import (
    Evenness,
    FloatArray,
    Measured,
    NotMeasurable,
    Tempo,
    TempoPlace,
)
from analysis.rhythm import find_tempo_places, measure_evenness
from analysis.stopping import StopQuestion
from analysis.take_settings import TakeSettings
from analysis.tempo import ONSET_SD_S, measure_tempo


@dataclass(frozen=True, slots=True)
class TakeRhythm:
    """What the onsets of a take tell."""

    tempo: Measured[Tempo] | NotMeasurable
    evenness: Measured[Evenness] | NotMeasurable
    places: tuple[TempoPlace, ...]


def rhythm_of_take(
    source: MonoSamples,
    onset_s: FloatArray,
    strength: FloatArray,
    settings: TakeSettings,
    should_stop: StopQuestion | None = None,
) -> TakeRhythm:
    """Measure tempo and evenness of a take.

    Parameters
    ----------
    source : MonoSamples
        The take; how sharply its notes begin says how exactly their onsets are known.
    onset_s, strength : (n,) arrays
        Its onsets.
    settings : TakeSettings
        The click goes before the stated beat; where the playing left the click, the
        stated beat alone is asked.
    should_stop : callable, optional
        Asked often.
    """
    scatter_s = ONSET_SD_S
    if len(onset_s):
        scatter_s = onset_sd_s(rises(source, onset_s, should_stop=should_stop))
    tempo = _tempo(source.duration_s, onset_s, strength, scatter_s, settings, should_stop)
    places = find_tempo_places(tempo.value) if isinstance(tempo, Measured) else ()
    return TakeRhythm(tempo, measure_evenness(onset_s, onset_sd_s=scatter_s), places)


def _tempo(  # noqa: PLR0917 - what a take is, and how it is asked
    duration_s: float,
    onset_s: FloatArray,
    strength: FloatArray,
    scatter_s: float,
    settings: TakeSettings,
    should_stop: StopQuestion | None,
) -> Measured[Tempo] | NotMeasurable:
    click_s, pulse_bpm = settings.click_beats_s(duration_s), settings.pulse_bpm
    if click_s is not None:
        by_click = measure_tempo(
            onset_s,
            strength,
            duration_s,
            reference_beat_s=click_s,
            reference_kind="click",
            onset_sd_s=scatter_s,
        )
        if isinstance(by_click, Measured) or pulse_bpm is None:
            return by_click
    return measure_tempo(
        onset_s,
        strength,
        duration_s,
        pulse_bpm=pulse_bpm,
        onset_sd_s=scatter_s,
        should_stop=should_stop,
    )
