"""The program is killed while it writes: what was reported as done is there, whole."""

import random
import subprocess
import sys
import time
from pathlib import Path

import pytest

from app.journal.sidecar import TakeCard, read_card
from app.store.connecting import check_soundness
from app.store.repair import repair
from app.store.store import Store
from tests.store.making import everything, opened

ROOT = Path(__file__).parents[2]
KILLS = 6


def killed_writer(journal: Path, seed: int) -> list[str]:
    """Let a writer work for a random moment, kill it, and give what it reported."""
    process = subprocess.Popen(
        [sys.executable, "-m", "tests.store.writer", str(journal), str(seed)],
        stdout=subprocess.PIPE,
        text=True,
        cwd=ROOT,
    )
    assert process.stdout is not None
    with process.stdout:
        assert process.stdout.readline() == "ready\n"
        time.sleep(random.Random(seed).uniform(0.0, 0.4))
        process.kill()  # SIGKILL, or its like on Windows
        process.wait()
        return process.stdout.read().splitlines()


def assert_whole(store: Store, reported: list[str]) -> None:
    takes = {take.id: take for take in store.takes.list()}
    markers = store.markers.for_takes(takes)
    here = {marker.id for some in markers.values() for marker in some}
    for take_id in takes:  # a transaction is there with all its parts
        assert {1.0, 2.0} <= {marker.start_s for marker in markers[take_id]}
        measurement = store.measurements.get(take_id)
        assert measurement is not None
        assert len(measurement.curves) == 20_000
    removed = {line.split()[1] for line in reported if line.startswith("removed")}
    last = reported[-1] if reported else ""
    for line in reported:
        word, record_id = line.split()
        if word == "take":
            assert record_id in takes
        elif word == "aim":
            assert takes[record_id].aim.startswith("aim")
        elif word == "removed":
            assert record_id not in here
        elif record_id not in removed and not last.startswith("aim"):
            # (after an aim the marker may just have been removed, unreported)
            assert record_id in here


def assert_sidecars_agree(store: Store) -> None:
    assert store.sidecars.due() == frozenset()
    for take in store.takes.list():
        card = read_card(store.folders.sidecar(take.file).read_text(encoding="utf-8"))
        assert isinstance(card, TakeCard)
        assert card.take == take
        assert card.markers == store.markers.for_take(take.id)


@pytest.mark.parametrize("seed", range(KILLS))
def test_killed_at_a_random_moment(tmp_path: Path, seed: int) -> None:
    reported = killed_writer(tmp_path, seed)
    with opened(tmp_path) as store:
        check_soundness(store.folders.database, thorough=True)
        assert_whole(store, reported)
        assert_sidecars_agree(store)
        before = everything(store)
    assert not list(tmp_path.rglob("*.part"))
    (tmp_path / "journal.db").unlink()
    repair(tmp_path)
    with opened(tmp_path) as store:
        assert everything(store) == before


def test_killed_again_and_again(tmp_path: Path) -> None:
    reported: list[str] = []
    for seed in range(100, 103):
        reported += killed_writer(tmp_path, seed)
    with opened(tmp_path) as store:
        check_soundness(store.folders.database, thorough=True)
        assert len(store.takes.list()) >= sum(line.startswith("take") for line in reported)
        assert_sidecars_agree(store)
