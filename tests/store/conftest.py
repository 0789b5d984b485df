"""An open, empty journal."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from app.store.store import Store
from tests.store.making import opened


@pytest.fixture
def journal(tmp_path: Path) -> Path:
    return tmp_path / "journal of 音楽"


@pytest.fixture
def store(journal: Path) -> Iterator[Store]:
    with opened(journal) as store:
        yield store
