"""Sidecars: what is written is read again, and other versions are met kindly."""

import json
from dataclasses import replace
from datetime import UTC, datetime
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.journal.codec import Unreadable, decoded, encoded
from app.journal.kinds import Author, MarkerState, Origin
from app.journal.records import JournalSettings, Marker, Passage, PlayingSettings, Session, Take
from app.journal.sidecar import (
    SCHEMA,
    DayCard,
    JournalCard,
    TakeCard,
    card_text,
    read_card,
    schema_of,
)
from tests.journal import strategies as some

NOW = datetime(2026, 3, 1, 19, 5, 9, tzinfo=UTC)
SESSION = Session("5" * 32, NOW.date(), NOW, minutes=25.0)
PASSAGE = Passage("9" * 32, "Study", "first line", "1-8", PlayingSettings("viola"), NOW)
TAKE = Take(
    id="1" * 32,
    session_id=SESSION.id,
    passage_id=PASSAGE.id,
    practice_day=NOW.date(),
    number=1,
    recorded_at=NOW,
    entered_at=NOW,
    origin=Origin.RECORDED,
    file="2026/2026-03-01/190509-study-first-line-take-1.flac",
    sha256="ab" * 32,
    duration_s=31.5,
    sample_rate_hz=48_000,
    channels=1,
    settings=PASSAGE.settings,
    aim="third finger higher in bar 5",
)
MARKER = Marker(
    "7" * 32, TAKE.id, 3.25, None, "shift", 3, "", Author.SELF, MarkerState.TO_WORK_ON, NOW, NOW
)
CARD = TakeCard(NOW, TAKE, SESSION, PASSAGE, (MARKER,))

take_cards = st.builds(
    TakeCard,
    written_at=some.instants,
    take=some.takes,
    session=some.sessions,
    passage=st.none() | some.passages,
    markers=st.lists(some.markers, max_size=3).map(tuple),
)
day_cards = st.builds(
    DayCard,
    written_at=some.instants,
    practice_day=some.days,
    sessions=st.lists(some.sessions, max_size=3).map(tuple),
    rest=st.none() | some.rest_days,
    blocks=st.lists(some.blocks, max_size=3).map(tuple),
    items=st.lists(some.items, max_size=2).map(tuple),
    attempts=st.lists(some.attempts, max_size=2).map(tuple),
)
journal_cards = st.builds(
    JournalCard,
    written_at=some.instants,
    passages=st.lists(some.passages, max_size=3).map(tuple),
    settings=some.journal_settings,
    items=st.lists(some.items, max_size=2).map(tuple),
    put_aside=st.lists(some.texts, max_size=2).map(tuple),
    promises=st.lists(some.promises, max_size=2).map(tuple),
    shared_numbers=st.lists(some.shared_numbers, max_size=2).map(tuple),
    assignments=st.lists(some.assignments, max_size=2).map(tuple),
    occasions=st.lists(some.occasions, max_size=2).map(tuple),
    earlier_hours=st.none() | some.earlier_hours,
)


@given(take_cards | day_cards | journal_cards)
def test_what_is_written_is_read_again(card: TakeCard | DayCard | JournalCard) -> None:
    text = card_text(card)
    text.encode()
    read = read_card(text)
    assert read == card
    assert card_text(read) == text  # the offsets of the instants too, which == does not see


def test_a_take_in_plain_sight() -> None:
    data = json.loads(card_text(CARD))
    assert (data["schema"], data["kind"]) == (SCHEMA, "take")
    assert data["take"]["recorded_at"] == "2026-03-01T19:05:09+00:00"
    assert data["take"]["aim"] == "third finger higher in bar 5"
    assert data["markers"][0]["state"] == "to_work_on"
    assert data["session"]["minutes"] == 25.0
    assert data["passage"]["settings"]["instrument"] == "viola"


def _changed(change: dict[str, Any], *path: str) -> str:
    data = json.loads(card_text(CARD))
    place = data
    for key in path:
        place = place[key]
    place.update(change)
    return json.dumps(data)


