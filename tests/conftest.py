"""The test house: nothing leaks, nothing warns, and no test sees the real home folder."""

import gc
import importlib.util
import logging
import os
import sys
import tempfile
import threading
import time
import weakref
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import hypothesis
import pytest

# No example fails for being slow: the first one compiles, and machines are busy.
hypothesis.settings.register_profile("no clock", deadline=None)
hypothesis.settings.load_profile("no clock")

if not os.environ.get("PASSAGEWORK_TESTS_ON_DISPLAY"):
    os.environ["QT_QPA_PLATFORM"] = "offscreen"

# Before anything of the project is imported: what is read at import time must not be real either.
_SESSION_HOME = tempfile.TemporaryDirectory(prefix="passagework-tests-")
_HOME_VARIABLES = {
    "HOME": "",
    "USERPROFILE": "",
    "APPDATA": "AppData/Roaming",
    "LOCALAPPDATA": "AppData/Local",
    "XDG_CONFIG_HOME": ".config",
    "XDG_DATA_HOME": ".local/share",
    "XDG_STATE_HOME": ".local/state",
    "XDG_CACHE_HOME": ".cache",
}
for _name, _part in _HOME_VARIABLES.items():
    os.environ[_name] = str(Path(_SESSION_HOME.name) / _part)
for _name in [name for name in os.environ if name.startswith("PASSAGEWORK_JOURNAL")]:
    del os.environ[_name]
_RUNTIME = Path(_SESSION_HOME.name) / "run"
_RUNTIME.mkdir(mode=0o700)
os.environ["XDG_RUNTIME_DIR"] = str(_RUNTIME)

_PATIENCE_S = 3.0
_OWN_LOGGERS = ("app", "audio", "analysis", "sample_audio", "passagework")


def _load_virtual_room() -> Any:
    # Tests are no package (importmode=importlib), so a helper beside them is loaded by its path.
    spec = importlib.util.spec_from_file_location(
        "virtual_room", Path(__file__).with_name("virtual_room.py")
    )
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules["virtual_room"] = module
    spec.loader.exec_module(module)
    return module


