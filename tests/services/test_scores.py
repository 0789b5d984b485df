"""Scores beside passages: kept in the journal, held against takes, there after a rebuild."""

import json
from dataclasses import replace
from importlib.resources import files

import pytest
from jsonschema import Draft202012Validator

from app.journal.failures import PlainFailure
from app.journal.records import PlayingSettings
from app.journal.scale_records import Figure, Mode, ScaleSpec
from app.journal.scales import scale_title
from app.journal.scores import BarSpan, PassageScore
from app.services.instruments import instrument_names
from app.services.measuring import current_algorithm
from app.services.repairing import repair
from app.services.scores import score_words
from app.wiring import open_workbench
from tests.services.writing_scores import attributes, line_of, measure, partwise

# The line of the fixture's take: D major, bars of four.
BARS = [
    measure(1, attributes(4, 4, 2) + line_of("D4", "E4", "F#4", "G4")),
    measure(2, line_of("A4", "B4", "A4", "G4")),
]


@pytest.fixture
def score_file(tmp_path):
    path = tmp_path / "My study.musicxml"
    path.write_text(partwise(BARS, names=["Violin"]), encoding="utf-8")
    return path


@pytest.fixture
def passage(bench):
    return bench.passages.add("Study", "First line")


@pytest.fixture
def filed(bench, passage, wav_a):
    (proposal,) = bench.importing.propose([wav_a], passage.id)
    (row,) = bench.importing.file([proposal])
    return row


def test_a_score_is_copied_into_the_journal_and_never_written_again(
    bench, passage, score_file, journal_dir
):
    kept = bench.scores.attach(passage.id, score_file, bars=BarSpan(1, 2))
    copy = journal_dir / kept.score.file.file
    assert copy.parent == journal_dir / "scores"
    assert copy.read_bytes() == score_file.read_bytes()
    before = copy.stat().st_mtime_ns
    bench.scores.attach(passage.id, score_file)
    bench.scores.remove(passage.id)
    assert copy.stat().st_mtime_ns == before
    assert [path.name for path in copy.parent.iterdir()] == [copy.name]


def test_a_score_and_the_parts_of_a_take_survive_a_rebuild(  # noqa: PLR0917 - fixtures
    bench, passage, filed, score_file, journal_dir, clock
):
    bench.scores.attach(passage.id, score_file, bars=BarSpan(1, 2))
    scale = bench.scores.add_scale(ScaleSpec("Eb", octaves=2), PlayingSettings())
    bench.scores.set_parts(filed.id, (BarSpan(1, 1),))
    bench.close()
    for path in journal_dir.glob("journal.db*"):
        path.unlink()
    for path in (journal_dir / "backups").glob("*"):
        path.unlink()
    repair(journal_dir, clock=clock)
    with open_workbench(journal_dir, clock=clock) as again:
        found = again.passages.find("First line")
        assert score_words(found) == "My study.musicxml, Violin, bars 1-2"
        assert [n.name for n in again.scores.of_passage(found.id).notes][:3] == ["D4", "E4", "F#4"]
        assert again.filing.take(filed.id).parts == (BarSpan(1, 1),)
        assert len(again.scores.of_take(filed.id).notes) == 4
        assert again.passages.find(scale.id).score.scale.octaves == 2


def test_a_take_is_measured_by_what_is_written(bench, passage, filed, score_file):
    bench.measuring.measure(filed.id)
    assert bench.measuring.report(filed.id).as_json()["score"] is None
    bench.scores.attach(passage.id, score_file)
    assert filed.id in bench.measuring.waiting()
    bench.measuring.measure(filed.id)
    assert filed.id not in bench.measuring.waiting()
    report = bench.measuring.report(filed.id).as_json()
    schema = json.loads(files("app.schemas").joinpath("measure.schema.json").read_text("utf-8"))
    Draft202012Validator(schema).validate(report)
    assert report["score"]["matched_count"] == report["score"]["written_count"] == 8
    assert report["score"]["slips"] == []
    assert report["tempo"]["anchor"] == "score"
    view = bench.listening.open_take(filed.id)
    heads = {line.key: line for line in view.summary}
    assert "nothing wrong, missing or added" in heads["score"].explanation
    assert view.notes[2].name == "F#4"
    assert view.notes[2].remark.startswith("Bar 1, beat 3")


def test_a_score_that_changes_while_a_take_is_measured_makes_that_stale(
    bench, passage, score_file, filed
):
    bench.scores.attach(passage.id, score_file)
    heard = []

    def change_once(_fraction):
        if not heard:
            heard.append(bench.scores.choose_bars(passage.id, BarSpan(1, 1)))

    assert bench.measuring.measure(filed.id, change_once).state == "stale"
    assert bench.measuring.measure(filed.id).state == "measured"


def test_slips_are_told_in_the_summary_and_in_the_notes(bench, passage, filed, tmp_path):
    other = tmp_path / "other.musicxml"
    bars = [BARS[0], measure(2, line_of("A4", "C5", "A4", "G4"))]
    other.write_text(partwise(bars), encoding="utf-8")
    bench.scores.attach(passage.id, other)
    bench.measuring.measure(filed.id)
    view = bench.listening.open_take(filed.id)
    (slip,) = [line for line in view.summary if line.key.startswith("slip_")]
    assert slip.label.startswith("Bar 2, beat 2 at 0:0")
    assert slip.explanation == "B4 instead of C5"
    assert "Wrong note: C5 is written" in view.notes[5].remark
    assert [note.slip for note in view.notes] == [""] * 5 + ["wrong"] + [""] * 2


