"""Every number of a take, with unit, plus-minus and what it means."""

from PySide6.QtWidgets import QWidget

from app.services.reading_views import NamedReading
from app.ui.language import tr
from app.ui.models.rows import Column
from app.ui.spoken import said, word
from app.ui.widgets.basics import column, sentence
from app.ui.widgets.table import RowTable
from app.ui.words import reading_text


def _more(entry: NamedReading) -> str:
    return f"{word(entry.label)}: {reading_text(entry.reading)}. {said(entry.explanation)}"


class NumbersPane(QWidget):
    """Lists the summary; the words below explain the chosen line."""

    def __init__(self) -> None:
        super().__init__()
        columns: tuple[Column[NamedReading], ...] = (
            Column(tr("Measure"), lambda entry: word(entry.label), _more),
            Column(tr("Value"), lambda entry: reading_text(entry.reading), _more),
        )
        self._table: RowTable[NamedReading] = RowTable(
            tr("Numbers of the take"), columns, stretch=(0, 1), dense=True
        )
        self._words = sentence(tr("Choose a line to read what it means."))
        self._table.rowChosen.connect(self._explain)
        box = column(self)
        box.addWidget(self._table, 1)
        box.addWidget(self._words)

    def show_summary(self, summary: tuple[NamedReading, ...]) -> None:
        """Show these numbers."""
        self._table.show_rows(summary)

    def _explain(self, entry: NamedReading | None) -> None:
        self._words.setText(entry.explanation if entry else "")
