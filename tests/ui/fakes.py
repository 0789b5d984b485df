"""A workbench without disk, devices or measuring, for what only the window does.

Longer than 300 lines because it stands in for every service a window may ask.
"""

import math
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import ear_fakes
import numpy as np
from fakes_following import (
    FakeAligning,
    FakeBlindEar,
    FakeBounds,
    FakeCarrying,
    FakeChanges,
    FakeLookingBack,
    FakeRepetitions,
    FakeShapes,
)
from fakes_lesson import FakeBundles, FakeLessons, FakeSharing

from app.journal.blocks import Item
from app.journal.clicks import RoundTripRecord
from app.journal.failures import PlainFailure
from app.journal.kinds import AimMet, Author, Ending, ItemKind, MarkerState, Origin
from app.journal.plans import PracticePlan
from app.journal.records import JournalSettings, Marker, Passage, PlayingSettings, RestDay
from app.services.clock_views import (
    ClockView,
    EffortView,
    ForgottenView,
    ItemMinutes,
    ItemRow,
)
from app.services.following_views import PassageProposal
from app.services.keeping_views import PlanView
from app.services.map_rows import MapCell, MapNote, MapRow, weeks_of
from app.services.no_retake import NoRetakeView
from app.services.note_map import NoteMapView
from app.services.reading_views import NamedReading, NoReading, Reading
from app.services.sounding import SoundingOffer, SoundingState
from app.services.take_lists import lists_of
from app.services.views import (
    ChangeRow,
    CompareView,
    Curve,
    DayBar,
    ImportProposal,
    InputRow,
    LevelMatch,
    LevelReading,
    MarkerRow,
    NotePairRow,
    NoteRow,
    PendingTake,
    PlaybackState,
    TakeRow,
    TakeView,
    TodayView,
    TrendPoint,
    TrendView,
    Waveform,
)
from tests.ui.fake_scores import FakeScores

TODAY = date(2026, 3, 18)
NOW = datetime(2026, 3, 18, 19, 30, tzinfo=UTC)
LENGTH_S = 24.0
STUDY = Passage("p1", "Study in G minor", "Opening", "1-16", PlayingSettings("viola"), NOW)


def make_row(at: int, day: date, **changes: object) -> TakeRow:
    row = TakeRow(
        id=f"take{at}",
        passage_id=STUDY.id,
        passage_name=STUDY.name,
        practice_day=day,
        number=1,
        recorded_at=datetime(day.year, day.month, day.day, 19, 5, tzinfo=UTC),
        is_late_entry=False,
        origin=Origin.RECORDED,
        duration_s=LENGTH_S,
        aim="third finger higher in bar 5",
        aim_met=None,
        state="measured",
        notice="",
        intonation=Reading(11.4 - 0.2 * at, "cents", 1.3),
        tempo=Reading(71.6, "BPM", 0.4),
        dynamics=Reading(14.2, "dB", None),
        marker_count=0,
        file=Path(f"/journal/2026/{day}/19-05-opening-take-1.flac"),
    )
    return replace(row, **changes)


@dataclass
class FakeState:
    """What all fakes share."""

    rows: dict[str, TakeRow] = field(default_factory=dict)
    deleted: dict[str, TakeRow] = field(default_factory=dict)
    passages: list[Passage] = field(default_factory=lambda: [STUDY])
    markers: dict[str, Marker] = field(default_factory=dict)
    minutes: dict[date, float] = field(default_factory=dict)
    rest: dict[date, RestDay] = field(default_factory=dict)
    waiting: list[str] = field(default_factory=list)
    measured: list[str] = field(default_factory=list)
    settings: JournalSettings = field(default_factory=JournalSettings)
    day_now: date = TODAY
    items: list[ItemRow] = field(
        default_factory=lambda: [
            ItemRow("i1", "G major in three octaves", ItemKind.SCALE, None, NOW),
            ItemRow("", "Study in G minor: Opening", ItemKind.PASSAGE, "p1", None),
            ItemRow("i3", "Quartet", ItemKind.ENSEMBLE, None, None),
        ]
    )
    retired: list[Item] = field(default_factory=list)
    history: list[tuple[str, dict[str, Marker]]] = field(default_factory=list)
    future: list[tuple[str, dict[str, Marker]]] = field(default_factory=list)


