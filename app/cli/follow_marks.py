"""The part of ``follow`` that is answered by ear: marked problems, and blind listening."""

from typing import Annotated

import typer

from app.cli.console import say, say_json, watched
from app.cli.options import JournalOption, JsonOption
from app.cli.program import Program
from app.journal.blind_ear import Choice, Question
from app.journal.failures import PlainFailure

_ANSWERS = {"yes": True, "no": False, "unasked": None}


def add_to(follow: typer.Typer) -> None:
    """Add the commands."""
    follow.command("carried")(carried)
    follow.command("still-there")(still_there)
    follow.command("lives")(lives)
    follow.command("blind")(blind)


def carried(
    context: typer.Context,
    take: Annotated[str, typer.Argument(metavar="TAKE", help="A take of the journal.")],
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Show the markers of earlier takes at their place in this one."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        from app.services.heard_json import carried_object  # noqa: PLC0415 - only when run
        from app.services.wording import position_text  # noqa: PLC0415

        take_id = bench.filing.resolve(take)
        found = watched(
            "aligning", lambda progress, stop: bench.carrying.carried_into(take_id, progress, stop)
        )
    if json:
        say_json(carried_object(take_id, found))
        return
    for one in found:
        answer = {True: "still there", False: "not heard", None: "still there?"}[one.answer]
        say(
            f"  {position_text(one.start_s)}  {one.marker.category}: {one.marker.text or '-'}"
            f"  (marked {one.from_day}, {one.marker.id[:8]})  {answer}  {one.measured.sentence}"
        )
    if not found:
        say("No earlier take of this passage has a marker that is played here.")


def still_there(
    context: typer.Context,
    marker: Annotated[str, typer.Argument(metavar="MARKER", help="A marker by its id.")],
    take: Annotated[str, typer.Argument(metavar="TAKE", help="A later take of the passage.")],
    answer: Annotated[str, typer.Argument(metavar="yes|no|unasked", help="What you heard.")],
    journal: JournalOption = None,
) -> None:
    """Answer whether a marked problem is still heard in a later take."""
    if answer not in _ANSWERS:
        raise PlainFailure(f"'{answer}' is no answer.", "Say yes, no, or unasked to take it back.")
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        take_id = bench.filing.resolve(take)
        marker_id = bench.carrying.marker_named(marker, take_id)
        bench.carrying.answer(marker_id, take_id, _ANSWERS[answer])
    say("Kept.")


def lives(
    context: typer.Context,
    passage: Annotated[str, typer.Argument(metavar="PASSAGE", help="A passage by its name.")],
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Tell the life of every problem marked in a passage."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False, read_only=True) as bench:
        from app.services.heard_json import lives_object  # noqa: PLC0415 - only when run
        from app.services.wording import ended  # noqa: PLC0415

        wanted = bench.passages.find(passage)
        rows = bench.carrying.lives(wanted.id)
    if json:
        say_json(lives_object(wanted.id, rows))
        return
    for row in rows:
        told = f"{row.marker.category}: {row.marker.text or '-'}"
        say(f"  {ended(told)} {row.sentence}")
    if not rows:
        say("Nothing is marked in this passage yet.")


def blind(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    passage: Annotated[
        str | None, typer.Argument(metavar="[PASSAGE]", help="Ask about two of its takes.")
    ] = None,
    question: Annotated[
        Question, typer.Option("--question", help="What to listen for.")
    ] = Question.IN_TUNE,
    seed: Annotated[
        int | None, typer.Option("--seed", metavar="N", help="Draw the same pair again.")
    ] = None,
    trial: Annotated[
        str | None, typer.Option("--trial", metavar="ID", help="The question to answer.")
    ] = None,
    answer: Annotated[
        Choice | None, typer.Option("--answer", help="What you heard.", show_default=False)
    ] = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Ask a blind question, answer one (--trial, --answer), or say what the answers show."""
    if (trial is None) != (answer is None):
        raise PlainFailure("An answer needs its question.", "Give --trial and --answer together.")
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        from app.services.heard_json import ear_object, trial_object  # noqa: PLC0415

        if trial is not None and answer is not None:
            kept = bench.blind_ear.answer(trial, answer)
            say_json(trial_object(kept)) if json else say("Kept.")
        elif passage is not None:
            view = bench.blind_ear.ask(bench.passages.find(passage).id, question, seed)
            if json:
                say_json(trial_object(view.trial))
                return
            say(f"Question {view.trial.id}: {view.question}")
            say(f"  first:  {view.first_take_id}")
            say(f"  second: {view.second_take_id}")
        else:
            rows = bench.blind_ear.results()
            if json:
                say_json(ear_object(rows))
                return
            for row in rows:
                say(f"  {row.question.value.replace('_', ' ')}: {row.sentence}")
