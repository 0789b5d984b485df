"""A new sound file to write, whose disk says in its own words why it refuses."""

import errno
import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import soundfile

_NO_ROOM_BYTES = 2**20


def is_full(folder: Path) -> bool:
    """Tell whether the disk of a folder is full: libsndfile does not say why a write failed.

    Raises
    ------
    OSError
        When the system cannot tell.
    """
    return shutil.disk_usage(folder).free < _NO_ROOM_BYTES


@contextmanager
def new_sound(
    path: Path, sample_rate_hz: int, channels: int, subtype: str, container: str = "WAV"
) -> Iterator[soundfile.SoundFile]:
    """Open a sound file that is not there yet, to be written in the ``with`` block.

    Parameters
    ----------
    path : Path
        It must not exist. The caller removes it after a failure.
    sample_rate_hz, channels : int
    subtype, container : str
        As libsndfile names them: ``PCM_24``, ``WAV``.

    Raises
    ------
    OSError
        When the disk refuses, also in the block: libsndfile itself does not say why.
    """
    path.open("xb").close()
    try:
        with soundfile.SoundFile(
            path, "w", sample_rate_hz, channels, subtype, format=container
        ) as file:
            yield file
    except (soundfile.LibsndfileError, AssertionError) as error:
        number = errno.ENOSPC if is_full(path.parent) else errno.EIO
        raise OSError(number, os.strerror(number), str(path)) from error