class FakePassages:
    def __init__(self, state: FakeState) -> None:
        self._s = state

    def list(self):
        return tuple(self._s.passages)

    def change(self, passage):
        self._s.passages = [passage if p.id == passage.id else p for p in self._s.passages]
        return passage

    def add(self, piece, name, bars, settings):
        made = Passage(f"p{len(self._s.passages) + 1}", piece, name, bars, settings, NOW)
        self._s.passages.append(made)
        return made


class FakePractising:
    def __init__(self, state: FakeState) -> None:
        self._s = state

    def today(self):
        rows = tuple(r for r in self._s.rows.values() if r.practice_day == TODAY)
        open_markers = tuple(
            MarkerRow(m, STUDY.name, self._s.rows[m.take_id].practice_day, 1, "F♯4")
            for m in self._s.markers.values()
            if m.state is not MarkerState.SETTLED
        )
        return TodayView(
            TODAY,
            TODAY,
            self._s.minutes.get(TODAY),
            41,
            56,
            rows,
            open_markers,
            tuple(self._s.passages),
        )

    def practice_day_now(self):
        return self._s.day_now

    def day(self, practice_day):
        return tuple(r for r in self._s.rows.values() if r.practice_day == practice_day)

    def set_minutes(self, practice_day, minutes):
        self._s.minutes[practice_day] = minutes

    def mark_rest(self, practice_day, planned):
        self._s.rest[practice_day] = RestDay(practice_day, planned)

    def clear_rest(self, practice_day):
        self._s.rest.pop(practice_day, None)

    def year(self, year):
        bars, day = [], date(year, 1, 1)
        while day.year == year:
            minutes = self._s.minutes.get(day)
            rest = self._s.rest.get(day)
            kind = "" if rest is None else ("planned" if rest.planned else "marked")
            takes = len(self.day(day))
            since = date(2026, 1, 21) <= day < TODAY
            missed = since and minutes is None and not takes and rest is None
            if minutes is not None or takes or rest or missed:
                bars.append(DayBar(day, minutes, takes, kind, missed, day.day == 9))
            day += timedelta(1)
        return tuple(bars)

    def first_and_last_day(self):
        return date(2026, 1, 21), TODAY

    def settings(self):
        return self._s.settings

    def change_settings(self, settings):
        self._s.settings = settings
        return settings


class FakeRecording:
    def __init__(self, state: FakeState) -> None:
        self._s = state
        self.has_input = True
        self.is_plugged_in = False
        self.is_recording = False
        self.is_listening = False
        self.channels: dict[str, int | None] = {}
        self.used_channel: tuple[str, int | None] | None = None
        self.is_armed = False
        self.ended: PendingTake | None = None
        self.marks_s: tuple[float, ...] = ()
        self.left: tuple[PendingTake, ...] = ()
        self._started: tuple[str | None, str] = (None, "")

    def inputs(self):
        if not self.has_input:
            raise PlainFailure("There is no recording input.", "Plug in a microphone.")
        return (
            InputRow("mic", "Desk microphone", 1, True),
            InputRow("line", "Line", 2, False, self.channels.get("line")),
        )

    def use_channel(self, device_key, channel):
        self.used_channel = (device_key, channel)

    def remember_channel(self, device_key, channel):
        self.channels[device_key] = channel

    def rescan(self):
        self.has_input = self.has_input or self.is_plugged_in
        return self.inputs()

    def listen(self, device_key=None):
        self.is_listening = True
        self.listened_to = (device_key, self.used_channel)

    def stop_listening(self):
        self.is_listening = False

    def level(self):
        return LevelReading(-18.0, -9.5, "good", False, 3.2, 0)

    def start(self, passage_id=None, aim="", device_key=None, settings=None, guides=None):
        self.is_recording = True
        self.guides = guides
        self.marks_s = ()
        self._started = (passage_id, aim)

    def mark(self, at_s):
        self.marks_s += (at_s,)

    def arm(self, passage_id=None, aim="", device_key=None, *, guides=None):
        self.is_armed = True
        self.guides = guides
        self.marks_s = ()
        self._started = (passage_id, aim)

    def disarm(self):
        self.is_armed = False

    def wait_until_heard(self, timeout_s=10.0):
        return True

    def pending(self, ended=""):
        passage_id, aim = self._started
        return PendingTake(
            "new", Path("/journal/new.wav"), NOW, 4.0, passage_id, aim, PlayingSettings(),
            ended=ended, marks_s=self.marks_s,
        )  # fmt: skip

    def stop(self):
        self.is_recording = False
        return self.pending()

    def poll(self):
        ended, self.ended = self.ended, None
        return ended

    def finish(self, pending, progress=None, should_stop=None):
        row = make_row(
            90 + len(self._s.rows), TODAY, passage_id=pending.passage_id, aim=pending.aim,
            state="waiting", intonation=NoReading("Not measured yet."), number=2,
            tempo=NoReading("Not measured yet."), dynamics=NoReading("Not measured yet."),
        )  # fmt: skip
        self._s.rows[row.id] = row
        self._s.waiting.append(row.id)
        for number, at_s in enumerate(pending.marks_s):
            self._s.markers[f"while{number}"] = Marker(
                f"while{number}", row.id, at_s, None, "other", 2, "marked while playing",
                Author.SELF, MarkerState.TO_WORK_ON, NOW, NOW,
            )  # fmt: skip
        self.left = ()
        return row

    def unfinished(self):
        return self.left

    def discard(self, pending):
        self.left = ()


