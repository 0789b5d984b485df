"""Markers on the Listen page: placed by a key, shown, walked through, changed."""

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from app.journal.records import Marker
from app.services.views import TakeView
from app.ui.desk import Desk
from app.ui.models.held_key import HELD_S, HeldKey
from app.ui.models.marker_desk import Heard, MarkerDesk
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
        self._desk = desk
        self._lanes = lanes
        self._transport = transport
        self._pane = pane
        self._side = side
        self._kept = MarkerDesk(desk)
        self._held = HeldKey(self)
        self._pressed_s: float | None = None
        self._placed_id = ""
        desk.markersChanged.connect(lambda _id: self._kept.reread())
        self._kept.read.connect(self.show_markers)
        self._kept.placed.connect(self._placed)
        lanes.markerClicked.connect(self._clicked)
        self._connect_pane()

    def _connect_pane(self) -> None:
        pane = self._pane
        pane.seekWanted.connect(self._transport.seek)
        pane.chosen.connect(self._lanes.choose_marker)
        pane.changed.connect(self._kept.change)
        pane.moveWanted.connect(self.move)
        pane.deleted.connect(self._kept.delete)
        pane.filtered.connect(self._draw)
        keys = self._desk.keys
        pane.categories.clicked.connect(lambda: keys.action("categories").trigger())

    def show_take(self, view: TakeView | None) -> None:
        """Begin with a take, or with none."""
        self._kept.take_id = view.row.id if view else ""
        self._kept.categories = view.categories if view else ()
        self.show_markers(view.markers if view else ())

    def show_markers(self, markers: tuple[Marker, ...]) -> None:
        """Show these markers in the lanes and in the list, as far as the filter lets them."""
        self._pane.show_markers(markers, self._kept.categories)
        self._draw()
        if self._placed_id and self._pane.choose_placed(self._placed_id):
            self._lanes.choose_marker(self._placed_id)
            self._placed_id = ""

    def choose_when_read(self, marker: Marker) -> None:
        """Choose a marker that was kept elsewhere, once it is read."""
        self._placed_id = marker.id

    def watch_keys(self, page: QWidget) -> None:
        """Look at the keys of the page: one that is held marks a span."""
        page.installEventFilter(self._held)

    def mark(self, number: int) -> None:
        """Put a marker of the category with this number where it plays.

        A key that is held while it plays makes a span of it, from press to release.
        """
        heard, pressed_s = self._kept.heard(number, self._transport), self._transport.position_s
        if heard is None:
            return
        if not self._transport.is_playing:
            self._kept.place(heard)
        elif self._held.wait(lambda held_s: self._released(heard, held_s)):
            self._pressed_s = pressed_s
        else:
            self._kept.place(heard)

    def follow(self, position_s: float) -> None:
        """Keep the list in step, and draw the span of a key that is held."""
        self._pane.follow(position_s)
        if self._pressed_s is not None and position_s > self._pressed_s:
            self._lanes.show_pending((self._pressed_s, position_s))

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

    def toggle_filter(self) -> None:
        """Open or close the filter."""
        self._side.show_pane(MARKERS)
        self._pane.toggle_filter()

    def _released(self, heard: Heard, held_s: float) -> None:
        self._pressed_s = None
        self._lanes.show_pending(None)
        if held_s < HELD_S:
            self._kept.place(heard)
        else:
            self._kept.place_until(heard, self._transport.position_s, self._transport)

    def _draw(self) -> None:
        self._lanes.set_markers(self._pane.markers, self._kept.categories)

    def _placed(self, marker: Marker) -> None:
        self._placed_id = marker.id
        self._side.show_pane(MARKERS)

    def _clicked(self, marker_id: str) -> None:
        self._side.show_pane(MARKERS)
        if self._pane.choose(marker_id) and self._pane.shown is not None:
            self._lanes.choose_marker(marker_id)
            self._transport.seek(self._pane.shown.start_s)
