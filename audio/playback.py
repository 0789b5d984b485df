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

_REMEMBERED = 2048
"""Buffers can be as short as 2 ms; a few seconds of them answer when a place was heard."""

_LONGEST_WAIT_S = 0.5


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
    ends : int
        How often that happened.
    starved : int
        Buffers that could not be filled in time.
    """

    def __init__(self, rate_hz: int) -> None:
        self.playing = False
        self.volume = 1.0
        self.finished = False
        self.ends = 0
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
        filled = self._bring_in(out, heard_at_s)
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
            self.ends += 1

    def at_rate(self, rate_hz: int) -> "Playback":
        """Make a playback for another rate with the same wishes and counts.

        Parameters
        ----------
        rate_hz : int
            The new output's rate.

        Returns
        -------
        Playback
            Without a feed yet.
        """
        other = Playback(rate_hz)
        other.playing, other.volume = self.playing, self.volume
        other.ends, other.starved = self.ends, self.starved
        return other

    def place_at(self, now_s: float) -> float | None:
        """Say which place in the source is heard at a moment.

        Parameters
        ----------
        now_s : float
            The moment, on the stream's clock.

        Returns
        -------
        float or None
            Frame of the source at the output's rate; None when nothing was played
            yet, or when something else comes after a silence or in the place of it.
        """
        if self.incoming is not None and (self._gain == 0 or self._changes_sound):
            return None
        latest: _Sounding | None = None
        for sounding in reversed(tuple(self._sounding)):
            latest = sounding
            if sounding.heard_at_s <= now_s:
                break
        if latest is None:
            return None
        passed = np.clip((now_s - latest.heard_at_s) * self._rate_hz, 0, latest.output_frames)
        return latest.start_frame + float(passed) * latest.frames_per_output

    def moment_of(self, place: float) -> float | None:
        """Say when a place in the source is heard, as playing goes on now.

        Parameters
        ----------
        place : float
            Frame of the source at the output's rate.

        Returns
        -------
        float or None
            The moment on the stream's clock, past or future; None when nothing
            was played yet.
        """
        sounding = tuple(self._sounding)
        if not sounding:
            return None
        near = sounding[-1]
        for earlier in reversed(sounding):
            end = earlier.start_frame + earlier.output_frames * earlier.frames_per_output
            if earlier.start_frame <= place < end:
                near = earlier
                break
        way = (place - near.start_frame) / near.frames_per_output
        return near.heard_at_s + way / self._rate_hz

    @property
    def _changes_sound(self) -> bool:
        incoming, old = self.incoming, self.current
        return incoming is not None and old is not None and incoming.source is not old.source

    def _bring_in(self, out: FloatArray, heard_at_s: float) -> int:
        """Let the incoming feed take over when it is time; return the frames filled."""
        incoming, old = self.incoming, self.current
        if incoming is None or not (incoming.buffered > len(out) or incoming.exhausted):
            return 0
        kept = 0
        if old is not None and self.playing and incoming.plan.joins:
            kept = self._frames_until(incoming, old)
            if kept >= len(out):
                return 0
            kept = self._fill(out, 0, kept, old, heard_at_s)
        self.current, self.incoming = incoming, None
        if old is None or self._gain == 0:
            # What was heard before the silence says nothing about where this is.
            self._sounding.clear()
            return kept
        if incoming.source is not old.source:
            # Places in the sound before are none of this one.
            self._sounding.clear()
        fading = _joined(old.take(min(self._fade, len(out) - kept)), out.shape[1])
        if not self.playing:
            fall = 1 - (np.arange(len(fading), dtype=np.float32) + 0.5) / max(len(fading), 1)
            out[: len(fading)] = fading * (fall * np.float32(self._gain))[:, np.newaxis]
            self._gain = 0.0
            return len(fading)
        filled = self._fill(out, kept, len(out), incoming, heard_at_s)
        cross_fade(out[kept : kept + filled], fading)
        return kept + filled

    def _frames_until(self, incoming: Feed, old: Feed) -> int:
        """Output frames until `old` comes to where `incoming` begins; 0 when it never will."""
        plan = incoming.plan
        begins = plan.start_frame if plan.joins_at is None else plan.joins_at
        way = begins - old.position
        if way < 0 and old.plan.loop is not None:
            way += old.plan.loop[1] - old.plan.loop[0]
        frames = round(way / old.plan.speed)
        return frames if 0 < frames <= min(old.buffered, _LONGEST_WAIT_S * self._rate_hz) else 0

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
