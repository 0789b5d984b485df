"""Where notes begin to sound: tones whose attack is a ramp of known beginning and length."""

import numpy as np
import pytest

from analysis.alignment_features import Thinned
from analysis.beginnings import beginnings
from analysis.note_anchors import Anchors, NoteLine
from analysis.soft_attacks import at_their_beginnings

RATE_HZ = 22_050
MIDI = (60, 64, 62, 67, 65, 69, 64, 60, 67, 62)


def line(starts_s, attack_s):
    """Tones that swell from nothing, each over the fading one before."""
    rng = np.random.default_rng(3)
    samples = 1e-4 * rng.standard_normal(round((starts_s[-1] + 1.5) * RATE_HZ))
    ends = [*starts_s[1:], starts_s[-1] + 1.0]
    for midi, begin, end in zip(MIDI, starts_s, ends, strict=True):
        time = np.arange(round((end - begin + 0.05) * RATE_HZ)) / RATE_HZ
        tone = sum(
            np.sin(2 * np.pi * k * 440 * 2 ** ((midi - 69) / 12) * time) / k for k in range(1, 7)
        )
        fade = np.clip((end + 0.05 - begin - time) / 0.05, 0, 1)
        first = round(begin * RATE_HZ)
        samples[first : first + time.size] += 0.2 * np.clip(time / attack_s, 0, 1) * fade * tone
    return Thinned(samples, RATE_HZ)


def starts(ratio):
    lengths = np.array([0.5, 0.7, 0.4, 0.9, 0.6, 0.5, 0.8, 0.4, 0.6]) / ratio
    return 0.4 + np.concatenate(([0.0], np.cumsum(lengths)))


@pytest.mark.parametrize("attack_s", [0.08, 0.16])
def test_a_soft_attack_is_followed_back_to_its_beginning(attack_s):
    true_s = starts(1.0)
    late_s = true_s + attack_s / 2  # half of the amplitude
    error = beginnings(line(true_s, attack_s), late_s)[1:] - true_s[1:]
    print(f"\n{1e3 * attack_s:.0f} ms: median {1e3 * np.median(error):.1f} ms")
    assert np.abs(np.median(error)) < 0.02
    assert np.percentile(np.abs(error), 90) < 0.03


@pytest.mark.parametrize(("attack_s", "moved"), [(0.01, False), (0.16, True)])
def test_anchors_move_only_where_notes_speak_softly(attack_s, moved):
    true_a, true_b = starts(1.0), starts(0.5)
    late = attack_s / 2
    lines = tuple(
        NoteLine(true + late, np.array(MIDI, dtype=float), np.zeros(0)) for true in (true_a, true_b)
    )
    anchors = Anchors(true_a + late, true_b + late, np.ones(9, dtype=bool))
    sources = (line(true_a, attack_s), line(true_b, attack_s))
    found = at_their_beginnings(anchors, lines, sources)
    if not moved:
        assert found is anchors
        return
    # At half the tempo a note that is found late by x puts the takes apart by x.
    before = np.interp(true_a, anchors.a_s, anchors.b_s) - true_b
    after = np.interp(true_a, found.a_s, found.b_s) - true_b
    assert np.median(np.abs(after[1:])) < 0.4 * np.median(np.abs(before[1:]))
    assert np.all(np.diff(found.a_s) >= 0)
    assert np.all(np.diff(found.b_s) >= 0)


def test_one_beginning_that_leaps_is_replaced_by_what_is_usual():
    from analysis.soft_attacks import _smoothest

    a = np.arange(10.0)
    told_b, plain_b = 2 * a + 1.0, 2 * a + 1.01
    told_b[4] -= 0.12
    now_a, now_b = _smoothest((a, a + 0.001), (told_b, plain_b))
    assert now_b[4] == pytest.approx(plain_b[4])
    assert np.delete(now_b, 4) == pytest.approx(np.delete(told_b, 4))
    assert now_a[4] in (a[4], a[4] + 0.001)
