"""When an instrument sounds: playing counts, talk and an empty room do not.

The truth is the generator's own; talk comes from a speech synthesiser and is skipped
where there is none. A whole hour: ``tests/benchmarks/sounding_hour.py``.
"""

import os

import numpy as np
import pytest

from analysis import sounding
from analysis.sounding import SoundingTime, sounding_minutes
from sample_audio.generator import NoteSpec, PhraseSpec, render
from tests import practising_sounds as sounds

RATE = sounds.RATE_HZ


def needs_speaker() -> None:
    if sounds.speaker_is_missing():
        sentence = f"talk needs {sounds.SPEAKER}"
        if os.environ.get("CI"):
            pytest.fail(sentence)
        pytest.skip(sentence)


def in_a_room(samples: np.ndarray, seed: int = 1) -> np.ndarray:
    """Two seconds before, four after, and noise at -62 dBFS under all of it."""
    rng = np.random.default_rng(seed)
    sound = np.concatenate([np.zeros(2 * RATE), samples, np.zeros(4 * RATE)])
    return sound + 10 ** (-62 / 20) * rng.normal(size=len(sound))


@pytest.mark.parametrize("instrument", ["violin", "double bass"])
@pytest.mark.parametrize("way", sorted(sounds.WAYS))
def test_every_way_of_playing_counts(way: str, instrument: str) -> None:
    part = sounds.played(np.random.default_rng(4), way, instrument)
    found_s = 60 * sounding_minutes(in_a_room(part.samples), RATE)
    # The answer is about as late at the end as at the start, not exactly.
    assert found_s == pytest.approx(part.playing_s, abs=max(2.0, 0.05 * part.playing_s))


@pytest.mark.parametrize("voice", ["en-gb", "de+f2", "fr-fr", "en-us+m7"])
def test_talk_does_not_count(voice: str) -> None:
    needs_speaker()
    pause = np.zeros(RATE // 2)
    said = [np.concatenate([sounds.spoken(s, voice, 160, 50), pause]) for s in sounds.SENTENCES]
    talk = in_a_room(0.06 * np.concatenate(said))
    assert 60 * sounding_minutes(talk, RATE) < 0.05 * len(talk) / RATE


def test_a_few_minutes_of_practising_are_counted_within_five_percent() -> None:
    needs_speaker()
    parts = list(sounds.practising(seed=21, minutes=4))
    assert {"speech", "nobody"} < {part.kind for part in parts}
    found = sounding_minutes(np.concatenate([part.samples for part in parts]), RATE)
    assert found == pytest.approx(sum(part.playing_s for part in parts) / 60, rel=0.05)


@pytest.mark.parametrize("dbfs", [-80.0, -50.0, -20.0])
def test_noise_does_not_count(dbfs: float) -> None:
    noise = 10 ** (dbfs / 20) * np.random.default_rng(2).normal(size=10 * RATE)
    assert sounding_minutes(noise, RATE) == 0.0


def test_silence_and_knocks_do_not_count() -> None:
    assert sounding_minutes(np.zeros(5 * RATE), RATE) == 0.0
    assert sounding_minutes(sounds.nobody(np.random.default_rng(8), 60).samples, RATE) == 0.0


def test_a_hum_counts_no_more_once_it_is_known_for_one() -> None:
    t = np.arange(120 * RATE) / RATE
    hum = 0.02 * (np.sin(2 * np.pi * 100 * t) + 0.3 * np.sin(2 * np.pi * 200 * t))
    hum[60 * RATE : 61 * RATE] = 0.0  # switched off and on again: still known
    assert 60 * sounding_minutes(hum, RATE) == pytest.approx(20.0, abs=1.5)


@pytest.mark.parametrize(("rest_s", "counts"), [(2.0, True), (4.5, False)])
def test_short_rests_inside_playing_count(rest_s: float, counts: bool) -> None:
    phrase = render(PhraseSpec(tuple(NoteSpec(67.0 + k, 1.0) for k in range(8)), tail_s=0.0))
    once = phrase.samples
    both = in_a_room(np.concatenate([once, np.zeros(round(rest_s * RATE)), once]))
    played_s = 2 * len(once) / RATE + (rest_s if counts else 0.0)
    assert 60 * sounding_minutes(both, RATE) == pytest.approx(played_s, abs=1.5)


@pytest.mark.parametrize("rate", [8_000, 16_000, 44_100, 96_000])
def test_other_rates_and_channels_give_the_same_time(rate: int) -> None:
    notes = tuple(NoteSpec(57.0 + k, 1.0, vibrato_rate_hz=6, vibrato_extent_cents=20)
                  for k in range(12))  # fmt: skip
    phrase = render(PhraseSpec(notes, sample_rate_hz=rate, instrument="viola", tail_s=5.0))
    truth_s = phrase.truth.notes[-1].end_s - phrase.truth.notes[0].start_s
    stereo = np.stack([phrase.samples, 0.5 * phrase.samples], axis=1)
    assert 60 * sounding_minutes(stereo, rate) == pytest.approx(truth_s, abs=1.0)


def test_the_answer_does_not_depend_on_the_blocks_and_the_state_stays_small() -> None:
    part = sounds.played(np.random.default_rng(9), "phrase", "viola")
    sound = in_a_room(part.samples).astype(np.float32)
    answers = []
    for size in (len(sound), 4_800, 777):
        state, heard = sounding.begin(RATE), []
        for first in range(0, len(sound), size):
            state, frames = sounding.listen(state, sound[first : first + size])
            heard.append(frames)
            kept = sum(getattr(state, name).nbytes for name in ("raw", "slow", "cents", "outline"))
            assert kept + state.credit.nbytes < 20_000
        answers.append(np.concatenate(heard))
    assert answers[0].any()
    for other in answers[1:]:
        np.testing.assert_array_equal(answers[0], other)


def test_frames_become_stretches() -> None:
    yes, no = np.ones(100, bool), np.zeros(100, bool)  # a second each
    time = sounding.count(SoundingTime(), np.concatenate([no, yes, no, no, yes]), 0.01)
    assert time.seconds == pytest.approx(4.0)
    assert (time.begins_s, time.ends_s) == pytest.approx((1.0, 5.0))
    time = sounding.count(time, np.concatenate([no, no, no, yes]), 0.01)
    assert time.seconds == pytest.approx(5.0)
    assert (time.begins_s, time.heard_s) == pytest.approx((8.0, 9.0))


def test_what_is_not_a_number_is_taken_for_silence() -> None:
    assert sounding_minutes(np.full(RATE, np.nan), RATE) == 0.0


def test_too_low_a_rate_is_refused() -> None:
    with pytest.raises(ValueError, match="8000"):
        sounding.begin(4_000)