class FakeImporting:
    def __init__(self, state: FakeState) -> None:
        self._s = state
        self.filed: tuple[ImportProposal, ...] = ()

    def propose(self, paths, passage_id=None, day=None, progress=None, should_stop=None):
        return tuple(
            ImportProposal(
                path, TODAY, NOW, "date inside the file", 31.0, passage_id, False, "",
                "This is not a recording." if path.suffix == ".txt" else "",
            )
            for path in paths
        )  # fmt: skip

    def file(self, proposals, progress=None, should_stop=None):
        self.filed = tuple(proposals)
        rows = []
        for at, proposal in enumerate(proposals):
            row = make_row(50 + at, proposal.practice_day, passage_id=proposal.passage_id)
            self._s.rows[row.id] = row
            rows.append(row)
        return tuple(rows)


class FakeFiling:
    def __init__(self, state: FakeState) -> None:
        self._s = state

    def row(self, take_id):
        return self._s.rows[take_id]

    def takes(self, passage_id=None, *, first_day=None, last_day=None):
        rows = sorted(self._s.rows.values(), key=lambda r: r.recorded_at, reverse=True)
        return tuple(
            row
            for row in rows
            if (first_day or row.practice_day) <= row.practice_day <= (last_day or row.practice_day)
        )

    def lists(self):
        return lists_of(self.takes(), self._s.passages)

    def refile(self, take_id, practice_day, passage_id):
        return self._change(take_id, practice_day=practice_day, passage_id=passage_id)

    def set_aim(self, take_id, aim):
        return self._change(take_id, aim=aim)

    def answer_aim(self, take_id, answer: AimMet | None):
        return self._change(take_id, aim_met=answer)

    def change_settings(self, take_id, settings):
        self._s.waiting.append(take_id)
        return self._change(take_id, state="stale")

    def delete(self, take_id):
        self._s.deleted[take_id] = self._s.rows.pop(take_id)

    def restore(self, take_id):
        self._s.rows[take_id] = self._s.deleted.pop(take_id)
        return self._s.rows[take_id]

    def _change(self, take_id, **changes):
        self._s.rows[take_id] = replace(self._s.rows[take_id], **changes)
        return self._s.rows[take_id]


class FakeMeasuring:
    def __init__(self, state: FakeState) -> None:
        self._s = state

    def waiting(self):
        return tuple(self._s.waiting)

    def measure(self, take_id, progress, should_stop):
        progress(0.5)
        if take_id in self._s.waiting:
            self._s.waiting.remove(take_id)
        self._s.measured.append(take_id)
        measured = make_row(1, TODAY)
        self._s.rows[take_id] = replace(
            self._s.rows[take_id], state="measured", intonation=measured.intonation,
            tempo=measured.tempo, dynamics=measured.dynamics,
        )  # fmt: skip
        return self._s.rows[take_id]


