"""A day at the real window that goes wrong; ``tests/benchmarks/soak.py`` has eight weeks.

The program runs in a process of its own. It is killed while it records, the device is
unplugged, the disk is full; what it had said on the screen is there afterwards. And all
the while nothing of it listens on, or reaches for, a network.
"""

import random
import subprocess
import sys
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from tests.benchmarks.soak_house import House, Process, Trouble, a_clip, small_disk
from tests.open_sockets import SocketWatch

pytestmark = pytest.mark.room

ROOT = Path(__file__).parents[2]
EVENING = datetime(2026, 3, 14, 18, 5, tzinfo=UTC)
linux = pytest.mark.skipif(sys.platform != "linux", reason="reads /proc")


@linux
def test_what_was_on_the_screen_survives_a_kill_a_full_disk_and_a_lost_device(
    virtual_room, tmp_path
):
    (tmp_path / "scratch" / "home").mkdir(parents=True)
    with small_disk(tmp_path / "disk") as disk:
        journal = (disk or tmp_path) / "journal"
        house = House(journal, tmp_path / "scratch", virtual_room, random.Random(1), disk)
        one = Process(house, EVENING, [Trouble("kill", "recording", 0, 0.6, 0)])
        one.sit_through([("passage", ["Study", "Opening"]), ("record", [0, 9.0, 1])])
        assert one.was_killed
        troubles = [Trouble("unplug", "recording", 0, 0.0, 0)]
        if disk:
            troubles.append(Trouble("full", "import running", 0, 0.0, 4096))
        again = Process(house, one.now + timedelta(minutes=1), troubles)
        again.sit_through(
            [
                ("record", [0, 1.5, 0]),
                ("bring_in", [[a_clip(house, EVENING.date(), 7)]]),
                ("bring_in", [[a_clip(house, EVENING.date(), 9)]]),
                ("mark", [["too low"]]),
                ("play", []),
                ("type_minutes", [35]),
                ("report", [str(house.scratch / "lesson.html")]),
            ]
        )
        confirmed = house.confirmed
        assert confirmed.faults == []
        assert confirmed.look_at(journal) == []
    assert sum(house.troubles.values()) == (3 if disk else 2)
    assert len(confirmed.recordings) == 2
    assert confirmed.counts["offered"] == 1, "the killed recording was offered at the next start"
    assert len(confirmed.takes) >= 3
    assert confirmed.marker_count == 1
    assert list(confirmed.minutes.values()) == [35]
    assert len(confirmed.reports) == 1


INTRUDERS = {
    "a server": "import socket; s = socket.create_server(('127.0.0.1', 0))",
    "a datagram socket": "import socket; s = socket.socket(type=socket.SOCK_DGRAM);"
    " s.bind(('127.0.0.1', 0))",
    "a call": "import socket; s = socket.socket(); s.connect_ex(('127.0.0.1', 9))",
    "a name": "import socket; s = socket.getaddrinfo('localhost', 80)",
    "a server below Python": "from PySide6.QtNetwork import QTcpServer; s = QTcpServer();"
    " assert s.listen()",
    "a child's server": "import subprocess, sys; s = subprocess.Popen([sys.executable, '-c',"
    " 'import socket, sys; s = socket.create_server((\"127.0.0.1\", 0)); sys.stdin.readline()'])",
}


@linux
@pytest.mark.parametrize("code", INTRUDERS.values(), ids=INTRUDERS)
def test_a_program_that_uses_a_network_would_be_seen(code):
    watched = (
        "import sys; from tests.network_attempts import report\n"
        "report(lambda words: print(words, flush=True))\n"
        f"{code}\nprint('ready', flush=True)\nsys.stdin.readline()"
    )
    process = subprocess.Popen(
        [sys.executable, "-c", watched],
        cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True,
    )  # fmt: skip
    with SocketWatch(process.pid) as sockets:
        told = list(iter(process.stdout.readline, "ready\n"))
        looks, end = sockets.looks, datetime.now(UTC) + timedelta(seconds=60)
        while not (told or sockets.seen) and datetime.now(UTC) < end:
            process.poll()
        assert told or sockets.seen, looks
        process.communicate("\n", timeout=10)


@linux
def test_a_program_that_keeps_to_itself_is_not_accused():
    process = subprocess.Popen(
        [sys.executable, "-c", "import socket, sys; a, b = socket.socketpair();"
         " sys.stdin.readline()"],
        stdin=subprocess.PIPE,
    )  # fmt: skip
    with SocketWatch(process.pid) as sockets:
        while sockets.looks < 3:
            process.poll()
        process.communicate(b"\n", timeout=10)
    assert sockets.seen == set()
