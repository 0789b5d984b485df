"""Compiled inner loops of the pitch tracker: candidates of a frame, path through frames."""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.compiled import compiled

Float32Array = NDArray[np.float32]
FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]

CANDIDATES: Final = 8
"""Candidates kept for each frame besides 'unvoiced'."""
INTERPOLATION_DEPTH: Final = 24
"""Lags on either side that the interpolation of the autocorrelation looks at."""
_WEAKEST_PEAK: Final = 0.2
_REFINING_STEPS: Final = 3
_COARSE_LAGS: Final = 64
_QUICK_DEPTH: Final = 12


@compiled
def interpolated(values: FloatArray, position: float, depth: int) -> float:
    """Interpolate a band-limited sequence by a sinc tapered with a raised cosine.

    ``values`` is even around index 0, as an autocorrelation is; ``position`` is in
    samples.
    """
    base = int(np.floor(position))
    fraction = position - base
    if fraction < 1e-9:
        return float(values[base])
    total = 0.0
    sign = 1.0
    taper_step = np.pi / (depth + 0.5)
    # The taper's cosines on either side by their recurrence: cos(a + b) = 2 cos(a) cos(b)
    # - cos(a - b) saves a cosine for every sample.
    twice = 2.0 * np.cos(taper_step)
    left, left_before = np.cos(fraction * taper_step), np.cos((fraction - 1.0) * taper_step)
    right, right_before = np.cos((1.0 - fraction) * taper_step), left
    for k in range(depth):
        total += sign * (0.5 + 0.5 * left) * values[abs(base - k)] / (fraction + k)
        total += sign * (0.5 + 0.5 * right) * values[base + 1 + k] / (1.0 - fraction + k)
        left, left_before = twice * left - left_before, left
        right, right_before = twice * right - right_before, right
        sign = -sign
    return float(total * np.sin(np.pi * fraction) / np.pi)


@compiled
def refined_peak(values: FloatArray, index: int, depth: int) -> tuple[float, float]:
    """Return position (samples) and height of the maximum near a local peak.

    Parabolas through three interpolated points, ever closer together.
    """
    left, middle, right = values[index - 1], values[index], values[index + 1]
    bend = left - 2.0 * middle + right
    position = float(index)
    if bend < 0.0:
        position += 0.5 * (left - right) / bend
    width = 0.25
    height = middle
    for _ in range(_REFINING_STEPS):
        low = interpolated(values, position - width, depth)
        height = interpolated(values, position, depth)
        high = interpolated(values, position + width, depth)
        bend = low - 2.0 * height + high
        if bend >= 0.0:
            break
        move = 0.5 * width * (low - high) / bend
        position += min(max(move, -0.5), 0.5)
        width *= 0.25
    return position, interpolated(values, position, depth)


@compiled
def frame_candidates(  # noqa: PLR0917 - compiled code knows no keywords
    correlation: Float32Array,
    inverse_window: FloatArray,
    shortest: int,
    longest: int,
    octave_cost: float,
    periods: FloatArray,
    strengths: FloatArray,
) -> None:
    """Find the best candidates of each frame.

    Parameters
    ----------
    correlation : (frames, lags) array
        Raw autocorrelations.
    inverse_window : (lags,) array
        One over the window's normalised autocorrelation.
    shortest, longest : int
        Lags that are searched.
    octave_cost : float
        How much strength a candidate must have more for every octave it lies lower.
    periods, strengths : (frames, CANDIDATES) arrays
        Filled in, best first: periods in samples (0 where there is none), heights of the
        normalised autocorrelation.
    """
    lags = correlation.shape[1]
    normalised = np.empty(lags)
    indices = np.empty(CANDIDATES, dtype=np.int64)
    scores = np.empty(CANDIDATES)
    for frame in range(correlation.shape[0]):
        energy = correlation[frame, 0]
        periods[frame, :] = 0.0
        strengths[frame, :] = 0.0
        if energy <= 0.0:
            continue
        scale = 1.0 / energy
        for lag in range(lags):
            normalised[lag] = correlation[frame, lag] * scale * inverse_window[lag]
        count = 0
        for lag in range(shortest, longest + 1):
            here = normalised[lag]
            if here <= _WEAKEST_PEAK or here <= normalised[lag - 1] or here < normalised[lag + 1]:
                continue
            bend = 2.0 * here - normalised[lag - 1] - normalised[lag + 1]
            slope = 0.5 * (normalised[lag + 1] - normalised[lag - 1])
            height = here + 0.5 * slope * slope / bend
            if lag < _COARSE_LAGS and lag + _QUICK_DEPTH + 2 < lags:
                # so few samples a period that a parabola misses the top of the peak
                height = interpolated(normalised, lag + slope / bend, _QUICK_DEPTH)
            score = height - octave_cost * np.log2(float(lag))
            place = count if count < CANDIDATES else CANDIDATES
            while place > 0 and scores[place - 1] < score:
                place -= 1
            if place >= CANDIDATES:
                continue
            last = min(count, CANDIDATES - 1)
            for k in range(last, place, -1):
                scores[k] = scores[k - 1]
                indices[k] = indices[k - 1]
            scores[place] = score
            indices[place] = lag
            count = min(count + 1, CANDIDATES)
        for k in range(count):
            depth = min(INTERPOLATION_DEPTH, lags - 3 - indices[k])
            position, height = refined_peak(normalised, indices[k], depth)
            periods[frame, k] = position
            # Above 1 there is no autocorrelation; the tapered sinc can overshoot there.
            strengths[frame, k] = height if height <= 1.0 else 1.0 / height


@compiled
def best_path(
    log2_frequency: FloatArray,
    score: FloatArray,
    unvoiced_score: FloatArray,
    octave_jump_cost: float,
    voicing_cost: float,
) -> IntArray:
    """Return the best candidate of each frame along the cheapest path, -1 for unvoiced.

    Parameters
    ----------
    log2_frequency, score : (frames, CANDIDATES) arrays
        Candidates; a score of minus infinity marks an empty place.
    unvoiced_score : (frames,) array
        Score of having no pitch.
    octave_jump_cost, voicing_cost : float
        Price of moving by an octave, and of starting or ending a pitch, from frame to
        frame.
    """
    frames = score.shape[0]
    states = CANDIDATES + 1
    back = np.zeros((frames, states), dtype=np.int8)
    best = np.full(states, -np.inf)
    following = np.empty(states)
    for frame in range(frames):
        for state in range(states):
            own = unvoiced_score[frame] if state == CANDIDATES else score[frame, state]
            if frame == 0 or own == -np.inf:
                following[state] = own
                continue
            top = -np.inf
            source = CANDIDATES
            for previous in range(states):
                if best[previous] == -np.inf:
                    continue
                cost = 0.0
                if (state == CANDIDATES) != (previous == CANDIDATES):
                    cost = voicing_cost
                elif state != CANDIDATES:
                    cost = octave_jump_cost * abs(
                        log2_frequency[frame, state] - log2_frequency[frame - 1, previous]
                    )
                if best[previous] - cost > top:
                    top = best[previous] - cost
                    source = previous
            following[state] = top + own
            back[frame, state] = source
        best[:] = following
    path = np.empty(frames, dtype=np.int64)
    state = int(np.argmax(best)) if frames else 0
    for frame in range(frames - 1, -1, -1):
        path[frame] = state if state < CANDIDATES else -1
        state = back[frame, state]
    return path