def test_what_a_newer_version_added_is_passed_over() -> None:
    text = _changed({"schema": SCHEMA + 1, "mood": {"level": 3}})
    assert schema_of(text) == SCHEMA + 1
    assert read_card(text) == CARD
    assert read_card(_changed({"bow": "heavy"}, "take")) == CARD


def test_what_an_older_version_did_not_know_has_its_default() -> None:
    data = json.loads(card_text(CARD))
    for key in ("aim", "aim_met", "dropped_frames", "ended", "deleted_at"):
        del data["take"][key]
    del data["take"]["settings"]["open_strings"]
    read = read_card(json.dumps(data))
    assert isinstance(read, TakeCard)
    assert read.take == replace(TAKE, aim="")


@pytest.mark.parametrize(
    ("change", "expected"),
    [
        ({"aim": 5}, replace(TAKE, aim="")),
        ({"aim_met": "hardly"}, TAKE),
        ({"dropped_frames": "many"}, TAKE),
        ({"deleted_at": "yesterday"}, TAKE),
        ({"duration_s": 31}, replace(TAKE, duration_s=31.0)),
    ],
)
def test_an_odd_value_of_little_weight_has_its_default(
    change: dict[str, Any], expected: Take
) -> None:
    read = read_card(_changed(change, "take"))
    assert isinstance(read, TakeCard)
    assert read.take == expected


@pytest.mark.parametrize(
    "change",
    [
        {"id": None},
        {"recorded_at": "2026-03-01T19:05:09"},
        {"practice_day": "first of March"},
        {"number": 1.5},
        {"number": True},
        {"duration_s": True},
        {"origin": "dreamt"},
        {"settings": []},
    ],
)
def test_a_take_that_cannot_be_understood_is_refused(change: dict[str, Any]) -> None:
    with pytest.raises(Unreadable):
        read_card(_changed(change, "take"))


def test_one_bad_marker_does_not_cost_the_others() -> None:
    data = json.loads(card_text(CARD))
    data["markers"] += [{"id": "x"}, "scribble", None]
    assert read_card(json.dumps(data)) == CARD
    data["markers"] = "none"
    read = read_card(json.dumps(data))
    assert isinstance(read, TakeCard)
    assert read.markers == ()


@pytest.mark.parametrize(
    "text",
    ["", "{", "[]", "null", "3", "{}", '{"kind": "song"}', '{"kind": ["take"]}', "[" * 100_000],
)
def test_what_is_no_card_is_refused(text: str) -> None:
    with pytest.raises(Unreadable):
        read_card(text)


json_values = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner),
    max_leaves=5,
)


@given(st.data())
def test_no_hand_made_card_is_a_crash(data: st.DataObject) -> None:
    card = json.loads(card_text(CARD))
    place = data.draw(st.sampled_from([card, card["take"], card["session"], card["markers"][0]]))
    place[data.draw(st.sampled_from(sorted(place)))] = data.draw(json_values)
    try:
        read = read_card(json.dumps(card))
    except Unreadable:
        return
    assert read_card(card_text(read)) == read


@pytest.mark.parametrize(
    "take",
    [
        replace(TAKE, duration_s=float("nan")),
        replace(TAKE, duration_s=float("inf")),
        replace(TAKE, recorded_at=datetime(2026, 3, 1)),
        replace(TAKE, number=1.0),  # type: ignore[arg-type]
        replace(TAKE, origin="recorded"),  # type: ignore[arg-type]
        replace(TAKE, aim=None),  # type: ignore[arg-type]
        replace(TAKE, settings=None),  # type: ignore[arg-type]
    ],
)
def test_writing_is_strict(take: Take) -> None:
    with pytest.raises(ValueError, match="Take"):
        card_text(replace(CARD, take=take))


@given(some.journal_settings)
def test_settings_round_trip(settings: JournalSettings) -> None:
    assert decoded(JournalSettings, json.loads(json.dumps(encoded(settings)))) == settings
