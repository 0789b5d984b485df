"""The worked examples of the guide's page on counting, read from the page and run.

The examples are common practice, no source.
"""

import re
from datetime import date, timedelta
from pathlib import Path

import pytest

from app.journal.promises import PromiseRule, Stretch

PAGE = Path(__file__).parents[2] / "app" / "guide" / "counting.md"
TODAY = date(2026, 3, 14)
EMPTY = {3, 17, 40, 41, 42, 80, 99, 120, 150, 151, 200, 222, 270, 271, 300, 333, 360}


def examples() -> list[tuple[str, str, str]]:
    text = PAGE.read_text(encoding="utf-8").partition("## Examples")[2].partition("\n## ")[0]
    rows = [line.strip("|").split("|") for line in text.splitlines() if line.startswith("|")]
    return [tuple(cell.strip() for cell in row) for row in rows[2:]]


def rule_of(words: str, since: date) -> PromiseRule:
    found = re.fullmatch(
        r"(\d+) days in (total|a row), (?:anything counts|at least (\d+) min a day)", words
    )
    assert found, words
    stretch = Stretch.IN_TOTAL if found[2] == "total" else Stretch.IN_A_ROW
    return PromiseRule(since, stretch, int(found[1]), minimum_minutes=int(found[3] or 0) or None)


def history_of(words: str) -> list[str]:
    """What each day was: ``kept``, ``late``, ``missed`` or ``paused``."""
    if found := re.fullmatch(r"(\d+) calendar days, (\d+) of them practised", words):
        days, kept = int(found[1]), int(found[2])
        return ["missed"] * (days - kept) + ["kept"] * kept
    if found := re.fullmatch(r"(\d+) days, (\d+) entered at once and (\d+) entered late", words):
        days, late = int(found[1]), int(found[3])
        assert int(found[2]) + late == days
        return ["kept"] * 3 + ["late"] * late + ["kept"] * (days - 3 - late)
    if words == "a year with 17 empty days":
        assert len(EMPTY) == 17
        return ["missed" if day in EMPTY else "kept" for day in range(365)]
    if words == "1 day of 20 min":
        return ["kept"]
    kinds = {"practised": "kept", "paused": "paused", "missed": "missed"}
    parts = [re.fullmatch(r"(\d+) days? (\w+)", part) for part in words.split(", ")]
    return [kinds[part[2]] for part in parts if part for _ in range(int(part[1]))]


def test_the_page_holds_the_examples() -> None:
    assert len(examples()) == 7
    assert ("60 days in total, anything counts", "45 calendar days, 27 of them practised",
            "27 days kept, day 45") in examples()  # fmt: skip


@pytest.mark.parametrize("example", examples(), ids=lambda row: f"{row[1]} ({row[0]})")
def test_what_the_page_says_is_what_the_program_does(bench, clock, example):
    promise, happened, shown = example
    history = history_of(happened)
    first = TODAY - timedelta(days=len(history) - 1)
    days = {first + timedelta(days=at): kind for at, kind in enumerate(history)}
    now = clock.now
    clock.now = now - (TODAY - first)
    made = bench.promises.make("As on the page", rule_of(promise, first)).promise
    paused = [day for day, kind in days.items() if kind == "paused"]
    if paused:
        bench.promises.plan_break(made.id, paused[0], paused[-1])
    for day, kind in days.items():
        clock.now = now - (TODAY - day)
        if kind == "kept":
            bench.practising.set_minutes(day, 20)
    entered_late = "late" in history
    before = {day: bench.promises.numbers_for(day) for day in days if entered_late}
    for day, kind in days.items():
        if kind == "late":
            bench.practising.set_minutes(day, 20)
    view = bench.promises.view(made.id)
    assert view.headline == shown
    now_numbers = {day: numbers[0].day_number for day, numbers in before.items() if numbers}
    for day, number in now_numbers.items():
        assert bench.promises.numbers_for(day)[0].day_number == number, "renumbered by a late entry"
    assert view.standing.days_missed == history.count("missed")
    assert view.standing.days_paused == history.count("paused")
