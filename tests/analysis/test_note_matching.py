import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from analysis.note_matching import match_notes


def weight(pairs, expected, start_b, window_s):
    return sum(1.5 - 0.5 * abs(start_b[j] - expected[i]) / window_s for i, j in pairs)


def heaviest_by_trying_all(expected, pitch_a, start_b, pitch_b, window_s):
    candidates = [
        (i, j)
        for i in range(len(expected))
        for j in range(len(start_b))
        if pitch_a[i] == pitch_b[j] and abs(expected[i] - start_b[j]) <= window_s
    ]
    best = 0.0
    for count in range(1, min(len(expected), len(start_b)) + 1):
        for chosen in itertools.combinations(candidates, count):
            if all(p[0] < q[0] and p[1] < q[1] for p, q in itertools.pairwise(chosen)):
                best = max(best, weight(chosen, expected, start_b, window_s))
    return best


@settings(max_examples=150, deadline=None)
@given(data=st.data())
def test_no_other_chain_weighs_more(data):
    size = st.integers(1, 4)
    pitch = st.sampled_from([60.0, 62.0])
    n, m = data.draw(size), data.draw(size)
    times = st.floats(0, 2, allow_nan=False)
    expected = np.sort(data.draw(st.lists(times, min_size=n, max_size=n)))
    start_b = np.sort(data.draw(st.lists(times, min_size=m, max_size=m)))
    pitch_a = np.array(data.draw(st.lists(pitch, min_size=n, max_size=n)))
    pitch_b = np.array(data.draw(st.lists(pitch, min_size=m, max_size=m)))
    pairs = match_notes(expected, pitch_a, start_b, pitch_b, 0.5)
    assert all(p[0] < q[0] and p[1] < q[1] for p, q in itertools.pairwise(pairs))
    assert weight(pairs, expected, start_b, 0.5) == pytest.approx(
        heaviest_by_trying_all(expected, pitch_a, start_b, pitch_b, 0.5)
    )


def test_repeated_notes_pair_one_to_one():
    start = np.arange(6) * 0.3
    same = np.full(6, 60.0)
    assert match_notes(start + 0.1, same, start, same, 0.5) == [(i, i) for i in range(6)]


def test_a_missing_note_costs_one_pair_only():
    start = np.arange(5) * 0.3
    pitch = np.array([60.0, 62.0, 64.0, 62.0, 60.0])
    kept = [0, 1, 3, 4]
    pairs = match_notes(start, pitch, start[kept], pitch[kept], 0.2)
    assert pairs == [(0, 0), (1, 1), (3, 2), (4, 3)]


def test_notes_without_pitch_or_far_away_are_never_paired():
    start = np.array([0.0, 1.0])
    assert match_notes(start, np.array([np.nan, 60.0]), start, np.array([60.0, np.nan]), 0.5) == []
    assert match_notes(start, np.full(2, 60.0), start + 5, np.full(2, 60.0), 0.5) == []
