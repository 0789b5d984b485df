"""What the measurements suggest, and how ear and measurement compare."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from app.services.suggestion_views import (
    AgreementRow,
    AgreementView,
    SuggestionRow,
    SuggestionsView,
)
from app.ui.language import tr
from app.ui.models.rows import Column
from app.ui.widgets.basics import Button, column, fill, heading, row, sentence, soft
from app.ui.widgets.marker_words import heard_words
from app.ui.widgets.table import RowTable
from app.ui.words import position_text

_MOST_AGREEMENT_ROWS = 7


def _place(entry: SuggestionRow) -> str:
    return position_text(entry.start_s)


def _evidence(entry: SuggestionRow) -> str:
    return f"{entry.text}. " + "; ".join(entry.evidence)


def _measured(entry: AgreementRow) -> str:
    return entry.measured or "\N{EN DASH}"


def _heard(entry: AgreementRow) -> str:
    return heard_words(entry.heard) or "\N{EN DASH}"


def _agreement_words(entry: AgreementRow) -> str:
    place = position_text(entry.start_s)
    if entry.kind == "hit":
        return tr("{place}: heard and measured. {heard}; {measured}.").format(
            place=place, heard=heard_words(entry.heard), measured=entry.measured
        )
    if entry.kind == "missed":
        return tr("{place}: measured, not marked. {measured}.").format(
            place=place, measured=entry.measured
        )
    return tr("{place}: marked by ear. Nothing of the kind was measured there. {heard}.").format(
        place=place, heard=heard_words(entry.heard)
    )


class SuggestionsPane(QWidget):
    """Lists suggestions with their evidence, to be accepted or put aside.

    Signals
    -------
    seekWanted(float)
        The player chose a line.
    acceptWanted(str, bool)
        Key of a suggestion that becomes a marker; whether its text is to be written.
    dismissWanted(str)
        Key of a suggestion that is put aside.
    allWanted(bool), bringBackWanted(), earFirstWanted(bool)
        All of them rather than five; what was put aside; listen first.
    """

    seekWanted = Signal(float)
    acceptWanted = Signal(str, bool)
    dismissWanted = Signal(str)
    allWanted = Signal(bool)
    bringBackWanted = Signal()
    earFirstWanted = Signal(bool)

    def __init__(self) -> None:
        super().__init__()
        self._shows_all = False
        self._words = sentence()
        self._evidence = soft()
        columns: tuple[Column[SuggestionRow], ...] = (
            Column(tr("Time"), _place, _evidence, is_number=True),
            Column(tr("Measured"), lambda entry: entry.text, _evidence),
        )
        self.table: RowTable[SuggestionRow] = RowTable(
            tr("Suggestions from the measurements"), columns, stretch=1, dense=True
        )
        self.table.setWordWrap(True)
        self.table.rowChosen.connect(lambda _: self._explain())
        self.table.clicked.connect(lambda _: self._go())
        self.table.rowOpened.connect(lambda _: self.accept())
        self._accept = Button(tr("Accept"), "marker", action_id="listen.accept")
        self._edit = Button(tr("And write"), action_id="listen.accept_edit")
        self._dismiss = Button(tr("Put aside"), action_id="listen.dismiss", plain=True)
        self._all = Button("", action_id="listen.all_suggestions", plain=True)
        self._back = Button("", action_id="listen.bring_back", plain=True)
        self._ear = Button(tr("Listen first"), action_id="listen.ear_first")
        self._ear.setCheckable(True)
        self._connect_buttons()
        self._build()
        self.show_suggestions(SuggestionsView("", ()))

    def _connect_buttons(self) -> None:
        self._accept.clicked.connect(self.accept)
        self._edit.clicked.connect(lambda: self.accept(write=True))
        self._dismiss.clicked.connect(self.dismiss)
        self._all.clicked.connect(self.toggle_all)
        self._back.clicked.connect(self.bringBackWanted)
        self._ear.clicked.connect(self.earFirstWanted)

    def _build(self) -> None:
        columns: tuple[Column[AgreementRow], ...] = (
            Column(tr("Time"), lambda e: position_text(e.start_s), _agreement_words, True),
            Column(tr("Measured"), _measured, _agreement_words),
            Column(tr("Heard"), _heard, _agreement_words),
        )
        self.agreement: RowTable[AgreementRow] = RowTable(
            tr("Ear and measurement"), columns, stretch=2, dense=True
        )
        self.agreement.clicked.connect(lambda _: self._go_agreement())
        self._agreement_words = sentence()
        self._both = QWidget()
        box = column(self._both)
        fill(box, heading(tr("Ear and measurement")), self._agreement_words, self.agreement)
        self._both.hide()
        buttons, below = row(), row()
        fill(buttons, self._accept, self._edit, 1, self._dismiss)
        fill(below, self._all, self._back, 1, self._ear)
        all_of_it = column(self)
        fill(all_of_it, self._both, self._words, self.table, self._evidence, buttons, below)
        all_of_it.setStretch(2, 1)

    # -- what is shown --------------------------------------------------------------

    def show_suggestions(self, view: SuggestionsView) -> None:
        """Show these suggestions; the chosen one stays chosen."""
        wanted = self.table.chosen.key if self.table.chosen else ""
        self.table.blockSignals(True)
        self.table.show_rows(view.rows)
        self.table.blockSignals(False)
        keys = [entry.key for entry in view.rows]
        if keys:
            self.table.choose(keys.index(wanted) if wanted in keys else 0)
        offered = tr("Suggested by the measurements, the clearest first. Yours to decide.")
        self._words.setText(view.sentence or offered)
        self._all.setVisible(bool(view.more_count) or self._shows_all)
        more = tr("Only five") if self._shows_all else tr("{count} more")
        self._all.setText(more.format(count=view.more_count))
        self._back.setVisible(bool(view.dismissed_count))
        self._back.setText(tr("{count} put aside").format(count=view.dismissed_count))
        self._explain()

    def show_hidden(self, words: str) -> None:
        """Show nothing yet, and say why."""
        self.show_suggestions(SuggestionsView("", (), sentence=words))
        self.show_agreement(None)

    def show_agreement(self, view: AgreementView | None) -> None:
        """Show where ear and measurement agree, or nothing of it."""
        self._both.setVisible(view is not None)
        if view is None:
            return
        self._agreement_words.setText(view.sentence)
        self.agreement.show_rows(view.rows)
        self.agreement.setVisible(bool(view.rows))
        self.agreement.fit(_MOST_AGREEMENT_ROWS)

    def show_ear_first(self, *, is_on: bool) -> None:
        """Show whether the journal asks for the ear first."""
        self._ear.setChecked(is_on)

    @property
    def shows_all(self) -> bool:
        """True where all suggestions were asked for."""
        return self._shows_all

    @property
    def words(self) -> str:
        """The sentence over the list."""
        return self._words.text()

    # -- what the player does -------------------------------------------------------

    def accept(self, *, write: bool = False) -> None:
        """Ask for the chosen suggestion to become a marker."""
        if self.table.chosen is not None:
            self.acceptWanted.emit(self.table.chosen.key, write)

    def dismiss(self) -> None:
        """Ask for the chosen suggestion to be put aside."""
        if self.table.chosen is not None:
            self.dismissWanted.emit(self.table.chosen.key)

    def toggle_all(self) -> None:
        """Ask for all suggestions, or for five again."""
        self._shows_all = not self._shows_all
        self.allWanted.emit(self._shows_all)

    def forget_all(self) -> None:
        """Begin with five again, for another take."""
        self._shows_all = False

    def step(self, steps: int) -> str:
        """Go to the next or earlier suggestion in the list, and say what it says."""
        rows = self.table.rows_model.rows
        if not rows:
            return self.words
        at = min(max(self.table.currentIndex().row() + steps, 0), len(rows) - 1)
        self.table.choose(at)
        self._explain()
        self._go()
        return rows[at].text

    def _explain(self) -> None:
        chosen = self.table.chosen
        self._evidence.setText("\n".join(chosen.evidence) if chosen else "")
        for button in (self._accept, self._edit, self._dismiss):
            button.setEnabled(chosen is not None)

    def _go(self) -> None:
        if self.table.chosen is not None:
            self.seekWanted.emit(self.table.chosen.start_s)

    def _go_agreement(self) -> None:
        if self.agreement.chosen is not None:
            self.seekWanted.emit(self.agreement.chosen.start_s)
