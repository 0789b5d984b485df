"""Clock, typed minutes, crashes and answers in any order, against seconds in a list."""

import shutil
import tempfile
from datetime import UTC, datetime, timedelta
from pathlib import Path
from unittest.mock import patch
from zoneinfo import ZoneInfo

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from app.journal.forgotten_clock import Forgotten
from app.journal.kinds import Ending, ItemKind
from app.services.repairing import repair
from app.wiring import open_workbench

BERLIN = ZoneInfo("Europe/Berlin")
# The second and third are nights on which the clocks change.
STARTS = (
    datetime(2026, 3, 10, 19, 30, tzinfo=BERLIN),
    datetime(2026, 10, 25, 1, 50, tzinfo=BERLIN),
    datetime(2026, 3, 29, 1, 40, tzinfo=BERLIN),
    datetime(2026, 3, 11, 2, 50, tzinfo=BERLIN),
)


class SittingMachine(RuleBasedStateMachine):
    """Uses a journal's clock and, beside it, keeps what was played second by second."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = Path(tempfile.mkdtemp(prefix="clock-")) / "journal"
        self.at = 0
        # What each second was spent on; of those that still count, the day; typed by day.
        self.items: dict[int, str] = {}
        self.days: dict[int, object] = {}
        self.typed: dict[object, float] = {}
        self.is_on = self.is_running = self.is_covered = False
        self.item, self.began, self.touched = "no item", 0, 0
        self.seen: int | None = None

    @initialize(start=st.sampled_from(STARTS))
    def begin(self, start: datetime) -> None:
        self.start = start
        self.zone = patch("app.wiring.local_zone", lambda: BERLIN)
        self.zone.start()
        self.open()
        self.ids = {
            "G major": self.bench.items.add(ItemKind.SCALE, "G major").id,
            "Study": self.bench.items.add(ItemKind.STUDY, "Study").id,
        }
        self.start_or_switch("G major")

    def open(self) -> None:
        self.bench = open_workbench(self.folder, clock=lambda: self.now)
        if self.is_on and not self.is_running and self.day(self.at) != self.day(self.touched):
            self.is_on = False

    def teardown(self) -> None:
        if hasattr(self, "bench"):
            self.bench.close()
            self.zone.stop()
        shutil.rmtree(self.folder.parent)

    @property
    def now(self) -> datetime:
        return (self.start.astimezone(UTC) + timedelta(seconds=self.at)).astimezone(BERLIN)

    def day(self, at: int):
        wall = (self.start.astimezone(UTC) + timedelta(seconds=at)).astimezone(BERLIN)
        return (wall.replace(tzinfo=None) - timedelta(hours=4)).date()

    def touch(self) -> None:
        self.touched = self.at
        self.seen = self.seen if self.seen is None else self.at

    @property
    def asks(self) -> bool:
        return self.bench.clock.forgotten() is not None

    def can_go_on(self) -> bool:
        if self.is_on and not self.is_running and self.day(self.at) != self.day(self.touched):
            self.is_on = False  # a pause overnight was the end
        return self.is_on and not self.asks

    @rule(seconds=st.integers(3, 900) | st.integers(3, 2500))
    def time_passes(self, seconds: int) -> None:
        if self.is_running:
            for second in range(self.at, self.at + seconds):
                self.items[second] = self.item
                if not self.is_covered:
                    self.days[second] = self.session_day
        self.at += seconds

    @precondition(lambda self: not self.asks)
    @rule(name=st.sampled_from(["no item", "G major", "Study"]))
    def start_or_switch(self, name: str) -> None:
        if self.can_go_on() and (self.is_running or name == "no item"):
            self.bench.clock.resume() if name == "no item" else self.bench.clock.switch(
                self.ids[name]
            )
            if name != "no item":
                if name != self.item:
                    self.began = self.at if self.is_running else self.began
                    self.item = name
                self.touch()
            elif not self.is_running:
                self.is_running, self.began = True, self.at
                self.touch()
            return
        was_paused = self.is_on
        self.bench.clock.start(self.ids.get(name))
        if not was_paused:
            self.is_covered, self.seen = False, None
            self.session_day = self.day(self.at)
        self.item, self.is_on, self.is_running, self.began = name, True, True, self.at
        self.touch()

    @precondition(lambda self: self.can_go_on())
    @rule()
    def pause(self) -> None:
        self.bench.clock.pause()
        if self.is_running:
            self.is_running = False
            self.touch()

    @precondition(lambda self: self.can_go_on() and self.at > 1200)
    @rule()
    def stop(self) -> None:
        self.bench.clock.stop()
        self.is_on = self.is_running = False

    @precondition(lambda self: self.is_on)
    @rule()
    def beat(self) -> None:
        if self.can_go_on():
            self.seen = self.at
        self.bench.clock.beat()

    @rule(minutes=st.integers(0, 300), back=st.sampled_from([0, 0, 0, 1]))
    def type_minutes(self, minutes: int, back: int) -> None:
        day = self.day(self.at) - timedelta(days=back)
        asks = self.asks
        self.bench.practising.set_minutes(day, minutes)
        self.typed[day] = float(minutes)
        self.days = {second: of for second, of in self.days.items() if of != day}
        if self.is_running and self.session_day == day:
            self.is_covered = asks
            if not asks:
                self.began = self.at

    @precondition(lambda self: self.is_on)
    @rule(gap_s=st.integers(0, 1200) | st.integers(0, 40_000), killed=st.booleans())
    def end_and_start_again(self, gap_s: int, killed: bool) -> None:
        if killed:
            self.bench._store.close()
        else:
            if self.can_go_on() or not self.is_on:
                self.seen = None
            self.bench.close()
        self.time_passes(gap_s)
        self.open()

    @precondition(lambda self: self.asks)
    @rule(data=st.data())
    def answer(self, data: st.DataObject) -> None:
        question = self.bench.clock.forgotten()
        assert question is not None
        endings = [choice.ending for choice in question.choices]
        ending = data.draw(st.sampled_from([*endings, Ending.MINUTES]))
        minutes = None
        if ending is Ending.MINUTES:
            minutes = data.draw(st.integers(0, int(question.most_minutes)))
        view = self.bench.clock.answer_forgotten(ending, minutes)
        if ending is Ending.NOW and question.reason is not Forgotten.DAY_TURNED:
            assert view.phase == "running"
            if self.is_covered:
                self.is_covered, self.began = False, self.at
            self.touch()
            return
        assert view.phase == "stopped"
        end = {
            Ending.AT_LAST_TOUCH: max(self.touched, self.began),
            Ending.WHEN_LAST_SEEN: self.seen,
            Ending.NOW: self.at,
            Ending.MINUTES: self.began + 60 * (minutes or 0),
        }[ending]
        assert end is not None
        for second in range(end, self.at):
            self.items.pop(second, None)
            self.days.pop(second, None)
        self.is_on = self.is_running = self.is_covered = False

    @precondition(lambda self: not self.is_on and self.items)
    @rule()
    def lose_the_database(self) -> None:
        self.bench.close()
        (self.folder / "journal.db").unlink()
        assert repair(self.folder).rebuilt
        self.bench = open_workbench(self.folder, clock=lambda: self.now)

    @invariant()
    def every_second_counts_once(self) -> None:
        if self.asks:
            return  # what is open belongs to nobody before the answer
        closed = self.at if not self.is_running else self.began
        items: dict[str, int] = {}
        for second, item in self.items.items():
            if second < closed:
                items[item] = items.get(item, 0) + 1
        first, last = self.day(0) - timedelta(days=2), self.day(self.at)
        found = self.bench.minutes.by_item(first, last)
        assert {row.title: round(row.minutes * 60) for row in found} == items
        expected = {day: minutes * 60 for day, minutes in self.typed.items()}
        for second, day in self.days.items():
            if second < closed:
                expected[day] = expected.get(day, 0) + 1
        kept = self.bench.clock._store.sessions.minutes_by_day(first, last)
        assert {day: round(minutes * 60) for day, minutes in kept.items()} == expected
        shown = self.bench.clock.state().today_min
        open_s = self.at - self.began if self.is_running else 0
        assert round(shown * 60) == expected.get(self.day(self.at), 0) + open_s


SittingMachine.TestCase.settings = settings(max_examples=15, stateful_step_count=25, deadline=None)
TestSittings = SittingMachine.TestCase
