import sys
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest

from audio import devices
from audio.errors import AudioFailure
from audio.input import Input
from audio.output import Output
from audio.ring import SampleRing


def test_devices_are_listed_with_the_default_first(fake: Any) -> None:
    inputs, outputs = devices.input_devices(), devices.output_devices()
    assert [device.name for device in inputs] == ["Interface", "Mic"]
    assert [device.name for device in outputs] == ["Phones", "Interface"]
    assert [device.is_default for device in inputs] == [True, False]
    assert (inputs[0].id, inputs[0].channels, inputs[0].default_sample_rate_hz) == (2, 8, 44_100)
    assert inputs[1].key == "ALSA: Mic"


def test_a_remembered_device_is_found_or_its_loss_is_said(fake: Any) -> None:
    assert devices.find_device("input").name == "Interface"
    assert devices.find_device("input", "ALSA: Mic").name == "Mic"
    with pytest.raises(AudioFailure, match=r"ALSA: Gone.* not there") as caught:
        devices.find_device("output", "ALSA: Gone")
    assert "Plug it in" in caught.value.next_step


@pytest.mark.parametrize("platform", ["linux", "darwin", "win32", "freebsd14"])
def test_no_device_says_what_to_plug_in(
    fake: Any, monkeypatch: pytest.MonkeyPatch, platform: str
) -> None:
    fake.entries = []
    monkeypatch.setattr(sys, "platform", platform)
    with pytest.raises(AudioFailure, match="No microphone") as caught:
        devices.input_devices()
    assert "microphone" in caught.value.next_step
    with pytest.raises(AudioFailure, match="No loudspeaker") as caught:
        devices.output_devices()
    assert "headphones" in caught.value.next_step


def test_no_portaudio_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(_: str) -> None:
        raise OSError("PortAudio library not found")

    monkeypatch.setattr(devices.importlib, "import_module", refuse)
    monkeypatch.setattr(sys, "platform", "linux")
    for call in (devices.input_devices, devices.output_devices, devices.refresh):
        with pytest.raises(AudioFailure, match="PortAudio") as caught:
            call()
        assert "libportaudio2" in caught.value.next_step


def test_a_scan_starts_portaudio_anew_unless_an_input_is_in_use(fake: Any) -> None:
    devices.refresh()
    assert fake.scans == 1

    class Holder:
        def __init__(self, willing: bool) -> None:
            self.willing = willing
            self.reopened = 0

        def release_for_scan(self) -> bool:
            return self.willing

        def reopen_after_scan(self) -> None:
            self.reopened += 1

    player, recorder = Holder(True), Holder(False)
    devices.hold(player)
    devices.refresh()
    assert (fake.scans, player.reopened) == (2, 1)
    devices.hold(recorder)
    with pytest.raises(AudioFailure, match="while an input is in use"):
        devices.refresh()
    assert (fake.scans, player.reopened, recorder.reopened) == (2, 2, 0)
    devices.release(recorder)
    devices.release(player)
    devices.refresh()
    assert (fake.scans, player.reopened) == (3, 2)


def test_the_devices_own_rate_is_taken_when_it_refuses_the_preferred_one(
    fake: Any,
) -> None:
    fake.accepted_rates = {44_100}
    source = Input(None)
    source.open(48_000, 4)
    assert (source.sample_rate_hz, source.channels) == (44_100, 4)
    prepared: list[tuple[int, int]] = []
    output = Output(None, lambda *form: prepared.append(form), lambda *_: None, lambda: None)
    output.open(48_000)
    assert prepared == [(44_100, 2)]
    assert output.latency_s == 0.04
    output.close()
    assert output.latency_s == 0
    assert output.now_s is None


def test_a_device_that_opens_at_no_rate_is_said_plainly(fake: Any) -> None:
    fake.accepted_rates = set()
    with pytest.raises(AudioFailure, match="'Interface' would not open") as caught:
        Input(None).open(48_000, 1)
    assert "other programs" in caught.value.next_step
    with pytest.raises(AudioFailure, match="'Phones' would not open"):
        Output(None, lambda *_: None, lambda *_: None, lambda: None).open(48_000)


def overflowing(value: bool) -> Any:
    return SimpleNamespace(input_overflow=value)


def test_an_overrun_is_measured_by_the_devices_clock(fake: Any) -> None:
    source = Input(None)
    source.open(48_000, 1)
    block = np.zeros((480, 1), np.int32)
    for at_s, overflow in ((5.0, False), (5.01, False), (5.045, True), (5.055, False)):
        source._callback(
            block, 480, SimpleNamespace(inputBufferAdcTime=at_s), overflowing(overflow)
        )
    assert source.overruns == 1
    # 5.045 - 5.020 s = 25 ms of 48 kHz.
    assert source.dropped_frames == 1200
    source.forget_losses()
    assert (source.overruns, source.dropped_frames) == (0, 0)


def test_what_finds_no_room_in_the_ring_is_counted(fake: Any) -> None:
    source = Input(None)
    source.open(48_000, 1)
    source.ring = SampleRing(1000, 1)
    now = SimpleNamespace(inputBufferAdcTime=0.0)
    for _ in range(3):
        source._callback(np.ones((480, 1), np.int32), 480, now, overflowing(False))
    assert source.dropped_frames == 3 * 480 - 1000
    assert source.is_heard


def test_any_channel_of_an_interface_can_be_recorded(fake: Any) -> None:
    source = Input(None)
    source.open(48_000, 1, first_channel=5)
    assert source.channels == 1
    assert fake.opened[-1]["channels"] == 8, "a server asked for fewer mixes the rest into them"
    block = np.arange(16, dtype=np.int32).reshape(2, 8)
    source._callback(block, 2, SimpleNamespace(inputBufferAdcTime=0.0), overflowing(False))
    assert source.ring.read(10).tolist() == [[5], [13]]
    usual = Input(None)
    usual.open(48_000, 1)
    assert fake.opened[-1]["channels"] == 1, "where nobody chose, the system does"
    pair = Input(None)
    pair.open(48_000, 2, first_channel=7)
    assert pair.channels == 1
    with pytest.raises(AudioFailure, match="no channel 9"):
        Input(None).open(48_000, 1, first_channel=8)


def test_windows_lists_every_device_once(fake: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "platform", "win32")
    assert len(devices.input_devices()) == 2, "as it is, where there is no WASAPI"
    fake.host_apis = [
        {"name": "MME", "default_input_device": 0, "default_output_device": 1},
        {"name": "Windows WASAPI", "default_input_device": 4, "default_output_device": -1},
    ]
    fake.entries = [("Microphone (Some long na", 2, 0), ("Phones", 0, 2)]
    fake.second_api = [("Line in", 2, 0), ("Built-in", 1, 0), ("Microphone (Some long name)", 2, 0)]
    assert [(d.name, d.is_default) for d in devices.input_devices()] == [
        ("Microphone (Some long name)", True),
        ("Line in", False),
        ("Built-in", False),
    ]
    assert [d.name for d in devices.output_devices()] == ["Phones"]
