"""A sound device for machines that have none.

A private PulseAudio daemon with one null sink: what is played into the sink comes
back from its monitor, so a test can play a phrase "into the room" and record it
through PortAudio as a player would with a microphone. ALSA's pulse plug-in shows
PortAudio the device ``pulse`` (and ``default``).

PortAudio lists its devices once, when it starts: entering a room sets
``PULSE_SERVER`` first and starts PortAudio anew.
"""

import contextlib
import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from types import TracebackType
from typing import Self

import numpy as np
import soundfile
from numpy.typing import NDArray

_SINK = "room"
_FOUR_CHANNELS = "front-left,front-right,rear-left,rear-right"
_TOOLS = ("pulseaudio", "pactl", "paplay")
_START_TIMEOUT_S = 15.0


def missing_tools() -> tuple[str, ...]:
    """Programs a room needs that this machine does not have."""
    return tuple(tool for tool in _TOOLS if shutil.which(tool) is None)


class VirtualRoom:
    """A running daemon; use as a context manager.

    Attributes
    ----------
    device : str
        The name PortAudio knows the room by, for input and output.
    """

    device = "pulse"

    def __init__(self) -> None:
        # A socket's path may have 107 characters, so pytest's long folders will not do.
        self._folder = Path(tempfile.mkdtemp(prefix="room-"))
        self._saved: dict[str, str | None] = {}
        self._daemon: subprocess.Popen[bytes] | None = None

    def __enter__(self) -> Self:
        script = self._folder / "room.pa"
        socket = self._folder / "native"
        script.write_text(
            f"load-module module-native-protocol-unix auth-anonymous=1 socket={socket}\n"
            + self._sink_line("load-module ")
            + f"set-default-sink {_SINK}\nset-default-source {_SINK}.monitor\n",
            encoding="utf-8",
        )
        self._set_environment(
            {
                "PULSE_SERVER": f"unix:{socket}",
                "PULSE_RUNTIME_PATH": str(self._folder / "run"),
                "XDG_RUNTIME_DIR": str(self._folder),
            }
        )
        with (self._folder / "log").open("wb") as log:
            self._daemon = subprocess.Popen(
                [
                    "pulseaudio", "--daemonize=no", "--exit-idle-time=-1", "--use-pid-file=no",
                    "--disallow-exit=yes", "-n", "-F", str(script),
                ],
                stdin=subprocess.DEVNULL,
                stdout=log,
                stderr=log,
            )  # fmt: skip
        self._wait_until_it_answers()
        restart_portaudio()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._stop_daemon()
        for name, value in self._saved.items():
            if value is None:
                os.environ.pop(name, None)
            else:
                os.environ[name] = value
        restart_portaudio()
        shutil.rmtree(self._folder, ignore_errors=True)

    @property
    def plugged_in(self) -> bool:
        """Whether the room's device exists at the moment."""
        return f"\t{_SINK}\t" in self._pactl("list", "short", "sinks")

    def unplug(self) -> None:
        """Take the device away, as when a USB interface is pulled out mid-take.

        A running PortAudio stream turns inactive and its finished callback runs.
        """
        self._pactl("unload-module", "module-null-sink")

    def plug_in(self) -> None:
        """Bring the device back after :meth:`unplug`; PortAudio must be restarted to see it."""
        if not self.plugged_in:
            self._pactl(*self._sink_line("load-module ").split())
            self._pactl("set-default-sink", _SINK)
            self._pactl("set-default-source", f"{_SINK}.monitor")

    def pause_devices(self) -> None:
        """Stop the daemon's clock, so that streams stall without ending."""
        self._pactl("suspend-sink", _SINK, "1")

    def resume_devices(self) -> None:
        """Let a paused daemon go on."""
        self._pactl("suspend-sink", _SINK, "0")

    @contextlib.contextmanager
    def interface(self) -> Iterator[str]:
        """Make an interface of four channels the input while the block runs.

        Its channels are those that ALSA gives a device of four. PortAudio sees it through
        the room's device, which is said to have 32 channels whatever lies behind it.

        Yields
        ------
        str
            Where to play into it, for :meth:`playing`; each channel comes back by itself.
        """
        name = "interface"
        module = self._pactl(
            "load-module", "module-null-sink", f"sink_name={name}", "rate=48000", "channels=4",
            f"channel_map={_FOUR_CHANNELS}",
        ).strip()  # fmt: skip
        self._pactl("set-default-source", f"{name}.monitor")
        try:
            yield name
        finally:
            self._pactl("set-default-source", f"{_SINK}.monitor")
            self._pactl("unload-module", module)

    @contextlib.contextmanager
    def playing(
        self, samples: NDArray[np.floating], sample_rate_hz: int, into: str = _SINK
    ) -> Iterator[subprocess.Popen[bytes]]:
        """Play sound into the room while the block runs.

        Parameters
        ----------
        samples : (n,) or (n, channels) array
            Within [-1, 1].
        sample_rate_hz : int
        into : str
            The room, or what :meth:`interface` gave, which wants four channels.

        Yields
        ------
        subprocess.Popen
            The player; ``wait()`` for the whole sound to have been played. It is
            ended when the block is left.
        """
        path = self._folder / f"{time.monotonic_ns()}.wav"
        soundfile.write(path, samples, sample_rate_hz, subtype="PCM_24")
        channels = () if into == _SINK else (f"--channel-map={_FOUR_CHANNELS}",)
        player = subprocess.Popen(
            ["paplay", f"--device={into}", *channels, str(path)], stdin=subprocess.DEVNULL
        )
        try:
            yield player
        finally:
            if player.poll() is None:
                player.terminate()
            player.wait(timeout=10)
            path.unlink()

    @staticmethod
    def _sink_line(prefix: str) -> str:
        return f"{prefix}module-null-sink sink_name={_SINK} rate=48000 channels=2\n"

    def _set_environment(self, values: dict[str, str]) -> None:
        for name, value in values.items():
            self._saved[name] = os.environ.get(name)
            os.environ[name] = value

    def _pactl(self, *arguments: str) -> str:
        done = subprocess.run(
            ["pactl", *arguments], capture_output=True, text=True, timeout=10, check=True
        )
        return done.stdout

    def _wait_until_it_answers(self) -> None:
        deadline = time.monotonic() + _START_TIMEOUT_S
        while time.monotonic() < deadline:
            with contextlib.suppress(subprocess.SubprocessError):
                if self.plugged_in:
                    return
            if self._daemon is None or self._daemon.poll() is not None:
                break
            time.sleep(0.1)
        log = (self._folder / "log").read_text(encoding="utf-8", errors="replace")
        self.__exit__(None, None, None)
        raise RuntimeError(f"The virtual room did not start:\n{log}")

    def _stop_daemon(self) -> None:
        if self._daemon is None:
            return
        if self._daemon.poll() is None:
            self._daemon.terminate()
            try:
                self._daemon.wait(timeout=5)
            except subprocess.TimeoutExpired:
                self._daemon.kill()
                self._daemon.wait(timeout=5)


def restart_portaudio() -> None:
    """Let PortAudio list its devices anew, if it was started at all."""
    sounddevice = sys.modules.get("sounddevice")
    if sounddevice is not None:
        # sounddevice has no public way to do this.
        sounddevice._terminate()
        sounddevice._initialize()
