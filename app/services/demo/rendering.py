"""Renders and measures the demo's takes in worker processes."""

from collections.abc import Iterator
from contextlib import AbstractContextManager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.records import PlayingSettings
from app.services.stopping import ShouldStop
from app.services.worker_pool import in_workers

if TYPE_CHECKING:
    from analysis.results import TakeAnalysis
    from sample_audio.scenario import DemoTake

_WORKERS = 2


@dataclass(frozen=True, slots=True)
class Rendered:
    """A take as it comes out of a worker: its PCM file and what was measured on it."""

    wav: Path
    analysis: "TakeAnalysis"


def rendered_takes(
    jobs: "list[tuple[DemoTake, PlayingSettings]]", scratch: Path, should_stop: ShouldStop
) -> AbstractContextManager[Iterator[Rendered]]:
    """Render and measure takes in worker processes; give them in order."""
    calls = [
        (render_and_measure, (take, settings, scratch / f"{number}.wav"))
        for number, (take, settings) in enumerate(jobs)
    ]
    return in_workers(calls, _WORKERS, should_stop)


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
