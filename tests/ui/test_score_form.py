"""The form of a passage: a score from a file, a scale by rule, or none."""

import pytest

from app.journal.scale_records import Figure, Mode, ScaleSpec
from app.journal.scores import BarSpan


@pytest.fixture
def form(window, settle):
    practice = window.main.practice
    practice.new_passage()
    settle(window)
    return practice.forms.passage


def add(form, settle, window):
    form._add.click()
    settle(window)


def test_a_scale_names_its_passage_and_becomes_its_score(form, window, settle, bench):
    form.score.source.choose("scale")
    form.score._turn()
    form.score.scale.show_spec(ScaleSpec("D", octaves=2, notes_a_beat=4, slurred=4))
    add(form, settle, window)
    made = bench.state.passages[-1]
    assert (made.piece, made.name) == ("Scales", "D major scale, 2 octaves")
    assert made.score.scale.octaves == 2
    assert made.score.scale.slurred == 4


def test_a_name_the_player_typed_is_kept(form, qtbot):
    qtbot.keyClicks(form._name, "warm-up")
    form.score.source.choose("scale")
    form.score._turn()
    assert form._name.text() == "warm-up"


def test_a_second_new_passage_is_named_by_its_scale_too(form, window, settle):
    for _ in range(2):
        window.main.practice.new_passage()
        settle(window)
        form.score.source.choose("scale")
        form.score._turn()
        form.score.scale.show_spec(ScaleSpec("D"))
        assert form._name.text() == "D major scale, 1 octave"


def test_the_notes_are_shown_as_they_are_chosen(form):
    form.score.scale.show_spec(ScaleSpec("Eb"))
    assert "Eb4 F4 G4 Ab4" in form.score.scale._written.text()
    form.score.scale.figure.choose(Figure.ARPEGGIO)
    form.score.scale.figure.picked.emit(Figure.ARPEGGIO)
    assert Mode.CHROMATIC not in form.score.scale.mode.keys
    assert "Eb4 G4 Bb4" in form.score.scale._written.text()


def test_what_the_instrument_does_not_reach_is_said_and_not_offered(form):
    scale = form.score.scale
    scale.octaves.setValue(4)
    assert scale.start.key is None
    assert "beyond the violin" in scale._title.text()
    scale.octaves.setValue(1)
    assert scale.start.key is not None


def test_a_score_file_offers_its_parts_and_keeps_the_bars(form, window, settle, bench, tmp_path):
    form.score.source.choose("file")
    form.score._turn()
    form.score.read(tmp_path / "study.musicxml")
    settle(window)
    assert form.score.part.keys == (0, 1)
    form.score.part.choose(1)
    form.score.bars.setText("1-2")
    form._piece.setText("Study")
    form._name.setText("First line")
    add(form, settle, window)
    kept = bench.state.passages[-1].score.file
    assert (kept.part, kept.bars) == (1, BarSpan(1, 2))


def test_a_wrong_file_is_told_in_the_form(form, window, settle, tmp_path):
    form.score.source.choose("file")
    form.score.read(tmp_path / "picture.png")
    settle(window)
    assert "no score that can be read" in form.score._words.text()
    form._piece.setText("Study")
    form._name.setText("First line")
    add(form, settle, window)
    assert "No score is chosen" in window.main.messages.text


def test_bars_that_the_score_does_not_have_are_told_before_anything_is_kept(
    form, window, settle, bench, tmp_path
):
    before = len(bench.state.passages)
    form.score.source.choose("file")
    form.score.read(tmp_path / "study.musicxml")
    settle(window)
    form.score.bars.setText("70-80")
    form._piece.setText("Study")
    form._name.setText("First line")
    add(form, settle, window)
    assert "no bars 70-80" in window.main.messages.text
    assert len(bench.state.passages) == before


def test_the_bars_that_a_take_holds_are_kept_and_it_is_measured_again(window, settle, bench, qtbot):
    window.main.listen_to("take11")
    settle(window)
    pane = window.main.listen.take_pane
    pane.parts.setText("1-8, 17-24")
    pane.file_it.click()
    settle(window)
    assert bench.state.rows["take11"].parts == (BarSpan(1, 8), BarSpan(17, 24))
    assert "take11" in bench.state.measured
    pane.parts.setText("8-1")
    pane.file_it.click()
    settle(window)
    assert "no stretch of bars" in window.main.messages.text
