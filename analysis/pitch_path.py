"""From the candidates of all frames to one pitch track."""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.ndimage import maximum_filter1d, minimum_filter1d

from analysis.blocks import MonoSamples
from analysis.period_search import Candidates, PeriodSearch
from analysis.periodicity import best_path
from analysis.results import PitchTrack
from analysis.stopping import StopQuestion, stop_if_asked
from analysis.windows import WindowPlan

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]

_LOUDEST_PERCENT: Final = 95.0
_QUIETEST_LOUD_RMS: Final = 10.0 ** (-85.0 / 20.0)
_LONGEST_SLIP_S: Final = 0.25
_SLIP_OCTAVES: Final = np.array([1.0, np.log2(3.0)])
_SLIP_WIDTH: Final = 0.04
_LEAST_SLIP_STRENGTH: Final = 0.6
_COSTS_MADE_FOR_HOP_S: Final = 0.01
# A frame may take up a pitch its neighbours had, give or take this ratio.
_NEIGHBOURHOOD: Final = 1.06
_FRAMES_AT_ONCE: Final = 60_000


@dataclass(frozen=True, slots=True)
class PathCosts:
    """What the path through the candidates costs; strengths are 0 to 1.

    The costs of a step are those for steps of 10 ms and are scaled to the hop.
    """

    silence_ratio: float = 0.004
    voicing_threshold: float = 0.45
    octave: float = 0.12
    octave_jump: float = 0.35
    voicing: float = 0.14


def choose_path(
    found: Candidates,
    level_dbfs: FloatArray,
    ceiling_hz: float,
    hop_s: float,
    costs: PathCosts,
    *,
    should_stop: StopQuestion | None = None,
) -> PitchTrack:
    """Decide voicing and octave of every frame by the cheapest path through all frames.

    Parameters
    ----------
    found : Candidates
        For frames that follow each other without a gap.
    level_dbfs : (frames,) array
        Their levels.
    ceiling_hz : float
        Against which an octave's cost is counted.
    hop_s : float
        Distance of two frames.
    costs : PathCosts
        What the path costs.
    should_stop : callable, optional
        Asked between the steps.

    Returns
    -------
    PitchTrack
        NaN where unvoiced; the confidence there is that of the strongest candidate.
    """
    log2_frequency, score, unvoiced = _scores(found, ceiling_hz, costs, should_stop)
    stop_if_asked(should_stop)
    scale = _COSTS_MADE_FOR_HOP_S / hop_s
    path = best_path(
        log2_frequency, score, unvoiced, costs.octave_jump * scale, costs.voicing * scale
    )
    stop_if_asked(should_stop)
    _mend_octave_slips(path, log2_frequency, found.strength, round(_LONGEST_SLIP_S / hop_s))
    rows = np.arange(len(path))
    chosen = np.maximum(path, 0)
    period_s = np.where(path >= 0, found.period_s[rows, chosen], np.nan)
    return PitchTrack(
        time_s=(rows * hop_s).astype(np.float64),
        f0_hz=1.0 / period_s,
        confidence=np.where(path >= 0, found.strength[rows, chosen], found.strength[:, 0]),
        level_dbfs=level_dbfs,
        hop_s=hop_s,
    )


