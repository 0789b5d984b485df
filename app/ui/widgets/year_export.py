"""The year as a picture, a drawing, a page or a table."""

import csv
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QMarginsF, QPoint, QRect, QRectF, QSize
from PySide6.QtGui import (
    QColor,
    QImage,
    QPagedPaintDevice,
    QPageLayout,
    QPageSize,
    QPainter,
    QPdfWriter,
    QRegion,
)
from PySide6.QtSvg import QSvgGenerator
from PySide6.QtWidgets import QWidget

from app.journal.day_names import DayName, kind_of
from app.journal.failures import PlainFailure
from app.services.views import DayBar
from app.ui.desk import Desk
from app.ui.language import mark, tr
from app.ui.theme import LARGE_PT, LIGHT, font
from app.ui.widgets.year_chart import YearChart
from app.ui.widgets.year_marks import Legend

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter

FILE_KINDS = mark("Picture (*.png);;Drawing (*.svg);;Document (*.pdf);;Table (*.csv)")
COLUMNS = (
    "day",
    "minutes",
    "kind_of_day",
    "takes",
    "clip_shared",
    "rest",
    "promise_paused",
    "nothing_noted",
    "entered_later",
)
_WIDTH_PX, _HEIGHT_PX = 1120, 800
_HEAD_PX, _FOOT_PX, _MARGIN_PX = 56, 64, 24
_PICTURE_SCALE = 2
_PDF_DPI = 300


def save_year(desk: Desk, chart: YearChart, year: int, file: Path) -> None:
    """Save a year as what the file's name ends in; says in the message bar that it is done."""
    bars, names = chart.bars, chart.names
    ending = file.suffix.lower()
    if ending == ".csv":
        desk.jobs.store(lambda: write_table(bars, file, names), lambda _: _tell(desk, file))
        return
    if ending not in (".png", ".svg", ".pdf"):
        desk.tell(
            tr("A year cannot be saved as '{name}'.").format(name=file.name),
            tr("End it in png, svg, pdf or csv."),
        )
        return
    page = _page(desk, chart, year)
    try:
        if ending == ".png":
            image = _image(page)
            desk.jobs.store(lambda: _save_image(image, file), lambda _: _tell(desk, file))
            return
        _draw_file(page, file)
        _tell(desk, file)
    except PlainFailure as failure:
        desk.tell_failure(failure)
    finally:
        page.deleteLater()


def write_table(bars: Sequence[DayBar], file: Path, names: Sequence[DayName] = ()) -> None:
    """Write one line a day, as RFC 4180 has it; a day without minutes has an empty field.

    Raises
    ------
    PlainFailure
        Where the file cannot be written.
    """
    try:
        with file.open("w", encoding="utf-8", newline="") as stream:
            table = csv.writer(stream)
            table.writerow(COLUMNS)
            for bar in bars:
                table.writerow(_cells(bar, names))
    except OSError as problem:
        raise _not_written(file) from problem


def _cells(bar: DayBar, names: Sequence[DayName]) -> tuple[object, ...]:
    kind = kind_of(bar.minutes, names)
    return (
        bar.practice_day,
        "" if bar.minutes is None else f"{bar.minutes:g}",
        "" if kind is None else names[kind].name,
        bar.take_count,
        "yes" if bar.is_shared else "",
        bar.rest,
        "; ".join(bar.paused),
        "yes" if bar.missed else "",
        "yes" if bar.late else "",
    )


