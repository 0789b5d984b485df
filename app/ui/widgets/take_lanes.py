"""The four lanes of one take: sound, deviation, tempo, loudness."""

from app.services.views import Curve, NoteRow, TakeView, Waveform
from app.ui.language import tr
from app.ui.theme import Colours
from app.ui.widgets.curve_item import CurveItem
from app.ui.widgets.lane_items import BeatItem, GapItem
from app.ui.widgets.lane_stack import LaneStack
from app.ui.widgets.note_bars import (
    DEVIATION_RANGE_CENTS,
    NoteBarsItem,
    deviation_range,
    placed,
)
from app.ui.widgets.plot import with_title_room
from app.ui.widgets.wave_item import WaveItem
from app.ui.words import position_text, reading_text

SOUND, DEVIATION, TEMPO, LOUDNESS = range(4)
_PITCH_SPAN_S = 8.0
_LEAST_PEAK = 0.02
_WAVE_ROOM = 1.15


class TakeLanes(LaneStack):
    """Draws a :class:`TakeView`."""

    def __init__(self, colours: Colours) -> None:
        super().__init__(colours)
        self.setAccessibleName(tr("Lanes of the take: sound, deviation, tempo, loudness"))
        self.add_lane(tr("Sound"), 3, -1.0, 1.0).axes[0].setStyle(showValues=False)
        edge = DEVIATION_RANGE_CENTS
        self.add_lane(tr("Deviation, cents"), 5, -edge, edge, zero_line=True)
        self.add_lane(tr("Tempo, beats per minute"), 3, 40.0, 160.0)
        self.add_lane(tr("Loudness, LUFS"), 3, -60.0, 0.0)
        self.add_time_axis()
        self._wave = WaveItem(colours)
        self._notes = NoteBarsItem(colours)
        self._pitch = CurveItem(colours, "ink_soft", width=1.0)
        self._tempo = CurveItem(colours)
        self._beats = BeatItem(colours)
        self._loudness = CurveItem(colours, "wave")
        self._gaps = {TEMPO: GapItem(colours), LOUDNESS: GapItem(colours)}
        for lane, item in (
            *self._gaps.items(),
            (SOUND, self._wave),
            (DEVIATION, self._notes),
            (DEVIATION, self._pitch),
            (TEMPO, self._beats),
            (TEMPO, self._tempo),
            (LOUDNESS, self._loudness),
        ):
            self.put(lane, item)

        self.viewMoved.connect(lambda start_s, end_s: self._show_pitch_near(end_s - start_s))

    def _show_pitch_near(self, span_s: float) -> None:
        """Draw the pitch inside the notes only where there is room to read it."""
        self._pitch.setVisible(span_s <= _PITCH_SPAN_S)

    def show_take(self, view: TakeView) -> None:
        """Draw everything but the sound, whose columns come on their own."""
        self.set_duration(view.duration_s)
        self._wave.clear()  # what another take sounds like must not stand beside these measures
        self.show_measured(view)
        self.set_markers(view.markers, view.categories)

    def show_measured(self, view: TakeView) -> None:
        """Draw the measures; the stretch in view stays."""
        measured = view.row.state in ("measured", "stale")
        self._pitch.show_curve(view.pitch_cents)
        edge = deviation_range(view.notes)
        self._notes.range_cents = edge
        self.set_value_range(DEVIATION, -edge, edge)
        self._notes.show_notes(placed(view.notes))
        self.set_lane_words(
            DEVIATION,
            tr(
                "Deviation, cents: sharp above (slanted), flat below (level), "
                "hollow where uncertain"
            ),
            "" if view.notes else view.notes_sentence or tr("Not measured yet."),
        )
        for lane, curve in ((TEMPO, view.tempo_bpm), (LOUDNESS, view.loudness_lufs)):
            self._gaps[lane].show_gaps(curve, view.duration_s)
        self._tempo.show_curve(view.tempo_bpm)
        self._beats.show_beats(view.beat_s.tolist())
        self._fit(TEMPO, view.tempo_bpm, 10.0)
        self.set_lane_words(
            TEMPO, tr("Tempo, beats per minute"), _gap_words(view.tempo_bpm, measured)
        )
        self._loudness.show_curve(view.loudness_lufs)
        self._fit(LOUDNESS, view.loudness_lufs, 3.0)
        self.set_lane_words(
            LOUDNESS, tr("Loudness, LUFS"), _gap_words(view.loudness_lufs, measured)
        )

    def show_waveform(self, waveform: Waveform) -> None:
        """Draw the sound."""
        self._wave.show_waveform(waveform)
        if self.is_whole:
            loudest = max(float(waveform.high.max()), -float(waveform.low.min()), _LEAST_PEAK)
            self.set_value_range(SOUND, -loudest * _WAVE_ROOM, loudest * _WAVE_ROOM)
        self.set_lane_words(SOUND, tr("Sound"))

    def mark_current(self, note: NoteRow | None) -> None:
        """Mark the note that sounds."""
        self._notes.set_current(note.index if note is not None else None)

    def note_at(self, time_s: float) -> NoteRow | None:
        """Return the note that sounds at `time_s`."""
        return self._notes.note_at(time_s)

    def words_at(self, time_s: float, y: float = -1.0) -> str:
        """Say what lies at a moment: time, note, cents; in a gap of the lane there: why."""
        lane = self.layout_of_lanes.lane_at(y)
        why = self._gaps[lane].words_at(time_s) if lane in self._gaps else ""
        note = self.note_at(time_s)
        if note is None:
            return "   ".join(filter(None, (position_text(time_s), why)))
        parts = [position_text(time_s), note.name, reading_text(note.deviation)]
        if note.kind != "note":
            parts.append(note.kind.replace("_", " "))
        parts.append(note.vibrato and tr("vibrato {numbers}").format(numbers=note.vibrato))
        parts.append(tr("open string") if note.is_open_string else "")
        return "   ".join(filter(None, (*parts, why)))

    def _fit(self, lane: int, curve: Curve, room: float) -> None:
        highs = [float(ys.max()) for _, ys in curve.segments if ys.size]
        lows = [float(ys.min()) for _, ys in curve.segments if ys.size]
        if highs:
            self.set_value_range(lane, *with_title_room(min(lows) - room, max(highs) + room))


def _gap_words(curve: Curve, measured: bool) -> str:
    if curve.segments:
        return ""
    return curve.gap_sentence or ("" if measured else tr("Not measured yet."))
