"""The sections beside the lanes: change, notes, days, markers, tempo."""

from collections.abc import Generator, Iterator

from PySide6.QtCore import Signal

from app.services.views import CompareView
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.widgets.compare_change_pane import ChangePane, NotePairsPane
from app.ui.widgets.compare_markers_pane import CarriedPane
from app.ui.widgets.compare_pane import ComparePane
from app.ui.widgets.compare_tempo_pane import TempoPane
from app.ui.widgets.compare_weeks_pane import VerdictsPane
from app.ui.widgets.side_tabs import SideTabs

CHANGE, NOTES, DAYS, MARKERS, TEMPO = range(5)


Sections = tuple[ChangePane, NotePairsPane, VerdictsPane, CarriedPane, TempoPane]


def sections_of(desk: Desk) -> Generator[None, None, Sections]:
    """Make the sections one by one, a yield before each but the first."""
    change = ChangePane(desk)
    yield
    notes = NotePairsPane(desk)
    yield
    days = VerdictsPane(desk)
    yield
    markers = CarriedPane(desk)
    yield
    return change, notes, days, markers, TempoPane(desk)


class CompareSections(SideTabs):
    """Shows one section at a time; each reads what it needs when it comes into view.

    Signals
    -------
    placeWanted(float), placeInBWanted(float)
        Somebody wants to hear a place, seconds in A or in B.
    """

    placeWanted = Signal(float)
    placeInBWanted = Signal(float)

    def __init__(self, desk: Desk, panes: Sections) -> None:
        self.panes: tuple[ComparePane, ...] = panes
        self.change, self.notes, self.days, self.markers, self.tempo = panes
        super().__init__()
        self.notes.placeWanted.connect(self.placeWanted)
        self.markers.placeWanted.connect(self.placeInBWanted)
        self.tempo.placeWanted.connect(self.placeInBWanted)
        self._desk = desk

    def add_sections(self) -> Iterator[None]:
        """Put the sections into their places, one before each yield."""
        names = (tr("Change"), tr("Notes"), tr("Days"), tr("Markers"), tr("Tempo"))
        actions = ("change", "notes", "days", "markers", "tempo")
        for name, action, pane in zip(names, actions, self.panes, strict=True):
            self.add_pane(name, f"compare.show_{action}", pane)
            yield
        self.show_pane(CHANGE)
        self._bind(self._desk)

    def _bind(self, desk: Desk) -> None:
        for action, slot in (
            ("show_change", lambda: self.show_pane(CHANGE)),
            ("show_notes", lambda: self.show_pane(NOTES)),
            ("show_days", lambda: self.show_pane(DAYS)),
            ("show_markers", lambda: self.show_pane(MARKERS)),
            ("show_tempo", lambda: self.show_pane(TEMPO)),
            ("period", self._next_period),
            ("scope", self._next_scope),
            ("next_marker", self._next_marker),
            ("still_there", lambda: self._answer(is_there=True)),
            ("gone", lambda: self._answer(is_there=False)),
            ("ask_again", lambda: self._answer(is_there=None)),
            ("keep_bounds", self.tempo.keep_bounds),
            ("runs", self._find_runs),
        ):
            desk.keys.bind(self, f"compare.{action}", slot)

    def show_compared(self, view: CompareView) -> None:
        """Take over another pair."""
        for pane in self.panes:
            pane.show_compared(view)

    def read_again(self) -> None:
        """Read anew: takes came, went or were measured."""
        for pane in self.panes:
            pane.read_again()

    def show_pane(self, index: int) -> None:
        """Show a section."""
        super().show_pane(index)
        self.panes[index].look()

    def _next_period(self) -> None:
        self.show_pane(DAYS)
        self.days.next_period()

    def _next_scope(self) -> None:
        self.show_pane(DAYS)
        self.days.next_scope()

    def _next_marker(self) -> None:
        self.show_pane(MARKERS)
        self.markers.next_marker()

    def _answer(self, *, is_there: bool | None) -> None:
        # A question that is not in view is not answered by a key hit by chance.
        if self.markers.isVisible():
            self.markers.answer(is_there=is_there)
        else:
            self.show_pane(MARKERS)

    def _find_runs(self) -> None:
        self.show_pane(TEMPO)
        self.tempo.find_runs()
