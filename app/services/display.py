"""Whether this machine can show a window."""

import ctypes
import os
import sys
from collections.abc import Callable, Mapping

_WINDOWLESS_PLATFORMS = ("offscreen", "minimal", "minimalegl", "vnc")
# Libraries of the system that Qt's own packages leave to it, and what Debian calls them.
_ALWAYS_NEEDED = {"libGL.so.1": "libgl1", "libEGL.so.1": "libegl1"}
_NEEDED_BY_X = {
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
}


def _is_there(library: str) -> bool:
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True


def display_problem(
    environment: Mapping[str, str] | None = None,
    platform: str = sys.platform,
    is_there: Callable[[str], bool] = _is_there,
) -> str:
    """Say in one sentence why no window can be shown; empty where one can.

    On Linux a window needs an X or Wayland display, and libraries of the system without
    which Qt would end the program. ``QT_QPA_PLATFORM`` set to a platform without a display
    (``offscreen``) is taken at its word: it is for tests.
    """
    found = os.environ if environment is None else environment
    if not platform.startswith("linux"):
        return ""
    windowless = found.get("QT_QPA_PLATFORM", "").split(":")[0] in _WINDOWLESS_PLATFORMS
    if not (windowless or found.get("DISPLAY") or found.get("WAYLAND_DISPLAY")):
        return "There is no display here, so no window can be shown."
    needed = dict(_ALWAYS_NEEDED)
    if not (windowless or found.get("WAYLAND_DISPLAY")):
        needed |= _NEEDED_BY_X
    missing = {library: name for library, name in needed.items() if not is_there(library)}
    if not missing:
        return ""
    return (
        f"The window needs {' and '.join(missing)}, which this system does not have "
        f"(on Debian and its relatives: apt install {' '.join(missing.values())})."
    )