@pytest.fixture(autouse=True)
def _own_home(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    home = tmp_path_factory.mktemp("home")
    for name, part in _HOME_VARIABLES.items():
        monkeypatch.setenv(name, str(home / part))
    # Caches that are costly to build and say nothing about the test.
    monkeypatch.setenv("MPLCONFIGDIR", str(Path(_SESSION_HOME.name) / "matplotlib"))
    return home


@pytest.fixture(scope="session")
def _new_database(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    from app.store.migrating import migrate

    path = tmp_path_factory.mktemp("database") / "journal.db"
    migrate(path)
    return path.read_bytes()


@pytest.fixture(scope="module")
def new_databases_copied(_new_database: bytes) -> Iterator[None]:
    """Give each new journal a copy of one empty database, made by the real migrations.

    For rooms whose tests start hundreds of journals. ``tests/store`` tests the migrations
    themselves and does without.
    """
    from app.store import migrating

    real = migrating.migrate

    def copied(database: Path, target: str = "head") -> None:
        if target == "head" and not (database.exists() and database.stat().st_size):
            database.write_bytes(_new_database)
        else:
            real(database, target)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(migrating, "migrate", copied)
        yield


@pytest.fixture(autouse=True)
def _no_leaked_threads() -> Iterator[None]:
    before = set(threading.enumerate())
    yield
    deadline = time.monotonic() + _PATIENCE_S
    while leaked := [t for t in threading.enumerate() if t not in before and t.is_alive()]:
        if time.monotonic() > deadline:
            names = ", ".join(sorted(t.name for t in leaked))
            pytest.fail(f"Threads still running after the test: {names}")
        leaked[0].join(0.05)


@pytest.fixture(autouse=True)
def _no_unexpected_log(request: pytest.FixtureRequest) -> Iterator[None]:
    """Fail on a warning in the project's log; a test that provokes one takes ``caplog``."""
    if "caplog" in request.fixturenames:
        yield
        return
    handler = _Collector()
    loggers = [logging.getLogger(name) for name in _OWN_LOGGERS]
    for logger in loggers:
        logger.addHandler(handler)
    yield
    for logger in loggers:
        logger.removeHandler(handler)
    if handler.lines:
        pytest.fail("Logged, but not looked at (take caplog):\n" + "\n".join(handler.lines))


class _Collector(logging.Handler):
    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.lines: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.lines.append(f"{record.levelname} {record.name}: {record.getMessage()}")


@pytest.fixture(autouse=True)
def _no_leaked_qt(request: pytest.FixtureRequest) -> Iterator[None]:
    uses_qt = {"qtbot", "qapp", "qapp_cls"} & set(request.fixturenames)
    if "PySide6.QtWidgets" not in sys.modules or not uses_qt:
        yield
        return
    from PySide6.QtCore import QThreadPool
    from PySide6.QtWidgets import QApplication

    timers_before = {id(timer) for timer in _running_timers()}
    widgets_before = {_address(w) for w in QApplication.topLevelWidgets()}
    yield
    if QApplication.instance() is None:
        return
    if not QThreadPool.globalInstance().waitForDone(round(_PATIENCE_S * 1000)):
        pytest.fail("Qt's thread pool still works after the test.")
    _finish_deletions()
    widgets = [w for w in QApplication.topLevelWidgets() if _address(w) not in widgets_before]
    if widgets:
        # A cycle of Python objects may hold a widget that nobody uses any more.
        names = [f"{type(w).__name__} {w.objectName()!r}" for w in widgets]
        widgets.clear()
        gc.collect()
        _finish_deletions()
        if [w for w in QApplication.topLevelWidgets() if _address(w) not in widgets_before]:
            pytest.fail(f"Top-level widgets left after the test: {', '.join(names)}")
    timers = [timer for timer in _running_timers() if id(timer) not in timers_before]
    if timers:
        named = ", ".join(
            f"{t.objectName() or type(t).__name__} ({t.interval()} ms)" for t in timers
        )
        pytest.fail(f"Timers still running after the test: {named}")


def _address(qt_object: Any) -> int:
    # The Python object around a Qt object may come and go; the Qt object stays where it is.
    import shiboken6

    return int(shiboken6.getCppPointer(qt_object)[0])


def _finish_deletions() -> None:
    from PySide6.QtCore import QCoreApplication, QEvent

    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
    QCoreApplication.processEvents()


_started_timers: "weakref.WeakSet[Any]" = weakref.WeakSet()


@pytest.fixture(scope="session", autouse=True)
def _watch_timers() -> Iterator[None]:
    """Note every timer that Python starts; searching all objects for them takes far longer."""
    if "PySide6.QtCore" not in sys.modules:
        yield
        return
    from PySide6.QtCore import QTimer

    start = QTimer.start

    def noted(timer: Any, *arguments: Any) -> None:
        _started_timers.add(timer)
        start(timer, *arguments)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(QTimer, "start", noted)
        yield


def _running_timers() -> list[Any]:
    import shiboken6

    return [timer for timer in _started_timers if shiboken6.isValid(timer) and timer.isActive()]


@pytest.fixture(scope="session")
def _room_daemon() -> Iterator[Any]:
    module = _load_virtual_room()
    missing = module.missing_tools()
    if missing:
        sentence = f"the virtual room needs {', '.join(missing)}"
        if os.environ.get("CI"):
            pytest.fail(sentence)
        pytest.skip(sentence)
    with module.VirtualRoom() as room:
        yield room


@pytest.fixture
def virtual_room(_room_daemon: Any) -> Any:
    """Return a plugged-in virtual sound device; see ``tests/virtual_room.py``.

    Play with ``with virtual_room.playing(samples, 48_000): ...``, record from
    PortAudio's device ``virtual_room.device``, pull the plug with
    ``virtual_room.unplug()``.
    """
    if not _room_daemon.plugged_in:
        _room_daemon.plug_in()
        sys.modules["virtual_room"].restart_portaudio()
    return _room_daemon
