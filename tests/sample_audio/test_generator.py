"""The generator's truth, held against measures that share nothing with it.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

import itertools
from dataclasses import replace

import numpy as np
import parselmouth
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import signal

from sample_audio.generator import NoteSpec, PhraseSpec, place_phrase, render, target_hz
from sample_audio.room import with_room

RATE = 48_000
DRY = PhraseSpec(notes=(), bow_noise_db=None)


def cents(hz, against_hz):
    return 1200.0 * np.log2(np.asarray(hz) / against_hz)


def praat_f0(phrase, floor_hz, ceiling_hz):
    """Pitch by Praat's autocorrelation (Boersma 1993), an independent reference."""
    sound = parselmouth.Sound(phrase.samples, phrase.sample_rate_hz)
    pitch = sound.to_pitch_ac(
        time_step=0.01, pitch_floor=floor_hz, pitch_ceiling=ceiling_hz, very_accurate=True
    )
    found = pitch.selected_array["frequency"]
    return pitch.xs(), np.where(found > 0, found, np.nan)


@pytest.mark.parametrize(
    ("instrument", "midis", "floor_hz"),
    [
        ("violin", (55, 69, 76, 93), 120.0),
        ("viola", (48, 62, 72, 79), 80.0),
        ("cello", (36, 50, 62, 69), 40.0),
        ("double bass", (28, 38, 43, 55), 25.0),
    ],
)
def test_the_sounding_pitch_is_the_true_one(instrument, midis, floor_hz):
    notes = tuple(NoteSpec(m, 1, deviation_cents=7.0 * (-1) ** i) for i, m in enumerate(midis))
    phrase = render(replace(DRY, notes=notes, tempo=60.0, instrument=instrument))
    time_s, found_hz = praat_f0(phrase, floor_hz, 2000.0)
    for note in phrase.truth.notes:
        middle = (time_s > note.start_s + 0.2) & (time_s < note.end_s - 0.2)
        assert np.nanmedian(cents(found_hz[middle], note.centre_hz)) == pytest.approx(0, abs=0.3)


