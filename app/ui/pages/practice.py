"""Practice: today in one look, and the take."""

from datetime import date
from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QStackedWidget, QWidget

from app.journal.records import AimMet, JournalSettings, Passage
from app.services.views import AnyReading, MarkerRow, TakeRow, TodayView
from app.services.wording import day_text, length_text, position_text, reading_text
from app.ui.desk import Desk
from app.ui.models.measure_queue import MeasureQueue
from app.ui.models.recorder import Recorder
from app.ui.models.rows import Column
from app.ui.pages.page import Page
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, column, fill, row, sentence, soft
from app.ui.widgets.choices import short_passage
from app.ui.widgets.day_head import DayHead
from app.ui.widgets.import_panel import ImportPanel
from app.ui.widgets.passage_form import PassageForm
from app.ui.widgets.record_panel import RecordPanel
from app.ui.widgets.table import RowTable

_PANEL_WIDTH_PX = 456
_FILE_KINDS = (
    "Recordings (*.wav *.flac *.ogg *.oga *.opus *.mp3 *.m4a *.mp4 *.mov *.aac *.aif *.aiff);;"
    "All files (*)"
)
_NO_TAKE_YET = "No take yet today. Record one, or drop recordings anywhere on this window."
_NO_PASSAGE_YET = (
    "Begin with a passage: a few bars you want to hear getting better. Then record it, "
    "or drop recordings anywhere on this window."
)
# Common practice, no source: what teachers tell every student.
_CAUTION = (
    "Pain is a reason to stop. A pause every half hour helps; keep headphones low, "
    "above all when you loop."
)


def take_name(take: TakeRow) -> str:
    """Return a take of a known day in few words."""
    return f"{short_passage(take.passage_name)}, take {take.number}"


def _short(reading: AnyReading) -> str:
    return reading_text(reading) if hasattr(reading, "value") else "\N{EN DASH}"


