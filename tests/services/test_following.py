"""Following a passage through the services, on takes whose truth is known."""

import json
from dataclasses import replace
from datetime import date, timedelta
from importlib.resources import files

import numpy as np
import pytest
import soundfile
from jsonschema import Draft202012Validator

from app.journal.blind_ear import Agreement, Choice, Question
from app.journal.failures import PlainFailure
from app.journal.records import PlayingSettings
from app.journal.still_there import Stage
from app.services import following_json, heard_json
from app.services.fair_takes import fair_takes
from sample_audio.generator import NoteSpec, PhraseSpec, render

FIRST = date(2026, 2, 2)
NOTES = (62, 64, 66, 67, 69, 71, 69, 67, 66, 64)
OUT = 4


def take_file(folder, number, *, out_cents=0.0, shift_cents=0.0, tempo=100.0, notes=NOTES):
    """A take in which one note is out by known cents; others scatter a little."""
    cents = shift_cents + 4.0 * np.random.default_rng([number, 1]).standard_normal(len(notes))
    cents[OUT] += out_cents
    specs = tuple(
        NoteSpec(float(midi), 1.0, deviation_cents=float(c))
        for midi, c in zip(notes, cents, strict=True)
    )
    phrase = render(PhraseSpec(specs, tempo=tempo, seed=number, instrument="violin"))
    path = folder / f"take {number}.wav"
    soundfile.write(path, phrase.samples, phrase.sample_rate_hz, subtype="PCM_24")
    return path, phrase


def definition(name):
    text = files("app.schemas").joinpath("follow.schema.json").read_text(encoding="utf-8")
    schema = json.loads(text)
    Draft202012Validator.check_schema(schema)
    return Draft202012Validator({"$ref": f"#/$defs/{name}", "$defs": schema["$defs"]})


def check(name, found):
    definition(name).validate(json.loads(json.dumps(found, allow_nan=False)))


@pytest.fixture
def two_takes(tmp_path, add_take):
    """The note that was out by 35 cents is in tune in the later take, played slower."""
    before, phrase_a = take_file(tmp_path, 1, out_cents=35.0)
    after, phrase_b = take_file(tmp_path, 2, tempo=80.0)
    rows = [
        add_take(path, "Opening", FIRST + timedelta(days=n))
        for n, path in enumerate((before, after))
    ]
    return rows, (phrase_a, phrase_b)


def test_a_pair_is_aligned_once_until_a_take_is_measured_again(
    bench, clock, two_takes, monkeypatch
):
    (a, b), (phrase_a, phrase_b) = two_takes
    pair = bench.aligning.pair(a.id, b.id)
    assert pair.aligned
    error = [
        abs(pair.to_b(one.start_s) - other.start_s)
        for one, other in zip(phrase_a.truth.notes, phrase_b.truth.notes, strict=True)
    ]
    assert np.median(error) < 0.01
    check("alignment", following_json.alignment_object(pair))

    def refuse(*_args, **_kwargs):
        raise AssertionError("aligned again")

    monkeypatch.setattr("analysis.alignment.align_heard", refuse)
    assert np.array_equal(bench.aligning.pair(a.id, b.id).a_s, pair.a_s)
    # The other way round needs nothing new either.
    assert np.array_equal(bench.aligning.pair(b.id, a.id).a_s, pair.b_s)
    clock.now += timedelta(minutes=1)
    bench.measuring.measure(b.id)
    with pytest.raises(AssertionError, match="aligned again"):
        bench.aligning.pair(a.id, b.id)


def test_takes_of_other_music_are_not_aligned_and_that_is_kept(bench, tmp_path, add_take):
    one = add_take(take_file(tmp_path, 3)[0], "Opening", FIRST)
    other_notes = (55, 59, 57, 74, 61, 55, 73, 60, 77, 56)
    other = add_take(take_file(tmp_path, 4, notes=other_notes)[0], "Opening", FIRST)
    for _ in range(2):
        pair = bench.aligning.pair(one.id, other.id)
        assert not pair.aligned
        assert "same passage" in pair.sentence
    with pytest.raises(PlainFailure):
        bench.aligning.pair(one.id, one.id)


def test_a_marker_appears_at_its_place_in_the_later_take_and_is_measured(bench, two_takes):
    (a, b), (phrase_a, phrase_b) = two_takes
    place = phrase_a.truth.notes[OUT].start_s + 0.2
    marker = bench.marking.add(a.id, place, category="intonation", text="sharp")
    by_ear = bench.marking.add(a.id, place + 1.0, category="sound")
    first, second = bench.carrying.carried_into(b.id)
    assert first.marker == marker
    truth = phrase_b.truth.notes[OUT]
    expected = truth.start_s + 0.2 * 100.0 / 80.0
    assert first.start_s == pytest.approx(expected, abs=0.1)
    assert first.measured.word == "gone"
    assert first.measured.then.value == pytest.approx(35.0, abs=12.0)
    assert second.marker == by_ear
    assert second.measured.word == "not measurable"
    assert first.answer is None
    check("carried", heard_json.carried_object(b.id, (first, second)))
    # Nothing is carried back in time.
    assert bench.carrying.carried_into(a.id) == ()


