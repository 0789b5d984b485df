"""How the process ends when an error ends it while a window stands."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
STANDING = """
import sys
from pathlib import Path
from app.ui.application import QApplication, Window
from app.wiring import open_workbench
folder = Path(sys.argv[1])
window = Window(open_workbench(folder / "journal"), preferences_file=folder / "window.ini")
window.main.show()
QApplication.processEvents()
"""


@pytest.mark.parametrize(
    ("ending", "code"), [("raise ImportError('what a page needs')", 1), ("", 0)]
)
def test_an_error_while_a_window_stands_ends_with_its_code_and_no_crash(tmp_path, ending, code):
    ended = subprocess.run(
        [sys.executable, "-c", STANDING + ending, str(tmp_path)],
        cwd=ROOT,
        env=os.environ | {"QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    assert ended.returncode == code, ended.stderr
    assert ("what a page needs" in ended.stderr) == bool(code)
