"""Pictures of a journal for machines without a display, through matplotlib."""

from collections.abc import Iterable
from datetime import date, timedelta
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from app.services.passages import passage_title
from app.services.reading_views import Reading
from app.services.views import TakeView, TrendView
from app.services.wording import counted, day_text
from app.services.workbench import Workbench

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

# A pair that colour-blind readers can tell apart (Okabe and Ito, 2008, from memory);
# position and hatch say the same.
SHARP, FLAT, INK, QUIET = "#D55E00", "#0072B2", "#333333", "#999999"
_DPI = 110


def pictures(bench: Workbench, folder: Path) -> tuple[Path, ...]:
    """Draw a journal: the weeks of each passage, its last take, and the days.

    Parameters
    ----------
    bench : Workbench
    folder : Path
        Made where it is missing; pictures of the same name are replaced.

    Returns
    -------
    tuple of Path
        The PNG files.
    """
    folder.mkdir(parents=True, exist_ok=True)
    made = []
    for number, passage in enumerate(bench.passages.list(), start=1):
        rows = bench.filing.takes(passage.id)
        if not rows:
            continue
        title = passage_title(passage)
        weeks = folder / f"{number}-over-the-weeks.png"
        _save(weeks_figure(title, bench.comparing.trend(passage.id)), weeks)
        last = folder / f"{number}-last-take.png"
        _save(take_figure(title, bench.listening.open_take(rows[-1].id)), last)
        made += [weeks, last]
    days = folder / "days.png"
    _save(days_figure(bench), days)
    return (*made, days)


def figure_of(rows: int, height: float, ratios: list[float] | None = None) -> "Figure":
    """Make a figure of some rows, without pyplot: no display, no global state."""
    from matplotlib.figure import Figure  # noqa: PLC0415 - matplotlib, only when needed

    figure = Figure(figsize=(9, height), layout="constrained")
    figure.subplots(rows, 1, sharex=rows > 1, height_ratios=ratios or [1.0] * rows)
    for axes in figure.axes:
        axes.spines[["top", "right"]].set_visible(False)
    return figure


def _axis(days: Iterable[date]) -> NDArray[np.datetime64]:
    return np.array(list(days), dtype="datetime64[D]")


def _save(figure: "Figure", path: Path) -> None:
    figure.savefig(path, dpi=_DPI, format="png")


def weeks_figure(title: str, trend: TrendView) -> "Figure":
    """Draw a measure over the weeks: takes, each week's median, line, and ordinary scatter."""
    figure = figure_of(1, 4.2)
    axes = figure.axes[0]
    if trend.band:
        days = _axis(day for day, _, _ in trend.band)
        low = [low for _, low, _ in trend.band]
        high = [high for _, _, high in trend.band]
        label = "ordinary scatter of takes"
        axes.fill_between(days, low, high, color=QUIET, alpha=0.2, linewidth=0, label=label)
        axes.plot(days, [y for _, y in trend.line], color=INK, label="trend")
    axes.plot(
        _axis(point.practice_day for point in trend.points),
        [point.value for point in trend.points],
        "o",
        markerfacecolor="none",
        color=QUIET,
        label="take",
    )
    _draw_weeks(axes, trend)
    axes.set_ylabel(f"{trend.label} ({trend.unit})")
    axes.set_ylim(bottom=min(0.0, axes.get_ylim()[0]))
    axes.set_title(f"{title}: {trend.verdict}", loc="left")
    axes.legend(loc="upper left", bbox_to_anchor=(1.0, 1.0), frameon=False)
    figure.autofmt_xdate()
    return figure


def _draw_weeks(axes: "Axes", trend: TrendView) -> None:
    """Draw each week's median over its days, with its interval in the middle."""
    for number, week in enumerate(trend.weeks):
        first, middle, last = _axis(week.monday + timedelta(days=day) for day in (0, 3, 6))
        label = None if number else "median of a week, 95 % interval"
        axes.plot([first, last], [week.median] * 2, color=FLAT, linewidth=2.5, label=label)
        if week.half_width is not None:
            ends = [week.median - week.half_width, week.median + week.half_width]
            axes.plot([middle, middle], ends, color=FLAT, linewidth=1.2)


