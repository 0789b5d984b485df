"""A bundle opened to look at and to write into: a journal of its own, beside the player's."""

import shutil
import uuid
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from app.journal.failures import PlainFailure
from app.services.plain import plain_failures
from app.services.stopping import Progress, ShouldStop, part_of

VISITING = PlainFailure(
    "This is a bundle of somebody's days: nothing is recorded, imported or counted in it.",
    "Open your own journal to practise.",
)


def open_visit(
    bundle: Path,
    visits_dir: Path,
    clock: Callable[[], datetime],
    progress: Progress,
    should_stop: ShouldStop,
) -> Path:
    """Make a journal out of a bundle, once; gives its folder.

    The bundle itself is only read. Opened again, the same bundle leads to the same
    journal with what was added to it.

    Raises
    ------
    PlainFailure
        Where the bundle cannot be used.
    Stopped
        Once `should_stop` says so; nothing is left then.
    """
    from app.services.bundling.unpacking import manifest_of, unpack  # noqa: PLC0415 - seldom
    from app.store.repair import repair  # noqa: PLC0415

    folder = visits_dir / manifest_of(bundle).id
    if folder.is_dir():
        return folder
    building = visits_dir / f".{uuid.uuid4().hex[:12]}.part"
    try:
        with plain_failures("the bundle was not opened"):
            building.mkdir(parents=True)
            unpack(bundle, building, part_of(progress, 0.0, 0.8), should_stop)
            repair(
                building,
                compare_bytes=False,
                clock=clock,
                progress=part_of(progress, 0.8, 1.0),
                should_stop=should_stop,
            )
            building.rename(folder)
    finally:
        shutil.rmtree(building, ignore_errors=True)
    return folder
