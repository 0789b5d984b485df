"""Record from an input to a file that is safe at every moment.

The audio callback only copies into a ring. A thread takes from the ring,
writes, keeps the meter, and brings the file to the disk twice a second, so
that a crash costs less than the last second.

Longer than 300 lines for its docstrings: one class with the states of one recording.
"""

import threading
from collections.abc import Callable
from enum import StrEnum
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from audio import devices
from audio.devices import Device
from audio.errors import AudioFailure
from audio.input import FIRST_SOUND_S, Input
from audio.intake import Intake
from audio.levels import Level
from audio.recordings import Ended, Recording
from audio.recovery import recover
from audio.take_file import WriteEnded
from audio.waking import wait_awake

__all__ = ["Ended", "Recorder", "RecorderState", "Recording", "recover"]

_DRAIN_EVERY_S = 0.05


class RecorderState(StrEnum):
    """What a recorder is doing."""

    CLOSED = "closed"
    OPENING = "opening"
    MONITORING = "monitoring"
    RECORDING = "recording"
    ENDED = "ended"


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
    first_channel : int, optional
        Which of the device's channels is the first to be recorded, counted from 0; without
        it the system gives what it gives to whoever asks for so many channels.
    pre_roll_s : float
        How much sound from before :meth:`begin` can be kept.
    latency_s : float, optional
        Buffer to ask the driver for; its own long one where left out.
    on_ended : callable, optional
        Called with the recording, from a thread of the recorder, when it ends
        by anything but :meth:`stop`.
    on_block : callable, optional
        Given every block of sound, float32 of shape (n, channels) and at most
        0.1 s long, from a thread of the recorder: for listening along without
        keeping anything. It has to be quick.
    """

    def __init__(
        self,
        path: Path | None = None,
        device: Device | None = None,
        sample_rate_hz: int = 48000,
        channels: int = 1,
        *,
        first_channel: int | None = None,
        pre_roll_s: float = 0.0,
        latency_s: float | None = None,
        on_ended: Callable[[Recording], None] | None = None,
        on_block: Callable[[NDArray[np.float32]], None] | None = None,
    ) -> None:
        self._path = path
        self._input = Input(device, latency_s)
        self.sample_rate_hz = sample_rate_hz
        self.channels = channels
        self._first_channel = first_channel
        self._pre_roll_s = pre_roll_s
        self._on_ended = on_ended
        self._on_block = on_block
        self._state = RecorderState.CLOSED
        self._lock = threading.RLock()
        self._stop = threading.Event()
        self._intake = Intake(sample_rate_hz, channels, pre_roll_s)
        self._result: Recording | None = None
        self._failure: AudioFailure | None = None

    @property
    def state(self) -> RecorderState:
        """What the recorder is doing now."""
        waiting = self._state in (RecorderState.MONITORING, RecorderState.RECORDING)
        return RecorderState.OPENING if waiting and not self._input.is_heard else self._state

    @property
    def elapsed_s(self) -> float:
        """Seconds recorded so far, counted in samples; 0 while monitoring."""
        return self._intake.take_frames / self.sample_rate_hz

    @property
    def losses(self) -> tuple[int, int]:
        """Overruns and dropped frames of the take so far."""
        return self._input.overruns, self._input.dropped_frames

    @property
    def ended(self) -> Recording | None:
        """The finished recording, once it has stopped or broken off."""
        return self._result

    @property
    def failure(self) -> AudioFailure | None:
        """Why there is no recording although the recorder has ended."""
        return self._failure

    @property
    def silent_s(self) -> float:
        """For how long the input has delivered nothing but zeros.

        A microphone always has some noise: seconds of pure silence mean that it
        is muted, or that this program may not listen.
        """
        return self._intake.silent_frames / self.sample_rate_hz

    def level(self) -> Level:
        """Return the latest level of the input.

        Returns
        -------
        Level
            The floor until the first sound arrives.
        """
        return self._intake.meter.level

    def reset_level(self) -> None:
        """Let the meter forget its hold, highest peak and clipping count."""
        with self._lock:
            self._intake.meter.reset()

    def frame_at(self, clock_s: float) -> float | None:
        """Say which frame of the input was heard at a moment.

        Parameters
        ----------
        clock_s : float
            The moment, on PortAudio's clock.

        Returns
        -------
        float or None
            Frames since the input was opened; None before the first sound.
        """
        return self._input.frame_at(clock_s)

    def take_s_at(self, clock_s: float) -> float | None:
        """Say which place in the take was recorded at a moment.

        Parameters
        ----------
        clock_s : float
            The moment, on PortAudio's clock, such as
            :meth:`audio.player.Player.heard_at_s` gives.

        Returns
        -------
        float or None
            Seconds of the take; None before the first sound and when there is
            no take. What the drivers do not know of their delays is still in it.
        """
        frame = self._input.frame_at(clock_s)
        if frame is None or not self._intake.has_take:
            return None
        return (frame - self._intake.take_begins_at) / self.sample_rate_hz

    def start(self) -> None:
        """Open the input, and record when a path was given.

        Returns as soon as the stream runs; :meth:`wait_until_heard` waits for
        the first sound, which some sound servers deliver after a second or two.
        Opening takes a moment, so not for the window's thread.

        Raises
        ------
        AudioFailure
            When the device will not open or the file cannot be created.
        """
        if self._state != RecorderState.CLOSED:
            raise RuntimeError("a recorder starts once")
        self._input.open(self.sample_rate_hz, self.channels, self._first_channel)
        self.sample_rate_hz, self.channels = self._input.sample_rate_hz, self._input.channels
        self._intake = Intake(self.sample_rate_hz, self.channels, self._pre_roll_s)
        self._state = RecorderState.MONITORING
        try:
            if self._path is not None:
                self.begin(self._path)
            self._input.start()
        except AudioFailure:
            self._input.close()
            self._intake.discard()
            self._state = RecorderState.CLOSED
            raise
        devices.hold(self._input)
        self._thread = threading.Thread(target=self._run, name="recorder", daemon=True)
        self._thread.start()

    def wait_until_heard(self, timeout_s: float = FIRST_SOUND_S) -> bool:
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
        return self._input.wait_until_heard(timeout_s)

    def begin(self, path: Path, pre_roll_s: float | None = None) -> None:
        """Record from now on, keeping the pre-roll.

        Parameters
        ----------
        path : Path
            The WAV file to create; it must not exist.
        pre_roll_s : float, optional
            How much of the pre-roll to keep; all of it where left out.

        Raises
        ------
        AudioFailure
            When the file cannot be created; the input is monitored on.
        """
        with self._lock:
            if self._state == RecorderState.ENDED:
                raise self._failure or _gone()
            if self._state != RecorderState.MONITORING:
                raise RuntimeError("a recording begins while the input is monitored")
            self._intake.begin(path, pre_roll_s)
            self._input.forget_losses()
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

    def _run(self) -> None:
        ended = Ended.STOPPED
        try:
            while not self._stop.is_set():
                awake = wait_awake(self._stop, _DRAIN_EVERY_S)
                self._drain()
                if not awake and self._intake.has_take:
                    # The take has a hole from here on: better two takes than a false one.
                    ended = Ended.SUSPENDED
                    break
                if self._input.is_lost:
                    ended = Ended.DEVICE_LOST
                    break
            self._input.close()
            self._drain()
        except WriteEnded as broken:
            ended = broken.ended
            self._input.close()
        self._finish(ended)

    def _drain(self) -> None:
        with self._lock:
            while len(block := self._input.ring.read(self.sample_rate_hz // 10)):
                samples = self._intake.consume(block)
                if self._on_block is not None:
                    self._on_block(samples)
            self._intake.keep_safe()

    def _finish(self, ended: Ended) -> None:
        devices.release(self._input)
        with self._lock:
            try:
                self._result = self._intake.finish(
                    ended, self._input.overruns, self._input.dropped_frames
                )
            except AudioFailure as failure:
                self._failure = failure
            if ended == Ended.DEVICE_LOST and not self._intake.has_take:
                self._failure = _gone()
            self._state = RecorderState.ENDED
        if ended != Ended.STOPPED and self._result is not None and self._on_ended is not None:
            self._on_ended(self._result)


def _gone() -> AudioFailure:
    return AudioFailure("The sound input has gone.", "Plug it in again and choose it.")
