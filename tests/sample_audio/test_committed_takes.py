"""The takes in the repository are what the generator makes, and their truth is true."""

import json

import numpy as np
import pytest
import soundfile

from sample_audio.committed import FOLDER, TOLERANCE, committed_specs, write_takes


@pytest.fixture(scope="module")
def rewritten(tmp_path_factory):
    folder = tmp_path_factory.mktemp("takes")
    write_takes(folder)
    return folder


def test_every_take_is_there_and_together_they_are_small():
    names = set(committed_specs())
    assert {path.stem for path in FOLDER.glob("*.flac")} == names
    assert {path.stem for path in FOLDER.glob("*.json")} == names
    assert sum(path.stat().st_size for path in FOLDER.iterdir()) < 2_000_000


@pytest.mark.parametrize("name", committed_specs())
def test_a_take_is_made_again_sample_by_sample(rewritten, name):
    kept, kept_rate = soundfile.read(FOLDER / f"{name}.flac")
    made, made_rate = soundfile.read(rewritten / f"{name}.flac")
    assert kept_rate == made_rate == 48_000
    assert kept.shape == made.shape
    assert np.abs(kept - made).max() <= TOLERANCE


@pytest.mark.parametrize("name", committed_specs())
def test_the_truth_beside_a_take_is_made_again(rewritten, name):
    kept, made = (
        json.loads((folder / f"{name}.json").read_text(encoding="utf-8"))
        for folder in (FOLDER, rewritten)
    )
    assert kept["beat_s"] == pytest.approx(made["beat_s"], abs=2e-6)
    assert len(kept["notes"]) == len(made["notes"])
    for note, again in zip(kept["notes"], made["notes"], strict=True):
        assert note == pytest.approx(again, abs=2e-6) if _is_numeric(note) else note == again
    rest = [key for key in made if key not in ("beat_s", "notes")]
    assert {key: kept[key] for key in rest} == {key: made[key] for key in rest}


def _is_numeric(note):
    return all(isinstance(value, int | float) for value in note.values())
