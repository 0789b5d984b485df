"""Renders and measures the demo's takes in worker processes."""

import multiprocessing
import signal
from collections.abc import Iterator
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, wait
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.records import PlayingSettings
from app.services.stopping import ShouldStop, Stopped

if TYPE_CHECKING:
    from analysis.results import TakeAnalysis
    from sample_audio.scenario import DemoTake

_WORKERS = 2
_POLL_S = 0.2


@dataclass(frozen=True, slots=True)
class Rendered:
    """A take as it comes out of a worker: its PCM file and what was measured on it."""

    wav: Path
    analysis: "TakeAnalysis"


@contextmanager
def rendered_takes(
    jobs: "list[tuple[DemoTake, PlayingSettings]]", scratch: Path, should_stop: ShouldStop
) -> Iterator[Iterator[Rendered]]:
    """Render and measure takes in worker processes; give them in order."""
    others = set(multiprocessing.active_children())
    pool = ProcessPoolExecutor(
        _WORKERS,
        # A forked copy of a process with threads (Qt, PortAudio) may lock up.
        mp_context=multiprocessing.get_context("spawn"),
        initializer=_leave_interrupts_to_the_parent,
    )
    try:
        futures = [
            pool.submit(render_and_measure, take, settings, scratch / f"{number}.wav")
            for number, (take, settings) in enumerate(jobs)
        ]
        yield (_awaited(future, should_stop) for future in futures)
    except BaseException:
        # What the workers still render is no longer wanted, and lies in the scratch folder.
        for worker in set(multiprocessing.active_children()) - others:
            worker.terminate()
        raise
    finally:
        pool.shutdown(wait=True, cancel_futures=True)


def _awaited(future: "Future[Rendered]", should_stop: ShouldStop) -> Rendered:
    while True:
        if should_stop():
            raise Stopped
        done, _ = wait([future], timeout=_POLL_S, return_when=FIRST_COMPLETED)
        if done:
            return future.result()


def _leave_interrupts_to_the_parent() -> None:
    signal.signal(signal.SIGINT, signal.SIG_IGN)


def render_and_measure(take: "DemoTake", settings: PlayingSettings, wav: Path) -> Rendered:
    """Sound one take, write it as 24 bit PCM, and measure what was written."""
    import numpy as np  # noqa: PLC0415 - in a worker process only

    from app.services.file_measuring import analyse_sound, read_whole  # noqa: PLC0415
    from audio.pcm_file import PcmWriter  # noqa: PLC0415
    from sample_audio.generator import render  # noqa: PLC0415

    phrase = render(take.phrase)
    writer = PcmWriter(wav, phrase.sample_rate_hz, 1)
    try:
        writer.append(np.rint(phrase.samples * (2**31 - 2**8)).astype(np.int32)[:, np.newaxis])
    finally:
        writer.close()
    return Rendered(wav, analyse_sound(read_whole(wav), settings))
