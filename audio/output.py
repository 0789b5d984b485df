"""An open way to the loudspeakers that asks for sound, buffer by buffer."""

import contextlib
import threading
from collections.abc import Callable
from typing import Any

import numpy as np
from numpy.typing import NDArray

from audio import devices
from audio.devices import Device
from audio.errors import AudioFailure

_LATENCY_S = 0.04
"""Short enough for sound to follow a key at once, long enough for a busy program."""

_SETTLED_S = 0.25
"""Some sound servers take a few buffers at once and then wait a second before they sound."""


class Output:
    """A stream to one device.

    Parameters
    ----------
    device : Device, optional
        Where to play; the system's default without it.
    prepare : callable
        Called with the rate in Hz and the channels before sound is asked for.
    render : callable
        Called from the audio thread with a float32 buffer of shape
        (n, channels) to fill, and the moment its first frame will be heard.
    on_lost : callable
        Called from a thread of PortAudio when the device goes away.
    """

    def __init__(
        self,
        device: Device | None,
        prepare: Callable[[int, int], None],
        render: Callable[[NDArray[np.float32], float], None],
        on_lost: Callable[[], None],
    ) -> None:
        self._device = device
        self._prepare = prepare
        self._render = render
        self._on_lost = on_lost
        self._stream: Any = None
        self._closing = False
        self._rendered = 0
        self._settled_frames = 0.0
        self._running = threading.Event()
        self.underflows = 0

    @property
    def is_open(self) -> bool:
        """Whether the stream is there and its device has not gone."""
        return self._stream is not None and not self._closing

    @property
    def latency_s(self) -> float:
        """Delay as the driver states it; 0 when closed."""
        return float(self._stream.latency) if self._stream is not None else 0.0

    @property
    def now_s(self) -> float | None:
        """The stream's clock; None when closed."""
        stream = self._stream
        if stream is None:
            return None
        # The stream may be closed by another thread between the lines.
        with contextlib.suppress(Exception):
            return float(stream.time)
        return None

    def open(self, preferred_rate_hz: int) -> None:
        """Open the stream, at the preferred rate if the device accepts it.

        Parameters
        ----------
        preferred_rate_hz : int
            Rate to try before the device's own.

        Raises
        ------
        AudioFailure
            When there is no output or it will not open.
        """
        sounddevice = devices.portaudio()
        device = devices.find_device("output", self._device.key if self._device else None)
        channels = min(2, device.channels)
        error: Exception | None = None
        for rate in dict.fromkeys((preferred_rate_hz, device.default_sample_rate_hz)):
            try:
                stream = sounddevice.OutputStream(
                    samplerate=rate,
                    device=device.id,
                    channels=channels,
                    dtype="float32",
                    latency=_LATENCY_S,
                    callback=self._callback,
                    finished_callback=self._ended,
                )
                self._prepare(rate, channels)
                self._settled_frames = _SETTLED_S * rate
                stream.start()
            except sounddevice.PortAudioError as refused:
                error = refused
                continue
            self._stream, self._closing = stream, False
            return
        raise AudioFailure(
            f"The output '{device.name}' would not open ({error}).",
            "Close other programs that use it, or choose another output.",
        )

    def close(self) -> None:
        """Close the stream, if it is open."""
        self._closing = True
        stream, self._stream = self._stream, None
        self._running.clear()
        self._rendered = 0
        if stream is not None:
            # A stream whose device is gone may refuse to close; there is nothing to save in it.
            with contextlib.suppress(Exception):
                stream.close(ignore_errors=True)
        self._closing = False

    def wait_until_running(self, timeout_s: float) -> bool:
        """Wait until sound follows without delay.

        Parameters
        ----------
        timeout_s : float
            Wait no longer than this.

        Returns
        -------
        bool
            Whether it does.
        """
        return self._running.wait(timeout_s)

    def _callback(self, out: NDArray[np.float32], frames: int, when: Any, status: Any) -> None:
        if status.output_underflow:
            self.underflows += 1
        self._rendered += frames
        if self._rendered > self._settled_frames and not self._running.is_set():
            self._running.set()
        self._render(out, when.outputBufferDacTime)

    def _ended(self) -> None:
        if self._stream is not None and not self._closing:
            self._closing = True
            self._on_lost()
