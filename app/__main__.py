"""The program's start: hands the doors to the command line and says what went wrong."""

import errno
import logging
import signal
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from app.cli.console import EXPECTED_FAILURE, INTERRUPTED, remark
from app.cli.program import Program
from app.cli.windows import open_window, plainly_open
from app.journal.failures import PlainFailure
from app.services.loading import uncollected
from app.services.stopping import Progress, ShouldStop, Stopped

if TYPE_CHECKING:
    from app.services.repairing import RepairReport, RestoreReport
    from app.services.window_end import WindowEnd
    from app.services.workbench import Workbench

BUG = 1

log = logging.getLogger("passagework")
_LOGGERS = ("passagework", "app", "audio", "analysis")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line.

    Parameters
    ----------
    arguments : sequence of str, optional
        Without the program's name; those of the process where left out.

    Returns
    -------
    int
        0, or 2 after an expected failure (one plain sentence on stderr), 1 after a
        bug (its log's place on stderr), 130 after Ctrl-C.
    """
    _speak_utf8()
    given = list(sys.argv[1:] if arguments is None else arguments)
    try:
        _check_text(given)
        return _run(given)
    except PlainFailure as failure:
        remark(f"{failure.sentence} {failure.next_step}".strip())
        return EXPECTED_FAILURE
    except (Stopped, KeyboardInterrupt):
        remark("Stopped.")
        return INTERRUPTED
    except OSError as problem:
        if problem.errno != errno.ENAMETOOLONG:
            _report_bug(problem)
            return BUG
        name = Path(str(problem.filename or "")).name
        remark(f"A file cannot have a name as long as {name[:24]!r}... Give a shorter one.")
        return EXPECTED_FAILURE
    except Exception as bug:
        _report_bug(bug)
        return BUG


def _check_text(arguments: list[str]) -> None:
    """Refuse what no journal could keep: bytes that are no text of this machine."""
    for argument in arguments:
        try:
            argument.encode()
        except UnicodeEncodeError as problem:
            shown = argument[:40].encode("ascii", "backslashreplace").decode()
            raise PlainFailure(
                f"The argument '{shown}' holds bytes that are no text.",
                "Rename the file, or write the argument anew.",
            ) from problem


def _run(arguments: list[str]) -> int:
    plain = plainly_open(arguments)
    if plain is not None:
        return open_window(_program(), plain[0])
    import typer.main  # noqa: PLC0415 - reads options, which the plainest start has none of

    from app.cli.commands import build  # noqa: PLC0415

    command = typer.main.get_command(build(arguments))
    try:
        command.main(arguments, prog_name="passagework", obj=_program())
    except SystemExit as end:
        return end.code if isinstance(end.code, int) else int(bool(end.code))
    return 0


class _Doors:
    """Imports the wiring when a command first goes through one of the doors."""

    def open_workbench(
        self, journal_dir: Path, *, create: bool = True, read_only: bool = False
    ) -> "Workbench":
        with uncollected():
            import app.services.workbench  # noqa: PLC0415, F401
            from app import wiring  # noqa: PLC0415

        return wiring.open_workbench(journal_dir, create=create, read_only=read_only)

    def default_journal_dir(self) -> Path:
        from app import wiring  # noqa: PLC0415

        return wiring.default_journal_dir()

    def build_demo(
        self, journal_dir: Path, *, end: date, progress: Progress, should_stop: ShouldStop
    ) -> None:
        from app import wiring  # noqa: PLC0415

        wiring.build_demo(journal_dir, end=end, progress=progress, should_stop=should_stop)

    def repair(
        self, journal_dir: Path, progress: Progress, should_stop: ShouldStop
    ) -> "RepairReport":
        from app.services.repairing import repair  # noqa: PLC0415
        from app.wiring import local_now  # noqa: PLC0415

        return repair(journal_dir, clock=local_now, progress=progress, should_stop=should_stop)

    def restore(
        self, journal_dir: Path, backup: str, progress: Progress, should_stop: ShouldStop
    ) -> "RestoreReport":
        from app.services.repairing import restore  # noqa: PLC0415
        from app.wiring import local_now  # noqa: PLC0415

        return restore(
            journal_dir, backup, clock=local_now, progress=progress, should_stop=should_stop
        )

    def visit(self, bundle: Path, progress: Progress, should_stop: ShouldStop) -> Path:
        import platformdirs  # noqa: PLC0415

        from app.services.bundling.visiting import open_visit  # noqa: PLC0415
        from app.wiring import local_now  # noqa: PLC0415

        visits = Path(platformdirs.user_data_dir("passagework", appauthor=False)) / "bundles"
        return open_visit(bundle, visits, local_now, progress, should_stop)


def _program() -> Program:
    doors = _Doors()
    return Program(
        open_workbench=doors.open_workbench,
        default_journal_dir=doors.default_journal_dir,
        build_demo=doors.build_demo,
        repair=doors.repair,
        restore=doors.restore,
        visit=doors.visit,
        run_window=_run_window,
        show_failure=_show_failure,
        now=lambda: datetime.now().astimezone(),
    )


def _run_window(workbench: "Workbench", *, told: str = "") -> "WindowEnd":
    with uncollected():
        from app.ui.application import run_window  # noqa: PLC0415 - Qt only for the window

    path = log_file()
    # Qt's loop gives Python no turn to raise KeyboardInterrupt in, so Ctrl-C ends the
    # process; the journal and a running recording are safe against that.
    before = signal.signal(signal.SIGINT, signal.SIG_DFL)
    try:
        with _logged_to(path):
            return run_window(workbench, log_file=path, told=told)
    finally:
        signal.signal(signal.SIGINT, before)


def _show_failure(failure: PlainFailure) -> None:
    from app.ui.application import show_failure  # noqa: PLC0415 - Qt only for the window

    show_failure(failure)


def _speak_utf8() -> None:
    """Let every sign through where output goes to a file or pipe of another encoding."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None and (stream.encoding or "").lower() not in ("utf-8", "utf8"):
            reconfigure(encoding="utf-8")


def log_file() -> Path:
    """Give the file that bugs are written to."""
    import platformdirs  # noqa: PLC0415 - only after a bug

    return Path(platformdirs.user_log_dir("passagework", appauthor=False)) / "passagework.log"


@contextmanager
def _logged_to(path: Path) -> Iterator[bool]:
    """Write the project's warnings and bugs to a file for a while; says whether that works."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handler = logging.FileHandler(path, encoding="utf-8", delay=True)
    except OSError:
        yield False
        return
    handler.setFormatter(logging.Formatter("%(asctime)s %(levelname)s %(name)s: %(message)s"))
    handler.setLevel(logging.WARNING)
    loggers = [logging.getLogger(name) for name in _LOGGERS]
    for logger in loggers:
        logger.addHandler(handler)
    try:
        yield True
    finally:
        for logger in loggers:
            logger.removeHandler(handler)
        handler.close()


def _report_bug(bug: Exception) -> None:
    path = log_file()
    try:
        with _logged_to(path) as is_logged:
            log.error("A bug", exc_info=bug)
    except OSError:
        is_logged = False
    where = f"The details are in {path}." if is_logged else f"It was: {bug!r}."
    remark(f"Something went wrong inside the program. {where}")


if __name__ == "__main__":
    sys.exit(main())
