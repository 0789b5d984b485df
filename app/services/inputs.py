"""Which inputs are open, so that none is opened twice.

Not every sound system gives one input to two at once. Listening along therefore steps
aside while a level is shown or a take recorded from the same input, hears the blocks of
that, and opens the input again for itself afterwards.
"""

import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from app.journal.failures import PlainFailure
from app.journal.input_channels import channel_gone, remembered, with_choice
from app.services.input_levels import opened_input
from app.services.plain import plain_failures
from app.store.store import Store

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from audio.recorder import Recorder

    Block = NDArray[np.float32]
    Hear = Callable[[Block, int], None]

USUAL_BUFFER_MS = 40
BUFFERS_MS = (USUAL_BUFFER_MS, 80, 160, 320)
"""Buffers to choose from: the longer, the fewer gaps on a busy machine, and the later
sound follows a key."""


def output_buffer_s(store: Store) -> float:
    """Give the buffer to ask an output for."""
    return max(store.settings.get().buffer_ms, USUAL_BUFFER_MS) / 1000.0


def input_buffer_s(store: Store) -> float | None:
    """Give the buffer to ask an input for; ``None``: the driver's own long one."""
    chosen_ms = store.settings.get().buffer_ms
    return chosen_ms / 1000.0 if chosen_ms > USUAL_BUFFER_MS else None


@dataclass(slots=True)
class _Along:
    """Somebody who listens along: with an input of their own, or on another's."""

    key: str
    hear: "Hear"
    own: "Recorder | None"
    silent_since_s: float = 0.0
    failure: PlainFailure | None = None


@dataclass(frozen=True, slots=True)
class InputUsed:
    """An input as it is opened.

    ``channel``, counted from 1, is ``None`` where the system gives what it gives; ``note``
    says in a sentence why it is not the one that was chosen, and is empty where it is.
    """

    device: str
    channel: int | None = None
    note: str = ""


