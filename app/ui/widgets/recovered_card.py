"""A recording that a crash left behind is offered, never dropped."""

from typing import TYPE_CHECKING

from app.ui.language import tr
from app.ui.models.attention import Attention
from app.ui.models.recorder import Recorder
from app.ui.widgets.basics import Button, Card, fill, row, sentence
from app.ui.words import day_text, length_text

if TYPE_CHECKING:
    from app.services.views import PendingTake


class RecoveredCard(Card):
    """Offers the oldest of the recordings that were never filed."""

    def __init__(self, recorder: Recorder, attention: Attention) -> None:
        super().__init__()
        self._recorder = recorder
        self._attention = attention
        self._pending: PendingTake | None = None
        self._words = sentence()
        keep = Button(tr("File it"))
        keep.clicked.connect(self._keep)
        drop = Button(tr("To the trash"), plain=True)
        drop.clicked.connect(self._drop)
        buttons = row()
        fill(buttons, keep, drop, 1)
        fill(self.box, self._words, buttons)
        attention.add(self)
        recorder.unfinishedFound.connect(self.offer)

    def offer(self, found: tuple["PendingTake", ...]) -> None:
        """Offer the first of these."""
        self._pending = found[0] if found else None
        self._attention.want(self, bool(found))
        if self._pending is not None:
            started = self._pending.started_at
            self._words.setText(
                tr(
                    "A recording from {date}, {started:%H:%M}, {duration_s} long, was never "
                    "filed. Its sound is safe."
                ).format(
                    date=day_text(started.date()),
                    started=started,
                    duration_s=length_text(self._pending.duration_s),
                )
            )

    def _keep(self) -> None:
        if self._pending is not None:
            self._attention.want(self, False)
            self._recorder.finish(self._pending)

    def _drop(self) -> None:
        if self._pending is not None:
            self._attention.want(self, False)
            self._recorder.discard(self._pending)
