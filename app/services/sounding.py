"""Sounding minutes: when the instrument really played, heard without keeping the sound.

The input is listened to in blocks of a tenth of a second; of each only the answer
'it sounds' remains. At the end the player is offered the minutes. Whatever the practice
clock counts in the same time, or typed minutes stand for, is taken off them first.
"""

import threading
import uuid
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, timedelta, tzinfo
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from app.journal.failures import PlainFailure
from app.journal.practice_days import Clock, practice_day
from app.journal.records import MinutesSource, Session
from app.journal.session_minutes import SAME_SITTING
from app.services.input_levels import opened_input
from app.services.plain import plain_failures
from app.store.store import Store

if TYPE_CHECKING:
    from analysis.sounding import Listening, SoundingTime
    from audio.recorder import Recorder

Span = tuple[datetime, datetime]


@dataclass(frozen=True, slots=True)
class SoundingState:
    """What listening has come to.

    Attributes
    ----------
    is_listening : bool
    sounds_now : bool
        Whether the instrument sounds, as of about a second ago.
    minutes : float
        In which it sounded since listening began, rests under three seconds included.
    listened_min : float
    sentence : str
        Why listening ended by itself; empty where it did not.
    """

    is_listening: bool = False
    sounds_now: bool = False
    minutes: float = 0.0
    listened_min: float = 0.0
    sentence: str = ""


@dataclass(frozen=True, slots=True)
class SoundingOffer:
    """Minutes that could be kept, with nothing counted twice.

    Attributes
    ----------
    practice_day : date
    started_at : datetime
        When listening began.
    minutes : float
        What would be added to the day.
    heard_min : float
        All minutes in which the instrument sounded.
    sentence : str
        Why it is less than was heard; empty where it is not.
    """

    practice_day: date
    started_at: datetime
    minutes: float
    heard_min: float
    sentence: str


class SoundingService:
    """Listens to an input and counts the minutes in which the instrument sounds.

    :meth:`state` is instant. :meth:`start` and :meth:`stop` open and close a device;
    :meth:`keep` writes to the database.
    """

    def __init__(self, store: Store, clock: Clock, zone: tzinfo) -> None:
        self._store = store
        self._now = clock
        self._zone = zone
        self._lock = threading.RLock()
        self._recorder: Recorder | None = None
        self._ears: Ears | None = None
        self._started_at = datetime.min.replace(tzinfo=UTC)
        self._typed_before: dict[str, float | None] = {}

    def start(self, device_key: str | None = None) -> None:
        """Begin to listen; a listening that goes on already goes on.

        Parameters
        ----------
        device_key : str, optional
            The journal's own input, or the system's default, where left out.

        Raises
        ------
        PlainFailure
            Where the input will not open.
        """
        with self._lock:
            if self._recorder is not None:
                return
            ears = Ears()
            chosen = device_key or self._store.settings.get().input_device
            self._recorder, _ = opened_input(
                chosen, on_block=lambda block: ears.hear(block, self._rate_hz())
            )
            self._ears, self._started_at = ears, self._now()
            self._typed_before = self._typed_on(self._day())

    def state(self) -> SoundingState:
        """Give what was heard so far (instant)."""
        ears, recorder = self._ears, self._recorder
        if ears is None:
            return SoundingState()
        has_ended = recorder is not None and recorder.state == "ended"
        return SoundingState(
            is_listening=recorder is not None and not has_ended,
            sounds_now=ears.sounds_now and recorder is not None and not has_ended,
            minutes=ears.seconds / 60.0,
            listened_min=ears.heard_s / 60.0,
            sentence="The sound input went away; the minutes up to then are kept in mind."
            if has_ended
            else "",
        )

    def stop(self) -> SoundingOffer | None:
        """Stop to listen, and offer the minutes; ``None`` where nothing sounded."""
        with self._lock:
            recorder, self._recorder = self._recorder, None
            ears, self._ears = self._ears, None
            if recorder is None or ears is None:
                return None
            try:
                with plain_failures():
                    recorder.stop()
            except PlainFailure:
                pass  # the input had gone; what was heard before stays true
            spans = ears.spans(self._started_at)
            return self._offer(spans) if spans else None

    def keep(self, offer: SoundingOffer) -> Session | None:
        """Keep offered minutes as those of a session, with the source 'sounding'.

        They go on with a session of sounding minutes of the same sitting, or to one that
        only holds takes, or else to a session of their own.

        Returns
        -------
        Session or None
            The session; ``None`` where there is nothing to add.
        """
        if offer.minutes <= 0:
            return None
        with self._store.transaction():
            day = self._store.sessions.of_day(offer.practice_day)
            blocks = self._store.blocks.of_sessions(session.id for session in day)
            free = [s for s in day if not blocks.get(s.id) and self._may_take(s, day, offer)]
            if free:
                session = free[-1]
                total = (session.minutes or 0.0) + offer.minutes
                changed = replace(session, minutes=total, minutes_source=MinutesSource.SOUNDING)
                self._store.sessions.replace(changed)
                return changed
            made = Session(
                uuid.uuid4().hex,
                offer.practice_day,
                offer.started_at,
                offer.minutes,
                MinutesSource.SOUNDING,
            )
            self._store.sessions.add(made)
            return made

    def close(self) -> None:
        """Stop to listen and forget what was heard."""
        self.stop()

    def _rate_hz(self) -> int:
        recorder = self._recorder
        return recorder.sample_rate_hz if recorder is not None else 48_000

    def _day(self) -> date:
        turn_hour = self._store.settings.get().day_turn_hour
        return practice_day(self._started_at, turn_hour=turn_hour, zone=self._zone)

    def _typed_on(self, day: date) -> dict[str, float | None]:
        return {
            session.id: session.minutes
            for session in self._store.sessions.of_day(day)
            if session.minutes_source is MinutesSource.TYPED
        }

    def _offer(self, spans: Sequence[Span]) -> SoundingOffer:
        day = self._day()
        heard_min = sum(_seconds(*span) for span in spans) / 60.0
        minutes, sentence = heard_min, ""
        if self._typed_on(day) != self._typed_before:
            minutes = 0.0
            sentence = "Minutes were typed for this day meanwhile; they stand for what was heard."
        else:
            minutes = uncovered_s(spans, self._clock_spans(day)) / 60.0
            if heard_min - minutes > 0.5:
                sentence = "What the practice clock counts in the same time is left out."
        return SoundingOffer(day, self._started_at, minutes, heard_min, sentence)

    def _clock_spans(self, day: date) -> list[Span]:
        """Give the time that the practice clock counts, its open block included."""
        blocks = self._store.blocks.of_days(day - timedelta(days=1), day + timedelta(days=1))
        spans = [(block.started_at, block.ended_at) for block in blocks]
        clock = self._store.clock.get()
        if clock is not None and clock.running:
            spans.append((clock.since, self._now()))
        return spans

    def _may_take(self, session: Session, day: Sequence[Session], offer: SoundingOffer) -> bool:
        since_s = _seconds(session.started_at, offer.started_at)
        if session.minutes_source is MinutesSource.SOUNDING:
            quiet_s = since_s - 60.0 * (session.minutes or 0.0)
            return since_s >= 0 and quiet_s <= SAME_SITTING.total_seconds()
        any_typed = any(other.minutes_source is MinutesSource.TYPED for other in day)
        clock = self._store.clock.get()
        if any_typed or (clock is not None and clock.session_id == session.id):
            return False
        return session.minutes is None


