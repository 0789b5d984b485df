"""Builds the demo journal from the invented scenario.

Rendering and measuring run in two processes; filing goes through the same steps as
for the player's own takes. The journal is built beside its final place and renamed
when it is complete, so that a demo is there as a whole or not at all.
"""

import json
import shutil
import uuid
from dataclasses import replace
from datetime import date, datetime, time, timedelta, tzinfo
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.failures import PlainFailure
from app.journal.kinds import AimMet, Author, MarkerState, MinutesSource, Origin
from app.journal.markers import checked
from app.journal.records import Marker, Passage, PlayingSettings, RestDay, Session
from app.services.demo.keeping import choose_settings, keep_promises
from app.services.demo.rendering import Rendered, rendered_takes
from app.services.demo.sitting import Sittings, without_retakes
from app.services.measuring import MeasureReport, MeasuringService
from app.services.passages import PassageService
from app.services.plain import plain_failures
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
    stop_if,
)
from app.services.take_filing import NewTake, PlacedFile, TakeFiler
from app.store.store import Store, open_store

if TYPE_CHECKING:
    from sample_audio.scenario import DemoDay, DemoTake

MARK_NAME = "demo.json"
_MARK_VERSION = 1
_ABANDONED_AFTER_S = 24 * 3600.0
_ENTERED_AFTER = timedelta(minutes=6)
_LONGEST_MOVE = timedelta(hours=15)
_EVENING = timedelta(hours=3)


class _SettableClock:
    """Gives the instant that the story is at."""

    def __init__(self, now: datetime) -> None:
        self.now = now

    def __call__(self) -> datetime:
        return self.now


def is_demo(journal_dir: Path) -> bool:
    """Say whether a journal was made by the demo."""
    return (journal_dir / MARK_NAME).is_file()


def demo_end(journal_dir: Path) -> date | None:
    """Give the last day of a finished demo journal; ``None`` where there is none."""
    try:
        mark = json.loads((journal_dir / MARK_NAME).read_text(encoding="utf-8"))
        return date.fromisoformat(mark["end"]) if mark["demo"] == _MARK_VERSION else None
    except (OSError, ValueError, KeyError, TypeError):
        return None


def build_demo(
    journal_dir: Path,
    *,
    end: date,
    progress: Progress = no_progress,
    should_stop: ShouldStop = never_stop,
) -> None:
    """Render, file and measure the demo's takes into a new journal.

    An earlier demo at the same place is replaced once the new one is complete.

    Parameters
    ----------
    journal_dir : Path
        Must not exist, or hold a journal that the demo made.
    end : date
        Last practice day of the eight weeks.

    Raises
    ------
    PlainFailure
        Where the folder holds anything that the demo did not make, or cannot be
        written to.
    Stopped
        Once `should_stop` says so; nothing is left of it.
    """
    refuse_foreign(journal_dir)
    _tidy(journal_dir)
    building = journal_dir.with_name(f".{journal_dir.name}-{uuid.uuid4().hex[:8]}")
    with plain_failures("the demo was not built"):
        building.mkdir(parents=True)
        try:
            _fill(building, end, progress, should_stop)
            mark = {"demo": _MARK_VERSION, "end": end.isoformat()}
            (building / MARK_NAME).write_text(json.dumps(mark), encoding="utf-8")
            stop_if(should_stop)
            if journal_dir.exists():
                shutil.rmtree(journal_dir)
            building.rename(journal_dir)
        finally:
            shutil.rmtree(building, ignore_errors=True)
    progress(1.0)


def refuse_foreign(journal_dir: Path) -> None:
    """Refuse a folder with anything in it that the demo did not make."""
    if not journal_dir.exists() or is_demo(journal_dir):
        return
    if not journal_dir.is_dir() or any(journal_dir.iterdir()):
        raise PlainFailure(
            f"{journal_dir} holds something that the demo did not make, so it is left alone.",
            "Choose another folder with --folder.",
        )
    journal_dir.rmdir()


def _tidy(journal_dir: Path) -> None:
    """Remove what a killed run left unfinished, once nobody can be at work on it."""
    for left in journal_dir.parent.glob(f".{journal_dir.name}-????????"):
        if datetime.now().timestamp() - left.stat().st_mtime > _ABANDONED_AFTER_S:
            shutil.rmtree(left, ignore_errors=True)


def _fill(folder: Path, end: date, progress: Progress, should_stop: ShouldStop) -> None:
    from sample_audio.scenario import PASSAGES, demo_days  # noqa: PLC0415 - only for the demo

    days = demo_days(end)
    zone = datetime.now().astimezone().tzinfo
    if zone is None:
        raise RuntimeError("a local instant has a time zone")
    clock = _SettableClock(_instant(days[0], time(12), zone))
    with open_store(folder, clock=clock) as store:
        choose_settings(store)
        passages = PassageService(store, clock)
        by_key = {
            p.key: passages.add(p.piece, p.name, p.bars, playing_settings(p.pulse_bpm, p.tonic))
            for p in PASSAGES
        }
        key = PASSAGES[0].key
        by_key[key] = without_retakes(store, by_key[key], days[0].date)
        story = _Story(store, clock, zone, by_key, _earlier(days[-1], zone))
        takes = [(day, take) for day in days for take in day.takes]
        scratch = folder / ".rendering"
        scratch.mkdir()
        jobs = [(take, by_key[take.passage_key].settings) for _day, take in takes]
        with rendered_takes(jobs, scratch, should_stop) as rendered:
            done = 0
            for day in days:
                story.begin_day(day)
                for take in day.takes:
                    story.file(day, take, next(rendered))
                    done += 1
                    progress(done / len(takes))
        keep_promises(store, clock, days[0].date, days[-1].date, tuple(by_key.values()))
        shutil.rmtree(scratch)


