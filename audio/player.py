"""Play a take: from anywhere, slowly, in a loop, without a click.

The output stream stays open while a page needs it, so that sound begins at
once. What is heard now is read from the stream's own clock.
"""

import contextlib
import threading
from collections.abc import Callable
from typing import Any

import numpy as np
from numpy.typing import NDArray

from audio import devices
from audio.devices import Device
from audio.errors import AudioFailure
from audio.feed import Feed, FeedPlan
from audio.playback import Playback
from audio.sources import SoundSource, make_source
from audio.stretching import FASTEST, SLOWEST

_AHEAD_S = 0.4
_LATENCY_S = 0.04
_IDLE_S = 0.02
_SETTLED_S = 0.25
"""Some sound servers take a few buffers at once and then wait a second before they sound."""

_SHORTEST_LOOP_S = 0.05


class Player:
    """One output, one sound.

    Everything but :meth:`open` and :meth:`close` returns at once and may be
    called before the output is open.

    Parameters
    ----------
    device : Device, optional
        Where to play; the system's default without it.
    preferred_rate_hz : int
        Rate of the output, when the device accepts it; else the device's own.
    on_finished : callable, optional
        Called from a thread of the player when the sound has come to its end.
    """

    def __init__(
        self,
        device: Device | None = None,
        *,
        preferred_rate_hz: int = 48000,
        on_finished: Callable[[], None] | None = None,
    ) -> None:
        self._device = device
        self._rate_hz = preferred_rate_hz
        self._channels = 2
        self._on_finished = on_finished
        self._samples: NDArray[np.float32] = np.zeros((0, 1), np.float32)
        self._samples_hz = preferred_rate_hz
        self._source: SoundSource = make_source(self._samples, preferred_rate_hz, self._rate_hz, 2)
        self._playback = Playback(self._rate_hz)
        self._plan = FeedPlan(0, None, 1.0)
        self._stream: Any = None
        self._closing = False
        self._underflows = 0
        self._rendered = 0
        self._failure: AudioFailure | None = None
        self._lock = threading.RLock()
        self._wake = threading.Event()
        self._running = threading.Event()
        self._worker: threading.Thread | None = None

    @property
    def is_open(self) -> bool:
        """Whether there is an output."""
        return self._stream is not None

    @property
    def failure(self) -> AudioFailure | None:
        """Why the output went away by itself, if it did."""
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
        return len(self._samples) / self._samples_hz

    @property
    def latency_s(self) -> float:
        """Delay of the output as its driver states it; 0 when closed."""
        return float(self._stream.latency) if self._stream is not None else 0.0

    @property
    def underruns(self) -> int:
        """How often the output had to play silence because sound came too late."""
        return self._underflows + self._playback.starved

    @property
    def position_s(self) -> float:
        """The place that is heard at this moment, in seconds of the sound."""
        stream = self._stream
        place = None
        if stream is not None and self.is_playing:
            with contextlib.suppress(Exception):
                place = self._playback.place_at(float(stream.time))
        if place is None or not self.is_playing:
            feed = self._playback.incoming or self._playback.current
            place = feed.position if feed is not None else float(self._plan.start_frame)
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
        self._replan(speed=min(max(float(speed), SLOWEST), FASTEST))

    def open(self) -> None:
        """Open the output.

        Raises
        ------
        AudioFailure
            When there is no output or it will not open.
        """
        if self._stream is not None:
            return
        self._open_stream()
        devices.hold(self)
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
            Whether the output runs.
        """
        return self._running.wait(timeout_s)

    def close(self) -> None:
        """Close the output; the place is kept."""
        devices.release(self)
        self._closing = True
        self._wake.set()
        if self._worker is not None:
            self._worker.join()
            self._worker = None
        self._close_stream()

    def load(self, samples: NDArray[np.float32], sample_rate_hz: int) -> None:
        """Take another sound; playing stops.

        Parameters
        ----------
        samples : ndarray of float32, shape (n,) or (n, channels)
            The sound; it is not copied and must not change.
        sample_rate_hz : int
            Its rate; it need not be the output's.
        """
        with self._lock:
            self._samples, self._samples_hz = samples, sample_rate_hz
            self._playback.playing = False
            self._source = make_source(samples, sample_rate_hz, self._rate_hz, self._channels)
            self._plan = FeedPlan(0, None, self._plan.speed)
            self._feed_from(self._plan)

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
            if feed is None or feed.is_over:
                self._replan(start_frame=self._plan.loop[0] if self._plan.loop else 0)
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
            Seconds of the sound; held within it.
        """
        frame = round(min(max(position_s, 0.0), self.duration_s) * self._rate_hz)
        self._replan(start_frame=frame)

    def loop(self, start_s: float, end_s: float) -> None:
        """Play a stretch again and again, its length kept exactly.

        Parameters
        ----------
        start_s, end_s : float
            The stretch; held within the sound, and at least 50 ms long.
        """
        last = self._source.frames
        shortest = round(_SHORTEST_LOOP_S * self._rate_hz)
        start = min(max(round(start_s * self._rate_hz), 0), max(last - shortest, 0))
        end = min(max(round(end_s * self._rate_hz), start + shortest), last)
        place = round(self._place())
        self._replan(start_frame=place if start <= place < end else start, loop=(start, end))

    def loop_off(self) -> None:
        """Play on past the end of the loop."""
        with self._lock:
            self._plan = FeedPlan(round(self._place()), None, self._plan.speed)
            self._feed_from(self._plan)

    def release_for_scan(self) -> bool:
        """Let go of the output while devices are scanned."""
        self._closing = True
        self._close_stream()
        return True

    def reopen_after_scan(self) -> None:
        """Open the output again, if it is still there."""
        self._closing = False
        try:
            self._open_stream()
        except AudioFailure as failure:
            self._playback.playing = False
            self._failure = failure

    def _place(self) -> float:
        """Where the feed has come to: the next frame on its way to the output."""
        feed = self._playback.incoming or self._playback.current
        return feed.position if feed is not None else float(self._plan.start_frame)

    def _replan(
        self,
        start_frame: int | None = None,
        loop: tuple[int, int] | None = None,
        speed: float | None = None,
    ) -> None:
        with self._lock:
            place = round(self._place()) if start_frame is None else start_frame
            loop = self._plan.loop if loop is None else loop
            if loop is not None and place >= loop[1]:
                place = loop[0]
            self._plan = FeedPlan(place, loop, self._plan.speed if speed is None else speed)
            self._playback.finished = False
            self._feed_from(self._plan)

    def _feed_from(self, plan: FeedPlan) -> None:
        self._playback.incoming = Feed(self._source, self._rate_hz, plan)
        self._wake.set()

    def _work(self) -> None:
        told = True
        while not self._closing:
            self._wake.wait(_IDLE_S)
            self._wake.clear()
            for feed in (self._playback.incoming, self._playback.current):
                while (
                    feed is not None
                    and not feed.exhausted
                    and feed.buffered < _AHEAD_S * self._rate_hz
                ):
                    feed.produce()
                    if self._wake.is_set():
                        break
            if self._playback.finished and not told and self._on_finished is not None:
                self._on_finished()
            told = self._playback.finished

    def _open_stream(self) -> None:
        sounddevice = devices.portaudio()
        device = self._device or devices.find_device("output")
        error: Exception | None = None
        for rate in dict.fromkeys((self._rate_hz, device.default_sample_rate_hz)):
            try:
                stream = sounddevice.OutputStream(
                    samplerate=rate,
                    device=device.id,
                    channels=min(2, device.channels),
                    dtype="float32",
                    latency=_LATENCY_S,
                    callback=self._callback,
                    finished_callback=self._stream_ended,
                )
                self._adopt(rate, min(2, device.channels))
                stream.start()
            except sounddevice.PortAudioError as refused:
                error = refused
                continue
            self._stream, self._failure, self._closing = stream, None, False
            return
        raise AudioFailure(
            f"The output '{device.name}' would not open ({error}).",
            "Close other programs that use it, or choose another output.",
        )

    def _adopt(self, rate_hz: int, channels: int) -> None:
        """Prepare the loaded sound for the output's format, at the same place."""
        with self._lock:
            if (rate_hz, channels) == (self._rate_hz, self._channels):
                return
            scale = rate_hz / self._rate_hz
            loop = self._plan.loop
            volume = self._playback.volume
            start = round(self._place() * scale)
            self._plan = FeedPlan(
                start,
                None if loop is None else (round(loop[0] * scale), round(loop[1] * scale)),
                self._plan.speed,
            )
            self._rate_hz, self._channels = rate_hz, channels
            self._playback = Playback(rate_hz)
            self._playback.volume = volume
            self._source = make_source(self._samples, self._samples_hz, rate_hz, channels)
            self._feed_from(self._plan)

    def _close_stream(self) -> None:
        stream, self._stream = self._stream, None
        self._running.clear()
        self._rendered = 0
        if stream is not None:
            # A stream whose device is gone may refuse to close; there is nothing to save in it.
            with contextlib.suppress(Exception):
                stream.close(ignore_errors=True)

    def _callback(self, out: NDArray[np.float32], frames: int, when: Any, status: Any) -> None:
        if status.output_underflow and self._playback.playing:
            self._underflows += 1
        self._rendered += frames
        if self._rendered > _SETTLED_S * self._rate_hz and not self._running.is_set():
            self._running.set()
        self._playback.render(out, when.outputBufferDacTime)

    def _stream_ended(self) -> None:
        if self._closing:
            return
        self._playback.playing = False
        self._failure = AudioFailure(
            "The sound output has gone.", "Plug it in again, or choose another output."
        )
