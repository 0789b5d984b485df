"""Sound for measuring: short files in memory, long ones in a file that is mapped.

An hour of mono at 44.1 kHz takes 635 MB in memory. A long file is therefore decoded
block by block into a temporary file without a name, which the system removes with the
last reference to it; what was read of the mapping is given back every now and then, so
that the memory in use stays that of a few blocks.
"""

import mmap
import tempfile
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import IO, TYPE_CHECKING, Final

import numpy as np

from app.services.plain import plain_failures
from app.services.stopping import Progress, ShouldStop, stop_if

if TYPE_CHECKING:
    from audio.decoding import OpenSound
    from audio.files import Sound

LONG_S: Final = 600.0
_GIVEN_BACK_EVERY_S: Final = 0.005


@dataclass(frozen=True, slots=True)
class MeasurableSound:
    """A sound, and the questions and answers to measure it with.

    ``watched`` wraps the question whether to stop, which the measures ask often: memory
    that was read is given back meanwhile.
    """

    sound: "Sound"
    watched: Callable[[ShouldStop], ShouldStop]


def read_for_measuring(path: Path, progress: Progress, should_stop: ShouldStop) -> MeasurableSound:
    """Decode a file for measuring.

    Parameters
    ----------
    path : Path
    progress : callable
        Told the share done, 0 to 1.
    should_stop : callable
        Asked for every block of a long file.

    Raises
    ------
    PlainFailure
        Where the file cannot be read, or the disk is full.
    Stopped
        Once `should_stop` says so.
    """
    from audio.files import open_sound, read_sound  # noqa: PLC0415 - libsndfile, when needed

    with plain_failures("the file was not read"):
        with open_sound(path) as opened:
            frames = opened.info.frames or 0
            if frames >= LONG_S * opened.info.sample_rate_hz:
                return _mapped(opened, frames, progress, should_stop)
        sound = read_sound(path)
    progress(1.0)
    return MeasurableSound(sound, lambda question: question)


def _mapped(
    opened: "OpenSound", expected: int, progress: Progress, should_stop: ShouldStop
) -> MeasurableSound:
    from audio.files import Sound  # noqa: PLC0415

    with tempfile.TemporaryFile(prefix="passagework-") as spool:
        for block in opened.blocks():
            stop_if(should_stop)
            spool.write(np.ascontiguousarray(block, dtype=np.float32).data)
            progress(min(1.0, opened.frames_read / expected))
        spool.flush()
        view = _view_of(spool)
    samples = np.frombuffer(view, dtype=np.float32).reshape(-1, opened.info.channels)
    sound = Sound(
        samples=samples,
        sample_rate_hz=opened.info.sample_rate_hz,
        container=opened.info.container,
        subtype=opened.info.subtype,
        non_finite_samples=opened.non_finite_samples,
        damage=opened.damage,
    )
    return MeasurableSound(sound, lambda question: _giving_back(view, question))


def _view_of(spool: IO[bytes]) -> mmap.mmap:
    return mmap.mmap(spool.fileno(), 0, access=mmap.ACCESS_READ)


def _giving_back(view: mmap.mmap, should_stop: ShouldStop) -> ShouldStop:
    """Ask as before, and give back what was read of a mapping meanwhile."""
    advice = getattr(mmap, "MADV_DONTNEED", None)
    if advice is None:  # Windows trims a mapping by itself
        return should_stop
    given_back_s = time.monotonic()

    def asked() -> bool:
        nonlocal given_back_s
        now_s = time.monotonic()
        if now_s - given_back_s >= _GIVEN_BACK_EVERY_S:
            view.madvise(advice)
            given_back_s = now_s
        return should_stop()

    return asked
