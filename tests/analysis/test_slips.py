"""What only one of two takes plays: found, and called what it is."""

from dataclasses import replace

import numpy as np
import pytest

from analysis.alignment import align
from analysis.results import Alignment, Measured, Note, NoteKind, NotePitch, Provenance
from analysis.slips import SlipKind, slips

RATE_HZ = 22_050
MADE_HERE = Provenance("test")
MAJOR = np.array([0, 2, 4, 5, 7, 9, 11])


def tune(seed, count=32):
    degree = np.abs((np.cumsum(np.random.default_rng(seed).choice([-2, -1, 1, 2, 3], count))) % 14)
    return [int(55 + 12 * (d // 7) + MAJOR[d % 7]) for d in degree]


def played(midi, *, beat_s=0.4, stop_after=None, stop_s=1.5, last_s=None):
    """Sound and notes of a line; a stop may follow one note, and the last may be longer."""
    lengths = [beat_s] * (len(midi) - 1) + [last_s or beat_s]
    start, at = [], 0.4
    for number, length_s in enumerate(lengths):
        start.append(at)
        at += length_s + (stop_s if number == stop_after else 0.0)
    samples = 1e-4 * np.random.default_rng(1).standard_normal(round((at + 0.5) * RATE_HZ))
    notes = []
    for begin, length_s, number in zip(start, lengths, midi, strict=True):
        time = np.arange(round(length_s * RATE_HZ)) / RATE_HZ
        phase = 2 * np.pi * 440 * 2 ** ((number - 69) / 12) * time
        envelope = np.clip(np.minimum(time / 0.03, (time[-1] - time) / 0.03), 0, 1)
        tone = 0.2 * envelope * sum(np.sin(k * phase) / k for k in range(1, 8))
        first = round(begin * RATE_HZ)
        samples[first : first + tone.size] += tone
        pitch = Measured(NotePitch(440 * 2 ** ((number - 69) / 12), 1.0, 0.0), MADE_HERE)
        end = begin + length_s
        notes.append(
            Note(begin, end, begin, end, NoteKind.NOTE, -20.0, pitch, Measured(None, MADE_HERE))
        )
    return samples, notes


def found(a, b):
    result = align(a[0], RATE_HZ, b[0], RATE_HZ, notes_a=a[1], notes_b=b[1])
    assert isinstance(result, Measured)
    return slips(result.value, a[1], b[1])


@pytest.mark.parametrize("seed", range(4))
def test_a_clean_pair_has_no_slips(seed):
    midi = tune(seed)
    assert found(played(midi), played(midi, beat_s=0.5)) == ((), ())


@pytest.mark.parametrize("seed", range(4))
def test_a_repeated_bar_is_told_where_it_is(seed):
    midi = tune(seed)
    again = midi[:20] + midi[12:]
    of_a, of_b = found(played(midi), played(again))
    assert of_a == ()
    assert len(of_b) == 1
    assert of_b[0].kind is SlipKind.REPEATED
    # Eight notes of 0.4 s are played twice: either turn may be the one that is left out.
    assert of_b[0].end_s - of_b[0].start_s == pytest.approx(3.2, abs=0.5)
    assert 0.4 + 0.4 * 11.5 <= of_b[0].start_s <= 0.4 + 0.4 * 21.5


@pytest.mark.parametrize("seed", range(4))
def test_a_skipped_bar_is_music_of_one_take_only(seed):
    midi = tune(seed)
    of_a, of_b = found(played(midi), played(midi[:12] + midi[20:]))
    assert of_b == ()
    # Notes 12 to 19 of 0.4 s are skipped; some of them also fit what follows or precedes.
    assert 1.0 <= sum(one.end_s - one.start_s for one in of_a) <= 3.8
    assert of_a[0].start_s >= 0.4 + 0.4 * 9
    assert of_a[-1].end_s <= 0.4 + 0.4 * 23


def test_a_stop_is_a_stop():
    midi = tune(3)
    _, of_b = found(played(midi), played(midi, stop_after=15, stop_s=2.5))
    assert [one.kind for one in of_b] == [SlipKind.STOPPED]


def as_one(notes, first, last):
    """Notes among which some repeated ones were taken for a single one."""
    return [*notes[:first], replace(notes[first], end_s=notes[last].end_s), *notes[last + 1 :]]


def test_a_stop_between_notes_that_were_taken_for_one_is_told():
    midi = tune(3)
    midi[15] = midi[16]
    (sound_a, notes_a), (sound_b, notes_b) = played(midi), played(midi, stop_after=15, stop_s=2.5)
    _, of_b = found((sound_a, as_one(notes_a, 15, 16)), (sound_b, as_one(notes_b, 15, 16)))
    assert len(of_b) == 1
    stop_s = (notes_b[15].end_s, notes_b[16].start_s)
    assert (of_b[0].start_s, of_b[0].end_s) == pytest.approx(stop_s, abs=0.3)


@pytest.mark.parametrize("last_s", [1.0, 2.0])
def test_a_last_note_that_is_held_longer_is_no_slip(last_s):
    midi = tune(1)
    assert found(played(midi), played(midi, last_s=last_s)) == ((), ())
    assert found(played(midi, last_s=last_s), played(midi)) == ((), ())


def test_a_false_start_and_what_follows_the_end_are_told():
    midi = tune(2)
    _, of_b = found(played(midi), played(midi[:6] + midi + [75, 63, 74, 62, 73, 61, 75, 63]))
    assert {one.kind for one in of_b} >= {SlipKind.AFTER}
    assert any(one.kind in {SlipKind.BEFORE, SlipKind.REPEATED} for one in of_b)


@pytest.mark.parametrize("extra", [0, 1])
def test_a_note_held_longer_within_is_no_slip_but_one_more_note_is(extra):
    midi = tune(5, 12)
    _, short = played(midi)
    _, longer = played(midi, stop_after=5, stop_s=0.6)
    longer[5] = replace(longer[5], end_s=longer[5].end_s + (0.0 if extra else 0.6))
    added = [replace(longer[5], start_s=longer[5].end_s, end_s=longer[6].start_s)] * extra
    leaves = short[5].end_s
    alignment = Alignment(
        a_s=np.array([0.4, leaves - 0.01, leaves, short[-1].end_s]),
        b_s=np.array([0.4, leaves - 0.01, leaves + 0.6, short[-1].end_s + 0.6]),
        confidence=1.0,
    )
    of_a, of_b = slips(alignment, short, longer[:6] + added + longer[6:])
    assert of_a == ()
    assert len(of_b) == extra
