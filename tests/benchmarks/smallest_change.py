"""Print the smallest change of a passage that is found in 80 % of cases.

    python tests/benchmarks/smallest_change.py [PART,...] [FIRST_SEED] [ROUNDS]

Parts: single, journal, false.

In units of the scatter from day to day; beside it how often a journal without any
change shows one all the same (bound: 5 %). First as a single question, then as the
program asks it: all measures, bars, notes and weeks of all passages of a journal
together, several takes a day that are alike.
"""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

import numpy as np

from analysis.results import Measured
from analysis.sides import compare_notes, compare_sides
from analysis.trend import trend
from analysis.verdicts import Family, judge, periods_of, trend_comparisons

FIRST = int(sys.argv[2]) if len(sys.argv) > 2 else 0
ROUNDS = int(sys.argv[3]) if len(sys.argv) > 3 else 600
POWER = 0.8
CHANGES = np.arange(0.0, 6.01, 0.25)


def share_found(find, change: float) -> float:
    rng = np.random.default_rng([FIRST, round(100 * change)])
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


MEASURES, NOTES, BARS, WEEKS, PASSAGES, JOURNALS = 6, 24, 6, 8, 3, 120


def passage_takes(rng, days, notes=NOTES):
    """Practice day of each take, its measures and its notes; takes of a day are alike."""
    counts = rng.integers(1, 4, days.size)
    day = np.repeat(days, counts)
    of_day = rng.standard_normal((days.size, 1 + MEASURES + notes))
    values = np.repeat(of_day, counts, axis=0) + 0.5 * rng.standard_normal(
        (day.size, 1 + MEASURES + notes)
    )
    shared = values[:, :1]  # a good day is good in everything
    measures = 0.6 * shared + 0.8 * np.exp(0.4 * values[:, 1 : 1 + MEASURES])
    return day, measures, 0.4 * shared + values[:, 1 + MEASURES :]


def looked_at(day, measures, notes, passages):
    """Everything the program says about a passage; true where anything is called clear."""
    whole = [Family(f"m{i}", measures[:, i : i + 1]) for i in range(MEASURES)]
    bars = notes.reshape(day.size, BARS, -1).mean(axis=2)
    parts = [Family("notes", notes), Family("bars", bars), Family("precision", np.abs(bars))]
    return judge(day, whole, parts, periods_of(day), passages=passages)


def false_verdicts_of_journals() -> None:
    shown = {"passages": 0, "bars and notes": 0, "trends": 0, "any": 0}
    for seed in range(FIRST, FIRST + JOURNALS):
        rng = np.random.default_rng([seed, 41])
        hits = dict.fromkeys(shown, False)
        for _ in range(PASSAGES):
            days = 730_000.0 + np.flatnonzero(rng.random(7 * WEEKS) < 0.75)
            day, measures, notes = passage_takes(rng, days)
            for one in looked_at(day, measures, notes, PASSAGES):
                if isinstance(one.result, Measured) and one.result.value.is_clear:
                    hits["passages" if one.family.startswith("m") else "bars and notes"] = True
            count = trend_comparisons(MEASURES, PASSAGES)
            for i in range(MEASURES):
                line = trend(day, measures[:, i], comparisons=count)
                hits["trends"] |= isinstance(line, Measured) and line.value.is_clear
        hits["any"] = any(hits.values())
        for name, hit in hits.items():
            shown[name] += hit
    print(
        f"{JOURNALS} journals without change, {PASSAGES} passages, {WEEKS} weeks; false verdicts:"
    )
    for name, count in shown.items():
        print(f"  {name:<16}{100 * count / JOURNALS:5.1f} %")


def found_as_the_program_asks(days: int, rounds: int = 60) -> None:
    """First against latest days of one passage among three, everything looked at."""

    def shares(change: float) -> tuple[float, float]:
        whole = note = 0
        for seed in range(FIRST, FIRST + rounds):
            rng = np.random.default_rng([seed, round(100 * change), 42])
            every = 730_000.0 + np.sort(rng.choice(7 * WEEKS, 2 * days, replace=False))
            day, measures, notes = passage_takes(rng, every)
            later = day >= every[days]
            # In units of the standard deviation of a day's value.
            measures[later, 0] += change * 0.75
            notes[later, 0] += change * 1.1
            for one in looked_at(day, measures, notes, PASSAGES):
                clear = isinstance(one.result, Measured) and one.result.value.is_clear
                if clear and one.period.kind == "first_and_latest":
                    whole += one.family == "m0"
                    note += one.family == "notes" and one.column == 0
        return whole / rounds, note / rounds

    sizes = {"passage": "over 8", "note": "over 8"}
    for change in np.arange(0.5, 8.1, 0.5):
        for name, share in zip(sizes, shares(float(change)), strict=True):
            if share >= POWER and sizes[name] == "over 8":
                sizes[name] = f"{change:.1f}"
        if "over 8" not in sizes.values():
            break
    print(f"  {days:2d} days a side: passage {sizes['passage']:>6}, one note {sizes['note']:>6}")


def single() -> None:
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


def journal() -> None:
    print("as the program asks it, found in 80 % of cases from (scatters from day to day):")
    for days in (4, 6, 10):
        found_as_the_program_asks(days)


PARTS = {"single": single, "journal": journal, "false": false_verdicts_of_journals}


def main() -> None:
    for part in sys.argv[1].split(",") if len(sys.argv) > 1 else PARTS:
        PARTS[part]()


if __name__ == "__main__":
    main()
