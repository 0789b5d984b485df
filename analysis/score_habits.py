"""How the notes of one printed string or finger come out."""

from collections.abc import Sequence

import numpy as np

from analysis.averages import uncertainty_of_mean
from analysis.score_results import PlaceHabit


def habit_of(number: int, values: Sequence[tuple[float, float]]) -> PlaceHabit:
    """Sum up the deviations of the notes of one string or finger.

    Parameters
    ----------
    number : int
        Of the string or finger.
    values : sequence of (float, float)
        At least one deviation in cents with half of its 95 % interval.
    """
    cents, widths = np.array(values).T
    return PlaceHabit(
        number=number,
        count=len(values),
        mean_cents=float(np.mean(cents)),
        spread_cents=float(np.std(cents, ddof=1)) if len(values) > 1 else 0.0,
        uncertainty_cents=uncertainty_of_mean(cents, widths, 1.0)
        if len(values) > 1
        else float(widths[0]),
    )
