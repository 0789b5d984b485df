"""Comparisons that were made or will be wanted next, so that stepping does not wait."""

from collections.abc import Callable, Iterable

from app.journal.failures import PlainFailure
from app.services.latest import Latest
from app.services.views import CompareView
from app.ui.desk import Desk

_MOST_KEPT = 8

Pair = tuple[str, str]


class Comparisons:
    """Compares pairs of takes; the latest few are kept until a take changes."""

    def __init__(self, desk: Desk) -> None:
        self._desk = desk
        self._kept: Latest[Pair, CompareView] = Latest(_MOST_KEPT)
        desk.takesChanged.connect(self._kept.clear)

    def want(
        self,
        pair: Pair,
        done: Callable[[CompareView], None],
        *,
        failed: Callable[[PlainFailure], None],
        progress: Callable[[float], None],
    ) -> None:
        """Compare two takes, or hand over what is known of them; only the latest wish counts."""
        jobs, comparing = self._desk.jobs, self._desk.workbench.comparing
        jobs.forget("compare.pair")
        kept = self._kept.get(pair)
        if kept is not None:
            done(kept)
            return

        def take_over(view: CompareView) -> None:
            self._kept.put(pair, view)
            done(view)

        jobs.analyse(
            lambda report, should_stop: comparing.compare(*pair, report, should_stop),
            take_over,
            subject="compare.pair",
            failed=failed,
            progress=progress,
        )

    def prepare(self, pairs: Iterable[Pair]) -> None:
        """Compare pairs that may be wanted next, one after the other, in the background."""
        waiting = [pair for pair in pairs if self._kept.get(pair) is None]
        if not waiting:
            return
        first, comparing = waiting[0], self._desk.workbench.comparing

        def go_on(view: CompareView) -> None:
            self._kept.put(first, view)
            self.prepare(waiting[1:])

        self._desk.jobs.analyse(
            lambda report, should_stop: comparing.compare(*first, report, should_stop),
            go_on,
            subject="compare.next",
            failed=lambda _failure: None,  # told when it is really wanted
        )
