"""The tables of what was decided while listening back."""

from datetime import datetime

from sqlalchemy import Float, String, Text
from sqlalchemy.orm import Mapped, mapped_column

from app.journal.suggestions import SuggestionKind
from app.store.columns import EnumText, Instant
from app.store.models import ID_LENGTH, Base


class DismissalModel(Base):
    """See :class:`app.journal.suggestions.Dismissal`.

    Without foreign keys: it outlives a take that is gone from a damaged journal.
    """

    __tablename__ = "dismissal"

    id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    passage_id: Mapped[str | None] = mapped_column(String(ID_LENGTH), index=True)
    take_id: Mapped[str] = mapped_column(String(ID_LENGTH), index=True)
    kind: Mapped[SuggestionKind] = mapped_column(EnumText(SuggestionKind))
    subject: Mapped[str] = mapped_column(Text)
    start_part: Mapped[float] = mapped_column(Float)
    end_part: Mapped[float] = mapped_column(Float)
    dismissed_at: Mapped[datetime] = mapped_column(Instant)


class FirstListenModel(Base):
    """See :class:`app.journal.first_listen.FirstListen`."""

    __tablename__ = "first_listen"

    take_id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    began_at: Mapped[datetime] = mapped_column(Instant)
    shown_at: Mapped[datetime] = mapped_column(Instant)
