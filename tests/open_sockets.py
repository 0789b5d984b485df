"""Watches from outside whether a program and its children hold internet sockets.

Linux shows them under ``/proc`` (proc(5)): the sockets a process holds as links
``socket:[INODE]``, all sockets of its network with their INODE in ``net/tcp`` and the like.
"""

import threading
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from types import TracebackType
from typing import Self

PROC = Path("/proc")
_TABLES = ("tcp", "tcp6", "udp", "udp6", "raw", "raw6")
# The fields of a line, counted from 0; include/net/tcp_states.h: 0A is LISTEN.
_LOCAL, _REMOTE, _STATE, _INODE = 1, 2, 3, 9
_LISTENING = "0A"


def family(pid: int) -> list[int]:
    """Give a process and all that descend from it."""
    children: dict[int, list[int]] = {}
    for folder in PROC.glob("[0-9]*"):
        with suppress(OSError, ValueError):
            # The name in brackets may hold anything; what follows it does not.
            rest = (folder / "stat").read_text().rpartition(")")[2].split()
            children.setdefault(int(rest[1]), []).append(int(folder.name))
    found = [pid]
    for one in found:
        found += children.get(one, [])
    return found


def internet_sockets(pid: int) -> Iterator[str]:
    """Name the internet sockets that a process holds now."""
    held = set()
    with suppress(OSError):
        for link in (PROC / str(pid) / "fd").iterdir():
            with suppress(OSError):
                held.add(str(link.readlink()))
    if not held:
        return
    for table in _TABLES:
        with suppress(OSError):
            for line in (PROC / str(pid) / "net" / table).read_text().splitlines()[1:]:
                parts = line.split()
                if f"socket:[{parts[_INODE]}]" in held:
                    is_server = table.startswith("tcp") and parts[_STATE] == _LISTENING
                    kind = "listening" if is_server else f"open, to {parts[_REMOTE]}"
                    yield f"{table} {parts[_LOCAL]} {kind}"


class SocketWatch:
    """Looks at a process and its children again and again, until it is over."""

    def __init__(self, pid: int, every_s: float = 0.1) -> None:
        self._pid = pid
        self._every_s = every_s
        self._is_over = threading.Event()
        self._thread = threading.Thread(target=self._look, name="socket watch")
        self.seen: set[str] = set()
        self.looks = 0

    def __enter__(self) -> Self:
        self._thread.start()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._is_over.set()
        self._thread.join()

    def _look(self) -> None:
        while not self._is_over.wait(self._every_s):
            for pid in family(self._pid):
                self.seen.update(internet_sockets(pid))
            self.looks += 1
