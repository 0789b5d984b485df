"""What a clip to be shared is to be, as a form."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QDoubleSpinBox, QGridLayout, QLineEdit, QWidget

from app.services.sharing.choice import LONGEST_S, TARGET_LUFS, ShareChoice, ShareForm
from app.ui.language import mark, tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import labelled
from app.ui.widgets.choices import Choice

_FORMS = (
    (ShareForm.SOUND, mark("Sound alone (M4A)")),
    (ShareForm.CARD, mark("Title card and sound (MP4)")),
    (ShareForm.MEASURED, mark("Deviation and sound, moving (MP4)")),
    (ShareForm.FILM, mark("The film itself (MP4)")),
)
_NO_PROMISE = ""


class ShareFields(QWidget):
    """Shows and reads a :class:`ShareChoice`.

    Signals
    -------
    changed()
        The player wants something else.
    """

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.form: Choice[ShareForm] = Choice(tr("Form"))
        self.form.offer([(form, tr(words)) for form, words in _FORMS])
        self.promise: Choice[str] = Choice(tr("Day number of"))
        self.start = _spin(tr("From"), 0.0, 36_000.0, 0.5, tr(" s"))
        self.end = _spin(tr("To"), 0.0, 36_000.0, 0.5, tr(" s"))
        self.longest = _spin(tr("At most"), 5.0, 600.0, 5.0, tr(" s"))
        self.fade = _spin(tr("Fade in and out"), 0.0, 10.0, 0.5, tr(" s"))
        self.loudness = _spin(tr("Loudness"), -30.0, -10.0, 1.0, tr(" LUFS"))
        self.card = _spin(tr("Title card stands"), 0.0, 10.0, 0.5, tr(" s"))
        self.says = QLineEdit()
        self.says.setMaxLength(80)
        self.longest.setValue(LONGEST_S)
        self.fade.setValue(0.5)
        self.loudness.setValue(TARGET_LUFS)
        self.card.setValue(2.0)
        self._build()

    def _build(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(2 * GRID_PX)
        grid.setVerticalSpacing(GRID_PX)
        grid.addLayout(labelled(tr("Form"), self.form), 0, 0, 1, 2)
        fields = (self.start, self.end, self.longest, self.fade, self.loudness, self.card)
        for at, field in enumerate(fields):
            grid.addLayout(labelled(field.accessibleName(), field), 1 + at // 2, at % 2)
            field.valueChanged.connect(lambda _: self.changed.emit())
        grid.addLayout(labelled(tr("Day number of"), self.promise), 4, 0, 1, 2)
        grid.addLayout(labelled(tr("A line of your own"), self.says), 5, 0, 1, 2)
        self.form.picked.connect(lambda _: self.changed.emit())
        self.promise.picked.connect(lambda _: self.changed.emit())
        self.says.textChanged.connect(lambda _: self.changed.emit())

    def offer_promises(self, promises: Sequence[tuple[str, str]]) -> None:
        """Offer these promises by id and name."""
        self.promise.offer([(_NO_PROMISE, tr("none")), *promises])

    def show_stretch(self, start_s: float, end_s: float) -> None:
        """Show a stretch without telling."""
        for field, value in ((self.start, start_s), (self.end, end_s)):
            field.blockSignals(True)
            field.setValue(value)
            field.blockSignals(False)

    @property
    def stretch(self) -> tuple[float, float]:
        """From where to where, seconds."""
        return self.start.value(), self.end.value()

    def choice(self, take_id: str, stretch: tuple[float, float]) -> ShareChoice:
        """Give what the form says, for a take and a stretch of it."""
        return ShareChoice(
            take_id,
            start_s=stretch[0],
            end_s=stretch[1],
            form=self.form.key or ShareForm.SOUND,
            longest_s=self.longest.value(),
            fade_s=self.fade.value(),
            target_lufs=self.loudness.value(),
            card_s=self.card.value(),
            promise_id=self.promise.key or None,
            says=self.says.text(),
        )


def _spin(name: str, low: float, high: float, step: float, unit: str) -> QDoubleSpinBox:
    field = QDoubleSpinBox()
    field.setRange(low, high)
    field.setSingleStep(step)
    field.setDecimals(1)
    field.setSuffix(unit)
    field.setAccessibleName(name)
    return field
