"""Markers proposed by measurements, and listening before looking."""

import re
from dataclasses import replace
from datetime import timedelta

import pytest
import soundfile

from app.journal.failures import PlainFailure
from app.journal.records import PlayingSettings
from app.services.first_listening import hidden
from app.services.reading_views import NoReading, Reading
from app.services.rows import HIDDEN
from app.store.repair import repair
from app.wiring import open_workbench
from sample_audio.generator import NoteSpec, PhraseSpec, render

A_MINOR = PlayingSettings("violin", temperament="equal", tonic="A")
# What is wrong is written into the sound: E5 (76) is 33 cents flat three times, B4 (71)
# sharp once, everything else right.
TUNE = (69, 76, 71, 72, 69, 76, 74, 72, 71, 76, 74, 72, 69, 71, 72, 69)


def _cents(at: int, midi: int) -> float:
    if midi == 76:
        return -33.0 + (at - 5) / 4
    return 30.0 if at == 2 else 0.0


@pytest.fixture(scope="module")
def wrong_notes(tmp_path_factory):
    notes = tuple(
        NoteSpec(midi, 1.0, deviation_cents=_cents(at, midi)) for at, midi in enumerate(TUNE)
    )
    sound = render(PhraseSpec(notes, tempo=90.0, seed=3, instrument="violin"))
    path = tmp_path_factory.mktemp("sound") / "wrong notes.wav"
    soundfile.write(path, sound.samples, sound.sample_rate_hz, subtype="PCM_24")
    return path, sound


@pytest.fixture
def lose_database(bench, journal_dir, clock):
    """Lose the database and its backups, and make it again from the sidecars."""

    def lose() -> None:
        bench.close()
        for file in (*journal_dir.glob("journal.db*"), *(journal_dir / "backups").glob("*")):
            file.unlink()
        assert repair(journal_dir, clock=clock).rebuilt

    return lose


@pytest.fixture
def again_id(add_take, wrong_notes, tmp_path):
    """Another take of the same tune, a little softer."""
    path = tmp_path / "again.wav"
    samples, rate = soundfile.read(wrong_notes[0])
    soundfile.write(path, 0.9 * samples, rate, subtype="PCM_24")
    return add_take(path, "Study: Tune").id


@pytest.fixture
def take_id(bench, add_take, wrong_notes):
    passage = bench.passages.add("Study", "Tune", "", A_MINOR)
    row = add_take(wrong_notes[0], "Study: Tune")
    assert row.passage_id == passage.id
    bench.measuring.measure(row.id)
    return row.id


def test_the_errors_in_the_sound_are_suggested_with_their_evidence(bench, take_id, wrong_notes):
    view = bench.suggesting.for_take(take_id)
    by_key = {row.key: row for row in view.rows}
    flat = by_key["flat:E5"]
    assert flat.category == "intonation"
    assert re.fullmatch(r"E5 3\d ± \d+ cents flat, three times", flat.text)
    assert flat.reading.value == pytest.approx(-33.0, abs=1.5)
    truth = [note for note in wrong_notes[1].truth.notes if TUNE[note.index] == 76]
    for (start_s, end_s), note in zip(flat.places, truth, strict=True):
        assert start_s < (note.start_s + note.end_s) / 2 < end_s
    assert len(flat.evidence) == 4
    assert flat.evidence[-1].startswith("3 of 3 measured notes on E5")
    sharp = by_key["sharp:B4"]
    assert re.fullmatch(r"B4 \d+ ± \d+ cents sharp", sharp.text)
    assert sharp.evidence[-1].startswith("1 of 3 measured notes on B4")
    assert set(by_key) == {"flat:E5", "sharp:B4"}


def test_accepting_places_the_marker_and_undo_offers_it_again(bench, take_id):
    placed = bench.suggesting.accept(take_id, "flat:E5", text="fourth finger")
    assert placed.text == "fourth finger"
    assert bench.marking.for_take(take_id) == (placed,)
    assert "flat:E5" not in {row.key for row in bench.suggesting.for_take(take_id).rows}
    bench.marking.undo()
    assert bench.marking.for_take(take_id) == ()
    assert "flat:E5" in {row.key for row in bench.suggesting.for_take(take_id).rows}
    assert "three times" in bench.suggesting.accept(take_id, "flat:E5").text


