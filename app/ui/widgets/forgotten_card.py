"""The question of a forgotten clock: only the answer turns the time into minutes."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer, Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QSpinBox, QWidget

from app.journal.kinds import Ending
from app.ui.language import tr
from app.ui.models.attention import bring_into_view
from app.ui.widgets.basics import Button, Card, column, fill, row, sentence, soft
from app.ui.words import minutes_text

if TYPE_CHECKING:
    from app.services.clock_views import ForgottenView


class ForgottenCard(Card):
    """Asks until when was played; nothing is counted before it is answered.

    The page puts it where it is seen first.

    Signals
    -------
    answered(Ending, minutes or None)
    """

    answered = Signal(object, object)

    def __init__(self) -> None:
        super().__init__()
        self._shown: ForgottenView | None = None
        self._words = sentence()
        self._choices = QWidget()
        self._minutes = QSpinBox()
        self._minutes.setSuffix(" min")
        self._minutes.setAccessibleName(tr("Minutes played on the forgotten clock"))
        keep = Button(tr("Keep these minutes"))
        keep.clicked.connect(self._typed)
        typed = row()
        fill(typed, soft(tr("Or type:"), wrap=False), self._minutes, keep, 1)
        self._holder = column()
        self._holder.addWidget(self._choices)
        fill(self.box, self._words, self._holder, typed)

    def showEvent(self, event: QShowEvent) -> None:
        """Come into view, also where it asks before the window is there."""
        super().showEvent(event)
        QTimer.singleShot(0, self, lambda: bring_into_view(self))

    def show_question(self, question: "ForgottenView") -> None:
        """Show a question; the same one again leaves what is being typed."""
        shown, self._shown = self._shown, question
        if shown is not None and shown.started_at == question.started_at:
            return
        item = f" ({question.item_title})" if question.item_title else ""
        self._words.setText(f"{question.sentence}{item}")
        self._choices.deleteLater()
        self._choices = QWidget()
        box = column(self._choices)
        for choice in question.choices:
            button = Button(f"{choice.words}: {minutes_text(choice.minutes)}")
            button.clicked.connect(
                lambda _checked=False, ending=choice.ending: self.answered.emit(ending, None)
            )
            box.addWidget(button)
        self._holder.addWidget(self._choices)
        self._minutes.setRange(0, int(question.most_minutes))

    def _typed(self) -> None:
        self.answered.emit(Ending.MINUTES, float(self._minutes.value()))
