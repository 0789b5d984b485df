"""``follow``: a passage over weeks, measured: changes, the tempo ladder, runs, shape."""

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from app.cli import follow_marks, follow_passage
from app.cli.console import say, say_json, watched
from app.cli.options import JournalOption, JsonOption
from app.cli.program import Program

if TYPE_CHECKING:
    from collections.abc import Callable

    from app.journal.bounds import PassageBounds
    from app.services.following_views import PassageProposal, VerdictRow
    from app.services.stopping import Progress, ShouldStop
    from app.services.workbench import Workbench

PassageArgument = Annotated[str, typer.Argument(metavar="PASSAGE", help="A passage by its name.")]
TakeArgument = Annotated[str, typer.Argument(metavar="TAKE", help="A take of the journal.")]
CentsOption = Annotated[
    float | None,
    typer.Option("--cents", metavar="CENTS", help="Intonation holds up to this mean deviation."),
]
SteadinessOption = Annotated[
    float | None,
    typer.Option("--steadiness", metavar="PERCENT", help="The tempo holds up to this spread."),
]
TargetOption = Annotated[
    float | None, typer.Option("--target", metavar="BPM", help="The tempo worked up to.")
]
StepOption = Annotated[
    float | None, typer.Option("--step", metavar="BPM", help="One rung of the ladder.")
]
RubatoOption = Annotated[
    bool | None,
    typer.Option("--rubato/--in-time", help="Whether the tempo is meant to move."),
]


def add_to(app: typer.Typer) -> None:
    """Add the commands."""
    follow = typer.Typer(help="Follow a passage over the weeks: what changed, and how surely.")
    follow.command("change")(change)
    follow.command("align")(align)
    follow.command("ladder")(ladder)
    follow.command("bounds")(bounds)
    follow.command("repetitions")(repetitions)
    follow.command("propose")(propose)
    follow.command("shape")(shape)
    follow.command("passage")(follow_passage.passage)
    follow_marks.add_to(follow)
    app.add_typer(follow, name="follow")


