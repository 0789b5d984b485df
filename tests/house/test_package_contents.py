"""What pip installs holds every file that the program reads at run time."""

import re
import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

REPOSITORY = Path(__file__).parents[2]
pytest.importorskip("setuptools", minversion="77", reason="build.lock is not installed here")

ROOMS = ("app", "audio", "analysis", "sample_audio")
# Run from a checkout, or make the self-contained folder; an installed program has no use for them.
OF_A_CHECKOUT = re.compile(
    r"app/\w+\.sh|app/packaging/(make_folder\.sh|.*\.spec|.*\.lock)|app/ui/translations/.*\.ts"
)


def files_of_the_rooms(folder: Path) -> set[str]:
    return {
        path.relative_to(folder).as_posix()
        for room in ROOMS
        for path in (folder / room).rglob("*")
        if path.is_file() and "__pycache__" not in path.parts and path.suffix != ".pyc"
    }


@pytest.fixture(scope="module")
def wheel(tmp_path_factory):
    """The wheel of a copy, so that neither this folder's leavings nor its caches matter."""
    folder = tmp_path_factory.mktemp("source")
    without = shutil.ignore_patterns("__pycache__", "*.egg-info", "*.nbi", "*.nbc")
    for room in ROOMS:
        shutil.copytree(REPOSITORY / room, folder / room, ignore=without)
    for name in ("pyproject.toml", "README.md", "LICENSE"):
        shutil.copy(REPOSITORY / name, folder)
    expected = files_of_the_rooms(folder)
    done = subprocess.run(
        [sys.executable, "-c", "import setuptools.build_meta as b; print(b.build_wheel('dist'))"],
        cwd=folder,
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    assert done.returncode == 0, done.stderr[-2000:]
    with zipfile.ZipFile(next((folder / "dist").glob("*.whl"))) as archive:
        return expected, set(archive.namelist())


def test_the_wheel_holds_every_file_of_the_rooms(wheel):
    expected, names = wheel
    wanted = {name for name in expected if not OF_A_CHECKOUT.fullmatch(name)}
    assert any(name.endswith(".j2") for name in wanted)
    assert "app/ui/passagework.svg" in wanted
    assert "app/store/migrations/script.py.mako" in wanted
    missing = wanted - names
    assert not missing


def test_the_wheel_holds_nothing_else(wheel):
    expected, names = wheel
    assert not {name for name in names if ".dist-info/" not in name} - expected
