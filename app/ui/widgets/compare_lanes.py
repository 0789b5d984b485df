"""Two takes on one time axis."""

from app.services.following_views import AlignedPair, ShapeView
from app.services.reading_views import Reading
from app.services.shape_curves import shape_curves
from app.services.views import CompareView, Curve
from app.ui.language import tr
from app.ui.models.time_map import TimeMap
from app.ui.theme import Colours
from app.ui.widgets.compare_hairpins import HairpinItem
from app.ui.widgets.compare_only import OnlyItem
from app.ui.widgets.curve_item import CurveItem
from app.ui.widgets.lane_stack import LaneStack
from app.ui.widgets.link_item import LinkItem
from app.ui.widgets.note_bars import (
    DEVIATION_RANGE_CENTS,
    NoteBarsItem,
    PlacedNote,
    deviation_range,
    placed,
)
from app.ui.widgets.plot import with_title_room
from app.ui.words import position_text, reading_text

UPPER, LOWER, LOUDNESS = range(3)


class CompareLanes(LaneStack):
    """Take A and take B, B moved to A's time axis where the two could be aligned.

    Overlaid, the upper lane shows both takes' deviation of each note (ring A, dot B)
    and the lower one both tempi; one above the other, each take has a deviation lane.
    """

    def __init__(self, colours: Colours) -> None:
        super().__init__(colours)
        self.setAccessibleName(tr("Lanes of both takes"))
        self.is_overlaid = True
        self.to_a = TimeMap((), ())
        self.to_b = TimeMap((), ())
        self._compared: CompareView | None = None
        self._shape: ShapeView | None = None
        edge = DEVIATION_RANGE_CENTS
        self.add_lane("", 4, -edge, edge, zero_line=True)
        self.add_lane("", 4, -edge, edge, zero_line=True)
        self.add_lane(tr("Loudness, LUFS: A dashed, B solid"), 2, -60.0, 0.0)
        self.add_time_axis()
        self._links = LinkItem(colours)
        self._a_notes, self._b_notes = NoteBarsItem(colours), NoteBarsItem(colours)
        self._a_tempo = CurveItem(colours, "ink_soft", dashed=True)
        self._b_tempo = CurveItem(colours)
        self._a_loud = CurveItem(colours, "ink_soft", dashed=True)
        self._b_loud = CurveItem(colours)
        self._hairpins = HairpinItem(colours)
        self._only = [OnlyItem(colours) for _ in range(3)]
        for lane, only in enumerate(self._only):
            self.put(lane, only)
        for lane, item in (
            (UPPER, self._a_notes),
            (UPPER, self._links),
            (LOWER, self._b_notes),
            (LOWER, self._a_tempo),
            (LOWER, self._b_tempo),
            (LOUDNESS, self._a_loud),
            (LOUDNESS, self._b_loud),
            (LOUDNESS, self._hairpins),
        ):
            self.put(lane, item)

    def show_compared(self, view: CompareView) -> None:
        """Draw both takes."""
        self._compared = view
        self._shape = None
        for item in self._only:
            item.clear()
        a_s, b_s = view.alignment_a_s.tolist(), view.alignment_b_s.tolist()
        self.to_a, self.to_b = TimeMap(b_s, a_s), TimeMap(a_s, b_s)
        self.set_duration(view.a.duration_s)
        self._draw()

    def show_together(self, pair: AlignedPair, shape: ShapeView) -> None:
        """Show what only one of both plays, and their loudness at one level."""
        for item in self._only:
            item.show_pair(pair, self.to_a)
        self._shape = shape if shape.time_s.size else None
        self._draw_loudness()

    def set_overlaid(self, overlaid: bool) -> None:
        """Overlaid, or one above the other."""
        self.is_overlaid = overlaid
        self._draw()

    def words_at(self, time_s: float) -> str:
        """Say which notes lie under the pointer."""
        if self._compared is None:
            return ""
        for pair in reversed(self._compared.notes):
            if pair.a_start_s <= time_s:
                return (
                    f"{position_text(time_s)}   {pair.name}   A {reading_text(pair.a_deviation)}"
                    f"   B {reading_text(pair.b_deviation)}"
                )
        return position_text(time_s)

    def _draw(self) -> None:
        view = self._compared
        if view is None:
            return
        for item in (self._a_notes, self._links, self._b_notes, self._a_tempo, self._b_tempo):
            item.setVisible(False)
        if self.is_overlaid and view.aligned:
            self._draw_overlaid(view)
        else:
            self._draw_stacked(view)
        self._draw_loudness()

    def _draw_loudness(self) -> None:
        view, shape = self._compared, self._shape
        if view is None:
            return
        self._hairpins.show_hairpins(shape.hairpins if shape is not None else ())
        if shape is None:
            self._a_loud.show_curve(view.a.loudness_lufs)
            self._b_loud.show_points(self._on_a_axis(view.b.loudness_lufs))
            self._fit(LOUDNESS, (view.a.loudness_lufs, view.b.loudness_lufs), 3.0)
            self.set_lane_words(LOUDNESS, tr("Loudness, LUFS: A dashed, B solid"))
            return
        a, b = shape_curves(shape)
        self._a_loud.show_curve(a)
        self._b_loud.show_curve(b)
        self._fit(LOUDNESS, (a, b), 3.0)
        words = tr("Shape, dB: A dashed, B solid, moved by {db} onto A's level")
        self.set_lane_words(
            LOUDNESS, words.format(db=reading_text(Reading(shape.offset_db, "dB", signed=True)))
        )

    def _draw_overlaid(self, view: CompareView) -> None:
        self._frame_deviation(view)
        links = [
            (pair.a_start_s, pair.a_deviation.value, pair.b_deviation.value)
            for pair in view.notes
            if isinstance(pair.a_deviation, Reading) and isinstance(pair.b_deviation, Reading)
        ]
        self._links.show_links(links)
        self._links.setVisible(True)
        self.set_lane_words(
            UPPER,
            tr("Deviation, cents: ring take A, dot take B"),
            "" if links else tr("No note was measured in both takes."),
        )
        self._a_tempo.show_curve(view.a.tempo_bpm)
        self._b_tempo.show_points(self._on_a_axis(view.b.tempo_bpm))
        self._a_tempo.setVisible(True)
        self._b_tempo.setVisible(True)
        self._fit(LOWER, (view.a.tempo_bpm, view.b.tempo_bpm), 8.0)
        both = view.a.tempo_bpm.segments or view.b.tempo_bpm.segments
        self.set_lane_words(
            LOWER,
            tr("Tempo, beats per minute: A dashed, B solid"),
            "" if both else view.a.tempo_bpm.gap_sentence,
        )

    def _frame_deviation(self, view: CompareView) -> tuple[float, float]:
        """Give both takes' bars the same range, and the upper lane with them."""
        edge = max(deviation_range(view.a.notes), deviation_range(view.b.notes))
        self._a_notes.range_cents = self._b_notes.range_cents = edge
        self.set_value_range(UPPER, -edge, edge)
        return -edge, edge

    def _draw_stacked(self, view: CompareView) -> None:
        self.set_value_range(LOWER, *self._frame_deviation(view))
        self._a_notes.show_notes(placed(view.a.notes))
        self._b_notes.show_notes(
            [
                PlacedNote(self.to_a(note.start_s), self.to_a(note.end_s), note)
                for note in view.b.notes
            ]
        )
        self._a_notes.setVisible(True)
        self._b_notes.setVisible(True)
        self.set_lane_words(UPPER, tr("Take A, deviation in cents"), view.a.notes_sentence)
        moved = tr("Take B, deviation in cents on A's time axis")
        title = moved if view.aligned else tr("Take B, deviation in cents")
        self.set_lane_words(LOWER, title, view.b.notes_sentence)

    def _on_a_axis(self, curve: Curve) -> list[tuple[float, float]]:
        return [
            (self.to_a(x), y)
            for xs, ys in curve.segments
            for x, y in zip(xs.tolist(), ys.tolist(), strict=True)
        ]

    def _fit(self, lane: int, curves: tuple[Curve, ...], room: float) -> None:
        values = [ys for curve in curves for _, ys in curve.segments if ys.size]
        if values:
            low = min(float(ys.min()) for ys in values)
            high = max(float(ys.max()) for ys in values)
            self.set_value_range(lane, *with_title_room(low - room, high + room))
