"""Takes aligned to what is written, and runs and passages found by their harmony."""

import numpy as np
import pytest

from analysis.likeness import judged, propose
from analysis.outline import Outline, outline, outline_of
from analysis.results import Measured, NotMeasurable, Reason
from analysis.run_throughs import find_run_throughs
from analysis.score_following import align_to_score
from analysis.take import TakeSettings, analyse_take
from analysis.written_features import WrittenNotes, written_features
from sample_audio.generator import NoteSpec, PhraseSpec, render

MAJOR = np.array([0, 2, 4, 5, 7, 9, 11])


def line(seed, count=24):
    """Notes of a tune with repeated notes, and what is written."""
    rng = np.random.default_rng([seed, 3])
    degree = np.abs(np.cumsum(rng.choice([-2, -1, 0, 1, 2], count)) % 14 - 7) + 2
    midi = (55 + 12 * (degree // 7) + MAJOR[degree % 7]).astype(float)
    beats = rng.choice([0.5, 1.0, 1.0, 2.0], count)
    onset = np.concatenate(([0.0], np.cumsum(beats)[:-1]))
    notes = tuple(NoteSpec(m, b) for m, b in zip(midi, beats, strict=True))
    return notes, WrittenNotes(onset, beats, midi)


def sounded(notes, bpm, seed=1, **changes):
    total = sum(note.beats for note in notes)
    at = np.arange(0.0, total + 8, 4.0)
    rubato = np.exp(0.1 * np.random.default_rng(seed).standard_normal(at.size))
    curve = tuple((float(beat), float(bpm * x)) for beat, x in zip(at, rubato, strict=True))
    return render(PhraseSpec(notes, tempo=curve, seed=seed, lead_in_s=0.8, **changes))


@pytest.mark.parametrize("bpm", [48.0, 96.0, 168.0])
def test_written_beats_are_found_at_any_tempo_with_rubato(bpm):
    notes, written = line(round(bpm))
    take = sounded(notes, bpm, reverb_time_s=0.4, snr_db=30.0)
    measured = analyse_take(take.samples, take.sample_rate_hz, TakeSettings(instrument="violin"))
    found = align_to_score(take.samples, take.sample_rate_hz, written, notes=measured.notes)
    assert isinstance(found, Measured)
    truth = np.array([note.start_s for note in take.truth.notes])
    error = np.abs(found.value.time_at(written.onset_beats) - truth)
    print(
        f"\n{bpm}: median {1e3 * np.median(error):.1f} ms, p95 {1e3 * np.percentile(error, 95):.0f}"
    )
    assert np.median(error) < 0.010
    assert np.percentile(error, 90) < 0.040
    back = found.value.beat_at(truth)
    assert np.median(np.abs(back - written.onset_beats)) < 0.02


def test_other_music_is_refused_and_an_empty_score_said():
    take = sounded(line(1)[0], 90.0)
    other = align_to_score(take.samples, take.sample_rate_hz, line(77)[1])
    assert isinstance(other, NotMeasurable)
    assert other.reason is Reason.NO_MATCH
    empty = WrittenNotes(np.empty(0), np.empty(0), np.empty(0))
    nothing = align_to_score(take.samples, take.sample_rate_hz, empty)
    assert isinstance(nothing, NotMeasurable)
    assert nothing.reason is Reason.NO_NOTES


def test_an_outline_survives_being_kept():
    take = sounded(line(4)[0], 90.0)
    made = outline(take.samples, take.sample_rate_hz)
    again = Outline.from_bytes(made.as_bytes())
    assert again.start_s == made.start_s
    assert np.max(np.abs(again.frames - made.frames)) <= 0.5 / 255 + 1e-6
    with pytest.raises(ValueError, match="no outline"):
        Outline.from_bytes(b"something else altogether")


def test_runs_are_counted_in_a_practice_recording():
    notes, other = line(8)[0], line(50)[0]
    pieces, truth, at = [], [], 0.0
    for number, (part, ratio) in enumerate(
        [(notes, 1.0), (notes[:12], 1.0), (other, 1.0), (notes, 1.4), (notes, 0.7)]
    ):
        phrase = sounded(part, 100.0 * ratio, seed=10 + number)
        if part is not other:
            truth.append((at + phrase.truth.notes[0].start_s, at + phrase.truth.notes[-1].end_s))
        pieces.append(phrase.samples)
        at += phrase.samples.size / phrase.sample_rate_hz
    reference = sounded(notes, 92.0, seed=3)
    found = find_run_throughs(
        outline(reference.samples, reference.sample_rate_hz),
        outline(np.concatenate(pieces), reference.sample_rate_hz),
    )
    assert isinstance(found, Measured)
    assert [run.is_complete for run in found.value] == [True, False, True, True]
    for run, (begin, end) in zip(found.value, truth, strict=True):
        assert run.start_s == pytest.approx(begin, abs=0.8)
        assert run.end_s == pytest.approx(end, abs=0.8)
    assert found.value[1].to_share < 0.7


def test_a_score_finds_runs_as_a_take_does():
    notes, written = line(9)
    phrase = sounded(notes, 100.0, seed=4)
    twice = np.concatenate((phrase.samples, phrase.samples))
    found = find_run_throughs(
        outline_of(written_features(written, 80.0)), outline(twice, phrase.sample_rate_hz)
    )
    assert isinstance(found, Measured)
    assert [run.is_complete for run in found.value] == [True, True]


def test_a_passage_too_short_to_be_found_is_said():
    short = Outline(np.eye(12, dtype=np.float32), 0.0)
    found = find_run_throughs(short, short)
    assert isinstance(found, NotMeasurable)
    assert found.reason is Reason.TOO_SHORT


def test_a_take_is_told_from_other_passages_and_from_another_rhythm():
    def of(notes, bpm, seed):
        take = sounded(notes, bpm, seed=seed)
        return outline(take.samples, take.sample_rate_hz)

    notes = line(20)[0]
    lengths = np.random.default_rng(2).permutation([note.beats for note in notes])
    rhythm = tuple(
        NoteSpec(note.midi, float(beats)) for note, beats in zip(notes, lengths, strict=True)
    )
    references = {
        "one": [of(notes, 90.0, 1)],
        "its rhythm changed": [of(rhythm, 90.0, 2)],
        "another": [of(line(30)[0], 90.0, 3)],
    }
    assert propose(of(notes, 120.0, 5), references).key == "one"
    # Nearly alike, so it may be left open, but the nearest one is named first.
    assert propose(of(rhythm, 75.0, 6), references).ranked[0][0] == "its rhythm changed"
    unknown = propose(of(line(40)[0], 100.0, 7), references)
    assert unknown.key is None


def test_confidence_is_shared_between_passages_that_fit_alike():
    sure = judged([("a", 0.0), ("b", 0.2)])
    assert sure.key == "a"
    assert sure.confidence > 0.95
    torn = judged([("a", 0.0), ("b", 0.0)])
    assert torn.key is None
    assert torn.ranked[0][1] < 0.5
    assert judged([]).key is None
