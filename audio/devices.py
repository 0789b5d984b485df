"""Which inputs and outputs this machine has, through PortAudio.

PortAudio is loaded when the first device is asked for, so that a machine
without it can still do everything that needs no device.
"""

import importlib
import sys
import weakref
from dataclasses import dataclass
from threading import RLock
from typing import Any, Literal, Protocol

from audio.closing import is_hanging
from audio.errors import AudioFailure

Direction = Literal["input", "output"]

_INSTALL_STEP = {
    "linux": (
        "Install PortAudio (on Debian and Ubuntu: apt install libportaudio2) and start the "
        "program again."
    ),
    "darwin": "Reinstall the program's sounddevice package, which brings PortAudio along.",
    "win32": "Reinstall the program's sounddevice package, which brings PortAudio along.",
}
_PLUG_STEP: dict[tuple[str, Direction], str] = {
    ("linux", "input"): (
        "Plug in a microphone or sound card; if one is plugged in, check that the sound server "
        "runs and that libasound2-plugins is installed, then look again."
    ),
    ("linux", "output"): (
        "Plug in headphones or a sound card; if one is plugged in, check that the sound server "
        "runs and that libasound2-plugins is installed, then look again."
    ),
    ("darwin", "input"): (
        "Plug in a microphone, allow it under System Settings, Privacy and Security, Microphone, "
        "then look again."
    ),
    ("darwin", "output"): "Plug in headphones or loudspeakers, then look again.",
    ("win32", "input"): (
        "Plug in a microphone, allow it under Settings, Privacy, Microphone, then look again."
    ),
    ("win32", "output"): "Plug in headphones or loudspeakers, then look again.",
}


@dataclass(frozen=True, slots=True)
class Device:
    """One way into or out of the machine.

    Attributes
    ----------
    id : int
        PortAudio's index; only valid until the next :func:`refresh`.
    name, host_api : str
        As the system calls them; together they identify the device for good.
    channels : int
        Largest number of channels in this direction.
    default_sample_rate_hz : int
        The rate the device runs at when nothing else is asked for.
    is_default : bool
        Whether the system uses it when nothing is chosen.
    """

    id: int
    name: str
    host_api: str
    channels: int
    default_sample_rate_hz: int
    is_default: bool

    @property
    def key(self) -> str:
        """A text to remember the device by, across scans and restarts."""
        return f"{self.host_api}: {self.name}"


class StreamHolder(Protocol):
    """Something that keeps a stream open and can let go of it for a scan."""

    def release_for_scan(self) -> bool:
        """Close the stream; False when that would lose something."""

    def reopen_after_scan(self) -> None:
        """Open the stream again, as well as that is possible."""


_lock = RLock()
_holders: "weakref.WeakSet[StreamHolder]" = weakref.WeakSet()


def hold(holder: StreamHolder) -> None:
    """Tell the scan about an open stream."""
    with _lock:
        _holders.add(holder)


def release(holder: StreamHolder) -> None:
    """Tell the scan that the stream is closed."""
    with _lock:
        _holders.discard(holder)


def portaudio() -> Any:
    """Load PortAudio.

    Returns
    -------
    module
        The ``sounddevice`` module.

    Raises
    ------
    AudioFailure
        When the package or the PortAudio library is missing or will not start.
    """
    with _lock:
        try:
            return importlib.import_module("sounddevice")
        except (ImportError, OSError) as error:
            raise AudioFailure(
                "Recording and playing need the PortAudio library, which was not found.",
                _INSTALL_STEP.get(sys.platform, _INSTALL_STEP["linux"]),
            ) from error
        except Exception as error:  # sounddevice raises its own type while it initialises
            if type(error).__name__ != "PortAudioError":
                raise
            raise AudioFailure("The sound system would not start.", _plug_step("input")) from error


def input_devices() -> tuple[Device, ...]:
    """List what can be recorded from.

    Returns
    -------
    tuple of Device
        The default one first; never empty.

    Raises
    ------
    AudioFailure
        When PortAudio is missing or there is no input.
    """
    return _devices("input")


