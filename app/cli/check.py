"""``check``: how accurate the measures are on this machine."""

from typing import TYPE_CHECKING

import typer

from app.cli.console import say, say_json, watched
from app.cli.options import JsonOption

if TYPE_CHECKING:
    from app.services.accuracy import CheckReport, Row

_WIDEST_MEASURE = 58
_WIDEST_SOURCE = 36


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("check")(check)


def check(json: JsonOption = False) -> None:
    """Measure sound whose truth is known, and print how far off the measures are.

    Everything is generated on this machine, from phrases that nothing was tuned on,
    and from the published test signals for loudness meters. It takes about a minute, on a
    slow machine two. Every row says what was measured, where its truth comes from, the
    bound, and what came out; 'missed' is a bound that was not kept. Rows without a bound
    are shown beside the others because they could flatter them. Misses are results, so the
    exit code is 0 all the same; it is another only where something breaks.
    """
    from app.services.accuracy import run_check  # noqa: PLC0415 - numba, only when run

    report = watched("checking", run_check)
    if json:
        say_json(report.as_json())
    else:
        say(table_text(report))


def table_text(report: "CheckReport") -> str:
    """Give the table as text, a section after the other."""
    lines = []
    for name, rows in report.sections:
        lines += ["", name, _line("", "truth", "bound", "measured", "")]
        lines += [_row_text(row) for row in rows]
    held, missed = report.count("held"), report.count("missed")
    lines += ["", f"{held} held, {missed} missed, in {report.elapsed_s:.0f} s."]
    return "\n".join(lines[1:])


def _row_text(row: "Row") -> str:
    verdict = "" if row.verdict == "shown" else row.verdict
    return _line(
        f"{row.measure} ({row.count})", row.source, bound_text(row), value_text(row), verdict
    )


def _line(measure: str, source: str, bound: str, value: str, verdict: str) -> str:
    """Put a row together; a long name gets a line of its own."""
    head = f"  {measure:<{_WIDEST_MEASURE}}"
    if len(measure) > _WIDEST_MEASURE:
        head += "\n" + " " * (_WIDEST_MEASURE + 2)
    return f"{head} {source:<{_WIDEST_SOURCE}} {bound:>16} {value:>14}  {verdict}".rstrip()


def value_text(row: "Row") -> str:
    """Give the measured value with its unit, or why there is none."""
    from app.services.wording import number_text  # noqa: PLC0415 - only when run

    if row.value is None:
        return row.sentence
    return f"{number_text(row.value, row.digits)} {row.unit}".rstrip()


def bound_text(row: "Row") -> str:
    """Give the bound: at most, at least, from to, or nothing."""
    from app.services.wording import number_text  # noqa: PLC0415 - only when run

    def text(value: float) -> str:
        digits = next((n for n in range(4) if abs(round(value, n) - value) < 1e-9), 4)
        return number_text(value, digits)

    if row.at_least is not None and row.at_most is not None:
        return f"{text(row.at_least)} to {text(row.at_most)}"
    if row.at_least is not None:
        return f"≥ {text(row.at_least)}"
    return "" if row.at_most is None else f"≤ {text(row.at_most)}"
