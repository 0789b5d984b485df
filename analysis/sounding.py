"""Does an instrument sound? Decided while the sound comes in, block by block.

Playing is told from talk by its notes. While a note lasts its pitch stays within the
reach of a vibrato and its timbre stays what it is; a speaking voice glides without
resting on a pitch, and changes its vowel within a tenth of a second. So every frame of
10 ms gets a pitch and the outline of its spectrum; stretches in which both hold still
are *held*, and the instrument is said to sound while enough of the last two seconds
were held. Noise has no pitch at all. What keeps one pitch at one level for twenty
seconds is a machine, not a bow, and is not counted from then on.

The thresholds are this project's own, set on generated playing and synthesised
speech; ``tests/benchmarks/sounding_hour.py`` prints how well they do.

The state is a value: :func:`listen` takes the one before and gives the next. However
long it listens, it holds the last two seconds of frames and no sound older than 0.1 s.
"""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from analysis.blocks import SampleArray
from analysis.sounding_frames import BANDS, cut_frames, frame_length_s, outlines, pitch_cents

FloatArray = NDArray[np.float64]
BoolArray = NDArray[np.bool_]

ALGORITHM: Final = "sounding-1"
LONGEST_REST_S: Final = 3.0
"""A rest shorter than this, with playing on both sides, counts as playing."""

LOWEST_RATE_HZ: Final = 8_000


_QUIETEST_DBFS: Final = -70.0


# Frames; cents the pitch may move within them; dB the outline may differ between the
# first and the last. A quick note, and a longer one with vibrato.
_QUICK: Final = (4, 8.0, 2.5)
_LONG: Final = (15, 80.0, 4.5)

_LOOK_BACK_S: Final = 2.0
_ENOUGH: Final = 0.35  # share of the time looked back on
_LAST_HELD_S: Final = 0.7  # as long as it takes to be sure at the start

_MACHINE_AFTER_S: Final = 20.0
_MACHINE_CENTS, _MACHINE_DB = 10.0, 1.5


@dataclass(frozen=True, slots=True, eq=False)
class Listening:
    """Everything that is known between two blocks.

    Attributes
    ----------
    sample_rate_hz : int
    frame_s : float
        Length of a frame: 10 ms, to within a sample of the working rate.
    """

    sample_rate_hz: int
    frame_s: float
    raw: FloatArray
    slow: FloatArray
    cents: FloatArray
    outline: FloatArray
    credit: FloatArray
    since_held: int = 0
    still_frames: int = 0
    still_at: tuple[float, float] = (-np.inf, 0.0)
    machine: tuple[float, float] = (-np.inf, 0.0)


@dataclass(frozen=True, slots=True)
class SoundingTime:
    """When the instrument sounded, as far as it was listened to.

    Attributes
    ----------
    heard_s : float
        How long it was listened.
    finished_s : float
        Length of all stretches of playing that are over.
    begins_s, ends_s : float or None
        The latest stretch, which goes on unless a rest of three seconds follows.
    """

    heard_s: float = 0.0
    finished_s: float = 0.0
    begins_s: float | None = None
    ends_s: float | None = None

    @property
    def seconds(self) -> float:
        """The time the instrument sounded; rests under three seconds inside it count."""
        if self.begins_s is None or self.ends_s is None:
            return 0.0
        return self.finished_s + self.ends_s - self.begins_s


def begin(sample_rate_hz: int) -> Listening:
    """Begin to listen.

    Parameters
    ----------
    sample_rate_hz : int
        Of the blocks to come, at least 8000.

    Raises
    ------
    ValueError
        When it is lower.
    """
    if sample_rate_hz < LOWEST_RATE_HZ:
        raise ValueError(f"listening needs at least {LOWEST_RATE_HZ} Hz, not {sample_rate_hz}")
    frame_s = frame_length_s(sample_rate_hz)
    longest = _LONG[0] - 1
    return Listening(
        sample_rate_hz=sample_rate_hz,
        frame_s=frame_s,
        raw=np.zeros(0),
        slow=np.zeros(0),
        cents=np.full(longest, np.nan),
        outline=np.zeros((longest, BANDS)),
        credit=np.zeros(round(_LOOK_BACK_S / frame_s)),
    )


def listen(state: Listening, block: SampleArray) -> tuple[Listening, BoolArray]:
    """Take in the next block of sound.

    Parameters
    ----------
    state : Listening
        From :func:`begin`, or from the block before.
    block : (n,) or (n, channels) float array
        Of any length; several channels are averaged. Full scale is 1.

    Returns
    -------
    state : Listening
        For the next block.
    sounds : (m,) bool array
        For every frame that is complete now, whether the instrument sounds. The answer
        follows the sound by about a second, at its start and at its end alike, and
        does not depend on how the sound is cut into blocks.
    """
    mono = np.nan_to_num(block if block.ndim == 1 else block.mean(axis=1)).astype(np.float64)
    raw, slow, frames = cut_frames(state.raw, state.slow, mono, state.sample_rate_hz)
    after = replace(state, raw=raw, slow=slow)
    if not len(frames):
        return after, np.zeros(0, dtype=np.bool_)
    level_dbfs = 10.0 * np.log10(np.mean(frames**2, axis=1) + 1e-14)
    has_level = level_dbfs > _QUIETEST_DBFS
    cents = np.where(has_level, pitch_cents(frames, state.sample_rate_hz), np.nan)
    return _judged(after, cents, level_dbfs, outlines(frames, state.sample_rate_hz))