def make_notes(shift: float = 0.0) -> tuple[NoteRow, ...]:
    names = ("G4", "A4", "Bb4", "C5", "D5", "C5", "Bb4", "A4", "G4", "F#4", "G4", "D4")
    notes = []
    for at in range(36):
        start = 0.4 + at * 0.64
        cents = 18.0 * math.sin(at * 1.7) + shift
        deviation = Reading(round(cents, 1), "cents", 2.0 + (at % 5), signed=True)
        if at % 13 == 7:
            deviation = NoReading("Two notes sound together.")
        notes.append(
            NoteRow(
                at,
                start,
                start + 0.55,
                names[at % 12],
                67,
                deviation,
                at % 6 != 4,
                "slide" if at % 13 == 7 else "note",
                at % 12 == 11,
                "±18 cents at 5.4 Hz",
            )
        )
    return tuple(notes)


def make_view(row: TakeRow, markers: tuple[Marker, ...], settings: JournalSettings) -> TakeView:
    times = np.linspace(0.0, LENGTH_S, 300)
    first, second = times[:160], times[180:]
    shift = float(len(row.id) % 3) * 2.0
    return TakeView(
        row=row,
        passage=STUDY,
        settings=STUDY.settings,
        duration_s=row.duration_s,
        summary=(
            NamedReading("mean_absolute_cents", "Mean deviation", row.intonation, "How far."),
            NamedReading("accuracy_cents", "Tendency", Reading(-3.2, "cents", 1.2, signed=True)),
            NamedReading("mean_bpm", "Tempo", row.tempo, "The mean."),
            NamedReading("drift", "Drift", NoReading("No clear pulse."), "Faster or slower."),
        ),
        notes=make_notes(shift),
        notes_sentence="",
        pitch_cents=Curve((), "cents"),
        tempo_bpm=Curve(((first, 72 + 3 * np.sin(first)), (second, 70 + np.cos(second))), "BPM"),
        beat_s=np.arange(0.4, LENGTH_S, 0.84),
        loudness_lufs=Curve(((times, -24 + 8 * np.sin(times / 3)),), "LUFS"),
        markers=markers,
        categories=settings.categories,
    )


class FakeListening:
    def __init__(self, state: FakeState) -> None:
        self._s = state

    def open_take(self, take_id):
        markers = tuple(m for m in self._s.markers.values() if m.take_id == take_id)
        return make_view(self._s.rows[take_id], markers, self._s.settings)

    def prepare(self, take_id, progress, should_stop):
        progress(1.0)

    def waveform(self, take_id, start_s, end_s, columns):
        times = np.linspace(start_s, end_s, columns)
        height = 0.2 + 0.6 * np.abs(np.sin(times * 2.4)) * (0.6 + 0.4 * np.sin(times * 17))
        return Waveform(times, -height, height)


class FakePlaying:
    def __init__(self) -> None:
        self.loaded = ""
        self.now = PlaybackState(0.0, False, None, 1.0, 0.8)
        self.refusal: PlainFailure | None = None
        self.ready = ""
        self.gains: dict[str, float] = {}

    def keep_ready(self, take_id, progress=None, should_stop=None, *, gain_db=0.0):
        self.ready = take_id
        self.gains = {**self.gains, take_id: gain_db}

    def switch(self, place):
        if not self.ready:
            raise PlainFailure("The other take is not read yet.", "Wait a moment.")
        self.loaded, self.ready = self.ready, self.loaded
        self.now = replace(self.now, position_s=place(self.now.position_s))

    def load(self, take_id, progress=None, should_stop=None, *, gain_db=0.0):
        self.loaded = take_id
        self.gains = {**self.gains, take_id: gain_db}
        self.now = replace(self.now, position_s=0.0, playing=False, loop=None)

    def failure(self):
        return None

    def outputs(self):
        return (InputRow("phones", "Headphones", 2, True), InputRow("box", "Speaker", 2, False))

    def choose_output(self, device_key):
        self.output = device_key

    def unload(self):
        self.loaded = ""

    def play_along(self, guides, *, beat_s=(), first_beat_s=0.0):
        self.along = (guides, tuple(beat_s), first_beat_s)

    def play(self):
        if self.refusal is not None:
            raise self.refusal
        self.now = replace(self.now, playing=True)

    def pause(self):
        self.now = replace(self.now, playing=False)

    def toggle(self):
        self.pause() if self.now.playing else self.play()

    def seek(self, position_s):
        self.now = replace(self.now, position_s=position_s)

    def set_loop(self, start_s, end_s=None):
        self.now = replace(self.now, loop=None if start_s is None else (start_s, end_s))

    def set_speed(self, speed):
        self.now = replace(self.now, speed=speed)

    def set_volume(self, volume):
        self.now = replace(self.now, volume=volume)

    def state(self):
        return self.now


