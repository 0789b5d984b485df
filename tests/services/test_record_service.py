"""What the record shows, on journals of typed and clocked minutes."""

from datetime import date, timedelta

import pytest

from app.journal.failures import PlainFailure
from app.journal.records import StoredMeasurement

TODAY = date(2026, 3, 14)  # a Saturday


def ago(days: int) -> date:
    return TODAY - timedelta(days=days)


def fill(bench, minutes_on):
    with bench.record._store.transaction():
        for day, minutes in minutes_on.items():
            bench.practising.set_minutes(day, minutes)


def test_an_empty_journal(bench):
    view = bench.record.view()
    assert (view.periods, view.overuse_caution, view.sentences) == ((), "", ())
    assert view.periods_sentence.startswith("Busier and quieter times are told apart from 6")
    assert view.lifetime.sentence == "0 min in this journal."


def test_weeks_months_and_habits(bench):
    fill(bench, {ago(n): 60 if ago(n).weekday() == 5 else 20 for n in range(63)})
    view = bench.record.view()
    assert view.weeks[-1].is_over is False
    assert view.weeks[-2].minutes == 180
    assert view.months[-1].first_day == date(2026, 3, 1)
    assert view.weekdays[5].mean_minutes == pytest.approx(60)
    assert view.sentences == (
        "In the last four weeks: 12 h on 28 days.",
        "Most minutes fall on Saturdays: 1 h on average.",
    )
    whole = sum(week.is_over and week.first_day >= ago(62) for week in view.weeks)
    assert view.periods_sentence.startswith(
        f"No clear change of the weekly minutes in {whole} weeks;"
    )
    assert "Pettitt" in view.method


def test_busier_and_quieter_times_with_their_uncertainty(bench):
    first = ago(20 * 7 + TODAY.weekday())
    amounts = {first + timedelta(days=n): (15 if n < 70 else 45) + n * 7 % 5 for n in range(140)}
    fill(bench, amounts)
    quiet, busy = bench.record.view().periods
    assert (quiet.word, busy.word) == ("", "busier")
    assert busy.first_day == first + timedelta(days=70)
    low, high = busy.begins_between
    assert low <= busy.first_day <= high


def test_nothing_is_claimed_under_six_weeks(bench):
    fill(bench, {ago(n): 10 if n > 20 else 90 for n in range(38)})
    view = bench.record.view()
    assert view.periods == ()
    assert "whole weeks" in view.periods_sentence
    assert not any("Most minutes" in sentence for sentence in view.sentences)


def test_a_steep_rise_brings_the_caution(bench):
    fill(bench, {ago(n): 20 if n > 6 else 70 for n in range(40)})
    caution = bench.record.view().overuse_caution
    assert caution.startswith("The last 7 days hold 8 h 10 min, against 2 h 20 min a week")
    assert "stop where it hurts" in caution
    assert bench.record.caution() == caution


def test_a_pause_is_said_kindly(bench):
    fill(bench, {ago(n): 20 for n in (*range(3), *range(20, 60))})
    words = " ".join(bench.record.view().sentences)
    assert "was a pause. Pauses are normal" in words
    assert not any(bad in words.lower() for bad in ("fail", "lazy", "should", "missed", "lost"))


def test_the_hours_come_from_the_clock(bench, clock):
    bench.clock.start(None)  # 19:30
    clock.now += timedelta(minutes=45)
    bench.clock.stop()
    assert [(row.hour, row.minutes) for row in bench.record.view().hours] == [
        (19, pytest.approx(30)),
        (20, pytest.approx(15)),
    ]


def test_hours_from_before_are_one_entry_and_shown_as_such(bench):
    fill(bench, {TODAY: 90})
    view = bench.record.set_earlier_hours(2400, date(2025, 12, 31), "eleven years")
    assert view.journal_minutes == 90
    assert view.total_hours == pytest.approx(2401.5)
    assert view.sentence == (
        "1 h 30 min in this journal, and 2,400 h before it until Wed 31 Dec 2025, as you"
        " reckon them: 2,402 h in all."
    )
    assert bench.record.view().weeks[-1].minutes == 90  # no week gets any of them
    assert bench.record.clear_earlier_hours().earlier is None
    with pytest.raises(PlainFailure):
        bench.record.set_earlier_hours(0)


def test_minutes_against_change_is_an_association_only(bench, add_take, tone_file, clock):
    passage = bench.passages.add("Study", "opening")
    item = bench.items.for_passage(passage.id)
    deviation, end = 30.0, clock.now
    for week in range(9):
        day = ago(70 - 7 * week)
        clock.now = end - timedelta(days=69 - 7 * week)
        take = add_take(tone_file(f"{week}.wav", frequency_hz=220 + week), "opening", day)
        summary = {"intonation": {"status": "measured", "mean_absolute_cents": deviation}}
        bench.record._store.measurements.put(
            StoredMeasurement(take.id, "take-1", clock.now, summary)
        )
        minutes = 10 + 7 * (week * 5 % 9)
        bench.clock.start(item.id)
        clock.now += timedelta(minutes=minutes)
        bench.clock.stop()
        deviation -= minutes / 40
    clock.now = end
    (row,) = bench.record.associations()
    assert row.pairs == 8
    assert row.rank_correlation == pytest.approx(-1.0)
    assert "went along with a smaller mean deviation" in row.sentence
    assert "does not say which" in row.sentence
    assert not any(word in row.sentence for word in ("because", "improved by", "causes"))


def test_too_few_weeks_say_nothing(bench, add_take, tone_file, clock):
    take = add_take(tone_file(), "opening", TODAY)
    summary = {"intonation": {"status": "measured", "mean_absolute_cents": 9.0}}
    bench.record._store.measurements.put(StoredMeasurement(take.id, "take-1", clock.now, summary))
    (row,) = bench.record.associations()
    assert row.rank_correlation is None
    assert row.sentence.startswith("Too few measured weeks")
