"""Turns what can go wrong outside the program into one plain sentence."""

import errno
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from app.journal.failures import PlainFailure
from audio.errors import AudioFailure

_FULL = {errno.ENOSPC, errno.EFBIG, getattr(errno, "EDQUOT", errno.ENOSPC)}
_REFUSED = {errno.EACCES, errno.EPERM, errno.EROFS}


@contextmanager
def plain_failures(doing: str = "") -> Iterator[None]:
    """Raise :class:`PlainFailure` for the expected failures of devices and disks.

    Parameters
    ----------
    doing : str
        What was being done, as the end of "The disk is full: ...", e.g.
        ``"the take was not filed"``. Without it, operating system errors pass.
    """
    try:
        yield
    except AudioFailure as failure:
        raise PlainFailure(failure.sentence, failure.next_step) from failure
    except OSError as problem:
        if not doing or isinstance(problem, ConnectionError | TimeoutError):
            raise
        raise failure_from(problem, doing) from problem


def failure_from(problem: OSError, doing: str) -> PlainFailure:
    """Say in plain words what an operating system error means for the player."""
    where = _place(problem)
    if problem.errno in _FULL:
        return PlainFailure(f"The disk is full: {doing}.", "Make room on the disk, then try again.")
    if problem.errno in _REFUSED:
        return PlainFailure(
            f"Writing is not allowed{where}: {doing}.",
            "Check the folder's permissions, or choose another folder.",
        )
    if problem.errno == errno.ENOENT:
        return PlainFailure(f"Something is not there{where}: {doing}.", "Check the folder.")
    reason = problem.strerror or str(problem)
    return PlainFailure(f"The disk reported '{reason}'{where}: {doing}.", "Check the disk.")


def _place(problem: OSError) -> str:
    if not isinstance(problem.filename, str | Path):
        return ""
    return f" in {Path(problem.filename).parent}"
