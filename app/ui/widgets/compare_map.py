"""A passage note by note and day by day: small deviation lanes on one axis of notes."""

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFontMetricsF,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPixmap,
)
from PySide6.QtWidgets import QWidget

from app.services.map_rows import MapCell, MapNote, MapRow
from app.services.note_map import NoteMapView
from app.ui.language import tr
from app.ui.spoken import said
from app.ui.theme import GRID_PX, SMALL_PT, Colours, font
from app.ui.words import number_text

ROW_CENTS = 30.0
_LEAST_ROW_PX = 15.0
_HEAD_PX, _FOOT_PX = 10.0, 18.0
_LEAST_LINE_PX = 1.0
_STEPS = {
    Qt.Key.Key_Left: (0, -1),
    Qt.Key.Key_Right: (0, 1),
    Qt.Key.Key_Up: (-1, 0),
    Qt.Key.Key_Down: (1, 0),
}


class NoteMapPlot(QWidget):
    """A row a take, or a week where takes are many; a bar a note, sharp up and flat down.

    Arrow keys walk through the bars.

    Signals
    -------
    chosen(str)
        What the chosen bar says.
    placeWanted(str, float)
        A take, and a moment in the reference take, that somebody wants to hear.
    """

    chosen = Signal(str)
    placeWanted = Signal(str, float)

    def __init__(self, colours: Colours) -> None:
        super().__init__()
        self._colours = colours
        self._view: NoteMapView | None = None
        self._at = (0, 0)
        self._picture: QPixmap | None = None
        self._picture_of: tuple[object, ...] = ()
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setMinimumHeight(120)
        self.setAccessibleName(tr("Map of the notes by day"))

    def show_map(self, view: NoteMapView | None) -> None:
        """Draw a map; ``None`` draws nothing."""
        self._view = view
        self._at = (max(len(self.rows) - 1, 0), 0)
        self.update()

    def recolour(self, colours: Colours) -> None:
        """Use another palette."""
        self._colours = colours
        self.update()

    @property
    def rows(self) -> tuple[MapRow, ...]:
        """The rows that there is room for: takes, or else weeks."""
        if self._view is None:
            return ()
        room = (self.height() - _HEAD_PX - _FOOT_PX) / _LEAST_ROW_PX
        return self._view.takes if len(self._view.takes) <= room else self._view.weeks

    @property
    def words(self) -> str:
        """The chosen bar in words."""
        place = self._chosen()
        if place is None:
            return ""
        row, note = place
        cell = row.cells[note.index]
        what = _cell_words(cell) if cell is not None else tr("not measured")
        return f"{row.label}: {note.name}, {what}"

    def event(self, event: QEvent) -> bool:
        """Keep the arrows for the map while it has the focus; the page plays with them."""
        if (
            event.type() == QEvent.Type.ShortcutOverride
            and isinstance(event, QKeyEvent)
            and event.key() in _STEPS
            and not event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
        ):
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk through the bars, or ask to hear one."""
        step = _STEPS.get(Qt.Key(event.key()))
        if step is not None and self._view is not None:
            self._choose(self._at[0] + step[0], self._at[1] + step[1])
            return
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._want()
            return
        super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose the bar under the pointer."""
        rows = self.rows
        if self._view is None or not rows:
            return
        area = self._area()
        column = (event.position().x() - area.left()) / self._step_px(area)
        line = (event.position().y() - area.top()) / (area.height() / len(rows))
        self._choose(int(line), int(column))

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Ask to hear the bar under the pointer."""
        self.mousePressEvent(event)
        self._want()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the kept picture, and the choice over it."""
        rows = self.rows
        if self._view is None or not rows:
            return
        wanted = (self.size().toTuple(), self.devicePixelRatioF(), id(self._view), self._colours)
        if self._picture is None or self._picture_of != wanted:
            self._picture, self._picture_of = self._drawn(rows), wanted
        painter = QPainter(self)
        painter.drawPixmap(0, 0, self._picture)
        if self.hasFocus():
            area = self._area()
            self._draw_choice(painter, area, area.height() / len(rows))
        painter.end()

    def _drawn(self, rows: tuple[MapRow, ...]) -> QPixmap:
        """Draw rows, bars and the names of the notes; a thousand bars take their time."""
        ratio = self.devicePixelRatioF()
        picture = QPixmap(self.size() * ratio)
        picture.setDevicePixelRatio(ratio)
        picture.fill(Qt.GlobalColor.transparent)
        painter = QPainter(picture)
        painter.setFont(font(SMALL_PT))
        area = self._area()
        height = area.height() / len(rows)
        for at, row in enumerate(rows):
            self._draw_row(painter, area, area.top() + (at + 0.5) * height, height, row)
        self._draw_names(painter, area)
        painter.end()
        return picture

    def _area(self) -> QRectF:
        metrics = QFontMetricsF(font(SMALL_PT))
        left = max(metrics.horizontalAdvance(row.label) for row in self.rows) + 2 * GRID_PX
        width = max(self.width() - left - GRID_PX, 1.0)
        head = self._head_px()
        return QRectF(left, head, width, self.height() - head - _FOOT_PX)

    def _head_px(self) -> float:
        """Leave room above the first row for its tallest bar."""
        first = self.rows[0]
        tallest = max((cell.cents for cell in first.cells if cell is not None), default=0.0)
        row = (self.height() - _FOOT_PX) / len(self.rows)
        return _HEAD_PX + max(0.0, min(tallest / ROW_CENTS, 2.0) - 0.5) * row

    def _step_px(self, area: QRectF) -> float:
        return area.width() / max(len(self._view.notes) if self._view else 1, 1)

    def _draw_row(
        self, painter: QPainter, area: QRectF, zero: float, height: float, row: MapRow
    ) -> None:
        painter.setPen(QColor(self._colours.ink_soft))
        label = QRectF(0.0, zero - height / 2, area.left() - GRID_PX, height)
        painter.drawText(
            label, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, said(row.label)
        )
        painter.setPen(QPen(QColor(self._colours.line), 1.0))
        painter.drawLine(QPointF(area.left(), zero), QPointF(area.right(), zero))
        step = self._step_px(area)
        for at, cell in enumerate(row.cells):
            middle = area.left() + (at + 0.5) * step
            if cell is None:
                painter.setPen(QPen(QColor(self._colours.ink), 1.4))
                painter.drawLine(QPointF(middle - 2, zero), QPointF(middle + 2, zero))
            else:
                self._draw_bar(painter, middle, zero, (0.72 * step, height), cell)

    def _draw_bar(
        self,
        painter: QPainter,
        middle: float,
        zero: float,
        size: tuple[float, float],
        cell: MapCell,
    ) -> None:
        width, height = max(size[0], 2.0), size[1]
        reach = cell.cents / ROW_CENTS * height
        colour = QColor(self._colours.sharp if cell.cents > 0 else self._colours.flat)
        if abs(reach) < _LEAST_LINE_PX:
            painter.setPen(QPen(colour, 1.0))
            painter.drawLine(QPointF(middle - width / 2, zero), QPointF(middle + width / 2, zero))
            return
        bar = QRectF(
            QPointF(middle - width / 2, zero), QPointF(middle + width / 2, zero - reach)
        ).normalized()
        painter.setPen(QPen(colour, 1.0))
        if not cell.certain:
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(bar)
            return
        wash = QColor(colour)
        wash.setAlpha(70)
        painter.fillRect(bar, wash)
        sharp = cell.cents > 0
        hatch = Qt.BrushStyle.BDiagPattern if sharp else Qt.BrushStyle.HorPattern
        painter.setBrush(QBrush(colour, hatch))
        painter.drawRect(bar)

    def _draw_names(self, painter: QPainter, area: QRectF) -> None:
        """Name the notes where there is room: every one, or every second, third..."""
        assert self._view is not None  # noqa: S101 - the caller has looked
        metrics = QFontMetricsF(painter.font())
        step = self._step_px(area)
        widest = max((metrics.horizontalAdvance(note.name) for note in self._view.notes), default=1)
        every = max(1, -int(-(widest + 3) // step))
        painter.setPen(QColor(self._colours.ink_soft))
        for note in self._view.notes[::every]:
            middle = area.left() + (note.index + 0.5) * step
            place = QRectF(middle - widest, area.bottom(), 2 * widest, _FOOT_PX)
            painter.drawText(place, Qt.AlignmentFlag.AlignCenter, note.name)

    def _draw_choice(self, painter: QPainter, area: QRectF, height: float) -> None:
        line, column = self._at
        step = self._step_px(area)
        frame = QRectF(area.left() + column * step, area.top() + line * height, step, height)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor(self._colours.accent), 2.0))
        painter.drawRect(frame)

    def _chosen(self) -> tuple[MapRow, MapNote] | None:
        rows = self.rows
        line, column = self._at
        if self._view is None or line >= len(rows) or column >= len(self._view.notes):
            return None
        return rows[line], self._view.notes[column]

    def _choose(self, line: int, column: int) -> None:
        if self._view is None:
            return
        line = min(max(line, 0), len(self.rows) - 1)
        column = min(max(column, 0), len(self._view.notes) - 1)
        self._at = (line, column)
        self.setAccessibleDescription(self.words)
        self.chosen.emit(self.words)
        self.update()

    def _want(self) -> None:
        place = self._chosen()
        if place is not None:
            row, note = place
            self.placeWanted.emit(row.take_ids[-1], note.at_s)


def _cell_words(cell: MapCell) -> str:
    text = f"{number_text(cell.cents, 1, signed=True)}"
    if cell.uncertainty is not None:
        text += f" ± {cell.uncertainty:.1f}"
    return tr("{value} cents").format(value=text)
