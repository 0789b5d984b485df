"""Which part of a clip is kept: from one second to another."""

from PySide6.QtWidgets import QDoubleSpinBox, QWidget

from app.ui.language import tr
from app.ui.widgets.basics import column, fill, row, soft
from app.ui.words import length_text

_SHORTEST_S = 0.5


class PartEdit(QWidget):
    """Two times; all of it is kept unless they are moved."""

    def __init__(self, name: str, duration_s: float) -> None:
        super().__init__()
        self._duration_s = duration_s
        self.start = self._field(tr("Start of the part kept of {name}").format(name=name))
        self.end = self._field(tr("End of the part kept of {name}").format(name=name))
        self.start.setMaximum(max(0.0, duration_s - _SHORTEST_S))
        self.end.setValue(duration_s)
        self.start.valueChanged.connect(lambda start_s: self.end.setMinimum(start_s + _SHORTEST_S))
        self.words = soft(wrap=False)
        for field in (self.start, self.end):
            field.valueChanged.connect(lambda _: self._say())
        times = row(spacing=4)
        fill(times, self.start, self.end)
        fill(column(self, spacing=0), 1, times, self.words, 1)
        self._say()

    @property
    def part_s(self) -> tuple[float, float | None]:
        """Start and end in seconds; no end where it is the clip's own."""
        is_whole_end = self.end.value() >= round(self._duration_s, 1)
        return self.start.value(), None if is_whole_end else self.end.value()

    def _say(self) -> None:
        start_s, end_s = self.part_s
        if (start_s, end_s) == (0.0, None):
            whole = tr("{length}, kept whole") if self._duration_s else ""
            self.words.setText(whole.format(length=length_text(self._duration_s)))
        else:
            kept = length_text((self._duration_s if end_s is None else end_s) - start_s)
            words = tr("{length}, trimmed to {kept}")
            self.words.setText(words.format(length=length_text(self._duration_s), kept=kept))

    def _field(self, name: str) -> QDoubleSpinBox:
        field = QDoubleSpinBox()
        field.setAccessibleName(name)
        field.setDecimals(1)
        field.setSingleStep(0.5)
        field.setRange(0.0, round(self._duration_s, 1))
        field.setSuffix(" s")
        return field
