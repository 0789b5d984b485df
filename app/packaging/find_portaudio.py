"""Runs before the program in the self-contained folder: where its PortAudio is.

The binding asks the system for a library of this name, and a machine without PortAudio
has none to give. The folder brings one.
"""

import ctypes.util
import sys
from pathlib import Path

_BROUGHT = Path(sys._MEIPASS, "libportaudio.so.2")  # type: ignore[attr-defined]
_of_the_system = ctypes.util.find_library


def _find_library(name: str) -> str | None:
    if name == "portaudio" and _BROUGHT.exists():
        return str(_BROUGHT)
    return _of_the_system(name)


ctypes.util.find_library = _find_library
