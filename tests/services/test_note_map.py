"""The note map: which take's note stands where, medians of weeks, what does not match."""

from dataclasses import replace
from datetime import date
from types import SimpleNamespace

import pytest

from app.journal.failures import PlainFailure
from app.services.map_rows import MapCell, MapRow, weeks_of
from app.services.note_map import NoteMapService


def row(day: str, *cents: float | None, certain: bool = True) -> MapRow:
    on = date.fromisoformat(day)
    cells = tuple(None if c is None else MapCell(c, 1.0, certain) for c in cents)
    return MapRow(day, on, on, (day,), cells)


def test_a_week_runs_from_monday_to_sunday_and_gives_each_note_its_median():
    # ISO 8601: 2026-11-16 is the Monday of week 47.
    weeks = weeks_of(
        [
            row("2026-11-16", 3.0, None),
            row("2026-11-19", 9.0, -4.0),
            row("2026-11-22", 4.0, None),
            row("2026-11-23", 1.0, None),
        ]
    )
    assert [(w.first_day.day, w.last_day.day) for w in weeks] == [(16, 22), (23, 29)]
    assert [cell.cents if cell else None for cell in weeks[0].cells] == [4.0, -4.0]
    assert weeks[1].cells[1] is None, "what was measured on no day stays unmeasured"
    assert weeks[0].take_ids == ("2026-11-16", "2026-11-19", "2026-11-22")


def test_a_week_is_as_certain_as_most_of_its_takes():
    mixed = [
        row("2026-11-16", 3.0),
        row("2026-11-17", 3.0, certain=False),
        row("2026-11-18", 3.0, certain=False),
    ]
    assert not weeks_of(mixed)[0].cells[0].certain
    assert weeks_of([mixed[0], replace(mixed[0])])[0].cells[0].certain


class Stand:
    """A store and a comparing service with what the map asks of them."""

    def __init__(self, take_days, pairs):
        self.takes = SimpleNamespace(list=lambda passage_id: tuple(self._takes))
        self._takes = [
            SimpleNamespace(id=f"t{at}", practice_day=date.fromisoformat(day))
            for at, day in enumerate(take_days)
        ]
        self.passages = SimpleNamespace(get=lambda key: "passage" if key == "p" else None)
        self.measurements = SimpleNamespace(
            headlines=lambda ids: {
                i: SimpleNamespace(failure="", measured_at=date(2026, 1, 1)) for i in ids
            }
        )
        self.kept = {}
        self.alignments = SimpleNamespace(counts=lambda ids: self.kept)
        self.pairs = pairs
        self.compared = []

    def notes_of(self, take_id):
        shift = 10.0 * int(take_id[1:])
        return tuple(note(midi, start, start + shift) for start, midi in enumerate((67, 69, 70)))

    def comparison(self, reference, take, progress, should_stop):
        self.compared.append((reference, take))
        found = self.pairs[take]
        if found is None:
            return SimpleNamespace(change=None)
        pairs = tuple(SimpleNamespace(a_index=a, b_index=b) for a, b in found)
        return SimpleNamespace(change=SimpleNamespace(notes=pairs))


def note(midi, start_s, cents):
    from analysis.results import Measured, Provenance

    deviation = SimpleNamespace(deviation_cents=cents, uncertainty_cents=2.0)
    return SimpleNamespace(
        midi=midi,
        spelled=f"n{midi}",
        name="",
        note=SimpleNamespace(start_s=float(start_s)),
        deviation=Measured(deviation, Provenance("test", {})),
    )


def test_each_takes_notes_stand_under_the_notes_of_the_latest_take():
    stand = Stand(["2026-11-02", "2026-11-09"], {"t0": [(0, 1), (2, 2)]})
    found = NoteMapService(stand, stand).of_passage("p")
    assert found.reference_id == "t1"
    assert [one.name for one in found.notes] == ["n67", "n69", "n70"]
    first, latest = found.takes
    assert [cell.cents if cell else None for cell in first.cells] == [1.0, None, 2.0]
    assert [cell.cents for cell in latest.cells] == [10.0, 11.0, 12.0]


def test_a_take_that_does_not_match_is_left_out_and_named():
    stand = Stand(["2026-11-02", "2026-11-09"], {"t0": None})
    found = NoteMapService(stand, stand).of_passage("p")
    assert len(found.takes) == 1
    assert found.left_out == ("2 Nov 2026 does not match the reference take.",)


def test_what_was_laid_note_against_note_once_is_kept():
    stand = Stand(["2026-11-02", "2026-11-09"], {"t0": [(0, 0)]})
    service = NoteMapService(stand, stand)
    service.of_passage("p")
    service.of_passage("p")
    assert stand.compared == [("t1", "t0")]


def test_a_take_more_is_laid_against_the_take_that_the_others_were():
    stand = Stand(["2026-11-02", "2026-11-09", "2026-11-16"], {"t0": [(0, 0)], "t2": [(0, 0)]})
    stand.kept = {"t1": 1, "t0": 1}
    assert NoteMapService(stand, stand).of_passage("p").reference_id == "t1"
    takes = [*stand._takes, SimpleNamespace(id="t3"), SimpleNamespace(id="t4")]
    assert NoteMapService(stand, stand).reference_of(takes) == "t4"


def test_without_a_measured_take_there_is_no_map():
    with pytest.raises(PlainFailure, match="No take of this passage is measured"):
        NoteMapService(Stand([], {}), Stand([], {})).of_passage("p")


def test_with_a_score_all_its_notes_are_the_axis_and_cells_stand_under_them():
    from analysis.score_results import ScorePair, WrittenPlace
    from app.journal.scores import Score, ScoreNote
    from app.services.note_map import written_axis

    # Written: G, a grace note, A sharp, B, C; played: G, something else, A sharp, C.
    written = (
        ScoreNote(0.0, 1.0, 67, "G", 0, 4),
        ScoreNote(1.0, 0.0, 69, "A", 0, 4, grace=True),
        ScoreNote(1.0, 1.0, 70, "A", 1, 4),
        ScoreNote(2.0, 1.0, 71, "B", 0, 4),
        ScoreNote(3.0, 1.0, 72, "C", 0, 5),
    )
    score = Score("Violin", written, (0.0, 1.0, 2.0, 3.0), (), 4.0)
    pairs = [
        ScorePair(played, WrittenPlace(at, "", midi, 1, 1.0, onset))
        for played, at, midi, onset in ((0, 0, 67, 0.0), (2, 1, 70, 1.0), (3, 3, 72, 3.0))
    ]
    played = [
        note(midi, start, 0.0) for midi, start in ((67, 0.5), (80, 1.0), (70, 1.5), (72, 3.5))
    ]
    axis = written_axis(score, SimpleNamespace(pairs=pairs), played)
    assert [one.name for one in axis.notes] == ["G4", "A#4", "B4", "C5"]
    assert [one.at_s for one in axis.notes] == pytest.approx([0.5, 1.5, 2.5, 3.5])
    cells = {at: MapCell(float(at), 1.0, True) for at in range(4)}
    placed = axis.placed(cells)
    assert {at: cell.cents for at, cell in placed.items()} == {0: 0.0, 1: 2.0, 3: 3.0}
    assert written_axis(score, SimpleNamespace(pairs=pairs[:1]), played) is None
