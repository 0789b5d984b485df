"""Reads what is only seen of two takes together, in the background, once both are shown."""

from collections.abc import Callable

from app.services.following_views import AlignedPair, ShapeView
from app.services.views import CompareView
from app.ui.desk import Desk


def read_together(
    desk: Desk, view: CompareView, show: Callable[[AlignedPair, ShapeView], None]
) -> None:
    """Read what only one of both plays, and their loudness over each other.

    The latest pair's is shown. Where that cannot be, nothing is said: the curves as
    measured stay in view.
    """
    if not view.aligned:
        desk.jobs.forget("compare.shape")
        return
    aligning, shapes = desk.workbench.aligning, desk.workbench.shapes
    a_id, b_id = view.a.row.id, view.b.row.id
    desk.jobs.analyse(
        lambda progress, should_stop: (
            aligning.pair(a_id, b_id, progress, should_stop),
            shapes.compare(a_id, b_id, progress, should_stop),
        ),
        lambda found: show(*found),
        subject="compare.shape",
        failed=lambda _failure: None,
    )
