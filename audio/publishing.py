"""Give a finished file its name: all at once, and never over another file."""

import contextlib
import os
import sys
import uuid
from pathlib import Path


def partial_name(path: Path) -> Path:
    """Name a temporary sibling of a file.

    Parameters
    ----------
    path : Path
        The file to be made.

    Returns
    -------
    Path
        A hidden name in the same folder that nothing else uses.
    """
    return path.with_name(f".{uuid.uuid4().hex[:12]}{path.suffix}.part")


def sync_file(path: Path) -> None:
    """Bring a file's content to the disk.

    Parameters
    ----------
    path : Path
        The file.
    """
    # Windows syncs only what is open for writing.
    with path.open("r+b") as file:
        os.fsync(file.fileno())


def publish(partial: Path, path: Path) -> None:
    """Turn a finished temporary file into the real one.

    Parameters
    ----------
    partial : Path
        A finished and synced file in the same folder.
    path : Path
        Its name from now on.

    Raises
    ------
    FileExistsError
        When there is a file of that name; `partial` then stays.
    OSError
        When the folder is gone or full.
    """
    if sys.platform == "win32":
        partial.rename(path)  # refuses by itself when the name is taken
        return
    try:
        # A hard link is the only step that is atomic and also refuses to overwrite.
        path.hardlink_to(partial)
    except FileExistsError:
        raise
    except OSError:
        # No hard links on this file system, such as exFAT on a memory stick.
        if path.exists():
            raise FileExistsError(path) from None
        partial.rename(path)
    else:
        partial.unlink()
    _sync_folder(path.parent)


def _sync_folder(folder: Path) -> None:
    # The new name itself must reach the disk; not every file system offers that.
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
