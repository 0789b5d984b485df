"""How much softer a take plays so that another take sounds no louder or softer than it.

The louder of two performances is easily taken for the better one (common practice, no
source), so takes are heard at one loudness: the integrated loudness of ITU-R BS.1770.
Nothing is ever made louder, which could overdrive it.
"""

from collections.abc import Iterable

from app.services.reading_views import Reading
from app.services.views import LevelMatch
from app.services.wording import reading_text

_MOST_DB = 12.0
_TOLD_FROM_DB = 0.05


def level_match(
    a_lufs: float | None, b_lufs: float | None, others_lufs: Iterable[float | None] = ()
) -> LevelMatch:
    """Match two takes to the softest take that is walked through with them.

    Parameters
    ----------
    a_lufs, b_lufs : float or None
        Integrated loudness of both; ``None`` where it was not measured.
    others_lufs : iterable of float or None
        Of the other takes of the passage: stepping from one to the next should not
        change the loudness either. None of them takes away more than 12 dB.

    Returns
    -------
    LevelMatch
        Gains of at most 0 dB, and the sentence that states them.
    """
    if a_lufs is None or b_lufs is None:
        missing = " and ".join(
            name for name, value in (("A", a_lufs), ("B", b_lufs)) if value is None
        )
        return LevelMatch(
            0.0, 0.0, f"Levels are as recorded: the loudness of {missing} is not known."
        )
    known = [value for value in (a_lufs, b_lufs, *others_lufs) if value is not None]
    target = max(min(known), min(a_lufs, b_lufs) - _MOST_DB)
    a_gain, b_gain = target - a_lufs, target - b_lufs
    return LevelMatch(a_gain, b_gain, _sentence(("A", a_lufs, a_gain), ("B", b_lufs, b_gain)))


def _sentence(*sides: tuple[str, float, float]) -> str:
    parts = []
    for name, lufs, gain_db in sides:
        part = f"{name} {reading_text(Reading(lufs, 'LUFS'))}"
        if gain_db < -_TOLD_FROM_DB:
            part += f", played {reading_text(Reading(-gain_db, 'dB'))} softer"
        parts.append(part)
    return f"Heard at one loudness: {'; '.join(parts)}."
