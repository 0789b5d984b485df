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

from app.journal.failures import PlainFailure
from app.journal.kinds import MinutesSource
from app.journal.practice_clock import is_later, seconds_between
from app.journal.practice_days import Clock, practice_day
from app.journal.records import Session
from app.journal.session_minutes import SAME_SITTING
from app.services.ears import Ears, Span, uncovered_s
from app.services.inputs import Inputs
from app.store.store import Store


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
    typed : tuple of (str, float or None)
        The typed minutes of that day, by session, as of the offer.
    """

    practice_day: date
    started_at: datetime
    minutes: float
    heard_min: float
    sentence: str
    typed: tuple[tuple[str, float | None], ...] = ()


class SoundingService:
    """Listens to an input and counts the minutes in which the instrument sounds.

    :meth:`state` is instant. :meth:`start` and :meth:`stop` open and close a device;
    :meth:`keep` writes to the database.
    """

    def __init__(
        self,
        store: Store,
        clock: Clock,
        zone: tzinfo,
        inputs: Inputs,
        refusal: PlainFailure | None = None,
    ) -> None:
        self._refusal = refusal
        self._store = store
        self._now = clock
        self._zone = zone
        self._lock = threading.RLock()
        self._inputs = inputs
        self._ears: Ears | None = None
        self._started_at = datetime.min.replace(tzinfo=UTC)
        self._typed_before: dict[str, float | None] = {}
        self._kept: set[datetime] = set()

    def start(self, device_key: str | None = None) -> None:
        """Begin to listen; a listening that goes on already goes on.

        Parameters
        ----------
        device_key : str, optional
            The journal's own input, or the system's default, where left out.

        Raises
        ------
        PlainFailure
            Where the input will not open, or no practice is counted in this journal.
        """
        if self._refusal is not None:
            raise self._refusal
        with self._lock:
            if self._ears is not None:
                return
            ears = Ears()
            self._inputs.listen_along(device_key, ears.hear)
            self._ears, self._started_at = ears, self._now()
            self._typed_before = self._typed_on(self._day())

    def state(self) -> SoundingState:
        """Give what was heard so far (instant)."""
        ears = self._ears
        if ears is None:
            return SoundingState()
        has_ended = self._inputs.along_has_ended
        return SoundingState(
            is_listening=not has_ended,
            sounds_now=ears.sounds_now and not has_ended,
            minutes=ears.seconds / 60.0,
            listened_min=ears.heard_s / 60.0,
            sentence="The sound input went away; the minutes up to then are kept in mind."
            if has_ended
            else "",
        )

    def stop(self) -> SoundingOffer | None:
        """Stop to listen, and offer the minutes; ``None`` where nothing sounded."""
        with self._lock:
            ears, self._ears = self._ears, None
            if ears is None:
                return None
            self._inputs.stop_along()
            spans = ears.spans(self._started_at)
            return self._offer(spans) if spans else None

    def keep(self, offer: SoundingOffer) -> Session | None:
        """Keep offered minutes as those of a session, with the source 'sounding'.

        They go on with a session of sounding minutes of the same sitting, or to one that
        only holds takes, or else to a session of their own.

        Returns
        -------
        Session or None
            The session; ``None`` where there is nothing to add: the offer is empty or kept
            already, or minutes were typed since that stand for it.
        """
        with self._lock:
            session = self._kept_session(offer)
            if session is not None:
                self._kept.add(offer.started_at)
            return session

    def close(self) -> None:
        """Stop to listen and forget what was heard."""
        self.stop()

    def _kept_session(self, offer: SoundingOffer) -> Session | None:
        with self._store.transaction():
            is_typed_over = dict(offer.typed) != self._typed_on(offer.practice_day)
            if offer.minutes <= 0 or is_typed_over or offer.started_at in self._kept:
                return None
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
        heard_min = sum(seconds_between(*span) for span in spans) / 60.0
        minutes, sentence = heard_min, ""
        if self._typed_on(day) != self._typed_before:
            minutes = 0.0
            sentence = "Minutes were typed for this day meanwhile; they stand for what was heard."
        else:
            minutes = uncovered_s(spans, self._clock_spans(day)) / 60.0
            if heard_min - minutes > 0.5:
                sentence = "What the practice clock counts in the same time is left out."
        typed = tuple(self._typed_on(day).items())
        return SoundingOffer(day, self._started_at, minutes, heard_min, sentence, typed)

    def _clock_spans(self, day: date) -> list[Span]:
        """Give the time that the practice clock counts, its open block included."""
        blocks = self._store.blocks.of_days(day - timedelta(days=1), day + timedelta(days=1))
        spans = [(block.started_at, block.ended_at) for block in blocks]
        clock = self._store.clock.get()
        if clock is not None and clock.running:
            spans.append((clock.since, self._now()))
        return spans

    def _may_take(self, session: Session, day: Sequence[Session], offer: SoundingOffer) -> bool:
        if is_later(session.started_at, offer.started_at):
            return False
        if session.minutes_source is MinutesSource.SOUNDING:
            since_s = seconds_between(session.started_at, offer.started_at)
            return since_s - 60.0 * (session.minutes or 0.0) <= SAME_SITTING.total_seconds()
        any_typed = any(other.minutes_source is MinutesSource.TYPED for other in day)
        clock = self._store.clock.get()
        if any_typed or (clock is not None and clock.session_id == session.id):
            return False
        return session.minutes is None
