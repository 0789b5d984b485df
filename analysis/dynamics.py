"""How loud and how varied a take is: loudness, dynamic span, noise, clipping.

A microphone is not calibrated, so nothing here is a sound pressure level. The
loudness range of EBU Tech 3342 is not meant for less than a minute; a clip gets
its *dynamic span* instead, the spread of momentary loudness while playing.
"""

import math
from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from analysis.blocks import SampleArray
from analysis.loudness import (
    ABSOLUTE_GATE_LUFS,
    HOP_S,
    MOMENTARY_S,
    LoudnessCurve,
    blocks_of,
    measure_loudness,
)
from analysis.playing import Spans, playing_windows
from analysis.results import (
    Dynamics,
    Measured,
    NotMeasurable,
    Provenance,
    Reason,
)
from analysis.stopping import StopQuestion, stop_if_asked
from analysis.true_peak import measure_true_peak_dbtp

ALGORITHM = "dynamics-3"
SPAN_LOW_PERCENT = 10.0
SPAN_HIGH_PERCENT = 95.0
SHORTEST_PLAYING_S = 1.0
FULL_SCALE = 0.9999
SHORTEST_CLIPPED_RUN = 2
QUIETEST_NOISE_DBFS = -144.0  # 24-bit resolution; nothing below it is a noise floor
LOWEST_RATE_HZ = 8_000

_NOISE_FRAME_S = 0.1
_NOISE_PERCENT = 5.0
_ASKED_EVERY_SAMPLES = 1 << 17  # about; only how smoothly progress moves depends on it


def measure_dynamics(
    samples: SampleArray,
    sample_rate_hz: float,
    *,
    playing: Spans | None = None,
    progress: Callable[[float], None] | None = None,
    should_stop: StopQuestion | None = None,
) -> Measured[Dynamics] | NotMeasurable:
    """Measure loudness, dynamic span, noise floor, true peak and clipping.

    Parameters
    ----------
    samples : (n,) or (n, channels) array
        Full scale is 1; channels count equally.
    sample_rate_hz : float
        At least 8000.
    playing : sequence of (start_s, end_s), optional
        Where the instrument sounds, e.g. the notes. Without it, playing is what
        stands clearly above the quietest part of the take.
    progress : callable, optional
        Told the share done, 0 to 1.
    should_stop : callable, optional
        Asked often; when it answers yes the measuring stops.

    Returns
    -------
    Measured[Dynamics] or NotMeasurable
        ``TOO_SHORT`` under 0.4 s, ``SILENT`` when nothing reaches -70 LUFS,
        ``INPUT_BROKEN`` with samples that are not finite, ``LOW_SAMPLE_RATE``.

    Raises
    ------
    Stopped
        If ``should_stop`` said so.
    """
    provenance = Provenance(
        ALGORITHM,
        {
            "span_low_percent": SPAN_LOW_PERCENT,
            "span_high_percent": SPAN_HIGH_PERCENT,
            "playing": "level" if playing is None else "given",
        },
    )
    refusal = _refusal(samples, sample_rate_hz, provenance, should_stop)
    if refusal is not None:
        return refusal
    tell = progress or _nobody
    blocks = math.ceil(samples.size / _ASKED_EVERY_SAMPLES)
    part = _telling(tell, should_stop, (0.0, 0.5), blocks)
    curve = measure_loudness(samples, sample_rate_hz, should_stop=part)
    momentary = curve.momentary_lufs
    if momentary.max() < ABSOLUTE_GATE_LUFS:
        return NotMeasurable(Reason.SILENT, "The take is silent.", provenance)
    short_term = curve.short_term_lufs
    part = _telling(tell, should_stop, (0.5, 0.9), 2 * blocks)
    peak = measure_true_peak_dbtp(samples, sample_rate_hz, should_stop=part)
    part = _telling(tell, should_stop, (0.9, 1.0), blocks)
    result = Dynamics(
        integrated_lufs=curve.integrated_lufs,
        max_momentary_lufs=float(momentary.max()),
        max_short_term_lufs=float(short_term.max()) if short_term.size else None,
        dynamic_span_db=_dynamic_span(curve, playing, provenance),
        noise_floor_dbfs=noise_floor_dbfs(samples, sample_rate_hz, should_stop=part),
        true_peak_dbtp=peak,
        clipped_samples=count_clipped_samples(samples, should_stop=should_stop),
        momentary_time_s=curve.momentary_time_s,
        momentary_lufs=np.maximum(momentary, QUIETEST_NOISE_DBFS),
    )
    tell(1.0)
    return Measured(result, provenance)


def _nobody(_: float) -> None:
    """Progress nobody listens to."""


def _telling(
    tell: Callable[[float], None],
    should_stop: StopQuestion | None,
    part: tuple[float, float],
    expected: int,
) -> StopQuestion:
    """Ask as before, and tell with every question how far a part of the work has come."""
    first, last = part
    asked = 0

    def question() -> bool:
        nonlocal asked
        asked += 1
        tell(first + (last - first) * min(1.0, asked / max(1, expected)))
        return should_stop is not None and should_stop()

    return question


