"""The demo's eight weeks hold together."""

from datetime import date, timedelta

import numpy as np
import pytest

from sample_audio.generator import place_phrase, render
from sample_audio.scenario import DAY_COUNT, PASSAGES, demo_days

END = date(2026, 3, 1)
CATEGORIES = {
    "intonation", "rhythm", "sound", "shift", "string crossing", "memory", "expression", "other",
}  # fmt: skip


@pytest.fixture(scope="module")
def days():
    return demo_days(END)


def takes_of(days, key):
    return [(day, take) for day in days for take in day.takes if take.passage_key == key]


def test_the_days_run_without_a_gap_up_to_the_end(days):
    assert len(days) == DAY_COUNT
    assert [day.date for day in days] == [END - timedelta(days=55 - i) for i in range(DAY_COUNT)]


def test_there_are_rest_days_missed_days_and_short_days(days):
    rest = [day for day in days if day.planned_rest]
    missed = [day for day in days if not day.minutes and not day.planned_rest]
    short = [day for day in days if 0 < day.minutes < 15]
    assert (len(rest), len(missed)) == (8, 3)
    assert len(short) >= 4
    for day in rest + missed:
        assert not day.takes
        assert not day.blocks


def test_minutes_are_those_of_the_blocks_and_stay_within_reason(days):
    for day in days:
        assert day.minutes == sum(block.minutes for block in day.blocks)
        assert day.minutes <= 90


def test_takes_belong_to_known_passages_and_days_with_practice(days):
    assert len(takes_of(days, "opening")) == pytest.approx(30, abs=3)
    assert len(takes_of(days, "crossings")) >= 6
    assert {take.passage_key for day in days for take in day.takes} <= {p.key for p in PASSAGES}
    assert days[-1].takes


def test_one_take_was_played_after_midnight_and_counts_for_the_day_before(days):
    late = [(d, t) for d in days for t in d.takes if t.time_of_day.hour < 4]
    assert len(late) == 1
    day, take = late[0]
    assert day.instant(take.time_of_day).date() == day.date + timedelta(days=1)


def test_markers_lie_within_their_take_and_are_of_the_players_categories(days):
    markers = []
    for day in days:
        for take in day.takes:
            end_s = place_phrase(take.phrase)[-1].end_s
            for marker in take.markers:
                markers.append(marker)
                assert 0 <= marker.start_s < (marker.end_s or end_s) <= end_s
                assert marker.category in CATEGORIES
                assert 1 <= marker.weight <= 3
                assert len(marker.text) < 60
    assert len(markers) >= 25
    assert {marker.author for marker in markers} == {"self", "teacher"}
    assert {m.state for m in markers} == {"to_work_on", "settled", "returned"}


def test_aims_are_written_before_some_takes_and_answered(days):
    aims = [take for day in days for take in day.takes if take.aim]
    assert len(aims) >= 12
    assert {take.aim_met for take in aims} == {"yes", "partly", "no", None}
    assert all(take.aim_met is None for day in days for take in day.takes if not take.aim)


def mean_size_cents(take):
    return np.mean([abs(note.deviation_cents) for note in place_phrase(take.phrase)])


def test_the_passage_gets_better_with_a_setback(days):
    sizes = {
        (day.date - days[0].date).days: mean_size_cents(t) for day, t in takes_of(days, "opening")
    }
    first = np.mean([size for day, size in sizes.items() if day < 7])
    before = np.mean([size for day, size in sizes.items() if 25 <= day < 36])
    setback = np.mean([size for day, size in sizes.items() if 36 <= day < 40])
    last = np.mean([size for day, size in sizes.items() if day >= 49])
    assert first > 1.7 * last
    assert setback > 1.1 * before
    assert last < before


def test_takes_last_as_long_as_a_clip_and_render_without_clipping(days):
    for key, seconds in (("opening", (22, 34)), ("crossings", (12, 18))):
        _, take = takes_of(days, key)[0]
        phrase = render(take.phrase)
        assert seconds[0] < phrase.samples.size / phrase.sample_rate_hz < seconds[1]
        assert np.abs(phrase.samples).max() < 0.9


def test_another_end_moves_the_days_but_not_the_playing(days):
    moved = demo_days(END + timedelta(days=10))
    assert [day.takes for day in moved] == [day.takes for day in days]


def test_bars_are_counted_from_the_first_printed_one():
    opening, crossings = PASSAGES
    assert (opening.bar_of(0), opening.bar_of(19), opening.bar_of(31)) == (1, 5, 8)
    assert (crossings.bar_of(0), crossings.bar_of(26)) == (17, 20)
    for passage in PASSAGES:
        assert sum(note.beats for note in passage.notes) % passage.beats_a_bar == 0
