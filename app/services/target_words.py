"""How the notes of two takes stand against every plausible target, side by side."""

from collections import Counter

from app.services.views import TakeView

_WORDS = (
    ("in_tune", "in tune by every plausible target"),
    ("depends", "it depends on the target"),
    ("out", "out by every plausible target"),
)


def target_verdicts(a: TakeView, b: TakeView) -> tuple[tuple[str, int, int], ...]:
    """Count the notes of both takes by what the plausible targets say of them.

    Parameters
    ----------
    a, b : TakeView
        What was left out (tuning up, talk) is not counted.

    Returns
    -------
    tuple of (words, count in a, count in b)
        Empty where no note of either take has a verdict.
    """
    counts = [
        Counter(note.verdict for note in side.notes if note.verdict and not note.left_out)
        for side in (a, b)
    ]
    if not any(counts):
        return ()
    return tuple((words, counts[0][key], counts[1][key]) for key, words in _WORDS)


def target_text(take: TakeView) -> str:
    """Name what the notes of a take are held against, e.g. ``equal, G, A = 440 Hz``."""
    settings = take.settings
    parts = [settings.temperament]
    if settings.tonic:
        parts.append(settings.tonic)
    a_hz = settings.reference_a_hz
    parts.append("A from the take" if a_hz is None else f"A = {a_hz:g} Hz")
    return ", ".join(parts)
