import numpy as np
import pytest
from scipy import stats

from analysis.results import Measured, NotMeasurable, Reason
from analysis.sides import compare_notes, compare_sides
from analysis.trend import pooled_by_day, trend


def fitted(day, value, **kwargs):
    result = trend(np.asarray(day, dtype=float), np.asarray(value, dtype=float), **kwargs)
    assert isinstance(result, Measured), result
    return result.value


def journal(rng, days, *, slope=0.0, day_scatter=1.0, take_scatter=0.5):
    """Takes on some of 60 days; those of one day share that day's form."""
    practised = np.sort(rng.choice(60, days, replace=False))
    takes = np.repeat(practised, rng.integers(1, 4, days))
    form = dict(zip(practised, day_scatter * rng.standard_normal(days), strict=True))
    value = np.array([form[day] for day in takes]) + take_scatter * rng.standard_normal(takes.size)
    return takes.astype(float), value + slope * takes / 7


def test_slope_is_that_of_scipy():
    rng = np.random.default_rng(0)
    day, value = np.arange(15.0), rng.standard_normal(15)
    slope, _, low, high = stats.theilslopes(value, day, alpha=0.95)
    result = fitted(day, value)
    assert result.slope_per_week == pytest.approx(7 * slope)
    # scipy rounds the normal approximation; the exact ranks differ by one at most.
    assert result.slope_low_per_week == pytest.approx(7 * low, abs=0.15)
    assert result.slope_high_per_week == pytest.approx(7 * high, abs=0.15)


def test_sen_1968_worked_example():
    # P. K. Sen (1968), worked example (transcribed, as in scipy's own tests): slope 4,
    # 93 % interval 26/7 to 35/8. By the exact distribution those ranks hold 97 %, and are
    # the narrowest that hold 95 %.
    day, value = np.array([1, 2, 3, 4, 10, 12, 18.0]), np.array([9, 15, 19, 20, 45, 55, 78.0])
    result = fitted(day, value)
    assert result.slope_per_week / 7 == pytest.approx(4.0)
    assert result.slope_low_per_week / 7 == pytest.approx(26 / 7)
    assert result.slope_high_per_week / 7 == pytest.approx(35 / 8)


def test_a_clear_improvement_is_seen():
    rng = np.random.default_rng(3)
    day, value = journal(rng, 12, slope=-2.0)
    result = fitted(day, value)
    assert result.is_clear
    assert result.slope_high_per_week < 0
    assert result.slope_low_per_week < -2.0 < result.slope_high_per_week
    assert result.day_count == 12


def test_one_wild_day_does_not_bend_the_line():
    day = np.arange(14.0)
    value = 10 - 0.5 * day
    value[4] = 90.0
    result = fitted(day, value)
    assert result.slope_per_week == pytest.approx(-3.5, abs=0.05)
    assert result.scatter < 0.5


def test_takes_of_one_day_count_once():
    days, medians = pooled_by_day(np.array([3.2, 3.9, 5.0, 3.5]), np.array([1.0, 9.0, 4.0, 2.0]))
    assert days.tolist() == [3.0, 5.0]
    assert medians.tolist() == [2.0, 4.0]


@pytest.mark.parametrize("days", [0, 1, 3])
def test_too_few_days(days):
    day = np.repeat(np.arange(float(days)), 5)
    result = trend(day, np.ones(day.size))
    assert isinstance(result, NotMeasurable)
    assert result.reason is Reason.TOO_FEW_TAKES


@pytest.mark.parametrize(("day", "value"), [([1.0, 2.0], [1.0]), ([1.0, 2.0], [1.0, float("nan")])])
def test_bad_input_is_an_error(day, value):
    with pytest.raises(ValueError, match=r"day|finite"):
        trend(np.array(day), np.array(value))


@pytest.mark.parametrize("days", [4, 5, 6, 8, 12, 20])
@pytest.mark.parametrize("draw", ["normal", "heavy"])
def test_journals_without_a_trend_rarely_show_one(days, draw):
    rng = np.random.default_rng([days, draw == "heavy"])
    false_trends, false_pairs, rounds = 0, 0, 600
    for _ in range(rounds):
        day = np.sort(rng.choice(60, days, replace=False)).astype(float)
        value = rng.standard_normal(days) if draw == "normal" else rng.standard_t(3, days)
        result = fitted(day, value)
        false_trends += result.is_clear
        false_pairs += abs(value[-1] - value[0]) > result.ordinary_difference
    print(
        f"\n{days} days, {draw}: false trend {false_trends / rounds:.3f},"
        f" false change of first to latest {false_pairs / rounds:.3f}"
    )
    # 5 %, plus what 600 rounds scatter by (three standard errors).
    assert false_trends / rounds <= 0.05 + 3 * np.sqrt(0.05 * 0.95 / rounds)
    assert false_pairs / rounds <= 0.05 + 3 * np.sqrt(0.05 * 0.95 / rounds)


def test_several_measures_together_rarely_show_a_false_trend():
    rng = np.random.default_rng(9)
    rounds, measures, false_journals = 400, 6, 0
    for _ in range(rounds):
        false_journals += any(
            fitted(*journal(rng, 10), comparisons=measures).is_clear for _ in range(measures)
        )
    print(f"\njournals with any false trend among {measures}: {false_journals / rounds:.3f}")
    assert false_journals / rounds <= 0.05 + 3 * np.sqrt(0.05 * 0.95 / rounds)


