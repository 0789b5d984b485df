"""Paths without a price for beginning a gap, and likeness, which rests on them."""

import numpy as np
import pytest

from analysis.likeness import NONE_DISTANCE, distance
from analysis.outline import Outline
from analysis.warping_table import ATTACK_WEIGHT, GAP_COST, Band, Frames, banded_path

HARMONY = 12


def frames_of(rng: np.random.Generator, notes: int, each: int) -> Frames:
    """Notes as random harmony of unit length, no attacks."""
    harmony = np.abs(rng.normal(size=(notes, HARMONY))) ** 4
    harmony /= np.linalg.norm(harmony, axis=1, keepdims=True)
    attacks = np.zeros((notes, 1))
    return np.repeat(np.hstack((harmony, attacks)), each, axis=0).astype(np.float32)


def cheapest(a: Frames, b: Frames) -> float:
    """Total of the cheapest path, by the recurrence as the textbooks write it down.

    M. Müller, Fundamentals of Music Processing (2015), ch. 3, with Needleman and Wunsch's
    fixed price for what has no counterpart.
    """
    unlike = 1.0 - a[:, :HARMONY] @ b[:, :HARMONY].T
    apart = np.linalg.norm(a[:, None, HARMONY:] - b[None, :, HARMONY:], axis=2)
    cost = unlike**2 + ATTACK_WEIGHT * apart
    total = np.full((len(a) + 1, len(b) + 1), np.inf)
    total[1, 1] = cost[0, 0]
    for i in range(1, len(a) + 1):
        for j in range(1, len(b) + 1):
            if (i, j) != (1, 1):
                side = min(1.5 * cost[i - 1, j - 1], GAP_COST)
                total[i, j] = min(
                    total[i - 1, j - 1] + 2.0 * cost[i - 1, j - 1],
                    total[i - 1, j] + side,
                    total[i, j - 1] + side,
                )
    return float(total[-1, -1])


@pytest.mark.parametrize("seed", range(8))
def test_no_path_is_cheaper(seed: int) -> None:
    rng = np.random.default_rng(seed)
    a, b = frames_of(rng, 8, 3), frames_of(rng, 9, 4)
    b[6:18] = a[3:15]
    whole = Band(np.zeros(len(a), np.int64), np.full(len(a), len(b), np.int64))
    path = banded_path(a, b, HARMONY, whole)
    diagonal = (np.diff(path.a_frame, prepend=-1) > 0) & (np.diff(path.b_frame, prepend=-1) > 0)
    steps = np.where(diagonal, 2.0, 1.5) * path.cost
    steps = np.where(path.is_gap, GAP_COST, steps)
    steps[0] = path.cost[0]
    assert float(np.sum(steps)) == pytest.approx(cheapest(a, b), abs=1e-4)


@pytest.mark.parametrize("seed", range(4))
def test_the_first_half_of_a_passage_is_like_it(seed: int) -> None:
    rng = np.random.default_rng(100 + seed)
    notes = frames_of(rng, 40, 1)[:, :HARMONY]
    whole, half = np.repeat(notes, 12, axis=0), np.repeat(notes[:20], 10, axis=0)
    assert distance(Outline(half, 0.0), Outline(whole, 0.0)) < NONE_DISTANCE
    other = frames_of(rng, 40, 12)[:, :HARMONY]
    assert distance(Outline(half, 0.0), Outline(other, 0.0)) > NONE_DISTANCE


@pytest.mark.parametrize("seed", range(4))
def test_the_first_notes_are_like_it_though_one_of_them_comes_back_later(seed: int) -> None:
    rng = np.random.default_rng(200 + seed)
    notes = frames_of(rng, 40, 1)[:, :HARMONY]
    notes[20:40] = notes[:20][rng.permutation(20)]
    whole, part = np.repeat(notes, 12, axis=0), np.repeat(notes[:16], 10, axis=0)
    assert distance(Outline(part, 0.0), Outline(whole, 0.0)) < 0.01


@pytest.mark.parametrize("seed", range(4))
def test_the_same_notes_in_another_rhythm_are_further_away(seed: int) -> None:
    rng = np.random.default_rng(300 + seed)
    notes = frames_of(rng, 40, 1)[:, :HARMONY]
    lengths = rng.choice([6, 12, 24], 40)
    reference = Outline(np.repeat(notes, lengths, axis=0), 0.0)
    slower = Outline(np.repeat(notes, np.rint(1.4 * lengths).astype(int), axis=0), 0.0)
    other = Outline(np.repeat(notes, rng.permutation(lengths), axis=0), 0.0)
    assert distance(slower, reference) < 0.01
    assert distance(other, reference) > distance(slower, reference) + 0.02