def playing_settings(pulse_bpm: float, tonic: str) -> PlayingSettings:
    """Give what the demo's violist entered for a passage."""
    return PlayingSettings(instrument="viola", pulse_bpm=pulse_bpm, tonic=tonic)


def _instant(day: "DemoDay", at: time, zone: tzinfo) -> datetime:
    return day.instant(at).replace(tzinfo=zone)


def _earlier(last_day: "DemoDay", zone: tzinfo) -> dict[date, timedelta]:
    """Say by how much the last day moves forward where its evening is still to come.

    The story is told on the day somebody looks at it, and no take may lie ahead.
    """
    evening = [_instant(last_day, take.time_of_day, zone) for take in last_day.takes]
    if not evening:
        return {}
    ahead = max(evening) + 2 * _ENTERED_AFTER - datetime.now(zone)
    moves = timedelta(0) < ahead <= _LONGEST_MOVE
    return {last_day.date: ahead} if moves else {}


class _Story:
    """Puts the scenario's days into the journal in the order they happened."""

    def __init__(
        self,
        store: Store,
        clock: _SettableClock,
        zone: tzinfo,
        passages: dict[str, Passage],
        earlier: dict[date, timedelta],
    ) -> None:
        self._store = store
        self._clock = clock
        self._zone = zone
        self._passages = passages
        self._earlier = earlier
        self._sittings = Sittings(store)
        self._filer = TakeFiler(store, clock)
        self._measuring = MeasuringService(store, clock)

    def _at(self, day: "DemoDay", at: time) -> datetime:
        return _instant(day, at, self._zone) - self._earlier.get(day.date, timedelta(0))

    def begin_day(self, day: "DemoDay") -> None:
        """Keep a day's session with its blocks, or rest."""
        if day.planned_rest:
            self._store.rest_days.put(RestDay(day.date, planned=True))
        if day.minutes > 0 or day.note:
            session = Session(
                id=uuid.uuid4().hex,
                practice_day=day.date,
                started_at=self._begin_of(day),
                minutes=day.minutes if day.minutes > 0 else None,
                minutes_source=MinutesSource.CLOCK if day.minutes > 0 else None,
                note=day.note,
            )
            self._store.sessions.add(session)
            self._sittings.keep(session, day.blocks)

    def _begin_of(self, day: "DemoDay") -> datetime:
        """Give when the sitting began: she warms up and practises before she records."""
        usual = self._at(day, time(18, 40))
        firsts = [self._at(day, take.time_of_day) for take in day.takes]
        latest = min(firsts, default=usual + _EVENING) - self._sittings.length(day.blocks)
        return min(usual, latest)

    def file(self, day: "DemoDay", take: "DemoTake", rendered: Rendered) -> None:
        """File a take as a recording, keep what was measured, and set its markers."""
        recorded_at = self._at(day, take.time_of_day)
        self._clock.now = recorded_at + _ENTERED_AFTER
        passage = self._passages[take.passage_key]
        new = NewTake(
            practice_day=day.date,
            recorded_at=recorded_at,
            passage_id=passage.id,
            origin=Origin.RECORDED,
            settings=passage.settings,
            suffix=".flac",
            aim=take.aim,
            no_retake=passage.no_retake,
        )

        def place(path: Path, tags: dict[str, str]) -> PlacedFile:
            return _encoded(rendered.wav, path, tags)

        filed = self._filer.file(new, place)
        # Where retakes are allowed she makes some, on two days of three.
        discarded = 0 if passage.no_retake else day.date.toordinal() % 3
        self._sittings.attempts(filed, discarded)
        if take.aim_met is not None:
            filed = replace(filed, aim_met=AimMet(take.aim_met))
            self._store.takes.replace(filed)
        self._measuring.keep(MeasureReport(filed.file, rendered.analysis, filed.settings), filed)
        for mark in take.markers:
            marker = Marker(
                id=uuid.uuid4().hex,
                take_id=filed.id,
                start_s=mark.start_s,
                end_s=mark.end_s,
                category=mark.category,
                weight=mark.weight,
                text=mark.text,
                author=Author(mark.author),
                state=MarkerState(mark.state),
                created_at=self._clock.now,
                changed_at=self._clock.now,
            )
            self._store.markers.add(checked(marker, filed.duration_s))


def _encoded(wav: Path, path: Path, tags: dict[str, str]) -> PlacedFile:
    from audio.encoding import encode_flac  # noqa: PLC0415 - only when needed
    from audio.importing import sha256_of  # noqa: PLC0415

    made = encode_flac(wav, path, tags, remove_pcm=True)
    duration_s = made.frames / made.sample_rate_hz
    return PlacedFile(sha256_of(path), duration_s, made.sample_rate_hz, made.channels)
