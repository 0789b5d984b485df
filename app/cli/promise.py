"""``promise``: so many days with a rule, counted honestly."""

from datetime import date
from typing import TYPE_CHECKING, Annotated

import typer

from app.cli.console import say, say_json
from app.cli.options import JournalOption, JsonOption, day_from
from app.cli.program import Program
from app.journal.failures import PlainFailure
from app.journal.promises import PromiseRule, Stretch

if TYPE_CHECKING:
    from app.services.keeping_views import ClipNumbers, PromiseView

_WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")

NameArgument = Annotated[str, typer.Argument(metavar="NAME", help="Name of the promise.")]
DaysOption = Annotated[int, typer.Option("--days", metavar="N", help="How many days to keep.")]
InARowOption = Annotated[bool, typer.Option("--in-a-row", help="In a row; else in total.")]
MinutesOption = Annotated[
    int | None, typer.Option("--minutes", metavar="N", help="Least minutes a day.")
]
TakesOption = Annotated[int | None, typer.Option("--takes", metavar="N", help="Least takes a day.")]
BothOption = Annotated[
    bool, typer.Option("--both", help="A day needs the minutes and the takes; else one of them.")
]
RestDaysOption = Annotated[
    int, typer.Option("--rest-days", metavar="N", help="Marked rest days that are allowed.")
]
RestOnOption = Annotated[
    list[str] | None,
    typer.Option("--rest-on", metavar="WEEKDAY", help="A weekday without duty; may be repeated."),
]
EndOption = Annotated[
    str | None, typer.Option("--end", metavar="DAY", help="The last day that counts.")
]


def add_to(app: typer.Typer) -> None:
    """Add the commands."""
    promise = typer.Typer(help="Keep promises: days kept and days since the start, apart.")
    promise.callback(invoke_without_command=True)(_list_without_command)
    promise.command("list")(list_promises)
    promise.command("make")(make)
    promise.command("change")(change)
    promise.command("pause")(pause)
    promise.command("go-on")(go_on)
    promise.command("end")(end)
    promise.command("share")(share)
    app.add_typer(promise, name="promise")


def _list_without_command(context: typer.Context) -> None:
    if context.invoked_subcommand is None:
        list_promises(context)


def list_promises(
    context: typer.Context, journal: JournalOption = None, json: JsonOption = False
) -> None:
    """List all promises, past and running."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False, read_only=True) as bench:
        views = bench.promises.list()
        if json:
            say_json({"promises": [promise_object(view) for view in views]})
            return
        for view in views:
            _say(view)
        if not views:
            say('No promise yet. Make one: passagework promise make "Every day" --days 100')


def make(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    name: NameArgument,
    days: DaysOption,
    in_a_row: InARowOption = False,
    minutes: MinutesOption = None,
    takes: TakesOption = None,
    both: BothOption = False,
    rest_days: RestDaysOption = 0,
    rest_on: RestOnOption = None,
    end: EndOption = None,
    start: Annotated[
        str | None, typer.Option("--from", metavar="DAY", help="Day 1; else today.")
    ] = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Make a promise. Without --minutes and --takes anything counts."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal)) as bench:
        since = day_from(start) if start else bench.practising.practice_day_now()
        rule = _rule(since, days, in_a_row, minutes, takes, both, rest_days, rest_on, end)
        _show(bench.promises.make(name, rule), json)


def change(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    name: NameArgument,
    days: DaysOption,
    in_a_row: InARowOption = False,
    minutes: MinutesOption = None,
    takes: TakesOption = None,
    both: BothOption = False,
    rest_days: RestDaysOption = 0,
    rest_on: RestOnOption = None,
    end: EndOption = None,
    start: Annotated[
        str | None, typer.Option("--from", metavar="DAY", help="From when on; else today.")
    ] = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Give a promise another rule from today or later; the days before keep theirs."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        since = day_from(start) if start else bench.practising.practice_day_now()
        rule = _rule(since, days, in_a_row, minutes, takes, both, rest_days, rest_on, end)
        _show(bench.promises.change_rule(bench.promises.find(name).id, rule), json)


def pause(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    name: NameArgument,
    until: Annotated[str, typer.Option("--to", metavar="DAY", help="Last day of the break.")],
    since: Annotated[
        str | None, typer.Option("--from", metavar="DAY", help="First day; else today.")
    ] = None,
    reason: Annotated[str, typer.Option("--reason", help="A few words.")] = "",
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Plan a break: these days are asked for nothing and end no run."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        first = day_from(since) if since else bench.practising.practice_day_now()
        found = bench.promises.find(name)
        _show(bench.promises.plan_break(found.id, first, day_from(until), reason), json)


def go_on(
    context: typer.Context,
    name: NameArgument,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """End the break that runs: today counts again."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        _show(bench.promises.go_on(bench.promises.find(name).id), json)


