"""Practice: today in one look, the clock, and the take."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFrame, QScrollArea, QStackedLayout, QWidget

from app.ui.desk import Desk
from app.ui.language import mark, tr
from app.ui.models.attention import Attention
from app.ui.models.clip_offers import ClipOffers
from app.ui.models.measure_queue import MeasureQueue
from app.ui.models.practice_clock import PracticeClock
from app.ui.models.recorder import Recorder
from app.ui.models.sounding_minutes import SoundingMinutes
from app.ui.models.today import Today, read_today
from app.ui.pages.page import Page
from app.ui.pages.practice_forms import PracticeForms
from app.ui.pages.practice_keys import bind_keys
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import column, fill, row, soft
from app.ui.widgets.clock_card import ClockCard
from app.ui.widgets.day_head import DayHead
from app.ui.widgets.file_choosing import ask_for_files, ask_for_folder
from app.ui.widgets.large_view import LargeView
from app.ui.widgets.offers_card import OffersCard
from app.ui.widgets.plan_card import PlanCard
from app.ui.widgets.promise_strip import PromiseStrip
from app.ui.widgets.record_panel import RecordPanel
from app.ui.widgets.today_cards import MarkersCard, TakesCard
from app.ui.widgets.year_ago_card import YearAgoCard

if TYPE_CHECKING:
    from app.journal.records import JournalSettings, Passage, PlayingSettings
    from app.services.views import ImportProposal, TodayView

_PANEL_WIDTH_PX = 464
# Common practice, no source: what teachers tell every student.
_CAUTION = mark(
    "Pain is a reason to stop. A pause every half hour helps; keep headphones low, "
    "above all when you loop."
)


class PracticePage(Page):
    """Today's numbers, the clock, the record panel, today's takes, what is to work on."""

    def __init__(self, desk: Desk, queue: MeasureQueue, recorder: Recorder) -> None:
        super().__init__(desk, tr("Practice"))
        self._queue = queue
        self.recorder = recorder
        self._view: TodayView | None = None
        self._settings: JournalSettings | None = None
        self.clock = PracticeClock(desk)
        self.sounding = SoundingMinutes(desk)
        attention = Attention()
        self.head = DayHead()
        self.clock_card = ClockCard(self.clock, self.sounding, attention)
        self.panel = RecordPanel(desk, recorder, attention)
        self.clock_card.let_break_ask()
        self.clips = ClipOffers(desk)
        self.offers = OffersCard(self.clips)
        attention.add(self.offers)
        self.year_ago = YearAgoCard(desk, attention)
        self._attention = attention
        self.large = LargeView(desk.theme, recorder, self.clock)
        self.takes = TakesCard(queue)
        self.markers = MarkersCard()
        self.promise = PromiseStrip()
        self.plan = PlanCard(desk)
        self.forms = PracticeForms(desk, self.clock, recorder, self.show_today)
        self._build()
        self._connect()
        bind_keys(self)
        self.lines = (self.panel.aim, self.head.minutes.line)

    def _build(self) -> None:
        inside = QWidget()
        record_side = column(inside)
        fill(
            record_side,
            self.clock_card.forgotten,
            self.panel,
            self.clock_card,
            1,
        )
        cards = QScrollArea()
        cards.setWidget(inside)
        cards.setWidgetResizable(True)
        cards.setFrameShape(QFrame.Shape.NoFrame)
        cards.setFocusPolicy(cards.focusPolicy().NoFocus)
        left = QWidget()
        left.setFixedWidth(_PANEL_WIDTH_PX)
        # The caution stays in sight, however much the cards have to say.
        fill(column(left), cards, soft(tr(_CAUTION)))
        right = column(spacing=2 * GRID_PX)
        fill(right, self.offers, self.year_ago, self.plan, self.takes, self.markers)
        right.setStretch(4, 1)
        today = QWidget()
        split = row(today, spacing=2 * GRID_PX)
        fill(split, left, right)
        split.setStretch(1, 1)
        self.forms.addWidget(today)
        usual = QWidget()
        box = column(usual, spacing=2 * GRID_PX, margin=2 * GRID_PX)
        fill(box, self.head, self.promise, self.forms)
        box.setStretch(2, 1)
        self._views = QStackedLayout(self)
        self._views.addWidget(usual)
        self._views.addWidget(self.large)

    def _connect(self) -> None:
        desk, recorder = self.desk, self.recorder
        for signal in (desk.takesChanged, desk.passagesChanged, desk.daysChanged):
            signal.connect(self.refresh_if_open)
        desk.markersChanged.connect(self.refresh_if_open)
        self.head.minutes.typed.connect(self._set_minutes)
        self.clock.changed.connect(self.head.show_clock)
        self.large.record.clicked.connect(self.panel.toggle)
        self.large.back.clicked.connect(lambda: self.show_large(large=False))
        self.clock.passageBegun.connect(self._take_up_passage)
        self.clock_card.listen.clicked.connect(lambda: self.sounding.toggle(recorder.device_key))
        self.clock_card.edit.clicked.connect(self.change_items)
        self.panel.passageWanted.connect(self.new_passage)
        self.panel.changeWanted.connect(self.change_passage)
        self.panel.guides.clicked.connect(self.choose_guides)
        self.forms.guidesChosen.connect(self.panel.show_guides)
        self.forms.passageMade.connect(self._passage_made)
        self.clips.changed.connect(self._show_offers)
        self.offers.lookWanted.connect(self.look_at_clips)
        self.plan.practiseWanted.connect(self.clock.choose)
        self.plan.assignmentsWanted.connect(self.show_assignments)
        self.plan.rehearsalWanted.connect(self.show_rehearsal)
        self.takes.importer.clicked.connect(self.choose_files)
        self.takes.folder.clicked.connect(self.choose_folder)
        self.takes.table.rowOpened.connect(lambda take: desk.listenWanted.emit(take.id, 0.0))
        self.markers.table.rowOpened.connect(
            lambda entry: desk.listenWanted.emit(entry.marker.take_id, entry.marker.start_s)
        )
        recorder.find_inputs()
        recorder.find_unfinished()
        self.clock.read()

    def refresh(self) -> None:
        """Read today again."""
        bench = self.desk.workbench
        self.desk.jobs.store(lambda: read_today(bench), self._take_over, subject="practice.today")
        self.year_ago.look()

    def open_page(self) -> None:
        """Read today, and look for new clips now and then."""
        super().open_page()
        self.clips.begin()

    def leave_page(self) -> None:
        """Close the input that only showed its level."""
        super().leave_page()
        self.clips.rest()
        self.recorder.stop_listening()

    def show_today(self) -> None:
        """Put the forms away."""
        self.forms.setCurrentIndex(0)
        if self.is_open:
            self.setFocus()

    @property
    def is_covered(self) -> bool:
        """True where a form lies over today."""
        return self.forms.currentIndex() > 0 and not self.large.isVisible()

    def show_large(self, *, large: bool) -> None:
        """Show the view for the music stand, or the usual one."""
        self._views.setCurrentIndex(int(large))
        self.setFocus()

    def change_items(self) -> None:
        """Open the list of items."""
        self.forms.setCurrentWidget(self.forms.items)
        self.forms.items.start()

    def choose_guides(self) -> None:
        """Open what sounds while a take is recorded."""
        known = self._view.passages if self._view else ()
        chosen = [one.settings for one in known if one.id == self.panel.passage.key]
        self.forms.setCurrentWidget(self.forms.guides)
        self.forms.guides.start(chosen[0] if chosen else self._default_settings)

    @property
    def _default_settings(self) -> "PlayingSettings":
        """What the journal says of a passage's playing, or the program before it was read."""
        from app.journal.records import JournalSettings  # noqa: PLC0415 - not for the first look

        return (self._settings or JournalSettings()).default_settings

    def new_passage(self) -> None:
        """Open the form for a new passage."""
        self.forms.setCurrentWidget(self.forms.passage)
        self.forms.passage.start(self._default_settings)

    def change_passage(self) -> None:
        """Open the form on the chosen passage."""
        known = self._view.passages if self._view else ()
        for passage in known:
            if passage.id == self.panel.passage.key:
                self.forms.setCurrentWidget(self.forms.passage)
                self.forms.passage.edit(passage)

    def choose_files(self) -> None:
        """Ask for files to import."""
        self._import_chosen(ask_for_files(self))

    def choose_folder(self) -> None:
        """Ask for a folder whose clips are to be imported."""
        self._import_chosen(ask_for_folder(self))

    def _import_chosen(self, paths: list[Path]) -> None:
        if paths:
            self.import_files(paths)

    def import_files(self, paths: list[Path]) -> None:
        """Show the table of these files."""
        self.forms.setCurrentWidget(self.forms.imports)
        passages = self._view.passages if self._view else ()
        self.forms.imports.look_at(paths, self.panel.passage.key or None, passages)

    def look_at_clips(self) -> None:
        """Show the table of the clips that are offered."""
        if not self.clips.offers:
            self.desk.tell(tr("No new clip is offered."))
            return
        self.forms.setCurrentWidget(self.forms.imports)
        passages = self._view.passages if self._view else ()
        self.forms.imports.show_proposals(self.clips.offers, passages)

    def _show_offers(self, offers: tuple["ImportProposal", ...]) -> None:
        self.offers.show_offers(offers, self._view.passages if self._view else ())
        self._attention.want(self.offers, bool(offers))

    def show_assignments(self) -> None:
        """Show what is set for the lesson."""
        if self._view is not None:
            self.forms.setCurrentWidget(self.forms.assignments)
            self.forms.assignments.start(self._view.practice_day, self._view.passages)

    def show_rehearsal(self) -> None:
        """Show the audition rehearsal, or today again."""
        if self.forms.shows("rehearsal"):
            self.show_today()
        elif self._view is not None:
            self.forms.setCurrentWidget(self.forms.rehearsal)
            self.forms.rehearsal.start(self._view.passages)

    def _take_over(self, found: Today) -> None:
        self._view, self._settings = found.view, found.settings
        view = self._view
        self.promise.show_promises(found.promises)
        self.plan.show_plan(found.plan)
        self.plan.propose_for(view.practice_day)
        self.head.show_day(view)
        if self.recorder.device_key is None:
            self.recorder.device_key = found.settings.input_device
        self.panel.offer_passages(view.passages)
        self.panel.rule.know_takes(view.takes)
        self.takes.show_takes(view.takes, found.effort, there_is_a_passage=bool(view.passages))
        self.markers.show_markers(view.to_work_on)
        self._queue.look()

    def _take_up_passage(self, passage_id: str) -> None:
        """Offer to record the passage that the clock has gone over to."""
        if not self.recorder.is_recording:
            self.panel.passage.choose(passage_id)
            self.panel.passage_changed()

    def _passage_made(self, passage: "Passage") -> None:
        self.show_today()
        known = self._view.passages if self._view else ()
        others = tuple(other for other in known if other.id != passage.id)
        self.panel.offer_passages((*others, passage), passage.id)

    def _set_minutes(self, minutes: float) -> None:
        if self._view is not None:
            self.desk.keep_minutes(self._view.practice_day, minutes)

    def listen_to_latest(self) -> None:
        """Open the latest take of today."""
        if self._view is not None and self._view.takes:
            latest = max(self._view.takes, key=lambda take: take.recorded_at)
            self.desk.listenWanted.emit(latest.id, 0.0)
