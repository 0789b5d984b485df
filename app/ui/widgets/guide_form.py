"""What sounds in the headphones while a take is recorded: click, count-in, drone."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QDoubleSpinBox, QGridLayout, QLineEdit, QSlider, QSpinBox

from app.journal.failures import PlainFailure
from app.journal.records import PlayingSettings
from app.services.guide_settings import (
    FASTEST_BPM,
    HEARING_CAUTION,
    SLOWEST_BPM,
    GuideSettings,
    checked,
    numbers_of,
)
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.recorder import Recorder
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, Card, fill, labelled, row, sentence, soft
from app.ui.widgets.delay_row import DelayRow
from app.ui.words import counted, number_text

_MOST_BEATS, _MOST_BARS = 16, 8
_USUAL_BPM = 72.0
_USUAL_VOLUME_PERCENT = 40


class GuideForm(Card):
    """Chooses what the next takes are played along with, until it is turned off.

    Signals
    -------
    chosen(str)
        What is chosen, in words; empty: nothing sounds.
    closed()
        Nothing more to do here.
    """

    chosen = Signal(str)
    closed = Signal()

    def __init__(self, desk: Desk, recorder: Recorder) -> None:
        super().__init__(tr("Click and drone"))
        self._desk = desk
        self._recorder = recorder
        self._settings = PlayingSettings()
        self.click = QCheckBox(tr("Click"))
        self.bpm = QDoubleSpinBox()
        self.bpm.setRange(SLOWEST_BPM, FASTEST_BPM)
        self.bpm.setDecimals(1)
        self.bpm.setSuffix(tr(" BPM"))
        self.bpm.setValue(_USUAL_BPM)
        self.beats = QSpinBox()
        self.beats.setRange(1, _MOST_BEATS)
        self.beats.setValue(4)
        self.accents = QLineEdit()
        self.accents.setPlaceholderText(tr("first beat strong; or each from 0 to 1: 1 0.5 0.8 0.5"))
        self.count_in = QSpinBox()
        self.count_in.setRange(0, _MOST_BARS)
        self.count_in.setSuffix(tr(" bars"))
        self.goes_on = QCheckBox(tr("The click goes on after the count-in"))
        self.goes_on.setChecked(True)
        self.drone = QLineEdit()
        self.drone.setPlaceholderText(tr("none; such as A3, or D3 A3"))
        self.volume = QSlider(Qt.Orientation.Horizontal)
        self.volume.setRange(0, 100)
        self.volume.setValue(_USUAL_VOLUME_PERCENT)
        self.volume.setAccessibleName(tr("Volume of click and drone"))
        self.delay = DelayRow(desk, recorder)
        for box in (self.click, self.goes_on):
            box.setAccessibleName(box.text())
        self._build()

    def _build(self) -> None:
        grid = QGridLayout()
        grid.setSpacing(2 * GRID_PX)
        grid.addWidget(self.click, 0, 0)
        grid.addLayout(labelled(tr("Tempo of the click"), self.bpm), 1, 0)
        grid.addLayout(labelled(tr("Beats a bar"), self.beats), 1, 1)
        grid.addLayout(labelled(tr("Accents"), self.accents), 1, 2)
        grid.addLayout(labelled(tr("Count-in"), self.count_in), 2, 0)
        grid.addWidget(self.goes_on, 2, 1, 1, 2, Qt.AlignmentFlag.AlignBottom)
        grid.addLayout(labelled(tr("Drone"), self.drone), 3, 0, 1, 2)
        grid.addLayout(labelled(tr("Volume"), self.volume), 3, 2)
        grid.setColumnStretch(2, 1)
        use = Button(tr("Use it for the next takes"), primary=True)
        use.clicked.connect(self.use)
        off = Button(tr("Nothing sounds"))
        off.clicked.connect(self.turn_off)
        close = Button(tr("Back to today"), plain=True)
        close.clicked.connect(self.closed)
        buttons = row()
        fill(buttons, soft(), 1, close, off, use)
        about = soft(
            tr(
                "The click's beats are kept with the take and anchor its tempo. The drone is tuned "
                "as the chosen passage is. Wear headphones, or the microphone hears both."
            )
        )
        fill(self.box, about, sentence(HEARING_CAUTION), grid, self.delay, buttons, 1)

    def start(self, settings: PlayingSettings) -> None:
        """Begin with the tempo of a passage, where it has one."""
        self._settings = settings
        if self._recorder.guides is None and settings.pulse_bpm:
            self.bpm.setValue(settings.pulse_bpm)
        self.click.setFocus()
        self.delay.look()

    def use(self) -> None:
        """Let it sound with the next takes."""
        try:
            guides = checked(self._read())
        except PlainFailure as failure:
            self._desk.tell_failure(failure)
            return
        self._recorder.guides = None if guides.is_silent else guides
        self.chosen.emit(guide_text(guides))
        self.closed.emit()

    def turn_off(self) -> None:
        """Let nothing sound any more."""
        self._recorder.guides = None
        self.chosen.emit("")
        self.closed.emit()

    def _read(self) -> GuideSettings:
        temperament = self._settings.temperament
        return GuideSettings(
            click_bpm=self.bpm.value() if self.click.isChecked() else None,
            beats_a_bar=self.beats.value(),
            accents=numbers_of(self.accents.text()),
            count_in_bars=self.count_in.value(),
            goes_on=self.goes_on.isChecked(),
            drone=self.drone.text().strip(),
            temperament=temperament,
            tonic=self._settings.tonic,
            reference_a_hz=self._settings.reference_a_hz or GuideSettings().reference_a_hz,
            volume=self.volume.value() / 100,
        )


def guide_text(guides: GuideSettings) -> str:
    """Say in one line what will sound; empty where nothing does."""
    parts = []
    if guides.click_bpm is not None:
        parts.append(
            tr("click at {click_bpm} BPM").format(click_bpm=number_text(guides.click_bpm, 1))
        )
        if guides.count_in_bars:
            parts.append(
                tr("{count_in_bars} counted in").format(
                    count_in_bars=counted(guides.count_in_bars, "bar")
                )
            )
    if guides.drone:
        parts.append(tr("drone {drone}").format(drone=guides.drone))
    return ", ".join(parts)
