"""Events that are no plain notes, in dry rooms and others, and what the averages make of them."""

from typing import Any

import pytest

from analysis.results import JudgedNote, Measured, NoteKind, TakeAnalysis
from analysis.take import TakeSettings, analyse_take
from sample_audio.generator import NoteSpec, PhraseSpec, render

ROOM = {"reverb_time_s": 0.6, "snr_db": 30.0}
LOW = {
    "violin": (55, 57, 62),
    "viola": (48, 50, 55),
    "cello": (36, 38, 43),
    "double bass": (28, 31, 33),
}


def measured(*notes: NoteSpec, instrument: Any = "violin", **more: Any) -> TakeAnalysis:
    phrase = render(
        PhraseSpec(notes, tempo=60.0, instrument=instrument, level_dbfs=-24.0, seed=3, **more)
    )
    return analyse_take(phrase.samples, phrase.sample_rate_hz, TakeSettings(instrument))


def kinds(analysis: TakeAnalysis) -> list[NoteKind]:
    return [judged.note.kind for judged in analysis.notes]


def entering(analysis: TakeAnalysis) -> list[JudgedNote]:
    return [j for j in analysis.notes if j.note.kind is NoteKind.NOTE]


@pytest.mark.parametrize("instrument", LOW)
def test_plucked_notes_on_the_low_strings_while_the_ones_before_ring(instrument: str) -> None:
    plucked = [NoteSpec(m, 0.7, articulation="pizzicato") for m in LOW[instrument]]
    found = measured(*plucked, instrument=instrument)
    assert kinds(found) == [NoteKind.PIZZICATO] * 3
    for judged in found.notes:
        assert judged.note.steady_start_s - judged.note.start_s >= 0.035  # the first 40 ms


def test_most_plucked_notes_in_a_room() -> None:
    heard, plucked = 0, 0
    for instrument, midis in LOW.items():
        notes = [NoteSpec(m, 0.7, articulation="pizzicato") for m in midis]
        found = measured(*notes, instrument=instrument, **ROOM)
        heard += len(midis)
        plucked += kinds(found).count(NoteKind.PIZZICATO)
    assert plucked >= 0.5 * heard


@pytest.mark.parametrize("instrument", LOW)
@pytest.mark.parametrize("attack_s", [0.02, 0.05])
def test_bowed_notes_on_the_low_strings_are_not_plucked(instrument: str, attack_s: float) -> None:
    bowed = [NoteSpec(m, 0.7, attack_s=attack_s) for m in LOW[instrument]]
    for room in ({}, ROOM):
        assert NoteKind.PIZZICATO not in kinds(measured(*bowed, instrument=instrument, **room))


@pytest.mark.parametrize(("instrument", "room"), [("violin", {}), ("violin", ROOM), ("cello", {})])
@pytest.mark.parametrize("rate_hz", [8.0, 10.0])
def test_a_tremolo_is_one_event_outside_the_averages(
    instrument: str, room: dict[str, float], rate_hz: float
) -> None:
    low = {"violin": 67, "cello": 43}[instrument]
    found = measured(
        NoteSpec(low, 0.6),
        NoteSpec(low + 2, 1.6, 35.0, articulation="tremolo", repeat_rate_hz=rate_hz),
        NoteSpec(low, 0.8),
        NoteSpec(low + 4, 0.8),
        instrument=instrument,
        **room,
    )
    assert kinds(found) == [NoteKind.NOTE, NoteKind.TREMOLO, NoteKind.NOTE, NoteKind.NOTE]
    assert isinstance(found.intonation, Measured)
    assert found.intonation.value.note_count == 3
    assert found.intonation.value.mean_absolute_cents < 3.0


@pytest.mark.parametrize("rate_hz", [4.0, 5.0, 6.0])
def test_slower_strokes_are_repeated_notes_each_with_its_own_pitch(rate_hz: float) -> None:
    found = measured(
        NoteSpec(67, 0.6),
        NoteSpec(69, 1.6, 12.0, articulation="tremolo", repeat_rate_hz=rate_hz),
        NoteSpec(62, 0.8),
    )
    strokes = found.notes[1:-1]
    assert len(strokes) in (round(1.6 * rate_hz), round(1.6 * rate_hz) + 1)
    for judged in strokes:
        assert judged.note.kind is NoteKind.NOTE
        assert isinstance(judged.deviation, Measured)
        away = abs(judged.deviation.value.deviation_cents - 12.0)
        assert away <= max(judged.deviation.value.uncertainty_cents, 1.5)


@pytest.mark.parametrize("room", [{}, ROOM])
def test_trill_grace_note_and_portamento_stay_out_of_the_averages(room: dict[str, float]) -> None:
    found = measured(
        NoteSpec(69, 0.6),
        NoteSpec(71, 1.5, articulation="trill", trill_cents=200.0, repeat_rate_hz=6.5),
        NoteSpec(67, 0.6),
        NoteSpec(74, 0.08),
        NoteSpec(73, 1.0, articulation="legato", glide_s=0.015),
        NoteSpec(62, 0.8),
        NoteSpec(69, 1.2, articulation="slide_in", glide_s=0.4),
        **room,
    )
    assert kinds(found) == [
        NoteKind.NOTE, NoteKind.TRILL, NoteKind.NOTE, NoteKind.GRACE, NoteKind.NOTE,
        NoteKind.NOTE, NoteKind.SLIDE, NoteKind.NOTE,
    ]  # fmt: skip
    assert isinstance(found.intonation, Measured)
    assert found.intonation.value.note_count == len(entering(found)) == 5
    assert found.intonation.value.mean_absolute_cents < 3.0
