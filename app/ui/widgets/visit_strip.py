"""The strip that says that a bundle is open, and whose markers these are."""

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFrame, QWidget

from app.services.bundling.visiting import VISITING
from app.ui.desk import Desk
from app.ui.keys import ACTIONS, KeyMap
from app.ui.language import tr
from app.ui.spoken import said
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import fill, row, soft
from app.ui.words import day_text

if TYPE_CHECKING:
    from app.journal.bundles import BundleManifest

_PRACTISING = (
    "practice.record",
    "practice.stop",
    "practice.mark",
    "practice.large",
    "practice.rehearsal",
    "practice.arm",
    "practice.guides",
    "practice.file_clip",
    "practice.look_clips",
    "practice.level",
    "practice.aim",
    "practice.minutes",
    "rehearsal.next",
    "calendar.minutes",
    "calendar.import",
    "calendar.rest",
)


def turn_practice_off(parts: Iterable[QWidget], keys: KeyMap, answer: Callable[[], object]) -> None:
    """Turn off whatever records or counts practice; its keys say why they do nothing.

    Parameters
    ----------
    parts : iterable of QWidget
        Greyed as a whole.
    keys : KeyMap
        Buttons for such actions are greyed where the tooltips are written.
    answer : callable
        Says why.
    """
    off = {*_PRACTISING, *(spec.id for spec in ACTIONS if spec.id.startswith("clock."))}
    words = said(VISITING.sentence)
    keys.turn_off(off, answer, words)
    for part in parts:
        part.setEnabled(False)
        part.setToolTip(words)


def window_title(desk: Desk) -> str:
    """Return the window's title: the journal, or whose days are looked at."""
    bench = desk.workbench
    if bench.bundles.visiting is not None:
        return tr("A bundle, as the teacher \N{EN DASH} Passagework")
    closed = tr(" (read only)") if bench.read_only else ""
    if not closed and bench.journal_dir.name == tr("Passagework"):
        return tr("Passagework")
    return tr("{name}{closed} \N{EN DASH} Passagework").format(
        name=bench.journal_dir.name, closed=closed
    )


class VisitStrip(QFrame):
    """One quiet line over the pages."""

    def __init__(self, visit: "BundleManifest") -> None:
        super().__init__()
        words = tr(
            "Somebody's days, {first} to {last}, out of a bundle. What you mark and write is the"
            " teacher's; nothing is recorded or counted here. Lesson writes the reply."
        )
        self.words = soft(
            words.format(first=day_text(visit.first_day), last=day_text(visit.last_day))
        )
        box = row(self)
        box.setContentsMargins(2 * GRID_PX, GRID_PX, 2 * GRID_PX, 0)
        fill(box, self.words)
