"""Windows for tests: one on stand-ins, one on a small real journal."""

import importlib.util
import os
import shutil
import sys
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path
from types import ModuleType

import pytest

from app.ui.application import Window
from app.wiring import open_workbench

TAKES = Path(__file__).parents[2] / "sample_audio" / "takes"
EVENING = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)


def _load(name: str) -> ModuleType:
    # Tests are no package (importmode=importlib), so a helper is loaded by its path.
    spec = importlib.util.spec_from_file_location(name, Path(__file__).with_name(f"{name}.py"))
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[name] = module
    spec.loader.exec_module(module)
    return module


_load("ear_fakes")
_load("fakes_following")
_load("fakes_lesson")
_fakes = _load("fakes")


@pytest.fixture
def bench():
    """Stand-ins for the services, with some weeks of practice in them."""
    return _fakes.full_workbench()


@pytest.fixture
def open_window(qapp, tmp_path) -> Iterator[Callable[..., Window]]:
    """Open windows on a workbench and close them at the end."""
    opened: list[Window] = []

    def make(workbench) -> Window:
        window = Window(
            workbench,
            log_file=tmp_path / "passagework.log",
            preferences_file=tmp_path / "window.ini",
        )
        opened.append(window)
        window.main.resize(1280, 800)
        window.main.show()
        assert window.jobs.wait_until_idle(60)
        return window

    yield make
    for window in opened:
        window.close()
        window.main.deleteLater()
        window.deleteLater()
    qapp.processEvents()


@pytest.fixture
def window(open_window, bench) -> Window:
    """A shown window on the stand-ins."""
    return open_window(bench)


@pytest.fixture
def settle(qapp):
    """Let jobs end and what they brought be shown."""

    def wait(window: Window) -> None:
        for _ in range(3):
            assert window.jobs.wait_until_idle(60)
            qapp.processEvents()

    return wait


@pytest.fixture(scope="session")
def _measured_journal(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("journals") / "journal"
    with open_workbench(folder, clock=lambda: EVENING) as bench:
        settings = bench.practising.settings().default_settings
        passage = bench.passages.add("Study", "Opening", "1-8", settings)
        for day, name in ((7, "viola-study-first-day"), (14, "viola-study-last-day")):
            clip = Path(shutil.copy(TAKES / f"{name}.flac", folder.parent))
            # Its file's hour is what an import goes by, whatever hour it is where the tests run.
            os.utime(clip, 2 * (EVENING.replace(day=day, hour=17).timestamp(),))
            proposals = bench.importing.propose([clip], passage.id, EVENING.replace(day=day).date())
            bench.importing.file(proposals)
        for take_id in bench.measuring.waiting():
            bench.measuring.measure(take_id)
        bench.practising.set_minutes(EVENING.date(), 40)
    return folder


@pytest.fixture
def real_journal(_measured_journal, tmp_path) -> Path:
    """A journal with one passage and two measured takes of it, on disk."""
    return Path(shutil.copytree(_measured_journal, tmp_path / "journal"))


@pytest.fixture
def real_bench(real_journal):
    """The services of that journal, on its last evening."""
    with open_workbench(real_journal, clock=lambda: EVENING) as bench:
        yield bench
