"""A true copy of a file from elsewhere, and the fingerprint to prove it."""

import hashlib
from collections.abc import Callable
from pathlib import Path

from audio.errors import AudioFailure, name_taken
from audio.publishing import partial_name, publish, sync_file

_COPY_BYTES = 2**20


def sha256_of(path: Path, *, should_stop: Callable[[], bool] | None = None) -> str:
    """Fingerprint a file's bytes.

    Parameters
    ----------
    path : Path
        The file.
    should_stop : callable, optional
        Asked between blocks; True cancels with :class:`CopyStopped`.

    Returns
    -------
    str
        SHA-256 (FIPS 180-4) in lower-case hexadecimal.

    Raises
    ------
    AudioFailure
        When the file cannot be read.
    """
    digest = hashlib.sha256()
    try:
        with path.open("rb") as file:
            while block := file.read(_COPY_BYTES):
                _heed(should_stop)
                digest.update(block)
    except OSError as error:
        raise AudioFailure(
            f"{path.name} could not be read ({error.strerror}).",
            "Check that the disk is plugged in and the file may be read.",
        ) from error
    return digest.hexdigest()


class CopyStopped(Exception):  # noqa: N818 - asked for, not an error
    """The copy was cancelled; nothing is left of it."""


def copy_original(
    source: Path,
    target: Path,
    *,
    should_stop: Callable[[], bool] | None = None,
    on_progress: Callable[[float], None] | None = None,
) -> str:
    """Copy a file byte for byte, and make sure of it.

    Parameters
    ----------
    source : Path
        The player's file; it is only read.
    target : Path
        The copy to make; it must not exist, its folder is made.
    should_stop : callable, optional
        Asked between blocks; True cancels.
    on_progress : callable, optional
        Told the share done, 0 to 1.

    Returns
    -------
    str
        SHA-256 of both.

    Raises
    ------
    AudioFailure
        When `target` exists, `source` cannot be read, or the copy cannot be
        made or differs; nothing is left of it then.
    CopyStopped
        When `should_stop` said so.
    """
    if target.exists():
        raise name_taken(target)
    partial = partial_name(target)
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        digest = _copy_blocks(source, partial, should_stop, on_progress)
        sync_file(partial)
        if sha256_of(partial, should_stop=should_stop) != digest:
            raise AudioFailure(
                f"The copy of {source.name} differs from the original and was discarded.",
                "Check the disk and import the file again.",
            )
        publish(partial, target)
    except FileExistsError as error:
        raise name_taken(target) from error
    except FileNotFoundError as error:
        raise AudioFailure(
            f"{source.name} is not there.", "Check the name and the folder."
        ) from error
    except OSError as error:
        raise AudioFailure(
            f"{source.name} could not be copied ({error.strerror}).",
            "Make room on the disk, check that both folders are there, and import it again.",
        ) from error
    finally:
        partial.unlink(missing_ok=True)
    return digest


def _copy_blocks(
    source: Path,
    partial: Path,
    should_stop: Callable[[], bool] | None,
    on_progress: Callable[[float], None] | None,
) -> str:
    digest = hashlib.sha256()
    done = 0
    with source.open("rb") as original, partial.open("xb") as copy:
        size = max(source.stat().st_size, 1)
        while block := original.read(_COPY_BYTES):
            _heed(should_stop)
            digest.update(block)
            copy.write(block)
            done += len(block)
            if on_progress is not None:
                on_progress(min(done / size, 1.0))
    return digest.hexdigest()


def _heed(should_stop: Callable[[], bool] | None) -> None:
    if should_stop is not None and should_stop():
        raise CopyStopped
