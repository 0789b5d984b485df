"""A scale, an arpeggio or broken thirds, chosen from a form; what it says is shown at once."""

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QSpinBox, QWidget

from app.journal.failures import PlainFailure
from app.journal.scale_records import MODES_OF, Figure, Mode, Rhythm, ScaleSpec
from app.journal.scales import (
    MOST_OCTAVES,
    MOST_SLURRED,
    scale_title,
    spelled_notes,
    tonics_of,
)
from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import labelled, sentence, soft
from app.ui.widgets.choices import Choice

_MOST_SHOWN = 17
StartOctaves = Callable[[ScaleSpec, str], tuple[int, ...]]


class ScaleForm(QWidget):
    """Chooses a :class:`ScaleSpec` within the range of an instrument.

    Parameters
    ----------
    start_octaves : callable
        Gives the octaves in which a scale can begin on an instrument.

    Signals
    -------
    changed()
        Something else is chosen.
    """

    changed = Signal()

    def __init__(self, start_octaves: StartOctaves) -> None:
        super().__init__()
        self._start_octaves = start_octaves
        self._instrument = "violin"
        self.figure: Choice[Figure] = Choice(tr("Figure"))
        self.figure.offer([(each, _FIGURES[each]()) for each in Figure])
        self.mode: Choice[Mode] = Choice(tr("Mode"))
        self.tonic: Choice[str] = Choice(tr("Tonic"))
        self.octaves = QSpinBox()
        self.octaves.setRange(1, MOST_OCTAVES)
        self.start: Choice[int] = Choice(tr("First note"))
        self.notes: Choice[int] = Choice(tr("Notes a beat"))
        self.notes.offer([(number, str(number)) for number in (1, 2, 3, 4)], 2)
        self.rhythm: Choice[Rhythm] = Choice(tr("Rhythm"))
        self.slurred = QSpinBox()
        self.slurred.setRange(1, MOST_SLURRED)
        self.slurred.setSpecialValueText(tr("each its own"))
        self._title = sentence()
        self._written = soft()
        self._build()
        self._offer_modes(Figure.SCALE)
        self._refresh()

    def _build(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(2 * GRID_PX)
        grid.setVerticalSpacing(GRID_PX)
        fields: tuple[tuple[str, QWidget], ...] = (
            (tr("Figure"), self.figure),
            (tr("Mode"), self.mode),
            (tr("Tonic, as it sounds"), self.tonic),
            (tr("Octaves"), self.octaves),
            (tr("First note"), self.start),
            (tr("Notes a beat"), self.notes),
            (tr("Rhythm"), self.rhythm),
            (tr("Notes in one bow or breath"), self.slurred),
        )
        for number, (words, field) in enumerate(fields):
            grid.addLayout(labelled(words, field), number // 2, number % 2)
        grid.addWidget(self._title, 4, 0, 1, 2)
        grid.addWidget(self._written, 5, 0, 1, 2)
        grid.setColumnStretch(0, 1)
        grid.setColumnStretch(1, 1)
        self.figure.picked.connect(self._offer_modes)
        for choice in (self.figure, self.mode, self.tonic, self.start, self.notes, self.rhythm):
            choice.picked.connect(lambda _: self._refresh())
        for box in (self.octaves, self.slurred):
            box.valueChanged.connect(lambda _: self._refresh())

    @property
    def spec(self) -> ScaleSpec:
        """What the form says."""
        return ScaleSpec(
            tonic=self.tonic.key or "C",
            mode=self.mode.key or Mode.MAJOR,
            figure=self.figure.key or Figure.SCALE,
            start_octave=self.start.key if self.start.key is not None else 4,
            octaves=self.octaves.value(),
            notes_a_beat=self.notes.key or 2,
            rhythm=self.rhythm.key or Rhythm.EVEN,
            slurred=self.slurred.value(),
        )

    def show_spec(self, spec: ScaleSpec) -> None:
        """Fill the form."""
        self.figure.choose(spec.figure)
        self._offer_modes(spec.figure)
        self.mode.choose(spec.mode)
        self.tonic.offer([(name, name) for name in tonics_of(spec.mode)], spec.tonic)
        self.notes.choose(spec.notes_a_beat)
        self._offer_rhythms()
        self.rhythm.choose(spec.rhythm)
        for field, value in ((self.octaves, spec.octaves), (self.slurred, spec.slurred)):
            field.blockSignals(True)
            field.setValue(value)
            field.blockSignals(False)
        self._offer_starts()
        self.start.choose(spec.start_octave)
        self._refresh()

    def fit(self, instrument: str) -> None:
        """Offer only what the instrument reaches."""
        self._instrument = instrument
        self._refresh()

    def _offer_modes(self, figure: Figure) -> None:
        self.mode.offer([(mode, _MODES[mode]()) for mode in MODES_OF[figure]])

    def _offer_rhythms(self) -> None:
        rhythms = [Rhythm.EVEN] if self.notes.key == 3 else list(Rhythm)
        self.rhythm.offer([(each, _RHYTHMS[each]()) for each in rhythms])

    def _offer_starts(self) -> None:
        tonic = self.tonic.key or "C"
        try:
            octaves = self._start_octaves(self.spec, self._instrument)
        except PlainFailure:
            octaves = ()
        self.start.offer([(octave, f"{tonic}{octave}") for octave in octaves])
        self.start.setEnabled(bool(octaves))

    def _refresh(self) -> None:
        mode = self.mode.key or Mode.MAJOR
        self.tonic.offer([(name, name) for name in tonics_of(mode)])
        self._offer_rhythms()
        self._offer_starts()
        self._say()
        self.changed.emit()

    def _say(self) -> None:
        spec = self.spec
        if self.start.key is None:
            self._title.setText(
                tr("{scale} goes beyond the {instrument}: choose fewer octaves.").format(
                    scale=scale_title(spec), instrument=self._instrument
                )
            )
            self._written.setText("")
            return
        names = spelled_notes(spec)
        more = " …" if len(names) > _MOST_SHOWN else ""
        self._title.setText(scale_title(spec))
        self._written.setText(" ".join(names[:_MOST_SHOWN]) + more)


# Words are asked for when they are shown: the language is known only then.
_FIGURES: dict[Figure, Callable[[], str]] = {
    Figure.SCALE: lambda: tr("Scale"),
    Figure.ARPEGGIO: lambda: tr("Arpeggio"),
    Figure.BROKEN_THIRDS: lambda: tr("Broken thirds"),
}
_MODES: dict[Mode, Callable[[], str]] = {
    Mode.MAJOR: lambda: tr("Major"),
    Mode.NATURAL_MINOR: lambda: tr("Natural minor"),
    Mode.HARMONIC_MINOR: lambda: tr("Harmonic minor"),
    Mode.MELODIC_MINOR: lambda: tr("Melodic minor"),
    Mode.CHROMATIC: lambda: tr("Chromatic"),
    Mode.DOMINANT_SEVENTH: lambda: tr("Dominant seventh"),
    Mode.DIMINISHED_SEVENTH: lambda: tr("Diminished seventh"),
}
_RHYTHMS: dict[Rhythm, Callable[[], str]] = {
    Rhythm.EVEN: lambda: tr("Even"),
    Rhythm.DOTTED: lambda: tr("Dotted"),
    Rhythm.REVERSE_DOTTED: lambda: tr("Short, long"),
}
