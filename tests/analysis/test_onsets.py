import mir_eval
import numpy as np
import pytest

from analysis.instruments import INSTRUMENTS
from analysis.onsets import LEAST_ATTACK_STRENGTH, SLUR_STRENGTH, detect_onsets
from analysis.pitch import track_pitch
from analysis.results import Measured
from analysis.stopping import Stopped
from sample_audio.generator import NoteSpec, Phrase, PhraseSpec, render


def onsets_of(phrase: Phrase, instrument: str = "violin") -> tuple[np.ndarray, np.ndarray]:
    player = INSTRUMENTS[instrument]
    track = track_pitch(
        phrase.samples,
        phrase.sample_rate_hz,
        floor_hz=player.floor_hz,
        ceiling_hz=player.ceiling_hz,
    )
    assert isinstance(track, Measured)
    return detect_onsets(phrase.samples, phrase.sample_rate_hz, track=track.value)


@pytest.mark.parametrize("attack_s", [0.01, 0.03, 0.06, 0.09])
@pytest.mark.parametrize("snr_db", [None, 20.0])
def test_soft_attacks_of_one_repeated_pitch(attack_s: float, snr_db: float | None) -> None:
    notes = tuple(NoteSpec(67, 0.5, attack_s=attack_s) for _ in range(12))
    phrase = render(PhraseSpec(notes, tempo=60.0, snr_db=snr_db))
    found, strength = onsets_of(phrase)
    true = np.array([n.start_s for n in phrase.truth.notes])
    assert len(found) == len(true)
    assert np.median(np.abs(found - true)) < 0.005
    assert np.max(np.abs(found - true)) < 0.012
    assert (strength >= LEAST_ATTACK_STRENGTH).all()
    assert mir_eval.onset.f_measure(true, found, window=0.02)[0] == 1.0


def test_slurred_changes_are_marked_as_such() -> None:
    notes = tuple(
        NoteSpec(m, 0.5, articulation="detache" if i == 0 else "legato")
        for i, m in enumerate((67, 69, 71, 72, 71))
    )
    phrase = render(PhraseSpec(notes, tempo=60.0))
    found, strength = onsets_of(phrase)
    np.testing.assert_allclose(found, [n.start_s for n in phrase.truth.notes], atol=0.006)
    assert strength[0] > LEAST_ATTACK_STRENGTH
    assert (strength[1:] == SLUR_STRENGTH).all()


def test_noise_before_and_after_is_no_onset() -> None:
    phrase = render(
        PhraseSpec((NoteSpec(67, 1.0),), tempo=60.0, lead_in_s=1.5, tail_s=1.5, snr_db=15.0)
    )
    found, _ = onsets_of(phrase)
    assert len(found) == 1
    assert found[0] == pytest.approx(1.5, abs=0.006)


def test_struck_notes_without_a_pitch_track() -> None:
    """Clicks with a decaying ring, as a piano or guitar gives, 200 ms apart."""
    rate = 44_100
    true = 0.3 + 0.2 * np.arange(15)
    x = np.zeros(int(3.6 * rate))
    rng = np.random.default_rng(0)
    for k, at in enumerate(true):
        t = np.arange(int(0.5 * rate)) / rate
        ring = sum(np.sin(2 * np.pi * f * t) for f in (220 * 1.2 ** (k % 5), 550, 910))
        first = round(at * rate)
        piece = 0.1 * ring * np.exp(-t / 0.15) + 0.02 * rng.standard_normal(len(t)) * np.exp(
            -t / 0.01
        )
        x[first : first + len(t)] += piece[: len(x) - first]
    found, _ = detect_onsets(x, rate)
    assert mir_eval.onset.f_measure(true, found, window=0.02)[0] > 0.95


def test_empty_and_stopped() -> None:
    found, strength = detect_onsets(np.zeros(48_000), 48_000)
    assert not found.size
    assert not strength.size
    with pytest.raises(Stopped):
        detect_onsets(np.zeros(48_000), 48_000, should_stop=lambda: True)
