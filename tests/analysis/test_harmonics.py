"""Harmonics: told by the player alone, judged by the pitch that sounds."""

import pytest

from analysis.results import Measured, NoteKind
from analysis.take import TakeSettings, analyse_take
from sample_audio.generator import NoteSpec, Phrase, PhraseSpec, render


@pytest.fixture(scope="module")
def phrase() -> Phrase:
    # E6 is the third partial of an open A string, A6 of a D string; 'harmonic' is soft and pure.
    notes = (
        NoteSpec(69, 0.8, 2.0),
        NoteSpec(71, 0.8, -3.0),
        NoteSpec(88, 1.0, 12.0, articulation="harmonic"),
        NoteSpec(73, 0.8, 4.0),
        NoteSpec(93, 1.0, -14.0, articulation="harmonic"),
        NoteSpec(74, 0.8, 1.0),
    )
    return render(PhraseSpec(notes, tempo=60.0, level_dbfs=-24.0, seed=12))


def measured(phrase: Phrase, *names: str):
    settings = TakeSettings("violin", harmonics=names)
    return analyse_take(phrase.samples, phrase.sample_rate_hz, settings)


def test_a_declared_harmonic_keeps_its_sounding_pitch_and_stays_out_of_the_averages(
    phrase: Phrase,
) -> None:
    plain, declared = measured(phrase), measured(phrase, "E6", "A6")
    assert {n.note.kind for n in plain.notes} == {NoteKind.NOTE}
    kinds = [n.note.kind for n in declared.notes]
    assert [k is NoteKind.HARMONIC for k in kinds] == [False, False, True, False, True, False]
    first, second = (n for n in declared.notes if n.note.kind is NoteKind.HARMONIC)
    assert (first.name, second.name) == ("E6", "A6")
    for note, cents in ((first, 12.0), (second, -14.0)):
        assert isinstance(note.deviation, Measured)
        assert note.deviation.value.deviation_cents == pytest.approx(cents, abs=1.5)
    assert isinstance(plain.intonation, Measured)
    assert isinstance(declared.intonation, Measured)
    assert plain.intonation.value.note_count == 6
    assert declared.intonation.value.note_count == 4
    assert declared.intonation.value.mean_absolute_cents < 4.0
    assert declared.intonation.value.measured_share == pytest.approx(4 / 6)


def test_a_whole_passage_of_harmonics(phrase: Phrase) -> None:
    assert {n.note.kind for n in measured(phrase, "all").notes} == {NoteKind.HARMONIC}


def test_what_is_declared_is_told_with_the_result(phrase: Phrase) -> None:
    assert measured(phrase, "E6").provenance.parameters["harmonics"] == "E6"
    assert "harmonics" not in measured(phrase).provenance.parameters


def test_a_name_that_is_no_note_is_refused() -> None:
    with pytest.raises(ValueError, match="H9"):
        TakeSettings("violin", harmonics=("H9",)).checked()
