"""What is heard beside a take, and through which output."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QDoubleSpinBox, QGridLayout, QLineEdit, QSlider

from app.services.guide_settings import FASTEST_BPM, HEARING_CAUTION, SLOWEST_BPM
from app.services.views import InputRow
from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Card, labelled, soft
from app.ui.widgets.choices import Choice

NO_CLICK, BEATS, STEADY = "", "beats", "steady"
_SYSTEM_OUTPUT = ""
_USUAL_BPM = 72.0
_USUAL_VOLUME_PERCENT = 40


class AlongStrip(Card):
    """Output, click, drone and their volume, below the lanes.

    Signals
    -------
    changed()
        Another click or drone is wanted.
    outputPicked(str)
        Key of an output; empty: the system's.
    """

    changed = Signal()
    outputPicked = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.output: Choice[str] = Choice(tr("Sound output"))
        self.output.offer([(_SYSTEM_OUTPUT, tr("As the system"))])
        self.click: Choice[str] = Choice(tr("Click"))
        self.bpm = QDoubleSpinBox()
        self.bpm.setRange(SLOWEST_BPM, FASTEST_BPM)
        self.bpm.setDecimals(1)
        self.bpm.setSuffix(tr(" BPM"))
        self.bpm.setValue(_USUAL_BPM)
        self.drone = QLineEdit()
        self.drone.setPlaceholderText(tr("none; such as A3, or D3 A3"))
        self.volume = QSlider(Qt.Orientation.Horizontal)
        self.volume.setRange(0, 100)
        self.volume.setValue(_USUAL_VOLUME_PERCENT)
        self.volume.setAccessibleName(tr("Volume of click and drone"))
        self.offer_beats(available=False)
        grid = QGridLayout()
        grid.setSpacing(GRID_PX)
        fields = (
            (tr("Sound output"), self.output),
            (tr("Click"), self.click),
            (tr("Tempo of the click"), self.bpm),
            (tr("Drone"), self.drone),
            (tr("Volume of both"), self.volume),
        )
        for at, (words, field) in enumerate(fields):
            grid.addLayout(labelled(words, field), 0, at)
            grid.setColumnStretch(at, 1)
        self.box.addLayout(grid)
        self.box.addWidget(soft(tr(HEARING_CAUTION)))
        self._connect()
        self.hide()

    def _connect(self) -> None:
        self.output.picked.connect(self.outputPicked.emit)
        self.click.picked.connect(lambda _: self._click_picked())
        self.bpm.setKeyboardTracking(False)
        self.bpm.valueChanged.connect(lambda _: self.changed.emit())
        self.drone.editingFinished.connect(self.changed)
        self.volume.valueChanged.connect(lambda _: self.changed.emit())

    def offer_beats(self, *, available: bool) -> None:
        """Offer the beats of the take, where any were measured."""
        entries = [(NO_CLICK, tr("none")), (STEADY, tr("at a steady tempo"))]
        if available:
            entries.insert(1, (BEATS, tr("on the beats of the take")))
        self.click.offer(entries)
        self.bpm.setEnabled(self.click.key == STEADY)

    def offer_outputs(self, outputs: tuple[InputRow, ...], chosen: str) -> None:
        """Offer these outputs."""
        entries = [(output.key, output.name) for output in outputs]
        self.output.offer([(_SYSTEM_OUTPUT, tr("As the system")), *entries], chosen)

    def suggest_bpm(self, bpm: float) -> None:
        """Begin with the take's own tempo; what is set by hand stays."""
        if self.click.key != STEADY:
            was_blocked = self.bpm.blockSignals(True)
            self.bpm.setValue(bpm)
            self.bpm.blockSignals(was_blocked)

    def toggle_click(self) -> None:
        """Have a click, on the take's beats where there are any, or none."""
        keys = self.click.keys
        self.click.choose(NO_CLICK if self.click.key else keys[1])
        self._click_picked()

    def _click_picked(self) -> None:
        self.bpm.setEnabled(self.click.key == STEADY)
        self.changed.emit()
