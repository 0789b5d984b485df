"""Play a take: from anywhere, slowly, in a loop, without a click.

The output stream stays open while a page needs it, so that sound begins at
once. What is heard now is read from the stream's own clock.

Longer than 300 lines because one class holds everything a page may ask of an output;
what is made of it lies in :mod:`audio.feed` and :mod:`audio.playback`.
"""

import threading
from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from audio import devices
from audio.devices import Device
from audio.errors import AudioFailure
from audio.feed import Feed, FeedPlan
from audio.output import LATENCY_S, Output
from audio.playback import Playback
from audio.sources import SoundSource, make_source, source_of
from audio.stretching import FASTEST, SLOWEST

_AHEAD_S = 0.4
_IDLE_S = 0.02
_LEAD_S = 0.1
"""How far ahead a change of speed takes over: what its first piece needs to be made."""

_SWITCH_LEAD_S = 0.05
"""How far ahead another sound takes over, where nothing has to be stretched for it."""

_SHORTEST_LOOP_S = 0.05


class Player:
    """One output, one sound.

    Everything but :meth:`open`, :meth:`close` and the first :meth:`play` returns
    at once. Everything but playing may be done before the output is open.

    Parameters
    ----------
    device : Device, optional
        Where to play; the system's default without it.
    preferred_rate_hz : int
        Rate of the output, when the device accepts it; else the device's own.
    latency_s : float
        Buffer to ask the driver for: sound follows a key that much later, and a
        machine may be busy that long without a gap in the sound.
    on_finished : callable, optional
        Called from a thread of the player when the sound has come to its end.
    """

    def __init__(
        self,
        device: Device | None = None,
        *,
        preferred_rate_hz: int = 48000,
        latency_s: float = LATENCY_S,
        on_finished: Callable[[], None] | None = None,
    ) -> None:
        self._rate_hz = preferred_rate_hz
        self._channels = 2
        self._on_finished = on_finished
        self._sound = source_of(np.zeros((0, 1), np.float32))
        self._sound_hz = preferred_rate_hz
        self._source: SoundSource = self._sound
        self._playback = Playback(self._rate_hz)
        self._plan = FeedPlan(0, None, 1.0)
        self._output = Output(device, self._adopt, self._render, self._lost, latency_s)
        self._failure: AudioFailure | None = None
        self._lock = threading.RLock()
        self._wake = threading.Event()
        self._quit = threading.Event()
        self._worker: threading.Thread | None = None

    @property
    def is_open(self) -> bool:
        """Whether there is an output."""
        return self._output.is_open

    @property
    def failure(self) -> AudioFailure | None:
        """Why the output went away by itself, if it did; cleared by opening it again."""
        return self._failure

    @property
    def is_playing(self) -> bool:
        """Whether sound is on its way to the output."""
        return self._playback.playing and self.is_open

    @property
    def is_finished(self) -> bool:
        """Whether the sound came to its end by itself."""
        return self._playback.finished

    @property
    def duration_s(self) -> float:
        """Length of the sound."""
        return self._sound.frames / self._sound_hz

    @property
    def latency_s(self) -> float:
        """Delay of the output as its driver states it; 0 when closed."""
        return self._output.latency_s

    @property
    def underruns(self) -> int:
        """How often the output had to play silence because sound came too late."""
        return self._output.underflows + self._playback.starved

    @property
    def position_s(self) -> float:
        """The place that is heard at this moment, in seconds of the sound."""
        now_s = self._output.now_s if self.is_playing else None
        place = None if now_s is None else self._playback.place_at(now_s)
        if place is None:
            place = self._place()
        return min(place / self._rate_hz, self.duration_s)

    @property
    def volume(self) -> float:
        """Linear gain, 0 to 1."""
        return self._playback.volume

    @volume.setter
    def volume(self, volume: float) -> None:
        self._playback.volume = min(max(float(volume), 0.0), 1.0)

    @property
    def speed(self) -> float:
        """Speed, 0.25 to 1.5; the pitch stays."""
        return self._plan.speed

    @speed.setter
    def speed(self, speed: float) -> None:
        self._go_on(self._plan.loop, min(max(float(speed), SLOWEST), FASTEST))

    def heard_at_s(self, position_s: float) -> float | None:
        """Say when a place is heard, if playing goes on as it does now.

        Parameters
        ----------
        position_s : float
            The place in the sound.

        Returns
        -------
        float or None
            The moment on PortAudio's clock, past or future; None when nothing
            was played yet.
        """
        return self._playback.moment_of(position_s * self._rate_hz)

    def open(self) -> None:
        """Open the output; takes a moment, so not for the window's thread.

        Raises
        ------
        AudioFailure
            When there is no output or it will not open.
        """
        if self.is_open:
            return
        self._output.close()
        self._output.open(self._rate_hz)
        self._failure = None
        devices.hold(self)
        if self._worker is None:
            self._quit.clear()
            self._worker = threading.Thread(target=self._work, name="player", daemon=True)
            self._worker.start()

    def wait_until_running(self, timeout_s: float = 10.0) -> bool:
        """Wait until the output sounds without delay; after opening that may take two seconds.

        Parameters
        ----------
        timeout_s : float
            Wait no longer than this.

        Returns
        -------
        bool
            Whether it does.
        """
        return self._output.wait_until_running(timeout_s)

    def close(self) -> None:
        """Close the output; the place is kept."""
        devices.release(self)
        self._playback.playing = False
        self._quit.set()
        self._wake.set()
        if self._worker is not None:
            self._worker.join()
            self._worker = None
        self._output.close()

    def load(
        self,
        sound: NDArray[np.float32] | SoundSource,
        sample_rate_hz: int,
        *,
        position_s: float = 0.0,
        keep_playing: bool = False,
    ) -> None:
        """Take another sound; the loop ends, the speed and volume stay.

        Parameters
        ----------
        sound : ndarray of float32, shape (n,) or (n, channels), or SoundSource
            The sound; it is not copied and must not change. Of long files
            :func:`audio.sources.open_source` makes a source that opens at once.
        sample_rate_hz : int
            Its rate; it need not be the output's.
        position_s : float
            Where to begin in it.
        keep_playing : bool
            Cross-fade into it while the other plays, as for comparing takes;
            otherwise playing stops.
        """
        with self._lock:
            self._sound, self._sound_hz = source_of(sound), sample_rate_hz
            if not keep_playing:
                self._playback.playing = False
            self._source = make_source(self._sound, sample_rate_hz, self._rate_hz, self._channels)
            self._plan = FeedPlan(0, None, self._plan.speed)
            self.seek(position_s)

    def switch(
        self,
        sound: NDArray[np.float32] | SoundSource,
        sample_rate_hz: int,
        place: Callable[[float], float],
    ) -> None:
        """Go over to another sound at the matching place, without a gap while it plays.

        Parameters
        ----------
        sound : ndarray of float32, shape (n,) or (n, channels), or SoundSource
            The other sound, see :meth:`load`; speed and volume stay.
        sample_rate_hz : int
            Its rate.
        place : callable
            Gives the place in it, in seconds, for a place in the sound of now; the
            ends of a loop are mapped too.
        """
        with self._lock:
            old, loop, speed = self._playback.current, self._plan.loop, self._plan.speed
            here = self._place()
            joins = old is not None and self._playback.playing and self._playback.incoming is None
            if joins:
                lead_s = _SWITCH_LEAD_S if speed == 1.0 else _LEAD_S
                here += lead_s * self._rate_hz * speed
                if loop is not None and here >= loop[1]:
                    here = loop[0] + (here - loop[1]) % (loop[1] - loop[0])
            self._sound, self._sound_hz = source_of(sound), sample_rate_hz
            self._source = make_source(self._sound, sample_rate_hz, self._rate_hz, self._channels)

            def there(frame: float) -> int:
                mapped = round(place(frame / self._rate_hz) * self._rate_hz)
                return min(max(mapped, 0), self._source.frames)

            if loop is not None:
                loop = self._held_loop(there(loop[0]), there(loop[1]))
            frame = there(here)
            if loop is not None and not loop[0] <= frame < loop[1]:
                frame = loop[0]
            self._use(FeedPlan(frame, loop, speed, joins, round(here)))

    def play(self) -> None:
        """Play on from the place; from the start (of the loop) after the end.

        Raises
        ------
        AudioFailure
            When there is no output.
        """
        self.open()
        with self._lock:
            feed = self._playback.incoming or self._playback.current
            if feed is None or feed.is_over or feed.position >= self._source.frames:
                self._begin_at(self._plan.loop[0] if self._plan.loop else 0)
            self._playback.finished = False
            self._playback.playing = True
        self._wake.set()

    def pause(self) -> None:
        """Stop at the place, with a short fade."""
        self._playback.playing = False

    def seek(self, position_s: float) -> None:
        """Go to a place, playing or not.

        Parameters
        ----------
        position_s : float
            Seconds of the sound; held within it. Behind the end of a loop it
            is the loop's start.
        """
        self._begin_at(round(min(max(position_s, 0.0), self.duration_s) * self._rate_hz))

    def loop(self, start_s: float, end_s: float) -> None:
        """Play a stretch again and again, its length kept exactly.

        Parameters
        ----------
        start_s, end_s : float
            The stretch; held within the sound, and at least 50 ms long.
        """
        loop = self._held_loop(round(start_s * self._rate_hz), round(end_s * self._rate_hz))
        if loop is not None:
            self._go_on(loop, self._plan.speed)

    def loop_off(self) -> None:
        """Play on past the end of the loop."""
        self._go_on(None, self._plan.speed)

    def release_for_scan(self) -> bool:
        """Let go of the output while devices are scanned."""
        self._output.close()
        return True

    def reopen_after_scan(self) -> None:
        """Open the output again, if it is still there."""
        try:
            self._output.open(self._rate_hz)
        except AudioFailure as failure:
            self._playback.playing = False
            self._failure = failure

    def _place(self) -> float:
        """Where the feed has come to: the next frame on its way to the output."""
        feed = self._playback.incoming or self._playback.current
        return feed.position if feed is not None else float(self._plan.start_frame)

    def _held_loop(self, start: int, end: int) -> tuple[int, int] | None:
        """Hold a loop within the sound and long enough; None where the sound is empty."""
        last = self._source.frames
        shortest = round(_SHORTEST_LOOP_S * self._rate_hz)
        start = min(max(start, 0), max(last - shortest, 0))
        end = min(max(end, start + shortest), last)
        return (start, end) if end > start else None

    def _begin_at(self, frame: int) -> None:
        with self._lock:
            loop = self._plan.loop
            if loop is not None and frame >= loop[1]:
                frame = loop[0]
            self._use(FeedPlan(frame, loop, self._plan.speed))

    def _go_on(self, loop: tuple[int, int] | None, speed: float) -> None:
        """Change how it is played; the change takes over a little ahead, without a jump."""
        with self._lock:
            playback = self._playback
            joins = playback.playing and playback.current is not None
            if playback.incoming is not None and not playback.incoming.plan.joins:
                joins = False
            place = self._place()
            if joins and playback.current is not None:
                old = playback.current
                place = old.position + _LEAD_S * self._rate_hz * old.plan.speed
                if old.plan.loop not in (None, loop) and place >= old.plan.loop[1]:
                    # The old feed turns back before it gets there.
                    joins, place = False, old.position
            frame = min(round(place), self._source.frames)
            if loop is not None and not loop[0] <= frame < loop[1]:
                wraps = loop == self._plan.loop and frame >= loop[1]
                frame = loop[0] + (frame - loop[1]) % (loop[1] - loop[0]) if wraps else loop[0]
                joins = joins and wraps
            self._use(FeedPlan(frame, loop, speed, joins))

    def _use(self, plan: FeedPlan) -> None:
        self._plan = plan
        self._playback.finished = False
        self._playback.incoming = Feed(self._source, self._rate_hz, plan)
        self._wake.set()

    def _work(self) -> None:
        ends_told = self._playback.ends
        while not self._quit.is_set():
            self._wake.wait(_IDLE_S)
            self._wake.clear()
            for feed in (self._playback.incoming, self._playback.current):
                self._keep_ahead(feed)
            ends = self._playback.ends
            if ends > ends_told and self._on_finished is not None:
                self._on_finished()
            ends_told = ends

    def _keep_ahead(self, feed: Feed | None) -> None:
        while feed is not None and not feed.exhausted and not self._wake.is_set():
            if feed.buffered >= _AHEAD_S * self._rate_hz:
                return
            feed.produce()

    def _adopt(self, rate_hz: int, channels: int) -> None:
        """Prepare the loaded sound for the output's format, at the same place."""
        with self._lock:
            if (rate_hz, channels) == (self._rate_hz, self._channels):
                return
            scale = rate_hz / self._rate_hz
            loop = self._plan.loop
            scaled = None if loop is None else (round(loop[0] * scale), round(loop[1] * scale))
            frame = round(self._place() * scale)
            self._rate_hz, self._channels = rate_hz, channels
            self._playback = self._playback.at_rate(rate_hz)
            self._source = make_source(self._sound, self._sound_hz, rate_hz, channels)
            self._use(FeedPlan(frame, scaled, self._plan.speed))

    def _render(self, out: NDArray[np.float32], heard_at_s: float) -> None:
        self._playback.render(out, heard_at_s)

    def _lost(self) -> None:
        self._playback.playing = False
        self._failure = AudioFailure(
            "The sound output has gone.", "Plug it in again, or choose another output."
        )
