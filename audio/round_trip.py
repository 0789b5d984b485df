"""How long sound takes from the loudspeaker back to the microphone.

Drivers state their delays, but not all of them and not always truly. Measured
once through a loop (a cable, or the microphone near the loudspeaker), what is
left over puts clicks and takes on one time axis.
"""

import statistics
import time
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audio.devices import Device
from audio.errors import AudioFailure
from audio.output import LATENCY_S
from audio.player import Player
from audio.recorder import Recorder

_RATE_HZ = 48000
_BURSTS = 6
_EVERY_S = 0.5
_LEAD_S = 0.5
_SWEEP_S = 0.05
_LATEST_S = 0.4
_STEADY_S = 0.005
_CLEAR = 8.0
"""A sweep that was heard stands this far above the rest of its own correlation."""


@dataclass(frozen=True, slots=True)
class RoundTrip:
    """What the drivers do not know of the delay from output to input.

    Attributes
    ----------
    offset_s : float
        Sound is recorded this much later than the streams' clocks say: to be
        taken off places in a take that were worked out from them.
    scatter_s : float
        Largest distance of a single measurement from it.
    bursts : int
        How many measurements agree.
    """

    offset_s: float
    scatter_s: float
    bursts: int


def measure_round_trip(
    output: Device | None = None,
    source: Device | None = None,
    *,
    buffer_s: float = LATENCY_S,
    first_channel: int | None = None,
    should_stop: Callable[[], bool] | None = None,
) -> RoundTrip | None:
    """Play short sweeps and listen for them; takes about six seconds.

    The sweeps are loud enough for a microphone near a loudspeaker: headphones
    have to be off the ears.

    Parameters
    ----------
    output, source : Device, optional
        Where to play and where to listen; the system's defaults without them.
    buffer_s : float
        Buffer to ask the output for.
    first_channel : int, optional
        As for :class:`audio.recorder.Recorder`.
    should_stop : callable, optional
        Asked several times a second; True cancels.

    Returns
    -------
    RoundTrip or None
        None when it was cancelled.

    Raises
    ------
    AudioFailure
        When a device fails, or the sweeps are not heard or do not agree.
    """
    heard: list[NDArray[np.float32]] = []
    recorder = Recorder(
        None,
        source,
        _RATE_HZ,
        first_channel=first_channel,
        on_block=lambda block: heard.append(block[:, 0]),
    )
    player = Player(output, preferred_rate_hz=_RATE_HZ, latency_s=buffer_s)
    recorder.start()
    try:
        player.open()
        _settle(recorder, player)
        sweep = _sweep()
        player.load(_bursts(sweep), _RATE_HZ)
        player.play()
        expected = _watch(recorder, player, should_stop)
    finally:
        player.close()
        recorder.stop()
    if expected is None:
        return None
    return _summarise(np.concatenate(heard), sweep, expected, recorder.sample_rate_hz)


def _settle(recorder: Recorder, player: Player) -> None:
    if not recorder.wait_until_heard() or not player.wait_until_running():
        raise AudioFailure(
            "The sound devices do not run.", "Check that both are plugged in, then try again."
        )
    time.sleep(0.5)


def _watch(
    recorder: Recorder, player: Player, should_stop: Callable[[], bool] | None
) -> list[float] | None:
    """Note, as every sweep goes by, in which frame of the input it should be."""
    expected: list[float] = []
    until = time.monotonic() + 2 * (_LEAD_S + _BURSTS * _EVERY_S)
    while len(expected) < _BURSTS and time.monotonic() < until:
        if should_stop is not None and should_stop():
            return None
        time.sleep(0.05)
        position_s = _LEAD_S + len(expected) * _EVERY_S
        if player.position_s < position_s:
            continue
        heard_s = player.heard_at_s(position_s)
        frame = None if heard_s is None else recorder.frame_at(heard_s)
        if frame is not None:
            expected.append(frame)
    time.sleep(_LATEST_S + player.latency_s)
    return expected


def _sweep() -> NDArray[np.float32]:
    time_s = np.arange(round(_SWEEP_S * _RATE_HZ)) / _RATE_HZ
    low_hz, high_hz = 500.0, 6000.0
    phase = 2 * np.pi * (low_hz * time_s + (high_hz - low_hz) / (2 * _SWEEP_S) * time_s**2)
    return (0.5 * np.sin(phase) * np.hanning(len(time_s))).astype(np.float32)


def _bursts(sweep: NDArray[np.float32]) -> NDArray[np.float32]:
    sound = np.zeros(round((_LEAD_S + _BURSTS * _EVERY_S + _LATEST_S) * _RATE_HZ), np.float32)
    for number in range(_BURSTS):
        at = round((_LEAD_S + number * _EVERY_S) * _RATE_HZ)
        sound[at : at + len(sweep)] = sweep
    return sound


def _summarise(
    heard: NDArray[np.float32], sweep: NDArray[np.float32], expected: list[float], rate_hz: int
) -> RoundTrip:
    if rate_hz != _RATE_HZ:
        places = np.arange(round(len(sweep) * rate_hz / _RATE_HZ)) * _RATE_HZ / rate_hz
        sweep = np.interp(places, np.arange(len(sweep)), sweep).astype(np.float32)
    found = [_offset_s(heard, sweep, frame, rate_hz) for frame in expected]
    offsets = [offset for offset in found if offset is not None]
    if not offsets:
        raise AudioFailure(
            "The test sound was not heard by the input.",
            "Turn the volume up and put the microphone near the loudspeaker, or join output and "
            "input with a cable.",
        )
    middle = statistics.median(offsets)
    # A sweep that met an underrun comes late by itself and says nothing about the loop.
    steady = [offset for offset in offsets if abs(offset - middle) <= _STEADY_S]
    if len(steady) < _BURSTS // 2:
        raise AudioFailure(
            "The delay from output to input does not hold still.",
            "Close other programs that use the sound devices and measure again.",
        )
    offset_s = statistics.fmean(steady)
    scatter_s = max(abs(offset - offset_s) for offset in steady)
    return RoundTrip(offset_s, scatter_s, len(steady))


def _offset_s(
    heard: NDArray[np.float32], sweep: NDArray[np.float32], frame: float, rate_hz: int
) -> float | None:
    """Find one sweep around where it is expected; None when it is not clearly there."""
    begin = max(0, round(frame) - rate_hz // 20)
    part = heard[begin : round(frame) + round(_LATEST_S * rate_hz)]
    if len(part) <= len(sweep):
        return None
    match = np.abs(np.correlate(part, sweep, mode="valid"))
    best = int(match.argmax())
    if match[best] < _CLEAR * np.median(match) or match[best] <= 0:
        return None
    return (begin + best - frame) / rate_hz
