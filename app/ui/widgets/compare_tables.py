"""Columns of the tables that set two takes beside each other."""

from app.services.reading_views import AnyReading, Reading
from app.services.views import ChangeRow, NotePairRow
from app.ui.language import tr
from app.ui.models.rows import Column
from app.ui.spoken import said, word
from app.ui.words import position_text, reading_text, short_reading_text


def change_columns() -> tuple[Column[ChangeRow], ...]:
    """Return the columns of the take-level changes."""

    def more(change: ChangeRow) -> str:
        words = tr("{label}: A {a}, B {b}, change {change}: {word}").format(
            label=change.label,
            a=reading_text(change.a),
            b=reading_text(change.b),
            change=reading_text(change.change),
            word=change.word,
        )
        return f"{words}. {said(change.no_interval)}" if change.no_interval else words

    return (
        Column(tr("Measure"), _named_with_unit, more),
        Column("A", lambda change: _number_only(change.a), more, is_number=True),
        Column("B", lambda change: _number_only(change.b), more, is_number=True),
        Column(tr("Change"), _word_and_change, more),
    )


def note_columns() -> tuple[Column[NotePairRow], ...]:
    """Return the columns of the notes of both takes."""

    def more(pair: NotePairRow) -> str:
        return tr(
            "{name} at {a_start_s}: A {a_deviation}, B {b_deviation}, change {change}"
        ).format(
            name=pair.name,
            a_start_s=position_text(pair.a_start_s),
            a_deviation=reading_text(pair.a_deviation),
            b_deviation=reading_text(pair.b_deviation),
            change=reading_text(pair.change),
        )

    return (
        Column(tr("Note"), lambda pair: pair.name, more),
        Column(tr("At"), lambda pair: position_text(pair.a_start_s), is_number=True),
        Column("A", lambda pair: _number_only(pair.a_deviation), more, is_number=True),
        Column("B", lambda pair: _number_only(pair.b_deviation), more, is_number=True),
        Column(tr("Change"), lambda pair: _number_only(pair.change), more, is_number=True),
    )


def _number_only(reading: AnyReading) -> str:
    """Leave the unit to the heading or the measure's name."""
    text = short_reading_text(reading)
    if not isinstance(reading, Reading):
        return text
    return text.removesuffix(word(reading.unit)).strip()


def _named_with_unit(change: ChangeRow) -> str:
    units = [reading.unit for reading in (change.a, change.b) if isinstance(reading, Reading)]
    label = word(change.label)
    return f"{label}\n{word(units[0])}" if units and units[0] else label


def _word_and_change(change: ChangeRow) -> str:
    if isinstance(change.change, Reading):
        number = _number_only(change.change)
        if change.no_interval:
            number = tr("{change}, no interval").format(change=number)
        return f"{word(change.word)}\n{number}"
    return word(change.word)
