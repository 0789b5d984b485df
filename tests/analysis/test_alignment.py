import mir_eval
import numpy as np
import pytest

from analysis.alignment import align, left_out_spans, map_time, map_time_back
from analysis.results import (
    Alignment,
    Measured,
    Note,
    NoteKind,
    NotePitch,
    NotMeasurable,
    Provenance,
    Reason,
)
from analysis.stopping import Stopped

RATE_HZ = 22_050
MAJOR = np.array([0, 2, 4, 5, 7, 9, 11])
MADE_HERE = Provenance("test")


def melody(seed, count=40):
    """Note numbers and lengths in seconds of a wandering tune in G."""
    rng = np.random.default_rng(seed)
    degree = np.clip(np.cumsum(rng.integers(-3, 4, count)) + 7, 0, 20)
    return 55 + 12 * (degree // 7) + MAJOR[degree % 7], rng.choice([0.15, 0.3, 0.3, 0.6], count)


def starts(lengths, first_s=0.3):
    return first_s + np.concatenate(([0.0], np.cumsum(lengths)))


def rubato(lengths, seed):
    rng = np.random.default_rng(seed)
    slow = np.exp(0.15 * np.sin(np.linspace(0, 20, lengths.size)))
    return lengths * slow * np.exp(0.03 * rng.standard_normal(lengths.size))


def sound(midi, start_s, *, cents=0.0, gain=1.0, rate_hz=RATE_HZ, tail_s=0.5):
    """Harmonic tones with soft attacks and a little noise."""
    rng = np.random.default_rng(0)
    samples = 1e-3 * rng.standard_normal(round((start_s[-1] + tail_s) * rate_hz) + rate_hz)
    for note, begin, end in zip(midi, start_s[:-1], start_s[1:], strict=True):
        time = np.arange(round((end - begin) * rate_hz)) / rate_hz
        frequency = 440 * 2 ** ((note - 69 + cents / 100) / 12)
        phase = 2 * np.pi * frequency * time
        tone = sum(np.sin(k * phase) / k for k in range(1, 9))
        envelope = np.clip(np.minimum(time / 0.04, (time[-1] - time) / 0.04), 0, 1)
        offset = round(begin * rate_hz)
        samples[offset : offset + time.size] += 0.2 * gain * envelope * tone
    return samples


def notes(midi, start_s):
    return [
        Note(
            start_s=float(begin),
            end_s=float(end),
            steady_start_s=float(begin),
            steady_end_s=float(end),
            kind=NoteKind.NOTE,
            level_dbfs=-20.0,
            pitch=Measured(NotePitch(440 * 2 ** ((float(number) - 69) / 12), 1.0, 0.0), MADE_HERE),
            vibrato=Measured(None, MADE_HERE),
        )
        for number, begin, end in zip(midi, start_s[:-1], start_s[1:], strict=True)
    ]


def aligned(*args, **kwargs):
    result = align(*args, **kwargs)
    assert isinstance(result, Measured), result
    return result.value


@pytest.mark.parametrize("ratio", [0.5, 0.8, 1.25, 2.0])
def test_takes_at_other_tempos_with_rubato(ratio):
    midi, lengths = melody(round(100 * ratio))
    start_a, start_b = starts(lengths), starts(ratio * rubato(lengths, 1), 1.4)
    alignment = aligned(sound(midi, start_a), RATE_HZ, sound(midi, start_b, gain=0.2), RATE_HZ)
    found = map_time(alignment, start_a[:-1])
    median, mean = mir_eval.alignment.absolute_error(start_b[:-1], np.maximum.accumulate(found))
    print(f"\nratio {ratio}: median {1e3 * median:.1f} ms, mean {1e3 * mean:.1f} ms")
    assert median < 0.010
    assert np.all(np.diff(alignment.a_s) >= 0)
    assert np.all(np.diff(alignment.b_s) >= 0)


@pytest.mark.parametrize("ratio", [0.5, 1.1, 2.0])
def test_with_notes_the_map_is_exact_at_their_onsets(ratio):
    midi, lengths = melody(round(10 * ratio) + 3)
    start_a, start_b = starts(lengths), starts(ratio * rubato(lengths, 2), 1.4)
    alignment = aligned(
        sound(midi, start_a),
        RATE_HZ,
        sound(midi, start_b),
        RATE_HZ,
        notes_a=notes(midi, start_a),
        notes_b=notes(midi, start_b),
    )
    error = np.abs(map_time(alignment, start_a[:-1]) - start_b[:-1])
    assert np.median(error) < 1e-6
    assert np.percentile(error, 95) < 0.04
    middle_a, middle_b = (start_a[1:] + start_a[:-1]) / 2, (start_b[1:] + start_b[:-1]) / 2
    assert np.median(np.abs(map_time_back(alignment, middle_b) - middle_a)) < 0.01


def test_mir_eval_alignment_vector():
    # mir_eval.alignment: median .035, mean .1175, share .75 within 0.3 s.
    reference, estimate = np.array([1.0, 2.0, 3.0, 4.0]), np.array([1.02, 2.05, 3.4, 4.0])
    exact = Alignment(a_s=reference, b_s=estimate, confidence=1.0)
    found = map_time(exact, reference)
    assert mir_eval.alignment.absolute_error(reference, found) == pytest.approx((0.035, 0.1175))
    assert mir_eval.alignment.percentage_correct(reference, found) == pytest.approx(0.75)


@pytest.mark.parametrize(("rate_a_hz", "rate_b_hz"), [(8_000, 44_100), (48_000, 11_025)])
def test_sample_rates_channels_and_tunings_may_differ(rate_a_hz, rate_b_hz):
    midi, lengths = melody(5, 25)
    start_a, start_b = starts(lengths), starts(1.2 * lengths)
    one = sound(midi, start_a, rate_hz=rate_a_hz)
    other = sound(midi, start_b, rate_hz=rate_b_hz, cents=-45)
    alignment = aligned(one, rate_a_hz, np.column_stack((other, 0.5 * other)), rate_b_hz)
    assert np.median(np.abs(map_time(alignment, start_a[:-1]) - start_b[:-1])) < 0.015


@pytest.mark.parametrize("seed", range(4))
def test_other_music_is_not_aligned(seed):
    one, other = melody(seed), melody(seed + 50)
    result = align(
        sound(one[0], starts(one[1])), RATE_HZ, sound(other[0], starts(other[1])), RATE_HZ
    )
    assert isinstance(result, NotMeasurable)
    assert result.reason is Reason.NO_MATCH


def test_noise_is_not_aligned():
    midi, lengths = melody(1)
    noise = 0.1 * np.random.default_rng(0).standard_normal(10 * RATE_HZ)
    result = align(sound(midi, starts(lengths)), RATE_HZ, noise, RATE_HZ)
    assert isinstance(result, NotMeasurable)
    assert result.reason is Reason.NO_MATCH


def test_half_of_a_take_finds_its_place():
    midi, lengths = melody(7)
    start_a, start_b = starts(lengths), starts(lengths[20:])
    alignment = aligned(sound(midi, start_a), RATE_HZ, sound(midi[20:], start_b), RATE_HZ)
    error = np.abs(map_time_back(alignment, start_b[:-1]) - start_a[20:-1])
    assert np.median(error) < 0.01
    assert alignment.a_s[0] == pytest.approx(start_a[20], abs=0.65)  # to within a note


@pytest.mark.parametrize(
    ("played", "only_in_b"),
    [
        (np.r_[0:22, 14:40], True),  # a bar repeated
        (np.r_[0:14, 24:40], False),  # a bar skipped
    ],
)
def test_a_repeated_or_skipped_bar_is_left_out_and_shown(played, only_in_b):
    midi, lengths = melody(8)
    start_a, start_b = starts(lengths), starts(1.1 * lengths[played])
    alignment = aligned(sound(midi, start_a), RATE_HZ, sound(midi[played], start_b), RATE_HZ)
    only_a, only_b = left_out_spans(alignment)
    spans, others = (only_b, only_a) if only_in_b else (only_a, only_b)
    length = np.sum(1.1 * lengths[14:22]) if only_in_b else np.sum(lengths[14:24])
    assert sum(end - start for start, end in spans) == pytest.approx(length, rel=0.15)
    assert others == []
    assert np.median(np.abs(map_time(alignment, start_a[30:-1]) - start_b[-11:-1])) < 0.01


def test_too_little_to_align():
    midi, lengths = melody(1, 10)
    take = sound(midi, starts(lengths))
    silent = align(take, RATE_HZ, np.zeros(RATE_HZ), RATE_HZ)
    short = align(take, RATE_HZ, sound([60], np.array([0.3, 0.6])), RATE_HZ)
    empty = align(np.zeros(0), RATE_HZ, take, RATE_HZ)
    assert isinstance(silent, NotMeasurable)
    assert silent.reason is Reason.SILENT
    assert isinstance(short, NotMeasurable)
    assert isinstance(empty, NotMeasurable)
    broken = align(take, RATE_HZ, np.full(RATE_HZ, np.nan), RATE_HZ)
    assert isinstance(broken, NotMeasurable)
    assert broken.reason is Reason.INPUT_BROKEN


def test_outside_the_aligned_part_the_offset_is_kept():
    alignment = Alignment(np.array([1.0, 2.0]), np.array([5.0, 7.0]), 1.0)
    assert map_time(alignment, np.array([0.0, 1.5, 3.0])) == pytest.approx([4.0, 6.0, 8.0])
    assert map_time_back(alignment, np.array([4.0, 6.0, 8.0])) == pytest.approx([0.0, 1.5, 3.0])


def test_progress_rises_and_a_stop_is_heard():
    midi, lengths = melody(2, 12)
    take, told = sound(midi, starts(lengths)), []
    aligned(take, RATE_HZ, take, RATE_HZ, progress=told.append)
    assert told == sorted(told)
    assert told[-1] == 1.0
    with pytest.raises(Stopped):
        align(take, RATE_HZ, take, RATE_HZ, should_stop=lambda: True)


def test_a_note_that_was_read_as_its_neighbour_keeps_its_place():
    _, lengths = melody(5)
    midi = 60 + MAJOR[np.cumsum(np.random.default_rng(5).choice([2, 3, 5], 40)) % 7]
    start_a, start_b = starts(lengths), starts(1.6 * lengths, 1.0)
    heard_a = notes(midi, start_a)
    misread = [i for i in range(3, 37) if len({*midi[i - 1 : i + 3]}) == 4][::6]
    assert len(misread) >= 2
    wrong = notes(np.where(np.isin(np.arange(40), misread), np.roll(midi, -1), midi), start_a)
    for i in misread:
        heard_a[i] = wrong[i]
    alignment = aligned(
        sound(midi, start_a), RATE_HZ, sound(midi, start_b), RATE_HZ,
        notes_a=heard_a, notes_b=notes(midi, start_b),
    )  # fmt: skip
    error = np.abs(map_time(alignment, start_a[:-1]) - start_b[:-1])
    assert np.max(error[misread]) < 0.01