def test_what_the_player_marked_already_is_not_offered(bench, take_id):
    flat = next(r for r in bench.suggesting.for_take(take_id).rows if r.key == "flat:E5")
    bench.marking.add(take_id, flat.places[1][0] + 0.2, category="sound")
    assert {row.key for row in bench.suggesting.for_take(take_id).rows} == {"sharp:B4"}


def test_a_dismissal_is_remembered_for_the_passage(bench, take_id, again_id):
    bench.suggesting.dismiss(take_id, "flat:E5")
    bench.measuring.measure(again_id)
    for each in (take_id, again_id):
        view = bench.suggesting.for_take(each)
        assert {row.key for row in view.rows} == {"sharp:B4"}
        assert view.dismissed_count == 1


def test_a_dismissal_outlives_the_database(bench, take_id, lose_database, journal_dir, clock):
    bench.suggesting.dismiss(take_id, "flat:E5")
    lose_database()
    with open_workbench(journal_dir, clock=clock) as rebuilt:
        rebuilt.measuring.measure(take_id)
        assert {row.key for row in rebuilt.suggesting.for_take(take_id).rows} == {"sharp:B4"}
        assert rebuilt.suggesting.bring_back(take_id) == 1
        assert len(rebuilt.suggesting.for_take(take_id).rows) == 2


def test_a_dismissal_can_be_undone_and_done_again(bench, take_id):
    bench.suggesting.dismiss(take_id, "flat:E5")
    assert bench.marking.undo() == "suggestion put aside"
    assert len(bench.suggesting.for_take(take_id).rows) == 2
    bench.marking.redo()
    assert len(bench.suggesting.for_take(take_id).rows) == 1


def test_at_most_five_are_offered_unless_all_are_asked_for(bench, add_take, tmp_path):
    notes = tuple(
        NoteSpec(midi, 1.0, deviation_cents=33.0 if at % 2 else -33.0)
        for at, midi in enumerate((69, 71, 72, 74, 76, 77, 79, 81))
    )
    sound = render(PhraseSpec(notes, tempo=80.0, seed=5, instrument="violin"))
    path = tmp_path / "all wrong.wav"
    soundfile.write(path, sound.samples, sound.sample_rate_hz, subtype="PCM_24")
    bench.passages.add("Study", "Tune", "", A_MINOR)
    row = add_take(path, "Study: Tune")
    bench.measuring.measure(row.id)
    everything = bench.suggesting.for_take(row.id, show_all=True)
    assert len(everything.rows) > 5
    few = bench.suggesting.for_take(row.id)
    assert few.rows == everything.rows[:5]
    assert few.more_count == len(everything.rows) - 5


def test_a_stretch_that_drags_is_suggested_with_its_times(bench, add_take, tmp_path):
    # The truth is in the sound: 24 even beats at 96, of which six, from 5.0 to 9.2 s, take
    # 12 % longer.
    notes = tuple(
        NoteSpec(midi, 1.12 if 8 <= at < 14 else 1.0)
        for at, midi in enumerate((69, 71, 72, 74, 72, 71) * 4)
    )
    sound = render(PhraseSpec(notes, tempo=96.0, seed=7, instrument="violin"))
    path = tmp_path / "drags.wav"
    soundfile.write(path, sound.samples, sound.sample_rate_hz, subtype="PCM_24")
    bench.passages.add("Study", "Tune", "", replace(A_MINOR, pulse_bpm=96.0))
    row = add_take(path, "Study: Tune")
    bench.measuring.measure(row.id)
    drags = [r for r in bench.suggesting.for_take(row.id).rows if r.kind == "drags"]
    assert len(drags) == 1
    assert drags[0].category == "rhythm"
    slow = [sound.truth.notes[at] for at in (8, 13)]
    assert drags[0].start_s == pytest.approx(slow[0].start_s, abs=1.0)
    assert drags[0].end_s == pytest.approx(slow[1].end_s, abs=1.0)
    assert re.fullmatch(r"Drags by \d+ ± \d+ % from 0:0\d\.\d to 0:\d\d\.\d", drags[0].text)
    # Against a mean that the slow beats pull down themselves, 1 / 1.12 is -8 to -11 %.
    assert -11.0 < drags[0].reading.value < -5.0


