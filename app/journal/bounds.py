"""The player's own bounds for a passage: what counts as held, and how it is aimed at."""

import math
from dataclasses import dataclass
from datetime import datetime

from app.journal.failures import PlainFailure

SLOWEST_BPM, FASTEST_BPM = 10.0, 400.0
LARGEST_CENTS, LARGEST_PERCENT = 100.0, 50.0


@dataclass(frozen=True, slots=True)
class PassageBounds:
    """What the player asks of a passage; ``id`` is that of the passage.

    Attributes
    ----------
    mean_absolute_cents : float
        Intonation holds up to this mean size of the deviation.
    steadiness_cv_percent : float
        The tempo holds up to this spread of the beats. Not asked of rubato passages.
    target_bpm : float or None
        The tempo worked up to.
    step_bpm : float
        One rung of the tempo ladder.
    is_rubato : bool
        The tempo is meant to move; steadiness is then never judged.
    """

    id: str
    mean_absolute_cents: float
    steadiness_cv_percent: float
    changed_at: datetime
    target_bpm: float | None = None
    step_bpm: float = 4.0
    is_rubato: bool = False

    def hold(self, accuracy_cents: float | None, steadiness_percent: float | None) -> bool | None:
        """Tell whether both bounds are held; ``None`` where what it takes was not measured."""
        if accuracy_cents is None or (steadiness_percent is None and not self.is_rubato):
            return None
        steady = (
            self.is_rubato
            or steadiness_percent is None
            or (steadiness_percent <= self.steadiness_cv_percent)
        )
        return steady and accuracy_cents <= self.mean_absolute_cents


def checked(bounds: PassageBounds) -> PassageBounds:
    """Give bounds that can be held, or say which one cannot.

    Raises
    ------
    PlainFailure
        Where a bound makes no sense.
    """
    _inside(bounds.mean_absolute_cents, 0.5, LARGEST_CENTS, "bound for intonation", "cents")
    _inside(bounds.steadiness_cv_percent, 0.1, LARGEST_PERCENT, "bound for steadiness", "%")
    _inside(bounds.step_bpm, 0.5, 60.0, "step", "BPM")
    if bounds.target_bpm is not None:
        _inside(bounds.target_bpm, SLOWEST_BPM, FASTEST_BPM, "target tempo", "BPM")
    return bounds


def _inside(value: float, low: float, high: float, name: str, unit: str) -> None:
    if not math.isfinite(value) or not low <= value <= high:
        raise PlainFailure(
            f"A {name} of {value:g} {unit} makes no sense.",
            f"Choose {low:g} to {high:g} {unit}.",
        )
