"""The session a new take belongs to."""

import uuid
from datetime import date, datetime

from app.journal.records import Session
from app.store.store import Store


def session_of(store: Store, practice_day: date, at: datetime) -> Session:
    """Give the session of a practice day that was running at an instant.

    The last one that had begun by then, else the first of the day, else a new one.
    Call inside a transaction.
    """
    sessions = store.sessions.of_day(practice_day)
    begun = [session for session in sessions if session.started_at <= at]
    if begun:
        return begun[-1]
    if sessions:
        return sessions[0]
    session = Session(uuid.uuid4().hex, practice_day, at)
    store.sessions.add(session)
    return session
