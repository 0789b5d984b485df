"""Reads the shape of two takes in the background, once both are shown."""

from collections.abc import Callable

from app.services.following_views import ShapeView
from app.services.views import CompareView
from app.ui.desk import Desk


def read_shape(desk: Desk, view: CompareView, show: Callable[[ShapeView], None]) -> None:
    """Lay the loudness of both takes over each other; the latest pair's is shown.

    Where that cannot be, nothing is said: the curves as measured stay in view.
    """
    if not view.aligned:
        desk.jobs.forget("compare.shape")
        return
    shapes, a_id, b_id = desk.workbench.shapes, view.a.row.id, view.b.row.id
    desk.jobs.analyse(
        lambda progress, should_stop: shapes.compare(a_id, b_id, progress, should_stop),
        show,
        subject="compare.shape",
        failed=lambda _failure: None,
    )
