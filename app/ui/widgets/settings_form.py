"""What the measures need to know about the playing, as a form."""

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QDoubleSpinBox, QGridLayout, QLineEdit, QWidget

from app.journal.failures import PlainFailure
from app.journal.records import PlayingSettings
from app.services.instruments import instrument_names
from app.ui.language import mark, tr
from app.ui.spoken import word
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import column, fill, labelled
from app.ui.widgets.choices import Choice

_TEMPERAMENTS = (
    ("equal", mark("Equal")),
    ("pythagorean", mark("Pythagorean")),
    ("just", mark("Just")),
)
_GAINS = (("off", mark("Set by hand")), ("on", mark("Sets itself")), ("unknown", mark("Not known")))
_TONICS = ("C", "C#", "Db", "D", "D#", "Eb", "E", "F", "F#", "Gb", "G", "G#", "Ab", "A", "A#")
_MORE_TONICS = ("Bb", "B")
_NO_TONIC = mark("not stated")
_LOWEST_A_HZ, _HIGHEST_A_HZ = 380.0, 480.0
_FASTEST_BPM = 400.0

# Two of them lie side by side in the pane, however long the words of a language are.
_LEAST_FIELD_PX = 112


class SettingsForm(QWidget):
    """Shows and reads :class:`PlayingSettings`.

    Signals
    -------
    instrumentPicked(str)
        The player chose another instrument.
    """

    instrumentPicked = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self._instrument: Choice[str] = Choice(tr("Instrument"))
        self._instrument.offer([(name, word(name.capitalize())) for name in instrument_names()])
        self._a_hz = _spin(tr("Reference A"), _LOWEST_A_HZ - 0.5, _HIGHEST_A_HZ, tr(" Hz"), 1)
        self._a_hz.setSpecialValueText(tr("from the take"))
        self._a_hz.setToolTip(tr("All the way down: the A is estimated from the take."))
        self._instrument.picked.connect(self.instrumentPicked.emit)
        self._temperament: Choice[str] = Choice(tr("Temperament"))
        self._temperament.offer([(key, tr(words)) for key, words in _TEMPERAMENTS])
        self._temperament.picked.connect(lambda _: self._want_tonic())
        self._tonic: Choice[str] = Choice(tr("Tonic"))
        self._tonic.offer([("", tr(_NO_TONIC)), *((n, n) for n in (*_TONICS, *_MORE_TONICS))])
        self._tonic.setToolTip(tr("Spells the notes, and says which targets are plausible."))
        self._pulse = _spin(tr("Beat, per minute"), 0.0, _FASTEST_BPM, "", 1)
        self._pulse.setSpecialValueText(tr("not stated"))
        self._strings = QLineEdit()
        self._strings.setPlaceholderText(tr("usual; or low to high: C3 G3 D4 A4"))
        self._harmonics = QLineEdit()
        self._harmonics.setPlaceholderText(tr("none; or as they sound: A5 E6; or: all"))
        self._accompanied = QCheckBox(tr("Piano or a backing sound plays too"))
        self._accompanied.setAccessibleName(self._accompanied.text())
        self._mute = QCheckBox(tr("Played with a mute"))
        self._mute.setAccessibleName(self._mute.text())
        self._gain: Choice[str] = Choice(tr("Input level"))
        self._gain.offer([(key, tr(words)) for key, words in _GAINS])
        self._shown = PlayingSettings()
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(2 * GRID_PX)
        grid.setVerticalSpacing(GRID_PX)
        grid.addLayout(labelled(tr("Instrument"), self._instrument), 0, 0)
        grid.addLayout(labelled(tr("Reference A"), self._a_hz), 0, 1)
        grid.addLayout(labelled(tr("Temperament"), self._temperament), 1, 0)
        grid.addLayout(labelled(tr("Tonic"), self._tonic), 1, 1)
        grid.addLayout(labelled(tr("Beat, per minute"), self._pulse), 2, 0)
        grid.addLayout(labelled(tr("Open strings"), self._strings), 2, 1)
        grid.addLayout(labelled(tr("Input level"), self._gain), 3, 0)
        grid.addLayout(labelled(tr("Harmonics"), self._harmonics), 3, 1)
        played = column(spacing=4)
        fill(played, self._accompanied, self._mute)
        # Across both columns, so that the form fits a narrow pane.
        grid.addLayout(played, 4, 0, 1, 2)
        grid.setColumnStretch(0, 1)
        grid.setColumnStretch(1, 1)
        for field in (
            self._instrument, self._a_hz, self._temperament, self._tonic, self._pulse, self._gain,
        ):  # fmt: skip
            field.setMinimumWidth(_LEAST_FIELD_PX)
        self._want_tonic()

    def show_settings(self, settings: PlayingSettings) -> None:
        """Fill the form; what it has no field for stays as it is."""
        self._shown = settings
        self._mute.setChecked(settings.with_mute)
        self._gain.choose(settings.automatic_gain)
        self._instrument.choose(settings.instrument)
        self._a_hz.setValue(settings.reference_a_hz or 0.0)
        self._temperament.choose(settings.temperament)
        self._tonic.choose(settings.tonic or "")
        self._pulse.setValue(settings.pulse_bpm or 0.0)
        self._strings.setText(" ".join(settings.open_strings or ()))
        self._harmonics.setText(" ".join(settings.harmonics))
        self._accompanied.setChecked(settings.accompanied)
        self._want_tonic()

    @property
    def settings(self) -> PlayingSettings:
        """What the form says.

        Raises
        ------
        PlainFailure
            Where the open strings or the harmonics cannot be note names.
        """
        temperament = self._temperament.key or "equal"
        a_hz = self._a_hz.value()
        return replace(
            self._shown,
            instrument=self._instrument.key or "violin",
            reference_a_hz=a_hz if a_hz >= _LOWEST_A_HZ else None,
            temperament=temperament,
            tonic=self._tonic.key or None,
            pulse_bpm=self._pulse.value() or None,
            open_strings=_read_strings(self._strings.text()),
            harmonics=_read_harmonics(self._harmonics.text()),
            accompanied=self._accompanied.isChecked(),
            automatic_gain=self._gain.key or "off",
            with_mute=self._mute.isChecked(),
        )

    def _want_tonic(self) -> None:
        """Equal temperament can do without a tonic; the others begin with C."""
        if self._temperament.key != "equal" and not self._tonic.key:
            self._tonic.choose("C")


def _spin(name: str, low: float, high: float, suffix: str, decimals: int) -> QDoubleSpinBox:
    field = QDoubleSpinBox()
    field.setAccessibleName(name)
    field.setDecimals(decimals)
    field.setRange(low, high)
    field.setSuffix(suffix)
    return field


def _read_strings(text: str) -> tuple[str, ...] | None:
    next_step = tr("Write the open strings low to high with their octaves, such as C3 G3 D4 A4.")
    return _read_notes(text, next_step) or None


def _read_harmonics(text: str) -> tuple[str, ...]:
    if text.strip().lower() == "all":
        return ("all",)
    return _read_notes(text, tr("Write the harmonics as they sound, such as A5 E6, or all."))


def _read_notes(text: str, next_step: str) -> tuple[str, ...]:
    names = tuple(text.replace(",", " ").split())
    for name in names:
        is_note = name[:1].upper() in set("ABCDEFG") and name[-1:].isdigit()
        if not is_note:
            raise PlainFailure(tr("'{name}' is not a note name.").format(name=name), next_step)
    return names
