"""An open way to the loudspeakers that asks for sound, buffer by buffer."""

import contextlib
import threading
from collections.abc import Callable
from functools import partial
from typing import Any

import numpy as np
from numpy.typing import NDArray

from audio import devices
from audio.closing import close_stream
from audio.devices import Device
from audio.errors import AudioFailure

LATENCY_S = 0.04
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
    latency_s : float
        Buffer to ask the driver for.
    """

    def __init__(
        self,
        device: Device | None,
        prepare: Callable[[int, int], None],
        render: Callable[[NDArray[np.float32], float], None],
        on_lost: Callable[[], None],
        latency_s: float = LATENCY_S,
    ) -> None:
        self._device = device
        self._prepare = prepare
        self._render = render
        self._on_lost = on_lost
        self._latency_s = latency_s
        self._stream: Any = None
        self._closing = False
        self._opened = 0
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
            number = self._opened
            try:
                stream = sounddevice.OutputStream(
                    samplerate=rate,
                    device=device.id,
                    channels=channels,
                    dtype="float32",
                    latency=self._latency_s,
                    callback=partial(self._callback, number),
                    finished_callback=partial(self._ended, number),
                )
                self._prepare(rate, channels)
                self._settled_frames = (_SETTLED_S + 2 * self._latency_s) * rate
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
        """Close the stream, if it is open; a hanging one is left behind after a moment."""
        self._closing = True
        self._opened += 1
        stream, self._stream = self._stream, None
        self._running.clear()
        self._rendered = 0
        if stream is not None:
            close_stream(stream)
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

    def _callback(
        self, opened: int, out: NDArray[np.float32], frames: int, when: Any, status: Any
    ) -> None:
        if opened != self._opened:
            # A stream that was left behind has nothing to say while another one plays.
            out.fill(0)
            return
        if status.output_underflow:
            self.underflows += 1
        self._rendered += frames
        if self._rendered > self._settled_frames and not self._running.is_set():
            self._running.set()
        self._render(out, when.outputBufferDacTime)

    def _ended(self, opened: int) -> None:
        if opened == self._opened and self._stream is not None and not self._closing:
            self._closing = True
            self._on_lost()