@pytest.mark.parametrize("days", [4, 6, 10])
def test_sides_without_a_change_rarely_show_one(days):
    rng = np.random.default_rng(days)
    rounds, false = 800, 0
    for _ in range(rounds):
        a, b = journal(rng, days), journal(rng, days)
        result = compare_sides(*a, *b)
        assert isinstance(result, Measured)
        false += result.value.is_clear
    print(f"\n{days} days a side: false verdicts {false / rounds:.3f}")
    assert false / rounds <= 0.05 + 3 * np.sqrt(0.05 * 0.95 / rounds)


def test_side_change_is_welch_of_the_daily_medians():
    rng = np.random.default_rng(2)
    a, b = rng.standard_normal(7), 1 + 2 * rng.standard_normal(9)
    result = compare_sides(np.arange(7.0), a, 20 + np.arange(9.0), b)
    assert isinstance(result, Measured)
    reference = stats.ttest_ind(b, a, equal_var=False).confidence_interval(0.95)
    assert result.value.change == pytest.approx(b.mean() - a.mean())
    assert result.value.low == pytest.approx(reference.low)
    assert result.value.high == pytest.approx(reference.high)


def test_one_comparison_alone_is_clear_where_welchs_test_is_at_five_percent():
    rng, close = np.random.default_rng(4), 0
    for _ in range(200):
        a, b = rng.standard_normal(8), 1 + rng.standard_normal(8)
        result = compare_sides(np.arange(8.0), a, 20 + np.arange(8.0), b)
        assert isinstance(result, Measured)
        chance = stats.ttest_ind(b, a, equal_var=False).pvalue  # SciPy's own
        assert result.value.chance == pytest.approx(chance)
        assert result.value.is_clear == (chance < 0.05)
        close += 0.025 < chance < 0.05
    assert close >= 10  # where two verdicts given together would stay silent


def test_a_side_needs_four_days():
    day = np.array([1.0, 1, 1, 2, 3])
    result = compare_sides(day, np.ones(5), np.arange(6.0), np.ones(6))
    assert isinstance(result, NotMeasurable)
    assert result.reason is Reason.TOO_FEW_TAKES


def passages(rng, days, notes, change=0.0):
    """Two periods of a passage: note habits, form of the day, each note's own scatter."""
    habit, own = 8 * rng.standard_normal(notes), rng.uniform(3, 9, notes)
    sides = []
    for shift in (0.0, change):
        day = np.repeat(np.arange(float(days)), 2)
        form = np.repeat(3 * rng.standard_normal((days, 1)), 2, axis=0)
        note_form = np.repeat(own * rng.standard_normal((days, notes)), 2, axis=0)
        deviation = habit + form + note_form + 2 * rng.standard_normal((2 * days, notes))
        deviation[:, 0] += shift
        deviation[rng.random(deviation.shape) < 0.05] = np.nan
        sides += [day, deviation]
    return sides


@pytest.mark.parametrize("days", [5, 8])
def test_passages_without_a_change_rarely_show_a_changed_note(days):
    rng = np.random.default_rng(days)
    rounds, false = 300, 0
    for _ in range(rounds):
        verdicts = compare_notes(*passages(rng, days, 24))
        false += any(isinstance(v, Measured) and v.value.is_clear for v in verdicts)
    print(f"\n{days} days a side, 24 notes: passages with a false note {false / rounds:.3f}")
    assert false / rounds <= 0.05 + 3 * np.sqrt(0.05 * 0.95 / rounds)


@pytest.mark.parametrize(("second", "days"), [([3.0, 3, -3, -3], 12), ([3.0, -3, 3, -3], 6)])
def test_notes_witness_their_scatter_as_far_as_they_are_independent(second, days):
    # Two notes that have nothing to do with each other count twice the days, two that
    # always move together count them once; Student's t by SciPy.
    side = np.column_stack(([3.0, -3, 3, -3], second))
    day = np.arange(4.0)
    found = compare_notes(day, side, 20 + day, side + 1.0)
    standard = np.sqrt(2 * 36.0 / 6)  # of each note, around its means of both sides
    reach = stats.t.ppf(0.975, days) * standard * np.sqrt(1 / 4 + 1 / 4)
    for one in found:
        assert isinstance(one, Measured)
        assert one.value.change == pytest.approx(1.0)
        assert one.value.high - one.value.change == pytest.approx(reach)


def test_a_note_that_changed_is_found_among_the_others():
    rng = np.random.default_rng(1)
    verdicts = compare_notes(*passages(rng, 8, 24, change=40.0))
    first = verdicts[0]
    assert isinstance(first, Measured)
    assert first.value.is_clear
    assert first.value.low < 40.0 < first.value.high
    assert sum(isinstance(v, Measured) and v.value.is_clear for v in verdicts) == 1


def test_a_note_that_is_rarely_measured_gets_no_verdict():
    rng = np.random.default_rng(1)
    day_a, a, day_b, b = passages(rng, 6, 5)
    a[:-4, 2] = np.nan
    verdicts = compare_notes(day_a, a, day_b, b)
    assert isinstance(verdicts[2], NotMeasurable)
    assert isinstance(verdicts[1], Measured)
    a[:] = np.nan
    assert all(isinstance(v, NotMeasurable) for v in compare_notes(day_a, a, day_b, b))
