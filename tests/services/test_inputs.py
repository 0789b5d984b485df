"""An input is opened once, whoever wants to hear it."""

import time
from dataclasses import replace

import numpy as np
import pytest

from app.journal.failures import PlainFailure
from app.services.inputs import Inputs, input_buffer_s, output_buffer_s
from audio.devices import Device
from audio.errors import AudioFailure

RATE = 48_000


class Machine:
    """Inputs that refuse to be opened twice, as some sound systems do."""

    def __init__(self):
        self.open = {}
        self.is_gone = False
        self.asked_s = []
        self.channels = []

    def opened(self, key, *, channel=None, on_block=None, pre_roll_s=0.0, latency_s=None):
        if key in self.open or self.is_gone:
            raise PlainFailure(f"The input '{key}' would not open.", "Close other programs.")
        self.asked_s.append(latency_s)
        self.channels.append(channel)
        self.open[key] = Recorder(self, key, on_block)
        return self.open[key], key


class Recorder:
    sample_rate_hz = RATE
    state = "monitoring"

    def __init__(self, machine, key, on_block):
        self.machine, self.key, self.on_block = machine, key, on_block

    def deliver(self, seconds=0.1):
        if self.on_block is not None:
            self.on_block(np.ones((round(seconds * RATE), 1), np.float32))

    def stop(self):
        del self.machine.open[self.key]
        self.state = "ended"


@pytest.fixture
def machine(monkeypatch):
    made = Machine()
    monkeypatch.setattr("app.services.inputs.opened_input", made.opened)

    def found(_direction, key=None):
        return Device(0, key or "usual", "ALSA", 1, RATE, key is None)

    monkeypatch.setattr("audio.devices.find_device", found)
    monkeypatch.setattr(Device, "key", property(lambda self: self.name))
    return made


@pytest.fixture
def heard():
    return []


@pytest.fixture
def inputs(bench, machine):
    assert machine.open == {}
    return Inputs(bench.recording._store)


def test_who_listens_along_hears_what_is_recorded_and_listens_on_afterwards(inputs, machine, heard):
    inputs.listen_along(None, lambda block, rate: heard.append((len(block) / rate, block.max())))
    machine.open["usual"].deliver()
    recorder, _ = inputs.open(None)
    recorder.deliver()
    recorder.stop()
    time.sleep(0.05)
    inputs.closed(recorder)
    machine.open["usual"].deliver()
    assert not inputs.along_has_ended
    sounding = [seconds for seconds, peak in heard if peak]
    assert sounding == [0.1] * 3, "every block is heard once"
    assert sum(seconds for seconds, _ in heard) < 1.0
    inputs.stop_along()
    assert machine.open == {}


def test_listening_along_joins_an_input_that_is_open_already(inputs, machine, heard):
    recorder, _ = inputs.open(None, on_block=lambda block: heard.append("recorded"))
    inputs.listen_along(None, lambda *_: heard.append("heard along"))
    recorder.deliver()
    assert heard == ["recorded", "heard along"]
    inputs.stop_along()
    recorder.deliver()
    assert heard[2:] == ["recorded"]
    assert list(machine.open) == ["usual"], "the recording goes on"


def test_two_inputs_are_open_side_by_side(inputs, machine, heard):
    inputs.listen_along("desk", lambda *_: heard.append(1))
    inputs.open("clip-on")
    machine.open["clip-on"].deliver()
    machine.open["desk"].deliver()
    assert heard == [1]


def test_time_in_which_nobody_could_hear_is_heard_as_silence(inputs, machine, heard):
    inputs.listen_along(None, lambda block, _rate: heard.append((len(block), block.max())))
    with inputs.lent("usual"):
        assert machine.open == {}
        time.sleep(0.2)
    ((frames, peak),) = heard
    assert peak == 0.0
    assert 0.2 <= frames / RATE < 1.0


def test_an_input_that_does_not_come_back_is_told(inputs, machine):
    inputs.listen_along(None, lambda *_: None)
    recorder, _ = inputs.open(None)
    recorder.stop()
    machine.is_gone = True
    inputs.closed(recorder)
    assert inputs.along_has_ended
    inputs.stop_along()


def test_an_input_that_does_not_open_leaves_the_one_who_listens_alone(
    inputs, machine, heard, monkeypatch
):
    inputs.listen_along(None, lambda *_: heard.append(1))
    opened = machine.opened

    def refused_once(*arguments, **options):
        monkeypatch.setattr("app.services.inputs.opened_input", opened)
        raise PlainFailure("It would not open.", "Close other programs.")

    monkeypatch.setattr("app.services.inputs.opened_input", refused_once)
    with pytest.raises(PlainFailure):
        inputs.open(None)
    machine.open["usual"].deliver()
    assert heard[-1:] == [1]


def test_an_input_that_is_recorded_from_is_not_lent(inputs):
    inputs.open(None)
    with pytest.raises(PlainFailure, match="in use"), inputs.lent("usual"):
        pytest.fail("it was lent")


def test_without_an_input_it_says_so(inputs, monkeypatch):
    def none(*_arguments):
        raise AudioFailure("No microphone was found.", "Plug in a microphone.")

    monkeypatch.setattr("audio.devices.find_device", none)
    for act in (inputs.open, lambda key: inputs.listen_along(key, lambda *_: None)):
        with pytest.raises(PlainFailure, match="No microphone"):
            act(None)


@pytest.mark.parametrize(
    ("chosen_ms", "output_s", "input_s"), [(40, 0.04, None), (160, 0.16, 0.16)]
)
def test_the_chosen_buffer_is_asked_for(bench, machine, chosen_ms, output_s, input_s):
    settings = bench.practising.settings()
    bench.practising.change_settings(replace(settings, buffer_ms=chosen_ms))
    store = bench.recording._store
    assert (output_buffer_s(store), input_buffer_s(store)) == (output_s, input_s)
    Inputs(store).open(None)
    assert machine.asked_s == [input_s]
