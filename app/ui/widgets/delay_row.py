"""The delay from the output back to the input: what is known of it, and measuring it."""

from PySide6.QtWidgets import QWidget

from app.journal.clicks import RoundTripRecord
from app.journal.failures import PlainFailure
from app.services.latency import SWEEP_CAUTION
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.recorder import Recorder, RecorderState
from app.ui.spoken import said
from app.ui.widgets.basics import Button, column, fill, row, sentence, soft
from app.ui.words import day_text, number_text

_SUBJECT = "guides.delay"


class DelayRow(QWidget):
    """Says how well the click and a take line up, and measures it after a caution."""

    def __init__(self, desk: Desk, recorder: Recorder) -> None:
        super().__init__()
        self._desk = desk
        self._recorder = recorder
        self.words = soft()
        self.measure = Button(tr("Measure the delay"))
        self.measure.clicked.connect(self.ask)
        self.caution = sentence(_caution_words())
        self.play = Button(tr("Play the sweeps"))
        self.play.clicked.connect(self.begin)
        self.leave = Button(tr("Leave it"), plain=True)
        self.leave.clicked.connect(self.stop)
        head = row()
        fill(head, self.words, self.measure)
        head.setStretch(0, 1)
        asked = row()
        fill(asked, self.caution, self.play, self.leave)
        asked.setStretch(0, 1)
        fill(column(self, spacing=4), head, asked)
        self._show_asking(asking=False)

    def look(self) -> None:
        """Read what was measured of the chosen devices."""
        latency, key = self._desk.workbench.latency, self._recorder.device_key
        self._desk.jobs.analyse(
            lambda _progress, _should_stop: latency.known(input_key=key),
            self._say,
            subject=_SUBJECT,
            failed=lambda failure: self.words.setText(failure.sentence),
        )

    def ask(self) -> None:
        """Show the caution first; nothing sounds yet."""
        if self._recorder.state not in (RecorderState.IDLE, RecorderState.LISTENING):
            self._desk.tell(tr("A recording runs."), tr("Measure the delay after it."))
            return
        self._show_asking(asking=True)
        self.play.setFocus()

    def begin(self) -> None:
        """Play the sweeps and listen for them."""
        self._recorder.stop_listening()
        self.play.setEnabled(False)
        self.caution.setText(tr("Measuring; it takes about six seconds."))
        latency, key = self._desk.workbench.latency, self._recorder.device_key
        self._desk.jobs.analyse(
            lambda _progress, should_stop: latency.measure(input_key=key, should_stop=should_stop),
            self._measured,
            subject=_SUBJECT,
            failed=self._failed,
        )

    def stop(self) -> None:
        """Leave the delay as it is known."""
        self._desk.jobs.forget(_SUBJECT)
        self._show_asking(asking=False)
        self.look()

    def _measured(self, found: RoundTripRecord) -> None:
        self._show_asking(asking=False)
        self._say(found)

    def _failed(self, failure: PlainFailure) -> None:
        self._show_asking(asking=False)
        self._desk.tell_failure(failure)

    def _say(self, known: RoundTripRecord | None) -> None:
        if known is None:
            self.words.setText(
                tr(
                    "The delay of these devices is not measured: the click may lie some "
                    "milliseconds beside its beats in the take."
                )
            )
            self.measure.setText(tr("Measure the delay"))
            return
        words = tr("Delay beyond what the devices say: {delay} ms ± {scatter} ms, measured {day}.")
        self.words.setText(
            words.format(
                delay=number_text(known.offset_s * 1000, 1),
                scatter=number_text(known.scatter_s * 1000, 1),
                day=day_text(known.measured_at.date()),
            )
        )
        self.measure.setText(tr("Measure again"))

    def _show_asking(self, *, asking: bool) -> None:
        self.caution.setText(_caution_words())
        self.play.setEnabled(True)
        self.measure.setVisible(not asking)
        for part in (self.caution, self.play, self.leave):
            part.setVisible(asking)


def _caution_words() -> str:
    near = tr("Put the microphone near the loudspeaker, or join output and input with a cable.")
    return f"{said(SWEEP_CAUTION)} {near}"
