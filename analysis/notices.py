"""What about a recording changes how its numbers may be read.

*Dual mono*: two channels with one and the same sound. BS.1770 adds the power of the
channels, so that it reads 3 dB louder than the same sound in one channel.

*Automatic gain*: a phone turns the level up in every pause, which is heard as noise that
rises; a room and a string can only die away. Where the noise rises in most pauses the
gain was probably automatic. It cannot be heard in a take without pauses or noise, so
that 'not heard' is not 'off'.

*Muted input*: samples of exactly zero in the middle of a take, which no microphone gives.
"""

from collections.abc import Sequence
from typing import Final, Literal

import numpy as np
from numpy.typing import NDArray

from analysis.blocks import SampleArray
from analysis.results import Notice, NoticeCode
from analysis.stopping import StopQuestion, stop_if_asked

FloatArray = NDArray[np.float64]
AutomaticGain = Literal["off", "on", "unknown"]
AUTOMATIC_GAIN_ANSWERS: Final = ("off", "on", "unknown")

ALGORITHM: Final = "notices-1"

_FRAME_S: Final = 0.05
_SHORTEST_PAUSE_S: Final = 1.0
_SKIPPED_S: Final = 0.4
_LEAST_RISE_DB: Final = 3.0
_LEAST_SLOPE_DB_PER_S: Final = 2.5
_FEWEST_PAUSES: Final = 2
_MOST_PAUSES: Final = 40
_IN_MOST: Final = 0.65
_QUIETEST_DBFS: Final = -100.0
_SHORTEST_MUTED_S: Final = 0.1
_SAME: Final = 1e-5  # between 16 and 24 bit
_AT_ONCE: Final = 1 << 18


def is_dual_mono(samples: SampleArray, *, should_stop: StopQuestion | None = None) -> bool:
    """Say whether two channels hold one and the same sound.

    Parameters
    ----------
    samples : (n,) or (n, channels) float array
        Full scale 1; may be memory-mapped.
    should_stop : callable, optional
        Asked for every block.
    """
    if samples.ndim == 1 or samples.shape[1] != 2:
        return False
    heard = False
    for first in range(0, len(samples), _AT_ONCE):
        stop_if_asked(should_stop)
        block = samples[first : first + _AT_ONCE]
        if np.max(np.abs(block[:, 0] - block[:, 1])) > _SAME:
            return False
        heard = heard or bool(np.any(block))
    return heard


def gain_is_automatic(
    samples: SampleArray, sample_rate_hz: int, playing: Sequence[tuple[float, float]]
) -> bool:
    """Say whether the noise rises in most pauses, as automatic gain makes it.

    Parameters
    ----------
    samples : (n,) or (n, channels) float array
        May be memory-mapped; only its pauses are read.
    sample_rate_hz : int
    playing : sequence of (start_s, end_s)
        Where the instrument sounds, in order.

    Returns
    -------
    bool
        False where fewer than two pauses of a second could tell.
    """
    rises = []
    for start, end in _pauses(playing, len(samples) / sample_rate_hz)[:_MOST_PAUSES]:
        level = _levels(samples, sample_rate_hz, start + _SKIPPED_S, end)
        if len(level) < 3 or float(np.median(level)) < _QUIETEST_DBFS:
            continue
        slope, _ = np.polyfit(_FRAME_S * np.arange(len(level)), level, 1)
        rise = float(slope) * _FRAME_S * (len(level) - 1)
        rises.append(rise >= _LEAST_RISE_DB and float(slope) >= _LEAST_SLOPE_DB_PER_S)
    return len(rises) >= _FEWEST_PAUSES and float(np.mean(rises)) >= _IN_MOST


def _pauses(playing: Sequence[tuple[float, float]], duration_s: float) -> list[tuple[float, float]]:
    if not playing:
        return []
    ends = [end for _, end in playing]
    starts = [start for start, _ in playing[1:]]
    gaps = zip(ends, [*starts, duration_s], strict=True)
    return [(start, end) for start, end in gaps if end - start >= _SHORTEST_PAUSE_S]


