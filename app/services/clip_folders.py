"""Folders with clips in them."""

from collections.abc import Iterable
from pathlib import Path

from app.services.plain import plain_failures

KINDS = frozenset(
    {".wav", ".flac", ".ogg", ".oga", ".opus", ".mp3", ".m4a", ".mp4", ".mov", ".m4v", ".aac"}
    | {".aif", ".aiff", ".3gp", ".caf", ".mkv", ".webm"}
)
"""What a phone or a recorder writes, by the ending of the name."""

_DEEPEST = 4


def files_of(paths: Iterable[Path]) -> tuple[Path, ...]:
    """Put the clips of folders, in the order of their names, where the folders stand.

    Raises
    ------
    PlainFailure
        Where a folder may not be looked into.
    """
    found: list[Path] = []
    for path in paths:
        if path.is_dir():
            with plain_failures(f"{path.name} was not looked into"):
                found += sorted(clip for clip, _ in clips_in(path))
        else:
            found.append(path)
    return tuple(found)


def clips_in(folder: Path, depth: int = 0) -> list[tuple[Path, float]]:
    """List the clips of a folder with their file times, subfolders too, hidden ones not."""
    found: list[tuple[Path, float]] = []
    for path in folder.iterdir():
        if path.name.startswith((".", "~")) or path.is_symlink():
            continue
        try:
            if path.is_dir():
                found += clips_in(path, depth + 1) if depth < _DEEPEST else []
            elif path.suffix.lower() in KINDS:
                status = path.stat()
                found += [(path, status.st_mtime)] if status.st_size else []
        except OSError:
            continue  # it went while it was looked at, or may not be read: next time
    return found
