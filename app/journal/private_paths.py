"""Takes what is private out of a text that the player may hand on, such as a fault's details."""

import re
from collections.abc import Mapping
from pathlib import Path
from urllib.parse import quote

HOME, JOURNAL, USER = "<home>", "<journal>", "<user>"

# A shorter name is part of ordinary words, so it goes only where it stands in a path.
_SHORTEST_NAME = 3
# Whose home it is does not matter: on every platform the next part is somebody's name.
_ANY_HOME = re.compile(
    r"(?:(?<![\w.-])/home/|(?<![\w.-])/Users/|\b[A-Za-z]:[\\/]+Users[\\/]+)([^\\/\s\"':;,<>|]+)",
    re.IGNORECASE,
)


def without_private_paths(
    text: str, *, home: Path | str, journal: Path | str | None, user: str
) -> str:
    """Replace the home folder, the journal's folder and the user's name by placeholders.

    Parameters
    ----------
    text : str
        Such as a traceback; paths of POSIX and of Windows, also with the doubled
        backslashes and the forward slashes that messages write them with.
    home, journal : Path or str
        Folders; those of another user's home lose that user's name as well.
    user : str
        The name to log in with.
    """
    folders = [(str(home), HOME)]
    if journal is not None:
        folders.append((str(journal), JOURNAL))
    # The longer first: a journal mostly lies in the home folder.
    for folder, word in sorted(folders, key=lambda pair: -len(pair[0])):
        text = _without_folder(text, folder, word)
    text = _ANY_HOME.sub(HOME, text)
    if not user:
        return text
    name = re.escape(user)
    if len(user) < _SHORTEST_NAME:
        return re.sub(rf"(?<=[\\/]){name}(?=[\\/])", lambda _: USER, text)
    # Also behind a slash as a URL hides it: the F of %2F is not the name's.
    begin = r"(?:(?<![^\W_])|(?<=%2F)|(?<=%5C))"
    return re.sub(rf"{begin}{name}(?![^\W_])", lambda _: USER, text, flags=re.IGNORECASE)


def login_name(environment: Mapping[str, str]) -> str:
    """Give the user's login name as the system knows it; empty where it does not."""
    names = (environment.get(key, "").strip() for key in ("USERNAME", "LOGNAME", "USER"))
    return next((name for name in names if name), "")


def _in_any_writing(part: str) -> str:
    """Match a folder's name as it is, and as URLs write it."""
    return rf"(?:{re.escape(part)}|{re.escape(quote(part))})" if part else ""


def _without_folder(text: str, folder: str, word: str) -> str:
    bare = folder.rstrip("\\/")
    if len(bare) <= 1 or bare.endswith(":"):  # the whole disk is nobody's home
        return text
    # Any kind and number of slashes between the parts, as repr and as URLs have them.
    first, *others = [_in_any_writing(part) for part in re.split(r"[\\/]+", bare)]
    # Not the slashes of a scheme ("file:///home"): only the last of them is the path's.
    pattern = r"[\\/]+".join(([first] if first else [r"[\\/]" + others.pop(0)]) + others)
    pattern = rf"(?<![\w.>-]){pattern}(?![\w-])"
    is_windows = "\\" in folder or (len(bare) > 1 and bare[1] == ":")
    flags = re.IGNORECASE if is_windows else re.NOFLAG
    return re.sub(pattern, lambda _: word, text, flags=flags)
