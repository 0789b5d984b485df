"""The demo scenario: eight weeks towards an open seat, all invented.

An adult violist with a day job prepares one study that an orchestra asks for. The
passage gets better, not in a straight line: a cold costs two days and some ground,
the shift comes loose again in the sixth week, some days are short, one a week is
rest. Nothing here knows about the program; it is data and sound.
"""

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from typing import Literal

from sample_audio.generator import place_phrase
from sample_audio.player import form_on, play
from sample_audio.scenario_notes import AIMS, DAY_NOTES, MARKS, AimMet, Mark
from sample_audio.specs import PhraseSpec
from sample_audio.study import PASSAGES, DemoPassage

__all__ = [
    "DAY_COUNT",
    "PASSAGES",
    "DemoBlock",
    "DemoDay",
    "DemoMarker",
    "DemoPassage",
    "DemoTake",
    "demo_days",
]

DAY_COUNT = 56
_DAY_TURN = time(4, 0)

_REST_WEEKDAY = 5  # counted from the first day
_LESSON_WEEKDAY = 3
_MISSED = frozenset({16, 17, 31})
_SHORT = frozenset({9, 18, 23, 35, 37, 43})
_SETBACKS = {18: 0.9, 20: 0.6, 21: 0.35, 35: 0.3, 36: 0.8, 37: 0.9, 39: 0.5}
_MIDNIGHT = 28  # practised after midnight; still counts for this day

# Days with a take, and how many: one a day is the rule, lessons get a second one.
_OPENING_DAYS = (
    0, 1, 3, 6, 7, 8, 10, 13, 14, 15, 18, 20, 21, 22, 25, 27, 28, 29, 32, 34,
    36, 37, 39, 41, 42, 44, 46, 48, 50, 52, 53, 55,
)  # fmt: skip
_CROSSINGS_DAYS = (11, 15, 22, 29, 36, 43, 50, 55)


@dataclass(frozen=True, slots=True)
class DemoMarker:
    """A critique note on a take; ``end_s`` is ``None`` for a moment."""

    start_s: float
    end_s: float | None
    category: str
    weight: int
    text: str
    author: Literal["self", "teacher"]
    state: Literal["to_work_on", "settled", "returned"]


@dataclass(frozen=True, slots=True)
class DemoTake:
    """One recording to be rendered from ``phrase``, and what was said about it.

    ``time_of_day`` before 04:00 lies on the calendar date after the practice day.
    ``aim`` is empty and ``aim_met`` is ``None`` where the player wrote none.
    """

    phrase: PhraseSpec
    time_of_day: time
    passage_key: str
    aim: str
    aim_met: AimMet | None
    markers: tuple[DemoMarker, ...]


@dataclass(frozen=True, slots=True)
class DemoBlock:
    """Minutes of a day spent on one item."""

    item: str
    minutes: float


@dataclass(frozen=True, slots=True)
class DemoDay:
    """One practice day; ``minutes`` is 0 on rest days and on days without practice."""

    date: date
    minutes: float
    planned_rest: bool
    blocks: tuple[DemoBlock, ...]
    takes: tuple[DemoTake, ...]
    note: str

    def instant(self, at: time) -> datetime:
        """Return the local date and time (without zone) of a time on this practice day."""
        day = self.date + timedelta(days=1) if at < _DAY_TURN else self.date
        return datetime.combine(day, at)


def demo_days(end: date) -> tuple[DemoDay, ...]:
    """Return the eight weeks whose last day is ``end``, in order."""
    start = end - timedelta(days=DAY_COUNT - 1)
    return tuple(_day(start + timedelta(days=index), index) for index in range(DAY_COUNT))


def _day(on: date, index: int) -> DemoDay:
    rest = index % 7 == _REST_WEEKDAY
    if rest or index in _MISSED:
        return DemoDay(on, 0.0, rest, (), (), DAY_NOTES.get(index, ""))
    blocks = _blocks(index)
    minutes = sum(block.minutes for block in blocks)
    takes: list[DemoTake] = []
    if index in _OPENING_DAYS:
        takes.append(_take(index, PASSAGES[0], 0))
    if index in _CROSSINGS_DAYS:
        takes.append(_take(index, PASSAGES[1], 1))
    return DemoDay(on, minutes, False, blocks, tuple(takes), DAY_NOTES.get(index, ""))


def _blocks(index: int) -> tuple[DemoBlock, ...]:
    if index in _SHORT:
        return (DemoBlock("Study in G minor", 8.0 + index % 5),)
    extra = (index * 7) % 4
    blocks = [
        DemoBlock("Long bows on open strings", 5.0),
        DemoBlock("G minor scale", 8.0 + extra),
        DemoBlock("Study in G minor", 16.0 + 3 * extra),
    ]
    if index % 7 == _LESSON_WEEKDAY:
        blocks.append(DemoBlock("Lesson", 45.0))
    elif index % 2:
        blocks.append(DemoBlock("Orchestra part", 12.0 + extra))
    return tuple(blocks)


def _take(index: int, passage: DemoPassage, number: int) -> DemoTake:
    # The second passage was begun later, so it is further behind.
    form = form_on(index if number == 0 else max(index - 10, 0), _SETBACKS.get(index, 0.0))
    phrase = play(passage, form, seed=1000 * (number + 1) + index)
    aim, aim_met = AIMS.get((index, passage.key), ("", None))
    return DemoTake(
        phrase=phrase,
        time_of_day=_time_of_day(index, number),
        passage_key=passage.key,
        aim=aim,
        aim_met=aim_met,
        markers=tuple(_marker(mark, phrase) for mark in MARKS.get((index, passage.key), ())),
    )


def _time_of_day(index: int, number: int) -> time:
    if index == _MIDNIGHT:
        return time(0, 38)
    minutes = 19 * 60 + 10 + (index * 23) % 80 + 9 * number
    return time(minutes // 60, minutes % 60, (index * 17) % 60)


def _marker(mark: Mark, phrase: PhraseSpec) -> DemoMarker:
    notes = {note.index: note for note in place_phrase(phrase)}
    first = notes[mark.first_note]
    end_s = None if mark.last_note is None else round(notes[mark.last_note].end_s, 2)
    return DemoMarker(
        start_s=round(first.start_s, 2),
        end_s=end_s,
        category=mark.category,
        weight=mark.weight,
        text=mark.text,
        author=mark.author,
        state=mark.state,
    )
