"""The loudness of two takes as lines to draw, with gaps where nothing sounds."""

from app.services.following_views import ShapeView
from app.services.lanes import split_at_gaps
from app.services.views import Curve
from app.services.wording import reading_text

_SILENT = "Nothing sounds here."


def shape_curves(view: ShapeView) -> tuple[Curve, Curve]:
    """Give both curves on A's time; B's level is moved onto A's."""
    a, b = (
        Curve(tuple(split_at_gaps(view.time_s, levels)), "dB", view.sentence or _SILENT)
        for levels in (view.a_db, view.b_db)
    )
    return a, b


def shape_words(view: ShapeView) -> str:
    """Say how alike the two shapes are, and what of the hairpins was played."""
    words = [view.sentence]
    if view.time_s.size:
        words.append(f"Likeness of the two shapes, 1 at most: {reading_text(view.likeness)}.")
    words += [
        f"{hairpin.kind.capitalize()}: A {reading_text(hairpin.a)}, B {reading_text(hairpin.b)}."
        for hairpin in view.hairpins
    ]
    return "\n".join(word for word in words if word)
