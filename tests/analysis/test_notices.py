"""What changes how a recording's numbers may be read, against recordings made so."""

import numpy as np
import pytest
from scipy.ndimage import uniform_filter1d

from analysis.notices import gain_is_automatic, input_was_muted, is_dual_mono
from analysis.results import Measured, NoticeCode, NotMeasurable, Reason, TakeAnalysis
from analysis.take import TakeSettings, analyse_take
from sample_audio.generator import NoteSpec, Phrase, PhraseSpec, render

RATE_HZ = 48_000


def phrase(seed: int, *, reverb: float | None = None) -> Phrase:
    rng = np.random.default_rng(seed)
    notes: list[NoteSpec] = []
    for _ in range(5):
        notes += [
            NoteSpec(float(rng.integers(60, 80)), 1.0, level_db=float(rng.uniform(-12, 0)))
            for _ in range(3)
        ]
        notes.append(NoteSpec(None, 2.0))
    noise = float(rng.uniform(-65, -50))
    return render(PhraseSpec(tuple(notes), tempo=75.0, level_dbfs=-18.0, seed=seed,
                             room_noise_dbfs=noise, reverb_time_s=reverb))  # fmt: skip


def with_automatic_gain(samples: np.ndarray, release_db_per_s: float) -> np.ndarray:
    """Turn down at once what is loud, and up again slowly, as a recorder does."""
    level = 10 * np.log10(uniform_filter1d(samples**2, 960) + 1e-12)[::480]
    gain, gains = 0.0, []
    for now in level:
        wanted = np.clip(-20.0 - now, -20.0, 30.0)
        gain = wanted if wanted < gain else min(wanted, gain + release_db_per_s * 0.01)
        gains.append(gain)
    smooth = np.interp(np.arange(len(samples)), 480 * np.arange(len(gains)), gains)
    return np.clip(samples * 10 ** (smooth / 20), -0.99, 0.99)


def notes_of(analysis: TakeAnalysis) -> list[tuple[float, float]]:
    return [(j.note.start_s, j.note.end_s) for j in analysis.notes]


@pytest.mark.parametrize("seed", range(4))
@pytest.mark.parametrize("release", [6.0, 15.0])
def test_automatic_gain_is_heard(seed: int, release: float) -> None:
    played = phrase(seed)
    truth = [(n.start_s, n.end_s) for n in played.truth.notes]
    assert gain_is_automatic(with_automatic_gain(played.samples, release), RATE_HZ, truth)


@pytest.mark.parametrize("reverb", [None, 0.6, 1.5])
@pytest.mark.parametrize("seed", range(4))
def test_a_fixed_gain_is_not_taken_for_one(seed: int, reverb: float | None) -> None:
    played = phrase(seed, reverb=reverb)
    truth = [(n.start_s, n.end_s) for n in played.truth.notes]
    assert not gain_is_automatic(played.samples, RATE_HZ, truth)


def test_with_automatic_gain_the_dynamics_are_refused_unless_known_to_be_off() -> None:
    sound = with_automatic_gain(phrase(1).samples, 10.0)

    def codes(settings: TakeSettings) -> tuple[TakeAnalysis, set[NoticeCode]]:
        analysis = analyse_take(sound, RATE_HZ, settings)
        return analysis, {notice.code for notice in analysis.notices}

    analysis, found = codes(TakeSettings(automatic_gain="unknown"))
    assert found == {NoticeCode.AUTOMATIC_GAIN}
    assert isinstance(analysis.dynamics, Measured)
    span = analysis.dynamics.value.dynamic_span_db
    assert isinstance(span, NotMeasurable)
    assert span.reason is Reason.AUTOMATIC_GAIN
    assert analysis.swells == ()
    analysis, found = codes(TakeSettings(automatic_gain="off"))
    assert found == set()
    assert isinstance(analysis.dynamics, Measured)
    assert isinstance(analysis.dynamics.value.dynamic_span_db, Measured)
    with pytest.raises(ValueError, match="automatic gain"):
        TakeSettings(automatic_gain="maybe").checked()  # type: ignore[arg-type]


def test_what_nobody_knows_is_said() -> None:
    analysis = analyse_take(phrase(2).samples, RATE_HZ, TakeSettings(automatic_gain="unknown"))
    assert [n.code for n in analysis.notices] == [NoticeCode.AUTOMATIC_GAIN_UNKNOWN]
    assert isinstance(analysis.dynamics, Measured)
    assert isinstance(analysis.dynamics.value.dynamic_span_db, Measured)


def test_one_sound_in_two_channels_is_dual_mono_and_three_decibels_louder() -> None:
    """BS.1770 sums the channels' power: 10 log10(2) = 3.01 dB."""
    mono = phrase(3).samples
    both = np.column_stack([mono, mono])
    assert is_dual_mono(both)
    assert not is_dual_mono(mono)
    assert not is_dual_mono(np.column_stack([mono, 0.9 * mono]))
    assert not is_dual_mono(np.zeros((1000, 2)))
    one, two = (analyse_take(sound, RATE_HZ) for sound in (mono, both))
    assert [n.code for n in two.notices] == [NoticeCode.DUAL_MONO]
    assert one.notices == ()
    assert isinstance(one.dynamics, Measured)
    assert isinstance(two.dynamics, Measured)
    louder = (two.dynamics.value.integrated_lufs or 0) - (one.dynamics.value.integrated_lufs or 0)
    assert louder == pytest.approx(10 * np.log10(2), abs=0.02)


def test_a_muted_input_and_a_mute_are_said() -> None:
    played = phrase(4).samples.copy()
    assert not input_was_muted(played, RATE_HZ)
    assert not input_was_muted(np.concatenate([np.zeros(RATE_HZ), played]), RATE_HZ)
    played[5 * RATE_HZ : round(5.3 * RATE_HZ)] = 0.0
    assert input_was_muted(played, RATE_HZ)
    assert input_was_muted(np.column_stack([played, played]), RATE_HZ)
    analysis = analyse_take(played, RATE_HZ, TakeSettings(with_mute=True))
    assert {n.code for n in analysis.notices} == {
        NoticeCode.INPUT_MUTED, NoticeCode.PLAYED_WITH_MUTE,
    }  # fmt: skip


def test_nothing_played_tells_nothing_about_the_gain():
    assert not gain_is_automatic(np.zeros(1), RATE_HZ, ())
