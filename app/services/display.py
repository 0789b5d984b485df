"""Whether this machine can show a window."""

import os
import sys
from collections.abc import Mapping

_WINDOWLESS_PLATFORMS = ("offscreen", "minimal", "minimalegl", "vnc")


def display_problem(
    environment: Mapping[str, str] | None = None, platform: str = sys.platform
) -> str:
    """Say in one sentence why no window can be shown; empty where one can.

    On Linux a window needs an X or Wayland display. ``QT_QPA_PLATFORM`` set to a
    platform without one (``offscreen``) is taken at its word: it is for tests.
    """
    found = os.environ if environment is None else environment
    if not platform.startswith("linux"):
        return ""
    if found.get("QT_QPA_PLATFORM", "").split(":")[0] in _WINDOWLESS_PLATFORMS:
        return ""
    if found.get("DISPLAY") or found.get("WAYLAND_DISPLAY"):
        return ""
    return "There is no display here, so no window can be shown."
