"""``plan``, ``assign`` and ``occasion``: the next practice, and what it leads to."""

from typing import TYPE_CHECKING, Annotated

import typer

from app.cli.console import say, say_json
from app.cli.options import JournalOption, JsonOption, day_from
from app.cli.program import Program
from app.journal.assignments import OccasionKind
from app.journal.failures import PlainFailure
from app.journal.kinds import Author

if TYPE_CHECKING:
    from app.services.keeping_views import AssignmentRow, OccasionRow, PlanView


def add_to(app: typer.Typer) -> None:
    """Add the commands."""
    app.command("plan")(plan)
    app.command("assign")(assign)
    app.command("occasion")(occasion)


def plan(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    minutes: Annotated[
        int | None, typer.Option("--minutes", metavar="N", help="Propose a plan for N minutes.")
    ] = None,
    keep: Annotated[bool, typer.Option("--keep", help="Keep the proposal for today.")] = False,
    done: Annotated[
        list[int] | None, typer.Option("--done", metavar="LINE", help="Tick a kept line off.")
    ] = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Propose the next practice, or show the plan kept for today."""
    program = Program.of(context)
    if keep and minutes is None:
        raise PlainFailure("There is nothing to keep yet.", "Say how many minutes: --minutes 45.")
    is_looking = not keep and not done
    with program.open_workbench(
        program.journal(journal), create=False, read_only=is_looking
    ) as bench:
        view: PlanView | None
        if minutes is None:
            view = bench.planning.today()
        elif keep:
            view = bench.planning.make(minutes)
        else:
            view = bench.planning.propose(minutes)
        for number in done or ():
            if view is None or not 1 <= number <= len(view.plan.lines):
                raise PlainFailure(f"There is no line {number} in today's plan.", "Look again.")
            view = bench.planning.tick(view.plan.lines[number - 1].id)
        if view is None:
            raise PlainFailure("There is no plan for today.", "Make one: plan --minutes 45 --keep.")
        if json:
            say_json(plan_object(view))
        else:
            _say_plan(view)


def assign(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    goal: Annotated[str, typer.Argument(metavar="[GOAL]", help="What to reach, in words.")] = "",
    due: Annotated[
        str | None, typer.Option("--due", metavar="DAY", help="The day it is for.")
    ] = None,
    minutes: Annotated[
        int | None, typer.Option("--minutes", metavar="N", help="How much, altogether.")
    ] = None,
    passage: Annotated[str | None, typer.Option("--passage", help="The passage it is for.")] = None,
    item: Annotated[
        str | None, typer.Option("--item", help="The item it is for: a scale, a study, ...")
    ] = None,
    own: Annotated[bool, typer.Option("--own", help="Set by yourself, not by a teacher.")] = False,
    done: Annotated[
        str | None, typer.Option("--done", metavar="ID", help="Tick one off, by its id.")
    ] = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Note what was set for the lesson; without anything: what is open and what was done."""
    program = Program.of(context)
    is_looking = not (goal or due or minutes or passage or item or done)
    with program.open_workbench(
        program.journal(journal), create=False, read_only=is_looking
    ) as bench:
        if done is not None:
            found = [r for r in bench.assignments.all() if r.assignment.id.startswith(done)]
            if len(found) != 1 or not done:
                raise PlainFailure(f"There is no one assignment '{done}'.", "Give more of its id.")
            bench.assignments.tick(found[0].assignment.id)
        elif not is_looking:
            if due is None:
                raise PlainFailure("An assignment is for a day.", "Say which: --due 2026-03-21.")
            passage_id = bench.passages.find(passage).id if passage else None
            bench.assignments.add(
                day_from(due),
                goal,
                minutes=minutes,
                passage_id=passage_id,
                item_id=bench.items.find(item).id if item else None,
                author=Author.SELF if own else Author.TEACHER,
            )
        rows = bench.assignments.open()
        if json:
            say_json({"assignments": [assignment_object(row) for row in rows]})
            return
        for row in rows:
            what = f"{row.title}: {row.assignment.goal}" if row.assignment.goal else row.title
            title = what if row.title != row.assignment.goal else row.title
            say(f"{row.assignment.id[:8]}  {title} ({row.sentence})")
        if not rows:
            say("Nothing is open.")


def occasion(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    day: Annotated[
        str | None, typer.Argument(metavar="[DAY]", help="The date; without one: those ahead.")
    ] = None,
    kind: Annotated[OccasionKind, typer.Option("--kind", help="What it is.")] = OccasionKind.LESSON,
    name: Annotated[str, typer.Option("--name", help="What to call it.")] = "",
    passage: Annotated[
        list[str] | None,
        typer.Option("--passage", help="A passage that will be played; may be repeated."),
    ] = None,
    remove: Annotated[bool, typer.Option("--remove", help="Take the date away again.")] = False,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Note a lesson, an audition or a concert that practice leads to."""
    program = Program.of(context)
    with program.open_workbench(
        program.journal(journal), create=False, read_only=day is None
    ) as bench:
        if day is not None and remove:
            for row in bench.assignments.coming():
                if row.occasion.day == day_from(day):
                    bench.assignments.remove_occasion(row.occasion.id)
        elif day is not None:
            ids = [bench.passages.find(one).id for one in passage or ()]
            bench.assignments.add_occasion(day_from(day), kind, name, ids)
        rows = bench.assignments.coming()
        if json:
            say_json({"occasions": [occasion_object(row) for row in rows]})
            return
        for row in rows:
            say(_occasion_line(row))
        if not rows:
            say("No date ahead.")


def plan_object(view: "PlanView") -> dict[str, object]:
    """Give a plan as JSON."""
    return {
        "practice_day": view.plan.practice_day.isoformat(),
        "minutes_available": view.plan.minutes_available,
        "minutes_planned": view.plan.minutes_planned,
        "break_minutes": view.plan.break_minutes,
        "lines": [
            {
                "title": line.title,
                "minutes": line.minutes,
                "passage_id": line.passage_id,
                "item_id": line.item_id,
                "done": line.done_at is not None,
                "reasons": [
                    {
                        "kind": reason.kind.value,
                        "record_id": reason.record_id,
                        "sentence": reason.sentence,
                    }
                    for reason in line.reasons
                ],
            }
            for line in view.plan.lines
        ],
        "cautions": list(view.cautions),
        "sentence": view.sentence,
    }


def assignment_object(row: "AssignmentRow") -> dict[str, object]:
    """Give an assignment as JSON."""
    return {
        "id": row.assignment.id,
        "title": row.title,
        "goal": row.assignment.goal,
        "author": row.assignment.author.value,
        "set_on": row.assignment.set_on.isoformat(),
        "due_on": row.assignment.due_on.isoformat(),
        "minutes": row.assignment.minutes,
        "minutes_done": round(row.progress.minutes_done, 3),
        "days": row.progress.days,
        "takes": row.progress.takes,
        "done": row.progress.is_done,
    }


def occasion_object(row: "OccasionRow") -> dict[str, object]:
    """Give a date as JSON."""
    return {
        "id": row.occasion.id,
        "day": row.occasion.day.isoformat(),
        "kind": row.occasion.kind.value,
        "name": row.occasion.name,
        "days_left": row.days_left,
        "passages": list(row.passages),
    }


def _say_plan(view: "PlanView") -> None:
    from app.services.wording import minutes_text  # noqa: PLC0415 - only when run

    for number, line in enumerate(view.plan.lines, start=1):
        tick = " (done)" if line.done_at is not None else ""
        say(f"{number}. {line.title}, {minutes_text(line.minutes)}{tick}")
        for reason in line.reasons:
            say(f"     {reason.sentence}")
    if view.sentence:
        say(view.sentence)
    for caution in view.cautions:
        say(caution)


def _occasion_line(row: "OccasionRow") -> str:
    from app.services.wording import counted, day_text, listed  # noqa: PLC0415 - only when run

    left = "today" if not row.days_left else f"in {counted(row.days_left, 'day')}"
    what = f": {listed(row.passages)}" if row.passages else ""
    return f"{day_text(row.occasion.day)}  {row.title}, {left}{what}"
