"""Names of recordings, safe on Linux, macOS and Windows alike.

A recording is filed as ``<year>/<date>/<time>-<passage>-take-<n>.<suffix>``. The
name tells a reader without the program what it is; the database and the sidecar
know the rest, so a recording keeps its name when it is filed elsewhere later.
"""

import re
import unicodedata
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date, datetime, time

MAX_CHARACTERS = 48
MAX_BYTES = 120  # a file name may have 255 bytes on common file systems

UNNAMED = "passage"

# Device names on Windows, with or without a suffix, in any case.
_RESERVED = frozenset(
    {"con", "prn", "aux", "nul", "conin", "conout", "clock"}
    | {f"{port}{n}" for port in ("com", "lpt") for n in range(10)}
)

_TAKE_FILE = re.compile(
    r"\d{4}/(?P<day>\d{4}-\d{2}-\d{2})/(?P<time>\d{6})"
    r"(?:-(?P<passage>[^/]+?))?-take-(?P<number>[1-9]\d{0,5})(?:-(?P<again>[1-9]\d*))?\.[^./]+"
)


def slug(name: str) -> str:
    """Turn the name of a passage into a part of a file name.

    Letters and digits of every script stay, in lower case; everything else becomes
    a single hyphen. The result is never empty, has at most 48 characters and 120
    bytes of UTF-8, and is no device name on Windows. ``slug(slug(x)) == slug(x)``.
    """
    kept = "".join(c if _is_kept(c) else "-" for c in _settled_case(name))
    words = [word for part in kept.split("-") if (word := _without_leading_marks(part))]
    short = _shortened("-".join(words))
    if not short:
        return UNNAMED
    if short in _RESERVED:
        return f"{UNNAMED}-{short}"
    return short


def take_file(
    *,
    practice_day: date,
    recorded_at: datetime,
    passage_slug: str | None,
    number: int,
    suffix: str,
    is_taken: Callable[[str], bool],
) -> str:
    """Name a new recording, relative to the journal and ``/`` separated.

    Parameters
    ----------
    practice_day : date
        The folder it goes to.
    recorded_at : datetime
        Its own wall-clock reading is the time in the name.
    passage_slug : str or None
        From :func:`slug`; left out of the name where the take has no passage.
    number : int
        Take number within passage and practice day, from 1.
    suffix : str
        With its dot, e.g. ``".flac"``.
    is_taken : callable
        Told a relative path without suffix; true where something has that name
        already, whatever its suffix (the sidecar shares the name). A further
        number is then appended: two takes in one second never meet.
    """
    if number < 1:
        msg = f"takes are counted from 1, not from {number}"
        raise ValueError(msg)
    named = f"{passage_slug}-" if passage_slug else ""
    folder = day_folder(practice_day)
    stem = f"{folder}/{recorded_at:%H%M%S}-{named}take-{number}"
    free, again = stem, 1
    while is_taken(free):
        again += 1
        free = f"{stem}-{again}"
    return free + suffix.lower()


def day_folder(practice_day: date) -> str:
    """Name the folder of a practice day, relative to the journal."""
    return f"{practice_day.year:04d}/{practice_day.isoformat()}"


def next_number(numbers: Iterable[int]) -> int:
    """Give the number of a new take; numbers of deleted takes are not used again."""
    return max(numbers, default=0) + 1


@dataclass(frozen=True, slots=True)
class TakeFileName:
    """What the name of a recording tells."""

    practice_day: date
    wall_time: time
    passage_slug: str | None
    number: int


def read_take_file(relative: str) -> TakeFileName | None:
    """Read the name of a recording; ``None`` where it does not follow the rule."""
    match = _TAKE_FILE.fullmatch(relative)
    if match is None:
        return None
    try:
        day = date.fromisoformat(match["day"])
        wall_time = datetime.strptime(match["time"], "%H%M%S").time()
    except ValueError:
        return None
    return TakeFileName(day, wall_time, match["passage"], int(match["number"]))


def _settled_case(name: str) -> str:
    # Lower case can undo a normal form and the other way round; both at once is
    # reached after a few turns.
    for _ in range(4):
        settled = unicodedata.normalize("NFKC", name).lower()
        if settled == name:
            break
        name = settled
    return name


def _is_kept(character: str) -> bool:
    # Marks belong to the letter before them: without them many scripts cannot be read.
    return character.isalnum() or unicodedata.category(character).startswith("M")


def _is_mark(character: str) -> bool:
    return unicodedata.category(character).startswith("M")


def _without_leading_marks(word: str) -> str:
    start = 0
    while start < len(word) and _is_mark(word[start]):
        start += 1
    return word[start:]


def _shortened(text: str) -> str:
    end = min(len(text), MAX_CHARACTERS)
    while len(text[:end].encode()) > MAX_BYTES:
        end -= 1
    while 0 < end < len(text) and _is_mark(text[end]):
        end -= 1  # rather lose a letter than tear its marks off
    return text[:end].strip("-")
