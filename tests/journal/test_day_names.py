"""Names for the size of a day: which name a day's minutes fall under."""

import pytest

from app.journal.day_names import DayName, checked_names, kind_of
from app.journal.failures import PlainFailure

NAMES = checked_names((DayName("half a day", 45), DayName("  short   day ", 20)))


def test_names_are_kept_from_the_shortest_day_on():
    assert (DayName("short day", 20.0), DayName("half a day", 45.0)) == NAMES


@pytest.mark.parametrize(
    ("minutes", "kind"),
    [(None, None), (0, None), (1, 0), (20, 0), (20.5, 1), (45, 1), (46, None)],
)
def test_the_threshold_belongs_to_its_name_and_an_empty_day_to_none(minutes, kind):
    assert kind_of(minutes, NAMES) == kind


@pytest.mark.parametrize(
    "names",
    [
        (DayName("", 20),),
        (DayName("short", 0),),
        (DayName("short", float("nan")),),
        (DayName("short", 1441),),
        (DayName("x" * 25, 20),),
        (DayName("a", 20), DayName("b", 20)),
        (DayName("a", 20), DayName("A", 30)),
        tuple(DayName(f"kind {n}", n + 1) for n in range(5)),
    ],
)
def test_names_that_could_not_be_told_apart_are_refused(names):
    with pytest.raises(PlainFailure):
        checked_names(names)