def test_a_take_of_some_bars_is_held_against_these_alone(bench, passage, filed, tmp_path):
    longer = tmp_path / "longer.musicxml"
    bars = [measure(1, attributes(4) + line_of("C5", "C5", "C5", "C5")),
            measure(2, line_of("D4", "E4", "F#4", "G4")),
            measure(3, line_of("A4", "B4", "A4", "G4")),
            measure(4, line_of("C5", "D5", "E5", "F5"))]  # fmt: skip
    longer.write_text(partwise(bars), encoding="utf-8")
    bench.scores.attach(passage.id, longer)
    bench.scores.set_parts(filed.id, (BarSpan(2, 3),))
    bench.measuring.measure(filed.id)
    found = bench.measuring.report(filed.id).as_json()["score"]
    assert (found["written_count"], found["matched_count"]) == (8, 8)
    assert found["stretches"] == []
    with pytest.raises(PlainFailure, match="no bars 9"):
        bench.scores.set_parts(filed.id, (BarSpan(9, 9),))


def test_a_take_that_moves_to_another_passage_leaves_its_parts_and_its_score(
    bench, passage, filed, score_file
):
    bench.scores.attach(passage.id, score_file)
    bench.scores.set_parts(filed.id, (BarSpan(1, 1),))
    bench.measuring.measure(filed.id)
    other = bench.passages.add("Study", "Second line")
    bench.filing.refile(filed.id, filed.practice_day, other.id)
    assert bench.filing.take(filed.id).parts == ()
    assert filed.id in bench.measuring.waiting()


def test_bars_held_before_a_move_to_a_passage_of_the_same_score_are_measured_anew(
    bench, passage, filed, score_file
):
    kept = bench.scores.attach(passage.id, score_file)
    other = bench.passages.add("Study", "The same once more")
    bench.passages.change(replace(other, score=kept.score))
    bench.scores.set_parts(filed.id, (BarSpan(1, 1),))
    bench.measuring.measure(filed.id)
    assert filed.id not in bench.measuring.waiting()
    bench.filing.refile(filed.id, filed.practice_day, other.id)
    assert filed.id in bench.measuring.waiting()  # it holds the whole score now
    bench.measuring.measure(filed.id)
    bench.filing.refile(filed.id, filed.practice_day, passage.id)
    assert filed.id not in bench.measuring.waiting()  # the same notes, as they were measured


def test_a_score_that_is_gone_does_not_keep_a_take_from_being_measured(  # noqa: PLR0917 - fixtures
    bench, passage, filed, score_file, journal_dir, clock
):
    kept = bench.scores.attach(passage.id, score_file)
    bench.close()
    (journal_dir / kept.score.file.file).unlink()
    for path in (journal_dir / ".cache" / "scores").iterdir():
        path.unlink()
    with open_workbench(journal_dir, clock=clock) as again:
        again.measuring.measure(filed.id)
        found = again.measuring.report(filed.id).as_json()
        assert found["score"]["reason"] == "no_score"
        assert "not in the journal any more" in found["score"]["sentence"]
        assert found["intonation"]["status"] == "measured"
        assert filed.id not in again.measuring.waiting()
        assert current_algorithm() == found["algorithm"]


@pytest.mark.parametrize("figure", list(Figure))
def test_every_instrument_can_have_its_scales(bench, figure):
    for name in instrument_names():
        spec = ScaleSpec("D", figure=figure)
        start = bench.scores.start_octaves(spec, name)[0]
        chosen = ScaleSpec("D", figure=figure, start_octave=start)
        kept = bench.scores.add_scale(chosen, PlayingSettings(instrument=name), name=name)
        assert kept.settings.tonic == "D"
        assert len(bench.scores.of_passage(kept.id).notes) > 6


def test_a_scale_out_of_reach_is_refused_with_where_it_could_begin(bench):
    with pytest.raises(PlainFailure, match="beyond the violin") as told:
        bench.scores.add_scale(ScaleSpec("C", start_octave=2), PlayingSettings())
    assert told.value.next_step == "Begin in octave 4, 5, 6."


def test_a_passage_that_becomes_a_scale_takes_its_tonic(bench, passage):
    spec = ScaleSpec("G", Mode.MELODIC_MINOR)
    kept = bench.scores.write_scale(passage.id, spec)
    assert kept.settings.tonic == "G"
    assert score_words(kept) == scale_title(spec)


def test_what_a_score_does_not_have_is_told_and_nothing_is_changed(bench, passage, score_file):
    for part, bars in ((1, None), (0, BarSpan(7, 9))):
        with pytest.raises(PlainFailure, match="The score has no"):
            bench.scores.attach(passage.id, score_file, part, bars)
    assert bench.passages.find("First line").score is None
    with pytest.raises(PlainFailure, match="is not there"):
        bench.scores.parts_of(score_file.with_suffix(".none"))


def test_a_score_that_is_said_to_lie_outside_of_the_journal_is_not_read(
    bench, passage, filed, score_file, tmp_path
):
    kept = bench.scores.attach(passage.id, score_file).score.file
    for place in ("../My study.musicxml", str(score_file), "scores"):
        there = PassageScore(file=replace(kept, file=place, sha256="0" * 64))
        bench.passages.change(replace(bench.passages.find("First line"), score=there))
        with pytest.raises(PlainFailure, match="not in the journal"):
            bench.scores.of_passage(passage.id)
