"""``compare --picture``: the picture of a passage as a file."""

from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from app.cli.console import remark, watched
from app.journal.failures import PlainFailure

if TYPE_CHECKING:
    from app.services.file_comparing import Comparison
    from app.services.workbench import Workbench

MEASURE = "mean_absolute_cents"


class PictureOf(StrEnum):
    """Which picture."""

    WEEKS = "weeks"
    NOTE_MAP = "note-map"
    BEFORE_AFTER = "before-after"


PictureOption = Annotated[
    Path | None,
    typer.Option(
        "--picture",
        metavar="FILE",
        help="Save a picture; FILE ends in png, svg or csv.",
        show_default=False,
    ),
]
PictureOfOption = Annotated[
    PictureOf,
    typer.Option("--picture-of", help="What it shows; the first two want takes of a passage."),
]
MeasureOption = Annotated[
    str, typer.Option("--measure", metavar="KEY", help="Measure of the picture over the weeks.")
]


def refuse_early(path: Path) -> None:
    """Refuse a file of a kind that cannot be made, before anything long begins."""
    from app.services.picture_saving import checked_suffix  # noqa: PLC0415 - only when run

    checked_suffix(path)


def save_pair(found: "Comparison", path: Path, of: PictureOf) -> None:
    """Save two files before and after."""
    from app.services.compare_views import change_rows, pair_rows  # noqa: PLC0415
    from app.services.picture_saving import save_picture  # noqa: PLC0415
    from app.services.picture_tables import BeforeAfterView  # noqa: PLC0415

    if of is not PictureOf.BEFORE_AFTER:
        raise PlainFailure(
            f"The picture '{of}' needs takes of a passage.",
            "Name two takes of the journal, or ask for before-after.",
        )
    before, after = Path(found.a.name).name, Path(found.b.name).name
    sentence = "" if found.change is not None else "The two do not match."
    view = BeforeAfterView("", before, after, pair_rows(found), change_rows(found), sentence)
    save_picture(view, path)
    remark(f"Saved as {path}.")


def save_of_takes(
    bench: "Workbench", takes: tuple[str, str], path: Path, of: PictureOf, measure: str
) -> None:
    """Save a picture of two takes, or of the passage of the later one."""
    from app.services.picture_saving import save_picture  # noqa: PLC0415 - only when run
    from app.services.picture_tables import before_and_after  # noqa: PLC0415

    if of is PictureOf.BEFORE_AFTER:
        view = watched("comparing", lambda p, stop: bench.comparing.compare(*takes, p, stop))
        save_picture(before_and_after(view), path)
        remark(f"Saved as {path}.")
        return
    passage_id = bench.filing.row(takes[1]).passage_id
    if passage_id is None:
        raise PlainFailure("That take belongs to no passage.", "File it under one first.")
    if of is PictureOf.WEEKS:
        keys = [key for key, _ in bench.comparing.trend_keys()]
        if measure not in keys:
            raise PlainFailure(f"'{measure}' is no measure.", f"Choose one of {', '.join(keys)}.")
        save_picture(bench.comparing.trend(passage_id, measure), path)
    else:
        save_picture(
            watched(
                "laying note against note",
                lambda p, stop: bench.note_maps.of_passage(passage_id, None, p, stop),
            ),
            path,
        )
    remark(f"Saved as {path}.")
