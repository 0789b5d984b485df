"""Passages, days, minutes and rest."""

from dataclasses import replace
from datetime import date, datetime, timedelta, timezone

import pytest

from app.journal.failures import PlainFailure
from app.journal.records import PlayingSettings

ZONE = timezone(timedelta(hours=1))


def test_a_passage_is_found_by_every_name_it_has(bench):
    study = bench.passages.add("Study", "Opening", "1-8", PlayingSettings(instrument="viola"))
    assert bench.passages.find(study.id) == study
    assert bench.passages.find("opening") == study
    assert bench.passages.find("study:opening") == study
    assert bench.passages.find("Study: Opening") == study
    assert bench.passages.list() == (study,)


def test_an_unknown_passage_names_the_known_ones(bench):
    with pytest.raises(PlainFailure) as none:
        bench.passages.find("coda")
    assert "Add it" in none.value.next_step
    bench.passages.add("Study", "Opening")
    with pytest.raises(PlainFailure) as other:
        bench.passages.find("coda")
    assert "'Study: Opening'" in other.value.next_step


def test_a_name_that_two_pieces_share_asks_for_the_piece(bench):
    bench.passages.add("Study", "Coda")
    second = bench.passages.add("Sonata", "Coda")
    with pytest.raises(PlainFailure, match="could be"):
        bench.passages.find("Coda")
    with pytest.raises(PlainFailure, match="could be"):
        bench.passages.find_or_add("coda")
    assert bench.passages.find("sonata: coda") == second


def test_piece_and_name_are_taken_only_once(bench):
    first = bench.passages.add("Study", "Coda")
    with pytest.raises(PlainFailure, match="already"):
        bench.passages.add("study", "coda")
    with pytest.raises(PlainFailure, match="needs a name"):
        bench.passages.add("Study", "  ")
    assert bench.passages.change(replace(first, bars="90-99")).bars == "90-99"


def test_a_new_passage_is_made_on_the_fly_from_piece_and_name(bench):
    passage, is_new = bench.passages.find_or_add("Sonata: slow part")
    assert is_new
    assert (passage.piece, passage.name) == ("Sonata", "slow part")
    assert bench.passages.find_or_add("slow part") == (passage, False)
    assert passage.settings == bench.practising.settings().default_settings


def test_practice_after_midnight_belongs_to_the_day_before(bench, clock):
    clock.now = datetime(2026, 3, 15, 0, 40, tzinfo=ZONE)
    assert bench.practising.today().practice_day == date(2026, 3, 14)
    clock.now = datetime(2026, 3, 15, 4, 0, tzinfo=ZONE)
    assert bench.practising.today().practice_day == date(2026, 3, 15)


def test_minutes_typed_twice_are_not_added(bench):
    day = date(2026, 3, 14)
    bench.practising.set_minutes(day, 20)
    bench.practising.set_minutes(day, 35)
    assert bench.practising.today().minutes == 35


@pytest.mark.parametrize("minutes", [-1, 1441, float("nan"), float("inf")])
def test_impossible_minutes_are_refused(bench, minutes):
    with pytest.raises(PlainFailure, match="1440"):
        bench.practising.set_minutes(date(2026, 3, 14), minutes)
    assert bench.practising.today().minutes is None


def test_the_year_tells_practised_missed_and_rest_apart(bench):
    bench.practising.set_minutes(date(2026, 3, 10), 30)
    bench.practising.mark_rest(date(2026, 3, 11), planned=True)
    bench.practising.set_minutes(date(2026, 3, 12), 15)
    bench.practising.mark_rest(date(2026, 3, 13), planned=False)
    bars = {bar.practice_day: bar for bar in bench.practising.year(2026)}
    assert len(bars) == 365
    assert bars[date(2026, 3, 10)].minutes == 30
    assert bars[date(2026, 3, 11)].rest == "planned"
    assert bars[date(2026, 3, 13)].rest == "marked"
    assert not any(bar.missed for bar in bars.values())
    bench.practising.clear_rest(date(2026, 3, 11))
    missed = [bar.practice_day for bar in bench.practising.year(2026) if bar.missed]
    assert missed == [date(2026, 3, 11)]  # and neither today nor a day before the first


def test_days_practised_and_days_since_the_first_are_two_numbers(bench):
    for day in (1, 2, 5):
        bench.practising.set_minutes(date(2026, 3, day), 25)
    today = bench.practising.today()
    assert (today.days_practised, today.days_since_first) == (3, 14)
    assert bench.practising.first_and_last_day() == (date(2026, 3, 1), date(2026, 3, 5))


def test_an_empty_journal_counts_nothing(bench):
    today = bench.practising.today()
    assert (today.minutes, today.days_practised, today.days_since_first) == (None, 0, 0)
    assert bench.practising.first_and_last_day() is None


def test_settings_that_make_no_sense_are_refused(bench):
    settings = bench.practising.settings()
    with pytest.raises(PlainFailure, match="0 to 11"):
        bench.practising.change_settings(replace(settings, day_turn_hour=12))
    with pytest.raises(PlainFailure, match="category"):
        bench.practising.change_settings(replace(settings, categories=()))
    changed = bench.practising.change_settings(replace(settings, day_turn_hour=0))
    assert bench.practising.settings() == changed