class Inputs:
    """Opens inputs; at most one listens along."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._channels: dict[str, int | None] = {}
        self._lock = threading.RLock()
        self._along: _Along | None = None
        self._host: tuple[str, Recorder] | None = None

    def open(
        self,
        device_key: str | None,
        *,
        pre_roll_s: float = 0.0,
        on_block: "Callable[[Block], None] | None" = None,
    ) -> "tuple[Recorder, InputUsed]":
        """Open an input, or the default one, to show its level or to record.

        Say :meth:`closed` once it is stopped.
        """
        with self._lock:
            used = self.chosen(device_key)
            key = used.device
            self._step_aside(key)
            rate: list[int] = []

            def hear(block: "Block") -> None:
                if on_block is not None:
                    on_block(block)
                along = self._along
                if along is not None and along.key == key and along.own is None and rate:
                    along.hear(block, rate[0])

            try:
                recorder, _ = opened_input(
                    key,
                    channel=used.channel,
                    pre_roll_s=pre_roll_s,
                    on_block=hear,
                    latency_s=input_buffer_s(self._store),
                )
            except BaseException:
                self._step_back()
                raise
            self._fill_gap(recorder.sample_rate_hz)
            rate.append(recorder.sample_rate_hz)
            self._host = (key, recorder)
            return recorder, used

    def closed(self, recorder: "Recorder") -> None:
        """Take note that an input is stopped; who listens along opens it again."""
        with self._lock:
            if self._host is not None and self._host[1] is recorder:
                self._host = None
                self._step_back()

    def listen_along(self, device_key: str | None, hear: "Hear") -> None:
        """Hand every block of an input to `hear`, from a thread of the recorder.

        Raises
        ------
        PlainFailure
            Where the input will not open.
        """
        with self._lock:
            along = _Along(self.chosen(device_key).device, hear, None)
            if self._host is None or self._host[0] != along.key:
                self._open_for(along)
            self._along = along

    def stop_along(self) -> None:
        """Listen along no longer."""
        with self._lock:
            along, self._along = self._along, None
            if along is not None and along.own is not None:
                _stop(along.own)

    @property
    def along_has_ended(self) -> bool:
        """Whether the input went away from who listens along (instant)."""
        along, host = self._along, self._host
        if along is None or along.failure is not None:
            return along is not None
        recorder = along.own or (host[1] if host else None)
        return recorder is not None and recorder.state == "ended"

    @contextmanager
    def lent(self, device_key: str) -> Iterator[None]:
        """Leave an input to somebody else while the block runs.

        Raises
        ------
        PlainFailure
            Where its level is shown or it is recorded from.
        """
        with self._lock:
            if self._host is not None and self._host[0] == device_key:
                raise PlainFailure(
                    "The sound input is in use.", "Stop the recording or the level first."
                )
            self._step_aside(device_key)
        try:
            yield
        finally:
            with self._lock:
                self._step_back()

    def channel_of(self, device_key: str) -> int | None:
        """Give the channel chosen for an input, counted from 1, whether it has it or not."""
        if device_key in self._channels:
            return self._channels[device_key]
        return remembered(self._store.settings.get().input_channels, device_key)

    def use_channel(self, device_key: str, channel: int | None) -> None:
        """Take this channel of an input from its next opening on (instant)."""
        self._channels[device_key] = channel

    def remember_channel(self, device_key: str, channel: int | None) -> None:
        """Keep the choice in the journal; who listens along hears that channel then."""
        self.use_channel(device_key, channel)
        with self._store.transaction():
            settings = self._store.settings.get()
            kept = with_choice(settings.input_channels, device_key, channel)
            self._store.settings.replace(replace(settings, input_channels=kept))
        with self._lock:
            self._step_aside(device_key)
            self._step_back()

    def chosen(self, device_key: str | None) -> InputUsed:
        """Say what would be opened, looking at the devices.

        Raises
        ------
        PlainFailure
            Where there is no input, or not that one.
        """
        from audio.devices import find_device  # noqa: PLC0415 - loads PortAudio

        with plain_failures():
            wanted = device_key or self._store.settings.get().input_device
            device = find_device("input", wanted)
        channel = self.channel_of(device.key)
        if channel is None or channel <= device.channels:
            return InputUsed(device.key, channel)
        return InputUsed(device.key, 1, channel_gone(device.name, channel))

    def _step_aside(self, key: str) -> None:
        along = self._along
        if along is not None and along.key == key and along.own is not None:
            own, along.own = along.own, None
            along.silent_since_s = time.monotonic()
            _stop(own)

    def _step_back(self) -> None:
        along = self._along
        if along is None or along.own is not None or self._host is not None:
            return
        try:
            self._open_for(along)
        except PlainFailure as failure:
            along.failure = failure

    def _open_for(self, along: _Along) -> None:
        rate: list[int] = []

        def hear(block: "Block") -> None:
            if rate:
                along.hear(block, rate[0])

        recorder, _ = opened_input(
            along.key,
            channel=self.chosen(along.key).channel,
            on_block=hear,
            latency_s=input_buffer_s(self._store),
        )
        self._fill_gap(recorder.sample_rate_hz)
        rate.append(recorder.sample_rate_hz)
        along.own = recorder

    def _fill_gap(self, rate_hz: int) -> None:
        """Let who listens along hear silence for as long as nobody heard anything."""
        import numpy as np  # noqa: PLC0415 - whoever opens an input has it loaded

        along = self._along
        if along is not None and along.silent_since_s:
            gap_s = time.monotonic() - along.silent_since_s
            along.silent_since_s = 0.0
            along.hear(np.zeros((round(gap_s * rate_hz), 1), np.float32), rate_hz)


def _stop(recorder: "Recorder") -> None:
    try:
        with plain_failures():
            recorder.stop()
    except PlainFailure:
        return  # the input had gone; what was heard before stays true
