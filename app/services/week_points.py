"""The weeks of a measure, from the takes that its trend follows."""

import math
from collections.abc import Sequence
from datetime import date

import numpy as np

from app.services.views import TrendPoint, WeekPoint


def week_points(points: Sequence[TrendPoint]) -> tuple[WeekPoint, ...]:
    """Give the median of each week that has a take, with its 95 % interval.

    Parameters
    ----------
    points : sequence of TrendPoint
        In any order.
    """
    from analysis.week_medians import week_medians  # noqa: PLC0415 - scipy, only when needed

    if not points:
        return ()
    days = np.array([point.practice_day.toordinal() for point in points], dtype=np.float64)
    found = week_medians(days, np.array([point.value for point in points]))
    return tuple(
        WeekPoint(
            date.fromordinal(int(monday)),
            float(median),
            float(half) if math.isfinite(half) else None,
            int(count),
        )
        for monday, median, half, count in zip(
            found.monday, found.median, found.half_width, found.day_count, strict=True
        )
    )
