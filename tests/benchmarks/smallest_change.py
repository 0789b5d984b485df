"""Print the smallest change of a passage that is found in 80 % of cases.

    python tests/benchmarks/smallest_change.py

In units of the scatter from day to day; beside it how often a journal without any
change shows one all the same (bound: 5 %).
"""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

import numpy as np

from analysis.results import Measured
from analysis.sides import compare_notes, compare_sides
from analysis.trend import trend

ROUNDS = 600
POWER = 0.8
CHANGES = np.arange(0.0, 6.01, 0.25)


def share_found(find, change: float) -> float:
    rng = np.random.default_rng(round(100 * change))
    return float(np.mean([find(rng, change) for _ in range(ROUNDS)]))


def smallest(find) -> tuple[float, str]:
    """False verdicts, and the smallest change found in 80 % of cases."""
    false = share_found(find, 0.0)
    for change in CHANGES[1:]:
        if share_found(find, float(change)) >= POWER:
            return false, f"{change:.2f}"
    return false, f"over {CHANGES[-1]:.0f}"


def passage(days: int):
    def find(rng: np.random.Generator, change: float) -> bool:
        day = np.arange(float(days))
        result = compare_sides(
            day, rng.standard_normal(days), day, change + rng.standard_normal(days)
        )
        return isinstance(result, Measured) and result.value.is_clear

    return find


def one_note_of(notes: int, days: int):
    def find(rng: np.random.Generator, change: float) -> bool:
        day = np.arange(float(days))
        a, b = rng.standard_normal((days, notes)), rng.standard_normal((days, notes))
        b[:, 0] += change
        verdicts = compare_notes(day, a, day, b)
        clear = [isinstance(v, Measured) and v.value.is_clear for v in verdicts]
        return any(clear) if change == 0 else clear[0]

    return find


def trend_over(days: int):
    def find(rng: np.random.Generator, change: float) -> bool:
        day = np.sort(rng.choice(56, days, replace=False)).astype(float)
        value = change * day / 56 + rng.standard_normal(days)
        result = trend(day, value)
        return isinstance(result, Measured) and result.value.is_clear

    return find


def main() -> None:
    print("                                   false verdicts   found in 80 %: scatters")
    for days in (4, 6, 10):
        false, size = smallest(passage(days))
        print(f"passage, {days:2d} days a side                  {false:8.3f}   {size:>12}")
    for days in (4, 6, 10):
        false, size = smallest(one_note_of(24, days))
        print(f"one note of 24, {days:2d} days a side           {false:8.3f}   {size:>12}")
    for days in (5, 8, 12, 20):
        false, size = smallest(trend_over(days))
        print(f"trend over 8 weeks, {days:2d} practice days     {false:8.3f}   {size:>12}")


if __name__ == "__main__":
    main()
