"""Promises in words: factual and kind, the same in the window and on the command line."""

from datetime import date, timedelta

from app.journal.promise_standing import PromiseStanding, PromiseState
from app.journal.promises import Promise, PromiseRule, Stretch
from app.services.wording import counted, day_text, listed

WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")


def rule_text(rule: PromiseRule) -> str:
    """Give a rule in one line.

    >>> rule_text(PromiseRule(date(2026, 1, 1), Stretch.IN_TOTAL, 100))
    '100 days in total, anything counts'
    """
    stretch = "in a row" if rule.stretch is Stretch.IN_A_ROW else "in total"
    parts = [f"{counted(rule.days, 'day')} {stretch}", _demand_text(rule)]
    if rule.rest_weekdays:
        parts.append(f"rest on {listed([WEEKDAYS[day] for day in rule.rest_weekdays])}")
    if rule.rest_days:
        each = " in each run" if rule.stretch is Stretch.IN_A_ROW else ""
        parts.append(f"{counted(rule.rest_days, 'rest day')} allowed{each}")
    if rule.end is not None:
        parts.append(f"until {day_text(rule.end)}")
    return ", ".join(parts)


def headline(standing: PromiseStanding) -> str:
    """Give the two numbers that must not be mixed up: '27 days kept, day 45'."""
    return f"{counted(standing.days_kept, 'day')} kept, day {standing.day}"


def clip_text(day_number: int, days_kept: int) -> str:
    """Give what is printed with a clip."""
    return f"day {day_number} \N{MIDDLE DOT} {counted(days_kept, 'day')} kept"


def sentences(promise: Promise, now: PromiseStanding, today: date) -> tuple[str, ...]:
    """Say what else there is to say about a promise."""
    said = [_state_sentence(promise, now), _apart_sentence(now)]
    if now.is_alive:
        said += [_needed_sentence(now), _run_sentence(now), _rest_sentence(now)]
        said += [_pause_sentence(promise, now, today), _reach_sentence(now)]
    return tuple(one for one in said if one)


def _demand_text(rule: PromiseRule) -> str:
    if rule.anything_counts:
        return "anything counts"
    parts = []
    if rule.minimum_minutes is not None:
        parts.append(f"{rule.minimum_minutes} min")
    if rule.minimum_takes is not None:
        parts.append(counted(rule.minimum_takes, "take"))
    return f"at least {(' and ' if rule.needs_both else ' or ').join(parts)} a day"


def _state_sentence(promise: Promise, now: PromiseStanding) -> str:
    if now.state is PromiseState.AHEAD:
        return f"Begins on {day_text(promise.start)}."
    if now.state is PromiseState.KEPT and now.kept_on is not None:
        return f"Kept on {day_text(now.kept_on)}."
    if now.state is PromiseState.ENDED and now.ended_on is not None:
        return f"Ended on {day_text(now.ended_on)}; every day kept stays kept."
    return ""


def _apart_sentence(now: PromiseStanding) -> str:
    if now.day == 0:
        return ""
    parts = [f"{counted(now.days_missed, 'day')} missed", f"{now.rest_taken} rest"]
    if now.days_paused:
        parts.append(f"{now.days_paused} paused")
    if now.today_open:
        parts.append("today still open")
    return ", ".join(parts) + "."


def _needed_sentence(now: PromiseStanding) -> str:
    in_run = " in this run" if now.rule.stretch is Stretch.IN_A_ROW else ""
    return f"{counted(now.needed, 'day')} still to keep{in_run}."


def _run_sentence(now: PromiseStanding) -> str:
    """Tell of a run that ended, as a fact: nothing that was kept is lost."""
    if now.rule.stretch is not Stretch.IN_A_ROW or now.last_missed is None or not now.longest_run:
        return ""
    began = "The next day kept begins a new run"
    if now.run_began is not None:
        began = f"A new run began on {day_text(now.run_began)}"
    return f"{began}; the longest so far has {counted(now.longest_run, 'day')}."


def _rest_sentence(now: PromiseStanding) -> str:
    said = []
    if now.rule.rest_days:
        said.append(f"{counted(now.rest_left, 'rest day')} left.")
    if now.over_rest:
        were = "day marked as rest was" if now.over_rest == 1 else "days marked as rest were"
        said.append(f"{now.over_rest} {were} more than the rule allows.")
    return " ".join(said)


def _pause_sentence(promise: Promise, now: PromiseStanding, today: date) -> str:
    if now.pause is not None:
        why = f" ({now.pause.reason})" if now.pause.reason else ""
        return f"Paused until {day_text(now.pause.last_day)}{why}; nothing is asked of these days."
    ahead = [pause for pause in promise.breaks if pause.first_day > today]
    if not ahead:
        return ""
    first, last = ahead[0].first_day, ahead[0].last_day
    return f"A break is planned from {day_text(first)} to {day_text(last)}."


def _reach_sentence(now: PromiseStanding) -> str:
    if now.days_left is None or now.rule.end is None:
        return ""
    left = counted(now.days_left, "day")
    if now.within_reach:
        return f"{left} left until {day_text(now.rule.end)}."
    return (
        f"{left} left until {day_text(now.rule.end)}, fewer than are still to keep;"
        " the end can be moved from today on, and every day kept stays kept."
    )


def rule_span_text(since: date, following: date | None) -> str:
    """Say from when to when a rule held."""
    if following is None:
        return f"since {day_text(since)}"
    return f"{day_text(since)} to {day_text(following - timedelta(days=1))}"
