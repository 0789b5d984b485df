"""The order people expect of names with numbers in them: 2 before 10."""

import re
import unicodedata

_NUMBER = re.compile(r"(\d+)")


def natural_key(text: str) -> tuple[str | int, ...]:
    """Return what names are sorted by: letters without case and accents, numbers by size.

    >>> sorted(["Study 10", "study 2", "Study 1"], key=natural_key)
    ['Study 1', 'study 2', 'Study 10']
    """
    plain = unicodedata.normalize("NFKD", text.casefold())
    letters = "".join(letter for letter in plain if not unicodedata.combining(letter))
    # Letters and numbers take turns, so that like is compared with like.
    return tuple(int(part) if at % 2 else part for at, part in enumerate(_NUMBER.split(letters)))
