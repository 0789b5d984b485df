"""Bars of a score: chosen, closed up, told apart when they repeat."""

import pytest

from app.journal.failures import PlainFailure
from app.journal.scale_records import ScaleSpec
from app.journal.scales import scale_score
from app.journal.scores import BarSpan, bar_spans, spans_text, within_bars


@pytest.mark.parametrize(
    ("text", "spans"),
    [
        ("1-8", (BarSpan(1, 8),)),
        ("5", (BarSpan(5, 5),)),
        ("1-8, 17-24", (BarSpan(1, 8), BarSpan(17, 24))),
        ("1–8", (BarSpan(1, 8),)),
        ("", ()),
    ],
)
def test_bars_are_read_as_typed(text, spans):
    assert bar_spans(text) == spans


@pytest.mark.parametrize("text", ["8-1", "x", "1-", "-3", "1-2-3"])
def test_what_is_no_stretch_of_bars_is_said(text):
    if text == "1-":
        assert bar_spans(text) == (BarSpan(1, 1),)
        return
    with pytest.raises(PlainFailure):
        bar_spans(text)


def test_spans_are_written_as_they_are_read():
    assert spans_text(bar_spans("1-8, 17")) == "1-8, 17"


def test_chosen_bars_close_up_to_the_beginning():
    score = scale_score(ScaleSpec("D", octaves=2, notes_a_beat=1))
    chosen = within_bars(score, (BarSpan(2, 2), BarSpan(4, 4)))
    assert [n.bar for n in chosen.notes] == [2] * 4 + [4] * 4
    assert [n.onset_beats for n in chosen.notes] == [float(k) for k in range(8)]
    assert [bar.onset_beats for bar in chosen.bars] == [0.0, 4.0]
    assert chosen.counted_beats == tuple(float(k) for k in range(8))
    assert chosen.end_beats == 8.0


def test_bars_that_are_not_there_are_said_with_those_that_are():
    with pytest.raises(PlainFailure, match="no bars 70-80") as told:
        within_bars(scale_score(ScaleSpec("D")), (BarSpan(70, 80),))
    assert "1 to 2" in told.value.next_step
