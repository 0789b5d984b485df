"""The tables of what was decided while listening back."""

from sqlalchemy import Column, String, Table, Text

from app.journal.suggestions import SuggestionKind
from app.store.columns import EnumText, Instant, Number
from app.store.models import ID_LENGTH, METADATA

DISMISSAL_TABLE = Table(
    "dismissal",
    METADATA,
    Column("id", String(ID_LENGTH), primary_key=True),
    Column("passage_id", String(ID_LENGTH), index=True),
    Column("take_id", String(ID_LENGTH), index=True, nullable=False),
    Column("kind", EnumText(SuggestionKind), nullable=False),
    Column("subject", Text, nullable=False),
    Column("start_part", Number, nullable=False),
    Column("end_part", Number, nullable=False),
    Column("dismissed_at", Instant, nullable=False),
)
"""See :class:`app.journal.suggestions.Dismissal`.

Without foreign keys: it outlives a take that is gone from a damaged journal.
"""


FIRST_LISTEN_TABLE = Table(
    "first_listen",
    METADATA,
    Column("take_id", String(ID_LENGTH), primary_key=True),
    Column("began_at", Instant, nullable=False),
    Column("shown_at", Instant, nullable=False),
)
"""See :class:`app.journal.first_listen.FirstListen`."""
