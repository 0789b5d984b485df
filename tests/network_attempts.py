"""Tells, from inside a program, whatever it tries to do with the internet.

Python raises these audit events (docs.python.org, "Audit events table"); whoever is run
under :func:`report` says so before the attempt is made, also where it would fail.
"""

import sys
from collections.abc import Callable
from typing import Any

_EVENTS = {
    "socket.bind", "socket.connect", "socket.getaddrinfo", "socket.gethostbyname",
    "socket.gethostbyaddr", "socket.sendto", "socket.sendmsg", "urllib.Request",
    "http.client.connect", "ftplib.connect", "smtplib.connect", "webbrowser.open",
}  # fmt: skip


def report(tell: Callable[[str], None]) -> None:
    """Tell of every attempt from now on; local sockets, which have a path, are none."""

    def hear(event: str, arguments: tuple[Any, ...]) -> None:
        if event in _EVENTS and not isinstance(arguments[-1], str | bytes):
            tell(f"{event} {arguments[1:]}")
        elif event in _EVENTS and event.partition(".")[0] != "socket":
            tell(f"{event} {arguments}")

    sys.addaudithook(hear)
