"""The pitch track: fundamental frequency against time, voicing and octave decided.

The method is P. Boersma's (1993, 'Accurate short-term analysis of the fundamental
frequency and the harmonics-to-noise ratio of a sampled sound'): the autocorrelation of
a windowed frame divided by the autocorrelation of the window, its maxima interpolated
between the samples, and the cheapest path through the candidates of all frames.
That decides octave and voicing; the pitch itself is then read once more from all partials
(:mod:`analysis.partial_pitch`).
"""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.blocks import MonoSamples, SampleArray
from analysis.instruments import Instrument
from analysis.partial_pitch import with_all_partials
from analysis.period_search import PeriodSearch
from analysis.pitch_path import PathCosts, choose_path, with_adapted_windows
from analysis.results import Measured, NotMeasurable, PitchTrack, Provenance, Reason
from analysis.stopping import Progress, StopQuestion, part_of
from analysis.windows import WindowPlan

FloatArray = NDArray[np.float64]

ALGORITHM: Final = "pitch-2"

DEFAULT_HOP_S: Final = 0.005
LOWEST_RATE_HZ: Final = 8_000
_WORKING_RATE_HZ: Final = 50_000
_AFTER_SEARCH: Final = 0.7
_SILENT_DBFS: Final = -85.0
# The ceiling may not come too near half the sample rate: a peak needs room around it.
_HIGHEST_SHARE_OF_RATE: Final = 0.35


def track_pitch(
    samples: SampleArray | MonoSamples,
    sample_rate_hz: int,
    *,
    floor_hz: float,
    ceiling_hz: float,
    hop_s: float = DEFAULT_HOP_S,
    window_periods: float = 3.0,
    adapt_window: bool = True,
    all_partials: bool = True,
    costs: PathCosts | None = None,
    progress: Progress | None = None,
    should_stop: StopQuestion | None = None,
) -> Measured[PitchTrack] | NotMeasurable:
    """Follow the fundamental frequency of a single line.

    Parameters
    ----------
    samples : (n,) float array or MonoSamples
        The take, full scale 1.
    sample_rate_hz : int
        8 kHz to 192 kHz.
    floor_hz, ceiling_hz : float
        Range that is searched; the window is ``window_periods`` periods of the floor.
    hop_s : float
        Distance of two frames, centred on 0, ``hop_s``, 2 ``hop_s`` ... seconds.
    window_periods : float
        At least 3 for a Hann window to tell the lowest pitch from its octave.
    adapt_window : bool
        Measure pitches an octave and more above the floor again with shorter windows
        (see :class:`analysis.windows.WindowPlan`).
    all_partials : bool
        Read the pitch of each frame from all its partials in the end; without it, it is
        that of the autocorrelation.
    costs : PathCosts, optional
        What the path costs; the defaults suit music.
    progress : callable, optional
        Told the share done, 0 to 1.
    should_stop : callable, optional
        Asked for every block of frames.

    Returns
    -------
    Measured of PitchTrack, or NotMeasurable
        Not measurable when the take is silent, too short, broken or nowhere periodic.

    Raises
    ------
    ValueError
        If range, hop, window or sample rate make no sense.
    Stopped
        If ``should_stop`` said so.
    """
    _check(sample_rate_hz, floor_hz, ceiling_hz, hop_s, window_periods)
    costs = costs or PathCosts()
    source = _at_working_rate(samples, sample_rate_hz, ceiling_hz)
    ceiling_hz = min(ceiling_hz, _HIGHEST_SHARE_OF_RATE * source.sample_rate_hz)
    provenance = Provenance(
        ALGORITHM,
        {
            "floor_hz": floor_hz,
            "ceiling_hz": ceiling_hz,
            "hop_s": hop_s,
            "window_periods": window_periods,
            "adapt_window": adapt_window,
        },
    )
    if ceiling_hz <= 1.1 * floor_hz:
        return NotMeasurable(
            Reason.LOW_SAMPLE_RATE, "The sample rate is too low for this instrument.", provenance
        )
    if source.duration_s < 1.0 / floor_hz:
        return NotMeasurable(Reason.TOO_SHORT, "The take is too short to hold a pitch.", provenance)
    search = PeriodSearch(
        source,
        hop_s,
        floor_hz=floor_hz,
        ceiling_hz=ceiling_hz,
        window_periods=window_periods,
        octave_cost=costs.octave,
    )
    found = search.candidates(np.arange(int(source.duration_s / hop_s) + 1), should_stop, progress)
    if not np.all(np.isfinite(found.rms)):
        return NotMeasurable(
            Reason.INPUT_BROKEN, "The take holds samples that are not numbers.", provenance
        )
    level_dbfs = 20.0 * np.log10(np.maximum(found.rms, 1e-10))
    if float(np.max(level_dbfs)) < _SILENT_DBFS:
        return NotMeasurable(Reason.SILENT, "The take is silent.", provenance)
    track = choose_path(found, level_dbfs, ceiling_hz, hop_s, costs, should_stop=should_stop)
    if adapt_window:
        plan = WindowPlan(floor_hz, window_periods)
        track = with_adapted_windows(track, source, plan, costs, should_stop)
    if all_partials:
        track = with_all_partials(track, source, should_stop=should_stop)
    if not np.any(np.isfinite(track.f0_hz)):
        return NotMeasurable(Reason.NO_PITCH, "Nothing in the take has a pitch.", provenance)
    return Measured(track, provenance)