def output_devices() -> tuple[Device, ...]:
    """List what can be played through.

    Returns
    -------
    tuple of Device
        The default one first; never empty.

    Raises
    ------
    AudioFailure
        When PortAudio is missing or there is no output.
    """
    return _devices("output")


def find_device(direction: Direction, key: str | None = None) -> Device:
    """Find a remembered device, or the default one.

    Parameters
    ----------
    direction : {'input', 'output'}
        Which list to look in.
    key : str, optional
        A :attr:`Device.key`; without it the default device is meant.

    Returns
    -------
    Device
        The device as it is known now.

    Raises
    ------
    AudioFailure
        When there is no device at all, or the remembered one is not there.
    """
    devices = _devices(direction)
    if key is None:
        return devices[0]
    for device in devices:
        if device.key == key:
            return device
    raise AudioFailure(
        f"The device '{key}' is not there any more.",
        "Plug it in and look again, or choose another device.",
    )


def refresh() -> None:
    """Scan again for devices; PortAudio itself looks only once.

    Open output streams are closed for the scan and opened again.

    Raises
    ------
    AudioFailure
        When an input is in use, PortAudio will not start again, or a stream
        hangs in it.
    """
    sounddevice = portaudio()
    if is_hanging():
        raise _hangs()
    with _lock:
        holders = list(_holders)
        released = [holder for holder in holders if holder.release_for_scan()]
        try:
            if len(released) < len(holders):
                raise AudioFailure(
                    "Devices cannot be scanned while an input is in use.",
                    "Stop recording and leave the level meter first.",
                )
            if is_hanging():
                raise _hangs()
            # The only way to rescan: sounddevice offers no public call for it.
            sounddevice._terminate()
            sounddevice._initialize()
        except sounddevice.PortAudioError as error:
            raise AudioFailure("The sound system would not start.", _plug_step("input")) from error
        finally:
            for holder in released:
                holder.reopen_after_scan()


def _hangs() -> AudioFailure:
    return AudioFailure(
        "A sound device hangs, probably because it was pulled out.",
        "Close the program and start it again; everything recorded so far is kept.",
    )


def _plug_step(direction: Direction) -> str:
    return _PLUG_STEP.get((sys.platform, direction), _PLUG_STEP["linux", direction])


def _devices(direction: Direction) -> tuple[Device, ...]:
    sounddevice = portaudio()
    with _lock:
        host_apis = sounddevice.query_hostapis()
        entries = [
            entry for entry in sounddevice.query_devices() if entry[f"max_{direction}_channels"] > 0
        ]
        default = int(sounddevice.default.device[0 if direction == "input" else 1])
    if sys.platform == "win32":
        entries, default = _best_on_windows(entries, default, host_apis, direction)
    found = [
        Device(
            id=int(entry["index"]),
            name=str(entry["name"]),
            host_api=str(host_apis[entry["hostapi"]]["name"]),
            channels=int(entry[f"max_{direction}_channels"]),
            default_sample_rate_hz=round(entry["default_samplerate"]),
            is_default=int(entry["index"]) == default,
        )
        for entry in entries
    ]
    if not found:
        sentence = (
            "No microphone or other sound input was found."
            if direction == "input"
            else "No loudspeaker, headphones or other sound output was found."
        )
        raise AudioFailure(sentence, _plug_step(direction))
    return tuple(sorted(found, key=lambda device: not device.is_default))


def _best_on_windows(
    entries: list[Any], default: int, host_apis: Any, direction: Direction
) -> tuple[list[Any], int]:
    """Keep one of the several ways in which Windows lists every device.

    The oldest, which is the default, cuts names off at 31 letters and is slow;
    WASAPI has the whole names and the shortest delay.
    """
    for number, host_api in enumerate(host_apis):
        kept = [entry for entry in entries if entry["hostapi"] == number]
        if host_api["name"] == "Windows WASAPI" and kept:
            return kept, int(host_api[f"default_{direction}_device"])
    return entries, default