class FakeMarking:
    def __init__(self, state: FakeState) -> None:
        self._s = state
        self._count = 0

    def _keep(self, words):
        self._s.history.append((words, dict(self._s.markers)))
        self._s.future.clear()

    def for_take(self, take_id):
        found = [m for m in self._s.markers.values() if m.take_id == take_id]
        return tuple(sorted(found, key=lambda m: m.start_s))

    def categories_in_use(self):
        return tuple(dict.fromkeys(marker.category for marker in self._s.markers.values()))

    def add(
        self, take_id, start_s, end_s=None, *, category, weight=2, text="",
        author=Author.SELF, state=MarkerState.TO_WORK_ON,
    ):  # fmt: skip
        self._keep("a marker placed")
        self._count += 1
        made = Marker(
            f"m{self._count}", take_id, start_s, end_s, category, weight, text, author, state,
            NOW, NOW,
        )  # fmt: skip
        self._s.markers[made.id] = made
        return made

    def change(self, marker):
        self._keep("a marker changed")
        self._s.markers[marker.id] = marker
        return marker

    def delete(self, marker_id):
        self._keep("a marker deleted")
        del self._s.markers[marker_id]

    def undo(self):
        return self._step(self._s.history, self._s.future)

    def redo(self):
        return self._step(self._s.future, self._s.history)

    def _step(self, from_stack, to_stack):
        if not from_stack:
            return None
        words, before = from_stack.pop()
        to_stack.append((words, dict(self._s.markers)))
        self._s.markers.clear()
        self._s.markers.update(before)
        return words


class FakeComparing:
    def __init__(self, state: FakeState) -> None:
        self._s = state

    def compare(self, take_a, take_b, progress=None, should_stop=None):
        a = make_view(self._s.rows[take_a], (), self._s.settings)
        b = make_view(self._s.rows[take_b], (), self._s.settings)
        pairs = tuple(
            NotePairRow(
                one.name, 67, one.start_s, other.start_s, one.deviation, other.deviation,
                Reading(-2.0, "cents", 3.1, signed=True),
            )
            for one, other in zip(a.notes, b.notes, strict=True)
        )  # fmt: skip
        changes = (
            ChangeRow(
                "mean_absolute_cents", "Mean deviation", Reading(12.0, "cents", 1.1),
                Reading(8.4, "cents", 0.9), Reading(-3.6, "cents", 1.4, signed=True), "better",
            ),
            ChangeRow(
                "mean_bpm", "Tempo", Reading(66.0, "BPM", 0.4), Reading(72.1, "BPM", 0.5),
                Reading(6.1, "BPM", 0.6, signed=True), "faster",
            ),
        )  # fmt: skip
        grid = np.linspace(0.0, LENGTH_S, 50)
        return CompareView(
            a, b, True, "", grid, grid * 0.9, pairs, changes, ("B was played faster by 9 %.",)
        )

    def levels(self, take_a, take_b):
        return LevelMatch(-2.0, 0.0, "Heard at one loudness.")

    def trend_keys(self):
        return (("mean_absolute_cents", "Mean deviation"), ("mean_bpm", "Tempo"))

    def trend(self, passage_id, key="mean_absolute_cents"):
        rows = sorted(self._s.rows.values(), key=lambda r: r.recorded_at)
        points = tuple(
            TrendPoint(r.id, r.practice_day, 14 - 0.3 * at + (at % 3), 1.2)
            for at, r in enumerate(rows)
        )
        days = [p.practice_day for p in points]
        line = tuple((day, 14.5 - 0.25 * at) for at, day in enumerate(days))
        band = tuple((day, value - 1.5, value + 1.5) for day, value in line)
        return TrendView(
            STUDY, key, dict(self.trend_keys())[key], "cents", points, line, band, "better",
            Reading(-0.8, "cents a week", 0.3, signed=True), Reading(1.4, "cents"), "",
        )  # fmt: skip


