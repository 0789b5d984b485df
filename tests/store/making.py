"""Makes journals for tests of the store."""

import uuid
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta, timezone
from pathlib import Path
from typing import Any

from app.journal.assignments import Assignment, EarlierHours, Occasion, OccasionKind
from app.journal.blind_ear import BlindTrial, Choice, Question
from app.journal.blocks import Attempt, Block, Item
from app.journal.bounds import PassageBounds
from app.journal.first_listen import FirstListen
from app.journal.kinds import Author, ItemKind, MarkerState, MinutesSource, Origin
from app.journal.naming import slug
from app.journal.promises import PlannedBreak, Promise, PromiseRule, SharedNumber, Stretch
from app.journal.records import (
    JournalSettings,
    Marker,
    Passage,
    PlayingSettings,
    RestDay,
    Session,
    StoredMeasurement,
    Take,
)
from app.journal.rehearsals import Chance, Rehearsal
from app.journal.remarks import LessonRemark
from app.journal.sharing import SharedClip
from app.journal.still_there import StillThere
from app.journal.suggestions import Dismissal, SuggestionKind
from app.store.repair import sha256_of
from app.store.store import Store, open_store

ZONE = timezone(timedelta(hours=1))
NOW = datetime(2026, 3, 1, 19, 5, 9, tzinfo=ZONE)
DAY = NOW.date()


class Ticking:
    """A clock that goes on a second whenever it is read."""

    def __init__(self, start: datetime = NOW) -> None:
        self.now = start

    def __call__(self) -> datetime:
        self.now += timedelta(seconds=1)
        return self.now


def opened(folder: Path, **options: Any) -> Store:
    return open_store(folder, clock=Ticking(), **options)


def new_id() -> str:
    return uuid.uuid4().hex


def make_session(day: date = DAY, **changes: Any) -> Session:
    started = datetime(day.year, day.month, day.day, 18, 0, tzinfo=ZONE)
    return replace(Session(new_id(), day, started), **changes)


def make_passage(name: str = "first line", **changes: Any) -> Passage:
    passage = Passage(new_id(), "Study in D", name, "1-8", PlayingSettings("viola"), NOW)
    return replace(passage, **changes)


def make_take(
    session: Session, passage: Passage | None = None, number: int = 1, **changes: Any
) -> Take:
    take = Take(
        id=new_id(),
        session_id=session.id,
        passage_id=passage.id if passage else None,
        practice_day=session.practice_day,
        number=number,
        recorded_at=session.started_at + timedelta(minutes=number),
        entered_at=session.started_at + timedelta(minutes=number + 1),
        origin=Origin.RECORDED,
        file=f"{session.practice_day.year}/{session.practice_day}/{new_id()}.flac",
        sha256=new_id() * 2,
        duration_s=30.0,
        sample_rate_hz=48_000,
        channels=1,
        settings=passage.settings if passage else PlayingSettings(),
    )
    return replace(take, **changes)


def make_item(name: str = "G major, three octaves", **changes: Any) -> Item:
    return replace(Item(new_id(), ItemKind.SCALE, name, NOW), **changes)


def make_block(
    session: Session, item: Item | None = None, at_min: float = 0, minutes: float = 10
) -> Block:
    start = session.started_at + timedelta(minutes=at_min)
    end = start + timedelta(minutes=minutes)
    return Block(new_id(), session.id, item.id if item else None, start, end)


def make_attempt(day: date = DAY, passage: Passage | None = None, **changes: Any) -> Attempt:
    started = datetime(day.year, day.month, day.day, 18, 30, tzinfo=ZONE)
    attempt = Attempt(new_id(), passage.id if passage else None, day, started, 31.5)
    return replace(attempt, **changes)


def make_promise(name: str = "Forty days", start: date = DAY, **changes: Any) -> Promise:
    rules = (
        PromiseRule(start, Stretch.IN_A_ROW, 40, minimum_minutes=20, rest_weekdays=(6,)),
        PromiseRule(start + timedelta(days=9), Stretch.IN_TOTAL, 50, rest_days=3, end=None),
    )
    pause = PlannedBreak(start + timedelta(days=20), start + timedelta(days=25), "Ferien")
    return replace(Promise(new_id(), name, start, rules, NOW, (pause,)), **changes)


