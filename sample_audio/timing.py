"""Beats to seconds: constant tempo, drift, rubato and uneven playing."""

import numpy as np

from sample_audio.specs import FloatArray, PhraseSpec


class BeatClock:
    """The tempo of one phrase as a strictly increasing map from beats to seconds.

    Parameters
    ----------
    spec : PhraseSpec
        Its tempo, drift, spread, lead-in and seed are used.

    Raises
    ------
    ValueError
        When a tempo is not positive, a map is not increasing, or a drift is
        combined with a map.
    """

    def __init__(self, spec: PhraseSpec) -> None:
        self._spec = spec
        self.total_beats = float(sum(note.beats for note in spec.notes))
        count = int(np.ceil(self.total_beats)) + 2
        nominal_s = _nominal_time_s(spec, np.arange(count, dtype=np.float64))
        intervals = np.diff(nominal_s) * _uneven_factors(spec, count - 1)
        self._grid_s = spec.lead_in_s + np.concatenate(([0.0], np.cumsum(intervals)))
        self._nominal_s = nominal_s

    def time_s(self, beat: float) -> float:
        """Seconds from the first sample at which ``beat`` (0 or more) falls."""
        nominal = _nominal_time_s(self._spec, np.array([beat]))
        return float(np.interp(nominal, self._nominal_s, self._grid_s)[0])

    def whole_beats_s(self) -> FloatArray:
        """Return the times of beats 0, 1, 2 ... up to the end of the last note, (m,)."""
        return self._grid_s[: int(np.floor(self.total_beats + 1e-9)) + 1].copy()


def _nominal_time_s(spec: PhraseSpec, beat: FloatArray) -> FloatArray:
    if isinstance(spec.tempo, tuple):
        if spec.tempo_drift_bpm_per_min:
            raise ValueError("A drift needs a constant tempo, not a map.")
        return _map_time_s(spec.tempo, beat)
    if spec.tempo <= 0:
        raise ValueError("A tempo must be positive.")
    drift = spec.tempo_drift_bpm_per_min / 60.0  # BPM per second
    if drift == 0.0:
        return beat * 60.0 / spec.tempo
    # beats(t) = (bpm t + drift t^2 / 2) / 60, solved for t
    discriminant = spec.tempo**2 + 120.0 * drift * beat
    if np.any(discriminant <= 0):
        raise ValueError("The drift brings the tempo to a standstill within the phrase.")
    return np.asarray((np.sqrt(discriminant) - spec.tempo) / drift)


def _map_time_s(points: tuple[tuple[float, float], ...], beat: FloatArray) -> FloatArray:
    at = np.array([p[0] for p in points], dtype=np.float64)
    bpm = np.array([p[1] for p in points], dtype=np.float64)
    if np.any(bpm <= 0) or np.any(np.diff(at) <= 0):
        raise ValueError("A tempo map needs increasing beats and positive tempos.")
    edge = max(float(beat.max()), float(at[-1])) + 1.0
    at = np.concatenate(([min(0.0, at[0]) - 1.0], at, [edge]))
    bpm = np.concatenate(([bpm[0]], bpm, [bpm[-1]]))
    slope = np.diff(bpm) / np.diff(at)
    segment_s = np.array(
        [_segment_s(*args) for args in zip(np.diff(at), bpm[:-1], slope, strict=True)]
    )
    start_s = np.concatenate(([0.0], np.cumsum(segment_s)))

    def elapsed(b: float) -> float:
        i = int(np.clip(np.searchsorted(at, b, side="right") - 1, 0, len(slope) - 1))
        return float(start_s[i] + _segment_s(b - at[i], bpm[i], slope[i]))

    zero = elapsed(0.0)
    return np.array([elapsed(float(b)) - zero for b in beat])


def _segment_s(beats: float, bpm: float, slope: float) -> float:
    """Integral of 60 / bpm over beats, bpm linear with ``slope`` per beat."""
    if abs(slope) < 1e-12:
        return 60.0 * beats / bpm
    return float(60.0 / slope * np.log1p(slope * beats / bpm))


def _uneven_factors(spec: PhraseSpec, count: int) -> FloatArray:
    if not spec.interval_spread_percent:
        return np.ones(count)
    # Only the intervals inside the phrase are standardised: those are what is measured.
    inside = int(np.floor(sum(note.beats for note in spec.notes) + 1e-9))
    if inside < 2:
        raise ValueError("An interval spread needs at least two whole beats.")
    drawn = np.random.default_rng([spec.seed, 1]).standard_normal(inside)
    drawn = (drawn - drawn.mean()) / drawn.std(ddof=1)
    factors = np.ones(count)
    factors[:inside] += spec.interval_spread_percent / 100.0 * drawn
    if np.any(factors <= 0.2):
        raise ValueError("The interval spread is too wide to be played.")
    return factors
