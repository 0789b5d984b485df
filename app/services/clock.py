"""The practice clock: what the player does with it is kept at once."""

import threading
import uuid
from collections.abc import Callable
from contextlib import suppress
from dataclasses import replace
from datetime import date, datetime, tzinfo

from app.journal import forgotten_clock, practice_clock
from app.journal.blocks import ClockRecord
from app.journal.failures import PlainFailure
from app.journal.kinds import Ending, MinutesSource
from app.journal.practice_clock import Step
from app.journal.practice_days import Clock
from app.journal.records import Session
from app.journal.session_minutes import counted, to_go_on_with
from app.services import clock_words
from app.services.clock_note import ClockNote
from app.services.clock_snapshot import Snapshot, snapshot, view_of
from app.services.clock_views import ClockView, ForgottenView
from app.store.store import Store

_Change = Callable[[ClockRecord, datetime], ClockRecord]
_MakeStep = Callable[[ClockRecord, datetime], Step]


class ClockService:
    """Starts, pauses, switches and stops the practice clock.

    :meth:`state`, :meth:`forgotten` and :meth:`break_due` are instant once the clock was
    taken up; everything else writes to the database. The clock and its blocks outlive the
    program: whatever was done with it is kept at once, and :meth:`beat`, called every half
    minute, keeps that somebody was there.

    Parameters
    ----------
    store, clock
    zone : tzinfo
        Where the player is; decides when the practice day turns.
    refusal : PlainFailure, optional
        Raised in place of starting, in a journal where no practice is counted.
    """

    def __init__(
        self, store: Store, clock: Clock, zone: tzinfo, refusal: PlainFailure | None = None
    ) -> None:
        self._store = store
        self._now = clock
        self._zone = zone
        self._refusal = refusal
        self._lock = threading.RLock()
        self._closed = False
        self._copy = ClockNote(store, clock)
        self._last_read: Snapshot | None = None

    def take_up(self) -> None:
        """Read what the journal says, and go on with a clock that was left running.

        Whatever else is asked first does it too.
        """
        with self._lock:
            if self._last_read is not None:
                return
            self._copy.take_up()
            self._last_read = self._read()
            self._end_old_pause()
            self._copy.follow(self._store.clock.get())

    @property
    def _known(self) -> Snapshot:
        if self._last_read is None:
            self.take_up()
        assert self._last_read is not None  # noqa: S101 - taken up
        return self._last_read

    def state(self) -> ClockView:
        """Give the clock as it stands now (instant)."""
        return view_of(self._known, self._now())

    def forgotten(self) -> ForgottenView | None:
        """Give the question that the clock raises, if it was forgotten (instant)."""
        known = self._known
        question = known.question(self._now())
        if question is None:
            return None
        return clock_words.question_view(question, known.named(question.clock.item_id).title)

    def break_due(self) -> str:
        """Suggest a break, with its caution; empty while none is due (instant)."""
        return self.state().break_sentence

    def refresh(self) -> None:
        """Look again at what the journal says, after something else has changed it."""
        with self._lock:
            self.take_up()
            self._last_read = self._read()
            self._copy.follow(self._last_read.clock)

    def start(self, item_id: str | None = None) -> ClockView:
        """Start the clock on an item; a paused one goes on, a running one switches to it."""
        if self._refusal is not None:
            raise self._refusal
        with self._lock, self._store.transaction():
            now, clock = self._now(), self._answered_clock()
            if clock is None:
                session = self._session_now(now)
                started = practice_clock.started(session.id, _new_id(), item_id, now)
                self._keep(Step(started))
            else:
                self._resume_on(clock, item_id, now)
        return self._looked_again()

    def pause(self) -> ClockView:
        """Stop counting for a while."""
        return self._step(lambda clock, now: practice_clock.paused(clock, now, _new_id()))

    def resume(self) -> ClockView:
        """Go on after a pause."""
        return self._step(practice_clock.resumed)

    def toggle(self) -> ClockView:
        """Start, pause or go on, whichever comes next: one key for all three."""
        phase = self.state().phase
        if phase == "stopped":
            return self.start()
        return self.pause() if phase == "running" else self.resume()

    def switch(self, item_id: str | None) -> ClockView:
        """Go over to another item; the clock runs on."""
        return self._step(
            lambda clock, now: practice_clock.switched(clock, item_id, now, _new_id())
        )

    def stop(self) -> ClockView:
        """End the sitting; its minutes are kept."""
        return self._step(practice_clock.stopped)

    def answer_forgotten(self, ending: Ending, minutes: float | None = None) -> ClockView:
        """Say until when was played on a clock that was forgotten.

        Parameters
        ----------
        ending : Ending
            One of the choices that :meth:`forgotten` offers, or ``MINUTES``.
        minutes : float, optional
            For ``MINUTES``.

        Raises
        ------
        PlainFailure
            Where nothing was asked, or the answer does not fit.
        """
        with self._lock, self._store.transaction():
            now = self._now()
            question = self._known.question(now)
            if question is None:
                raise PlainFailure("The clock was not forgotten.", "Go on practising.")
            try:
                step = forgotten_clock.answered(question, ending, minutes)
            except ValueError as problem:
                raise PlainFailure(
                    "That does not fit into the time since the clock was started.",
                    f"Give between 0 and {question.most_minutes:.0f} minutes.",
                ) from problem
            self._keep(step)
            if step.clock is not None and self._is_typed(step.clock):
                self._move_on(step.clock, now)  # what is played from now on counts again
        return self._looked_again()

    def put_off_break(self) -> None:
        """Suggest the break again in ten minutes."""
        self._step(lambda clock, now: Step(practice_clock.break_put_off(clock, now)))

    def close(self) -> None:
        """Let the clock run on unwatched: the program is closed on purpose."""
        if not self._closed and self._last_read is not None:
            self._note(lambda clock, _now: replace(clock, seen_at=None))
        self._closed = True

    def beat(self) -> None:
        """Keep that the program is alive and the clock with it; every half minute.

        A clock that was forgotten is left alone, or the question would answer itself.
        """
        self._note(practice_clock.seen)

    def touch(self) -> None:
        """Note that the player is there, for instance because a take is recorded."""
        self._note(practice_clock.touched)

    def cut(self, day: date) -> None:
        """Let the clock count for a new session from now on: minutes of a day were typed.

        They stand for everything up to now. A forgotten clock of that day goes to the
        session that holds them, so that whatever it is answered counts no minutes again.
        Call inside the transaction that keeps them; :meth:`refresh` afterwards.
        """
        self.take_up()
        clock, now = self._store.clock.get(), self._now()
        if clock is None or self._session_of(clock).practice_day != day:
            return
        if self._known.question(now):
            typed = self._store.sessions.of_day(day)[0]
            self._store.clock.put(replace(clock, session_id=typed.id))
            return
        self._move_on(clock, now)

    def _move_on(self, clock: ClockRecord, now: datetime) -> None:
        """Count for a new session; the block up to now stays without minutes of its own."""
        session = Session(_new_id(), self._known.day_of(now), now)
        self._store.sessions.add(session)
        step = practice_clock.moved(clock, session.id, now, _new_id())
        if step.closed is not None:
            self._store.blocks.add(step.closed)
        self._store.clock.put(step.clock)

    def _is_typed(self, clock: ClockRecord) -> bool:
        return self._session_of(clock).minutes_source is MinutesSource.TYPED

    def _note(self, change: _Change) -> None:
        known, now = self._known, self._now()
        if known.clock is None or self._store.read_only or known.question(now):
            return
        # A disk that refuses a note twice a minute will refuse something that matters too.
        with suppress(PlainFailure), self._lock, self._store.transaction():
            clock = self._store.clock.get()
            if clock is not None:
                self._store.clock.put(change(clock, now))
        self.refresh()

    def _step(self, make: _MakeStep) -> ClockView:
        with self._lock, self._store.transaction():
            now, clock = self._now(), self._answered_clock()
            if clock is None:
                raise PlainFailure("The clock is not running.", "Start it first.")
            self._keep(make(clock, now))
        return self._looked_again()

    def _resume_on(self, clock: ClockRecord, item_id: str | None, now: datetime) -> None:
        if item_id is not None:
            step = practice_clock.switched(clock, item_id, now, _new_id())
            self._keep(step)
            clock = step.clock or clock
        self._keep(practice_clock.resumed(clock, now))

    def _keep(self, step: Step) -> None:
        if step.closed is not None:
            self._store.blocks.add(step.closed)
            session = self._store.sessions.get(step.closed.session_id)
            if session is not None:
                blocks = self._store.blocks.of_session(session.id)
                self._store.sessions.replace(counted(session, blocks))
        self._store.clock.put(step.clock)

    def _answered_clock(self) -> ClockRecord | None:
        """Give the clock; a forgotten one has to be answered first."""
        if self._store.read_only:
            raise PlainFailure("This journal is open for looking only.", "Open it to write.")
        self.take_up()
        self._last_read = self._read()
        question = self._known.question(self._now())
        if question is not None:
            raise clock_words.must_answer(question)
        self._end_old_pause()
        return self._store.clock.get()

    def _session_now(self, now: datetime) -> Session:
        day = self._known.day_of(now)
        sessions = self._store.sessions.of_day(day)
        blocks = self._store.blocks.of_sessions(session.id for session in sessions)
        found = to_go_on_with(sessions, blocks, now)
        if found is None:
            found = Session(_new_id(), day, now)
            self._store.sessions.add(found)
        return found

    def _session_of(self, clock: ClockRecord) -> Session:
        session = self._store.sessions.get(clock.session_id)
        assert session is not None  # noqa: S101 - the database holds on to it
        return session

    def _end_old_pause(self) -> None:
        """End a pause that lasted into another practice day."""
        if not self._store.read_only and self._known.is_old_pause(self._now()):
            self._store.clock.put(None)

    def _read(self) -> Snapshot:
        return snapshot(self._store, self._now(), self._zone)

    def _looked_again(self) -> ClockView:
        self.refresh()
        return self.state()


def _new_id() -> str:
    return uuid.uuid4().hex