class FakeNoteMaps:
    """Two notes of every take, on the axis of the latest one."""

    def __init__(self, state: FakeState) -> None:
        self._s = state
        self.asked = 0

    def of_passage(self, passage_id, reference_id=None, progress=None, should_stop=None):
        self.asked += 1
        takes = sorted(self._s.rows.values(), key=lambda r: r.recorded_at)
        notes = (MapNote(0, "G4", 67, 0.4), MapNote(1, "Bb4", 70, 5.0))
        rows = [
            MapRow(
                f"{row.practice_day.day} Mar", row.practice_day, row.practice_day, (row.id,),
                (MapCell(8.0 - at, 1.5, True), None if at % 3 == 1 else MapCell(-4.0, 12.0, False)),
            )
            for at, row in enumerate(takes)
        ]  # fmt: skip
        latest = takes[-1]
        return NoteMapView(
            STUDY, latest.id, latest.practice_day, notes, tuple(rows), weeks_of(rows), ()
        )


class FakeClock:
    """Counts by a hand that the tests move."""

    def __init__(self, state: FakeState) -> None:
        self._s = state
        self.phase = "stopped"
        self.item_id: str | None = None
        self.minutes: dict[str | None, float] = {}
        self.break_sentence = ""
        self.question: ForgottenView | None = None
        self.answers: list[tuple[Ending, float | None]] = []
        self.beats = 0

    def take_up(self):
        """Nothing was left running."""

    def state(self):
        phase = "forgotten" if self.question else self.phase
        total = sum(self.minutes.values())
        items = tuple(
            ItemMinutes(key, self._title(key), None, minutes)
            for key, minutes in self.minutes.items()
        )
        block_s = 60 * self.minutes.get(self.item_id, 0.0)
        return ClockView(
            phase, self.item_id, self._title(self.item_id), block_s, total,
            total + self._s.minutes.get(TODAY, 0.0), items, total, self.break_sentence,
        )  # fmt: skip

    def _title(self, item_id):
        return next((i.title for i in self._s.items if i.id == item_id), "no item")

    def forgotten(self):
        return self.question

    def start(self, item_id=None):
        self.phase, self.item_id = "running", item_id
        self.minutes.setdefault(item_id, 0.0)
        return self.state()

    def toggle(self):
        if self.phase == "stopped":
            return self.start()
        self.phase = "paused" if self.phase == "running" else "running"
        return self.state()

    def stop(self):
        self.phase, self.item_id = "stopped", None
        return self.state()

    def answer_forgotten(self, ending, minutes=None):
        self.answers.append((ending, minutes))
        self.question = None
        return self.state()

    def put_off_break(self):
        self.break_sentence = ""

    def beat(self):
        self.beats += 1


