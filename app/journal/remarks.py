"""What the teacher said of a stretch of practice, written down afterwards."""

from dataclasses import dataclass, replace
from datetime import date, datetime

from app.journal.failures import PlainFailure
from app.journal.kinds import Author


@dataclass(frozen=True, slots=True)
class LessonRemark:
    """Words of a lesson, about the days that were looked at.

    Attributes
    ----------
    lesson_day : date
        When it was said.
    first_day, last_day : date
        The days that were looked at, both included.
    text : str
        One or several lines; a line may have become an assignment.
    """

    id: str
    lesson_day: date
    first_day: date
    last_day: date
    text: str
    created_at: datetime
    changed_at: datetime
    author: Author = Author.TEACHER


def checked_remark(remark: LessonRemark) -> LessonRemark:
    """Give a remark as it may be kept.

    Raises
    ------
    PlainFailure
        Where it is empty or its days run backwards.
    """
    text = "\n".join(line.rstrip() for line in remark.text.strip().splitlines())
    if not text:
        raise PlainFailure("The remark is empty.", "Write down what was said.")
    if remark.last_day < remark.first_day:
        raise PlainFailure("The last day lies before the first.", "Swap the two days.")
    return replace(remark, text=text)


def tasks_of(remark: LessonRemark) -> tuple[str, ...]:
    """Give the lines of a remark that can become tasks, list signs taken off."""
    lines = (line.strip().lstrip("-*•").strip() for line in remark.text.splitlines())
    return tuple(line for line in lines if line)
