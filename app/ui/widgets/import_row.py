"""One file that is to be filed: its day, passage and part, corrected before filing."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget

from app.journal.records import Passage
from app.services.following_views import PassageProposal
from app.services.views import ImportProposal
from app.ui.language import tr
from app.ui.widgets.aim_answer import NO_PASSAGE
from app.ui.widgets.basics import fill, row, sentence
from app.ui.widgets.choices import Choice, DayEdit, passage_text
from app.ui.widgets.part_edit import PartEdit
from app.ui.words import day_text

_NO_DAY = ""
_LATER_LINES = 4


class ImportRow:
    """The fields of one proposal."""

    def __init__(self, proposal: ImportProposal, passages: Sequence[Passage]) -> None:
        self._proposal = proposal
        name = proposal.path.name
        self.name = QLabel(name)
        self.name.setToolTip(str(proposal.path))
        self.name.setTextFormat(Qt.TextFormat.PlainText)
        self.day = DayEdit(tr("Practice day of {name}").format(name=name))
        self.day.show_day(proposal.practice_day)
        self.answer: Choice[str] = Choice(tr("Which day was {name} played?").format(name=name))
        days = [(day.isoformat(), day_text(day)) for day in proposal.days]
        self.answer.offer([(_NO_DAY, tr("Which day?")), *days], _NO_DAY)
        is_asked = bool(proposal.question) and not proposal.failure
        self._either = QWidget()
        fill(row(self._either, spacing=0), self.day, self.answer)
        self.day.setVisible(not is_asked)
        self.answer.setVisible(is_asked)
        self.number = sentence()
        self.passage: Choice[str] = Choice(tr("Passage of {name}").format(name=name))
        entries = [(passage.id, passage_text(passage)) for passage in passages]
        self.passage.offer([(NO_PASSAGE, tr("No passage")), *entries], proposal.passage_id)
        self.part = PartEdit(name, proposal.duration_s)
        self.problem = proposal.failure
        if proposal.duplicate_of:
            duplicate = tr("Already in the journal: {place}.")
            self.problem = duplicate.format(place=proposal.duplicate_of)
        self._was_chosen = False
        self.passage.picked.connect(lambda _: self._choose())
        self.source = sentence(self.problem or _about(proposal))
        if self.wants_a_passage:  # what it sounds like comes later, and moves no row then
            self.source.setMinimumHeight(_LATER_LINES * self.source.fontMetrics().lineSpacing())
        if self.problem or proposal.question:
            self.source.setProperty("tone", "attention")
        if self.problem:
            for field in (self.day, self.passage, self.part):
                field.setEnabled(False)

    @property
    def fields(self) -> tuple[QWidget, ...]:
        """The widgets in the order of the headings."""
        return (self.name, self._either, self.number, self.passage, self.part, self.source)

    @property
    def wants_a_passage(self) -> bool:
        """It can be filed, and the player has not said here which passage it is."""
        return not (self.problem or self._was_chosen) and len(self.passage.keys) > 1

    @property
    def path(self) -> Path:
        """The file."""
        return self._proposal.path

    def show_passage(self, found: PassageProposal) -> None:
        """Choose the passage that was recognised, unless the player was faster."""
        if not self.wants_a_passage:
            return
        if found.passage_id is not None:
            self.passage.choose(found.passage_id)
        self.source.setText(f"{_about(self._proposal)} {found.sentence}")

    def _choose(self) -> None:
        self._was_chosen = True

    @property
    def practice_day(self) -> date | None:
        """The day it will be filed under; ``None`` while that is asked."""
        if not self._proposal.question:
            return self.day.day
        return date.fromisoformat(self.answer.key) if self.answer.key else None

    @property
    def proposal(self) -> ImportProposal | None:
        """The corrected proposal; ``None`` where there is nothing to file, or no day yet."""
        day = self.practice_day
        if self.problem or day is None:
            return None
        from_s, to_s = self.part.part_s
        corrected = replace(
            self._proposal, passage_id=self.passage.key or None, from_s=from_s, to_s=to_s
        )
        return corrected.on_day(day)


def _about(proposal: ImportProposal) -> str:
    """Say where the day comes from, what is asked, and what else is known of the file."""
    picture = tr("The picture is kept too.") if proposal.has_video else ""
    parts = (f"{proposal.recorded_at_source}.", proposal.question, proposal.notice, picture)
    return " ".join(part for part in parts if part)
