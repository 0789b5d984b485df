"""What the output is given, buffer by buffer, and which place that is.

No device and no thread in here: the player's audio callback calls
:meth:`Playback.render`, and so do tests.
"""

from collections import deque
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audio.feed import FADE_S, Feed, Piece
from audio.stretching import cross_fade

FloatArray = NDArray[np.float32]

_REMEMBERED = 256


@dataclass(frozen=True, slots=True)
class _Sounding:
    """A stretch of output: when it is heard, and which place in the source it is."""

    heard_at_s: float
    output_frames: int
    start_frame: float
    frames_per_output: float


class Playback:
    """Mix feeds into output buffers without a click.

    Parameters
    ----------
    rate_hz : int
        The output's rate.

    Attributes
    ----------
    playing : bool
        Whether sound is wanted.
    volume : float
        Linear gain, 0 to 1.
    finished : bool
        Whether the sound came to its end by itself.
    starved : int
        Buffers that could not be filled in time.
    """

    def __init__(self, rate_hz: int) -> None:
        self.playing = False
        self.volume = 1.0
        self.finished = False
        self.starved = 0
        self._rate_hz = rate_hz
        self._fade = round(FADE_S * rate_hz)
        self._gain = 0.0
        self.current: Feed | None = None
        self.incoming: Feed | None = None
        self._sounding: deque[_Sounding] = deque(maxlen=_REMEMBERED)

    def render(self, out: FloatArray, heard_at_s: float) -> None:
        """Fill one output buffer.

        Parameters
        ----------
        out : ndarray of float32, shape (n, channels)
            The buffer to fill.
        heard_at_s : float
            When its first frame will be heard, on the stream's clock.
        """
        out[:] = 0
        filled = self._swap(out, heard_at_s)
        current = self.current
        if current is None or (not self.playing and self._gain == 0):
            return
        # While pausing only the fade is taken, so that play goes on from the very place.
        wanted = len(out) if self.playing else min(len(out), max(filled, self._fade))
        filled += self._fill(out, filled, wanted, current, heard_at_s)
        self._apply_gain(out)
        if filled < wanted and not current.is_over:
            self.starved += 1
        elif filled < wanted and self.incoming is None:
            # The feed fades its own end, so nothing is left to fade.
            self.playing, self.finished, self._gain = False, True, 0.0

    def place_at(self, now_s: float) -> float | None:
        """Say which place in the source is heard at a moment.

        Parameters
        ----------
        now_s : float
            The moment, on the stream's clock.

        Returns
        -------
        float or None
            Frame of the source at the output's rate; None when nothing was played yet.
        """
        latest: _Sounding | None = None
        for sounding in reversed(tuple(self._sounding)):
            latest = sounding
            if sounding.heard_at_s <= now_s:
                break
        if latest is None:
            return None
        passed = np.clip((now_s - latest.heard_at_s) * self._rate_hz, 0, latest.output_frames)
        return latest.start_frame + float(passed) * latest.frames_per_output

    def _swap(self, out: FloatArray, heard_at_s: float) -> int:
        """Bring in the incoming feed when it is ready; return the frames filled."""
        incoming = self.incoming
        if incoming is None or not (incoming.buffered > len(out) or incoming.exhausted):
            return 0
        old, self.current, self.incoming = self.current, incoming, None
        if old is None or self._gain == 0 or not self.playing:
            return 0
        fading = _joined(old.take(self._fade), out.shape[1])
        filled = self._fill(out, 0, len(out), incoming, heard_at_s)
        cross_fade(out[:filled], fading)
        return filled

    def _fill(
        self, out: FloatArray, filled: int, wanted: int, feed: Feed, heard_at_s: float
    ) -> int:
        begun = filled
        for piece in feed.take(wanted - filled):
            end = filled + len(piece.samples)
            out[filled:end] = piece.samples
            at = heard_at_s + filled / self._rate_hz
            self._sounding.append(
                _Sounding(at, end - filled, piece.start_frame, piece.frames_per_output)
            )
            filled = end
        return filled - begun

    def _apply_gain(self, out: FloatArray) -> None:
        target = self.volume if self.playing else 0.0
        if target == self._gain:
            if target != 1.0:
                out *= np.float32(target)
            return
        ramp = np.full(len(out), target, np.float32)
        length = min(self._fade, len(out))
        ramp[:length] = np.linspace(self._gain, target, length, dtype=np.float32)
        out *= ramp[:, np.newaxis]
        self._gain = target


def _joined(pieces: list[Piece], channels: int) -> FloatArray:
    if not pieces:
        return np.empty((0, channels), np.float32)
    return np.concatenate([piece.samples for piece in pieces])