def _scores(
    found: Candidates, ceiling_hz: float, costs: PathCosts, should_stop: StopQuestion | None
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return log2 of the frequencies, the candidates' scores, and the score of no pitch."""
    loud = max(float(np.percentile(found.rms, _LOUDEST_PERCENT)), _QUIETEST_LOUD_RMS)
    log2_frequency, score = np.empty_like(found.period_s), np.empty_like(found.period_s)
    unvoiced = np.empty_like(found.rms)
    for first in range(0, len(found.rms), _FRAMES_AT_ONCE):
        stop_if_asked(should_stop)
        part = slice(first, first + _FRAMES_AT_ONCE)
        period_s = found.period_s[part]
        voiced = period_s > 0.0
        frequency = np.divide(1.0, period_s, out=np.ones_like(period_s), where=voiced)
        log2_frequency[part] = np.log2(frequency)
        lower = np.log2(ceiling_hz) - log2_frequency[part]
        score[part] = np.where(voiced, found.strength[part] - costs.octave * lower, -np.inf)
        level = found.rms[part] / loud
        quietness = 2.0 - level * (1.0 + costs.voicing_threshold) / costs.silence_ratio
        best = np.argmax(score[part], axis=1)
        # Lowness shall decide between candidates, not between having a pitch and having none.
        unvoiced[part] = (
            costs.voicing_threshold
            + np.maximum(0.0, quietness)
            - costs.octave * lower[np.arange(len(best)), best]
        )
    return log2_frequency, score, unvoiced


def _mend_octave_slips(
    path: IntArray, log2_frequency: FloatArray, strength: FloatArray, longest: int
) -> None:
    """Raise short stretches that lie an octave or twelfth under what they run into.

    Where a note begins in the reverberation of another, both together repeat only after
    a common period; the path then starts too low and jumps when the old note has died
    away. If the higher pitch is there as well all the while, it was the note.
    """
    rows = np.arange(len(path))
    pitch = np.where(path >= 0, log2_frequency[rows, np.maximum(path, 0)], np.nan)
    jump = np.abs(np.diff(pitch))
    slips: list[int] = np.flatnonzero(
        np.min(np.abs(jump[:, None] - _SLIP_OCTAVES), axis=1) < _SLIP_WIDTH
    ).tolist()
    for edge in slips:
        low_first = pitch[edge] < pitch[edge + 1]
        step = -1 if low_first else 1
        frame = edge if low_first else edge + 1
        above = abs(float(pitch[edge + 1] - pitch[edge]))
        stretch: list[int] = []
        picks: list[int] = []
        while 0 <= frame < len(path) and len(stretch) <= longest:
            if not np.isfinite(pitch[frame]):
                break
            if stretch and abs(pitch[frame] - pitch[stretch[-1]]) > _SLIP_WIDTH:
                break
            away = np.abs(log2_frequency[frame] - pitch[frame] - above)
            away[strength[frame] <= 0.0] = np.inf
            stretch.append(frame)
            picks.append(int(np.argmin(away)) if np.min(away) < _SLIP_WIDTH else -1)
            frame += step
        held = [strength[f, p] if p >= 0 else 0.0 for f, p in zip(stretch, picks, strict=True)]
        if not stretch or len(stretch) > longest or np.median(held) < _LEAST_SLIP_STRENGTH:
            continue
        for f, p in zip(stretch, picks, strict=True):
            path[f] = p
            pitch[f] = log2_frequency[f, p] if p >= 0 else np.nan


def with_adapted_windows(
    track: PitchTrack,
    source: MonoSamples,
    plan: WindowPlan,
    costs: PathCosts,
    should_stop: StopQuestion | None = None,
) -> PitchTrack:
    """Measure the higher pitches of a track again with the shorter windows they allow.

    The octave stays what the longest window decided: only pitches that it found within
    half of its length are considered. Voicing stays as well.
    """
    halvings = plan.halvings_for(track.f0_hz)
    reach = 2 * round(0.25 * plan.longest_s / track.hop_s) + 1
    lowest = minimum_filter1d(np.nan_to_num(track.f0_hz, nan=np.inf), reach) / _NEIGHBOURHOOD
    highest = maximum_filter1d(np.nan_to_num(track.f0_hz, nan=0.0), reach) * _NEIGHBOURHOOD
    f0_hz, confidence, level = track.f0_hz.copy(), track.confidence.copy(), track.level_dbfs.copy()
    voiced = np.isfinite(track.f0_hz)
    for halving in range(1, plan.halvings + 1):
        frames = np.flatnonzero(voiced & (halvings == halving))
        if not frames.size:
            continue
        floor_hz = plan.floor_hz * 2.0**halving
        ceiling_hz = float(np.max(highest[frames])) * 1.02
        search = PeriodSearch(
            source,
            track.hop_s,
            floor_hz=floor_hz,
            ceiling_hz=ceiling_hz,
            window_periods=plan.periods,
            octave_cost=costs.octave,
        )
        found = search.candidates(frames, should_stop)
        pitch, strength = _strongest_within(found, lowest[frames], highest[frames], costs.octave)
        better = np.isfinite(pitch)
        f0_hz[frames[better]] = pitch[better]
        confidence[frames[better]] = strength[better]
        level[frames] = 20.0 * np.log10(np.maximum(found.rms, 1e-10))
    return replace(track, f0_hz=f0_hz, confidence=confidence, level_dbfs=level)


def _strongest_within(
    found: Candidates, lowest: FloatArray, highest: FloatArray, octave_cost: float
) -> tuple[FloatArray, FloatArray]:
    there = found.period_s > 0.0
    frequency = np.divide(1.0, found.period_s, out=np.ones_like(found.period_s), where=there)
    there &= (frequency >= lowest[:, None]) & (frequency <= highest[:, None])
    score = np.where(there, found.strength + octave_cost * np.log2(frequency), -np.inf)
    best = np.argmax(score, axis=1)
    rows = np.arange(len(best))
    known = there[rows, best]
    return np.where(known, frequency[rows, best], np.nan), found.strength[rows, best]
