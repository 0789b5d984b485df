"""How exactly onsets are known, against the errors the generator's truth shows."""

import numpy as np
import pytest

from analysis.blocks import MonoSamples
from analysis.instruments import INSTRUMENTS
from analysis.onset_sharpness import onset_sd_s, rises
from analysis.onsets import detect_onsets
from analysis.pitch import track_pitch
from analysis.results import Measured
from analysis.take import TakeSettings, analyse_take
from sample_audio.generator import NoteSpec, Phrase, PhraseSpec, render

VIOLIN = INSTRUMENTS["violin"]
STEPS = (67, 69, 71, 72, 74, 72, 71, 69)


def line(attack_s: float, seed: int, **more: float) -> Phrase:
    rng = np.random.default_rng(seed)
    notes = tuple(
        NoteSpec(float(m), 1.0, attack_s=attack_s, level_db=float(rng.uniform(-6.0, 0.0)))
        for m in STEPS * 3
    )
    return render(PhraseSpec(notes, tempo=100.0, seed=seed, **more))


def true_and_stated_sd_s(phrase: Phrase) -> tuple[float, float]:
    source = MonoSamples(phrase.samples, phrase.sample_rate_hz)
    track = track_pitch(
        phrase.samples,
        phrase.sample_rate_hz,
        floor_hz=VIOLIN.floor_hz,
        ceiling_hz=VIOLIN.ceiling_hz,
    )
    assert isinstance(track, Measured)
    found, _ = detect_onsets(source, phrase.sample_rate_hz, track=track.value)
    true = np.array([n.start_s for n in phrase.truth.notes])
    error = np.array([found[np.argmin(np.abs(found - t))] - t for t in true])
    error = error[np.abs(error) < 0.06]
    return float(np.std(error)), onset_sd_s(rises(source, found))


@pytest.mark.parametrize("attack_s", [0.01, 0.04, 0.08])
@pytest.mark.parametrize("more", [{}, {"snr_db": 20.0}])
def test_in_a_dry_room_onsets_are_known_to_a_few_milliseconds(
    attack_s: float, more: dict[str, float]
) -> None:
    true, stated = true_and_stated_sd_s(line(attack_s, 3, **more))
    assert true <= stated <= 0.007


@pytest.mark.parametrize("attack_s", [0.01, 0.04, 0.08])
def test_in_a_reverberant_room_the_stated_scatter_grows_with_the_true_one(attack_s: float) -> None:
    true, stated = true_and_stated_sd_s(line(attack_s, 4, snr_db=20.0, reverb_time_s=0.6))
    assert 0.6 * true <= stated <= 2.5 * true
    assert stated > 1.5 * true_and_stated_sd_s(line(attack_s, 4))[1]


def test_the_steadiness_of_a_perfect_grid_stays_about_its_floor_in_a_room() -> None:
    for more in ({}, {"snr_db": 20.0, "reverb_time_s": 0.6}):
        phrase = line(0.04, 5, **more)
        found = analyse_take(
            phrase.samples, phrase.sample_rate_hz, TakeSettings("violin", pulse_bpm=100.0)
        ).tempo
        assert isinstance(found, Measured)
        assert found.value.steadiness_cv_percent <= 1.6 * found.value.steadiness_floor_percent