def end(
    context: typer.Context,
    name: NameArgument,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """End a promise today; every day kept stays kept."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        _show(bench.promises.close(bench.promises.find(name).id), json)


def share(
    context: typer.Context,
    name: NameArgument,
    day: Annotated[
        str | None, typer.Option("--date", metavar="DAY", help="Day of the clip; else today.")
    ] = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Give a day's numbers away: they stay what they are, whatever is filed later."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        practice_day = day_from(day) if day else bench.practising.practice_day_now()
        numbers = bench.promises.share(bench.promises.find(name).id, practice_day)
        if json:
            say_json(clip_object(numbers))
        else:
            say(f"{numbers.promise_name}: {numbers.text}")


def promise_object(view: "PromiseView") -> dict[str, object]:
    """Give a promise as JSON; its numbers are always apart."""
    now = view.standing
    return {
        "id": view.promise.id,
        "name": view.promise.name,
        "start": view.promise.start.isoformat(),
        "state": now.state.value,
        "days_kept": now.days_kept,
        "day": now.day,
        "days_missed": now.days_missed,
        "rest_taken": now.rest_taken,
        "days_paused": now.days_paused,
        "today_open": now.today_open,
        "needed": now.needed,
        "run": now.run,
        "longest_run": now.longest_run,
        "days_left": now.days_left,
        "kept_on": _iso(now.kept_on),
        "ended_on": _iso(now.ended_on),
        "paused_until": _iso(now.pause.last_day if now.pause else None),
        "rules": [
            {"since": row.since.isoformat(), "until": _iso(row.until), "text": row.text}
            for row in view.rules
        ],
        "sentences": list(view.sentences),
    }


def clip_object(numbers: "ClipNumbers") -> dict[str, object]:
    """Give the numbers of a clip as JSON."""
    return {
        "promise": numbers.promise_name,
        "practice_day": numbers.practice_day.isoformat(),
        "day_number": numbers.day_number,
        "days_kept": numbers.days_kept,
        "days_kept_now": numbers.days_kept_now,
        "frozen": numbers.frozen,
        "text": numbers.text,
    }


def _rule(  # noqa: PLR0917 - as the options come
    since: date,
    days: int,
    in_a_row: bool,
    minutes: int | None,
    takes: int | None,
    both: bool,
    rest_days: int,
    rest_on: list[str] | None,
    end: str | None,
) -> PromiseRule:
    return PromiseRule(
        since=since,
        stretch=Stretch.IN_A_ROW if in_a_row else Stretch.IN_TOTAL,
        days=days,
        minimum_minutes=minutes,
        minimum_takes=takes,
        needs_both=both,
        rest_days=rest_days,
        rest_weekdays=tuple(_weekday(text) for text in rest_on or ()),
        end=day_from(end) if end else None,
    )


def _weekday(text: str) -> int:
    short = text.strip().casefold()[:3]
    if short not in _WEEKDAYS:
        raise PlainFailure(f"'{text}' is no weekday.", "Write Mon, Tue, Wed, Thu, Fri, Sat or Sun.")
    return _WEEKDAYS.index(short)


def _show(view: "PromiseView", json: bool) -> None:
    if json:
        say_json(promise_object(view))
    else:
        _say(view)


def _say(view: "PromiseView") -> None:
    from app.services.promise_text import rule_span_text  # noqa: PLC0415 - only when run

    say(f"{view.promise.name}: {view.headline}")
    for row in view.rules:
        say(f"  {row.text} ({rule_span_text(row.since, row.until)})")
    for sentence in view.sentences:
        say(f"  {sentence}")


def _iso(day: date | None) -> str | None:
    return day.isoformat() if day else None
