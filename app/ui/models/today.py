"""Everything of the journal that the Practice page shows, read in one go."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from app.journal.records import JournalSettings
    from app.services.keeping_views import PlanView, PromiseView
    from app.services.views import TodayView
    from app.services.workbench import Workbench


@dataclass(frozen=True, slots=True)
class Today:
    """What is shown; `effort` holds recording against practising, empty without a take."""

    view: "TodayView"
    settings: "JournalSettings"
    effort: str
    promises: tuple["PromiseView", ...]
    plan: "PlanView | None"


def read_today(bench: "Workbench") -> Today:
    """Read today; not for the GUI thread."""
    view = bench.practising.today()
    effort = bench.minutes.recording(view.practice_day, view.practice_day)
    return Today(
        view,
        bench.practising.settings(),
        effort.sentence if effort.attempts else "",
        bench.promises.list(),
        bench.planning.today(),
    )