class Ears:
    """Hears blocks and keeps when the instrument sounded; the sound itself is gone at once.

    The recorder's thread calls :meth:`hear`; everything else may be asked from others.
    """

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._listening: Listening | None = None
        self._time: SoundingTime | None = None
        self._finished: list[tuple[float, float]] = []
        self.sounds_now = False

    @property
    def seconds(self) -> float:
        """The time the instrument sounded."""
        time = self._time
        return 0.0 if time is None else time.seconds

    @property
    def heard_s(self) -> float:
        """How long was listened."""
        time = self._time
        return 0.0 if time is None else time.heard_s

    def hear(self, block: NDArray[np.float32], sample_rate_hz: int) -> None:
        """Take in a block, shape (n, channels); quick."""
        from analysis import sounding  # noqa: PLC0415 - scipy, only when somebody listens

        state = self._listening or sounding.begin(sample_rate_hz)
        before = self._time or sounding.SoundingTime()
        self._listening, sounds = sounding.listen(state, block)
        after = sounding.count(before, sounds, state.frame_s)
        with self._lock:
            if before.begins_s is not None and after.begins_s != before.begins_s:
                self._finished.append((before.begins_s, before.ends_s or before.begins_s))
            self._time = after
            if len(sounds):
                self.sounds_now = bool(sounds[-1])

    def spans(self, started_at: datetime) -> list[Span]:
        """Give the stretches in which the instrument sounded.

        Parameters
        ----------
        started_at : datetime
            When listening began.
        """
        with self._lock:
            stretches, time = list(self._finished), self._time
        if time is not None and time.begins_s is not None and time.ends_s is not None:
            stretches.append((time.begins_s, time.ends_s))
        start = started_at.astimezone(UTC)
        return [
            (start + timedelta(seconds=begin), start + timedelta(seconds=end))
            for begin, end in stretches
        ]


def uncovered_s(spans: Sequence[Span], covers: Sequence[Span]) -> float:
    """Give the seconds of some stretches that none of others covers.

    Parameters
    ----------
    spans : sequence of (datetime, datetime)
        Stretches that do not overlap.
    covers : sequence of (datetime, datetime)
        May overlap.
    """
    in_order = sorted((start.astimezone(UTC), end.astimezone(UTC)) for start, end in covers)
    total_s = 0.0
    for start, end in spans:
        at, last = start.astimezone(UTC), end.astimezone(UTC)
        for cover_start, cover_end in in_order:
            if cover_end <= at or cover_start >= last:
                continue
            total_s += max(0.0, _seconds(at, cover_start))
            at = max(at, cover_end)
        total_s += max(0.0, _seconds(at, last))
    return total_s


def _seconds(start: datetime, end: datetime) -> float:
    return (end.astimezone(UTC) - start.astimezone(UTC)).total_seconds()
