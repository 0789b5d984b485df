"""What a window that was closed asks of the program."""

from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True)
class WindowEnd:
    """The exit code, or what to do before the window is opened again.

    ``restore`` is the name of a backup to go back to; ``visit`` a bundle to open;
    ``home`` asks for the player's own journal. Without any of them the program ends.
    """

    exit_code: int
    restore: str = ""
    visit: Path | None = None
    home: bool = False