def track_instrument(
    samples: SampleArray,
    sample_rate_hz: int,
    instrument: Instrument,
    *,
    progress: Progress | None = None,
    should_stop: StopQuestion | None = None,
) -> tuple[Measured[PitchTrack] | NotMeasurable, Measured[PitchTrack] | NotMeasurable]:
    """Follow the pitch of an instrument twice: as it tells notes apart, and as it is read.

    Parameters
    ----------
    samples : (n,) or (n, channels) float array
        The take, full scale 1.
    sample_rate_hz : int
        8 kHz to 192 kHz.
    instrument : Instrument
        Gives range and windows.
    progress, should_stop : callable, optional
        As for :func:`track_pitch`.

    Returns
    -------
    rough, fine : Measured of PitchTrack, or NotMeasurable
        The same frames. The rough one, of single periods, shows a leap or a second sound at
        once and decides what is a note; the fine one, of all partials, is the pitch.
    """
    source = _at_working_rate(samples, sample_rate_hz, instrument.ceiling_hz)
    rough = track_pitch(
        source,
        sample_rate_hz,
        floor_hz=instrument.floor_hz,
        ceiling_hz=instrument.ceiling_hz,
        window_periods=instrument.window_periods,
        all_partials=False,
        progress=part_of(progress, 0.0, _AFTER_SEARCH),
        should_stop=should_stop,
    )
    if isinstance(rough, NotMeasurable):
        return rough, rough
    fine = with_all_partials(
        rough.value,
        source,
        progress=part_of(progress, _AFTER_SEARCH, 1.0),
        should_stop=should_stop,
    )
    return rough, Measured(fine, rough.provenance)


def _check(
    sample_rate_hz: int, floor_hz: float, ceiling_hz: float, hop_s: float, window_periods: float
) -> None:
    if sample_rate_hz < LOWEST_RATE_HZ:
        raise ValueError(f"sample rate {sample_rate_hz} Hz is under {LOWEST_RATE_HZ} Hz")
    if not 0.0 < floor_hz < ceiling_hz:
        raise ValueError(f"no range from {floor_hz} Hz to {ceiling_hz} Hz")
    if not 0.0005 <= hop_s <= 0.1:
        raise ValueError(f"hop of {hop_s} s is outside 0.5 to 100 ms")
    if window_periods < 2.0:
        raise ValueError("a window needs at least two periods of the lowest pitch")


def _at_working_rate(
    samples: SampleArray | MonoSamples, sample_rate_hz: int, ceiling_hz: float
) -> MonoSamples:
    if isinstance(samples, MonoSamples):
        return samples
    return MonoSamples(samples, sample_rate_hz, decimation_for(sample_rate_hz, ceiling_hz))


def decimation_for(sample_rate_hz: int, ceiling_hz: float) -> int:
    """Return how far a rate may be lowered so that ten harmonics of the ceiling remain."""
    enough_hz = min(max(24.0 * ceiling_hz, 11_000.0), _WORKING_RATE_HZ / 1.25)
    return max(int(sample_rate_hz // enough_hz), 1)
