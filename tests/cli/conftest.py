"""Runs the command line in this process, on a journal of the test's own."""

import json
from dataclasses import dataclass
from datetime import timedelta
from pathlib import Path

import numpy as np
import pytest
import soundfile

from app.__main__ import main
from sample_audio.generator import NoteSpec, PhraseSpec, render

DEVIATIONS = (5.0, -8.0, 12.0, 0.0, -15.0, 7.0)


@pytest.fixture(scope="module", autouse=True)
def _databases_copied(new_databases_copied) -> None:
    """Start journals quickly."""


@pytest.fixture(scope="module", autouse=True)
def _written_days_have_come():
    """The days written in these tests stand still; the machine's clock may be before them."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("app.services.day_now.FARTHEST_AHEAD", timedelta(days=36_500))
        yield


@dataclass(frozen=True)
class Ran:
    code: int
    out: str
    err: str

    @property
    def json(self):
        def refuse(word):
            raise ValueError(f"{word} is no JSON")

        return json.loads(self.out, parse_constant=refuse)


@pytest.fixture
def journal_dir(tmp_path, monkeypatch) -> Path:
    path = tmp_path / "journal"
    monkeypatch.setenv("PASSAGEWORK_JOURNAL", str(path))
    return path


@pytest.fixture
def run(journal_dir, capsys):
    """Give the code and both outputs of ``passagework ARGUMENT...``."""

    def ran(*arguments) -> Ran:
        capsys.readouterr()
        code = main([str(argument) for argument in arguments])
        captured = capsys.readouterr()
        return Ran(code, captured.out, captured.err)

    return ran


@pytest.fixture
def tone_file(tmp_path):
    """Make short sound files that need no measuring."""

    def make(name="tone.wav", seconds=0.5, frequency_hz=440.0, rate=48_000, channels=1, **kind):
        t = np.arange(round(seconds * rate)) / rate
        tone = 0.2 * np.sin(2 * np.pi * frequency_hz * t)
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        soundfile.write(path, np.tile(tone[:, np.newaxis], channels), rate, **kind)
        return path

    return make


def _written(folder, name, shift_cents, tempo, seed):
    notes = tuple(
        NoteSpec(midi, 1.0, deviation_cents=cents + shift_cents)
        for midi, cents in zip((62, 64, 66, 67, 69, 67), DEVIATIONS, strict=True)
    )
    phrase = render(PhraseSpec(notes, tempo=tempo, seed=seed))
    path = folder / name
    soundfile.write(path, phrase.samples, phrase.sample_rate_hz, subtype="PCM_24")
    return path, phrase


@pytest.fixture(scope="session")
def phrase_a(tmp_path_factory):
    return _written(tmp_path_factory.mktemp("sound"), "2026-03-10 18.15.00.wav", 0.0, 96.0, 1)


@pytest.fixture(scope="session")
def phrase_b(tmp_path_factory):
    return _written(tmp_path_factory.mktemp("sound"), "2026-03-12 18.15.00.wav", 6.0, 100.0, 2)


@pytest.fixture
def wav_a(phrase_a) -> Path:
    return phrase_a[0]


@pytest.fixture
def wav_b(phrase_b) -> Path:
    return phrase_b[0]
