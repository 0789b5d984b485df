"""Where the running promise stands: every number apart from the others."""

from typing import TYPE_CHECKING

from app.ui.language import tr
from app.ui.spoken import said
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Card, Figure, column, fill, heading, row, soft
from app.ui.words import counted

if TYPE_CHECKING:
    from app.services.keeping_views import PromiseView


def promise_figures(view: "PromiseView") -> tuple[tuple[str, str], ...]:
    """Give the numbers of a promise, each with what it counts; none is made of others."""
    now = view.standing
    figures = [
        (str(now.days_kept), tr("days kept") if now.days_kept != 1 else tr("day kept")),
        (str(now.day), tr("day since the start")),
        (str(now.days_missed), tr("missed")),
        (str(now.rest_taken), tr("rest taken")),
        (str(now.needed), tr("still to keep")),
    ]
    if now.days_paused:
        figures.insert(4, (str(now.days_paused), "paused"))
    return tuple(figures)


class PromiseStrip(Card):
    """The first running promise in one row; hidden where none runs."""

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(tr("Promise"))
        self._name = heading("")
        self._rule = soft()
        self._figures = tuple(Figure("") for _ in range(6))
        words = column(spacing=0)
        fill(words, self._name, self._rule)
        line = row(spacing=3 * GRID_PX)
        fill(line, words, *self._figures)
        line.setStretch(0, 1)
        self.box.addLayout(line)
        self.box.setContentsMargins(2 * GRID_PX, 4, 2 * GRID_PX, 4)
        self.hide()

    def show_promises(self, promises: tuple["PromiseView", ...]) -> None:
        """Show the first of those that run."""
        alive = [view for view in promises if view.standing.is_alive]
        self.setVisible(bool(alive))
        if not alive:
            return
        view = alive[0]
        self._name.setText(view.promise.name)
        in_force = next((rule.text for rule in view.rules if rule.is_in_force), "")
        more = (
            tr("; {alive} on Calendar").format(alive=counted(len(alive) - 1, "more promise"))
            if alive[1:]
            else ""
        )
        self._rule.setText(f"{in_force}{more}")
        figures = promise_figures(view)
        for at, figure in enumerate(self._figures):
            figure.setVisible(at < len(figures))
            if at < len(figures):
                figure.show_number(*figures[at])
        self.setToolTip("\n".join(map(said, view.sentences)))
        self.setAccessibleDescription(" ".join(map(said, (view.headline + ".", *view.sentences))))
