"""Numbers and days in words."""

from datetime import date

import pytest

from app.services.reading_views import NoReading, Reading
from app.services.wording import (
    counted,
    day_text,
    ended,
    length_text,
    listed,
    minutes_text,
    number_text,
    position_text,
    reading_text,
    short_reading_text,
)


@pytest.mark.parametrize(
    ("reading", "text"),
    [
        (Reading(7.24, "cents", 1.13, signed=True), "+7.2 ± 1.1 cents"),
        (Reading(-7.24, "cents", None, signed=True), "−7.2 cents"),
        (Reading(-0.04, "cents", None, signed=True), "0.0 cents"),
        (Reading(83.0, "%", None, digits=0), "83 %"),
        (Reading(1.4, "%", 0.26), "1.4 ± 0.3 %"),
        (Reading(72.0, "BPM", 0.004), "72.0 ± 0.1 BPM"),
        (Reading(3.0, "", None, digits=0), "3"),
        (
            Reading(-0.4, "cents a week", digits=2, signed=True, interval=(-0.86, -0.05)),
            "−0.40 (−0.86 to −0.05) cents a week",
        ),
        (NoReading("The take is silent."), "The take is silent."),
    ],
)
def test_a_reading_carries_unit_and_uncertainty(reading, text):
    assert reading_text(reading) == text


def test_an_uncertainty_is_never_rounded_to_nothing():
    assert reading_text(Reading(5.0, "cents", 0.001)) == "5.0 ± 0.1 cents"


def test_a_narrow_column_gets_a_dash_for_no_reading():
    assert short_reading_text(NoReading("Not measured yet.")) == "–"


def test_numbers_round_half_away_from_a_false_minus():
    assert number_text(-0.0, 1) == "0.0"
    assert number_text(-12.5, 0) == "−12"


def test_lengths_and_positions():
    assert length_text(59.6) == "1:00"
    assert length_text(3725) == "1:02:05"
    assert position_text(59.96) == "1:00.0"
    assert position_text(0) == "0:00.0"
    assert minutes_text(None) == "no minutes entered"
    assert minutes_text(1583 * 60 + 58) == "1,583 h 58 min"
    assert minutes_text(2000 * 60) == "2,000 h"
    assert minutes_text(60) == "1 h"


def test_lists_and_counts_read_as_sentences():
    assert listed([]) == ""
    assert listed(["a"]) == "a"
    assert listed(["a", "b"]) == "a and b"
    assert counted(0, "take") == "0 takes"
    assert counted(1, "sample") == "1 sample"


def test_a_players_words_keep_the_mark_they_end_with():
    assert ended("sound: thin") == "sound: thin."
    assert ended("shift: let go?") == "shift: let go?"


def test_a_day_names_its_weekday():
    assert day_text(date(2026, 3, 14)) == "Sat 14 Mar 2026"
