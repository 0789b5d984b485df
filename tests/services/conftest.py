"""A journal of its own for each test, with a clock that stands where the test puts it."""

from dataclasses import dataclass, field
from datetime import datetime, timedelta, timezone
from pathlib import Path

import numpy as np
import pytest
import soundfile

from app.wiring import open_workbench
from sample_audio.generator import NoteSpec, PhraseSpec, render

ZONE = timezone(timedelta(hours=1))
NOTES = (62, 64, 66, 67, 69, 71, 69, 67)
DEVIATIONS = (5.0, -8.0, 12.0, 0.0, -15.0, 7.0, -3.0, 9.0)


@pytest.fixture(scope="module", autouse=True)
def _databases_copied(new_databases_copied) -> None:
    """Start journals quickly."""


@dataclass
class Clock:
    now: datetime = field(default_factory=lambda: datetime(2026, 3, 14, 19, 30, tzinfo=ZONE))

    def __call__(self) -> datetime:
        return self.now


def phrase(shift_cents=0.0, tempo=96.0, seed=1):
    notes = tuple(
        NoteSpec(midi, 1.0, deviation_cents=cents + shift_cents)
        for midi, cents in zip(NOTES, DEVIATIONS, strict=True)
    )
    return render(PhraseSpec(notes, tempo=tempo, seed=seed, instrument="violin"))


@pytest.fixture(scope="session")
def phrase_a():
    return phrase()


@pytest.fixture(scope="session")
def phrase_b():
    return phrase(shift_cents=6.0, tempo=104.0, seed=2)


@pytest.fixture(scope="session")
def wav_a(phrase_a, tmp_path_factory) -> Path:
    path = tmp_path_factory.mktemp("sound") / "take a.wav"
    soundfile.write(path, phrase_a.samples, phrase_a.sample_rate_hz, subtype="PCM_24")
    return path


@pytest.fixture(scope="session")
def wav_b(phrase_b, tmp_path_factory) -> Path:
    path = tmp_path_factory.mktemp("sound") / "take b.wav"
    soundfile.write(path, phrase_b.samples, phrase_b.sample_rate_hz, subtype="PCM_24")
    return path


@pytest.fixture
def tone_file(tmp_path):
    """Make short sound files that need no measuring."""

    def make(name="tone.wav", seconds=0.5, frequency_hz=440.0, rate=48_000, channels=1, **kind):
        t = np.arange(round(seconds * rate)) / rate
        tone = 0.2 * np.sin(2 * np.pi * frequency_hz * t)
        path = tmp_path / name
        soundfile.write(path, np.tile(tone[:, np.newaxis], channels), rate, **kind)
        return path

    return make


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def journal_dir(tmp_path) -> Path:
    return tmp_path / "journal"


@pytest.fixture
def bench(journal_dir, clock):
    with open_workbench(journal_dir, clock=clock) as workbench:
        yield workbench


@pytest.fixture
def add_take(bench):
    """Import a file and give the row of its take."""

    def add(path, passage=None, day=None):
        passage_id = bench.passages.find_or_add(passage)[0].id if passage else None
        proposals = bench.importing.propose([path], passage_id, day)
        assert not proposals[0].failure
        assert not proposals[0].duplicate_of
        return bench.importing.file(proposals)[0]

    return add
