"""New clips of the watched folder: filed with one key, or looked at first."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal

from app.ui.language import tr
from app.ui.models.clip_offers import ClipOffers
from app.ui.widgets.basics import Button, Card, fill, heading, row, sentence
from app.ui.widgets.choices import passage_text
from app.ui.words import counted, day_text, length_text

if TYPE_CHECKING:
    from app.journal.records import Passage
    from app.services.views import ImportProposal


class OffersCard(Card):
    """Shows the first of the offered clips.

    Signals
    -------
    lookWanted()
        The player wants to see and correct all of them.
    """

    lookWanted = Signal()

    def __init__(self, offers: ClipOffers) -> None:
        super().__init__()
        self._passages: tuple[Passage, ...] = ()
        self._title = heading("")
        self._words = sentence()
        self._file = Button(tr("File it"), "import", action_id="practice.file_clip")
        self._file.clicked.connect(offers.file_next)
        look = Button(tr("Look at all"), action_id="practice.look_clips")
        look.clicked.connect(self.lookWanted)
        aside = Button(tr("Not this one"), plain=True)
        aside.clicked.connect(offers.put_next_aside)
        buttons = row()
        fill(buttons, self._file, look, aside, 1)
        fill(self.box, self._title, self._words, buttons)

    def show_offers(
        self, offers: tuple["ImportProposal", ...], passages: tuple["Passage", ...]
    ) -> None:
        """Say what arrived and where the first of it would go."""
        if not offers:
            return
        first = offers[0]
        self._title.setText(
            tr("{offers} in the watched folder").format(offers=counted(len(offers), "new clip"))
        )
        names = {passage.id: passage_text(passage) for passage in passages}
        place = names.get(first.passage_id or "", "no passage")
        where = (
            f"{first.path.name}, {length_text(first.duration_s)}: {day_text(first.practice_day)} "
            f"({first.recorded_at_source}), {place}."
        )
        self._words.setText(f"{first.path.name}: {first.failure}" if first.failure else where)
        if first.question:
            self._words.setText(f"{first.path.name}: {first.question}")
        self._file.setEnabled(any(not (offer.failure or offer.question) for offer in offers))
