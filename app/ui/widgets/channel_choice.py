"""Which channel of an input with several is recorded."""

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from app.journal.input_channels import channel_gone
from app.ui.language import tr
from app.ui.spoken import said
from app.ui.widgets.basics import soft
from app.ui.widgets.choices import Choice

if TYPE_CHECKING:
    from app.services.views import InputRow

_USUAL = 0


class ChannelChoice(Choice[int]):
    """A combo box of an input's channels, counted from 1; not shown where there is one only.

    Attributes
    ----------
    gone : Label
        Says where the channel chosen once is not there any more; to be put below.
    """

    def __init__(self) -> None:
        super().__init__(tr("Channel of the input"))
        self.setToolTip(
            tr(
                "The channel that the microphone is plugged into. The usual one is what the "
                "system gives: the first, or a mix of all."
            )
        )
        self.setMinimumContentsLength(14)
        self.gone = soft()
        self.gone.hide()
        self.hide()
        self._inputs: dict[str, InputRow] = {}
        self._shown = ""

    def know_inputs(self, inputs: Sequence["InputRow"], shown: str | None = None) -> None:
        """Take over which inputs there are, and show the channels of one."""
        self._inputs = {row.key: row for row in inputs}
        self.show_input(shown or "")

    def show_input(self, key: str) -> None:
        """Show the channels of an input."""
        self._shown = key
        row = self._inputs.get(key)
        self.setVisible(row is not None and row.channels > 1)
        is_gone = row is not None and (row.channel or 0) > row.channels
        self.gone.setVisible(is_gone)
        if row is None:
            return
        if is_gone:
            self.gone.setText(said(channel_gone(row.name, row.channel or 0)))
        channels = [
            (number, tr("Channel {number}").format(number=number))
            for number in range(1, row.channels + 1)
        ]
        chosen = 1 if is_gone else row.channel or _USUAL
        self.offer([(_USUAL, tr("Usual channel")), *channels], chosen)

    def note_choice(self, channel: int) -> None:
        """Take note of what the player chose for the input that is shown."""
        row = self._inputs.get(self._shown)
        if row is not None:
            self._inputs[self._shown] = replace(row, channel=channel or None)
            self.gone.hide()