def test_answers_by_ear_are_kept_and_make_the_life_of_a_problem(bench, tmp_path, add_take):
    rows = [
        add_take(take_file(tmp_path, 20 + n)[0], "Opening", FIRST + timedelta(days=n))
        for n in range(4)
    ]
    marker = bench.marking.add(rows[0].id, 2.0, category="sound")
    for row, heard in zip(rows[1:], (True, False, False), strict=True):
        bench.carrying.answer(marker.id, row.id, heard)
    life = bench.carrying.lives(rows[0].passage_id)[0].life
    assert life.stage is Stage.SETTLED
    assert life.settled_on == FIRST + timedelta(days=3)
    assert life.days_worked_on == 4
    bench.carrying.answer(marker.id, rows[3].id, None)
    again = bench.carrying.lives(rows[0].passage_id)
    assert again[0].life.stage is Stage.TO_WORK_ON
    check("lives", heard_json.lives_object(rows[0].passage_id, again))
    with pytest.raises(PlainFailure, match="another passage"):
        bench.carrying.answer(marker.id, rows[0].id, True)
    assert bench.carrying.marker_named(marker.id[:6], rows[1].id) == marker.id


def test_changes_need_four_days_a_side_and_then_say_what_is_better(bench, tmp_path, add_take):
    bench.passages.add("", "Opening", settings=PlayingSettings(pulse_bpm=100.0))
    passage = None
    for n in range(10):
        path, _ = take_file(tmp_path, 40 + n, out_cents=30.0 if n < 5 else 0.0)
        row = add_take(path, "Opening", FIRST + timedelta(days=7 * (n // 5) + n % 5))
        passage = row.passage_id
        bench.measuring.measure(row.id)
        if n == 6:
            early = bench.changes.report(passage)
            assert "Too few takes" in early.sentence
            assert early.rows == ()
    report = bench.changes.report(passage)
    by_key = {
        (row.scope, row.key, row.place): row
        for row in report.rows
        if row.period == "first_and_latest"
    }
    notes = [r for r in report.rows if r.scope == "note" and r.period == "first_and_latest"]
    note = notes[OUT]
    others = notes[:OUT] + notes[OUT + 1 :]
    assert note.word == "better"
    assert note.change.value == pytest.approx(-30.0, abs=8.0)
    low, high = note.change.interval
    assert low < -22.0
    assert high < 0
    assert not any(row.is_clear for row in others)
    assert by_key["passage", "mean_bpm", ""].word == "no clear change"
    assert all(row.days_a == row.days_b == 5 for row in by_key.values() if row.days_a)
    check("change", following_json.change_object(report))


def test_other_instruments_and_levels_are_left_out_and_that_is_said(bench, tmp_path, add_take):
    rows = [
        add_take(take_file(tmp_path, 60 + n)[0], "Opening", FIRST + timedelta(days=n))
        for n in range(3)
    ]
    takes = [bench.filing._store.takes.get(row.id) for row in rows]
    viola = replace(takes[0], settings=replace(takes[0].settings, instrument="viola"))
    just = replace(takes[1], settings=replace(takes[1].settings, temperament="just", tonic="D"))
    found = fair_takes([viola, just, takes[2]])
    assert found.takes == (just, takes[2])
    assert not found.has(just, "mean_absolute_cents")
    assert found.has(just, "mean_bpm")
    assert "viola" in found.left_out[0]
    assert any("temperament" in sentence for sentence in found.left_out)


def test_bounds_and_ladder_follow_what_was_measured(bench, two_takes):
    (a, b), _ = two_takes
    for row in (a, b):
        bench.filing.change_settings(
            row.id, _with_pulse(bench, row.id, 100.0 if row is a else 80.0)
        )
        bench.measuring.measure(row.id)
    usual = bench.bounds.get(a.passage_id)
    kept = bench.bounds.set(replace(usual, mean_absolute_cents=12.0, target_bpm=100.0))
    assert bench.bounds.get(a.passage_id) == kept
    view = bench.bounds.ladder(a.passage_id)
    # Both days hold 80 BPM, only one of them 100.
    assert view.ladder.held_bpm == pytest.approx(80.0, abs=1.0)
    assert view.ladder.rungs[-1].bpm == 100.0
    check("ladder", following_json.ladder_object(view))
    check("bounds", following_json.bounds_object(kept))
    with pytest.raises(PlainFailure):
        bench.bounds.set(replace(usual, mean_absolute_cents=-1.0))


def test_a_passage_is_proposed_for_an_unfiled_take(bench, tmp_path, add_take):
    add_take(take_file(tmp_path, 70)[0], "Opening", FIRST)
    other_notes = (55, 59, 57, 74, 61, 55, 73, 60, 77, 56)
    add_take(take_file(tmp_path, 71, notes=other_notes)[0], "Leaps", FIRST)
    unfiled = add_take(take_file(tmp_path, 72, tempo=120.0)[0])
    found = bench.proposing.of_take(unfiled.id)
    assert found.passage_id == bench.passages.find("Opening").id
    assert found.confidence > 0.9
    check("proposal", following_json.proposal_object(found))
    strange = (80, 79, 56, 58, 77, 75, 57, 78, 59, 76)
    nothing = bench.proposing.of_file(take_file(tmp_path, 73, notes=strange)[0])
    assert nothing.passage_id is None
    assert "none of the passages" in nothing.sentence


def test_runs_are_found_and_judged_by_the_players_bounds(bench, tmp_path, add_take):
    bench.passages.add("", "Opening", settings=PlayingSettings(pulse_bpm=100.0))
    add_take(take_file(tmp_path, 80)[0], "Opening", FIRST)
    pieces = [take_file(tmp_path, 81 + n, shift_cents=15.0 * (n == 1))[1] for n in range(4)]
    rate = pieces[0].sample_rate_hz
    path = tmp_path / "practice.wav"
    soundfile.write(path, np.concatenate([p.samples for p in pieces]), rate, subtype="PCM_24")
    long = add_take(path, "Opening", FIRST + timedelta(days=1))
    usual = bench.bounds.get(long.passage_id)
    bench.bounds.set(replace(usual, mean_absolute_cents=9.0, is_rubato=True))
    view = bench.repetitions.find(long.id)
    assert view.complete == 4
    held = [run.holds for run in view.runs]
    assert held == [True, False, True, True]
    assert (view.longest_in_a_row, view.in_a_row_now) == (2, 2)
    for run in view.runs:
        assert run.bpm.value == pytest.approx(100.0, rel=0.05)
    check("repetitions", following_json.repetitions_object(view))


def test_shapes_are_laid_over_each_other_without_their_level(bench, tmp_path, add_take):
    rows = []
    for number, (level, swell) in enumerate(((0.0, 8.0), (-6.0, 8.0), (0.0, -8.0))):
        specs = tuple(NoteSpec(float(midi), 1.0) for midi in NOTES)
        dynamics = ((0.0, level - swell), (5.0, level), (10.0, level - swell))
        phrase = render(
            PhraseSpec(specs, tempo=90.0 + 10 * number, seed=number, dynamics=dynamics,
                       level_dbfs=-26.0)
        )  # fmt: skip
        path = tmp_path / f"shape {number}.wav"
        soundfile.write(path, phrase.samples, phrase.sample_rate_hz, subtype="PCM_24")
        rows.append(add_take(path, "Opening", FIRST + timedelta(days=number)))
    alike = bench.shapes.compare(rows[0].id, rows[1].id)
    assert alike.offset_db == pytest.approx(6.0, abs=1.0)
    assert alike.likeness.value > 0.9
    opposite = bench.shapes.compare(rows[0].id, rows[2].id)
    assert opposite.likeness.value < -0.5
    check("shape", following_json.shape_object(alike))


def test_blind_answers_are_kept_once_and_compared_after_enough(bench, two_takes):
    (a, b), _ = two_takes
    for row in (a, b):
        bench.measuring.measure(row.id)
    for seed in range(12):
        view = bench.blind_ear.ask(a.passage_id, Question.IN_TUNE, seed)
        assert {view.first_take_id, view.second_take_id} == {a.id, b.id}
        # The ear always hears the take without the note that is out.
        choice = Choice.FIRST if view.first_take_id == b.id else Choice.SECOND
        bench.blind_ear.answer(view.trial.id, choice)
    with pytest.raises(PlainFailure, match="already"):
        bench.blind_ear.answer(view.trial.id, Choice.SECOND)
    rows = bench.blind_ear.results()
    assert rows[0].result.word is Agreement.AGREE
    assert rows[1].result.word is Agreement.TOO_FEW_ANSWERS
    check("ear", heard_json.ear_object(rows))
    check("trial", heard_json.trial_object(view.trial))


def _with_pulse(bench, take_id, bpm):
    return replace(bench.filing._store.takes.get(take_id).settings, pulse_bpm=bpm)


def test_a_day_more_is_aligned_with_the_take_the_others_lie_against(tmp_path, add_take, bench):
    takes = []
    for number in range(3):
        path, _ = take_file(tmp_path, number)
        takes.append(add_take(path, "Opening", FIRST + timedelta(days=number)))
    for earlier in takes[:2]:
        bench.aligning.pair(takes[2].id, earlier.id)
    path, _ = take_file(tmp_path, 3)
    latest = add_take(path, "Opening", FIRST + timedelta(days=3))
    bench.measuring.measure(latest.id)
    found = bench.note_maps.of_passage(latest.passage_id)
    assert found.reference_id == takes[2].id
    assert len(found.takes) == 4
