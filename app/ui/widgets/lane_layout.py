"""How high each lane is and which are shown; kept as a line of text."""

from itertools import pairwise
from typing import Any

from PySide6.QtCore import QObject, Signal

from app.ui.widgets.lane_overlay import LaneFrame
from app.ui.widgets.plot import Plot

_STEP = 1.25
_LEAST_SHARE, _MOST_SHARE = 0.4, 12.0
_SPACING_PX = 6
_EDGE_PX = 5


class LaneLayout(QObject):
    """Shares the height among the lanes; at least one lane is always shown.

    Signals
    -------
    changed()
        Heights or visibility are other ones now.
    """

    changed = Signal()

    def __init__(self, grid: Any, frames: list[LaneFrame]) -> None:
        super().__init__()
        self._grid = grid
        self._frames = frames
        self._plots: list[Plot] = []
        self._usual: list[float] = []
        self.shares: list[float] = []
        self.hidden: frozenset[int] = frozenset()
        self.chosen = 0
        self._room_px = 0.0

    def add(self, plot: Plot, share: float) -> None:
        """Take over a lane, below the others."""
        self._plots.append(plot)
        self._usual.append(share)
        self.shares.append(share)
        self._give_heights()

    def fit(self, room_px: float) -> None:
        """Share out this height."""
        self._room_px = room_px
        self._give_heights()

    @property
    def shown(self) -> list[int]:
        """The lanes that are shown, from above."""
        return [lane for lane in range(len(self._plots)) if lane not in self.hidden]

    def hide(self, lane: int, *, hidden: bool) -> None:
        """Hide a lane or show it again; the last one stays."""
        after = self.hidden | {lane} if hidden else self.hidden - {lane}
        if len(after) < len(self._plots):
            self.hidden = frozenset(after)
            if self.chosen in self.hidden:
                self.chosen = self.shown[0]
            self._give_heights()
            self.changed.emit()

    def choose_next(self) -> int:
        """Choose the next lane that is shown; keys work on the chosen one."""
        shown = self.shown
        at = shown.index(self.chosen) if self.chosen in shown else -1
        self.chosen = shown[(at + 1) % len(shown)]
        return self.chosen

    def resize(self, lane: int, steps: int) -> None:
        """Make a lane taller (positive) or lower."""
        self._set_share(lane, self.shares[lane] * _STEP**steps)

    def drag_edge(self, upper: int, lower: int, y: float) -> None:
        """Move the edge between two lanes to a pixel row; the others stay as high."""
        top, bottom = self._frames[upper].rect.top(), self._frames[lower].rect.bottom()
        both = self.shares[upper] + self.shares[lower]
        share = both * (y - top) / max(bottom - top, 1.0)
        share = min(max(share, _LEAST_SHARE), both - _LEAST_SHARE)
        self.shares[upper], self.shares[lower] = share, both - share
        self._give_heights()
        self.changed.emit()

    def edge_at(self, y: float) -> tuple[int, int] | None:
        """Return the lanes above and below the edge at a pixel row."""
        shown = self.shown
        for upper, lower in pairwise(shown):
            if abs(y - (self._frames[upper].rect.bottom() + _SPACING_PX / 2)) <= _EDGE_PX:
                return upper, lower
        return None

    def lane_at(self, y: float) -> int | None:
        """Return the lane at a pixel row."""
        for lane in self.shown:
            if self._frames[lane].rect.top() <= y <= self._frames[lane].rect.bottom():
                return lane
        return None

    def reset(self) -> None:
        """Show all lanes at their usual heights."""
        self.shares = list(self._usual)
        self.hidden = frozenset()
        self._give_heights()
        self.changed.emit()

    @property
    def text(self) -> str:
        """Heights and hidden lanes in one line."""
        shares = " ".join(f"{share:.2f}" for share in self.shares)
        return f"{shares} / {' '.join(map(str, sorted(self.hidden)))}"

    def restore(self, text: str) -> bool:
        """Take over what :attr:`text` gave; False for anything else."""
        before, _, after = text.partition("/")
        try:
            shares = [float(word) for word in before.split()]
            hidden = frozenset(int(word) for word in after.split())
        except ValueError:
            return False
        count = len(self._plots)
        fits = len(shares) == count and len(hidden) < count and hidden <= set(range(count))
        if not fits or not all(_LEAST_SHARE <= share <= _MOST_SHARE for share in shares):
            return False
        self.shares, self.hidden = shares, hidden
        self._give_heights()
        return True

    def _set_share(self, lane: int, share: float) -> None:
        self.shares[lane] = min(max(share, _LEAST_SHARE), _MOST_SHARE)
        self._give_heights()
        self.changed.emit()

    def _give_heights(self) -> None:
        """Set each lane's height itself: Qt's stretch factors are no exact shares."""
        shown = self.shown
        total = sum(self.shares[lane] for lane in shown)
        room = max(self._room_px - _SPACING_PX * len(shown), 0.0)
        for lane, plot in enumerate(self._plots):
            is_shown = lane in shown
            plot.set_visible(is_shown)
            self._frames[lane].is_shown = is_shown
            height = room * self.shares[lane] / total if is_shown else 0.0
            self._grid.setRowFixedHeight(lane, height)
            self._grid.setRowSpacing(lane, _SPACING_PX if is_shown else 0)
        # At once, so that an edge follows the pointer that drags it.
        self._grid.activate()