def test_vibrato_keeps_its_centre_rate_and_extent():
    note = NoteSpec(69, 2, 7.0, vibrato_rate_hz=6.0, vibrato_extent_cents=20.0)
    phrase = render(replace(DRY, notes=(note,), tempo=60.0))
    time_s, found_hz = praat_f0(phrase, 200.0, 1000.0)
    cycles = (time_s >= 0.5) & (time_s < 0.5 + 8 / 6.0)
    swing = cents(found_hz[cycles], 440.0)
    assert swing.mean() == pytest.approx(7.0, abs=0.5)
    # Praat averages over its window, which eats a little of the extent.
    assert (swing.max() - swing.min()) / 2 == pytest.approx(20.0, abs=2.0)
    true = cents(phrase.truth.f0_hz[RATE // 2 : RATE // 2 + RATE], 440.0)
    assert (true.max() - true.min()) / 2 == pytest.approx(20.0, abs=0.01)
    crossings = np.flatnonzero(np.diff(np.sign(true - 7.0)))
    assert np.diff(crossings).mean() * 2 / RATE == pytest.approx(1 / 6.0, rel=1e-3)


def test_phase_is_the_running_sum_of_the_true_frequency():
    notes = (NoteSpec(67, 1, vibrato_rate_hz=5.5, vibrato_extent_cents=30), NoteSpec(67, 1))
    phrase = render(replace(DRY, notes=notes, tempo=60.0, bow_change_s=0.0))
    sounding = np.flatnonzero(np.isfinite(phrase.truth.f0_hz))
    f0 = phrase.truth.f0_hz[sounding]
    # Against a carrier of the true phase only slow amplitudes remain: no drift in angle.
    carrier = np.exp(-2j * np.pi * np.cumsum(f0) / RATE)
    low = signal.sosfiltfilt(
        signal.butter(4, 40.0, fs=RATE, output="sos"), phrase.samples[sounding] * carrier
    )
    angle = np.unwrap(np.angle(low[RATE // 4 : -RATE // 4]))
    assert np.ptp(angle) < 0.05


def test_rests_have_no_pitch_and_no_level():
    phrase = render(
        replace(DRY, notes=(NoteSpec(69, 1), NoteSpec(None, 1), NoteSpec(69, 1)), tempo=60)
    )
    rest = (phrase.truth.time_s > 1.4) & (phrase.truth.time_s < 2.2)
    assert np.isnan(phrase.truth.f0_hz[rest]).all()
    assert np.isneginf(phrase.truth.level_dbfs[rest]).all()
    assert not phrase.samples[rest].any()


def envelope(samples, f0_hz):
    """Amplitude of the fundamental alone, by complex demodulation."""
    t = np.arange(samples.size) / RATE
    width = signal.firwin(2 * round(1.5 * RATE / f0_hz) + 1, 0.5 * f0_hz, fs=RATE)
    return np.abs(signal.convolve(samples * np.exp(-2j * np.pi * f0_hz * t), width, mode="same"))


def test_a_note_starts_and_ends_where_it_passes_half_its_amplitude():
    note = NoteSpec(81, 1, attack_s=0.06, release_s=0.1)
    phrase = render(replace(DRY, notes=(note,), tempo=60.0))
    level = envelope(phrase.samples, phrase.truth.notes[0].centre_hz)
    above = np.flatnonzero(level > 0.5 * np.median(level[RATE // 2 : RATE]))
    assert above[0] / RATE == pytest.approx(phrase.truth.notes[0].start_s, abs=0.001)
    assert above[-1] / RATE == pytest.approx(phrase.truth.notes[0].end_s, abs=0.001)


def test_a_legato_note_starts_where_the_pitch_passes_the_middle():
    notes = (NoteSpec(69, 1), NoteSpec(71, 1, articulation="slide_in", glide_s=0.2))
    truth = render(replace(DRY, notes=notes, tempo=60.0)).truth
    at = round(truth.notes[1].start_s * RATE)
    assert cents(truth.f0_hz[at], 440.0) == pytest.approx(100.0, abs=0.1)
    assert np.isfinite(truth.f0_hz[at - RATE // 4 : at + RATE // 4]).all()
    assert truth.notes[0].end_s == truth.notes[1].start_s
    assert truth.notes[0].steady_end_s == pytest.approx(truth.notes[1].start_s - 0.1)


def test_a_bow_change_on_one_pitch_dips_without_changing_the_pitch():
    truth = render(replace(DRY, notes=(NoteSpec(69, 1), NoteSpec(69, 1)), tempo=60.0)).truth
    between = (truth.time_s > 1.1) & (truth.time_s < 1.5)
    assert np.allclose(truth.f0_hz[between], 440.0)
    dip_db = truth.level_dbfs[between].max() - truth.level_dbfs[between].min()
    assert 6.0 < dip_db < 20.0


@pytest.mark.parametrize("level_db", [0.0, -12.0])
@pytest.mark.parametrize("instrument", ["violin", "double bass"])
def test_the_level_is_the_rms_that_was_asked_for(level_db, instrument):
    spec = replace(DRY, notes=(NoteSpec(57, 4, level_db=level_db),), tempo=60.0)
    phrase = render(replace(spec, instrument=instrument))
    steady = slice(RATE, 3 * RATE)
    rms_dbfs = 10.0 * np.log10(np.mean(phrase.samples[steady] ** 2))
    assert rms_dbfs == pytest.approx(-20.0 + level_db, abs=0.05)
    assert phrase.truth.level_dbfs[steady] == pytest.approx(rms_dbfs, abs=0.05)


def test_hairpins_are_linear_in_db_between_their_points():
    spec = replace(DRY, notes=(NoteSpec(69, 8),), tempo=60.0, dynamics=((0, -12), (4, 0), (8, -6)))
    truth = render(spec).truth
    for at_s, level_dbfs in ((2.3, -26.0), (4.3, -20.0), (6.3, -23.0)):
        assert truth.level_dbfs[round(at_s * RATE)] == pytest.approx(level_dbfs, abs=0.05)


def test_double_stops_sound_both_pitches_at_one_notes_level():
    note = NoteSpec(55, 4, second_midi=62, second_deviation_cents=-2.0)
    phrase = render(replace(DRY, notes=(note,), tempo=60.0))
    steady = phrase.samples[RATE : 3 * RATE]
    spectrum = np.abs(np.fft.rfft(steady * np.hanning(steady.size), 8 * steady.size))
    hz = np.fft.rfftfreq(8 * steady.size, 1 / RATE)
    for expected_hz in (195.9977, 293.6648 * 2 ** (-2 / 1200)):
        near = np.abs(hz - expected_hz) < 5.0
        assert cents(hz[near][np.argmax(spectrum[near])], expected_hz) == pytest.approx(0, abs=1)
    assert 10 * np.log10(np.mean(steady**2)) == pytest.approx(-20.0, abs=0.1)
    assert phrase.truth.second_f0_hz[2 * RATE] == pytest.approx(293.6648 * 2 ** (-2 / 1200))


def test_a_pluck_decays_and_a_harmonic_is_nearly_a_sine():
    notes = (
        NoteSpec(69, 2, articulation="pizzicato"),
        NoteSpec(69, 2, articulation="harmonic"),
        NoteSpec(69, 2),
    )
    phrase = render(replace(DRY, notes=notes, tempo=60.0))
    level = phrase.truth.level_dbfs
    assert level[round(0.4 * RATE)] - level[round(1.4 * RATE)] > 10.0

    def overtone_db(start_s):
        part = phrase.samples[round(start_s * RATE) : round((start_s + 1) * RATE)]
        spectrum = np.abs(np.fft.rfft(part * np.hanning(part.size)))
        return 20 * np.log10(spectrum[878:883].max() / spectrum[438:443].max())

    assert overtone_db(2.8) < overtone_db(4.8) - 9.0


def test_trill_tremolo_scoop_and_drift_do_what_they_say():
    notes = (
        NoteSpec(69, 2, articulation="trill", trill_cents=200, repeat_rate_hz=6),
        NoteSpec(69, 2, articulation="tremolo", repeat_rate_hz=8),
        NoteSpec(69, 2, scoop_cents=-60),
        NoteSpec(69, 2, drift_cents=24),
    )
    truth = render(replace(DRY, notes=notes, tempo=60.0)).truth
    trill, tremolo, scoop, drift = (
        (truth.f0_hz[a:b], truth.level_dbfs[a:b])
        for a, b in ((round(n.start_s * RATE), round(n.end_s * RATE)) for n in truth.notes)
    )
    assert cents(trill[0], 440.0).max() == pytest.approx(200.0, abs=0.5)
    assert cents(trill[0], 440.0).min() == pytest.approx(0.0, abs=0.5)
    strokes = np.flatnonzero(np.diff(np.sign(tremolo[1] - (tremolo[1].max() - 3.0))) > 0)
    assert len(strokes) == pytest.approx(16, abs=1)
    assert cents(scoop[0][0], 440.0) < -15.0
    assert cents(scoop[0][round(0.08 * RATE)], 440.0) == pytest.approx(0.0, abs=1.5)
    assert cents(drift[0][[0, -1]], 440.0) == pytest.approx([-12.0, 12.0], abs=0.2)


def test_no_partial_folds_back():
    spec = replace(DRY, notes=(NoteSpec(88, 2),), tempo=60.0, sample_rate_hz=8000)
    phrase = render(spec)
    part = phrase.samples[4000:12000]
    spectrum = np.abs(np.fft.rfft(part * np.kaiser(part.size, 20)))
    hz = np.fft.rfftfreq(part.size, 1 / 8000)
    partials = target_hz(88) * np.arange(1, 4)
    elsewhere = np.min(np.abs(hz[:, np.newaxis] - partials), axis=1) > 20.0
    assert 20 * np.log10(spectrum[elsewhere].max() / spectrum.max()) < -80.0


def test_noise_has_the_ratio_and_the_floor_that_was_asked_for():
    notes = (NoteSpec(69, 2), NoteSpec(None, 2))
    clean = render(replace(DRY, notes=notes, tempo=60.0))
    noisy = render(replace(DRY, notes=notes, tempo=60.0, snr_db=30.0))
    heard = np.isfinite(clean.truth.f0_hz)
    noise = noisy.samples - clean.samples
    ratio = np.mean(clean.samples[heard] ** 2) / np.mean(noise**2)
    assert 10 * np.log10(ratio) == pytest.approx(30.0, abs=0.1)
    floor = render(replace(DRY, notes=notes, tempo=60.0, room_noise_dbfs=-60.0))
    rest = floor.samples[round(2.6 * RATE) : round(4.2 * RATE)]
    assert 10 * np.log10(np.mean(rest**2)) == pytest.approx(-60.0, abs=1.5)


@pytest.mark.parametrize("reverb_time_s", [0.4, 1.2])
def test_the_room_decays_as_asked(reverb_time_s):
    """Decay by backward integration of the impulse response, as ISO 3382-1 does it.

    Read from -15 to -35 dB, below the early reflections.
    """
    impulse = np.zeros(2 * RATE)
    impulse[RATE // 4] = 1.0
    spec = replace(DRY, reverb_time_s=reverb_time_s, reverb_db=-6.0)
    answer = with_room(impulse, spec) - impulse
    energy = np.cumsum(answer[::-1] ** 2)[::-1]
    decay_db = 10 * np.log10(energy / energy[0] + 1e-12)
    first, last = np.searchsorted(-decay_db, [15.0, 35.0])
    slope = np.polyfit(np.arange(first, last) / RATE, decay_db[first:last], 1)[0]
    assert -60.0 / slope == pytest.approx(reverb_time_s, rel=0.05)
    assert 10 * np.log10(energy[0]) == pytest.approx(-6.0, abs=0.01)
    assert np.allclose(answer[: RATE // 4], 0.0, atol=1e-12)


def test_the_same_spec_gives_the_same_samples_and_another_seed_others():
    spec = PhraseSpec(
        notes=(NoteSpec(69, 1), NoteSpec(71, 1)),
        room_noise_dbfs=-60.0,
        reverb_time_s=0.4,
        pitch_jitter_cents=2.0,
    )
    first, again, other = render(spec), render(spec), render(replace(spec, seed=1))
    assert np.array_equal(first.samples, again.samples)
    assert not np.array_equal(first.samples, other.samples)


def test_pitch_jitter_leaves_the_centre_where_it_is():
    spec = replace(DRY, notes=(NoteSpec(69, 4, 5.0),), tempo=60.0, pitch_jitter_cents=3.0)
    truth = render(spec).truth
    note = truth.notes[0]
    inside = (truth.time_s >= note.start_s) & (truth.time_s <= note.end_s)
    moved = cents(truth.f0_hz[inside], 440.0)
    assert moved.mean() == pytest.approx(5.0, abs=1e-6)
    assert 1.0 < moved.std() < 3.5


def test_places_are_the_same_without_sounding():
    spec = replace(DRY, notes=(NoteSpec(69, 1), NoteSpec(71, 1)), interval_spread_percent=3.0)
    assert place_phrase(spec) == render(spec).truth.notes


@pytest.mark.parametrize(
    ("change", "word"),
    [
        ({"level_dbfs": 0.0}, "clips"),
        ({"tempo": 0.0}, "positive"),
        ({"tempo": ((0.0, 60.0), (0.0, 70.0))}, "increasing"),
        ({"tempo": ((0.0, 60.0),), "tempo_drift_bpm_per_min": 3.0}, "drift"),
        ({"tempo": 60.0, "tempo_drift_bpm_per_min": -900.0}, "standstill"),
        ({"interval_spread_percent": 200.0}, "wide"),
        ({"bow_change_s": 2.0}, "before it starts"),
    ],
)
def test_what_cannot_be_played_is_refused(change, word):
    notes = (NoteSpec(69, 1), NoteSpec(71, 1), NoteSpec(72, 4))
    with pytest.raises(ValueError, match=word):
        render(replace(DRY, **{"notes": notes, "tempo": 60.0, **change}))


SOME_NOTE = st.builds(
    NoteSpec,
    midi=st.one_of(st.none(), st.integers(48, 88)),
    beats=st.sampled_from([0.125, 0.25, 0.5, 1.0, 1.5]),
    deviation_cents=st.floats(-50, 50),
    vibrato_rate_hz=st.floats(4, 8),
    vibrato_extent_cents=st.floats(0, 40),
    scoop_cents=st.sampled_from([0.0, -40.0]),
    attack_s=st.floats(0.005, 0.15),
    articulation=st.sampled_from(
        ["detache", "legato", "slide_in", "staccato", "pizzicato", "harmonic", "tremolo", "trill"]
    ),
    glide_s=st.floats(0.01, 0.1),
    second_midi=st.one_of(st.none(), st.integers(48, 88)),
)


@settings(max_examples=40, deadline=None)
@given(st.lists(SOME_NOTE, min_size=1, max_size=8), st.integers(0, 1000))
def test_whatever_is_played_the_truth_holds_together(notes, seed):
    spec = PhraseSpec(tuple(notes), tempo=75.0, seed=seed, sample_rate_hz=16_000, level_dbfs=-30)
    phrase = render(spec)
    truth = phrase.truth
    assert np.isfinite(phrase.samples).all()
    assert truth.f0_hz.shape == truth.level_dbfs.shape == truth.time_s.shape == phrase.samples.shape
    assert len(truth.notes) == sum(note.midi is not None for note in notes)
    for note, following in itertools.zip_longest(truth.notes, truth.notes[1:]):
        assert note.start_s < note.end_s
        assert note.steady_start_s <= note.steady_end_s
        assert following is None or note.end_s <= following.start_s + 1e-9
        if note.articulation == "trill" or notes[note.index].scoop_cents:
            continue
        steady = (truth.time_s > note.steady_start_s) & (truth.time_s < note.steady_end_s)
        off = np.abs(cents(truth.f0_hz[steady], note.centre_hz))
        assert not off.size or off.max() <= note.vibrato_extent_cents + 1e-6
