"""A lesson report as PDF on A4 paper."""

import io
from collections.abc import Mapping, Sequence
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any
from xml.sax.saxutils import escape

from app.services.lesson.report import LessonReport, MarkerPart, TaskPart
from app.services.lesson.web_page import title_of
from app.services.wording import day_text, minutes_text

_FONT, _BOLD = "DejaVuSans", "DejaVuSans-Bold"
_MARGIN_MM = 18
_PICTURE_SHARE = 0.72
_REMARK_LINES = 8
_FOOT = (
    "A measured number is given with the half of its 95 % interval (±); what could not be"
    " measured is not shown as a number. A microphone is not calibrated: levels compare"
    " takes, they are no sound pressure."
)


def pdf_bytes(
    report: LessonReport,
    *,
    made_on: date,
    minutes_picture: bytes,
    passage_pictures: Mapping[str, bytes],
) -> bytes:
    """Lay the report out.

    Parameters
    ----------
    report : LessonReport
    made_on : date
    minutes_picture, passage_pictures : bytes
        PNG; those of passages by their id.

    Returns
    -------
    bytes
        A PDF with its fonts inside. Signs that DejaVu Sans lacks show as empty boxes.
    """
    from reportlab.lib.pagesizes import A4  # noqa: PLC0415 - only when printed
    from reportlab.lib.units import mm  # noqa: PLC0415
    from reportlab.platypus import SimpleDocTemplate  # noqa: PLC0415

    _register_fonts()
    out = io.BytesIO()
    document = SimpleDocTemplate(
        out,
        pagesize=A4,
        leftMargin=_MARGIN_MM * mm,
        rightMargin=_MARGIN_MM * mm,
        topMargin=_MARGIN_MM * mm,
        bottomMargin=_MARGIN_MM * mm,
        title=title_of(report),
        author="",
        creator="Passagework",
    )
    layout = _Layout(document.width)
    story = layout.story(report, minutes_picture, passage_pictures)
    foot = partial(_foot, made=f"Passagework, {day_text(made_on)}")
    document.build(story, onFirstPage=foot, onLaterPages=foot)
    return out.getvalue()


def _register_fonts() -> None:
    """Take the fonts that come with matplotlib: free, with accidentals and most scripts."""
    import matplotlib as mpl  # noqa: PLC0415
    from reportlab.pdfbase import pdfmetrics  # noqa: PLC0415
    from reportlab.pdfbase.ttfonts import TTFont  # noqa: PLC0415

    folder = Path(mpl.get_data_path()) / "fonts" / "ttf"
    for name in (_FONT, _BOLD):
        if name not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(name, str(folder / f"{name}.ttf")))


def _foot(canvas: Any, document: Any, *, made: str) -> None:
    canvas.saveState()
    canvas.setFont(_FONT, 8)
    canvas.setFillGray(0.4)
    canvas.drawString(document.leftMargin, document.bottomMargin * 0.6, made)
    right = document.leftMargin + document.width
    canvas.drawRightString(right, document.bottomMargin * 0.6, f"{document.page}")
    canvas.restoreState()


