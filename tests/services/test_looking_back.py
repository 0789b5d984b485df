"""A year ago this week, out of a journal."""

import random
from datetime import date, timedelta

from app.journal.year_ago import weeks_of_then, year_ago
from tests.store.making import make_passage, make_session, make_take, opened


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


def test_few_takes_decide_as_all_of_them_would(tmp_path):
    """Three years, chosen at random: all takes against those that are read."""
    choose, first = random.Random(5), date(2023, 1, 1)
    with opened(tmp_path) as store:
        passages = [make_passage(name) for name in ("A", "B", "C")]
        with store.transaction():
            for passage in passages:
                store.passages.add(passage)
            for offset in sorted(choose.sample(range(1100), 90)):
                session = make_session(first + timedelta(days=offset))
                store.sessions.add(session)
                store.takes.add(make_take(session, choose.choice([*passages, None])))
        found = 0
        for offset in range(0, 1100, 9):
            today = first + timedelta(days=offset)
            few = {take.id: take for take in store.takes.latest_of_passages(today)}
            for start, end in weeks_of_then(today):
                few |= {t.id: t for t in store.takes.list(first_day=start, last_day=end)}
            assert year_ago(few.values(), today) == year_ago(store.takes.list(), today)
            found += year_ago(few.values(), today) is not None
        assert found > 20
