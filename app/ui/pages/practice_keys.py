"""What each key of the Practice page does."""

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from app.journal.kinds import AimMet
from app.ui.keys import ITEM_KEY_COUNT
from app.ui.language import tr

if TYPE_CHECKING:
    from app.ui.pages.practice import PracticePage


_EVEN_BEHIND_A_FORM = {
    *("practice.record", "practice.stop", "practice.mark", "practice.large"),
    "practice.rehearsal",
}


def bind_keys(page: "PracticePage") -> None:
    """Bind the actions of the page and of the practice clock."""
    panel, clock = page.panel, page.clock

    def bind(page: "PracticePage", action_id: str, slot: Callable[[], object]) -> None:
        behind = slot if action_id in _EVEN_BEHIND_A_FORM else partial(_unless_covered, page, slot)
        page.desk.keys.bind(page, action_id, behind)

    bind(page, "practice.record", partial(_record, page))
    bind(page, "practice.stop", panel.stop)
    bind(page, "practice.arm", panel.arm)
    bind(page, "practice.guides", page.choose_guides)
    bind(page, "practice.plan", page.plan.make)
    bind(page, "practice.assignments", page.show_assignments)
    bind(page, "practice.rehearsal", page.show_rehearsal)
    bind(page, "practice.file_clip", page.clips.file_next)
    bind(page, "practice.look_clips", page.look_at_clips)
    bind(page, "practice.mark", page.recorder.mark)
    bind(page, "practice.large", lambda: page.show_large(large=not page.large.isVisible()))
    bind(page, "practice.level", page.recorder.toggle_level)
    bind(page, "practice.aim", panel.aim.setFocus)
    bind(page, "practice.minutes", page.head.minutes.write)
    bind(page, "practice.passage", page.new_passage)
    bind(page, "practice.edit_passage", page.change_passage)
    bind(page, "practice.met", lambda: panel.answer(AimMet.YES))
    bind(page, "practice.partly", lambda: panel.answer(AimMet.PARTLY))
    bind(page, "practice.not_met", lambda: panel.answer(AimMet.NO))
    bind(page, "practice.listen", page.listen_to_latest)
    bind(page, "clock.toggle", clock.toggle)
    bind(page, "clock.stop", clock.stop)
    bind(page, "clock.next_item", clock.next_item)
    bind(page, "clock.listen", page.clock_card.listen.click)
    bind(page, "clock.items", page.change_items)
    for n in range(ITEM_KEY_COUNT):
        bind(page, f"clock.item_{n + 1}", partial(clock.choose_at, n))
    bind(page, "practice.year_ago", page.year_ago.hear)


def _record(page: "PracticePage") -> None:
    """Record or stop; in a rehearsal, the passage that is due."""
    if page.forms.shows("rehearsal"):
        page.forms.rehearsal.run.toggle()
    elif page.recorder.is_recording:
        page.panel.stop()
    else:
        _unless_covered(page, page.panel.toggle)


def _unless_covered(page: "PracticePage", slot: Callable[[], object]) -> None:
    """Do it where it is seen; letters typed past a field neither record nor count."""
    if page.is_covered and not page.forms.shows("rehearsal"):
        page.desk.tell(tr("A form lies over today. Esc puts it away; then the keys work again."))
    else:
        slot()


def step_back(page: "PracticePage") -> None:
    """Put the large view away, or a form in which nothing is at work."""
    if not page.is_covered:
        page.show_large(large=False)
    elif page.forms.shows("imports"):
        if not page.forms.imports.is_busy:
            page.forms.imports.cancel()
    elif not page.recorder.is_recording:
        page.show_today()
