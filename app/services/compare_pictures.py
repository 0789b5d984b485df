"""Pictures of a passage for files: over the weeks, note by note and day by day, before and after.

Drawn with matplotlib for paper: read without colour, by position, length and hatch.
"""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from app.services.map_rows import MapCell, MapRow
from app.services.note_map import NoteMapView
from app.services.passages import passage_title
from app.services.picture_tables import BeforeAfterView
from app.services.pictures import FLAT, INK, QUIET, SHARP, figure_of
from app.services.reading_views import Reading
from app.services.views import NotePairRow
from app.services.wording import reading_text

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

ROW_CENTS = 30.0
"""Deviation whose bar reaches the row above or below."""

_MOST_ROWS = 16
_NOTE_WIDTH = 0.72


def note_map_figure(view: NoteMapView) -> "Figure":
    """Draw the map: a row a day (or week), a bar a note, sharp up and flat down.

    Parameters
    ----------
    view : NoteMapView
        Drawn by weeks where it has more takes than a page has room for.
    """
    rows = view.takes if len(view.takes) <= _MOST_ROWS else view.weeks
    figure = figure_of(1, 1.6 + 0.42 * max(len(rows), 3))
    axes = figure.axes[0]
    for at, row in enumerate(rows):
        _draw_row(axes, -at, row)
    axes.set_yticks([-at for at in range(len(rows))], [row.label for row in rows])
    axes.set_xticks(range(len(view.notes)), [note.name for note in view.notes], fontsize=8)
    highest = max((cell.cents for row in rows[:1] for cell in row.cells if cell), default=0.0)
    axes.set_ylim(-len(rows) + 0.2, max(0.8, highest / ROW_CENTS + 0.2))
    axes.set_xlim(-0.7, len(view.notes) - 0.3)
    axes.tick_params(length=0)
    axes.set_xlabel(
        "Notes in the order they are played. Up and slanted: sharp. Down and dotted: flat.\n"
        f"From row to row: {ROW_CENTS:.0f} cents. Hollow: uncertain. Dash: not measured."
    )
    axes.set_title(passage_title(view.passage), loc="left")
    return figure


def _draw_row(axes: "Axes", base: float, row: MapRow) -> None:
    axes.axhline(base, color=QUIET, linewidth=0.5)
    for at, cell in enumerate(row.cells):
        if cell is None:
            axes.plot([at - 0.12, at + 0.12], [base, base], color=INK, linewidth=1.4)
        else:
            _draw_cell(axes, at, base, cell)


def _draw_cell(axes: "Axes", at: int, base: float, cell: MapCell) -> None:
    is_sharp = cell.cents > 0
    colour = SHARP if is_sharp else FLAT
    axes.bar(
        at,
        cell.cents / ROW_CENTS,
        _NOTE_WIDTH,
        bottom=base,
        facecolor=f"{colour}55" if cell.certain else "none",
        edgecolor=colour,
        hatch=("/////" if is_sharp else "....") if cell.certain else None,
        linewidth=0.8,
    )


def before_after_figure(view: BeforeAfterView) -> "Figure":
    """Draw both takes' deviation of each note: ring before, dot after, with intervals."""
    notes = both_measured(view.notes)
    figure = figure_of(1, 4.4)
    axes = figure.axes[0]
    axes.axhspan(-10.0, 10.0, color=QUIET, alpha=0.15, linewidth=0)
    axes.axhline(0.0, color=INK, linewidth=0.8)
    for at, (_pair, before, after) in enumerate(notes):
        _whisker(axes, at - 0.12, before, QUIET)
        _whisker(axes, at + 0.12, after, INK)
        axes.plot([at - 0.12, at + 0.12], [before.value, after.value], color=QUIET, linewidth=1.0)
    places = range(len(notes))
    axes.plot(
        [at - 0.12 for at in places],
        [before.value for _, before, _ in notes],
        "o",
        markerfacecolor="white",
        color=INK,
        label=f"before: {view.before}",
    )
    afters = [after.value for _, _, after in notes]
    axes.plot([at + 0.12 for at in places], afters, "o", color=INK, label=f"after: {view.after}")
    axes.set_xticks(list(places), [pair.name for pair, _, _ in notes], fontsize=8)
    axes.set_ylabel("Deviation (cents)\nsharp above, flat below")
    axes.set_xlabel("Notes in the order they are played; band: within 10 cents")
    axes.legend(loc="upper right", frameon=False, ncols=2)
    axes.margins(y=0.18)
    if not notes:
        words = view.sentence or "No note was measured in both takes."
        axes.text(0.5, 0.5, words, transform=axes.transAxes, ha="center")
    axes.set_title(_before_after_title(view), loc="left", fontsize=10)
    return figure


def both_measured(
    pairs: Sequence[NotePairRow],
) -> list[tuple[NotePairRow, Reading, Reading]]:
    """Give the notes that have a deviation in both takes."""
    return [
        (pair, pair.a_deviation, pair.b_deviation)
        for pair in pairs
        if isinstance(pair.a_deviation, Reading) and isinstance(pair.b_deviation, Reading)
    ]


def _whisker(axes: "Axes", at: float, reading: Reading, colour: str) -> None:
    if reading.uncertainty is not None:
        low, high = reading.value - reading.uncertainty, reading.value + reading.uncertainty
        axes.plot([at, at], [low, high], color=colour, linewidth=1.0)


def _before_after_title(view: BeforeAfterView) -> str:
    words = [
        f"{change.label} {reading_text(change.a)} to {reading_text(change.b)}: {change.word}"
        for change in view.changes
        if change.key == "mean_absolute_cents" and isinstance(change.a, Reading)
    ]
    return "\n".join([view.title, *words])
