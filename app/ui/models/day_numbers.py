"""Which number a practice day has, in words."""

from datetime import date

from app.services.workbench import Workbench
from app.ui.language import tr


def day_number_text(bench: Workbench, day: date) -> str:
    """Give the day's number in each running promise, and say where it is entered late.

    Reads the journal: not for the GUI thread.
    """
    numbers = bench.promises.numbers_for(day)
    parts = [f"{one.promise_name}: {one.text}" if len(numbers) > 1 else one.text for one in numbers]
    span = bench.practising.first_and_last_day()
    if not parts and span is not None and day >= span[0]:
        parts = [tr("day {days} since the first entry").format(days=(day - span[0]).days + 1)]
    if day < bench.practising.practice_day_now():
        parts.append(tr("entered late, filed under its own day"))
    return "; ".join(parts)
