"""A number as the player sees it, or the reason why there is none."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Reading:
    """A measured number as the player sees it.

    ``uncertainty`` is half of the 95 % interval in the same unit, ``None`` where
    the number has none; ``digits`` are the decimals worth showing; ``signed`` asks
    for an explicit plus. ``interval`` stands in for the uncertainty where the 95 %
    interval is not symmetric: its lower and upper end.
    """

    value: float
    unit: str
    uncertainty: float | None = None
    digits: int = 1
    signed: bool = False
    interval: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True)
class NoReading:
    """Nothing was measured; ``sentence`` says why."""

    sentence: str


AnyReading = Reading | NoReading


@dataclass(frozen=True, slots=True)
class NamedReading:
    """One line of a summary: a stable key, a label, the number, and what it means.

    ``basis`` says what an average rests on, empty for other numbers.
    """

    key: str
    label: str
    reading: AnyReading
    explanation: str = ""
    basis: str = ""
