"""A picture of a passage as a file: PNG and SVG to look at, CSV to go on with."""

from collections.abc import Iterable
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.failures import PlainFailure
from app.services.note_map import NoteMapView
from app.services.passages import passage_title
from app.services.picture_tables import (
    BeforeAfterView,
    Row,
    before_after_rows,
    note_map_rows,
    weeks_rows,
    write_table,
)
from app.services.views import TrendView

if TYPE_CHECKING:
    from matplotlib.figure import Figure

SUFFIXES = (".png", ".svg", ".csv")
_DPI = 144

Picture = TrendView | NoteMapView | BeforeAfterView


class PictureKind(StrEnum):
    """Which picture of a passage."""

    WEEKS = "weeks"
    NOTE_MAP = "note-map"
    BEFORE_AFTER = "before-after"


def save_picture(picture: Picture, path: Path) -> None:
    """Save what a picture shows; the suffix of the file says as what. Long.

    Parameters
    ----------
    picture : TrendView, NoteMapView or BeforeAfterView
        Over the weeks, note by note and day by day, or before and after.
    path : Path
        Ends in png, svg or csv; a file that is there is replaced.

    Raises
    ------
    PlainFailure
        Where the suffix is another one, or the file cannot be written.
    """
    suffix = checked_suffix(path)
    try:
        if suffix == ".csv":
            write_table(_rows(picture), path)
        else:
            _save_figure(_figure(picture), path, suffix)
    except OSError as problem:
        reason = problem.strerror or "the disk refused it"
        raise PlainFailure(
            f"{path} could not be written: {reason}.", "Choose another place."
        ) from problem


def checked_suffix(path: Path) -> str:
    """Give the suffix in small letters; PlainFailure where no picture ends in it."""
    suffix = path.suffix.lower()
    if suffix not in SUFFIXES:
        raise PlainFailure(
            f"A picture cannot be saved as '{path.name}'.", "End its name in png, svg or csv."
        )
    return suffix


def _rows(picture: Picture) -> Iterable[Row]:
    if isinstance(picture, TrendView):
        return weeks_rows(picture)
    if isinstance(picture, NoteMapView):
        return note_map_rows(picture)
    return before_after_rows(picture)


def _figure(picture: Picture) -> "Figure":
    from app.services.compare_pictures import (  # noqa: PLC0415 - matplotlib, only when saved
        before_after_figure,
        note_map_figure,
    )
    from app.services.pictures import weeks_figure  # noqa: PLC0415

    if isinstance(picture, TrendView):
        return weeks_figure(passage_title(picture.passage), picture)
    if isinstance(picture, NoteMapView):
        return note_map_figure(picture)
    return before_after_figure(picture)


def _save_figure(figure: "Figure", path: Path, suffix: str) -> None:
    import matplotlib as mpl  # noqa: PLC0415

    # Words stay words in a drawing, and its ids do not change from run to run.
    with mpl.rc_context({"svg.fonttype": "none", "svg.hashsalt": "passagework"}):
        figure.savefig(path, dpi=_DPI, format=suffix[1:], metadata=_NO_DATE[suffix])


_NO_DATE: dict[str, dict[str, str | None]] = {".png": {}, ".svg": {"Date": None}}