def take_figure(title: str, take: TakeView) -> "Figure":
    """Draw a take's deviation, tempo and loudness lanes on one time axis."""
    figure = figure_of(3, 7.0, [2.0, 1.0, 1.0])
    deviation, tempo, loudness = figure.axes
    _draw_notes(deviation, take)
    for x, y in take.tempo_bpm.segments:
        tempo.plot(x, y, color=INK)
    tempo.set_ylabel("Tempo (BPM)")
    for x, y in take.loudness_lufs.segments:
        loudness.plot(x, y, color=INK)
    loudness.set_ylabel("Loudness (LUFS)")
    loudness.set_xlabel("Time (s)")
    for axes, curve in ((tempo, take.tempo_bpm), (loudness, take.loudness_lufs)):
        if not curve.segments:
            axes.text(0.5, 0.5, curve.gap_sentence, transform=axes.transAxes, ha="center")
    for marker in take.markers:
        for axes in figure.axes:
            axes.axvline(marker.start_s, color=QUIET, linestyle=":")
    row = take.row
    deviation.set_title(f"{title}, {day_text(row.practice_day)}, take {row.number}", loc="left")
    return figure


def _draw_notes(axes: "Axes", take: TakeView) -> None:
    """Bars around a zero line: as long as the note, hollow where uncertain."""
    for note in take.notes:
        if not isinstance(note.deviation, Reading):
            continue
        cents = note.deviation.value
        colour = SHARP if cents > 0 else FLAT
        axes.bar(
            note.start_s,
            cents,
            note.end_s - note.start_s,
            align="edge",
            color=colour if note.certain else "none",
            edgecolor=colour if not note.certain else "white",
            hatch="///" if cents > 0 else None,
        )
        axes.annotate(
            note.name,
            ((note.start_s + note.end_s) / 2, cents),
            xytext=(0, 3 if cents > 0 else -3),
            textcoords="offset points",
            ha="center",
            va="bottom" if cents > 0 else "top",
            fontsize=7,
            color=INK,
        )
    axes.axhline(0.0, color=INK, linewidth=0.8)
    axes.margins(y=0.15)
    axes.set_ylabel("Deviation (cents)\nsharp above, flat below")
    if take.notes_sentence:
        axes.text(0.5, 0.5, take.notes_sentence, transform=axes.transAxes, ha="center")


def days_figure(bench: Workbench) -> "Figure":
    """Draw the minutes of each day as bars; rest and missed days have marks of their own."""
    span = bench.practising.first_and_last_day()
    figure = figure_of(1, 3.4)
    axes = figure.axes[0]
    if span is None:
        return figure
    bars = [
        bar
        for year in range(span[0].year, span[1].year + 1)
        for bar in bench.practising.year(year)
        if span[0] <= bar.practice_day <= span[1]
    ]
    axes.bar(
        _axis(bar.practice_day for bar in bars), [bar.minutes or 0.0 for bar in bars], color=FLAT
    )
    for label, mark, days in (
        ("rest", "o", [bar.practice_day for bar in bars if bar.rest]),
        ("missed", "x", [bar.practice_day for bar in bars if bar.missed]),
        ("take", "|", [bar.practice_day for bar in bars if bar.take_count]),
    ):
        height = -3.0 if label != "take" else -8.0
        axes.plot(_axis(days), [height] * len(days), mark, color=INK, label=label, markersize=5)
    axes.set_ylabel("Practice (minutes)")
    axes.legend(loc="upper left", bbox_to_anchor=(1.0, 1.0), frameon=False)
    practised = sum(1 for bar in bars if bar.minutes or bar.take_count)
    axes.set_title(f"{counted(practised, 'day')} practised of {len(bars)}", loc="left")
    figure.autofmt_xdate()
    return figure
