"""``latency``: the round trip from an output back to an input, measured once a device."""

from typing import Annotated

import typer

from app.cli.console import remark, say, say_json, stopping_on_interrupt
from app.cli.options import JournalOption, JsonOption
from app.cli.program import Program


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("latency")(latency)


def latency(
    context: typer.Context,
    show: Annotated[
        bool, typer.Option("--show", help="Say what was measured before, and play nothing.")
    ] = False,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Measure the delay from output to input, so that clicks and takes line up.

    The microphone has to hear the loudspeaker, or a cable joins output and input. The
    devices are those chosen in the journal, else the system's own.
    """
    from app.services.latency import SWEEP_CAUTION  # noqa: PLC0415 - only when run

    program = Program.of(context)
    with program.open_workbench(program.journal(journal)) as bench:
        found = bench.latency.known()
        if not show:
            remark(SWEEP_CAUTION)
            with stopping_on_interrupt() as should_stop:
                found = bench.latency.measure(should_stop=should_stop)
    if json:
        say_json(
            None
            if found is None
            else {
                "output": found.output_device,
                "input": found.input_device,
                "offset_s": found.offset_s,
                "scatter_s": found.scatter_s,
                "measured_at": found.measured_at.isoformat(),
            }
        )
    elif found is None:
        say("Nothing was measured for these devices yet; 'passagework latency' does it.")
    else:
        say(
            f"{found.offset_s * 1000:+.1f} ms beyond what the drivers say, steady to "
            f"{found.scatter_s * 1000:.1f} ms, from '{found.output_device}' to "
            f"'{found.input_device}'."
        )
