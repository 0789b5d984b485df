"""The rooms' permitted imports, and proof that each contract bites."""

import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

REPOSITORY = Path(__file__).parents[2]
ROOMS = ("analysis", "audio", "app", "sample_audio")

# For each contract, a module that breaks it: where it lies, and its one import.
VIOLATIONS = {
    "analysis is arrays in, results out": ("analysis/breach_a.py", "import app.services.demo"),
    "audio knows devices and files only": ("audio/breach_b.py", "import analysis.results"),
    "sample_audio knows nothing of what it tests": (
        "sample_audio/breach_c.py",
        "import analysis.results",
    ),
    "the rooms of app lie in layers": ("app/journal/breach_d.py", "import app.services.demo"),
    "analysis is used by services alone": ("app/ui/breach_e.py", "import analysis.results"),
    "audio is used by services alone": ("app/cli/breach_f.py", "import audio.errors"),
    "the store is used by services alone": ("app/ui/breach_g.py", "import app.store.models"),
    "sample_audio is used by the demo and the accuracy check alone": (
        "app/services/breach_h.py",
        "import sample_audio.specs",
    ),
    "journal needs the standard library only": ("app/journal/breach_i.py", "import numpy"),
    "journal knows no database": ("app/journal/breach_j.py", "import sqlite3"),
    "store: a database and folders, no Qt": (
        "app/store/breach_k.py",
        "from PySide6 import QtCore",
    ),
    "services: no Qt, no database": ("app/services/breach_l.py", "import sqlalchemy"),
    "jobs: Qt's core": ("app/jobs.py", "import numpy"),
    "ui: Qt and drawing, no numerics": ("app/ui/breach_m.py", "import scipy.signal"),
    "cli: no Qt, no numerics": ("app/cli/breach_n.py", "import PySide6.QtCore"),
    "analysis: numerics": ("analysis/breach_o.py", "import soundfile"),
    "audio: sound devices and files": ("audio/breach_p.py", "import librosa"),
    "sample_audio: numerics and sound files": ("sample_audio/breach_q.py", "import librosa"),
}


def _lint(folder: Path) -> tuple[int, str]:
    done = subprocess.run(
        [
            sys.executable,
            "-c",
            "import sys; from importlinter.cli import lint_imports_command as c; sys.exit(c())",
            "--no-cache",
        ],
        cwd=folder,
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    return done.returncode, done.stdout + done.stderr


def _copy_of_the_house(folder: Path) -> Path:
    for room in ROOMS:
        shutil.copytree(
            REPOSITORY / room, folder / room, ignore=shutil.ignore_patterns("__pycache__", "*.flac")
        )
    (folder / "tests/house").mkdir(parents=True)
    shutil.copy(REPOSITORY / "tests/house/external_packages.py", folder / "tests/house")
    shutil.copy(REPOSITORY / "pyproject.toml", folder)
    return folder


def test_the_house_keeps_its_import_rules():
    code, report = _lint(REPOSITORY)
    assert code == 0, report[report.find("Contracts") :]


@pytest.fixture(scope="module")
def breached(tmp_path_factory):
    """Break every contract at once; return the part of the report about each."""
    folder = _copy_of_the_house(tmp_path_factory.mktemp("breached"))
    for number, (path, statement) in enumerate(VIOLATIONS.values()):
        text = (folder / path).read_text(encoding="utf-8") if (folder / path).exists() else ""
        line = statement
        if number % 2:  # imports for types alone count too
            line = f"from typing import TYPE_CHECKING\nif TYPE_CHECKING:\n    {statement}"
        (folder / path).write_text(f"{text}\n{line}\n", encoding="utf-8")
    code, report = _lint(folder)
    assert code == 1, report
    _, _, details = report.partition("Broken contracts")
    sections = {}
    for name in VIOLATIONS:
        _, _, rest = details.partition(f"\n{name}\n")
        ends = [rest.find(f"\n{other}\n---") for other in VIOLATIONS if f"\n{other}\n---" in rest]
        sections[name] = rest[: min(ends)] if ends else rest
    return sections


def test_every_contract_has_a_violation():
    settings = tomllib.loads((REPOSITORY / "pyproject.toml").read_text(encoding="utf-8"))
    names = [contract["name"] for contract in settings["tool"]["importlinter"]["contracts"]]
    assert sorted(names) == sorted(VIOLATIONS)


@pytest.mark.parametrize("name", VIOLATIONS)
def test_a_breach_breaks_its_contract(breached, name):
    module = VIOLATIONS[name][0].removesuffix(".py").replace("/", ".")
    assert module in breached[name], f"not reported under {name!r}:\n{breached[name]}"
