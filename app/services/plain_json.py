"""Plain JSON values: no NaN and no infinity, ``null`` where nothing was measured."""

import math
from collections.abc import Iterable

from analysis.results import Measured, NotMeasurable

Json = dict[str, object]


def finite(value: float | None, digits: int | None = None) -> float | None:
    """Give a plain float, or ``None`` for NaN and infinity."""
    if value is None or not math.isfinite(value):
        return None
    return round(float(value), digits) if digits is not None else float(value)


def column(values: Iterable[float], digits: int = 6) -> list[float | None]:
    """Give an array as a JSON list with ``null`` in its gaps."""
    return [finite(float(value), digits) for value in values]


def state_object(result: Measured[object] | NotMeasurable) -> Json:
    """Give whether something was measured, and why not."""
    if isinstance(result, NotMeasurable):
        return {
            "status": result.status,
            "reason": str(result.reason),
            "sentence": result.sentence,
        }
    return {"status": result.status, "reason": None, "sentence": None}
