"""Minutes on a passage against its measured change: an association, never a cause."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from itertools import pairwise
from statistics import median

from app.journal.association import FEWEST_PAIRS, associated
from app.journal.records import Passage, Take
from app.services.keeping_views import AssociationRow
from app.services.passages import passage_title
from app.services.reading_views import Reading
from app.services.readings import reading_of
from app.services.time_spent import minutes_by_target
from app.services.wording import number_text
from app.store.store import Store

_MEASURE = "mean_absolute_cents"
_LEVEL = 0.05
_LONGEST_GAP = timedelta(weeks=3)
_FEWEST_WEEKS = timedelta(weeks=6)


def associations(store: Store, today: date) -> tuple[AssociationRow, ...]:
    """Give a row for each passage that has been measured.

    The mean deviation of each week (the median of its takes) is held against that of
    the measured week before, at most three weeks earlier, and this change against the
    minutes spent on the passage in between. Nothing is said from fewer than six such
    pairs or six weeks; with several passages the level is shared among them
    (Bonferroni), so that one in twenty journals at most shows anything by chance.
    """
    span = store.takes.first_and_last_day()
    if span is None:
        return ()
    spent = minutes_by_target(store, span[0], today)
    series = []
    for passage in store.passages.list():
        by_week = _by_week(store, store.takes.list(passage_id=passage.id, last_day=today))
        if by_week:
            series.append((passage, by_week, _pairs(by_week, spent.get(passage.id, {}))))
    tested = sum(len(pairs) >= FEWEST_PAIRS for _, _, pairs in series)
    return tuple(_row(passage, by_week, pairs, tested) for passage, by_week, pairs in series)


def _by_week(store: Store, takes: Sequence[Take]) -> Mapping[date, float]:
    headlines = store.measurements.headlines([take.id for take in takes])
    values: dict[date, list[float]] = defaultdict(list)
    for take in takes:
        headline = headlines.get(take.id)
        reading = reading_of(headline.summary, _MEASURE) if headline else None
        if isinstance(reading, Reading):
            monday = take.practice_day - timedelta(days=take.practice_day.weekday())
            values[monday].append(reading.value)
    return {week: median(found) for week, found in sorted(values.items())}


def _pairs(
    by_week: Mapping[date, float], minutes: Mapping[date, float]
) -> list[tuple[float, float]]:
    """Give (minutes in between, change) for each pair of neighbouring measured weeks."""
    weeks = list(by_week)
    pairs = []
    for before, after in pairwise(weeks):
        if after - before <= _LONGEST_GAP:
            spent = sum(amount for day, amount in minutes.items() if before <= day < after)
            pairs.append((spent, by_week[after] - by_week[before]))
    return pairs


def _row(
    passage: Passage, by_week: Mapping[date, float], pairs: list[tuple[float, float]], tested: int
) -> AssociationRow:
    weeks = list(by_week)
    long_enough = weeks[-1] - weeks[0] >= _FEWEST_WEEKS
    found = associated([a for a, _ in pairs], [b for _, b in pairs]) if long_enough else None
    if found is None:
        sentence = "Too few measured weeks, or no minutes logged on it, to say anything."
        return AssociationRow(passage.id, passage_title(passage), len(pairs), None, None, sentence)
    size = f"rank correlation {number_text(found.coefficient, 2, signed=True)}"
    size += f", p = {found.p_value:.3f}, {found.pairs} pairs of weeks"
    if found.p_value > _LEVEL / max(1, tested):
        sentence = f"No clear association of minutes and change ({size})."
    else:
        way = "smaller" if found.coefficient < 0 else "larger"
        sentence = (
            f"More minutes went along with a {way} mean deviation ({size}). An association"
            " only: it does not say which of them brought about the other."
        )
    return AssociationRow(
        passage.id,
        passage_title(passage),
        found.pairs,
        found.coefficient,
        found.p_value,
        sentence,
    )
