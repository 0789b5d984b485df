"""Sound made ahead of time for the output: from a place, at a speed, looping.

A worker thread produces, the audio callback takes. Each side keeps to its own
end of a queue, so neither waits for the other.
"""

from collections import deque
from collections.abc import Generator, Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audio.sources import SoundSource
from audio.stretching import StretchStream, cross_fade

FloatArray = NDArray[np.float32]

FADE_S = 0.005
"""Long enough to hide a jump, too short to be heard as a fade."""

_PLAIN_PIECE_S = 0.1
_STRETCHED_PIECE_S = 0.12
"""Stretching holds the interpreter; short pieces let the audio callback in between."""


@dataclass(frozen=True, slots=True)
class FeedPlan:
    """What to play; all places in frames of the output's rate.

    Attributes
    ----------
    start_frame : int
        Where to begin.
    loop : tuple of int, or None
        First frame of the loop and the one after its last.
    speed : float
        1 is as recorded.
    joins : bool
        Whether it goes on where the feed before it comes to `start_frame`,
        instead of taking over at once.
    joins_at : int, or None
        Where `start_frame` lies in the sound before, when this is another sound;
        None for the same sound.
    """

    start_frame: int
    loop: tuple[int, int] | None
    speed: float
    joins: bool = False
    joins_at: int | None = None


@dataclass(frozen=True, slots=True)
class Piece:
    """Sound and the place in the source it stands for."""

    samples: FloatArray
    start_frame: float
    frames_per_output: float


class Feed:
    """Sound on its way to the output.

    Parameters
    ----------
    source : SoundSource
        Where the sound comes from, at the output's rate.
    rate_hz : int
        The output's rate.
    plan : FeedPlan
        What to play.

    Attributes
    ----------
    source : SoundSource
        As given.
    """

    def __init__(self, source: SoundSource, rate_hz: int, plan: FeedPlan) -> None:
        self.plan = plan
        self.exhausted = False
        self.position = float(plan.start_frame)
        self.source = source
        self._rate_hz = rate_hz
        self._fade = round(FADE_S * rate_hz)
        self._pieces = self._all_passes()
        self._queue: deque[Piece] = deque()
        self._offset = 0
        self._produced = 0
        self._taken = 0

    @property
    def buffered(self) -> int:
        """Output frames that are ready."""
        return self._produced - self._taken

    @property
    def is_over(self) -> bool:
        """Whether everything has been taken."""
        return self.exhausted and not self.buffered

    def produce(self) -> None:
        """Make the next piece; for the worker thread."""
        piece = next(self._pieces, None)
        if piece is None:
            self.exhausted = True
        elif len(piece.samples):
            self._queue.append(piece)
            self._produced += len(piece.samples)

    def take(self, count: int) -> list[Piece]:
        """Take out up to `count` frames; for the audio callback.

        Parameters
        ----------
        count : int
            Frames wanted.

        Returns
        -------
        list of Piece
            In order; fewer frames when no more are ready.
        """
        taken: list[Piece] = []
        while count > 0 and self._queue:
            head = self._queue[0]
            samples = head.samples[self._offset : self._offset + count]
            start = head.start_frame + self._offset * head.frames_per_output
            taken.append(Piece(samples, start, head.frames_per_output))
            count -= len(samples)
            self._taken += len(samples)
            self._offset += len(samples)
            self.position = start + len(samples) * head.frames_per_output
            if self._offset >= len(head.samples):
                self._queue.popleft()
                self._offset = 0
        return taken

    def _all_passes(self) -> Iterator[Piece]:
        loop = self.plan.loop
        if loop is None:
            yield from self._last_pass()
            return
        start = self.plan.start_frame
        tail: FloatArray | None = None
        while True:
            tail = yield from self._one_pass(start, loop[1], tail)
            start = loop[0]

    def _one_pass(
        self, start: int, end: int, fading: FloatArray | None
    ) -> Generator[Piece, None, FloatArray | None]:
        """Play from `start` to `end` under the fading rest of the pass before."""
        follow: FloatArray | None = None
        for piece, overrun in self._stretch(start, end):
            if fading is not None:
                faded = piece.samples.copy()
                cross_fade(faded, fading[: self._fade])
                yield Piece(faded, piece.start_frame, piece.frames_per_output)
                fading = None
            else:
                yield piece
            follow = overrun
        return follow

    def _last_pass(self) -> Iterator[Piece]:
        """Play to the end of the sound, which may stop at any level: fade its last moment."""
        waiting: Piece | None = None
        for piece, _ in self._stretch(self.plan.start_frame, self.source.frames):
            if waiting is not None:
                yield waiting
            waiting = piece
        if waiting is not None:
            samples = waiting.samples.copy()
            length = min(self._fade, len(samples))
            if length:
                fall = 1 - (np.arange(length, dtype=np.float32) + 0.5) / length
                samples[-length:] *= fall[:, np.newaxis]
            yield Piece(samples, waiting.start_frame, waiting.frames_per_output)

    def _stretch(self, start: int, end: int) -> Iterator[tuple[Piece, FloatArray | None]]:
        if self.plan.speed == 1.0:
            step = round(_PLAIN_PIECE_S * self._rate_hz)
            for at in range(start, end, step):
                stop = min(at + step, end)
                overrun = self.source.read(stop, stop + self._fade) if stop == end else None
                yield Piece(self.source.read(at, stop), at, 1.0), overrun
            return
        stream = StretchStream(
            self.source,
            self._rate_hz,
            self.plan.speed,
            start,
            end,
            longest_piece_s=_STRETCHED_PIECE_S,
        )
        while (stretched := stream.read()) is not None:
            span = stretched.end_frame - stretched.start_frame
            per_output = span / max(len(stretched.samples), 1)
            yield Piece(stretched.samples, stretched.start_frame, per_output), stream.overrun()
