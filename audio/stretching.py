"""Slower or faster without a change of pitch.

The stretching itself is the Signalsmith algorithm of the python-stretch
package. Its binding handles one closed piece at a time, so a long or endless
sound is cut into overlapping pieces here; neighbours are lined up by
correlation where they meet and cross-faded, which keeps the waves in phase.
"""

import math
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from audio.sources import ArraySource, SoundSource

SLOWEST = 0.25
FASTEST = 1.5

_CONTEXT_S = 0.09
"""Sound given on either side of a piece: half the algorithm's window of 0.12 s, and a step."""

_FIRST_PIECE_S = 0.12
_PIECE_S = 2.0
_FADE_S = 0.03
_SEARCH_S = 0.0125
"""Half a period of the lowest string that matters here, E1 at 41 Hz, is 12.1 ms."""

_NEAREST = 0.05
_CLEAN_SPEED = 0.52
_SEED = 1
"""Any: the algorithm draws nothing at clean speeds, but would take one from the system."""

FloatArray = NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class StretchedPiece:
    """A piece of output and the stretch of input it stands for.

    Attributes
    ----------
    samples : ndarray of float32, shape (n, channels)
        The sound to play.
    start_frame, end_frame : float
        The input it stands for, in input frames.
    """

    samples: FloatArray
    start_frame: float
    end_frame: float


class StretchStream:
    """Stretch a sound piece by piece from any place on.

    Parameters
    ----------
    source : SoundSource
        The whole sound.
    sample_rate_hz : int
        Frames per second.
    speed : float
        0.25 to 1.5; below 1 is slower.
    start_frame : int
        Where to begin.
    end_frame : int, optional
        Where to stop; the end of the sound without it.
    longest_piece_s : float
        Input stretched at a time; longer is cheaper, shorter gives way sooner.
    """

    def __init__(
        self,
        source: SoundSource,
        sample_rate_hz: int,
        speed: float,
        start_frame: int = 0,
        end_frame: int | None = None,
        *,
        longest_piece_s: float = _PIECE_S,
    ) -> None:
        if not SLOWEST <= speed <= FASTEST:
            raise ValueError(f"speed must lie between {SLOWEST} and {FASTEST}, not {speed}")
        self._source = source
        self._rate = sample_rate_hz
        self._speed = speed
        self._cursor = start_frame
        self._end = source.frames if end_frame is None else min(end_frame, source.frames)
        self._fade = round(_FADE_S * sample_rate_hz)
        self._search = round(_SEARCH_S * sample_rate_hz)
        self._overrun: FloatArray | None = None
        self._longest = round(longest_piece_s * sample_rate_hz)
        self._piece_frames = round(_FIRST_PIECE_S * sample_rate_hz)

    def read(self) -> StretchedPiece | None:
        """Stretch the next piece.

        Returns
        -------
        StretchedPiece or None
            None after the end. Pieces follow each other without a gap; the
            first is short, so that sound can start at once.
        """
        start = self._cursor
        if start >= self._end:
            return None
        end = min(start + self._piece_frames, self._end)
        wanted = round(end / self._speed) - round(start / self._speed)
        body, lead = self._render(start, end, wanted)
        piece = self._join(body, lead, wanted)
        self._cursor = end
        self._piece_frames = min(2 * self._piece_frames, self._longest)
        return StretchedPiece(piece, start, end)

    def overrun(self) -> FloatArray | None:
        """Return the little sound that follows the last piece, for fading out.

        Returns
        -------
        ndarray of float32, shape (n, channels), or None
            None before the first piece.
        """
        return self._overrun

    def _render(self, start: int, end: int, wanted: int) -> tuple[FloatArray, int]:
        """Stretch a piece with its surroundings; return it and where the piece starts in it."""
        context = round(_CONTEXT_S * self._rate)
        before = max(0, start - context)
        after = min(self._source.frames, end + context)
        source = self._source.read(before, after)
        if after - end < context:
            # The algorithm lets the last window fade; give it silence to fade in.
            silence = np.zeros((context - (after - end), source.shape[1]), np.float32)
            source = np.concatenate([source, silence])
        stretched = process(source, self._rate, self._speed)
        return stretched, round(start / self._speed) - round(before / self._speed)

    def _join(self, body: FloatArray, lead: int, wanted: int) -> FloatArray:
        overrun, self._overrun = self._overrun, None
        shift = 0 if overrun is None else self._best_shift(overrun, body, lead)
        at = lead + shift
        piece = _span(body, at, wanted)
        self._overrun = _span(body, at + wanted, self._fade)
        if overrun is not None:
            cross_fade(piece, overrun)
        return piece

    def _best_shift(self, overrun: FloatArray, body: FloatArray, lead: int) -> int:
        """Find where the new piece continues the wave of the old one."""
        low = max(-self._search, -lead)
        template = overrun.sum(axis=1, dtype=np.float64)
        reach = _span(body, lead + low, len(template) + self._search - low)
        field = reach.sum(axis=1, dtype=np.float64)
        match = np.correlate(field, template, mode="valid")
        squares = np.concatenate([[0.0], np.cumsum(field**2)])
        energy = squares[len(template) :] - squares[: -len(template)]
        score = match / np.sqrt(np.maximum(energy, 1e-12))
        if score.max() <= 0:
            return 0
        # Of waves that fit equally well the nearest: the place shown stays true.
        shifts = low + np.arange(len(score))
        distance = np.abs(shifts) / self._search
        return int(shifts[np.argmax(score * (1 - _NEAREST * distance))])