def held_s(state: Listening, within_s: float) -> float:
    """Say how much of the last moments was held: a note rather than a noise.

    Parameters
    ----------
    state : Listening
    within_s : float
        How far to look back, two seconds at most.

    Returns
    -------
    float
        Seconds; a first note is there from about 0.1 on.
    """
    frames = min(len(state.credit), max(1, round(within_s / state.frame_s)))
    return float(state.credit[-frames:].sum()) * state.frame_s


def count(time: SoundingTime, sounds: BoolArray, frame_s: float) -> SoundingTime:
    """Add frames to the time the instrument sounded.

    Parameters
    ----------
    time : SoundingTime
        So far; ``SoundingTime()`` to begin with.
    sounds : (m,) bool array
        The next frames.
    frame_s : float
        Their length.
    """
    for number in np.flatnonzero(sounds):
        start_s = time.heard_s + float(number) * frame_s
        if time.ends_s is None or start_s - time.ends_s >= LONGEST_REST_S:
            time = replace(time, finished_s=time.seconds, begins_s=start_s)
        time = replace(time, ends_s=start_s + frame_s)
    return replace(time, heard_s=time.heard_s + len(sounds) * frame_s)


def sounding_minutes(samples: SampleArray, sample_rate_hz: int) -> float:
    """Count the minutes in which an instrument sounds in a whole recording.

    Parameters
    ----------
    samples : (n,) or (n, channels) float array
        May be memory-mapped: it is read a second at a time.
    sample_rate_hz : int

    Returns
    -------
    float
        Minutes; rests under three seconds inside the playing count.
    """
    state, time = begin(sample_rate_hz), SoundingTime()
    for first in range(0, len(samples), sample_rate_hz):
        state, sounds = listen(state, samples[first : first + sample_rate_hz])
        time = count(time, sounds, state.frame_s)
    return time.seconds / 60.0


def _judged(
    state: Listening, cents: FloatArray, level_dbfs: FloatArray, outline: FloatArray
) -> tuple[Listening, BoolArray]:
    """Turn new frames into the answer for each."""
    state, cents = _without_machines(state, cents, level_dbfs)
    all_cents = np.concatenate([state.cents, cents])
    all_outlines = np.concatenate([state.outline, outline])
    quick, long = (_held(all_cents, all_outlines, *limits) for limits in (_QUICK, _LONG))
    held = np.maximum(quick, long)
    credit, is_fresh = np.zeros(len(cents)), np.zeros(len(cents), dtype=np.bool_)
    since = state.since_held
    for number, frames in enumerate(held):
        since += 1
        if frames:
            # The frames behind this one that belong to the stretch, each counted once.
            credit[number] = min(frames, since)
            since = 0
        is_fresh[number] = since * state.frame_s <= _LAST_HELD_S
    look_back = len(state.credit)
    total = np.cumsum(np.concatenate([[0.0], state.credit, credit]))
    share = (total[look_back + 1 :] - total[1 : len(credit) + 1]) / look_back
    keep = _LONG[0] - 1
    after = replace(
        state,
        cents=all_cents[-keep:],
        outline=all_outlines[-keep:],
        credit=np.concatenate([state.credit, credit])[-look_back:],
        since_held=min(since, look_back),
    )
    return after, np.asarray((share >= _ENOUGH) & is_fresh)


def _held(
    cents: FloatArray, outline: FloatArray, length: int, reach_cents: float, reach_db: float
) -> NDArray[np.intp]:
    """For every new frame: `length` where it ends a stretch that holds still, else 0."""
    windows = np.lib.stride_tricks.sliding_window_view(cents, length)[_LONG[0] - length :]
    moved = np.ptp(windows, axis=1)  # NaN where any frame has no pitch
    first = outline[_LONG[0] - length : len(outline) - length + 1]
    turned = np.mean(np.abs(outline[_LONG[0] - 1 :] - first), axis=1)
    return np.where((moved < reach_cents) & (turned < reach_db), length, 0)


def _without_machines(
    state: Listening, cents: FloatArray, level_dbfs: FloatArray
) -> tuple[Listening, FloatArray]:
    """Take the pitch from frames that a hum or a whine accounts for."""
    still, at, machine = state.still_frames, state.still_at, state.machine
    kept = cents.copy()
    for number, here in enumerate(zip(cents.tolist(), level_dbfs.tolist(), strict=True)):
        if not _is_same(here, at):
            still, at = 0, here
        still += 1
        if still * state.frame_s >= _MACHINE_AFTER_S:
            machine = at
        if _is_same(here, machine):
            kept[number] = np.nan
    return replace(state, still_frames=still, still_at=at, machine=machine), kept


def _is_same(one: tuple[float, float], other: tuple[float, float]) -> bool:
    # Never true for a frame without a pitch: its cents are NaN.
    return abs(one[0] - other[0]) <= _MACHINE_CENTS and abs(one[1] - other[1]) <= _MACHINE_DB
