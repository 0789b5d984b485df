"""The virtual sound device itself: what is played comes back, and it can be unplugged."""

import time

import numpy as np
import pytest

pytestmark = pytest.mark.room


def test_what_is_played_is_recorded_through_portaudio(virtual_room):
    import sounddevice

    t = np.arange(48_000 * 4) / 48_000
    tone = 0.25 * np.sin(2 * np.pi * 440.0 * t)
    with virtual_room.playing(tone, 48_000):
        heard = sounddevice.rec(
            48_000, samplerate=48_000, channels=1, device=virtual_room.device, blocking=True
        )[:, 0]
    spectrum = np.abs(np.fft.rfft(heard[-32_768:] * np.hanning(32_768)))
    assert abs(np.argmax(spectrum) * 48_000 / 32_768 - 440.0) < 1.5
    assert np.sqrt(np.mean(heard[-24_000:] ** 2)) == pytest.approx(0.25 / np.sqrt(2), rel=0.02)


def test_an_unplugged_device_ends_the_stream_and_comes_back(virtual_room):
    import sounddevice

    blocks, finished = [], []
    with sounddevice.InputStream(
        samplerate=48_000,
        channels=1,
        device=virtual_room.device,
        callback=lambda *_: blocks.append(True),
        finished_callback=lambda: finished.append(True),
    ):
        # The first block comes up to two seconds after the stream was opened.
        _wait_for(blocks)
        virtual_room.unplug()
        assert not virtual_room.plugged_in
        _wait_for(finished)
    virtual_room.plug_in()
    assert virtual_room.plugged_in


def _wait_for(seen, timeout_s=6.0):
    deadline = time.monotonic() + timeout_s
    while not seen:
        assert time.monotonic() < deadline
        time.sleep(0.02)
