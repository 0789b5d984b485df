"""``clock``: the practice clock from a terminal; it runs on between two commands."""

from typing import TYPE_CHECKING, Annotated

import typer

from app.cli.console import remark, say, say_json
from app.cli.options import JournalOption, JsonOption
from app.cli.program import Program
from app.journal.failures import PlainFailure
from app.journal.kinds import Ending, ItemKind

if TYPE_CHECKING:
    from pathlib import Path

    from app.services.clock_views import ClockView, ForgottenView, ItemMinutes
    from app.services.workbench import Workbench

NewOption = Annotated[
    ItemKind | None,
    typer.Option("--new", metavar="KIND", help="Add the item: scale, study, piece, other, ..."),
]

_UNTIL = {
    "touched": Ending.AT_LAST_TOUCH,
    "seen": Ending.WHEN_LAST_SEEN,
    "now": Ending.NOW,
}


def add_to(app: typer.Typer) -> None:
    """Add the commands."""
    clock = typer.Typer(
        help="Run the practice clock: minutes for every item.", no_args_is_help=True
    )
    clock.command("start")(start)
    clock.command("pause")(pause)
    clock.command("switch")(switch)
    clock.command("stop")(stop)
    clock.command("status")(status)
    app.add_typer(clock, name="clock")


def start(
    context: typer.Context,
    item: Annotated[
        str | None, typer.Argument(metavar="[ITEM]", help="An item or a passage.")
    ] = None,
    new: NewOption = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Start the clock, or let a paused one go on."""
    with _writing(context, journal) as bench:
        item_id = _item_id(bench, item, new) if item else None
        _show(bench, bench.clock.start(item_id), json)


def pause(context: typer.Context, journal: JournalOption = None, json: JsonOption = False) -> None:
    """Stop counting for a while; `clock start` goes on."""
    with _writing(context, journal) as bench:
        _show(bench, bench.clock.pause(), json)


def switch(
    context: typer.Context,
    item: Annotated[str, typer.Argument(metavar="ITEM", help="An item or a passage.")],
    new: NewOption = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Go over to another item; the clock runs on."""
    with _writing(context, journal) as bench:
        _show(bench, bench.clock.switch(_item_id(bench, item, new)), json)


def stop(
    context: typer.Context,
    until: Annotated[
        str | None,
        typer.Option(
            "--until",
            metavar="touched|seen|now",
            help="For a forgotten clock: when the playing ended.",
        ),
    ] = None,
    minutes: Annotated[
        float | None,
        typer.Option("--minutes", help="For a forgotten clock: how long you played."),
    ] = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """End the sitting and keep its minutes.

    A clock that was forgotten asks first; --until or --minutes is the answer.
    """
    with _writing(context, journal) as bench:
        if until is not None or minutes is not None:
            view = _answered(bench, until, minutes)
            if view.phase != "stopped":
                view = bench.clock.stop()
        else:
            view = _stopped(bench)
        _show(bench, view, json)


def status(context: typer.Context, journal: JournalOption = None, json: JsonOption = False) -> None:
    """Say how the clock stands and where today's minutes went."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False, read_only=True) as bench:
        _show(bench, bench.clock.state(), json)


def _writing(context: typer.Context, journal: "Path | None") -> "Workbench":
    program = Program.of(context)
    return program.open_workbench(program.journal(journal))


def _item_id(bench: "Workbench", name: str, new: ItemKind | None) -> str:
    if new is None:
        return bench.items.find(name).id
    item, is_new = bench.items.find_or_add(name, new)
    if is_new:
        remark(f"'{name}' is on your list of items now.")
    return item.id


def _answered(bench: "Workbench", until: str | None, minutes: float | None) -> "ClockView":
    if bench.clock.forgotten() is None:
        raise PlainFailure("The clock was not forgotten.", "Stop it without --until or --minutes.")
    if minutes is not None:
        return bench.clock.answer_forgotten(Ending.MINUTES, minutes)
    ending = _UNTIL.get((until or "").strip().lower())
    offered = bench.clock.forgotten()
    if ending is None or offered is None or ending not in {c.ending for c in offered.choices}:
        raise PlainFailure(f"'{until}' is no answer here.", _choices_text(offered))
    return bench.clock.answer_forgotten(ending)


def _stopped(bench: "Workbench") -> "ClockView":
    question = bench.clock.forgotten()
    if question is not None:
        raise PlainFailure(question.sentence, _choices_text(question))
    return bench.clock.stop()


def _choices_text(question: "ForgottenView | None") -> str:
    if question is None:
        return "Stop it without --until."
    words = {ending: word for word, ending in _UNTIL.items()}
    offers = [
        f"--until {words[choice.ending]} ({choice.minutes:.0f} min)" for choice in question.choices
    ]
    return f"Answer with `clock stop` and {', '.join(offers)} or --minutes N."


def _show(bench: "Workbench", view: "ClockView", json: bool) -> None:
    if json:
        say_json(_object(view, bench.clock.forgotten()))
        return
    from app.services.wording import minutes_text  # noqa: PLC0415 - only when run

    question = bench.clock.forgotten()
    if question is not None:
        say(question.sentence)
        say(_choices_text(question))
    else:
        item = f" on {view.item_title}" if view.phase != "stopped" else ""
        say(f"The clock is {view.phase}{item}; {minutes_text(view.today_min)} today.")
    for line in item_lines(view.items):
        say(line)
    if view.break_sentence:
        remark(view.break_sentence)


def item_lines(items: "tuple[ItemMinutes, ...]") -> list[str]:
    """Give the minutes of items in columns, the most first."""
    from app.services.wording import columns_text, minutes_text  # noqa: PLC0415 - only when run

    ordered = sorted(items, key=lambda row: -row.minutes)
    cells = [(f"  {row.title}", minutes_text(row.minutes)) for row in ordered]
    return columns_text(cells).splitlines()


def item_objects(items: "tuple[ItemMinutes, ...]") -> list[dict[str, object]]:
    """Give the minutes of items as JSON."""
    return [
        {
            "item": row.title if row.item_id else None,
            "kind": row.kind.value if row.kind else None,
            "minutes": round(row.minutes, 3),
        }
        for row in items
    ]


def _object(view: "ClockView", question: "ForgottenView | None") -> dict[str, object]:
    has_item = view.item_id is not None
    return {
        "phase": view.phase,
        "item": view.item_title if has_item else None,
        "block_s": round(view.block_s, 3),
        "session_min": round(view.session_min, 3),
        "today_min": round(view.today_min, 3),
        "unbroken_min": round(view.unbroken_min, 3),
        "break_suggested": bool(view.break_sentence),
        "items": item_objects(view.items),
        "question": None if question is None else _question_object(question),
    }


def _question_object(question: "ForgottenView") -> dict[str, object]:
    words = {ending: word for word, ending in _UNTIL.items()}
    return {
        "reason": question.reason.value,
        "sentence": question.sentence,
        "choices": [
            {"until": words[choice.ending], "minutes": round(choice.minutes, 3)}
            for choice in question.choices
        ],
        "most_minutes": round(question.most_minutes, 3),
    }