class FakeItems:
    def __init__(self, state: FakeState) -> None:
        self._s = state

    def list(self):
        return tuple(self._s.items)

    def retired(self):
        return tuple(self._s.retired)

    def add(self, kind, name):
        if not name.strip():
            raise PlainFailure("An item needs a name.", "Type one, for instance a scale.")
        self._s.items.append(ItemRow(f"i{len(self._s.items) + 1}", name, kind, None, None))

    def for_passage(self, passage_id):
        for at, row in enumerate(self._s.items):
            if row.passage_id == passage_id:
                self._s.items[at] = replace(row, id=row.id or f"item-{passage_id}")
                return Item(self._s.items[at].id, ItemKind.PASSAGE, "", NOW, passage_id)
        raise PlainFailure("That passage is not there.", "Choose another one.")

    def rename(self, item_id, name, kind=None):
        self._s.items = [
            replace(row, title=name) if row.id == item_id else row for row in self._s.items
        ]

    def retire(self, item_id):
        gone = next(row for row in self._s.items if row.id == item_id)
        self._s.items.remove(gone)
        self._s.retired.append(Item(gone.id, gone.kind, gone.title, NOW))

    def bring_back(self, item_id):
        item = next(item for item in self._s.retired if item.id == item_id)
        self._s.retired.remove(item)
        self._s.items.append(ItemRow(item.id, item.name, item.kind, None, None))


class FakeMinutes:
    def recording(self, first_day, last_day, passage_id=None):
        words = "3 recordings, 1 kept: 2 min of recording, 40 min practised in all."
        return EffortView(3, 1, 2.0, 40.0, words)


class FakeWatching:
    def __init__(self, state: FakeState) -> None:
        self._s = state
        self.clips: list[ImportProposal] = []
        self.aside: list[ImportProposal] = []
        self.watched: Path | None = None
        self.refusal: PlainFailure | None = None
        self.looks = 0

    def offers(self, progress=None, should_stop=None):
        self.looks += 1
        if self.refusal is not None:
            raise self.refusal
        return tuple(self.clips)

    def file(self, proposals, progress=None, should_stop=None):
        rows = []
        for at, proposal in enumerate(proposals):
            self.clips.remove(proposal)
            row = make_row(60 + at, proposal.practice_day, passage_id=proposal.passage_id)
            self._s.rows[row.id] = row
            rows.append(row)
        return tuple(rows)

    def put_aside(self, proposals):
        for proposal in proposals:
            self.clips.remove(proposal)
            self.aside.append(proposal)

    def watch(self, folder):
        self.watched = folder
        self._s.settings = replace(self._s.settings, watched_folder=str(folder or ""))
        return self._s.settings


class FakePromises:
    def __init__(self, state: FakeState) -> None:
        self._s = state

    def numbers_for(self, practice_day):
        return ()

    def list(self):
        return ()


class FakePlanning:
    def today(self):
        return None

    def propose(self, minutes):
        return PlanView(PracticePlan(TODAY, minutes, NOW), 0, (), "")


class FakeAssignments:
    def for_lesson(self, first_day, last_day):
        return ()

    def coming(self):
        return ()


class FakeSounding:
    def __init__(self) -> None:
        self.kept: list[SoundingOffer] = []
        self.minutes = 12.0
        self.listens = False
        self.ended = ""

    def start(self, device_key=None):
        self.listens = True

    def state(self):
        return SoundingState(self.listens and not self.ended, True, self.minutes, 20.0, self.ended)

    def stop(self):
        self.listens = False
        words = "What the practice clock counts in the same time is left out."
        return SoundingOffer(TODAY, NOW, self.minutes - 4, self.minutes, words)

    def keep(self, offer):
        self.kept.append(offer)


class FakeNoRetake:
    def __init__(self, state: FakeState) -> None:
        self._s = state
        self.failures: dict[str, str] = {}

    def view(self, passage_id):
        passage = next(p for p in self._s.passages if p.id == passage_id)
        if not passage.no_retake:
            return NoRetakeView(False, False, True, "")
        made = [r for r in self._s.rows.values() if r.practice_day == TODAY]
        if made and made[-1].id not in self.failures:
            words = "Today's take was made at 19:05 and stands. Tomorrow brings the next."
            return NoRetakeView(True, True, False, words)
        return NoRetakeView(True, True, True, "One take of this passage each practice day.")

    def switch(self, passage_id, on):
        self._s.passages = [
            replace(p, no_retake=on) if p.id == passage_id else p for p in self._s.passages
        ]
        return next(p for p in self._s.passages if p.id == passage_id)

    def note_device_failure(self, take_id, reason):
        if not reason.strip():
            raise PlainFailure("A second take needs the reason on record.", "Say what it did.")
        self.failures[take_id] = reason


