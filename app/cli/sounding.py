"""``sounding``: count the minutes in which the instrument sounds, without keeping the sound."""

import time
from typing import Annotated

import typer

from app.cli.console import remark, say, say_json, stopping_on_interrupt
from app.cli.options import JournalOption, JsonOption
from app.cli.program import Program

_LOOK_S = 0.2


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("sounding")(sounding)


def sounding(
    context: typer.Context,
    seconds: Annotated[
        float | None,
        typer.Option("--seconds", min=1.0, help="Stop by itself; else Ctrl-C ends it."),
    ] = None,
    keep: Annotated[
        bool, typer.Option("--keep/--no-keep", help="Add the minutes to today's practice.")
    ] = True,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Listen, and count the minutes in which the instrument sounds.

    The sound itself is not kept. Talk and noise do not count, rests under three seconds
    do; what the practice clock counts in the same time is not counted again.
    """
    program = Program.of(context)
    with program.open_workbench(program.journal(journal)) as bench:
        with stopping_on_interrupt() as should_stop:
            bench.sounding.start()
            remark("Listening; nothing is recorded." + ("" if seconds else " Ctrl-C ends it."))
            began = time.monotonic()
            while not should_stop() and not (seconds and time.monotonic() - began >= seconds):
                state = bench.sounding.state()
                if not state.is_listening:
                    remark(state.sentence)
                    break
                time.sleep(_LOOK_S)
        offer = bench.sounding.stop()
        kept = bench.sounding.keep(offer) if keep and offer is not None else None
        heard_min = 0.0 if offer is None else offer.heard_min
        if json:
            added_min = offer.minutes if offer is not None and kept is not None else 0.0
            say_json({"heard_min": heard_min, "added_min": added_min})
            return
        say(f"The instrument sounded for {heard_min:.1f} min.")
        if offer is not None and offer.sentence:
            remark(offer.sentence)
        if kept is not None and offer is not None:
            say(f"{offer.minutes:.1f} min are added to {offer.practice_day:%Y-%m-%d}.")
