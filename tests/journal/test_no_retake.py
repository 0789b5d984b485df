"""The rule table of no-retake, and how a take came to be kept."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest

from app.journal.blocks import Attempt
from app.journal.kinds import Origin
from app.journal.no_retake import (
    ChosenAs,
    MayNotRecord,
    MayRecord,
    attempt_of,
    chosen_as,
    may_delete,
    may_record,
    switched,
)
from app.journal.records import Passage, PlayingSettings, Take

NOW = datetime(2026, 3, 10, 19, 0, tzinfo=UTC)
DAY = NOW.date()
FREE = Passage("p" * 32, "Study", "Opening", "1-8", PlayingSettings(), NOW)
RULED = replace(FREE, no_retake=True, no_retake_since=DAY)
TOMORROW = replace(RULED, no_retake_since=DAY + timedelta(days=1))
ALWAYS = replace(RULED, no_retake_since=None)
GOOD = Attempt("1" * 32, FREE.id, DAY, NOW, 31.0)
LOST = Attempt("2" * 32, FREE.id, DAY, NOW, 4.0, "The input went away.")
FULL = Attempt("3" * 32, FREE.id, DAY, NOW, 9.0, "The disk is full.")
TAKE = Take(
    GOOD.id, "s" * 32, FREE.id, DAY, 1, NOW, NOW, Origin.RECORDED, "f.flac", "ab" * 32, 31.0,
    48_000, 1, PlayingSettings(),
)  # fmt: skip


@pytest.mark.parametrize(
    ("passage", "attempts", "verdict"),
    [
        (FREE, (), MayRecord(False)),
        (FREE, (GOOD, GOOD), MayRecord(False)),
        (RULED, (), MayRecord(True)),
        (ALWAYS, (), MayRecord(True)),
        (RULED, (GOOD,), MayNotRecord(GOOD)),
        (ALWAYS, (GOOD,), MayNotRecord(GOOD)),
        (TOMORROW, (GOOD,), MayRecord(False)),
        (RULED, (LOST,), MayRecord(True, "The input went away.")),
        (RULED, (LOST, FULL), MayRecord(True, "The input went away. The disk is full.")),
        (RULED, (LOST, LOST), MayRecord(True, "The input went away.")),
        (RULED, (LOST, GOOD), MayNotRecord(GOOD)),
        (RULED, (GOOD, LOST), MayNotRecord(GOOD)),
        (RULED, (attempt_of(TAKE),), MayNotRecord(GOOD)),  # a clip from elsewhere
    ],
)
def test_whether_a_passage_may_be_recorded(passage, attempts, verdict):
    assert may_record(passage, DAY, attempts) == verdict


@pytest.mark.parametrize(
    ("passage", "on", "attempts_today", "no_retake", "since"),
    [
        (FREE, True, 0, True, DAY),
        (FREE, True, 1, True, DAY + timedelta(days=1)),
        (RULED, True, 3, True, DAY),  # on already: it goes on as it was
        (RULED, False, 0, False, None),
        (FREE, False, 0, False, None),
    ],
)
def test_switching_the_rule(passage, on, attempts_today, no_retake, since):
    found = switched(passage, on, DAY, attempts_today)
    assert (found.no_retake, found.no_retake_since) == (no_retake, since)
    assert replace(found, no_retake=False, no_retake_since=None) == FREE


OTHER = replace(GOOD, id="4" * 32)


@pytest.mark.parametrize(
    ("no_retake", "attempts", "kept", "word"),
    [
        (True, (GOOD,), {GOOD.id}, ChosenAs.NO_RETAKE),
        (True, (LOST, GOOD), {GOOD.id, LOST.id}, ChosenAs.NO_RETAKE),
        (True, (), {GOOD.id}, ChosenAs.NO_RETAKE),  # a clip under the rule
        (False, (), {GOOD.id}, None),  # a clip: nobody knows
        (False, (OTHER,), {GOOD.id, OTHER.id}, None),
        (False, (GOOD,), {GOOD.id}, ChosenAs.ONLY_TAKE),
        (False, (LOST, GOOD), {GOOD.id}, ChosenAs.ONLY_TAKE),  # what a device spoilt is no choice
        (False, (GOOD, OTHER), {GOOD.id, OTHER.id}, ChosenAs.ALL_KEPT),
        (False, (GOOD, OTHER), {GOOD.id}, ChosenAs.BEST_OF_SEVERAL),
    ],
)
def test_how_a_take_came_to_be_kept(no_retake, attempts, kept, word):
    take = replace(TAKE, no_retake=no_retake)
    assert chosen_as(take, attempts, frozenset(kept)) is word


@pytest.mark.parametrize(
    ("passage", "no_retake", "allowed"),
    [
        (RULED, True, False),
        (RULED, False, True),
        (FREE, True, True),  # the rule was switched off
        (None, True, True),
    ],
)
def test_whether_a_take_may_be_deleted(passage, no_retake, allowed):
    assert may_delete(passage, replace(TAKE, no_retake=no_retake)) is allowed


def test_a_new_day_is_a_new_take():
    tomorrow = date(2026, 3, 11)
    assert may_record(RULED, tomorrow, ()) == MayRecord(True)
