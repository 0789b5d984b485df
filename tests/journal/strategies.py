"""Hypothesis strategies for the journal's records: everything a record may hold."""

from datetime import datetime, timedelta, timezone

from hypothesis import strategies as st

from app.journal.assignments import Assignment, EarlierHours, Occasion, OccasionKind
from app.journal.blocks import Attempt, Block, Item
from app.journal.clicks import ClickBeats
from app.journal.input_channels import InputChannel
from app.journal.kinds import AimMet, Author, ItemKind, MarkerState, MinutesSource, Origin
from app.journal.promises import PlannedBreak, Promise, PromiseRule, SharedNumber, Stretch
from app.journal.records import (
    JournalSettings,
    Marker,
    Passage,
    PlayingSettings,
    RestDay,
    Session,
    Take,
)
from app.journal.scale_records import ScaleSpec
from app.journal.scores import BarSpan, PassageScore, ScoreFile

ids = st.uuids().map(lambda value: value.hex)
days = st.dates(min_value=datetime(1900, 1, 1).date(), max_value=datetime(2200, 1, 1).date())
offsets = st.integers(-14 * 60, 14 * 60).map(lambda m: timezone(timedelta(minutes=m)))
instants = st.datetimes(
    min_value=datetime(1900, 1, 1), max_value=datetime(2200, 1, 1), timezones=offsets
)
# A lone surrogate is no text that a file could hold.
texts = st.text(st.characters(exclude_categories=("Cs",)), max_size=40)
seconds = st.floats(0, 86_400, allow_nan=False)

