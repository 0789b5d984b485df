"""The sections beside the lanes: what they show, and that keys alone reach everything."""

import pytest
from PySide6.QtCore import Qt

from app.ui.keys import ACTIONS, Where

ALT = Qt.KeyboardModifier.AltModifier


@pytest.fixture
def compare(window, settle):
    window.main.show_page(2)
    settle(window)
    return window.main.compare


def open_section(compare, qtbot, settle, window, number):
    qtbot.keyClick(compare, str(number), modifier=ALT)
    settle(window)
    pane = compare.sections.panes[number - 1]
    assert pane.isVisible()
    return pane


def test_no_two_actions_of_the_page_share_a_key():
    here = [one for one in ACTIONS if one.where in (Where.COMPARE, Where.EVERYWHERE)]
    keys = [key for one in here for key in one.keys]
    assert len(keys) == len(set(keys))


def test_days_are_judged_only_when_somebody_looks(compare, qtbot, settle, window, bench):
    assert bench.changes.asked == 0
    pane = open_section(compare, qtbot, settle, window, 3)
    assert bench.changes.asked == 1
    (row,) = pane.table.rows_model.rows
    assert (row.scope, row.period, row.word) == ("passage", "first_and_latest", "better")
    assert "left out" in pane.words
    assert "best of several" in pane.words


def test_a_change_shows_its_interval_and_scatter(compare, qtbot, settle, window):
    pane = open_section(compare, qtbot, settle, window, 3)
    model = pane.table.rows_model
    assert (
        model.index(0, 3).data()
        == "better\n\N{MINUS SIGN}3.0 (\N{MINUS SIGN}4.5 to \N{MINUS SIGN}1.5)"
    )
    more = model.index(0, 3).data(Qt.ItemDataRole.ToolTipRole)
    assert "ordinary scatter 1.4 cents" in more
    assert "5 practice days" in more


def test_week_over_week_begins_with_the_latest(compare, qtbot, settle, window):
    pane = open_section(compare, qtbot, settle, window, 3)
    qtbot.keyClick(compare, "W")
    assert [row.b_from.month for row in pane.table.rows_model.rows] == [3, 2]
    qtbot.keyClick(compare, "W")
    qtbot.keyClick(compare, "G")
    assert [row.place for row in pane.table.rows_model.rows] == ["bar 3"]
    qtbot.keyClick(compare, "G")
    assert [row.place for row in pane.table.rows_model.rows] == ["Bb4 in bar 3"]


def test_carried_markers_are_answered_by_key_one_after_the_other(
    compare, qtbot, settle, window, bench
):
    pane = open_section(compare, qtbot, settle, window, 4)
    assert pane.question == "Still there? intonation: F sharp low, 0:02.7"
    qtbot.keyClick(compare, "Y")
    settle(window)
    assert bench.carrying.answers == {("c0", "take11"): True}
    assert "shift late" in pane.question, "the next open one is asked about"
    qtbot.keyClick(compare, "N")
    settle(window)
    assert bench.carrying.answers["c1", "take11"] is False
    qtbot.keyClick(compare, "U")
    settle(window)
    assert len(bench.carrying.answers) == 1, "an answer can be taken back"


def test_a_carried_marker_is_heard_at_its_place_in_b(compare, qtbot, settle, window, bench):
    open_section(compare, qtbot, settle, window, 4)
    qtbot.keyClick(compare, "M")
    settle(window)
    assert bench.playing.loaded == "take11"
    assert bench.playing.now.position_s == pytest.approx(6.7)


def test_a_key_hit_by_chance_answers_nothing(compare, qtbot, settle, window, bench):
    qtbot.keyClick(compare, "Y")
    settle(window)
    assert bench.carrying.answers == {}
    assert compare.sections.markers.isVisible(), "the question is shown first"


def test_the_ladder_shows_which_tempo_was_held(compare, qtbot, settle, window, bench):
    pane = open_section(compare, qtbot, settle, window, 5)
    model = pane.rungs.rows_model
    told = {model.index(at, 0).data(): model.index(at, 1).data() for at in range(len(model.rows))}
    assert told == {
        "80 BPM": "not yet",
        "76 BPM": "one day so far",
        "72 BPM": "held since 9 Feb 2026",
    }
    pane._cents.setValue(6.5)
    qtbot.keyClick(compare, "K")
    settle(window)
    assert bench.bounds.kept.mean_absolute_cents == 6.5


