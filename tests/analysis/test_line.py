"""Chords are not read as notes, and a line only where it sounds alone."""

from dataclasses import replace

import numpy as np
import pytest

from analysis.results import Measured, NotMeasurable, Reason, TakeAnalysis
from analysis.take import TakeSettings, analyse_take
from sample_audio.generator import NoteSpec, Phrase, PhraseSpec, render
from tests.other_sounds import PROGRESSION, RATE_HZ, piano

DEVIATIONS = (6.0, -9.0, 12.0, 0.0, -14.0, 3.0, 9.0, -4.0)


def line(instrument: str = "violin", seed: int = 3) -> Phrase:
    low = {"violin": 72, "cello": 48}[instrument]
    steps = (0, 2, 4, 5, 7, 9, 11, 12)
    notes = tuple(
        NoteSpec(low + step, 2.0, cents, vibrato_rate_hz=6.0, vibrato_extent_cents=15.0)
        for step, cents in zip(steps, DEVIATIONS, strict=True)
    )
    return render(PhraseSpec(notes, tempo=60.0, instrument=instrument, seed=seed))  # type: ignore[arg-type]


@pytest.mark.parametrize("seconds", [0.5, 1.0, 2.0])
@pytest.mark.parametrize("instrument", ["violin", "cello", "piano"])
def test_struck_chords_have_no_intonation(instrument: str, seconds: float) -> None:
    sound = piano(PROGRESSION * (2 if seconds < 1 else 1), seconds, seed=1)
    analysis = analyse_take(sound, RATE_HZ, TakeSettings(instrument=instrument))
    assert isinstance(analysis.intonation, NotMeasurable)
    assert analysis.intonation.reason is Reason.SEVERAL_NOTES_SOUND
    assert all(isinstance(j.deviation, NotMeasurable) for j in analysis.notes)
    assert isinstance(analysis.dynamics, Measured)


def test_double_stops_among_single_notes_leave_a_line() -> None:
    notes = tuple(
        NoteSpec(62.0 + k, 1.0, second_midi=69.0 + k if k % 3 == 0 else None) for k in range(9)
    )
    phrase = render(PhraseSpec(notes, tempo=60.0))
    analysis = analyse_take(phrase.samples, phrase.sample_rate_hz)
    assert isinstance(analysis.intonation, Measured)


def accompanied(chords: tuple[tuple[int, ...], ...]) -> TakeAnalysis:
    played, under = line().samples, piano(chords, 2.0, level=0.1)
    length = min(len(played), len(under))
    sound = played[:length] + under[:length]
    return analyse_take(sound, RATE_HZ, TakeSettings(accompanied=True))


def test_under_a_full_accompaniment_no_line_is_told_apart() -> None:
    analysis = accompanied(PROGRESSION)
    assert isinstance(analysis.intonation, NotMeasurable)
    assert analysis.intonation.reason is Reason.ACCOMPANIED


def test_where_the_accompaniment_rests_the_line_is_measured() -> None:
    """The notes alone come out as they were played; those with chords are refused."""
    chords = ((48, 60, 64, 67), (), (), (45, 60, 64, 69), (), (), (), ())
    analysis = accompanied(chords)
    assert isinstance(analysis.intonation, Measured)
    assert analysis.intonation.value.measured_share < 1.0
    alone = [j for j in analysis.notes if isinstance(j.deviation, Measured)]
    assert 4 <= len(alone) <= 6
    truth = {72 + s: d for s, d in zip((0, 2, 4, 5, 7, 9, 11, 12), DEVIATIONS, strict=True)}
    for judged in alone:
        assert isinstance(judged.deviation, Measured)
        assert judged.midi is not None
        assert judged.deviation.value.deviation_cents == pytest.approx(truth[judged.midi], abs=1.5)
    refused = [j for j in analysis.notes if isinstance(j.deviation, NotMeasurable)]
    assert any(j.deviation.reason is Reason.ACCOMPANIED for j in refused)  # type: ignore[union-attr]


def test_a_piano_alone_is_not_taken_for_the_player() -> None:
    melody = tuple((m,) for m in (60, 62, 64, 65, 67, 65, 64, 62))
    analysis = analyse_take(piano(melody, 0.6), RATE_HZ, TakeSettings(accompanied=True))
    assert isinstance(analysis.intonation, NotMeasurable)
    assert analysis.intonation.reason is Reason.ACCOMPANIED


def test_noise_hides_whether_a_line_is_alone() -> None:
    phrase = line()
    noise = np.random.default_rng(0).normal(0.0, 0.05, len(phrase.samples))
    analysis = analyse_take(phrase.samples + noise, RATE_HZ, TakeSettings(accompanied=True))
    assert isinstance(analysis.intonation, NotMeasurable)
    same = analyse_take(phrase.samples, RATE_HZ, TakeSettings(accompanied=True))
    assert isinstance(same.intonation, Measured)
    parameters = same.intonation.provenance.parameters
    assert parameters["only_equal"] is True
    assert replace(same).left_out == ()
