"""Lives of problems, bounds, the tempo ladder, blind questions."""

from datetime import UTC, date, datetime, timedelta

import pytest
from scipy import stats

from app.journal.blind_ear import (
    FEWEST_ANSWERS,
    Agreement,
    BlindTrial,
    Choice,
    Question,
    agreement,
    drawn_pair,
    exact_interval,
    two_sided_chance,
)
from app.journal.bounds import PassageBounds, checked
from app.journal.failures import PlainFailure
from app.journal.kinds import Author, MarkerState
from app.journal.records import Marker
from app.journal.still_there import Stage, heard_by_day, life_of
from app.journal.tempo_ladder import LadderTake, ladder

NOW = datetime(2026, 3, 14, 19, tzinfo=UTC)
DAY = date(2026, 3, 1)


def day(number):
    return DAY + timedelta(days=number)


def marker(state=MarkerState.TO_WORK_ON):
    return Marker("m" * 32, "t" * 32, 1.0, None, "intonation", 2, "", Author.SELF, state, NOW, NOW)


def life(answers, practised=range(20), state=MarkerState.TO_WORK_ON, by_hand=None):
    heard = heard_by_day((day(n), there) for n, there in answers)
    return life_of(marker(state), DAY, heard, [day(n) for n in practised], by_hand)


def test_a_problem_that_is_heard_again_and_again_stays_to_work_on():
    found = life([(1, True), (2, False), (3, True), (5, False)])
    assert found.stage is Stage.TO_WORK_ON
    assert found.first_heard == DAY
    assert found.last_heard == day(3)
    assert found.days_worked_on == 20
    assert found.settled_on is None


def test_a_problem_is_settled_on_the_second_silent_day_and_may_return():
    settled = life([(1, True), (2, False), (4, False)])
    assert settled.stage is Stage.SETTLED
    assert settled.settled_on == day(4)
    assert settled.days_worked_on == 5
    returned = life([(1, True), (2, False), (4, False), (9, True)], practised=range(12))
    assert returned.stage is Stage.RETURNED
    assert returned.returned_on == day(9)
    assert returned.times_returned == 1
    # Days 0 to 4 and 9 to 11.
    assert returned.days_worked_on == 8


def test_takes_of_one_day_count_once_and_one_hearing_is_enough():
    heard = heard_by_day([(day(1), False), (day(1), True), (day(2), False)])
    assert [(one.practice_day, one.is_there) for one in heard] == [(day(1), True), (day(2), False)]
    # Two takes of the same day are one silent day, not two.
    assert life([(1, False), (1, False)]).stage is Stage.TO_WORK_ON


def test_the_players_own_word_settles_a_problem():
    found = life([(1, True)], state=MarkerState.SETTLED, by_hand=day(3))
    assert found.stage is Stage.SETTLED
    assert found.settled_on == day(3)
    assert found.days_worked_on == 4


def take(number, bpm, cents=8.0, steadiness=3.0):
    return LadderTake(f"{number}-{bpm}", day(number), bpm, cents, steadiness)


BOUNDS = PassageBounds("p" * 32, 10.0, 4.0, NOW, target_bpm=96.0, step_bpm=4.0)


def test_a_tempo_is_held_after_two_days_inside_both_bounds():
    one_day = ladder([take(0, 80.0), take(0, 84.0)], BOUNDS)
    assert one_day.held_bpm is None
    two_days = ladder([take(0, 84.0), take(1, 81.0)], BOUNDS)
    assert two_days.held_bpm == 81.0
    assert two_days.next_bpm == 84.0
    assert [rung.bpm for rung in two_days.rungs] == [80.0, 84.0, 88.0, 92.0, 96.0]
    assert two_days.rungs[0].held_on == day(1)


@pytest.mark.parametrize(("cents", "steadiness"), [(10.5, 3.0), (8.0, 4.5)])
def test_a_take_outside_a_bound_holds_nothing(cents, steadiness):
    found = ladder([take(0, 80.0), take(1, 90.0, cents, steadiness)], BOUNDS)
    assert found.held_bpm is None
    assert (found.judged, found.outside) == (2, 1)


def test_what_was_not_measured_is_not_judged_and_rubato_asks_no_steadiness():
    unsteady = [take(0, 80.0, 8.0, None), take(1, 80.0, 8.0, 20.0)]
    assert ladder(unsteady, BOUNDS).not_judged == 1
    free = PassageBounds("p" * 32, 10.0, 4.0, NOW, is_rubato=True)
    assert ladder(unsteady, free).held_bpm == 80.0


def test_the_ladder_ends_at_the_target():
    found = ladder([take(n, 96.0) for n in range(2)], BOUNDS)
    assert found.next_bpm is None
    assert found.rungs[-1].bpm == 96.0


@pytest.mark.parametrize("changes", [{"mean_absolute_cents": 0.0}, {"step_bpm": float("nan")}])
def test_bounds_that_make_no_sense_are_refused(changes):
    values = {"mean_absolute_cents": 10.0, "steadiness_cv_percent": 4.0, "step_bpm": 4.0} | changes
    with pytest.raises(PlainFailure):
        checked(PassageBounds(id="p" * 32, changed_at=NOW, **values))


def test_binomial_arithmetic_agrees_with_scipy():
    for count in (12, 15, 40):
        for alike in range(count + 1):
            found = stats.binomtest(alike, count)
            assert two_sided_chance(alike, count) == pytest.approx(found.pvalue, abs=1e-12)
            interval = found.proportion_ci(method="exact")
            assert exact_interval(alike, count) == pytest.approx(
                (interval.low, interval.high), abs=1e-9
            )


def test_nothing_is_said_before_enough_answers_and_the_right_thing_after():
    few = agreement(Question.IN_TUNE, 11, [True] * (FEWEST_ANSWERS - 1))
    assert few.word is Agreement.TOO_FEW_ANSWERS
    assert few.chance is None
    assert agreement(Question.IN_TUNE, 12, [True] * 12).word is Agreement.AGREE
    assert agreement(Question.IN_TUNE, 12, [False] * 12).word is Agreement.DISAGREE
    # 9 of 12 alike: scipy's binomtest gives 0.146.
    unsure = agreement(Question.IN_TUNE, 12, [True] * 9 + [False] * 3)
    assert unsure.word is Agreement.NOT_CLEAR
    assert unsure.chance == pytest.approx(0.1459961, abs=1e-7)


def test_a_seed_draws_the_same_pair_and_both_orders_occur():
    takes = ["a", "b", "c", "d"]
    assert drawn_pair(takes, (), 5) == drawn_pair(takes, (), 5)
    orders = {drawn_pair(["a", "b"], (), seed) for seed in range(40)}
    assert orders == {("a", "b"), ("b", "a")}
    assert drawn_pair(["a"], (), 1) is None


def test_pairs_that_were_not_heard_yet_come_first():
    def asked(one, other):
        return BlindTrial("q", "p", Question.IN_TUNE, one, other, 1, NOW, Choice.FIRST, NOW)

    heard = [asked("a", "b"), asked("c", "a")]
    drawn = {frozenset(drawn_pair(["a", "b", "c"], heard, seed) or ()) for seed in range(20)}
    assert drawn == {frozenset(("b", "c"))}
