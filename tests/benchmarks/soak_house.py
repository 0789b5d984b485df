"""Where the soak happens: a journal, a small disk, a sound device, the program in a process.

The program is a player's sitting (``soak_player.py``) that says what the window says and
waits at each phase, so that what goes wrong comes at a known moment of it.
"""

import json
import os
import random
import subprocess
import sys
import threading
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from datetime import date, datetime
from pathlib import Path
from typing import Any

import numpy as np
import soundfile

from sample_audio.generator import NoteSpec, PhraseSpec, render
from tests.benchmarks.soak_oracle import Confirmed
from tests.open_sockets import SocketWatch
from tests.virtual_room import VirtualRoom

ROOT = Path(__file__).resolve().parents[2]
DISK_MB = 600
TOLD = {"message", "log", "bug", "offered", "refused", "no report", "stuck", "not filed"}
_LONGEST_SITTING_S = 3600.0

Step = tuple[str, list[Any]]


@dataclass
class Trouble:
    """What goes wrong, at which phase, how long after it, and how much room a full disk has.

    ``passes``: so many times that phase goes well before.
    """

    kind: str
    phase: str
    passes: int
    after_s: float
    room_bytes: int


@dataclass
class House:
    """Where it happens."""

    journal: Path
    scratch: Path
    room: VirtualRoom
    chance: random.Random
    disk: Path | None
    look_every_s: float = 2.0
    confirmed: Confirmed = field(default_factory=Confirmed)
    troubles: Counter[str] = field(default_factory=Counter)
    sittings: int = 0

    def fill_disk(self, left: int) -> None:
        """Fill the disk up but for so many bytes."""
        if self.disk is None:
            return
        with (self.disk / "ballast").open("wb", buffering=0) as ballast:
            with suppress(OSError):
                while ballast.write(bytes(2**20)) == 2**20:
                    pass
            ballast.truncate(max(0, ballast.tell() - left))

    def free_disk(self) -> None:
        """Make room again."""
        if self.disk is not None:
            (self.disk / "ballast").unlink(missing_ok=True)


@contextmanager
def small_disk(folder: Path) -> Iterator[Path | None]:
    """Mount a small disk; none where that is not allowed."""
    folder.mkdir()
    options = ["-t", "tmpfs", "-o", f"size={DISK_MB}m", "tmpfs"]
    done = subprocess.run(["mount", *options, str(folder)], capture_output=True, check=False)
    if done.returncode != 0:
        yield None
        return
    try:
        yield folder
    finally:
        subprocess.run(["umount", "--lazy", str(folder)], check=True)


@contextmanager
def somebody_plays(room: VirtualRoom) -> Iterator[None]:
    """Play a phrase into the room over and over, also after the device was away."""
    notes = tuple(NoteSpec(midi, 0.5) for midi in (62, 64, 66, 67, 69, 67, 66, 64))
    phrase = render(PhraseSpec(notes, tempo=120.0, seed=5))
    is_over = threading.Event()

    def play() -> None:
        while not is_over.is_set():
            with room.playing(phrase.samples, phrase.sample_rate_hz) as player:
                while player.poll() is None and not is_over.wait(0.05):
                    pass
            is_over.wait(0.2)

    thread = threading.Thread(target=play)
    thread.start()
    try:
        yield
    finally:
        is_over.set()
        thread.join()