playing_settings = st.builds(
    PlayingSettings,
    instrument=st.sampled_from(["violin", "viola", "cello", "double bass", "voice"]),
    reference_a_hz=st.none() | st.floats(380, 480),
    temperament=st.sampled_from(["equal", "pythagorean", "just"]),
    tonic=st.none() | st.sampled_from(["C", "F#", "Eb"]),
    pulse_bpm=st.none() | st.floats(20, 300),
    open_strings=st.none() | st.lists(st.sampled_from(["C3", "G3", "D4"]), max_size=4).map(tuple),
    accompanied=st.booleans(),
    automatic_gain=st.sampled_from(["off", "on", "unknown"]),
    with_mute=st.booleans(),
    click=st.none()
    | st.builds(
        ClickBeats,
        first_beat_s=st.floats(-60, 60),
        interval_s=st.floats(0.15, 4),
        beats_a_bar=st.integers(1, 12),
    ),
)
bar_spans = st.builds(BarSpan, first=st.integers(0, 200), last=st.integers(200, 400))
passage_scores = st.builds(
    PassageScore,
    file=st.none()
    | st.builds(
        ScoreFile,
        file=texts,
        sha256=texts,
        original_name=texts,
        part=st.integers(0, 30),
        part_name=texts,
        bars=st.none() | bar_spans,
    ),
    scale=st.none() | st.builds(ScaleSpec, tonic=st.sampled_from(["C", "Eb"])),
)
passages = st.builds(
    Passage,
    id=ids,
    piece=texts,
    name=texts,
    bars=texts,
    settings=playing_settings,
    created_at=instants,
    no_retake=st.booleans(),
    no_retake_since=st.none() | days,
    score=st.none() | passage_scores,
)
sessions = st.builds(
    Session,
    id=ids,
    practice_day=days,
    started_at=instants,
    minutes=st.none() | st.floats(0, 1440),
    minutes_source=st.none() | st.sampled_from(MinutesSource),
    note=texts,
)
rest_days = st.builds(RestDay, practice_day=days, planned=st.booleans())
takes = st.builds(
    Take,
    id=ids,
    session_id=ids,
    passage_id=st.none() | ids,
    practice_day=days,
    number=st.integers(1, 999),
    recorded_at=instants,
    entered_at=instants,
    origin=st.sampled_from(Origin),
    file=st.uuids().map(lambda value: f"2026/2026-03-01/{value.hex}.flac"),
    sha256=st.binary(min_size=32, max_size=32).map(bytes.hex),
    duration_s=seconds,
    sample_rate_hz=st.sampled_from([8000, 44_100, 48_000, 192_000]),
    channels=st.integers(1, 6),
    settings=playing_settings,
    original_name=texts,
    recorded_at_source=texts,
    aim=texts,
    aim_met=st.none() | st.sampled_from(AimMet),
    dropped_frames=st.integers(0, 10**9),
    clipped_samples=st.integers(0, 10**9),
    ended=texts,
    deleted_at=st.none() | instants,
    no_retake=st.booleans(),
    retake_reason=texts,
    input_device=texts,
    peak_dbfs=st.none() | st.floats(-120, 0),
    quiet_dbfs=st.none() | st.floats(-120, 0),
    parts=st.lists(bar_spans, max_size=3).map(tuple),
    input_channel=st.none() | st.integers(1, 64),
)
items = st.builds(
    Item,
    id=ids,
    kind=st.sampled_from(ItemKind),
    name=texts,
    created_at=instants,
    passage_id=st.none() | ids,
    retired_at=st.none() | instants,
)
blocks = st.builds(
    Block,
    id=ids,
    session_id=ids,
    item_id=st.none() | ids,
    started_at=instants,
    ended_at=instants,
)
attempts = st.builds(
    Attempt,
    id=ids,
    passage_id=st.none() | ids,
    practice_day=days,
    started_at=instants,
    duration_s=seconds,
    failure=texts,
)
promise_rules = st.builds(
    PromiseRule,
    since=days,
    stretch=st.sampled_from(Stretch),
    days=st.integers(1, 10_000),
    minimum_minutes=st.none() | st.integers(1, 1440),
    minimum_takes=st.none() | st.integers(1, 100),
    needs_both=st.booleans(),
    rest_days=st.integers(0, 1000),
    rest_weekdays=st.sets(st.integers(0, 6), max_size=6).map(sorted).map(tuple),
    end=st.none() | days,
)
planned_breaks = st.builds(PlannedBreak, first_day=days, last_day=days, reason=texts)
promises = st.builds(
    Promise,
    id=ids,
    name=texts,
    start=days,
    rules=st.lists(promise_rules, min_size=1, max_size=3).map(tuple),
    created_at=instants,
    breaks=st.lists(planned_breaks, max_size=2).map(tuple),
    closed_on=st.none() | days,
)
shared_numbers = st.builds(
    SharedNumber,
    id=ids,
    promise_id=ids,
    practice_day=days,
    day_number=st.integers(1, 10_000),
    days_kept=st.integers(0, 10_000),
    shared_at=instants,
    take_id=st.none() | ids,
)
assignments = st.builds(
    Assignment,
    id=ids,
    set_on=days,
    due_on=days,
    goal=texts,
    created_at=instants,
    author=st.sampled_from(Author),
    minutes=st.none() | st.integers(1, 10_000),
    item_id=st.none() | ids,
    passage_id=st.none() | ids,
    done_on=st.none() | days,
)
occasions = st.builds(
    Occasion,
    id=ids,
    day=days,
    kind=st.sampled_from(OccasionKind),
    created_at=instants,
    name=texts,
    passage_ids=st.lists(ids, max_size=3).map(tuple),
)
earlier_hours = st.builds(
    EarlierHours, hours=st.floats(0, 100_000), until=st.none() | days, note=texts
)
markers = st.builds(
    Marker,
    id=ids,
    take_id=ids,
    start_s=seconds,
    end_s=st.none() | seconds,
    category=texts,
    weight=st.integers(1, 3),
    text=texts,
    author=st.sampled_from(Author),
    state=st.sampled_from(MarkerState),
    created_at=instants,
    changed_at=instants,
)
journal_settings = st.builds(
    JournalSettings,
    day_turn_hour=st.integers(0, 11),
    categories=st.lists(texts, max_size=9).map(tuple),
    input_device=st.none() | texts,
    output_device=st.none() | texts,
    default_settings=playing_settings,
    break_after_min=st.integers(0, 240),
    watched_folder=st.none() | texts,
    watched_since=st.none() | instants,
    reminder_minute=st.none() | st.integers(0, 1439),
    input_channels=st.lists(
        st.builds(InputChannel, device=texts, channel=st.integers(1, 64)), max_size=3
    ).map(tuple),
)
