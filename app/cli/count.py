"""``count`` and ``report``: the days in numbers, the week in words."""

from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path
from typing import Annotated

import typer

from app.cli.clock import item_lines, item_objects
from app.cli.console import say, say_json, watched
from app.cli.options import JournalOption, JsonOption, day_from
from app.cli.program import Program
from app.cli.promise import promise_object
from app.journal.failures import PlainFailure


def add_to(app: typer.Typer) -> None:
    """Add the commands."""
    app.command("count")(count)
    app.command("report")(report)


def count(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    minutes: Annotated[
        float | None, typer.Option("--minutes", help="Set the minutes of the day, 0 to 1440.")
    ] = None,
    rest: Annotated[bool, typer.Option("--rest", help="Mark the day as rest.")] = False,
    date: Annotated[
        str | None, typer.Option("--date", metavar="DAY", help="Another day than today.")
    ] = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Say how many days were practised and where today's minutes went; keep minutes and rest."""
    program = Program.of(context)
    is_looking = minutes is None and not rest
    with program.open_workbench(
        program.journal(journal), create=not is_looking, read_only=is_looking
    ) as bench:
        day = day_from(date) if date else bench.practising.practice_day_now()
        if minutes is not None:
            bench.practising.set_minutes(day, minutes)
        if rest:
            planned = day > bench.practising.practice_day_now()
            bench.practising.mark_rest(day, planned)
        today = bench.practising.today()
        effort = bench.minutes.recording(today.practice_day, today.practice_day)
        running = bench.promises.running()
        if json:
            say_json(
                {
                    "practice_day": today.practice_day.isoformat(),
                    "minutes": today.minutes,
                    "takes": len(today.takes),
                    "days_practised": today.days_practised,
                    "days_since_first": today.days_since_first,
                    "items": item_objects(bench.clock.state().items),
                    "recordings": effort.attempts,
                    "recordings_kept": effort.kept,
                    "recording_min": round(effort.recording_min, 3),
                    "promises": [promise_object(view) for view in running],
                }
            )
            return
        from app.services.wording import counted, day_text, minutes_text  # noqa: PLC0415

        if day != today.practice_day and minutes is not None:
            say(f"{day_text(day)}: {minutes_text(minutes)}.")
        if rest:
            say(f"{day_text(day)}: a rest day.")
        say(
            f"{day_text(today.practice_day)}: {minutes_text(today.minutes)},"
            f" {counted(len(today.takes), 'take')} today."
        )
        for line in item_lines(bench.clock.state().items):
            say(line)
        if effort.attempts:
            say(effort.sentence)
        if today.days_since_first:
            say(
                f"{counted(today.days_practised, 'day')} practised;"
                f" day {today.days_since_first} since the first."
            )
        for view in running:
            say(f"{view.promise.name}: {view.headline}; {' '.join(view.sentences)}")


def report(
    context: typer.Context,
    *,
    since: Annotated[
        str | None, typer.Option("--from", metavar="DAY", help="First day; else a week back.")
    ] = None,
    until: Annotated[
        str | None, typer.Option("--to", "--until", metavar="DAY", help="Last day; else today.")
    ] = None,
    page: Annotated[
        Path | None,
        typer.Option("--html", metavar="FILE", help="Write one page with clips to hear inside."),
    ] = None,
    paper: Annotated[
        Path | None,
        typer.Option("--pdf", metavar="FILE", help="Write it as PDF, with room for remarks."),
    ] = None,
    journal: JournalOption = None,
) -> None:
    """Print the days, takes, markers and changes of a week, or write them for the teacher."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False, read_only=True) as bench:
        end = day_from(until) if until else bench.practising.practice_day_now()
        start = day_from(since) if since else end - timedelta(days=6)
        if start > end:
            raise PlainFailure("The first day lies after the last.", "Swap --from and --to.")
        for path, write in ((page, bench.lessons.write_page), (paper, bench.lessons.write_paper)):
            if path is not None:
                _written(write, start, end, path)
        if page is None and paper is None:
            say(bench.reporting.text(start, end))


def _written(write: Callable[..., Path], start: date, end: date, path: Path) -> None:
    done = watched(
        "writing",
        lambda progress, stop: write(start, end, path, progress=progress, should_stop=stop),
    )
    say(str(done))
