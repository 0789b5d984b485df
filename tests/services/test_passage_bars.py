"""Bars of a passage and printed hairpins, on scores and maps made by hand."""

from types import SimpleNamespace

import numpy as np
import pytest

from app.journal.scores import BarStart, Score, ScoreNote
from app.services.change_columns import STEADINESS, Bar, columns_of
from app.services.passage_bars import bars_in_take, steadiness_percent
from app.services.shapes import printed_hairpins


def note(onset, length=1.0, hairpin=""):
    return ScoreNote(onset, length, 69, "A", 0, 4, hairpin=hairpin)


def score(*notes, bars=((1, 0.0), (2, 4.0)), beats=8.0):
    starts = tuple(BarStart(*one) for one in bars)
    return Score("Violin", notes, tuple(np.arange(beats)), starts, beats)


def followed(beats, time_s):
    """A map from beats to seconds, as following a score gives it."""
    return SimpleNamespace(
        beats=np.array(beats, dtype=float),
        time_at=lambda at: np.interp(at, beats, time_s),
    )


def test_bars_begin_and_end_where_the_take_plays_them():
    line = score(*(note(float(n)) for n in range(8)))
    one, two = bars_in_take(line, followed([0.0, 4.0, 8.0], [1.0, 3.0, 6.0]))
    assert (one.name, one.start_s, one.end_s, one.beats) == ("bar 1", 1.0, 3.0, 4.0)
    assert (two.name, two.start_s, two.end_s) == ("bar 2", 3.0, 6.0)
    assert one.pulse_beats == (0.0, 1.0, 2.0, 3.0, 4.0)
    assert one.pulse_s == pytest.approx((1.0, 1.5, 2.0, 2.5, 3.0))


def test_a_bar_broken_off_ends_where_the_take_does_and_one_not_played_is_none():
    line = score(
        *(note(float(n)) for n in range(12)), bars=((1, 0.0), (2, 4.0), (3, 8.0)), beats=12.0
    )
    one, two = bars_in_take(line, followed([0.0, 6.0], [0.0, 3.0]))
    assert one.beats == 4.0
    assert two.beats == 2.0
    assert two.end_s == pytest.approx(3.0)


def test_a_bar_that_is_played_again_is_called_so():
    line = score(*(note(float(n)) for n in range(8)), bars=((1, 0.0), (1, 4.0, 2)))
    names = [bar.name for bar in bars_in_take(line, followed([0.0, 8.0], [0.0, 4.0]))]
    assert names == ["bar 1", "bar 1, time 2"]


def test_only_beats_on_which_a_note_begins_are_a_pulse():
    line = score(note(0.0, 2.0), note(2.0), note(3.0, 5.0))
    one, two = bars_in_take(line, followed([0.0, 8.0], [0.0, 4.0]))
    assert one.pulse_beats == (0.0, 2.0, 3.0)
    assert two.pulse_beats == ()


def test_steadiness_is_the_coefficient_of_variation_of_the_beats():
    # Lengths 0.50, 0.50, 0.50, 0.56 s: mean 0.515, standard deviation (n - 1) 0.03.
    assert steadiness_percent((0, 1, 2, 3, 4), np.array([0, 0.5, 1.0, 1.5, 2.06])) == (
        pytest.approx(100 * 0.03 / 0.515)
    )
    # A long note counts as the beats it is written for.
    assert steadiness_percent((0, 2, 3, 4), np.array([0.0, 1.0, 1.5, 2.0])) == pytest.approx(0.0)


def test_a_bar_of_too_few_beats_has_no_steadiness_and_says_why():
    assert np.isnan(steadiness_percent((0, 1, 2), np.array([0.0, 0.5, 1.0])))
    bars = (Bar("bar 1", 0.0, 1.0, 2.0), Bar("bar 2", 1.0, 3.0, 4.0))
    columns = columns_of({STEADINESS: np.array([[np.nan, 4.0], [np.nan, 5.0]])}, bars=bars)
    assert "Too few of its beats" in columns.why_not(STEADINESS, 0)
    assert columns.why_not(STEADINESS, 1) == ""


def test_hairpins_run_from_their_first_note_to_the_end_of_their_last():
    line = score(
        note(0.0),
        note(1.0, hairpin="crescendo"),
        note(2.0, hairpin="crescendo"),
        note(3.0, hairpin="diminuendo"),
        note(4.0),
        note(5.0, hairpin="diminuendo"),
        note(6.0, 2.0, hairpin="diminuendo"),
    )
    assert list(printed_hairpins(line)) == [
        (1.0, 3.0, "crescendo"),
        (3.0, 4.0, "diminuendo"),
        (5.0, 8.0, "diminuendo"),
    ]


def test_a_score_without_hairpins_has_none():
    assert list(printed_hairpins(score(note(0.0), note(1.0)))) == []