class PracticePage(Page):
    """Today's numbers, the record panel, today's takes, what is to work on."""

    def __init__(self, desk: Desk, queue: MeasureQueue, recorder: Recorder) -> None:
        super().__init__(desk, "Practice")
        self._queue = queue
        self._view: TodayView | None = None
        self._settings = JournalSettings()
        self.head = DayHead()
        self.panel = RecordPanel(desk, recorder)
        self.form = PassageForm(desk)
        self.imports = ImportPanel(desk)
        self._import = Button("Import recordings", "import", action_id="import")
        self._left = QStackedWidget()
        self._takes: RowTable[TakeRow] = RowTable("Takes of today", self._take_columns(), stretch=0)
        self._no_takes = sentence()
        self.open_markers: RowTable[MarkerRow] = RowTable(
            "Markers to work on", self._marker_columns(), stretch=(0, 1)
        )
        self._no_markers = sentence(
            "Nothing is open. Markers you place while listening come back here until settled."
        )
        self._build()
        self._connect(recorder)
        self._bind()

    def _take_columns(self) -> tuple[Column[TakeRow], ...]:
        return (
            Column("Passage", take_name, self._more),
            Column("At", lambda take: f"{take.recorded_at:%H:%M}", is_number=True),
            Column("Length", lambda take: length_text(take.duration_s), is_number=True),
            Column("Intonation", lambda take: _short(take.intonation), self._more, is_number=True),
            Column("Tempo", lambda take: _short(take.tempo), self._more, is_number=True),
            Column("", self._state_text, self._more),
        )

    def _marker_columns(self) -> tuple[Column[MarkerRow], ...]:
        def what(row: MarkerRow) -> str:
            text = f": {row.marker.text}" if row.marker.text else ""
            return f"{row.marker.category}{text}"

        def where(row: MarkerRow) -> str:
            near = f", near {row.near_note}" if row.near_note else ""
            return (
                f"{row.passage_name}, {day_text(row.practice_day)}, take {row.take_number}, "
                f"at {position_text(row.marker.start_s)}{near}"
            )

        return (
            Column("What", what, lambda row: f"{what(row)}. {where(row)}"),
            Column("Passage", lambda row: short_passage(row.passage_name), where),
            Column("Day", lambda row: f"{row.practice_day.day} {row.practice_day:%b}", where),
            Column("Weight", lambda row: str(row.marker.weight), where, is_number=True),
        )

    def _build(self) -> None:
        record_side = column(spacing=GRID_PX)
        fill(record_side, self.panel, self._import, soft(_CAUTION))
        record_side.setStretch(0, 1)
        takes = Card("Takes of today")
        fill(takes.box, self._no_takes, self._takes)
        takes.box.setStretch(2, 1)
        markers = Card("To work on")
        fill(markers.box, self._no_markers, self.open_markers)
        markers.box.setStretch(2, 1)
        for card in (takes, markers):
            card.box.addStretch(0)
        right = column(spacing=2 * GRID_PX)
        fill(right, takes, markers)
        right.setStretch(0, 1)
        right.setStretch(1, 1)
        split = row(spacing=2 * GRID_PX)
        today = QWidget()
        holder = QWidget()
        holder.setFixedWidth(_PANEL_WIDTH_PX)
        holder.setLayout(record_side)
        fill(split, holder, right)
        split.setStretch(1, 1)
        today.setLayout(split)
        split.setContentsMargins(0, 0, 0, 0)
        for widget in (today, self.form, self.imports):
            self._left.addWidget(widget)
        box = column(self, spacing=2 * GRID_PX, margin=2 * GRID_PX)
        fill(box, self.head, self._left)
        box.setStretch(1, 1)

    def _connect(self, recorder: Recorder) -> None:
        desk = self.desk
        for signal in (desk.takesChanged, desk.passagesChanged, desk.daysChanged):
            signal.connect(self.refresh_if_open)
        desk.markersChanged.connect(self.refresh_if_open)
        self.head.minutes.typed.connect(self._set_minutes)
        self.panel.passageWanted.connect(self.new_passage)
        self.panel.changeWanted.connect(self.change_passage)
        self.form.closed.connect(self.show_today)
        self.form.made.connect(self._passage_made)
        self.imports.closed.connect(self.show_today)
        self._import.clicked.connect(self.choose_files)
        self._takes.rowOpened.connect(lambda take: desk.listenWanted.emit(take.id, 0.0))
        self.open_markers.rowOpened.connect(
            lambda row: desk.listenWanted.emit(row.marker.take_id, row.marker.start_s)
        )
        self._queue.changed.connect(self._takes.viewport().update)
        recorder.find_inputs()
        recorder.find_unfinished()
        self._recorder = recorder

    def _bind(self) -> None:
        bind, panel = self.desk.keys.bind, self.panel
        bind(self, "practice.record", panel.toggle)
        bind(self, "practice.level", self._recorder.toggle_level)
        bind(self, "practice.aim", panel.aim.setFocus)
        bind(self, "practice.minutes", self.head.minutes.write)
        bind(self, "practice.passage", self.new_passage)
        bind(self, "practice.edit_passage", self.change_passage)
        bind(self, "practice.met", lambda: panel.answer(AimMet.YES))
        bind(self, "practice.partly", lambda: panel.answer(AimMet.PARTLY))
        bind(self, "practice.not_met", lambda: panel.answer(AimMet.NO))
        bind(self, "practice.listen", self._listen_to_latest)

    def refresh(self) -> None:
        """Read today again."""
        practising = self.desk.workbench.practising
        self.desk.jobs.store(
            lambda: (practising.today(), practising.settings()),
            self._take_over,
            subject="practice.today",
        )

    def leave_page(self) -> None:
        """Close the input that only showed its level."""
        super().leave_page()
        self._recorder.stop_listening()

    def show_today(self) -> None:
        """Put the forms away."""
        self._left.setCurrentIndex(0)

    def new_passage(self) -> None:
        """Open the form for a new passage."""
        self._left.setCurrentWidget(self.form)
        self.form.start(self._settings.default_settings)

    def change_passage(self) -> None:
        """Open the form on the chosen passage."""
        known = self._view.passages if self._view else ()
        for passage in known:
            if passage.id == self.panel.passage.key:
                self._left.setCurrentWidget(self.form)
                self.form.edit(passage)

    def choose_files(self) -> None:
        """Ask for files to import."""
        names, _ = QFileDialog.getOpenFileNames(self, "Import recordings", "", _FILE_KINDS)
        if names:
            self.import_files([Path(name) for name in names])

    def import_files(self, paths: list[Path]) -> None:
        """Show the table of these files."""
        self._left.setCurrentWidget(self.imports)
        passages = self._view.passages if self._view else ()
        self.imports.look_at(paths, self.panel.passage.key or None, passages)

    def _take_over(self, found: tuple[TodayView, JournalSettings]) -> None:
        self._view, self._settings = found
        view = self._view
        self.head.show_day(view, date.today())
        if self._recorder.device_key is None:
            self._recorder.device_key = self._settings.input_device
        self.panel.offer_passages(view.passages)
        self._takes.show_rows(view.takes)
        self._takes.setVisible(bool(view.takes))
        self._no_takes.setText(_NO_TAKE_YET if view.passages else _NO_PASSAGE_YET)
        self._no_takes.setVisible(not view.takes)
        self.open_markers.show_rows(view.to_work_on)
        self.open_markers.setVisible(bool(view.to_work_on))
        self._no_markers.setVisible(not view.to_work_on)
        self._queue.look()

    def _passage_made(self, passage: Passage) -> None:
        self.show_today()
        known = self._view.passages if self._view else ()
        others = tuple(other for other in known if other.id != passage.id)
        self.panel.offer_passages((*others, passage), passage.id)

    def _set_minutes(self, minutes: float) -> None:
        if self._view is None:
            return
        day, practising = self._view.practice_day, self.desk.workbench.practising
        self.desk.jobs.store(
            lambda: practising.set_minutes(day, minutes), lambda _: self.desk.daysChanged.emit()
        )

    def _listen_to_latest(self) -> None:
        if self._view is not None and self._view.takes:
            latest = max(self._view.takes, key=lambda take: take.recorded_at)
            self.desk.listenWanted.emit(latest.id, 0.0)

    def _state_text(self, take: TakeRow) -> str:
        if take.id == self._queue.current:
            return f"measuring {round(100 * self._queue.fraction)} %"
        words = {"waiting": "to measure", "stale": "to measure again", "failed": "not measured"}
        return words.get(take.state, "note" if take.notice else "")

    def _more(self, take: TakeRow) -> str:
        parts = [f"Intonation: {reading_text(take.intonation)}"]
        parts.append(f"Tempo: {reading_text(take.tempo)}")
        parts.append(f"Dynamics: {reading_text(take.dynamics)}")
        return "\n".join([*parts, *([take.notice] if take.notice else [])])