def test_runs_through_the_passage_are_found_by_key(compare, qtbot, settle, window):
    qtbot.keyClick(compare, "R")
    settle(window)
    pane = compare.sections.tempo
    model = pane.runs.rows_model
    assert [model.index(at, 4).data() for at in range(3)] == ["inside", "broken off", "inside"]
    assert "1 in a row" in pane.words


def test_the_blind_ear_hides_days_and_lanes_and_keeps_answers(
    compare, qtbot, settle, window, bench
):
    qtbot.keyClick(compare, "B")
    settle(window)
    assert compare.is_blind
    assert not compare.lanes.isVisible()
    assert not compare.sections.isVisible()
    visible = " ".join(
        label.text() for label in compare.blind.findChildren(type(compare.blind._title))
    )
    for row in bench.state.rows.values():
        assert str(row.practice_day.year) not in visible
    qtbot.keyClick(compare, "1")
    settle(window)
    assert bench.playing.loaded == "take7"
    assert bench.playing.now.playing
    bench.playing.seek(8.0)
    qtbot.keyClick(compare, "2")
    assert bench.playing.loaded == "take2"
    assert bench.playing.now.position_s == pytest.approx(4.0), "the same musical place"
    assert bench.playing.gains["take7"] == -2.0, "at one loudness"
    qtbot.keyClick(compare, "J")
    settle(window)
    (first, *_) = bench.blind_ear.trials.values()
    assert first.chosen_take_id == "take2"
    assert compare.blind.results == "Better in tune: 1 answered."
    assert "the first was" in compare.blind._last.text(), "after the answer, the days are told"
    assert "steadier" in compare.blind.question, "the next of three questions"
    qtbot.keyClick(compare, "B")
    settle(window)
    assert compare.lanes.isVisible()
    assert bench.playing.loaded == "take0"


def test_targets_are_counted_side_by_side(window, settle, bench, monkeypatch):
    from dataclasses import replace

    whole = bench.comparing.compare

    def judged(*arguments):
        view = whole(*arguments)
        verdicts = ("in_tune", "out", "depends")
        notes = [
            tuple(replace(note, verdict=verdicts[note.index % count]) for note in side.notes)
            for side, count in ((view.a, 3), (view.b, 1))
        ]
        return replace(view, a=replace(view.a, notes=notes[0]), b=replace(view.b, notes=notes[1]))

    monkeypatch.setattr(bench.comparing, "compare", judged)
    window.main.show_page(2)
    settle(window)
    found = {
        words: (a, b)
        for words, a, b in window.main.compare.sections.change.verdicts.rows_model.rows
    }
    assert found["in tune by every plausible target"] == (12, 36)
    assert found["out by every plausible target"] == (12, 0)


def test_the_loudness_of_both_is_laid_over_each_other_with_the_hairpins(compare):
    """A hairpin opens towards the loud end, as printed; a gap in a curve stays a gap."""
    lanes = compare.lanes
    words = [frame.title for frame in lanes._overlay.frames]
    assert any("moved by \N{MINUS SIGN}2.5 dB" in title for title in words)
    assert len(lanes._b_loud._lines) == 2
    assert [one.kind for one in lanes._hairpins._hairpins] == ["crescendo", "diminuendo"]
    said = compare.sections.change._shape.text()
    assert "Crescendo: A 6.0 dB, B 2.0 dB." in said
    assert "Diminuendo: A \N{MINUS SIGN}4.0 dB, B Silence." in said


def test_what_only_one_take_plays_is_shown_where_it_is(compare):
    lanes = compare.lanes
    assert [only._spans for only in lanes._only] == [[(0.0, 1.5)]] * 3
    (place,) = lanes._only[0]._places
    assert place == pytest.approx(lanes.to_a(6.0))
    said = compare.sections.change._shape.text()
    assert "A: A false start: left out." in said
    assert "B: Played twice: left out." in said
