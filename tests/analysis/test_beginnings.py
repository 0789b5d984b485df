"""Where notes begin to sound: tones whose attack is a ramp of known beginning and length."""

import numpy as np
import pytest

from analysis.alignment_features import Thinned
from analysis.beginnings import Place, ShortSpectra, lateness
from analysis.new_shares import offset_between
from analysis.note_anchors import Anchors
from analysis.note_lines import NoteLine
from analysis.soft_attacks import at_their_beginnings

RATE_HZ = 22_050
MIDI = (60, 64, 62, 67, 65, 69, 64, 60, 67, 62)


def line(starts_s, attack_s, midi=MIDI):
    """Tones that swell from nothing, each over the fading one before."""
    rng = np.random.default_rng(3)
    samples = 1e-4 * rng.standard_normal(round((starts_s[-1] + 1.5) * RATE_HZ))
    ends = [*starts_s[1:], starts_s[-1] + 1.0]
    for number, begin, end in zip(midi, starts_s, ends, strict=True):
        time = np.arange(round((end - begin + 0.05) * RATE_HZ)) / RATE_HZ
        tone = sum(
            np.sin(2 * np.pi * k * 440 * 2 ** ((number - 69) / 12) * time) / k for k in range(1, 7)
        )
        fade = np.clip((end + 0.05 - begin - time) / 0.05, 0, 1)
        first = round(begin * RATE_HZ)
        samples[first : first + time.size] += 0.2 * np.clip(time / attack_s, 0, 1) * fade * tone
    return Thinned(samples, RATE_HZ)


def starts(ratio):
    lengths = np.array([0.5, 0.7, 0.4, 0.9, 0.6, 0.5, 0.8, 0.4, 0.6]) / ratio
    return 0.4 + np.concatenate(([0.0], np.cumsum(lengths)))


def places(detected_s):
    edges = [-np.inf, *detected_s, np.inf]
    return [Place(*edges[i : i + 3]) for i in range(len(detected_s))]


@pytest.mark.parametrize("attack_s", [0.08, 0.16])
@pytest.mark.parametrize("off_s", [0.0, 0.06])
def test_a_soft_attack_is_followed_back_to_its_beginning_in_both_takes(attack_s, off_s):
    true_s = (starts(1.0), starts(0.5))
    # Half of the amplitude, and now and then later still in one of them.
    wrong = off_s * (np.arange(10) % 3 == 1)
    detected_s = (true_s[0] + attack_s / 2, true_s[1] + attack_s / 2 + wrong)
    spectra = tuple(ShortSpectra(line(true, attack_s)) for true in true_s)
    found = [lateness(spectra, pair) for pair in zip(*map(places, detected_s), strict=True)]
    late_s = np.array(found[1:], dtype=float)
    assert np.isfinite(late_s).all()
    error = np.stack([s[1:] for s in detected_s], axis=1) - late_s - np.stack(true_s, axis=1)[1:]
    apart = error[:, 1] - error[:, 0]
    print(f"\n{1e3 * attack_s:.0f} ms: median {1e3 * np.median(error):.1f} ms")
    assert np.abs(np.median(error)) < 0.02
    assert np.percentile(np.abs(error), 90) < 0.03
    assert np.percentile(np.abs(apart), 90) < 0.015


def test_a_note_that_sounds_like_the_one_before_has_no_beginning_to_tell():
    true_s = starts(1.0)
    spectra = ShortSpectra(line(true_s, 0.01, midi=(60,) * 10))
    place = places(true_s)[4]
    assert lateness((spectra, spectra), (place, place)) is None


def test_a_rise_that_lies_later_is_found_between_the_places():
    place = np.arange(70.0)
    first, second = (np.clip((place - at) / 12, 0, 1) for at in (20.0, 26.5))
    assert offset_between(first, second) == pytest.approx(6.5, abs=0.1)
    assert offset_between(second, first) == pytest.approx(-6.5, abs=0.1)


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
