"""A lesson report as one HTML file: no network, sound and pictures inside."""

import base64
from collections.abc import Mapping, Sequence
from datetime import date

from app.services.lesson.report import LessonReport
from app.services.wording import day_text, minutes_text


def title_of(report: LessonReport) -> str:
    """Name a report by its days."""
    return f"Practice from {day_text(report.first_day)} to {day_text(report.last_day)}"


def data_uri(content: bytes, kind: str) -> str:
    """Put a file's bytes into an address, so that the page loads nothing."""
    return f"data:{kind};base64,{base64.b64encode(content).decode('ascii')}"


def html_text(
    report: LessonReport,
    *,
    made_on: date,
    minutes_picture: bytes,
    passage_pictures: Mapping[str, bytes],
    clips: Sequence[bytes | str],
) -> str:
    """Write the page; everything the player typed is escaped.

    Parameters
    ----------
    report : LessonReport
    made_on : date
    minutes_picture, passage_pictures : bytes
        SVG; those of passages by their id.
    clips : sequence of bytes or str
        For each marker its clip (AAC in MP4), or why there is none in one sentence;
        empty for neither.
    """
    from jinja2 import Environment, PackageLoader, StrictUndefined  # noqa: PLC0415

    environment = Environment(
        loader=PackageLoader("app.services.lesson"),
        autoescape=True,
        finalize=_without_direction_marks,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.filters["day"] = day_text
    environment.filters["minutes"] = _minutes
    template = environment.get_template("lesson.html.j2")
    svg = "image/svg+xml"
    pictures = {p.passage_id: "" for p in report.passages} | {
        key: data_uri(picture, svg) for key, picture in passage_pictures.items()
    }
    return template.render(
        report=report,
        title=title_of(report),
        made_on=made_on,
        minutes_picture=data_uri(minutes_picture, svg),
        passage_pictures=pictures,
        clips=[data_uri(c, "audio/mp4") if isinstance(c, bytes) and c else "" for c in clips],
        clip_reasons=[c if isinstance(c, str) else "" for c in clips],
    )


_DIRECTION_MARKS = dict.fromkeys((*range(0x202A, 0x202F), *range(0x2066, 0x206A)))


def _without_direction_marks(value: object) -> object:
    """Leave out what would turn around all that follows it; scripts know their own direction."""
    # What is marked up already (pictures, sound) is our own.
    return value.translate(_DIRECTION_MARKS) if type(value) is str else value


def _minutes(minutes: float | None) -> str:
    return "" if minutes is None else minutes_text(minutes)
