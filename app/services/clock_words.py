"""What the clock says and asks, in words."""

from datetime import datetime

from app.journal.failures import PlainFailure
from app.journal.forgotten_clock import Forgotten, ForgottenClock
from app.journal.kinds import Ending
from app.services.clock_views import ForgottenChoice, ForgottenView
from app.services.wording import day_text, minutes_text

_WHY = {
    Forgotten.DAY_TURNED: "a new day has begun since",
    Forgotten.UNTOUCHED: "nothing was done with it for a long while",
    Forgotten.ABSENT: "the computer was off or asleep meanwhile",
}


def question_view(question: ForgottenClock, item_title: str) -> ForgottenView:
    """Put the question of a forgotten clock into words."""
    return ForgottenView(
        reason=question.reason,
        sentence=_sentence(question),
        item_title=item_title,
        started_at=question.clock.since,
        choices=tuple(
            ForgottenChoice(
                choice.ending, _choice_words(choice.ending, choice.ended_at), choice.minutes
            )
            for choice in question.choices
        ),
        most_minutes=question.most_minutes,
    )


def must_answer(question: ForgottenClock) -> PlainFailure:
    """Ask before anything else is done with the clock."""
    return PlainFailure(_sentence(question), "Say until when you played, then go on.")


def break_sentence(unbroken_min: float) -> str:
    """Suggest a break.

    That pauses help and pain is a reason to stop is common practice, no source.
    """
    return (
        f"{minutes_text(unbroken_min)} without a break. A few minutes' rest is good for hands,"
        " back and ears; if anything hurts, stop for today."
    )


def _sentence(question: ForgottenClock) -> str:
    since = question.clock.since
    return (
        f"The clock has been running since {since:%H:%M} on {day_text(since.date())}, and"
        f" {_WHY[question.reason]}: how long did you play?"
    )


def _choice_words(ending: Ending, ended_at: datetime) -> str:
    at = f"{ended_at:%H:%M}"
    if ending is Ending.AT_LAST_TOUCH:
        return f"Until {at}, when the clock was last used"
    if ending is Ending.WHEN_LAST_SEEN:
        return f"Until {at}, when the program was last running"
    return f"Until now, {at}"