def noise_floor_dbfs(
    samples: SampleArray, sample_rate_hz: float, *, should_stop: StopQuestion | None = None
) -> float:
    """RMS level of the quietest twentieth of a take, constant offset removed.

    Parameters
    ----------
    samples : (n,) or (n, channels) array
    sample_rate_hz : float
    should_stop : callable, optional
        Asked every few frames.

    Returns
    -------
    float
        dB relative to a peak of 1, never under -144. In a take without a
        pause it is only an upper bound of the noise.
    """
    columns = samples[:, np.newaxis] if samples.ndim == 1 else samples
    frame = max(1, min(round(_NOISE_FRAME_S * sample_rate_hz), columns.shape[0]))
    count = columns.shape[0] // frame
    power = np.zeros(count)
    for index in range(count):
        stop_if_asked(should_stop)
        part = np.asarray(columns[index * frame : (index + 1) * frame], dtype=np.float64)
        power[index] = part.var(axis=0).mean()
    quiet = float(np.percentile(power, _NOISE_PERCENT))
    return max(QUIETEST_NOISE_DBFS, 10 * math.log10(quiet) if quiet > 0 else -math.inf)


def count_clipped_samples(samples: SampleArray, *, should_stop: StopQuestion | None = None) -> int:
    """Count the samples that stand at full scale in runs of two or more.

    Parameters
    ----------
    samples : (n,) or (n, channels) array
    should_stop : callable, optional
        Asked for every block.

    Returns
    -------
    int
        Summed over the channels; a single sample at full scale is no clipping.
    """
    columns = samples[:, np.newaxis] if samples.ndim == 1 else samples
    total = 0
    open_runs = np.zeros((2, columns.shape[1]), dtype=np.int64)
    for block in blocks_of(columns):
        stop_if_asked(should_stop)
        for channel in range(columns.shape[1]):
            for side, full in enumerate(
                (block[:, channel] >= FULL_SCALE, block[:, channel] <= -FULL_SCALE)
            ):
                runs, open_runs[side, channel] = _runs(full, int(open_runs[side, channel]))
                total += int(runs[runs >= SHORTEST_CLIPPED_RUN].sum())
    return total + int(open_runs[open_runs >= SHORTEST_CLIPPED_RUN].sum())


def _runs(flag: NDArray[np.bool_], length_before: int) -> tuple[NDArray[np.int64], int]:
    """Lengths of the runs of true that end here, and of the one still open at the end."""
    if not flag.any():
        return np.array([length_before]), 0
    edges = np.flatnonzero(np.diff(np.concatenate(([False], flag, [False])).astype(np.int8)))
    runs = edges[1::2] - edges[::2]
    if flag[0]:
        runs[0] += length_before
    elif length_before:
        runs = np.concatenate(([length_before], runs))
    if flag[-1]:
        return runs[:-1], int(runs[-1])
    return runs, 0


def _refusal(
    samples: SampleArray,
    sample_rate_hz: float,
    provenance: Provenance,
    should_stop: StopQuestion | None,
) -> NotMeasurable | None:
    """Why these samples cannot be measured, if so."""
    if sample_rate_hz < LOWEST_RATE_HZ:
        sentence = f"The sample rate is under {LOWEST_RATE_HZ / 1000:g} kHz."
        return NotMeasurable(Reason.LOW_SAMPLE_RATE, sentence, provenance)
    if samples.shape[0] / sample_rate_hz < MOMENTARY_S:
        sentence = f"The take is shorter than {MOMENTARY_S:g} seconds."
        return NotMeasurable(Reason.TOO_SHORT, sentence, provenance)
    # A sum is finite only if every sample is; no second array of an hour's length.
    columns = samples[:, np.newaxis] if samples.ndim == 1 else samples
    total = 0.0
    for block in blocks_of(columns):
        stop_if_asked(should_stop)
        total += float(np.sum(block, dtype=np.float64))
    if not math.isfinite(total):
        sentence = "The recording contains samples that are not numbers."
        return NotMeasurable(Reason.INPUT_BROKEN, sentence, provenance)
    return None


def _dynamic_span(
    curve: LoudnessCurve, playing: Spans | None, provenance: Provenance
) -> Measured[float] | NotMeasurable:
    """Spread of momentary loudness between two percentiles, while playing."""
    momentary = curve.momentary_lufs
    inside = playing_windows(curve.momentary_time_s, momentary, playing)
    loudness = momentary[inside]
    if loudness.size * HOP_S < SHORTEST_PLAYING_S:
        sentence = f"Less than {SHORTEST_PLAYING_S:g} second of playing."
        return NotMeasurable(Reason.TOO_SHORT, sentence, provenance)
    low, high = np.percentile(loudness, [SPAN_LOW_PERCENT, SPAN_HIGH_PERCENT])
    return Measured(float(high - low), provenance)
