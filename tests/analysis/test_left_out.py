"""Tuning-up and talk are found and enter no average; playing is left in."""

import os

import numpy as np
import pytest

from analysis.results import LeftOutReason, Measured, NotMeasurable, Reason, TakeAnalysis
from analysis.take import TakeSettings, analyse_take
from sample_audio.generator import NoteSpec, Phrase, PhraseSpec, render
from tests.practising_sounds import RATE_HZ, Part, playing, speaker_is_missing, speech

needs_speaker = pytest.mark.skipif(
    speaker_is_missing() and not os.environ.get("CI"),
    reason="needs the speech synthesiser espeak-ng",
)

PIECE = tuple(
    NoteSpec(float(m), 1.0, d)
    for m, d in zip(
        (67, 69, 71, 72, 74, 76, 78, 79, 78, 76, 74, 72), (4.0, -6.0, 9.0, -3.0) * 3, strict=True
    )
)
STRINGS = {
    "violin": (55, 62, 69, 76),
    "viola": (48, 55, 62, 69),
    "cello": (36, 43, 50, 57),
}


def tuning_up(instrument: str, *, reach: float = 25.0) -> tuple[NoteSpec, ...]:
    """The A alone, then pairs of strings while the pegs move, as is common practice."""
    a, b, c, d = (float(m) for m in STRINGS[instrument])
    low, mid = (b, c) if instrument == "violin" else (c, d)
    return (
        NoteSpec(69.0 if instrument != "cello" else 57.0, 2.5),
        NoteSpec(low, 2.5, -reach / 2, drift_cents=reach, second_midi=mid),
        NoteSpec(low, 2.0, -1.0, second_midi=mid),
        NoteSpec(a, 2.5, -reach, drift_cents=reach, second_midi=b),
        NoteSpec(c, 2.0, 0.0, second_midi=d),
    )


def rendered(notes: tuple[NoteSpec, ...], instrument: str = "violin", seed: int = 2) -> Phrase:
    spec = PhraseSpec(notes, tempo=80.0, instrument=instrument, room_noise_dbfs=-70.0, seed=seed)  # type: ignore[arg-type]
    return render(spec)


@pytest.mark.parametrize("instrument", ["violin", "viola", "cello"])
def test_tuning_up_is_left_out(instrument: str) -> None:
    down = {"violin": 0, "viola": -7, "cello": -19}[instrument]
    piece = tuple(NoteSpec((n.midi or 0) + down, 1.0, n.deviation_cents) for n in PIECE)
    prelude = tuning_up(instrument)
    phrase = rendered((*prelude, NoteSpec(None, 2.0), *piece), instrument)
    analysis = analyse_take(
        phrase.samples, phrase.sample_rate_hz, TakeSettings(instrument=instrument)
    )
    begins = phrase.truth.notes[len(prelude)].start_s
    (span,) = analysis.left_out
    assert span.reason is LeftOutReason.TUNING_UP
    assert span.start_s == pytest.approx(phrase.truth.notes[0].start_s, abs=0.1)
    assert begins - 2.0 < span.end_s < begins
    check_averages(analysis, phrase, len(prelude))


def check_averages(analysis: TakeAnalysis, phrase: Phrase, first: int) -> None:
    """The averages are those of the piece alone."""
    assert isinstance(analysis.intonation, Measured)
    truth = [n.deviation_cents for n in phrase.truth.notes[first:]]
    found = analysis.intonation.value
    assert found.note_count == len(truth)
    assert found.measured_share == pytest.approx(1.0, abs=0.15)
    assert found.mean_absolute_cents == pytest.approx(np.mean(np.abs(truth)), abs=0.8)


def test_tuning_again_after_the_piece_is_left_out() -> None:
    phrase = rendered((*PIECE, NoteSpec(None, 2.0), *tuning_up("violin")))
    analysis = analyse_take(phrase.samples, phrase.sample_rate_hz)
    (span,) = analysis.left_out
    assert span.reason is LeftOutReason.TUNING_UP
    assert span.start_s > phrase.truth.notes[len(PIECE) - 1].end_s
    assert isinstance(analysis.intonation, Measured)
    assert analysis.intonation.value.note_count == len(PIECE)


def test_a_piece_on_open_strings_is_not_tuning_up() -> None:
    fiddle = tuple(
        NoteSpec(m, 1.0, second_midi=s)
        for m, s in ((62.0, 69.0), (62.0, 69.0), (69.0, None), (71.0, None), (62.0, 69.0)) * 3
    )
    analysis = analyse_take(rendered(fiddle).samples, 48_000)
    assert analysis.left_out == ()
    slow = (NoteSpec(69.0, 3.0), NoteSpec(None, 2.0), *PIECE)  # one long A and a rest
    assert analyse_take(rendered(slow).samples, 48_000).left_out == ()


@needs_speaker
@pytest.mark.parametrize("seed", [1, 2, 3, 4])
def test_talk_before_and_after_is_left_out(seed: int) -> None:
    rng = np.random.default_rng(seed)
    phrase = rendered(PIECE, seed=seed)
    before, after = speech(rng, 4.0).samples, speech(rng, 4.0).samples
    gap = np.zeros(RATE_HZ)
    sound = np.concatenate([before, gap, phrase.samples, gap, after])
    sound = sound + 1e-4 * rng.normal(size=len(sound))
    analysis = analyse_take(sound, RATE_HZ)
    first, last = analysis.left_out
    shift_s = (len(before) + len(gap)) / RATE_HZ
    assert first.reason is last.reason is LeftOutReason.TALK
    assert first.start_s < 1.5
    assert first.end_s < shift_s + phrase.truth.notes[0].start_s
    assert last.start_s > shift_s + phrase.truth.notes[-1].end_s - 0.1
    check_averages(analysis, phrase, 0)
    # the loudest moment is the player's, not the voice's
    assert isinstance(analysis.dynamics, Measured)
    alone = analyse_take(phrase.samples, RATE_HZ).dynamics
    assert isinstance(alone, Measured)
    assert analysis.dynamics.value.max_momentary_lufs == pytest.approx(
        alone.value.max_momentary_lufs, abs=0.2
    )


@needs_speaker
@pytest.mark.parametrize("seed", [5, 6, 7])
def test_speech_alone_is_not_measurable(seed: int) -> None:
    sound = speech(np.random.default_rng(seed), 6.0).samples
    analysis = analyse_take(sound, RATE_HZ)
    for part in (analysis.pitch, analysis.intonation, analysis.tempo, analysis.dynamics):
        assert isinstance(part, NotMeasurable)
        assert part.reason is Reason.SPEECH
    assert analysis.notes == ()


def test_playing_of_many_kinds_is_not_left_out() -> None:
    """At most a twentieth of the time of generated practising is taken for anything else."""
    left, whole = 0.0, 0.0
    for seed in range(100, 108):
        rng = np.random.default_rng(seed)
        part: Part = playing(rng, 8.0)
        sound = part.samples + 10 ** (rng.uniform(-75, -60) / 20) * rng.normal(
            size=len(part.samples)
        )
        analysis = analyse_take(sound, RATE_HZ)
        left += sum(span.end_s - span.start_s for span in analysis.left_out)
        whole += len(sound) / RATE_HZ
    print(f"left out of playing: {100 * left / whole:.1f} %")
    assert left <= whole / 20
