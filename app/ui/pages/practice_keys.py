"""What each key of the Practice page does."""

from functools import partial
from typing import TYPE_CHECKING

from app.journal.records import AimMet
from app.ui.keys import ITEM_KEY_COUNT

if TYPE_CHECKING:
    from app.ui.pages.practice import PracticePage


def bind_keys(page: "PracticePage") -> None:
    """Bind the actions of the page and of the practice clock."""
    bind, panel, clock = page.desk.keys.bind, page.panel, page.clock
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
    else:
        page.panel.toggle()
