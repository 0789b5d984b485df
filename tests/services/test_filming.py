"""Which pictures belong to a take: its own clip's, or those of the part it was cut from."""

import importlib.util
import threading
from dataclasses import replace
from pathlib import Path

import pytest

from app.wiring import open_workbench

FPS = 30
FROM_S = 2.51

_spec = importlib.util.spec_from_file_location(
    "numbered_film", Path(__file__).parents[1] / "numbered_film.py"
)
assert _spec is not None
assert _spec.loader is not None
film = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(film)


@pytest.fixture
def bench(tmp_path):
    with open_workbench(tmp_path / "journal") as opened:
        yield opened


@pytest.fixture(scope="module")
def clip(tmp_path_factory) -> Path:
    path = tmp_path_factory.mktemp("film") / "filmed.mp4"
    return film.write_film(path, 6.0, fps=FPS, size=(320, 180))


def first_picture(bench, take_id: str) -> int:
    """Say which picture a take shows at its very beginning."""
    seen, numbers, failures = threading.Event(), [], []

    def show(picture, _place_s: float, _asked_at_s: float) -> None:
        numbers.append(film.number_of(picture))
        seen.set()

    reel = bench.filming.reel(take_id, show, failures.append)
    assert seen.wait(20)
    reel.close()
    assert reel.wait_closed()
    assert failures == []
    return numbers[0]


@pytest.fixture
def trimmed(bench, clip):
    (proposal,) = bench.importing.propose([clip])
    (row,) = bench.importing.file([replace(proposal, from_s=FROM_S, to_s=5.0)])
    assert row.file.suffix == ".flac"
    return row


def test_a_trimmed_take_begins_with_the_picture_of_its_first_sound(bench, trimmed):
    assert bench.filming.size(trimmed.id) == (320, 180)
    # Each picture bears its own number: the truth comes from the clip, not from the program.
    assert first_picture(bench, trimmed.id) == int(FROM_S * FPS)


def test_takes_trimmed_before_their_files_said_so_go_by_their_note(bench, trimmed, monkeypatch):
    monkeypatch.setattr("audio.trimming.part_of", lambda _path: None)
    assert bench.filming.size(trimmed.id) == (320, 180)
    assert first_picture(bench, trimmed.id) == int(2.5 * FPS)


def test_without_the_whole_clip_there_is_no_picture(bench, trimmed):
    for kept in (bench.journal_dir / "originals").iterdir():
        kept.unlink()
    assert bench.filming.size(trimmed.id) is None


def test_a_clip_filed_whole_shows_its_own_pictures(bench, clip):
    (row,) = bench.importing.file(bench.importing.propose([clip]))
    assert bench.filming.size(row.id) == (320, 180)
    assert first_picture(bench, row.id) == 0
