"""What a window that was closed asks of the program."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class WindowEnd:
    """The exit code, and the backup to go back to before the window is opened again.

    ``restore`` is a backup's name; empty: the program ends.
    """

    exit_code: int
    restore: str = ""
