"""Clips such as phones and recorders make, made anew for every test."""

import struct
import sys
from collections.abc import Callable, Mapping
from fractions import Fraction
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest

RATE = 48_000
MakeClip = Callable[..., Path]


def _click_track(seconds: float, rate: int, channels: int) -> np.ndarray:
    """A quiet tone with one loud burst from 1.000 to 1.010 s."""
    time_s = np.arange(round(seconds * rate)) / rate
    sound = 0.05 * np.sin(2 * np.pi * 440 * time_s)
    burst = (time_s >= 1.0) & (time_s < 1.01)
    sound[burst] = 0.8 * np.sin(2 * np.pi * 3000 * time_s[burst])
    return np.repeat(sound[np.newaxis].astype(np.float32), channels, axis=0)


def _add_sound(container, stream, sound: np.ndarray, rate: int) -> None:
    import av

    size = stream.codec_context.frame_size or 1024
    fifo = av.AudioResampler(
        format=stream.codec_context.format, layout=stream.codec_context.layout, rate=rate,
        frame_size=size,
    )  # fmt: skip
    frame = av.AudioFrame.from_ndarray(
        sound, format="fltp", layout="mono" if len(sound) == 1 else "stereo"
    )
    frame.sample_rate = rate
    # With a time stamp the encoder states its delay, and players take it off again.
    frame.pts, frame.time_base = 0, Fraction(1, rate)
    for part in (*fifo.resample(frame), *fifo.resample(None)):
        container.mux(stream.encode(part))
    container.mux(stream.encode(None))


def _add_picture(container, stream, times) -> None:
    """Pictures whose brightness tells their number, white in the upper left corner."""
    import av

    for number, at in enumerate(times):
        picture = np.full((48, 64, 3), 16 + number * 5 % 200, np.uint8)
        picture[:16, :16] = 255
        frame = av.VideoFrame.from_ndarray(picture, format="rgb24")
        frame.pts = at
        frame.time_base = Fraction(1, 10)
        container.mux(stream.encode(frame))
    container.mux(stream.encode(None))


def turn(path: Path, degrees: int) -> None:
    """Write a rotation into the picture track's header (ISO 14496-12, tkhd: matrix)."""
    data = bytearray(path.read_bytes())
    turns = {90: (0, -1, 1, 0), 180: (-1, 0, 0, -1), 270: (0, 1, -1, 0)}[degrees]
    at = data.find(b"tkhd")
    # The picture's track is the one whose width, the last field but one, is not zero.
    while struct.unpack(">I", data[at + 80 : at + 84])[0] == 0:
        at = data.find(b"tkhd", at + 1)
    a, b, c, d = (turn * (1 << 16) for turn in turns)
    data[at + 44 : at + 80] = struct.pack(">9i", a, b, 0, c, d, 0, 0, 0, 1 << 30)
    path.write_bytes(data)


@pytest.fixture
def turn_clip() -> Callable[[Path, int], None]:
    """Return a function that marks a clip as filmed with the camera turned."""
    return turn


@pytest.fixture
def make_clip(tmp_path: Path) -> MakeClip:
    """Return a function that makes a clip with a burst at 1 s; picture times in tenths."""

    def make(
        name: str,
        codec: str | None = "aac",
        *,
        video: bool = False,
        seconds: float = 2.0,
        rate: int = RATE,
        channels: int = 1,
        picture_times: list[int] | None = None,
        metadata: Mapping[str, str] | None = None,
        options: Mapping[str, str] | None = None,
    ) -> Path:
        import av

        path = tmp_path / name
        with av.open(str(path), "w", options=dict(options or {})) as container:
            container.metadata.update(metadata or {})
            sound = None
            if codec is not None:
                sound = container.add_stream(
                    codec, rate=rate, layout="mono" if channels == 1 else "stereo"
                )
                if codec in ("vorbis", "opus"):
                    sound.codec_context.options = {"strict": "experimental"}
            picture = None
            if video:
                picture = container.add_stream("mpeg4", rate=10)
                picture.width, picture.height, picture.pix_fmt = 64, 48, "yuv420p"
                picture.bit_rate = 2_000_000
            if picture is not None:
                _add_picture(container, picture, picture_times or range(round(seconds * 10)))
            if sound is not None:
                _add_sound(container, sound, _click_track(seconds, rate, channels), rate)
        return path

    return make


class PortAudioError(Exception):
    pass


class FakePortAudio:
    """The few calls of sounddevice that list devices and open streams."""

    PortAudioError = PortAudioError

    def __init__(self, entries: list[tuple[str, int, int]], default: tuple[int, int]) -> None:
        self.host_apis: list[dict[str, Any]] = [{"name": "ALSA"}, {"name": "JACK"}]
        self.entries = entries
        self.second_api: list[tuple[str, int, int]] = []
        self.default = SimpleNamespace(device=default)
        self.scans = 0
        self.accepted_rates: set[int] = {44_100, 48_000}
        self.opened: list[dict[str, Any]] = []

    def query_hostapis(self) -> list[dict[str, Any]]:
        return self.host_apis

    def query_devices(self) -> list[dict[str, Any]]:
        return [
            {
                "index": index,
                "name": name,
                "hostapi": int(index >= len(self.entries)),
                "default_samplerate": 44_100.0,
                "max_input_channels": inputs,
                "max_output_channels": outputs,
            }
            for index, (name, inputs, outputs) in enumerate(self.entries + self.second_api)
        ]

    def _terminate(self) -> None:
        self.scans += 1

    def _initialize(self) -> None:
        pass

    def InputStream(self, **settings: Any) -> Any:  # noqa: N802 - the name of the real one
        if settings["samplerate"] not in self.accepted_rates:
            raise PortAudioError("Invalid sample rate")
        self.opened.append(settings)
        return SimpleNamespace(start=lambda: None, close=lambda **_: None, latency=0.04, time=0.0)

    OutputStream = InputStream


@pytest.fixture
def fake(monkeypatch: pytest.MonkeyPatch) -> FakePortAudio:
    """Stand in for PortAudio with a microphone, headphones and an interface."""
    fake = FakePortAudio([("Mic", 2, 0), ("Phones", 0, 2), ("Interface", 8, 8)], (2, 1))
    monkeypatch.setitem(sys.modules, "sounddevice", fake)
    return fake