class Process:
    """The program on the journal, until it closes or is killed."""

    def __init__(self, house: House, now: datetime, troubles: list[Trouble]) -> None:
        self._house = house
        self._troubles = troubles
        self.done: list[str] = []
        self.was_killed = False
        self.now = now
        home = str(house.scratch / "home")
        self._errors = (house.scratch / "errors.txt").open("w+")
        self._process = subprocess.Popen(
            [sys.executable, "-m", "tests.benchmarks.soak_player"],
            cwd=ROOT,
            env=os.environ
            | {"QT_QPA_PLATFORM": "offscreen", "PYTHONPATH": str(ROOT), "HOME": home,
               "XDG_CONFIG_HOME": home, "XDG_CACHE_HOME": home, "XDG_STATE_HOME": home},
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=self._errors,
            text=True,
        )  # fmt: skip

    @property
    def _day(self) -> str:
        return f"{self.now:%Y-%m-%d}"

    def sit_through(self, steps: list[Step]) -> None:
        """Send the steps and listen to what is said until the process is over."""
        process = self._process
        given = {
            "journal": str(self._house.journal), "scratch": str(self._house.scratch),
            "now": self.now.isoformat(), "steps": steps,
        }  # fmt: skip
        watchdog = threading.Timer(_LONGEST_SITTING_S, self._give_up)
        watchdog.start()
        try:
            assert process.stdout is not None
            with SocketWatch(process.pid, self._house.look_every_s) as sockets:
                self._answer(json.dumps(given))
                for line in process.stdout:
                    self._take_in(json.loads(line))
                process.wait()
        finally:
            watchdog.cancel()
            self._end_trouble()
            told = self._close()
        faults = self._house.confirmed.faults
        faults += [f"{self._day}: a socket: {words}" for words in sorted(sockets.seen)]
        if self.was_killed:
            self._house.confirmed.killed(self._day)
        elif process.returncode not in (0, 2):
            last = told.strip().splitlines()[-3:]
            faults.append(f"{self._day}: ended with {process.returncode}: {last}")

    def _close(self) -> str:
        """Close the pipes and give what was written on stderr."""
        for pipe in (self._process.stdin, self._process.stdout):
            with suppress(BrokenPipeError):
                if pipe is not None:
                    pipe.close()
        self._errors.seek(0)
        told = self._errors.read()
        self._errors.close()
        return told

    def _take_in(self, line: dict[str, Any]) -> None:
        if "said" in line:
            self._house.confirmed.hear(self._day, line)
            if line["said"] in TOLD:
                print(f"    {self._day} {line['said']}: {line['words']}", flush=True)
        elif "done" in line:
            self.done.append(line["done"])
            self._end_trouble()
        elif "phase" in line:
            self.now = datetime.fromisoformat(line["now"])
            self._meet(line["phase"])

    def _meet(self, phase: str) -> None:
        if phase == "help wanted":
            self._end_trouble()
        for trouble in [one for one in self._troubles if one.phase == phase]:
            if trouble.passes:
                trouble.passes -= 1
            else:
                self._troubles.remove(trouble)
                self._bring(trouble)
        self._answer("go")

    def _bring(self, trouble: Trouble) -> None:
        house = self._house
        house.troubles[f"{trouble.kind} while {trouble.phase}"] += 1
        print(f"    {self._day} {trouble.kind} while {trouble.phase}", flush=True)
        if trouble.kind == "kill":
            threading.Timer(trouble.after_s, self._kill).start()
        elif trouble.kind == "full":
            house.fill_disk(trouble.room_bytes)
        else:
            house.room.unplug()

    def _end_trouble(self) -> None:
        self._house.free_disk()
        self._house.room.plug_in()

    def _kill(self) -> None:
        if self._process.poll() is None:
            self.was_killed = True
            self._process.kill()

    def _give_up(self) -> None:
        self._house.confirmed.faults.append(f"{self._day}: a sitting that never ended")
        self._process.kill()

    def _answer(self, words: str) -> None:
        assert self._process.stdin is not None
        with suppress(BrokenPipeError):
            self._process.stdin.write(words + "\n")
            self._process.stdin.flush()


def a_clip(house: House, day: date, number: int) -> str:
    """Write a clip as a phone names it."""
    rng = house.chance
    notes = tuple(NoteSpec(rng.choice((62, 64, 66, 67, 69)), 0.5) for _ in range(4))
    phrase = render(PhraseSpec(notes, tempo=100.0, seed=rng.randrange(10**6)))
    path = house.scratch / f"{day} 18.{number:02d}.{rng.randrange(60):02d}.wav"
    soundfile.write(path, np.asarray(phrase.samples), phrase.sample_rate_hz, "PCM_24")
    return str(path)
