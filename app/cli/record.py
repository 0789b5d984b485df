"""``record``: one take from an input, filed and measured."""

import time
from typing import TYPE_CHECKING, Annotated

import typer

from app.cli.console import remark, say, say_json, stopping_on_interrupt, watched
from app.cli.guides import (
    AccentsOption,
    BeatsOption,
    ClickOption,
    CountInOption,
    CountOnlyOption,
    DroneOption,
    VolumeOption,
    guide_settings,
)
from app.cli.importing import filed_text, row_object
from app.cli.options import JournalOption, JsonOption
from app.cli.program import Program
from app.journal.failures import PlainFailure

if TYPE_CHECKING:
    from app.services.guide_settings import GuideSettings
    from app.services.recording import RecordingService
    from app.services.views import InputRow, PendingTake
    from app.services.workbench import Workbench

_POLL_S = 0.05


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("record")(record)


def record(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    seconds: Annotated[
        float | None,
        typer.Option("--seconds", min=0.1, help="Stop by itself; else Ctrl-C ends the take."),
    ] = None,
    passage: Annotated[
        str | None,
        typer.Option("--passage", metavar="NAME", help="Passage; a new name makes a new one."),
    ] = None,
    aim: Annotated[str, typer.Option("--aim", help="What this take is for, in a few words.")] = "",
    device: Annotated[
        str | None, typer.Option("--input", metavar="NAME", help="An input, see --inputs.")
    ] = None,
    channel: Annotated[
        int | None,
        typer.Option(
            "--channel",
            metavar="N",
            min=0,
            help="Channel of the input, remembered for it; 0: as the system gives it.",
        ),
    ] = None,
    inputs: Annotated[bool, typer.Option("--inputs", help="List the inputs and stop.")] = False,
    measure: Annotated[
        bool, typer.Option("--measure/--no-measure", help="Measure the take afterwards.")
    ] = True,
    armed: Annotated[
        bool, typer.Option("--armed", help="Begin with the first note, end after silence.")
    ] = False,
    silence: Annotated[
        float, typer.Option("--silence", metavar="S", help="Silence that ends an armed take.")
    ] = 5.0,
    click: ClickOption = None,
    beats: BeatsOption = 4,
    accents: AccentsOption = "",
    count_in: CountInOption = 0,
    count_only: CountOnlyOption = False,
    drone: DroneOption = "",
    volume: VolumeOption = 0.4,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Record a take into today's session."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal)) as bench:
        if inputs:
            _list_inputs(bench.recording.inputs(), json)
            return
        _offer_unfinished(bench)
        passage_id, tuning = None, bench.practising.settings().default_settings
        if passage:
            found, is_new = bench.passages.find_or_add(passage)
            passage_id, tuning = found.id, found.settings
            if is_new:
                remark(f"'{passage}' is a new passage; it has the journal's usual settings.")
        key = _input_key(bench.recording, device) if device else None
        if channel is not None:
            _choose_channel(bench, key, channel)
        guides = guide_settings(tuning, click, beats, accents, count_in, count_only, drone, volume)
        _caution(bench, key, guides)
        if armed:
            bench.recording.arm(passage_id, aim, key, silence_s=silence, guides=guides)
            pending = _wait_for_take(bench.recording, seconds)
        else:
            bench.recording.start(passage_id, aim, key, guides=guides)
            pending = _record_until(bench.recording, seconds)
        if pending is None:
            remark("Nothing was played; nothing is kept.")
            return
        _say_what_was_odd(pending, guides)
        row = watched(
            "filing", lambda progress, stop: bench.recording.finish(pending, progress, stop)
        )
        if warning := bench.input_memory.warning_about(row.id):
            remark(warning)
        if measure:
            row = watched(
                "measuring", lambda progress, stop: bench.measuring.measure(row.id, progress, stop)
            )
        if json:
            measured = bench.measuring.report(row.id).as_json() if measure else None
            say_json(row_object(row) | {"measurement": measured})
            return
        say(filed_text(row))
        if measure:
            from app.cli.measure import summary_text  # noqa: PLC0415

            say(summary_text(bench.measuring.report(row.id).as_json()))


def _caution(bench: "Workbench", key: str | None, guides: "GuideSettings") -> None:
    if not guides.is_silent:
        from app.services.guide_settings import HEARING_CAUTION  # noqa: PLC0415

        remark(HEARING_CAUTION)
        if bench.latency.known(input_key=key) is None:
            remark(
                "The round trip of these devices is not measured: the click may lie some "
                "milliseconds beside its beats; 'passagework latency' measures it."
            )


def _say_what_was_odd(pending: "PendingTake", guides: "GuideSettings") -> None:
    if guides.click_bpm and guides.goes_on and pending.settings.click is None:
        remark("The click stumbled or was too short: its beats are not kept with the take.")
    for sentence in (pending.ended, pending.input_note):
        if sentence:
            remark(sentence)


def _wait_for_take(recording: "RecordingService", seconds: float | None) -> "PendingTake | None":
    """Wait for an armed take to begin and end; None where it was called off before."""
    with stopping_on_interrupt() as should_stop:
        remark("Waiting for the first note. Ctrl-C ends.")
        has_begun = False
        while not should_stop():
            ended = recording.poll()
            if ended is not None:
                return ended
            if recording.is_recording and not has_begun:
                has_begun = True
                remark("Recording.")
            if not has_begun and not recording.is_armed:
                return None
            if seconds is not None and recording.level().elapsed_s >= seconds:
                break
            time.sleep(_POLL_S)
        if recording.is_armed:
            recording.disarm()
        return recording.stop() if recording.is_recording else None


def _record_until(recording: "RecordingService", seconds: float | None) -> "PendingTake":
    """Record until the time is over, Ctrl-C, or the input or the disk gives up."""
    with stopping_on_interrupt() as should_stop:
        if not recording.wait_until_heard():
            recording.stop()
        remark("Recording" + (f" {seconds:g} s." if seconds else ". Ctrl-C ends the take."))
        while not should_stop():
            if seconds is not None and recording.level().elapsed_s >= seconds:
                break
            ended = recording.poll()
            if ended is not None:
                return ended
            time.sleep(_POLL_S)
        return recording.stop()


def _input_key(recording: "RecordingService", name: str) -> str:
    """Find an input by its key, its name or a part of it."""
    rows = recording.inputs()
    wanted = name.casefold()
    for fits in (
        [row for row in rows if row.key == name or row.name.casefold() == wanted],
        [row for row in rows if wanted in row.key.casefold()],
    ):
        if fits:
            return fits[0].key
    names = ", ".join(f"'{row.name}'" for row in rows)
    raise PlainFailure(f"There is no input '{name}'.", f"There are {names}.")


def _choose_channel(bench: "Workbench", key: str | None, channel: int) -> None:
    rows = bench.recording.inputs()
    key = key or bench.practising.settings().input_device
    chosen = next((row for row in rows if row.key == key), None if key else rows[0])
    if chosen is None:
        return  # opening it says that it is not there
    if channel > chosen.channels:
        from app.services.wording import counted  # noqa: PLC0415 - only when run

        has = counted(chosen.channels, "channel")
        raise PlainFailure(
            f"The input '{chosen.name}' has {has}; there is no channel {channel}.",
            "Choose another one; --inputs lists them.",
        )
    bench.recording.remember_channel(chosen.key, channel or None)


def _list_inputs(rows: "tuple[InputRow, ...]", json: bool) -> None:
    if json:
        say_json(
            [
                {
                    "key": row.key,
                    "name": row.name,
                    "channels": row.channels,
                    "channel": row.channel,
                    "default": row.is_default,
                }
                for row in rows
            ]
        )
        return
    from app.services.wording import columns_text  # noqa: PLC0415 - only when run

    cells = [
        (
            row.key,
            f"{row.channels} ch",
            f"records channel {row.channel}" if row.channel else "",
            "default" if row.is_default else "",
        )
        for row in rows
    ]
    say(columns_text(cells))


def _offer_unfinished(bench: "Workbench") -> None:
    for pending in bench.recording.unfinished():
        remark(
            f"A recording of {pending.started_at:%Y-%m-%d %H:%M} is not filed yet; "
            "'passagework recover' files it."
        )
