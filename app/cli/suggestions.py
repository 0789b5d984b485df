"""``mark --suggest``: what the measurements of a take suggest, and the player's answer."""

from typing import TYPE_CHECKING

from app.cli.console import say, say_json

if TYPE_CHECKING:
    from app.services.suggestion_views import SuggestionRow, SuggestionsView
    from app.services.workbench import Workbench


def answer(bench: "Workbench", take_id: str, accept: str | None, dismiss: str | None) -> None:
    """Make one suggestion a marker, or put one aside for the passage."""
    if accept is not None:
        bench.suggesting.accept(take_id, accept)
    if dismiss is not None:
        bench.suggesting.dismiss(take_id, dismiss)


def list_suggestions(bench: "Workbench", take_id: str, *, show_all: bool, json: bool) -> None:
    """List the suggestions of a take with their evidence, at most five unless all are wanted."""
    view = bench.suggesting.for_take(take_id, show_all=show_all)
    if json:
        say_json(suggestions_object(view))
        return
    say(_text(view))
    if bench.filing.row(take_id).state == "waiting":
        say(f"'passagework measure {take_id[:8]}' measures it.")


def suggestions_object(view: "SuggestionsView") -> dict[str, object]:
    """Give suggestions as JSON."""
    return {
        "take_id": view.take_id,
        "suggestions": [_row_object(row) for row in view.rows],
        "more_count": view.more_count,
        "dismissed_count": view.dismissed_count,
        "sentence": view.sentence or None,
    }


def _row_object(row: "SuggestionRow") -> dict[str, object]:
    return {
        "key": row.key,
        "kind": row.kind,
        "category": row.category,
        "start_s": round(row.start_s, 4),
        "end_s": round(row.end_s, 4),
        "text": row.text,
        "value": round(row.reading.value, 3),
        "uncertainty": None
        if row.reading.uncertainty is None
        else round(row.reading.uncertainty, 3),
        "unit": row.reading.unit,
        "places": [
            {"start_s": round(start_s, 4), "end_s": round(end_s, 4)}
            for start_s, end_s in row.places
        ],
        "evidence": list(row.evidence),
    }


def _text(view: "SuggestionsView") -> str:
    from app.services.wording import columns_text, position_text  # noqa: PLC0415 - only when run

    cells = [(position_text(row.start_s), row.category, row.text, row.key) for row in view.rows]
    lines = [columns_text(cells)] if cells else [view.sentence]
    if view.more_count:
        lines.append(f"{view.more_count} more with --all.")
    if view.dismissed_count:
        lines.append(f"{view.dismissed_count} put aside for this passage.")
    return "\n".join(lines)
