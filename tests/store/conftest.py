"""An open, empty journal."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings

from app.store.store import Store
from tests.store.making import fill, opened

# Generated examples take the time they take: the machine may be busy.
settings.register_profile("unhurried", deadline=None)
settings.load_profile("unhurried")


@pytest.fixture
def journal(tmp_path: Path) -> Path:
    return tmp_path / "journal of 音楽"


@pytest.fixture(scope="session")
def _filled_once(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("filled") / "journal"
    with opened(folder) as store:
        fill(store, days=12)
    return folder


@pytest.fixture
def filled(_filled_once: Path, journal: Path) -> Path:
    """Give a closed journal with a little of everything in it."""
    shutil.copytree(_filled_once, journal)
    return journal


@pytest.fixture
def store(journal: Path) -> Iterator[Store]:
    with opened(journal) as store:
        yield store