def make_shared_number(promise: Promise, take: Take | None = None, **changes: Any) -> SharedNumber:
    day = promise.start + timedelta(days=2)
    shared = SharedNumber(new_id(), promise.id, day, 3, 2, NOW, take.id if take else None)
    return replace(shared, **changes)


def make_assignment(passage: Passage | None = None, **changes: Any) -> Assignment:
    due = DAY + timedelta(days=7)
    made = Assignment(new_id(), DAY, due, "third finger", NOW, minutes=60)
    return replace(made, passage_id=passage.id if passage else None, **changes)


def make_occasion(passage: Passage | None = None, **changes: Any) -> Occasion:
    ids = (passage.id,) if passage else ()
    day = DAY + timedelta(days=30)
    return replace(Occasion(new_id(), day, OccasionKind.AUDITION, NOW, "open seat", ids), **changes)


def make_shared_clip(take: Take, **changes: Any) -> SharedClip:
    clip = SharedClip(new_id(), take.id, take.practice_day, NOW, 1.0, 9.5, "card", "a.mp4", "day 4")
    return replace(clip, **changes)


def make_remark(**changes: Any) -> LessonRemark:
    week = DAY + timedelta(days=7)
    said = "Third finger closer.\n- scales with a drone"
    return replace(LessonRemark(new_id(), week, DAY, week, said, NOW, NOW), **changes)


def make_rehearsal(passage: Passage, take: Take, **changes: Any) -> Rehearsal:
    chances = (Chance(passage.id, NOW, True, take.id), Chance(new_id(), spoilt="It went away."))
    return replace(Rehearsal(new_id(), DAY, NOW, chances, drawn=True), **changes)


def make_dismissal(passage: Passage | None, take: Take, **changes: Any) -> Dismissal:
    passage_id = passage.id if passage else None
    made = Dismissal(new_id(), passage_id, take.id, SuggestionKind.FLAT, "F#5", 0.25, 0.3, NOW)
    return replace(made, **changes)


def make_marker(take: Take, start_s: float = 1.0, **changes: Any) -> Marker:
    marker = Marker(
        id=new_id(),
        take_id=take.id,
        start_s=start_s,
        end_s=None,
        category="intonation",
        weight=2,
        text="third finger low",
        author=Author.SELF,
        state=MarkerState.TO_WORK_ON,
        created_at=NOW,
        changed_at=NOW,
    )
    return replace(marker, **changes)


def make_measurement(take: Take, algorithm: str = "take-1", **changes: Any) -> StoredMeasurement:
    measurement = StoredMeasurement(
        take_id=take.id,
        algorithm=algorithm,
        measured_at=NOW,
        summary={
            "schema": 1,
            "intonation": {"status": "measured", "mean_absolute_cents": 8.25},
            "tempo": {"mean_bpm": 72.0, "beat_s": [0.0, 0.83, 1.67]},
            "notes": [{"name": "D4", "deviation_cents": -4.5}] * 50,
        },
        curves=b"\x00\x01curves" * 100,
    )
    return replace(measurement, **changes)


def with_recording(store: Store, take: Take, content: bytes | None = None) -> Take:
    """Write a file in the place of a recording and give the take that names it."""
    file = store.folders.new_take_file(
        practice_day=take.practice_day,
        recorded_at=take.recorded_at,
        passage_slug=slug("first line"),
        number=take.number,
    )
    path = store.folders.absolute(file)
    path.write_bytes(take.id.encode() if content is None else content)
    return replace(take, file=file, sha256=sha256_of(path))


