"""What the player chose for the journal."""

import json
from collections.abc import Iterable, Iterator, Sequence
from contextlib import suppress
from dataclasses import replace
from typing import Any

from sqlalchemy import insert, select

from app.journal.codec import decoded, encoded
from app.journal.failures import PlainFailure
from app.journal.practice_days import DEFAULT_TURN_HOUR, LAST_TURN_HOUR, is_turn_hour
from app.journal.records import JournalSettings
from app.store.columns import json_text
from app.store.models import SETTING_TABLE
from app.store.work import JOURNAL_KEY, Work

_SETTING = SETTING_TABLE.c


class SettingsRepository:
    """The journal's settings in and out of the database, each under its own name.

    A setting this version does not know stays as it is.
    """

    def __init__(self, work: Work) -> None:
        self._work = work

    def get(self) -> JournalSettings:
        """Give the settings; what was never chosen has its default."""
        with self._work.connection() as connection:
            rows = connection.execute(select(_SETTING.key, _SETTING.value)).all()
        settings = decoded(JournalSettings, dict(_readable(rows)))
        if not is_turn_hour(settings.day_turn_hour):  # a sidecar written by hand may say so
            return replace(settings, day_turn_hour=DEFAULT_TURN_HOUR)
        return settings

    def replace(self, settings: JournalSettings) -> None:
        """Keep changed settings.

        Raises
        ------
        PlainFailure
            Where the day would turn at an hour that makes no sense.
        """
        if not is_turn_hour(settings.day_turn_hour):
            raise PlainFailure(
                f"The practice day cannot turn at {settings.day_turn_hour}:00.",
                f"Choose an hour from 0 to {LAST_TURN_HOUR}.",
            )
        rows: list[dict[str, Any]] = [
            {"key": key, "value": json_text(value)} for key, value in encoded(settings).items()
        ]
        with self._work.connection() as connection:
            connection.execute(insert(SETTING_TABLE).prefix_with("OR REPLACE"), rows)
            self._work.touch(JOURNAL_KEY)


def _readable(rows: Iterable[Sequence[Any]]) -> Iterator[tuple[str, Any]]:
    """Give what can be read; a setting that a bad disk spoilt has its default."""
    for key, value in rows:
        with suppress(ValueError, TypeError):
            yield key, json.loads(value)