class YearPage(QWidget):
    """The year on paper: its number, the bars, what the marks mean; always in light colours."""

    def __init__(self, chart: YearChart, year: int, top: float) -> None:
        super().__init__()
        self._year = year
        self._legend = Legend(chart.names, top)
        self.chart = chart
        chart.setParent(self)
        chart.setGeometry(
            _MARGIN_PX, _HEAD_PX, _WIDTH_PX - 2 * _MARGIN_PX, _HEIGHT_PX - _HEAD_PX - _FOOT_PX
        )
        self.resize(_WIDTH_PX, _HEIGHT_PX)

    def draw(self, painter: QPainter) -> None:
        """Draw it all at (0, 0)."""
        painter.fillRect(QRect(0, 0, _WIDTH_PX, _HEIGHT_PX), QColor(LIGHT.field))
        painter.setPen(QColor(LIGHT.ink))
        painter.setFont(font(LARGE_PT))
        painter.drawText(
            QPoint(_MARGIN_PX, _HEAD_PX - 18), tr("Practice in {year}").format(year=self._year)
        )
        foot = QRectF(_MARGIN_PX, _HEIGHT_PX - _FOOT_PX + 4, _WIDTH_PX - 2 * _MARGIN_PX, _FOOT_PX)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._legend.draw(painter, foot, LIGHT)
        place = self.chart.pos()
        painter.save()
        self.chart.render(painter, place, QRegion(), QWidget.RenderFlag.DrawChildren)
        painter.restore()


def print_year(desk: Desk, chart: YearChart, year: int, printer: "QPrinter") -> None:
    """Print the year on one landscape page of the printer."""
    page = _page(desk, chart, year)
    try:
        printer.setPageOrientation(QPageLayout.Orientation.Landscape)
        painter = QPainter()
        if not painter.begin(printer):
            desk.tell(tr("The printer did not take the page."), tr("Save it as PDF instead."))
            return
        _fit(painter, printer)
        page.draw(painter)
        painter.end()
        desk.tell(tr("The year was sent to the printer."))
    finally:
        page.deleteLater()


def _fit(painter: QPainter, device: QPagedPaintDevice) -> None:
    scale = min(device.width() / _WIDTH_PX, device.height() / _HEIGHT_PX)
    painter.scale(scale, scale)


def _page(desk: Desk, chart: YearChart, year: int) -> YearPage:
    copy = YearChart(desk.theme, colours=LIGHT)
    copy.show_year(year, chart.bars, chart.today, chart.names)
    copy.chosen = None
    return YearPage(copy, year, copy.top_minutes)


def _image(page: YearPage) -> QImage:
    image = QImage(QSize(_WIDTH_PX, _HEIGHT_PX) * _PICTURE_SCALE, QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(_PICTURE_SCALE)
    painter = QPainter(image)
    page.draw(painter)
    painter.end()
    return image


def _save_image(image: QImage, file: Path) -> None:
    if not image.save(str(file)):
        raise _not_written(file)


def _draw_file(page: YearPage, file: Path) -> None:
    try:
        file.open("wb").close()
    except OSError as problem:
        raise _not_written(file) from problem
    device: QSvgGenerator | QPagedPaintDevice
    if file.suffix.lower() == ".svg":
        device = QSvgGenerator()
        device.setFileName(str(file))
        device.setSize(QSize(_WIDTH_PX, _HEIGHT_PX))
        device.setViewBox(QRect(0, 0, _WIDTH_PX, _HEIGHT_PX))
        device.setTitle(tr("Practice"))
    else:
        device = QPdfWriter(str(file))
        device.setResolution(_PDF_DPI)
        device.setPageSize(QPageSize(QPageSize.PageSizeId.A4))
        device.setPageOrientation(QPageLayout.Orientation.Landscape)
        device.setPageMargins(QMarginsF(10, 10, 10, 10), QPageLayout.Unit.Millimeter)
    painter = QPainter()
    if not painter.begin(device):
        raise _not_written(file)
    if isinstance(device, QPagedPaintDevice):
        _fit(painter, device)
    page.draw(painter)
    painter.end()


def _not_written(file: Path) -> PlainFailure:
    return PlainFailure(
        tr("{name} could not be written.").format(name=file.name), tr("Choose another folder.")
    )


def _tell(desk: Desk, file: Path) -> None:
    desk.tell(tr("The year was saved: {file}.").format(file=file))