class FakeInputMemory:
    words = ""

    def warning(self, passage_id, device_key, quiet_dbfs=None):
        return self.words


class FakeReminders:
    """Never due. A window that stands for a minute, on a busy machine, asks all the same."""

    def due(self):
        return ""


class FakeLatency:
    def __init__(self) -> None:
        self.found: RoundTripRecord | None = None

    def known(self, output_key=None, input_key=None):
        return self.found

    def measure(self, output_key=None, input_key=None, should_stop=None):
        self.found = RoundTripRecord("out", input_key or "mic", 0.0123, 0.0004, NOW)
        return self.found


class FakeProposing:
    def of_file(self, path, progress=None, should_stop=None):
        return PassageProposal(None, 0.0, "No passage is like it.")


class FakeReporting:
    def text(self, start, end):
        return f"From {start} to {end}\n\nMinutes\n  Mon 16 Mar: 40 min\n"


@dataclass
class FakeWorkbench:
    """The fakes together."""

    state: FakeState
    journal_dir: Path = Path("/journal")
    read_only: bool = False

    def __post_init__(self) -> None:
        self.working = []
        self.passages = FakePassages(self.state)
        self.scores = FakeScores(self.state)
        self.practising = FakePractising(self.state)
        self.recording = FakeRecording(self.state)
        self.importing = FakeImporting(self.state)
        self.filing = FakeFiling(self.state)
        self.measuring = FakeMeasuring(self.state)
        self.listening = FakeListening(self.state)
        self.playing = FakePlaying()
        self.marking = FakeMarking(self.state)
        self.comparing = FakeComparing(self.state)
        self.note_maps = FakeNoteMaps(self.state)
        self.aligning = FakeAligning()
        self.changes = FakeChanges(STUDY)
        self.carrying = FakeCarrying()
        self.bounds = FakeBounds(STUDY)
        self.repetitions = FakeRepetitions(STUDY, lambda take_id: self.state.rows[take_id])
        self.blind_ear = FakeBlindEar()
        self.shapes = FakeShapes()
        self.looking_back = FakeLookingBack()
        self.reporting = FakeReporting()
        self.proposing = FakeProposing()
        self.clock = FakeClock(self.state)
        self.items = FakeItems(self.state)
        self.minutes = FakeMinutes()
        self.no_retake = FakeNoRetake(self.state)
        self.input_memory = FakeInputMemory()
        self.watching = FakeWatching(self.state)
        self.promises = FakePromises(self.state)
        self.planning = FakePlanning()
        self.sounding = FakeSounding()
        self.latency = FakeLatency()
        self.assignments = FakeAssignments()
        self.lessons = FakeLessons()
        self.bundles = FakeBundles()
        self.sharing = FakeSharing()
        self.suggesting = ear_fakes.FakeSuggesting(self.marking)
        self.first_listening = ear_fakes.FakeFirstListening(self)
        self.filming = ear_fakes.FakeFilming()
        self.reminders = FakeReminders()

    def load(self):
        """Hold everything already."""


def full_workbench(take_count: int = 12) -> FakeWorkbench:
    """Return a journal with some weeks of practice in it."""
    state = FakeState()
    for at in range(take_count):
        day = TODAY - timedelta(days=4 * (take_count - 1 - at))
        row = make_row(at, day)
        state.rows[row.id] = row
    for back in range(56):
        day = TODAY - timedelta(days=back)
        if back % 9 == 4:
            state.rest[day] = RestDay(day, back % 2 == 0)
        elif back % 7 != 3:
            state.minutes[day] = 20.0 + 37 * ((back * 7) % 5) / 2
    bench = FakeWorkbench(state)
    if take_count:
        last = f"take{take_count - 1}"
        bench.marking.add(last, 3.3, category="intonation", weight=3, text="F sharp low, twice")
        bench.marking.add(last, 9.2, 11.4, category="rhythm", text="drags across the bar")
        bench.marking.add(
            last, 16.0, category="shift", weight=1, author=Author.TEACHER,
            state=MarkerState.SETTLED,
        )  # fmt: skip
        state.history.clear()
    return bench