def test_no_suggestion_says_why(bench, add_take, wav_a):
    row = add_take(wav_a)
    assert bench.suggesting.for_take(row.id).sentence == "Not measured yet."
    with pytest.raises(PlainFailure, match="not there"):
        bench.suggesting.dismiss(row.id, "flat:E5")


def test_the_ear_comes_first_and_then_both_are_compared(bench, take_id, clock):
    assert not bench.first_listening.state(take_id).is_hidden
    before = bench.marking.add(take_id, 0.1, category="intonation")
    clock.now += timedelta(minutes=1)
    bench.first_listening.switch(on=True)
    clock.now += timedelta(minutes=1)
    assert bench.first_listening.state(take_id).is_hidden
    with pytest.raises(PlainFailure, match="No marker of yours"):
        bench.first_listening.show(take_id)
    findings = {one.key: one for one in bench.suggesting.findings(take_id)}
    first_e = findings["flat:E5"].places[0]
    heard = bench.marking.add(take_id, first_e[0] + 0.3, category="intonation", text="low")
    bench.marking.add(take_id, 8.0, category="sound", text="scratch")
    clock.now += timedelta(minutes=1)
    shown = bench.first_listening.show(take_id)
    assert not shown.is_hidden
    assert heard in shown.own_markers
    assert before not in shown.own_markers
    clock.now += timedelta(minutes=1)
    # A marker placed with the numbers in view proves nothing.
    bench.marking.add(take_id, findings["flat:E5"].places[1][0], category="intonation")
    both = bench.first_listening.state(take_id).agreement
    assert both is not None
    assert both.heard_only == 1
    kinds = {(row.kind, row.heard) for row in both.rows if row.heard}
    assert ("hit", "intonation: low") in kinds
    assert ("heard_only", "sound: scratch") in kinds
    assert both.hits + both.missed == 4
    assert f"{both.hits} of 4 measured places" in both.sentence


def test_lists_hide_the_numbers_of_a_take_that_waits_for_the_ear(bench, take_id):
    assert isinstance(bench.filing.row(take_id).intonation, Reading)
    bench.first_listening.switch(on=True)
    row = bench.filing.row(take_id)
    assert row.intonation == row.tempo == row.dynamics == NoReading(HIDDEN)
    bench.first_listening.show(take_id, heard_nothing=True)
    assert isinstance(bench.filing.row(take_id).intonation, Reading)


def test_who_hears_nothing_wrong_may_look_too(bench, take_id):
    bench.first_listening.switch(on=True)
    shown = bench.first_listening.show(take_id, heard_nothing=True)
    assert not shown.is_hidden
    assert shown.agreement is not None
    assert (shown.agreement.hits, shown.agreement.missed) == (0, 4)


def test_the_choice_and_the_look_outlive_the_program_and_the_database(
    bench, take_id, lose_database, journal_dir, clock
):
    bench.first_listening.switch(on=True)
    bench.first_listening.show(take_id, heard_nothing=True)
    lose_database()
    with open_workbench(journal_dir, clock=clock) as again:
        state = again.first_listening.state(take_id)
        assert state.is_on
        assert not state.is_hidden
        assert state.shown_at == clock.now


def test_a_hidden_take_shows_its_sound_and_markers_and_no_number(bench, take_id):
    bench.marking.add(take_id, 1.0, category="sound")
    view = bench.listening.open_take(take_id)
    blind = hidden(view)
    assert blind.markers == view.markers
    assert blind.duration_s == view.duration_s
    assert (blind.notes, blind.summary, blind.places, blind.notices) == ((), (), (), ())
    for curve in (blind.pitch_cents, blind.tempo_bpm, blind.loudness_lufs):
        assert curve.segments == ()
        assert curve.gap_sentence == HIDDEN
    assert blind.beat_s.size == 0
    number = re.compile(r"\d[\d.]* *(cents|BPM|LUFS|dB|%)")
    assert not number.search(str(replace(blind, markers=(), settings=PlayingSettings())))
