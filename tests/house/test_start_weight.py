"""What must not be loaded: heavy packages at the start, Qt below the window."""

import subprocess
import sys
from pathlib import Path

import pytest

REPOSITORY = Path(__file__).parents[2]
HEAVY = ("librosa", "numba", "matplotlib", "av", "sklearn", "soundfile", "sounddevice")
QT = ("PySide6", "shiboken6", "pyqtgraph")


def _modules_of(package: str) -> list[str]:
    folder = REPOSITORY / package
    return sorted(
        ".".join(path.relative_to(REPOSITORY).with_suffix("").parts).removesuffix(".__init__")
        for path in folder.rglob("*.py")
        if "migrations" not in path.parts
    )


def _loaded_by(modules: list[str], watched: tuple[str, ...]) -> set[str]:
    script = (
        "import importlib, sys\n"
        f"for name in {modules!r}: importlib.import_module(name)\n"
        f"print(*[name for name in {watched!r} if name in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", script],
        cwd=REPOSITORY,
        capture_output=True,
        text=True,
        timeout=120,
        check=True,
    )
    return set(done.stdout.split())


@pytest.mark.parametrize("room", ["app/ui", "app/cli"])
def test_nothing_heavy_is_loaded_at_the_start(room):
    assert not _loaded_by(_modules_of(room), HEAVY)


@pytest.mark.parametrize("room", ["app/journal", "app/store", "app/services", "app/cli"])
def test_qt_stays_in_the_window(room):
    assert not _loaded_by(_modules_of(room), QT)


def test_the_journal_needs_no_database():
    assert not _loaded_by(_modules_of("app/journal"), ("sqlite3", "sqlalchemy", "numpy"))