def _levels(samples: SampleArray, rate: int, start_s: float, end_s: float) -> FloatArray:
    """Level of every frame of a stretch, dBFS."""
    frame = round(_FRAME_S * rate)
    piece = np.asarray(samples[round(start_s * rate) : round((end_s - 0.05) * rate)], np.float64)
    mono = piece if piece.ndim == 1 else piece.mean(axis=1)
    whole = len(mono) // frame * frame
    power = mono[:whole].reshape(-1, frame).var(axis=1)
    return np.asarray(10.0 * np.log10(power + 1e-14))


def input_was_muted(
    samples: SampleArray, sample_rate_hz: int, *, should_stop: StopQuestion | None = None
) -> bool:
    """Say whether samples of exactly zero interrupt the sound for a tenth of a second.

    Parameters
    ----------
    samples : (n,) or (n, channels) float array
    sample_rate_hz : int
    should_stop : callable, optional
        Asked for every block.
    """
    least = round(_SHORTEST_MUTED_S * sample_rate_hz)
    silent, heard = 0, False
    for first in range(0, len(samples), _AT_ONCE):
        stop_if_asked(should_stop)
        block = samples[first : first + _AT_ONCE]
        sounding = np.flatnonzero(block if block.ndim == 1 else block.any(axis=1))
        if not len(sounding):
            silent += len(block)
            continue
        gaps = np.diff(sounding) - 1
        if heard and silent + sounding[0] >= least:
            return True
        if len(gaps) and int(np.max(gaps)) >= least:
            return True
        heard, silent = True, len(block) - 1 - int(sounding[-1])
    return False


def find_notices(
    samples: SampleArray,
    sample_rate_hz: int,
    playing: Sequence[tuple[float, float]],
    *,
    automatic_gain: AutomaticGain,
    with_mute: bool,
    should_stop: StopQuestion | None = None,
) -> tuple[Notice, ...]:
    """Collect what changes how the numbers of a take may be read.

    Parameters
    ----------
    samples, sample_rate_hz
        The take.
    playing : sequence of (start_s, end_s)
        Where the instrument sounds, in order.
    automatic_gain : str
        What is known of the input: ``'off'``, ``'on'`` or ``'unknown'``.
    with_mute : bool
        The player used a mute.
    should_stop : callable, optional
        Asked often.
    """
    codes = []
    if is_dual_mono(samples, should_stop=should_stop):
        codes.append(NoticeCode.DUAL_MONO)
    if automatic_gain == "on" or (
        automatic_gain == "unknown" and gain_is_automatic(samples, sample_rate_hz, playing)
    ):
        codes.append(NoticeCode.AUTOMATIC_GAIN)
    elif automatic_gain == "unknown":
        codes.append(NoticeCode.AUTOMATIC_GAIN_UNKNOWN)
    if input_was_muted(samples, sample_rate_hz, should_stop=should_stop):
        codes.append(NoticeCode.INPUT_MUTED)
    if with_mute:
        codes.append(NoticeCode.PLAYED_WITH_MUTE)
    return tuple(Notice(code, SENTENCES[code]) for code in codes)


SENTENCES: Final = {
    NoticeCode.DUAL_MONO: "Both channels hold the same sound: it reads 3 dB louder than the"
    " same sound in one channel.",
    NoticeCode.AUTOMATIC_GAIN: "The input's level was probably set automatically: its noise"
    " rises in the pauses.",
    NoticeCode.AUTOMATIC_GAIN_UNKNOWN: "It is not known whether the input set its level"
    " automatically; if it did, loud and soft are closer together than they were played.",
    NoticeCode.INPUT_MUTED: "The input was silent to the last bit for a while, as if muted.",
    NoticeCode.PLAYED_WITH_MUTE: "Played with a mute: its loudness is not comparable with"
    " takes without one.",
}
