"""Long files are measured from a mapping, and give the same numbers."""

import numpy as np
import pytest
import soundfile

from app.journal.failures import PlainFailure
from app.journal.records import PlayingSettings
from app.services import long_sounds
from app.services.file_measuring import measure_file
from app.services.long_sounds import read_for_measuring
from app.services.stopping import Stopped, never_stop, no_progress


@pytest.fixture
def everything_is_long(monkeypatch):
    monkeypatch.setattr(long_sounds, "LONG_S", 0.0)


def test_a_mapped_file_holds_the_same_samples(tmp_path, everything_is_long):
    path = tmp_path / "sound.wav"
    samples = np.random.default_rng(0).uniform(-0.5, 0.5, (100_000, 2)).astype(np.float32)
    soundfile.write(path, samples, 48_000, subtype="FLOAT")
    told: list[float] = []
    found = read_for_measuring(path, told.append, never_stop)
    assert np.array_equal(found.sound.samples, samples)
    assert (found.sound.sample_rate_hz, found.sound.channels) == (48_000, 2)
    assert told == sorted(told)
    assert told[-1] == 1.0
    question = found.watched(never_stop)
    for _ in range(3):
        assert question() is False
    assert np.array_equal(found.sound.samples[5:9], samples[5:9])


def test_long_files_measure_alike(wav_a, monkeypatch):
    short = measure_file(wav_a, PlayingSettings()).as_json(True)
    monkeypatch.setattr(long_sounds, "LONG_S", 0.0)
    monkeypatch.setattr(long_sounds, "_GIVEN_BACK_EVERY_S", 0.0)
    assert measure_file(wav_a, PlayingSettings()).as_json(True) == short


def test_reading_a_long_file_stops_at_once(wav_a, everything_is_long):
    with pytest.raises(Stopped):
        read_for_measuring(wav_a, no_progress, lambda: True)


def test_an_unreadable_file_is_said_plainly(tmp_path):
    path = tmp_path / "no.wav"
    path.write_bytes(b"RIFF")
    with pytest.raises(PlainFailure):
        read_for_measuring(path, no_progress, never_stop)
