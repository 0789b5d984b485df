"""The pictures of a clip: a title card, lanes that move with the music, a film with its title."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from app.services.pictures import FLAT, INK, QUIET, SHARP
from app.services.reading_views import Reading
from app.services.views import NoteRow

if TYPE_CHECKING:
    from matplotlib.figure import Figure

Picture = NDArray[np.uint8]

WIDTH_PX, HEIGHT_PX = 1280, 720
PICTURES_PER_SECOND = 25
_DPI = 100
_PAGE = "#f7f6f2"
_CURSOR_PX = 3
_TITLE_SHARE = 0.2
_INK_RGB = np.array([0x33, 0x33, 0x33], dtype=np.uint8)


@dataclass(frozen=True, slots=True)
class TitleLines:
    """What a clip says: passage, day, numbers, and the player's own line; some may be empty."""

    passage: str
    day: str
    numbers: str
    says: str

    @property
    def lines(self) -> tuple[str, ...]:
        """Those that are not empty, in the order in which they are read."""
        return tuple(text for text in (self.numbers, self.passage, self.day, self.says) if text)


def card_picture(title: TitleLines) -> Picture:
    """Draw the title card, (720, 1280, 3)."""
    figure = _page()
    for number, text in enumerate(title.lines):
        size = 34.0 if number == 0 else 22.0
        _write(figure, (0.5, 0.62 - 0.13 * number), text, size, ha="center")
    return _drawn(figure)


