"""An open way from a microphone into a ring; the callback does nothing but copy."""

import itertools
import statistics
import threading
import time
from collections import deque
from typing import Any

import numpy as np
from numpy.typing import NDArray

from audio import devices
from audio.closing import close_stream
from audio.devices import Device
from audio.errors import AudioFailure
from audio.ring import SampleRing

_RING_S = 30.0
"""A disk may take this long over one write before a sample is lost."""

_STALL_S = 5.0
"""A stream that has been silent this long is gone; callbacks come many times a second."""

_CLOCK_READINGS = 128

FIRST_SOUND_S = 10.0
"""How long a device may take to deliver for the first time."""


class Input:
    """A stream from one device.

    Parameters
    ----------
    device : Device, optional
        Where to record from; the system's default without it.
    latency_s : float, optional
        Buffer to ask the driver for; its own long one where left out.

    Attributes
    ----------
    ring : SampleRing
        What has been heard and not been taken yet, left-justified 32 bit.
    sample_rate_hz, channels : int
        Format of the ring.
    overruns : int
        How often the device reported that samples were lost on their way here.
    dropped_frames : int
        Frames lost: the gaps of those overruns by the device's clock, and what
        found no room in the ring.
    """

    ring: SampleRing
    sample_rate_hz: int
    channels: int

    def __init__(self, device: Device | None, latency_s: float | None = None) -> None:
        self._device = device
        self._latency: float | str = "high" if latency_s is None else latency_s
        self._stream: Any = None
        self._heard = threading.Event()
        self._ended = threading.Event()
        self._left_behind = False
        self._last_callback = 0.0
        self._expected_at_s: float | None = None
        self._taken = slice(None)
        self._delivered = 0
        self._starts_s: deque[float] = deque(maxlen=_CLOCK_READINGS)
        self.overruns = 0
        self.dropped_frames = 0

    @property
    def is_heard(self) -> bool:
        """Whether the device has delivered anything yet."""
        return self._heard.is_set()

    @property
    def is_lost(self) -> bool:
        """Whether the device went away or fell silent for good."""
        stalled = time.monotonic() - self._last_callback > _STALL_S
        return self._ended.is_set() or stalled

    def open(self, sample_rate_hz: int, channels: int, first_channel: int | None = None) -> None:
        """Open the stream; it does not run yet.

        Parameters
        ----------
        sample_rate_hz : int
            Rate to try before the device's own.
        channels : int
            Channels wanted; fewer when the device has fewer.
        first_channel : int, optional
            The first of the device's channels to take, counted from 0. Without it the
            system is asked for so many channels and may mix the device's into them.

        Raises
        ------
        AudioFailure
            When there is no input or it will not open.
        """
        sounddevice = devices.portaudio()
        device = devices.find_device("input", self._device.key if self._device else None)
        self._device = device
        if first_channel is not None and first_channel >= device.channels:
            raise AudioFailure(
                f"The input '{device.name}' has no channel {first_channel + 1}.",
                "Choose another channel or input.",
            )
        begin = first_channel or 0
        self.channels = min(channels, device.channels - begin)
        self._taken = slice(begin, begin + self.channels)
        # Asked for some of its channels, a sound server mixes the others into them; asked for
        # all, it leaves each as it is.
        whole = (device.channels,) if first_channel is not None else ()
        rates = dict.fromkeys((sample_rate_hz, device.default_sample_rate_hz))
        error: Exception | None = None
        for rate, opened in itertools.product(rates, dict.fromkeys((*whole, self._taken.stop))):
            self.sample_rate_hz = rate
            self.ring = SampleRing(round(_RING_S * rate), self.channels)
            try:
                self._stream = sounddevice.InputStream(
                    samplerate=rate,
                    device=device.id,
                    channels=opened,
                    dtype="int32",
                    latency=self._latency,
                    callback=self._callback,
                    finished_callback=self._ended.set,
                )
            except sounddevice.PortAudioError as refused:
                error = refused
                continue
            return
        raise self._will_not_open(error)

    def start(self) -> None:
        """Let the stream run.

        Raises
        ------
        AudioFailure
            When the device refuses.
        """
        self._last_callback = time.monotonic() + FIRST_SOUND_S - _STALL_S
        try:
            self._stream.start()
        except devices.portaudio().PortAudioError as error:
            raise self._will_not_open(error) from error

    def close(self) -> None:
        """Close the stream; a hanging one is left behind after a moment."""
        self._left_behind = not close_stream(self._stream)

    def wait_until_heard(self, timeout_s: float) -> bool:
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

    def frame_at(self, clock_s: float) -> float | None:
        """Say which frame of the stream was heard at a moment.

        The readings of the device's clock jitter by a millisecond or so: the
        median of the last ones counts, which also follows a slow drift.

        Parameters
        ----------
        clock_s : float
            The moment, on PortAudio's clock.

        Returns
        -------
        float or None
            Frames since the stream began; None before the first sound.
        """
        starts = tuple(self._starts_s)
        if not starts:
            return None
        return (clock_s - statistics.median(starts)) * self.sample_rate_hz

    def forget_losses(self) -> None:
        """Count overruns and dropped frames from zero."""
        self.overruns = self.dropped_frames = 0

    def release_for_scan(self) -> bool:
        """Refuse the scan: closing the input would lose sound."""
        return False

    def reopen_after_scan(self) -> None:
        """Nothing to do: the input never let go."""

    def _callback(self, block: NDArray[np.int32], frames: int, when: Any, status: Any) -> None:
        if self._left_behind:
            return
        if status.input_overflow:
            self.overruns += 1
            if self._expected_at_s is not None:
                gap_s = when.inputBufferAdcTime - self._expected_at_s
                self.dropped_frames += max(0, round(gap_s * self.sample_rate_hz))
        self._expected_at_s = when.inputBufferAdcTime + frames / self.sample_rate_hz
        self._starts_s.append(when.inputBufferAdcTime - self._delivered / self.sample_rate_hz)
        lost = self.ring.write(block[:, self._taken])
        self.dropped_frames += lost
        self._delivered += frames - lost
        self._last_callback = time.monotonic()
        self._heard.set()

    def _will_not_open(self, error: Exception | None) -> AudioFailure:
        name = "The sound input" if self._device is None else f"The input '{self._device.name}'"
        return AudioFailure(
            f"{name} would not open ({error}).",
            "Close other programs that use it, or choose another input.",
        )
