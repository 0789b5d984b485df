"""``mark``: markers of a take, and what is still to work on."""

from typing import TYPE_CHECKING, Annotated

import typer

from app.cli import suggestions
from app.cli.console import say, say_json
from app.cli.options import JournalOption, JsonOption
from app.cli.program import Program
from app.journal.failures import PlainFailure
from app.journal.kinds import Author, MarkerState
from app.journal.records import Marker

if TYPE_CHECKING:
    from app.services.views import MarkerRow


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("mark")(mark)


def mark(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    take: Annotated[
        str | None,
        typer.Argument(metavar="[TAKE]", help="A take; without one: what is to work on."),
    ] = None,
    at: Annotated[
        float | None, typer.Option("--at", metavar="S", help="Place a marker here, in seconds.")
    ] = None,
    until: Annotated[
        float | None, typer.Option("--until", metavar="S", help="End of a marked span.")
    ] = None,
    category: Annotated[
        str, typer.Option("--category", help="intonation, rhythm, sound, shift, ...")
    ] = "other",
    weight: Annotated[int, typer.Option("--weight", help="1 slight, 2, 3 first thing to fix.")] = 2,
    text: Annotated[str, typer.Option("--text", help="The remark itself.")] = "",
    author: Annotated[
        Author | None, typer.Option("--author", help="Who says so.", show_default=False)
    ] = None,
    state: Annotated[
        MarkerState, typer.Option("--state", help="Where the problem stands.")
    ] = MarkerState.TO_WORK_ON,
    suggest: Annotated[
        bool, typer.Option("--suggest", help="List what the measurements suggest.")
    ] = False,
    show_all: Annotated[
        bool, typer.Option("--all", help="All suggestions, not only the clearest five.")
    ] = False,
    accept: Annotated[
        str | None, typer.Option("--accept", metavar="KEY", help="Make a suggestion a marker.")
    ] = None,
    dismiss: Annotated[
        str | None,
        typer.Option("--dismiss", metavar="KEY", help="Put a suggestion aside for the passage."),
    ] = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Place a marker on a take, list markers, or see what the measurements suggest."""
    program = Program.of(context)
    suggest = suggest or accept is not None or dismiss is not None
    changes = [at, accept, dismiss]
    with program.open_workbench(
        program.journal(journal), create=False, read_only=changes == [None] * 3
    ) as bench:
        if take is None:
            if at is not None or suggest:
                raise PlainFailure("A marker needs a take.", "Name the take first.")
            rows = bench.marking.open_markers(50)
            if json:
                say_json([_row_object(row) for row in rows])
            else:
                say(_lines([_row_cells(row) for row in rows]) or "Nothing to work on is marked.")
            return
        take_id = bench.filing.resolve(take)
        if suggest:
            suggestions.answer(bench, take_id, accept, dismiss)
            suggestions.list_suggestions(bench, take_id, show_all=show_all, json=json)
            return
        if at is not None:
            placed = bench.marking.add(
                take_id,
                at,
                until,
                category=category,
                weight=weight,
                text=text,
                author=author,
                state=state,
            )
            markers: tuple[Marker, ...] = (placed,)
        else:
            markers = bench.marking.for_take(take_id)
        if json:
            say_json([marker_object(marker) for marker in markers])
        else:
            say(_lines([marker_cells(marker) for marker in markers]) or "No markers.")


def _lines(cells: list[tuple[str, ...]]) -> str:
    from app.services.wording import columns_text  # noqa: PLC0415 - only when run

    return columns_text(cells)


def marker_cells(marker: Marker) -> tuple[str, ...]:
    """Give a marker as the cells of a line."""
    from app.services.wording import position_text  # noqa: PLC0415 - only when run

    where = position_text(marker.start_s)
    if marker.end_s is not None:
        where += f" to {position_text(marker.end_s)}"
    state = marker.state.value.replace("_", " ")
    return where, marker.category, str(marker.weight), state, marker.author.value, marker.text


def _row_cells(row: "MarkerRow") -> tuple[str, ...]:
    from app.services.wording import day_text  # noqa: PLC0415 - only when run

    place = f"{day_text(row.practice_day)}, {row.passage_name}, take {row.take_number}"
    return (place, *marker_cells(row.marker))


def marker_object(marker: Marker) -> dict[str, object]:
    """Give a marker as JSON."""
    return {
        "id": marker.id,
        "take_id": marker.take_id,
        "start_s": marker.start_s,
        "end_s": marker.end_s,
        "category": marker.category,
        "weight": marker.weight,
        "text": marker.text,
        "author": marker.author.value,
        "state": marker.state.value,
        "created_at": marker.created_at.isoformat(),
        "changed_at": marker.changed_at.isoformat(),
    }


def _row_object(row: "MarkerRow") -> dict[str, object]:
    return marker_object(row.marker) | {
        "passage": row.passage_name,
        "practice_day": row.practice_day.isoformat(),
        "take_number": row.take_number,
        "near_note": row.near_note or None,
    }
