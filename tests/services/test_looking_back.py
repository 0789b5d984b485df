"""A year ago this week, out of a journal."""

from datetime import timedelta


def test_a_take_of_a_year_ago_is_named_with_its_passage_and_day(bench, clock, tone_file, add_take):
    today = bench.practising.practice_day_now()
    then = add_take(tone_file("then.wav", 0.5), "Opening", today - timedelta(days=364))
    assert bench.looking_back.this_week() is None, "nothing to hear it against"
    now = add_take(tone_file("now.wav", 0.6), "Opening", today - timedelta(days=1))
    found = bench.looking_back.this_week()
    assert (found.then_take_id, found.now_take_id, found.years) == (then.id, now.id, 1)
    assert found.sentence.startswith("A year ago this week: Opening, ")
    bench.filing.delete(then.id)
    assert bench.looking_back.this_week() is None