class _Layout:
    """Turns the parts of a report into flowing elements, in reading order."""

    def __init__(self, width: float) -> None:
        from reportlab.lib.styles import ParagraphStyle  # noqa: PLC0415

        self._width = width
        self._text = ParagraphStyle("text", fontName=_FONT, fontSize=9.5, leading=14)
        self._small = ParagraphStyle(
            "small", self._text, fontSize=8, leading=11, textColor="#555555"
        )
        self._part = ParagraphStyle(
            "part", self._text, fontName=_BOLD, fontSize=12, leading=16, spaceBefore=12
        )
        self._sub = ParagraphStyle("sub", self._text, fontName=_BOLD, spaceBefore=8)
        self._title = ParagraphStyle(
            "title", self._text, fontName=_BOLD, fontSize=15, leading=20, spaceAfter=6
        )
        self._entry = ParagraphStyle("entry", self._text, leftIndent=12, bulletIndent=2)

    def story(
        self, report: LessonReport, minutes_picture: bytes, pictures: Mapping[str, bytes]
    ) -> list[Any]:
        """Give all elements."""
        return [
            self._says(title_of(report), self._title),
            self._says(report.summary),
            *(self._says(line) for line in (report.caution, *report.promises) if line),
            self._says("Days", self._part),
            self._picture(minutes_picture),
            self._days(report),
            *self._list("Minutes by item", [f"{n}: {minutes_text(m)}" for n, m in report.items]),
            *self._list("What was set", [_task(task) for task in report.tasks]),
            *self._passages(report, pictures),
            *self._list("Marked while listening", [_marker(marker) for marker in report.markers]),
            *self._remarks(report.remarks),
            self._says(_FOOT, self._small),
        ]

    def _says(self, text: str, style: Any = None) -> Any:
        from reportlab.platypus import Paragraph  # noqa: PLC0415

        # The library reads mark-up in a paragraph; what the player typed is none.
        return Paragraph(escape(text).replace("\n", "<br/>"), style or self._text)

    def _picture(self, png: bytes) -> Any:
        from reportlab.lib.utils import ImageReader  # noqa: PLC0415
        from reportlab.platypus import Image  # noqa: PLC0415

        width, height = ImageReader(io.BytesIO(png)).getSize()
        wide = _PICTURE_SHARE * self._width
        return Image(io.BytesIO(png), wide, wide * height / width)

    def _days(self, report: LessonReport) -> Any:
        from reportlab.platypus import Table, TableStyle  # noqa: PLC0415

        rows = [[self._says(text, self._sub) for text in ("Day", "Minutes", "Takes", "On")]]
        for day in report.days:
            rest = {"planned": "rest, planned", "marked": "rest"}.get(day.rest, "")
            on = [rest, *(f"{name} {minutes_text(minutes)}" for name, minutes in day.items)]
            cells = (
                day_text(day.day),
                "" if day.minutes is None else minutes_text(day.minutes),
                str(day.takes or ""),
                "; ".join(part for part in on if part),
            )
            rows.append([self._says(cell) for cell in cells])
        table = Table(
            rows, colWidths=[self._width * share for share in (0.24, 0.18, 0.1, 0.48)], repeatRows=1
        )
        rules = [
            ("LINEBELOW", (0, 0), (-1, -1), 0.4, "#bbbbbb"),
            ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ]
        table.setStyle(TableStyle(rules))
        return table

    def _list(self, heading: str, entries: Sequence[str]) -> list[Any]:
        if not entries:
            return []
        return [self._says(heading, self._part), *(self._bullet(entry) for entry in entries)]

    def _bullet(self, text: str) -> Any:
        from reportlab.platypus import Paragraph  # noqa: PLC0415

        return Paragraph(escape(text).replace("\n", "<br/>"), self._entry, bulletText="\u2013")

    def _passages(self, report: LessonReport, pictures: Mapping[str, bytes]) -> list[Any]:
        story: list[Any] = [self._says("Passages", self._part)] if report.passages else []
        for passage in report.passages:
            story.append(self._says(passage.title, self._sub))
            for take in passage.takes:
                measured = f": {'; '.join(take.measured)}" if take.measured else ""
                aim = f"\nAim: {take.aim_text}" if take.aim else ""
                story.append(self._bullet(f"{take.title}{measured}{aim}"))
            if passage.changes:
                story.append(self._says("Over all takes of this passage:"))
                story += [self._bullet(line) for line in passage.changes]
            if passage.notice:
                story.append(self._says(passage.notice, self._small))
            if passage.passage_id in pictures:
                story.append(self._picture(pictures[passage.passage_id]))
        return story

    def _remarks(self, remarks: Sequence[str]) -> list[Any]:
        """Give what was remarked, or ruled lines to write on."""
        from reportlab.platypus import HRFlowable, KeepTogether, Spacer  # noqa: PLC0415

        heading = self._says("Remarks", self._part)
        written = [self._says(remark) for remark in remarks]
        ruled: list[Any] = []
        for _ in range(_REMARK_LINES):
            ruled += [Spacer(1, 18), HRFlowable(width="100%", thickness=0.4, color="#999999")]
        return [KeepTogether([heading, *written, *ruled, Spacer(1, 10)])]


def _task(task: TaskPart) -> str:
    return f"{'Done' if task.is_done else 'Open'}: {task.text} ({task.sentence})"


def _marker(marker: MarkerPart) -> str:
    said = f"\n{marker.text}" if marker.text else ""
    return f"{marker.where}: {marker.what}{said}"
