"""The fixtures that watch every test: each is shown to catch what it is there for."""

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

HERE = Path(__file__).parent
REPOSITORY = HERE.parents[1]

LEAKY_TESTS = """
import logging, os, threading, warnings
from pathlib import Path
import pytest

def test_leaves_a_thread():
    threading.Thread(target=threading.Event().wait, args=(30,), daemon=True).start()

def test_leaves_a_widget(qtbot):
    from PySide6.QtWidgets import QLabel
    pytest.kept = QLabel("left over")
    pytest.kept.show()

def test_leaves_a_timer(qtbot):
    from PySide6.QtCore import QTimer
    pytest.timer = QTimer()
    pytest.timer.start(5000)

def test_logs_a_warning():
    logging.getLogger("app.services").warning("unseen")

def test_warns():
    warnings.warn("unseen")

def test_makes_qt_warn(qtbot):
    from PySide6.QtCore import qWarning
    qWarning("unseen")

def test_good_citizen(qtbot, caplog):
    from PySide6.QtWidgets import QLabel
    label = QLabel("closed by qtbot")
    qtbot.addWidget(label)
    label.show()
    thread = threading.Thread(target=lambda: None)
    thread.start()
    logging.getLogger("app").warning("looked at")
    assert "looked at" in caplog.text

def test_has_a_home_of_its_own():
    import platformdirs
    data, config = platformdirs.user_data_path("x"), platformdirs.user_config_path("x")
    for folder in (Path.home(), data, config):
        assert Path(os.environ["HOME"]) in (folder, *folder.parents)
    assert str(Path.home()) != os.environ["REAL_HOME"]
"""


@pytest.fixture(scope="module")
def outcomes(tmp_path_factory):
    folder = tmp_path_factory.mktemp("leaky")
    for name in ("conftest.py", "virtual_room.py"):
        shutil.copy(HERE.parent / name, folder / name)
    (folder / "test_leaky.py").write_text(LEAKY_TESTS, encoding="utf-8")
    shutil.copy(REPOSITORY / "pyproject.toml", folder / "pyproject.toml")
    done = subprocess.run(
        [sys.executable, "-m", "pytest", "-rA", "-p", "no:cacheprovider", "test_leaky.py"],
        cwd=folder,
        env={**os.environ, "REAL_HOME": str(Path.home())},
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    found = {}
    for outcome, name in re.findall(
        r"^(PASSED|FAILED|ERROR) test_leaky\.py::(\w+)", done.stdout, re.MULTILINE
    ):
        found.setdefault(name, set()).add(outcome)
    assert found, done.stdout + done.stderr
    return found


@pytest.mark.parametrize(
    "name",
    [
        "test_leaves_a_thread",
        "test_leaves_a_widget",
        "test_leaves_a_timer",
        "test_logs_a_warning",
        "test_warns",
        "test_makes_qt_warn",
    ],
)
def test_a_leak_or_warning_fails_its_test(outcomes, name):
    assert outcomes[name] & {"FAILED", "ERROR"}


@pytest.mark.parametrize("name", ["test_good_citizen", "test_has_a_home_of_its_own"])
def test_good_manners_pass(outcomes, name):
    assert outcomes[name] == {"PASSED"}
