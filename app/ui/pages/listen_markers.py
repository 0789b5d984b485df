"""Markers on the Listen page: placed by a key, shown, walked through, changed."""

from PySide6.QtCore import QObject

from app.journal.records import Marker
from app.services.views import TakeView
from app.ui.desk import Desk
from app.ui.models.marker_desk import MarkerDesk
from app.ui.pages.listen_keys import MARKERS
from app.ui.widgets.markers_pane import MarkersPane
from app.ui.widgets.side_tabs import SideTabs
from app.ui.widgets.take_lanes import TakeLanes
from app.ui.widgets.transport import Transport


class MarkerControl(QObject):
    """Keeps the markers in lanes and list the same, and answers their keys."""

    def __init__(
        self, desk: Desk, lanes: TakeLanes, transport: Transport, pane: MarkersPane, side: SideTabs
    ) -> None:
        super().__init__(pane)
        self._lanes = lanes
        self._transport = transport
        self._pane = pane
        self._side = side
        self._kept = MarkerDesk(desk)
        self._placed_id = ""
        desk.markersChanged.connect(lambda _id: self._kept.reread())
        self._kept.read.connect(self.show_markers)
        self._kept.placed.connect(self._placed)
        lanes.markerClicked.connect(self._clicked)
        pane.seekWanted.connect(transport.seek)
        pane.chosen.connect(lanes.choose_marker)
        pane.changed.connect(self._kept.change)
        pane.moveWanted.connect(self.move)
        pane.deleted.connect(self._kept.delete)

    def show_take(self, view: TakeView | None) -> None:
        """Begin with a take, or with none."""
        self._kept.take_id = view.row.id if view else ""
        self._kept.categories = view.categories if view else ()
        self.show_markers(view.markers if view else ())

    def show_markers(self, markers: tuple[Marker, ...]) -> None:
        """Show these markers in the lanes and in the list."""
        self._lanes.set_markers(markers, self._kept.categories)
        self._pane.show_markers(markers, self._kept.categories)
        if self._placed_id and self._pane.choose(self._placed_id):
            self._lanes.choose_marker(self._placed_id)
            self._placed_id = ""

    def mark(self, number: int) -> None:
        """Put a marker of the category with this number where it plays."""
        self._kept.place(
            number,
            self._transport.position_s,
            is_playing=self._transport.is_playing,
            selection=self._transport.selection,
        )

    def step(self, steps: int) -> None:
        """Go to the next or earlier marker."""
        marker = self._pane.neighbour(self._transport.position_s, steps)
        if marker is not None:
            self._clicked(marker.id)

    def move(self) -> None:
        """Move the chosen marker to the playing position."""
        self._pane.move_chosen(self._transport.position_s, self._lanes.duration_s)

    def edit(self) -> None:
        """Write the text of the chosen marker."""
        self._side.show_pane(MARKERS)
        self._pane.write_text()

    def choose_when_read(self, marker: Marker) -> None:
        """Choose a marker that was placed elsewhere, once it is in the list."""
        self._placed(marker)

    def _placed(self, marker: Marker) -> None:
        self._placed_id = marker.id
        self._side.show_pane(MARKERS)

    def _clicked(self, marker_id: str) -> None:
        self._side.show_pane(MARKERS)
        if self._pane.choose(marker_id) and self._pane.shown is not None:
            self._lanes.choose_marker(marker_id)
            self._transport.seek(self._pane.shown.start_s)
