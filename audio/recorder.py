"""Record from an input to a file that is safe at every moment.

The audio callback only copies into a ring. A thread takes from the ring,
writes, keeps the meter, and brings the file to the disk twice a second, so
that a crash costs less than the last second.
"""

import contextlib
import threading
import time
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from audio import devices
from audio.devices import Device
from audio.errors import AudioFailure
from audio.levels import FLOOR_DBFS, Level, LevelMeter
from audio.recordings import Ended, Recording
from audio.recovery import recover
from audio.ring import SampleRing
from audio.take_file import TakeFile, WriteEnded

__all__ = ["Ended", "Recorder", "RecorderState", "Recording", "recover"]

_DRAIN_EVERY_S = 0.05
_RING_S = 30.0
_STALL_S = 5.0
"""A stream that has been silent this long is gone; callbacks come many times a second."""

_FIRST_CALLBACK_S = 10.0
_FULL_SCALE = float(2**31)


class RecorderState(StrEnum):
    """What a recorder is doing."""

    CLOSED = "closed"
    OPENING = "opening"
    MONITORING = "monitoring"
    RECORDING = "recording"
    ENDED = "ended"


@dataclass(slots=True)
class _Losses:
    overruns: int = 0
    dropped_frames: int = 0


class Recorder:
    """Watch the level of an input, and record it.

    With a `path`, :meth:`start` records at once. Without one it only monitors,
    and :meth:`begin` turns the running stream into a recording with no gap.

    Parameters
    ----------
    path : Path or None
        The WAV file to create; it must not exist. None: monitor only.
    device : Device, optional
        Where to record from; the system's default without it.
    sample_rate_hz : int
        Preferred rate; the device's own is used when it refuses this one.
    channels : int
        Preferred number of channels; fewer when the device has fewer.
    pre_roll_s : float
        How much sound from before :meth:`begin` can be kept.
    on_ended : callable, optional
        Called with the recording, from a thread of the recorder, when it ends
        by anything but :meth:`stop`.
    """

    def __init__(
        self,
        path: Path | None = None,
        device: Device | None = None,
        sample_rate_hz: int = 48000,
        channels: int = 1,
        *,
        pre_roll_s: float = 0.0,
        on_ended: Callable[[Recording], None] | None = None,
    ) -> None:
        self._path = path
        self._device = device
        self.sample_rate_hz = sample_rate_hz
        self.channels = channels
        self._pre_roll_s = pre_roll_s
        self._on_ended = on_ended
        self._stream: Any = None
        self._state = RecorderState.CLOSED
        self._lock = threading.RLock()
        self._stop = threading.Event()
        self._heard = threading.Event()
        self._stream_finished = threading.Event()
        self._losses = _Losses()
        self._recent: deque[NDArray[np.int32]] = deque()
        self._take: TakeFile | None = None
        self._result: Recording | None = None
        self._failure: AudioFailure | None = None

    @property
    def state(self) -> RecorderState:
        """What the recorder is doing now."""
        if self._state in (RecorderState.MONITORING, RecorderState.RECORDING) and not (
            self._heard.is_set()
        ):
            return RecorderState.OPENING
        return self._state

    @property
    def elapsed_s(self) -> float:
        """Seconds recorded so far, counted in samples; 0 while monitoring."""
        take = self._take
        return 0.0 if take is None else take.frames / self.sample_rate_hz

    @property
    def losses(self) -> tuple[int, int]:
        """Overruns and dropped frames of the take so far."""
        return self._losses.overruns, self._losses.dropped_frames

    @property
    def ended(self) -> Recording | None:
        """The finished recording, once it has stopped or broken off."""
        return self._result

    def level(self) -> Level:
        """Return the latest level of the input.

        Returns
        -------
        Level
            The floor until the first sound arrives.
        """
        return self._meter.level if self._state != RecorderState.CLOSED else Level()

    def reset_level(self) -> None:
        """Let the meter forget its hold, highest peak and clipping count."""
        with self._lock:
            if self._state != RecorderState.CLOSED:
                self._meter.reset()

    def start(self) -> None:
        """Open the input, and record when a path was given.

        Returns as soon as the stream runs; :meth:`wait_until_heard` waits for
        the first sound, which some sound servers deliver after a second or two.

        Raises
        ------
        AudioFailure
            When the device will not open or the file cannot be created.
        """
        if self._state != RecorderState.CLOSED:
            raise RuntimeError("a recorder starts once")
        self._open_stream()
        self._state = RecorderState.MONITORING
        try:
            if self._path is not None:
                self.begin(self._path)
            self._stream.start()
        except Exception as error:
            self._discard()
            if type(error).__name__ == "PortAudioError":
                raise _will_not_open(self._device, error) from error
            raise
        devices.hold(self)
        self._thread = threading.Thread(target=self._run, name="recorder", daemon=True)
        self._thread.start()

    def wait_until_heard(self, timeout_s: float = _FIRST_CALLBACK_S) -> bool:
        """Wait until the device delivers.

        Parameters
        ----------
        timeout_s : float
            Wait no longer than this.

        Returns
        -------
        bool
            Whether sound has arrived.
        """
        return self._heard.wait(timeout_s)

    def begin(self, path: Path) -> None:
        """Record from now on, keeping the pre-roll.

        Parameters
        ----------
        path : Path
            The WAV file to create; it must not exist.

        Raises
        ------
        AudioFailure
            When the file cannot be created.
        """
        with self._lock:
            if self._state != RecorderState.MONITORING:
                raise RuntimeError("a recording begins while the input is monitored")
            self._take = TakeFile.create(path, self.sample_rate_hz, self.channels)
            self._losses = _Losses()
            self._meter.reset()
            for block in self._recent:
                self._consume(block)
            self._recent.clear()
            self._state = RecorderState.RECORDING

    def stop(self) -> Recording | None:
        """Stop and close everything.

        Returns
        -------
        Recording or None
            What was recorded, also when it broke off before; None when the
            input was only monitored.

        Raises
        ------
        AudioFailure
            When the input never delivered anything or the take could not be kept.
        """
        if self._state == RecorderState.CLOSED:
            return None
        self._stop.set()
        if threading.current_thread() is not self._thread:
            self._thread.join()
        if self._failure is not None:
            raise self._failure
        return self._result

    def release_for_scan(self) -> bool:
        """Refuse the scan: closing the input would lose sound."""
        return False

    def reopen_after_scan(self) -> None:
        """Nothing to do: the recorder never let go."""

    def _open_stream(self) -> None:
        sounddevice = devices.portaudio()
        device = self._device or devices.find_device("input")
        self._device = device
        self.channels = min(self.channels, device.channels)
        rates = dict.fromkeys((self.sample_rate_hz, device.default_sample_rate_hz))
        error: Exception | None = None
        for rate in rates:
            try:
                self._stream = sounddevice.InputStream(
                    samplerate=rate,
                    device=device.id,
                    channels=self.channels,
                    dtype="int32",
                    latency="high",
                    callback=self._callback,
                    finished_callback=self._stream_finished.set,
                )
            except sounddevice.PortAudioError as refused:
                error = refused
                continue
            self.sample_rate_hz = rate
            self._ring = SampleRing(round(_RING_S * rate), self.channels)
            self._meter = LevelMeter(rate)
            return
        raise _will_not_open(device, error)

    def _callback(self, block: NDArray[np.int32], frames: int, when: Any, status: Any) -> None:
        if status.input_overflow:
            self._losses.overruns += 1
        self._losses.dropped_frames += self._ring.write(block)
        self._last_callback = time.monotonic()
        self._heard.set()

    def _run(self) -> None:
        self._last_callback = time.monotonic() + _FIRST_CALLBACK_S - _STALL_S
        ended = Ended.STOPPED
        try:
            while not self._stop.wait(_DRAIN_EVERY_S):
                self._drain()
                stalled = time.monotonic() - self._last_callback > _STALL_S
                if self._stream_finished.is_set() or stalled:
                    ended = Ended.DEVICE_LOST
                    break
            self._close_stream()
            self._drain()
        except WriteEnded as broken:
            ended = broken.ended
            self._close_stream()
        self._finish(ended)

    def _drain(self) -> None:
        with self._lock:
            while len(block := self._ring.read(self.sample_rate_hz // 10)):
                self._consume(block)
            if self._take is not None:
                self._take.keep_safe()

    def _consume(self, block: NDArray[np.int32]) -> None:
        self._meter.update(block.astype(np.float32) / np.float32(_FULL_SCALE))
        if self._take is not None:
            self._take.append(block)
            return
        self._recent.append(block)
        kept = sum(len(recent) for recent in self._recent)
        while (
            self._recent and kept - len(self._recent[0]) >= self._pre_roll_s * self.sample_rate_hz
        ):
            kept -= len(self._recent.popleft())

    def _finish(self, ended: Ended) -> None:
        devices.release(self)
        with self._lock:
            self._state = RecorderState.ENDED
            take, level = self._take, self._meter.level
            if take is None:
                if ended == Ended.DEVICE_LOST:
                    self._failure = AudioFailure(
                        "The sound input has gone.", "Plug it in again and choose it."
                    )
                return
            try:
                self._result = take.finish(
                    ended,
                    overruns=self._losses.overruns,
                    dropped_frames=self._losses.dropped_frames,
                    clipped_samples=level.clipped_samples,
                    peak_dbfs=level.highest_dbfs if take.frames else FLOOR_DBFS,
                )
            except AudioFailure as failure:
                self._failure = failure
                return
        if ended != Ended.STOPPED and self._on_ended is not None:
            self._on_ended(self._result)

    def _close_stream(self) -> None:
        # A stream whose device is gone may refuse to close; there is nothing left to save in it.
        with contextlib.suppress(Exception):
            self._stream.close(ignore_errors=True)

    def _discard(self) -> None:
        self._close_stream()
        if self._take is not None:
            self._take.discard()
            self._take = None
        self._state = RecorderState.CLOSED


def _will_not_open(device: Device | None, error: Exception | None) -> AudioFailure:
    name = "The sound input" if device is None else f"The input '{device.name}'"
    return AudioFailure(
        f"{name} would not open ({error}).",
        "Close other programs that use it, or choose another input.",
    )
