"""Which notes of two takes are the same written note: order-keeping pairs."""

import bisect
import math

import numpy as np

from analysis.results import FloatArray

SAME_PITCH_SEMITONES = 0.6
HALF_AS_NEAR_S = 0.07


def match_notes(
    expected_s: FloatArray,
    pitch_a_midi: FloatArray,
    start_b_s: FloatArray,
    pitch_b_midi: FloatArray,
    window_s: float,
) -> list[tuple[int, int]]:
    """Pair notes of equal pitch near their expected time, as many as the order allows.

    Parameters
    ----------
    expected_s : (n,) array
        Where each note of take a should start in take b.
    pitch_a_midi, pitch_b_midi : (n,), (m,) arrays
        Note numbers, fractions allowed; NaN where there is no pitch (never paired).
    start_b_s : (m,) array
        Starts of the notes of take b, ascending.
    window_s : float
        Largest distance of a pair in time.

    Returns
    -------
    list of (int, int)
        Indices into a and b, both strictly increasing.

    Notes
    -----
    The heaviest strictly increasing chain of candidate pairs: a pair weighs 1, plus
    up to 1/2 for being near (half of that at 70 ms), so that the number of pairs comes
    first and then that they lie where they are expected.
    """
    chain = _Chain()
    for i, (expected, pitch) in enumerate(zip(expected_s, pitch_a_midi, strict=True)):
        if not np.isfinite(pitch):
            continue
        first = int(np.searchsorted(start_b_s, expected - window_s))
        last = int(np.searchsorted(start_b_s, expected + window_s, side="right"))
        near = [
            (j, 1.0 + _nearness(float(start_b_s[j]) - float(expected), window_s))
            for j in range(first, last)
            if abs(pitch_b_midi[j] - pitch) <= SAME_PITCH_SEMITONES
        ]
        chain.offer(i, near)
    return chain.heaviest()


def _nearness(distance_s: float, window_s: float) -> float:
    """Rank a candidate pair by its distance, from 1/2 at none to 0 at the window's edge."""
    far = abs(distance_s) / window_s
    near = math.exp(-math.log(2.0) * (distance_s / HALF_AS_NEAR_S) ** 2)
    return 0.4 * near + 0.1 * (1.0 - far)


class _Chain:
    """Grows the heaviest chain of pairs, both indices strictly increasing.

    For each last index of b worth keeping, the heaviest chain that ends there; the
    frontier is increasing in both index and weight.
    """

    def __init__(self) -> None:
        self._ends: list[int] = []
        self._weights: list[float] = []
        self._links: list[int] = []
        self._pairs: list[tuple[int, int, int]] = []  # a index, b index, link before

    def offer(self, a_index: int, candidates: list[tuple[int, float]]) -> None:
        """Extend the chains by one of the candidates (b index, weight) of a note of a."""
        extended = []
        for b_index, weight in candidates:
            place = bisect.bisect_left(self._ends, b_index) - 1
            before = self._weights[place] if place >= 0 else 0.0
            link = self._links[place] if place >= 0 else -1
            self._pairs.append((a_index, b_index, link))
            extended.append((b_index, before + weight, len(self._pairs) - 1))
        for b_index, weight, link in extended:
            self._keep(b_index, weight, link)

    def heaviest(self) -> list[tuple[int, int]]:
        """Pairs of the heaviest chain, in order."""
        pairs: list[tuple[int, int]] = []
        link = self._links[-1] if self._links else -1
        while link >= 0:
            a_index, b_index, link = self._pairs[link]
            pairs.append((a_index, b_index))
        return pairs[::-1]

    def _keep(self, b_index: int, weight: float, link: int) -> None:
        """Put a chain onto the frontier and drop what it outdoes."""
        place = bisect.bisect_right(self._ends, b_index)
        if place > 0 and self._weights[place - 1] >= weight:
            return
        if place > 0 and self._ends[place - 1] == b_index:
            place -= 1
        end = place
        while end < len(self._ends) and self._weights[end] <= weight:
            end += 1
        self._ends[place:end] = [b_index]
        self._weights[place:end] = [weight]
        self._links[place:end] = [link]
