"""Listening along: minutes in which the instrument sounds, offered at the end."""

from typing import TYPE_CHECKING

from app.ui.language import tr
from app.ui.models.attention import Attention
from app.ui.models.sounding_minutes import SoundingMinutes
from app.ui.widgets.basics import Button, Card, fill, row, sentence
from app.ui.words import minutes_text

if TYPE_CHECKING:
    from app.services.sounding import SoundingOffer, SoundingState


class SoundingOfferCard(Card):
    """Asks whether the minutes that were heard are to be kept."""

    def __init__(self, minutes: SoundingMinutes, attention: Attention) -> None:
        super().__init__()
        self._attention = attention
        self._words = sentence()
        self._keep = Button(tr("Keep them"))
        self._keep.clicked.connect(minutes.keep)
        leave = Button(tr("Leave them"), plain=True)
        leave.clicked.connect(minutes.leave)
        buttons = row()
        fill(buttons, self._keep, leave, 1)
        fill(self.box, self._words, buttons)
        attention.add(self)
        minutes.offered.connect(self.offer)

    def offer(self, offer: "SoundingOffer | None") -> None:
        """Ask about an offer; ``None``: it is settled."""
        if offer is not None:
            heard = tr("The instrument sounded for {heard_min}.").format(
                heard_min=minutes_text(offer.heard_min)
            )
            add = tr("{minutes} would be added to the day.").format(
                minutes=minutes_text(offer.minutes)
            )
            self._words.setText(" ".join(part for part in (heard, offer.sentence, add) if part))
            self._keep.setEnabled(offer.minutes > 0)
        self._attention.want(self, offer is not None)


def sounding_words(state: "SoundingState | None") -> str:
    """Say how far the listening is; empty where nobody listens."""
    if state is None or not state.is_listening:
        return ""
    now = tr("It sounds now") if state.sounds_now else tr("Quiet now")
    return tr("{now}; {minutes} sounded").format(now=now, minutes=minutes_text(state.minutes))
