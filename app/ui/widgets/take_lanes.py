"""The four lanes of one take: sound, deviation, tempo, loudness."""

from app.services.views import Curve, NoteRow, TakeView, Waveform
from app.services.wording import position_text, reading_text
from app.ui.theme import Colours
from app.ui.widgets.lane_items import BeatItem, CurveItem, WaveItem
from app.ui.widgets.lane_stack import LaneStack, with_title_room
from app.ui.widgets.note_bars import (
    DEVIATION_RANGE_CENTS,
    NoteBarsItem,
    deviation_range,
    placed,
)

SOUND, DEVIATION, TEMPO, LOUDNESS = range(4)
_PITCH_SPAN_S = 8.0
_LEAST_PEAK = 0.02
_WAVE_ROOM = 1.15
_NOT_YET = "Not measured yet."


class TakeLanes(LaneStack):
    """Draws a :class:`TakeView`."""

    def __init__(self, colours: Colours) -> None:
        super().__init__(colours)
        self.setAccessibleName("Lanes of the take: sound, deviation, tempo, loudness")
        self.add_lane("Sound", 3, -1.0, 1.0).axes[0].setStyle(showValues=False)
        edge = DEVIATION_RANGE_CENTS
        self.add_lane("Deviation, cents", 5, -edge, edge, zero_line=True)
        self.add_lane("Tempo, beats per minute", 3, 40.0, 160.0)
        self.add_lane("Loudness, LUFS", 3, -60.0, 0.0)
        self.add_time_axis()
        self._wave = WaveItem(colours)
        self._notes = NoteBarsItem(colours)
        self._pitch = CurveItem(colours, "ink_soft", width=1.0)
        self._tempo = CurveItem(colours)
        self._beats = BeatItem(colours)
        self._loudness = CurveItem(colours, "wave")
        for lane, item in (
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
            "Deviation, cents: sharp above (slanted), flat below (level), hollow where uncertain",
            "" if view.notes else view.notes_sentence or _NOT_YET,
        )
        self._tempo.show_curve(view.tempo_bpm)
        self._beats.show_beats(view.beat_s.tolist())
        self._fit(TEMPO, view.tempo_bpm, 10.0)
        self.set_lane_words(TEMPO, "Tempo, beats per minute", _gap_words(view.tempo_bpm, measured))
        self._loudness.show_curve(view.loudness_lufs)
        self._fit(LOUDNESS, view.loudness_lufs, 3.0)
        self.set_lane_words(LOUDNESS, "Loudness, LUFS", _gap_words(view.loudness_lufs, measured))

    def show_waveform(self, waveform: Waveform) -> None:
        """Draw the sound."""
        self._wave.show_waveform(waveform)
        if self.is_whole:
            loudest = max(float(waveform.high.max()), -float(waveform.low.min()), _LEAST_PEAK)
            self.set_value_range(SOUND, -loudest * _WAVE_ROOM, loudest * _WAVE_ROOM)
        self.set_lane_words(SOUND, "Sound")

    def mark_current(self, note: NoteRow | None) -> None:
        """Mark the note that sounds."""
        self._notes.set_current(note.index if note is not None else None)

    def note_at(self, time_s: float) -> NoteRow | None:
        """Return the note that sounds at `time_s`."""
        return self._notes.note_at(time_s)

    def words_at(self, time_s: float) -> str:
        """Say what lies under the pointer: time, note, cents."""
        note = self.note_at(time_s)
        if note is None:
            return position_text(time_s)
        text = f"{position_text(time_s)}   {note.name}   {reading_text(note.deviation)}"
        extras = [note.vibrato] if note.vibrato else []
        if note.kind != "note":
            extras.insert(0, note.kind.replace("_", " "))
        if note.is_open_string:
            extras.append("open string")
        return "   ".join([text, *extras])

    def _fit(self, lane: int, curve: Curve, room: float) -> None:
        highs = [float(ys.max()) for _, ys in curve.segments if ys.size]
        lows = [float(ys.min()) for _, ys in curve.segments if ys.size]
        if highs:
            self.set_value_range(lane, *with_title_room(min(lows) - room, max(highs) + room))


def _gap_words(curve: Curve, measured: bool) -> str:
    if curve.segments:
        return ""
    return curve.gap_sentence or ("" if measured else _NOT_YET)
