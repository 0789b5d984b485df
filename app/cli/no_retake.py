"""``no-retake``: one take of a passage each practice day, kept whatever it is."""

from typing import TYPE_CHECKING, Annotated

import typer

from app.cli.console import say, say_json
from app.cli.options import JournalOption, JsonOption
from app.cli.program import Program
from app.journal.failures import PlainFailure

if TYPE_CHECKING:
    from app.services.no_retake import NoRetakeView


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("no-retake")(no_retake)


def no_retake(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    passage: Annotated[str, typer.Argument(metavar="PASSAGE", help="A passage.")],
    switch: Annotated[
        bool | None, typer.Option("--on/--off", help="Switch the rule; without it: say how it is.")
    ] = None,
    device_failed: Annotated[
        str | None,
        typer.Option(
            "--device-failed",
            metavar="REASON",
            help="Keep what the device did to today's take; one more is possible then.",
        ),
    ] = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Say, or switch, whether a passage is recorded without retakes."""
    program = Program.of(context)
    is_looking = switch is None and device_failed is None
    with program.open_workbench(
        program.journal(journal), create=False, read_only=is_looking
    ) as bench:
        passage_id = bench.passages.find(passage).id
        if switch is not None:
            bench.no_retake.switch(passage_id, switch)
        if device_failed is not None:
            day = bench.practising.today().takes
            own = [take for take in day if take.passage_id == passage_id]
            if not own:
                raise PlainFailure("There is no take of this passage today.", "Record it.")
            latest = max(own, key=lambda take: take.recorded_at)
            bench.no_retake.note_device_failure(latest.id, device_failed)
        view = bench.no_retake.view(passage_id)
        if json:
            say_json(_object(view))
        else:
            say(view.sentence or "This passage may be recorded as often as you like.")


def _object(view: "NoRetakeView") -> dict[str, object]:
    return {
        "on": view.on,
        "holds_today": view.holds,
        "may_record": view.may_record,
        "sentence": view.sentence,
    }
