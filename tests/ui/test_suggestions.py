"""Suggestions and the first listen on the Listen page."""

import pytest
from PySide6.QtCore import Qt

from app.services.reading_views import Reading
from app.services.rows import HIDDEN
from app.ui.pages.listen_keys import MARKERS, SUGGESTIONS
from app.ui.words import position_text


@pytest.fixture
def listen(window, settle):
    window.main.show_page(1)
    settle(window)
    return window.main.listen


@pytest.fixture
def press(window, settle):
    def key(action_id: str) -> None:
        window.main.desk.keys.action(f"listen.{action_id}").trigger()
        settle(window)

    return key


def rows(listen):
    return listen.suggestions.table.rows_model.rows


def pane_shown(listen) -> int:
    return listen.side.findChild(type(listen.side._stack)).currentIndex()


def test_five_are_offered_and_all_when_asked_for(listen, press):
    assert len(rows(listen)) == 5
    press("all_suggestions")
    assert len(rows(listen)) == 7
    press("all_suggestions")
    assert len(rows(listen)) == 5


def test_walking_through_suggestions_goes_to_their_places(listen, press, bench):
    press("next_suggestion")
    assert pane_shown(listen) == SUGGESTIONS
    chosen = listen.suggestions.table.chosen
    assert chosen is not None
    assert bench.playing.now.position_s == pytest.approx(chosen.start_s)
    press("previous_suggestion")
    assert bench.playing.now.position_s == pytest.approx(rows(listen)[0].start_s)


def test_the_evidence_of_the_chosen_one_is_shown_and_read_out(listen, press):
    press("next_suggestion")
    chosen = listen.suggestions.table.chosen
    assert listen.suggestions._evidence.text().splitlines() == list(chosen.evidence)
    model, at = listen.suggestions.table.rows_model, listen.suggestions.table.currentIndex()
    spoken = model.data(at, Qt.ItemDataRole.AccessibleTextRole)
    assert chosen.text in spoken
    assert all(line in spoken for line in chosen.evidence)


def test_accepting_makes_a_marker_and_undo_offers_it_again(listen, press, bench, window, settle):
    wanted = rows(listen)[0]
    before = len(bench.state.markers)
    press("accept")
    placed = [m for m in bench.state.markers.values() if m.text == wanted.text]
    assert len(placed) == 1
    assert placed[0].start_s == wanted.start_s
    assert wanted not in rows(listen)
    window.main.desk.keys.action("undo").trigger()
    settle(window)
    assert len(bench.state.markers) == before
    assert wanted in rows(listen)


def test_accepting_to_write_puts_the_cursor_into_the_text(listen, press, bench):
    wanted = rows(listen)[1]
    listen.suggestions.step(1)
    press("accept_edit")
    assert pane_shown(listen) == MARKERS
    assert listen.markers.shown is not None
    assert listen.markers.shown.text == wanted.text


def test_a_dismissal_takes_it_away_and_can_be_brought_back(listen, press, bench):
    wanted = rows(listen)[0]
    press("dismiss")
    assert wanted not in rows(listen)
    assert bench.suggesting.aside == [wanted]
    assert "1 put aside" in listen.suggestions._back.text()
    press("bring_back")
    assert bench.suggesting.aside == []


def test_first_by_ear_hides_every_measurement(listen, press, bench):
    note = next(note for note in listen.view.notes if isinstance(note.deviation, Reading))
    listen.transport.seek(note.start_s + 0.05)
    assert note.name in listen.hover_text
    press("ear_first")
    assert listen.hover_text == position_text(note.start_s + 0.05), "nothing of before is left"
    assert listen.lanes.accessibleDescription() == listen.hover_text
    assert listen.view.notes == ()
    assert listen.ear_strip.isVisible()
    assert not listen.ear_strip.show_it.isEnabled()
    assert listen.suggestions.words == HIDDEN
    assert rows(listen) == ()
    assert listen.notes._words.text() == HIDDEN
    assert listen.numbers._table.rows_model.rows == ()
    assert listen.lanes.note_at(3.0) is None
    assert "cents" not in listen._readings.text()


def test_after_own_markers_the_measurements_come_with_the_comparison(listen, press, bench):
    press("ear_first")
    press("show_measured")
    assert listen.view.notes == (), "not without a marker"
    press("mark_1")
    assert listen.ear_strip.show_it.isEnabled()
    press("show_measured")
    assert listen.view.notes
    assert not listen.ear_strip.isVisible()
    assert pane_shown(listen) == SUGGESTIONS
    found = listen.suggestions.agreement.rows_model.rows
    assert [row.kind for row in found] == ["hit", "missed", "heard_only"]
    assert listen.suggestions._both.isVisible()


def test_who_heard_nothing_may_look_too(listen, press):
    press("ear_first")
    press("heard_nothing")
    assert listen.view.notes


def test_no_longer_first_by_ear_shows_everything(listen, press):
    press("ear_first")
    press("ear_first")
    assert listen.view.notes
    assert not listen.ear_strip.isVisible()


def test_a_real_take_is_hidden_marked_and_shown(open_window, real_bench, settle):
    window = open_window(real_bench)
    window.main.show_page(1)
    settle(window)
    listen, keys = window.main.listen, window.main.desk.keys
    assert listen.view.notes
    for action_id in ("ear_first", "mark_1", "show_measured"):
        if action_id == "show_measured":
            assert listen.view.notes == ()
        keys.action(f"listen.{action_id}").trigger()
        settle(window)
    assert listen.view.notes
    assert real_bench.first_listening.state(listen.view.row.id).agreement is not None
