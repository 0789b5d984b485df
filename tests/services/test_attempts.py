"""Attempts: each counts on the practice day under which its take is filed."""

from dataclasses import replace
from datetime import timedelta

import numpy as np

from app.journal.no_retake import ChosenAs
from app.journal.records import PlayingSettings
from app.services import unfiled
from app.services.views import PendingTake
from audio.pcm_file import PcmWriter

RATE = 48_000


def begun_at(bench, started_at, passage_id):
    """Write a second of sound as a recording leaves it; the take is not filed."""
    folders = bench.recording._store.folders
    pcm = unfiled.pcm_file(folders, "a" * 32)
    pcm.parent.mkdir(parents=True, exist_ok=True)
    writer = PcmWriter(pcm, RATE, 1)
    tone = 0.25 * np.sin(2 * np.pi * 440 * np.arange(RATE) / RATE)
    writer.append(np.rint(tone * 2**31).astype(np.int32)[:, np.newaxis])
    writer.file.close()
    return PendingTake("a" * 32, pcm, started_at, 0.0, passage_id, "", PlayingSettings())


def test_a_recording_from_before_the_turn_is_an_attempt_of_the_day_of_its_take(bench, clock):
    passage = bench.no_retake.switch(bench.passages.add("Study", "Opening").id, True)
    # Common practice, no source: what begins at 03:59 belongs to the day before. The
    # device takes two minutes to open, and by then the day has turned.
    started_at = clock.now.replace(hour=3, minute=59) + timedelta(days=2)
    yesterday = started_at.date() - timedelta(days=1)
    pending = replace(begun_at(bench, started_at, passage.id), no_retake=True)
    clock.now = started_at + timedelta(minutes=2)
    attempts = bench.recording._attempts
    attempts.begun(pending)
    row = bench.recording.finish(replace(pending, duration_s=1.0))
    assert row.practice_day == yesterday
    assert row.chosen_as is ChosenAs.NO_RETAKE
    assert [one.id for one in attempts.of_day(passage.id, yesterday).attempts] == [row.id]
    assert attempts.of_day(passage.id, clock.now.date()).attempts == ()
    assert bench.no_retake.view(passage.id).may_record  # today's take is still to come
