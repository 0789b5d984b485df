"""From A to B: measures, targets and what else differs; and note by note."""

from PySide6.QtCore import Signal

from app.services.following_views import AlignedPair, ShapeView
from app.services.shape_curves import shape_words
from app.services.target_words import target_text, target_verdicts
from app.services.views import ChangeRow, CompareView, NotePairRow
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.rows import Column
from app.ui.spoken import said
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import column, fill, heading, sentence, soft
from app.ui.widgets.compare_only import only_words
from app.ui.widgets.compare_pane import ComparePane
from app.ui.widgets.compare_tables import change_columns, note_columns
from app.ui.widgets.table import RowTable

VerdictCount = tuple[str, int, int]


class ChangePane(ComparePane):
    """The measures of both takes, the verdicts of all plausible targets, confounders."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.changes: RowTable[ChangeRow] = RowTable(
            tr("Changes from A to B"), change_columns(), dense=True
        )
        self._targets = heading(tr("Notes against their targets"))
        self._held = soft()
        self.verdicts: RowTable[VerdictCount] = RowTable(
            tr("Notes by what the plausible targets say"), _verdict_columns(), dense=True
        )
        self._shape = soft()
        self._shape.hide()
        self._words = sentence()
        box = column(self, spacing=GRID_PX)
        fill(box, self.changes, self._words, self._shape)
        fill(box, self._targets, self._held, self.verdicts, 1)

    @property
    def words(self) -> str:
        """Confounders, or why the two do not match, and the levels."""
        return self._words.text()

    def say(self, words: str) -> None:
        """Say something in the place of the confounders."""
        self._words.setText(words)

    def show_compared(self, view: CompareView) -> None:
        """Show two takes; what was compared is always there to be read."""
        super().show_compared(view)
        self.changes.show_rows(view.changes)
        self.changes.fit_to_rows()
        self._shape.hide()
        found = target_verdicts(view.a, view.b)
        self.verdicts.show_rows(found)
        self.verdicts.fit_to_rows()
        for widget in (self._targets, self._held, self.verdicts):
            widget.setVisible(bool(found))
        a, b = target_text(view.a), target_text(view.b)
        same = tr("Both: {target}").format(target=a)
        both = tr("A: {a}. B: {b}").format(a=a, b=b)
        self._held.setText(same if a == b else both)
        no_interval = {said(change.no_interval) for change in view.changes if change.no_interval}
        shared = (view.how_judged, view.sentence)
        words = [*shared, *view.confounders, *sorted(no_interval), view.levels.sentence]
        self.say("\n".join(word for word in words if word))

    def show_together(self, pair: AlignedPair, shape: ShapeView) -> None:
        """Say what only one of both plays, and how alike they are in their loudness."""
        words = "\n".join(text for text in (only_words(pair), shape_words(shape)) if text)
        self._shape.setText(words)
        self._shape.setVisible(bool(words))

    def read(self, view: CompareView) -> None:
        """There is nothing more to read."""


class NotePairsPane(ComparePane):
    """The notes of both takes.

    Signals
    -------
    placeWanted(float)
        Somebody wants to hear a note, seconds in A.
    """

    placeWanted = Signal(float)

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self.notes: RowTable[NotePairRow] = RowTable(
            tr("Notes of both takes"), note_columns(), dense=True
        )
        fill(column(self), soft(tr("Cents; plus-minus holds the truth in 95 of 100 cases.")))
        layout = self.layout()
        assert layout is not None  # noqa: S101 - made in the line before
        layout.addWidget(self.notes)
        self.notes.rowOpened.connect(lambda pair: self.placeWanted.emit(pair.a_start_s))
        self.notes.clicked.connect(lambda _: self._want_chosen())

    def show_compared(self, view: CompareView) -> None:
        """Show the notes."""
        super().show_compared(view)
        self.notes.show_rows(view.notes)

    def read(self, view: CompareView) -> None:
        """There is nothing more to read."""

    def _want_chosen(self) -> None:
        if self.notes.chosen is not None:
            self.placeWanted.emit(self.notes.chosen.a_start_s)


def _verdict_columns() -> tuple[Column[VerdictCount], ...]:
    return (
        Column(tr("Notes"), lambda found: found[0]),
        Column("A", lambda found: str(found[1]), is_number=True),
        Column("B", lambda found: str(found[2]), is_number=True),
    )
