"""The strip that says that a bundle is open, and whose markers these are."""

from PySide6.QtWidgets import QFrame

from app.journal.bundles import BundleManifest
from app.services.wording import day_text
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import fill, row, soft


def window_title(desk: Desk) -> str:
    """Return the window's title: the journal, or whose days are looked at."""
    bench = desk.workbench
    if bench.bundles.visiting is not None:
        return tr("A bundle, as the teacher \N{EN DASH} Passagework")
    closed = tr(" (read only)") if bench.read_only else ""
    return tr("{name}{closed} \N{EN DASH} Passagework").format(
        name=bench.journal_dir.name, closed=closed
    )


class VisitStrip(QFrame):
    """One quiet line over the pages."""

    def __init__(self, visit: BundleManifest) -> None:
        super().__init__()
        words = tr(
            "Somebody's days, {first} to {last}, out of a bundle. What you mark and write is the"
            " teacher's; nothing is recorded or imported here. Lesson writes the reply."
        )
        self.words = soft(
            words.format(first=day_text(visit.first_day), last=day_text(visit.last_day))
        )
        box = row(self)
        box.setContentsMargins(2 * GRID_PX, GRID_PX, 2 * GRID_PX, 0)
        fill(box, self.words)