def fill(store: Store, days: int = 3) -> None:
    """Fill a journal with a little of everything, recordings included."""
    passages = [make_passage("first line"), make_passage("Übung, zweite Zeile"), make_passage("x")]
    for passage in passages:
        store.passages.add(passage)
    items = [make_item(), make_item("", kind=ItemKind.PASSAGE, passage_id=passages[1].id)]
    for item in items:
        store.items.add(item)
    store.put_aside.add("cd" * 32)
    for n in range(days):
        day = DAY + timedelta(days=n)
        session = make_session(day, minutes=20.0 + n, minutes_source=MinutesSource.TYPED)
        with store.transaction():
            store.sessions.add(session)
            for number, passage in (
                (1, passages[0]),
                (2, passages[0]),
                (1, passages[1]),
                (1, None),
            ):
                take = with_recording(store, make_take(session, passage, number))
                store.takes.add(take)
                store.markers.add(make_marker(take, 1.5, weight=1 + number))
                store.markers.add(make_marker(take, 2.5, end_s=3.5, author=Author.TEACHER))
            for at_min, item in enumerate((items[0], None, items[1])):
                store.blocks.add(make_block(session, item, 10 * at_min, 9.5))
            store.attempts.put(make_attempt(day, passages[0], id=take.id))
            store.attempts.put(make_attempt(day, None, failure="The input went away."))
        store.takes.replace(replace(take, deleted_at=NOW.astimezone(UTC)))
        store.measurements.put(make_measurement(take))
    fill_promises(store, passages[0], items[0], take)
    store.sessions.add(make_session(DAY + timedelta(days=20), note="no take"))
    store.rest_days.put(RestDay(DAY + timedelta(days=10), planned=True))
    store.rest_days.put(RestDay(DAY + timedelta(days=20), planned=False))
    store.settings.replace(JournalSettings(day_turn_hour=3, categories=("rhythm", "Ton")))


def fill_promises(store: Store, passage: Passage, item: Item, take: Take) -> None:
    promises = [make_promise(), make_promise("Takes", DAY - timedelta(days=90), closed_on=DAY)]
    for promise in promises:
        store.promises.add(promise)
        store.shared_numbers.add(make_shared_number(promise, take))
    store.shared_numbers.add(make_shared_number(promises[0], practice_day=DAY))
    store.assignments.add(make_assignment(passage))
    store.assignments.add(make_assignment(None, item_id=item.id, goal="", done_on=DAY))
    store.occasions.put(make_occasion(passage))
    store.rehearsals.put(make_rehearsal(passage, take))
    store.dismissals.add(make_dismissal(passage, take))
    store.dismissals.add(make_dismissal(None, take, kind=SuggestionKind.DRAGS, subject=""))
    store.first_listens.add(FirstListen(take.id, NOW, NOW + timedelta(minutes=5)))
    fill_followed(store, passage, take)
    store.remarks.add(make_remark())
    store.shared_clips.add(make_shared_clip(take))
    store.earlier_hours.put(EarlierHours(1234.5, DAY, "eleven years, an estimate"))


def fill_followed(store: Store, passage: Passage, take: Take) -> None:
    store.still_there.put(StillThere(new_id(), new_id(), take.id, is_there=True, answered_at=NOW))
    store.bounds.put(PassageBounds(passage.id, 10.0, 4.0, NOW, target_bpm=96.0, is_rubato=True))
    asked = BlindTrial(new_id(), passage.id, Question.IN_TUNE, take.id, take.id, 7, NOW)
    store.blind_trials.add(asked)
    store.blind_trials.add(replace(asked, id=new_id(), choice=Choice.SECOND, answered_at=NOW))


def everything(store: Store) -> dict[str, Any]:
    """Give all a journal holds but its measurements, for comparing."""
    takes = store.takes.list(include_deleted=True)
    return {
        "takes": {take.id: take for take in takes},
        "markers": store.markers.for_takes(take.id for take in takes),
        "passages": store.passages.list(),
        "sessions": store.sessions.list(),
        "rest_days": store.rest_days.list(),
        "settings": store.settings.get(),
        "items": store.items.list(),
        "blocks": store.blocks.of_sessions(session.id for session in store.sessions.list()),
        "attempts": store.attempts.list(),
        "put_aside": store.put_aside.list(),
        "promises": store.promises.list(),
        "shared_numbers": store.shared_numbers.list(),
        "assignments": store.assignments.list(),
        "occasions": store.occasions.list(),
        "earlier_hours": store.earlier_hours.get(),
        "rehearsals": store.rehearsals.list(),
        "dismissals": store.dismissals.list(),
        "first_listens": store.first_listens.list(),
        "still_there": store.still_there.list(),
        "bounds": store.bounds.list(),
        "blind_trials": store.blind_trials.list(),
        "remarks": store.remarks.list(),
        "shared_clips": store.shared_clips.list(),
    }