@dataclass(frozen=True, slots=True)
class LanePicture:
    """Lanes of a clip, drawn once; the line is put on it for every picture.

    ``left_px`` and ``right_px`` are where the clip begins and ends in it.
    """

    picture: Picture
    left_px: float
    right_px: float
    top_px: int
    bottom_px: int

    def at(self, share: float) -> Picture:
        """Give the picture with the line at a share of the clip, 0 to 1."""
        picture = self.picture.copy()
        x = round(self.left_px + (self.right_px - self.left_px) * min(1.0, max(0.0, share)))
        left = max(0, x - _CURSOR_PX // 2)
        picture[self.top_px : self.bottom_px, left : left + _CURSOR_PX] = _INK_RGB
        return picture


def lane_picture(
    title: TitleLines,
    notes: Sequence[NoteRow],
    samples: NDArray[np.float32],
    start_s: float,
    end_s: float,
) -> LanePicture:
    """Draw deviation and sound of a clip.

    A note is a bar from zero to its deviation as long as it sounds: sharp is above and
    hatched one way, flat below and hatched the other; hollow where it is unsure.
    """
    figure = _page()
    deviation, sound = figure.subplots(2, 1, sharex=True, height_ratios=[2.4, 1.0])
    figure.subplots_adjust(left=0.08, right=0.97, top=0.8, bottom=0.08, hspace=0.12)
    for number, text in enumerate((title.lines[0], " · ".join(title.lines[1:]))):
        _write(figure, (0.08, 0.93 - 0.07 * number), text, 20.0 - 5.0 * number)
    _draw_notes(deviation, notes, start_s, end_s)
    _draw_sound(sound, samples, start_s, end_s)
    deviation.set_xlim(start_s, end_s)
    figure.canvas.draw()
    left, _ = deviation.transData.transform((start_s, 0.0))
    right, _ = deviation.transData.transform((end_s, 0.0))
    top = HEIGHT_PX - round(deviation.get_window_extent().y1)
    bottom = HEIGHT_PX - round(sound.get_window_extent().y0)
    return LanePicture(_drawn(figure), float(left), float(right), top, bottom)


def _draw_notes(axes: Any, notes: Sequence[NoteRow], start_s: float, end_s: float) -> None:
    farthest = 30.0
    for note in notes:
        if note.end_s <= start_s or note.start_s >= end_s:
            continue
        if not isinstance(note.deviation, Reading):
            continue
        cents = note.deviation.value
        farthest = max(farthest, abs(cents))
        axes.bar(
            note.start_s,
            cents,
            width=note.end_s - note.start_s,
            align="edge",
            edgecolor=SHARP if cents > 0 else FLAT,
            facecolor=(SHARP if cents > 0 else FLAT) if note.certain else "none",
            hatch="//" if cents > 0 else "\\\\",
            linewidth=1.5,
            alpha=0.85,
        )
        axes.annotate(
            note.name,
            ((max(note.start_s, start_s) + min(note.end_s, end_s)) / 2, 0.0),
            xytext=(0, -16 if cents > 0 else 6),
            textcoords="offset points",
            ha="center",
            fontsize=10,
            color=INK,
        )
    axes.axhline(0.0, color=INK, linewidth=1.0)
    axes.set_ylim(-1.2 * farthest, 1.2 * farthest)
    axes.set_ylabel("flat   ·   cents   ·   sharp", fontsize=12, color=INK)
    axes.tick_params(colors=INK, labelbottom=False)
    axes.spines[["top", "right"]].set_visible(False)
    axes.set_facecolor(_PAGE)


def _draw_sound(axes: Any, samples: NDArray[np.float32], start_s: float, end_s: float) -> None:
    mono = samples.mean(axis=1)
    columns = np.array_split(mono, min(len(mono), WIDTH_PX))
    high = [float(column.max()) for column in columns]
    low = [float(column.min()) for column in columns]
    axes.fill_between(
        np.linspace(start_s, end_s, len(columns)), low, high, color=QUIET, linewidth=0
    )
    axes.set_ylim(-1.0, 1.0)
    axes.set_yticks([])
    axes.set_xlabel("seconds of the take", fontsize=12, color=INK)
    axes.tick_params(colors=INK)
    axes.spines[["top", "right", "left"]].set_visible(False)
    axes.set_facecolor(_PAGE)


def title_strip(title: TitleLines, width_px: int, height_px: int) -> Picture:
    """Draw the strip that lies over a film, (height, width, 3)."""
    figure = _page(width_px, height_px)
    size = 0.2 * height_px * 72 / _DPI
    for number, text in enumerate((title.lines[0], " · ".join(title.lines[1:]))):
        _write(figure, (0.04, 0.68 - 0.4 * number), text, size * (1.2 - 0.3 * number))
    return _drawn(figure)


def film_pictures(
    picture_at: Callable[[float], Picture], title: TitleLines, start_s: float, title_until_s: float
) -> Iterator[Picture]:
    """Give the film's own pictures from a place on, with the title over them for a while.

    Parameters
    ----------
    picture_at : callable
        Seconds of the take to a picture.
    title : TitleLines
    start_s : float
        Where the clip begins.
    title_until_s : float
        How long the title lies over the lower edge, from the start of the clip.
    """
    strip: Picture | None = None
    number = 0
    while True:
        at_s = number / PICTURES_PER_SECOND
        picture = _even(picture_at(start_s + at_s))
        if title.lines and at_s < title_until_s:
            height, width = picture.shape[:2]
            if strip is None:
                strip = title_strip(title, width, max(40, round(height * _TITLE_SHARE)))
            picture = picture.copy()
            picture[height - strip.shape[0] :] = strip
        yield picture
        number += 1


def _even(picture: Picture) -> Picture:
    """Cut to even width and height: the colours are kept at half of both."""
    height, width = picture.shape[:2]
    return picture[: height - height % 2, : width - width % 2]


def _page(width_px: int = WIDTH_PX, height_px: int = HEIGHT_PX) -> "Figure":
    from matplotlib.backends.backend_agg import FigureCanvasAgg  # noqa: PLC0415
    from matplotlib.figure import Figure  # noqa: PLC0415

    figure = Figure(figsize=(width_px / _DPI, height_px / _DPI), dpi=_DPI, facecolor=_PAGE)
    FigureCanvasAgg(figure)
    return figure


def _write(
    figure: "Figure", place: tuple[float, float], text: str, size: float, ha: str = "left"
) -> None:
    """Write a line, smaller where it would not fit into the page."""
    # A dollar sign would start a formula.
    literal = text.replace("$", r"\$")
    written = figure.text(*place, literal, ha=ha, va="center", fontsize=size, color=INK)
    room_px = figure.bbox.width * (0.92 if ha == "center" else 0.96 - place[0])
    width_px = written.get_window_extent().width
    if width_px > room_px:
        written.set_fontsize(size * room_px / width_px)


def _drawn(figure: "Figure") -> Picture:
    canvas: Any = figure.canvas
    canvas.draw()
    return np.asarray(canvas.buffer_rgba())[:, :, :3].copy()
