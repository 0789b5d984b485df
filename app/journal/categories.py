"""The player's own list of marker categories: added to, renamed, reordered, retired.

A list of words in the order of their keys. Markers carry the word they were given, so none
of this changes a marker: what was marked under a retired or renamed category keeps its word.
"""

from app.journal.failures import PlainFailure

Names = tuple[str, ...]

_LONGEST = 40


def added(names: Names, name: str) -> Names:
    """Give the list with one more at its end.

    Raises
    ------
    PlainFailure
        Where the name is empty, too long or there already.
    """
    return (*names, _checked(names, name))


def renamed(names: Names, at: int, name: str) -> Names:
    """Give the list with another name in one place.

    Raises
    ------
    PlainFailure
        As :func:`added`.
    IndexError
        Where the place is not in the list.
    """
    others = names[:at] + names[at + 1 :]
    if not 0 <= at < len(names):
        raise IndexError(at)
    return (*names[:at], _checked(others, name), *names[at + 1 :])


def moved(names: Names, at: int, by: int) -> Names:
    """Give the list with one name moved; at an end it stays."""
    to = min(max(at + by, 0), len(names) - 1)
    others = names[:at] + names[at + 1 :]
    return (*others[:to], names[at], *others[to:])


def retired(names: Names, at: int) -> Names:
    """Give the list without one name.

    Raises
    ------
    PlainFailure
        Where it is the last one.
    """
    if len(names) <= 1:
        raise PlainFailure("Markers need at least one category.", "Add another one first.")
    return names[:at] + names[at + 1 :]


def _checked(others: Names, name: str) -> str:
    kept = " ".join(name.split())
    if not kept:
        raise PlainFailure("A category needs a name.", "Write one, for instance 'bow hold'.")
    if len(kept) > _LONGEST:
        raise PlainFailure(
            f"'{kept}' is too long for a category.", f"Use at most {_LONGEST} letters."
        )
    if kept.casefold() in {other.casefold() for other in others}:
        raise PlainFailure(f"There is a category '{kept}' already.", "Choose another name.")
    return kept
