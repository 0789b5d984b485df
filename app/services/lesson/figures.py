"""The pictures of a lesson report, as SVG for the page and PNG for the paper."""

import io
from collections.abc import Sequence
from typing import TYPE_CHECKING, Literal

from app.services.lesson.report import DayPart
from app.services.pictures import INK, QUIET, figure_of, weeks_figure
from app.services.views import TrendView

if TYPE_CHECKING:
    from matplotlib.figure import Figure

PictureFormat = Literal["svg", "png"]
_PNG_DPI = 150
_WIDTH_IN = 6.0
"""Narrow, so that letters are readable on a phone."""


def minutes_figure(days: Sequence[DayPart]) -> "Figure":
    """Draw a bar for each day; rest days and takes have marks of their own."""
    figure = figure_of(1, 2.6)
    figure.set_size_inches(_WIDTH_IN, 2.8)
    axes = figure.axes[0]
    places = range(len(days))
    axes.bar(places, [day.minutes or 0.0 for day in days], color=INK, width=0.6)
    for place, day in zip(places, days, strict=True):
        if day.rest:
            axes.annotate("rest", (place, 0), ha="center", va="bottom", color=INK, fontsize=8)
        if day.takes:
            axes.plot([place], [(day.minutes or 0.0)], "v", color=QUIET, markersize=6)
    axes.set_ylabel("minutes")
    if not any(day.minutes for day in days):
        axes.set_ylim(0, 10)
    every = max(1, -(-len(days) // 8))
    axes.set_xticks(
        list(places)[::every],
        [f"{day.day:%a} {day.day.day}" for day in days][::every],
        fontsize=9,
    )
    axes.set_title("Minutes a day; a triangle marks a day with takes", loc="left", fontsize=10)
    return figure


def passage_figure(title: str, trend: TrendView) -> "Figure":
    """Draw a passage over the weeks."""
    figure = weeks_figure(title, trend)
    figure.set_size_inches(_WIDTH_IN, 4.4)
    axes = figure.axes[0]
    axes.set_title("")  # the page has it as a heading
    axes.legend(loc="upper center", bbox_to_anchor=(0.5, -0.18), ncol=2, frameon=False, fontsize=9)
    return figure


def picture_bytes(figure: "Figure", kind: PictureFormat) -> bytes:
    """Give a figure as a file; the same figure gives the same bytes.

    An SVG has its letters as shapes: nothing is loaded from anywhere to show it.
    """
    import matplotlib as mpl  # noqa: PLC0415 - only when drawn

    out = io.BytesIO()
    with mpl.rc_context({"svg.hashsalt": "passagework", "svg.fonttype": "path"}):
        if kind == "svg":
            figure.savefig(out, format="svg", metadata={"Date": None, "Creator": None})
        else:
            figure.savefig(out, format="png", dpi=_PNG_DPI)
    return out.getvalue()