def change(
    context: typer.Context,
    passage: PassageArgument,
    show_all: Annotated[
        bool, typer.Option("--all", help="Bars, notes and weeks without a clear change too.")
    ] = False,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Say what changed in a passage, corrected for all that is looked at together."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        from app.services.following_json import change_object  # noqa: PLC0415 - only when run

        wanted = bench.passages.find(passage)
        report = watched(
            "comparing the takes",
            lambda progress, stop: bench.changes.report(wanted.id, progress, stop),
        )
    if json:
        say_json(change_object(report))
        return
    if report.sentence:
        say(report.sentence)
    for row in report.rows:
        whole = row.scope == "passage" and row.period == "first_and_latest"
        if show_all or row.is_clear or whole:
            say(_change_text(row))
    for line in (*report.notices, *report.left_out):
        say(line)


def align(
    context: typer.Context,
    a: TakeArgument,
    b: Annotated[str, typer.Argument(metavar="OTHER", help="Another take of the passage.")],
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Find equal musical moments of two takes, and what only one of them plays."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        from app.services.following_json import alignment_object  # noqa: PLC0415

        take_a, take_b = bench.filing.resolve(a), bench.filing.resolve(b)
        pair = watched(
            "aligning", lambda progress, stop: bench.aligning.pair(take_a, take_b, progress, stop)
        )
    if json:
        say_json(alignment_object(pair))
        return
    if not pair.aligned:
        say(pair.sentence)
        return
    say(f"Aligned; {100 * pair.confidence:.0f} % of the shorter take has a counterpart.")
    for name, parts in (("A", pair.only_a), ("B", pair.only_b)):
        for part in parts:
            say(f"  {name}: {part.sentence}")


def ladder(
    context: typer.Context,
    passage: PassageArgument,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Say how far up to its target tempo a passage is."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False, read_only=True) as bench:
        from app.services.following_json import ladder_object  # noqa: PLC0415 - only when run

        view = bench.bounds.ladder(bench.passages.find(passage).id)
    if json:
        say_json(ladder_object(view))
        return
    for rung in reversed(view.ladder.rungs):
        held = f"held since {rung.held_on}" if rung.held_on else f"{len(rung.days)} of 2 days"
        say(f"  {rung.bpm:6.1f} BPM  {held}")
    say(view.sentence)


def bounds(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    passage: PassageArgument,
    cents: CentsOption = None,
    steadiness: SteadinessOption = None,
    target: TargetOption = None,
    step: StepOption = None,
    rubato: RubatoOption = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Show or set your own bounds of a passage."""
    program = Program.of(context)
    given = (cents, steadiness, target, step, rubato)
    looking = all(value is None for value in given)
    with program.open_workbench(program.journal(journal), create=False, read_only=looking) as bench:
        from app.services.following_json import bounds_object  # noqa: PLC0415 - only when run

        kept = bench.bounds.get(bench.passages.find(passage).id)
        if not looking:
            kept = bench.bounds.set(_changed(kept, program, *given))
    if json:
        say_json(bounds_object(kept))
        return
    aim = f", target {kept.target_bpm:g} BPM in steps of {kept.step_bpm:g} BPM"
    say(
        f"mean deviation {kept.mean_absolute_cents:g} cents"
        + (", rubato" if kept.is_rubato else f", steadiness {kept.steadiness_cv_percent:g} %")
        + (aim if kept.target_bpm else "")
    )


def repetitions(
    context: typer.Context,
    take: TakeArgument,
    passage: Annotated[
        str | None, typer.Option("--passage", metavar="PASSAGE", help="Else that of the take.")
    ] = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Find and count every run through a passage in a longer take."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        from app.services.following_json import repetitions_object  # noqa: PLC0415
        from app.services.wording import position_text, reading_text  # noqa: PLC0415

        wanted = bench.passages.find(passage).id if passage else None
        take_id = bench.filing.resolve(take)
        view = watched(
            "looking for runs",
            lambda progress, stop: bench.repetitions.find(take_id, wanted, progress, stop),
        )
    if json:
        say_json(repetitions_object(view))
        return
    for run in view.runs:
        held = {True: "held", False: "outside", None: "not judged"}[run.holds]
        what = held if run.complete else "broken off"
        say(
            f"  {run.number:2d}  {position_text(run.start_s)} to {position_text(run.end_s)}"
            f"  {reading_text(run.bpm)}  {reading_text(run.mean_absolute_cents)}  {what}"
        )
    say(view.sentence)


def propose(
    context: typer.Context,
    take: Annotated[str, typer.Argument(metavar="TAKE|FILE", help="A take, or any sound file.")],
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Say which passage a take or a file is, or none of them."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        from app.services.following_json import proposal_object  # noqa: PLC0415 - only when run

        work = _proposing(bench, take)
        found = watched("listening", work)
    if json:
        say_json(proposal_object(found))
    else:
        say(found.sentence)


def shape(
    context: typer.Context,
    a: TakeArgument,
    b: Annotated[str, typer.Argument(metavar="OTHER", help="Another take of the passage.")],
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Lay the loudness of two takes over each other, with the hairpins of the score."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        from app.services.following_json import shape_object  # noqa: PLC0415 - only when run
        from app.services.wording import position_text, reading_text  # noqa: PLC0415

        take_a, take_b = bench.filing.resolve(a), bench.filing.resolve(b)
        view = watched(
            "aligning", lambda progress, stop: bench.shapes.compare(take_a, take_b, progress, stop)
        )
    if json:
        say_json(shape_object(view))
        return
    say(view.sentence)
    for one in view.hairpins:
        say(
            f"  {one.kind} at {position_text(one.start_s)}:"
            f" A {reading_text(one.a)}, B {reading_text(one.b)}"
        )
    for line in view.notices:
        say(line)


def _proposing(
    bench: "Workbench", text: str
) -> "Callable[[Progress, ShouldStop], PassageProposal]":
    """Give the work for a file that is there, else for a take of the journal."""
    path = Path(text)
    if path.is_file():
        return lambda progress, stop: bench.proposing.of_file(path, progress, stop)
    take_id = bench.filing.resolve(text)
    return lambda progress, stop: bench.proposing.of_take(take_id, progress, stop)


def _changed(  # noqa: PLR0917 - one parameter an option
    kept: "PassageBounds",
    program: Program,
    cents: float | None,
    steadiness: float | None,
    target: float | None,
    step: float | None,
    rubato: bool | None,
) -> "PassageBounds":
    changes = {
        "mean_absolute_cents": cents,
        "steadiness_cv_percent": steadiness,
        "target_bpm": target,
        "step_bpm": step,
        "is_rubato": rubato,
    }
    given: dict[str, Any] = {name: value for name, value in changes.items() if value is not None}
    return replace(kept, changed_at=program.now(), **given)


def _change_text(row: "VerdictRow") -> str:
    from app.services.wording import reading_text  # noqa: PLC0415 - only when run

    when = (
        "first to latest"
        if row.period == "first_and_latest"
        else f"week {row.a_from} to week {row.b_from}"
    )
    where = f"{row.place}, " if row.place else ""
    days = f"{row.days_a} and {row.days_b} days"
    return f"  {where}{row.label}, {when}: {row.word}; {reading_text(row.change)}; {days}"