def stretch(samples: NDArray[np.float32], sample_rate_hz: int, speed: float) -> FloatArray:
    """Stretch a whole sound.

    Parameters
    ----------
    samples : ndarray of float32, shape (n,) or (n, channels)
        The sound.
    sample_rate_hz : int
        Frames per second.
    speed : float
        0.25 to 1.5; 0.5 is half as fast and twice as long.

    Returns
    -------
    ndarray of float32, shape (round(n / speed),) or (round(n / speed), channels)
        The same pitch at another speed; the sound itself at speed 1.
    """
    flat = samples.ndim == 1
    columns = samples[:, np.newaxis] if flat else samples
    if speed == 1.0 or not len(samples):
        return samples.astype(np.float32)
    stream = StretchStream(ArraySource(columns), sample_rate_hz, speed)
    pieces: list[FloatArray] = []
    while (piece := stream.read()) is not None:
        pieces.append(piece.samples)
    whole = np.concatenate(pieces)
    return whole[:, 0] if flat else whole


def process(samples: FloatArray, sample_rate_hz: int, speed: float) -> FloatArray:
    """Stretch one closed piece with the library's own edges.

    Parameters
    ----------
    samples : ndarray of float32, shape (n, channels)
        The piece.
    sample_rate_hz : int
        Frames per second.
    speed : float
        Factor, below 1 is slower.

    Returns
    -------
    ndarray of float32, shape (about n / speed, channels)
        Time zero of the output is time zero of the input.
    """
    from python_stretch import Signalsmith  # noqa: PLC0415 - loads a compiled library

    # From half speed down the algorithm randomises phases, and a steady tone
    # starts to waver; several gentler passes keep it steady.
    passes = max(1, math.ceil(math.log(speed) / math.log(_CLEAN_SPEED)))
    output = np.ascontiguousarray(samples.T, dtype=np.float32)
    engine: Any = Signalsmith.Stretch(_SEED)
    engine.preset(samples.shape[1], float(sample_rate_hz))
    engine.setTimeFactor(speed ** (1 / passes))
    for _ in range(passes):
        output = engine.process(output)
    return output.T


def cross_fade(piece: FloatArray, fading: FloatArray) -> None:
    """Fade one sound out under the start of another, in place.

    Parameters
    ----------
    piece : ndarray of float32, shape (n, channels)
        Its start is faded in.
    fading : ndarray of float32, shape (m, channels)
        What sounded before; it fades out over the shorter of both.
    """
    length = min(len(piece), len(fading))
    if not length:
        return
    rise = ((np.arange(length, dtype=np.float32) + 0.5) / length)[:, np.newaxis]
    piece[:length] = piece[:length] * rise + fading[:length] * (1 - rise)


def _span(body: FloatArray, start: int, length: int) -> FloatArray:
    """Copy a span, with silence where `body` does not reach."""
    span = np.zeros((length, body.shape[1]), np.float32)
    inner = body[max(start, 0) : max(start + length, 0)][:length]
    offset = max(-start, 0)
    inner = inner[: max(length - offset, 0)]
    span[offset : offset + len(inner)] = inner
    return span
