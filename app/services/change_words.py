"""The one plain word of a change, and how its measure is called."""

from typing import TYPE_CHECKING

from app.services.change_columns import NOTES, STEADINESS
from app.services.readings import measure_named

if TYPE_CHECKING:
    from analysis.verdicts import JudgedColumn

_OF_PARTS = {
    NOTES: ("Deviation", "cents", 1, True),
    "bar_mean_absolute_cents": ("Mean deviation", "cents", 1, False),
    "bar_precision_cents": ("Spread", "cents", 1, False),
    "bar_bpm": ("Tempo", "BPM", 1, False),
    STEADINESS: ("Unevenness", "%", 1, False),
    "bar_level_db": ("Loudness against the take", "dB", 1, True),
}
_PART_KEYS = {
    "bar_mean_absolute_cents": "mean_absolute_cents",
    "bar_precision_cents": "precision_cents",
    "bar_bpm": "mean_bpm",
    STEADINESS: "steadiness_cv_percent",
}


def label_of(family: str) -> str:
    """Name the measure of a family."""
    return _OF_PARTS[family][0] if family in _OF_PARTS else measure_named(family).label


def unit_of(family: str) -> tuple[str, int, bool]:
    """Give unit, decimals and whether a value carries its sign."""
    if family in _OF_PARTS:
        _, unit, digits, signed = _OF_PARTS[family]
        return unit, digits, signed
    measure = measure_named(family)
    return measure.unit, measure.digits, measure.signed


def no_interval_text(key: str, *, is_judged: bool) -> str:
    """Say why the change of a measure from one take to another has no interval."""
    label = measure_named(key).label
    if is_judged:
        return (
            f"{label}: no interval, for one take gives none; the word goes by how far two days"
            " differ."
        )
    return f"{label}: no interval, for one take gives none."


HOW_JUDGED = (
    "Plus-minus: how well the two takes are measured. The word: whether they differ by more"
    " than two days of this passage ordinarily do."
)


def change_word(one: "JudgedColumn") -> str:
    """Give the one word; only a clear change gets another than no change.

    A note is better where its mean lies nearer to the target than before. 'Better' and
    'worse' are said of intonation only.
    """
    from analysis.change import Word  # noqa: PLC0415 - scipy, only when needed
    from analysis.results import Measured  # noqa: PLC0415
    from app.services.trends import TREND_WORDS  # noqa: PLC0415

    if not isinstance(one.result, Measured):
        return str(Word.TOO_FEW_TAKES)
    value = one.result.value
    if not value.is_clear:
        return str(Word.NO_CLEAR_CHANGE)
    if one.family == NOTES:
        return str(Word.BETTER if abs(value.b) < abs(value.a) else Word.WORSE)
    if one.family == "bar_level_db":
        return str(Word.LOUDER if value.change > 0 else Word.SOFTER)
    rising, falling = TREND_WORDS[_PART_KEYS.get(one.family, one.family)]
    return str(rising if value.change > 0 else falling)
