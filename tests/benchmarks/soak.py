"""Weeks of daily practice at the real window, with everything going wrong that can.

    python -m tests.benchmarks.soak [--weeks 8] [--seed 1] [--trouble 0.5]

A player in a process of its own (``soak_player.py``) records through the virtual room,
imports, marks, listens, compares, lets the clock run, types minutes and writes reports,
day after day by an injected clock. In about half of the sittings the program is killed
(SIGKILL), the disk is filled up (a small real one, a tmpfs; needs root) or the sound device
is unplugged, at a random moment of a random action. What the window said is kept outside
the program (``soak_oracle.py``) and compared with the disk after every week and at the end,
once more through the window, and once more after the database was deleted and repaired.
"""

import argparse
import os
import random
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Any

from tests.benchmarks.soak_house import (
    ROOT,
    House,
    Process,
    Step,
    Trouble,
    a_clip,
    small_disk,
    somebody_plays,
)
from tests.benchmarks.soak_oracle import Confirmed, Found
from tests.virtual_room import VirtualRoom

FIRST_DAY = date(2026, 9, 7)
STRETCHES = (1, 3, 5, 7, 7)

# Where in an action each trouble may come.
PHASES: dict[str, tuple[str, ...]] = {
    "kill": (
        "opening", "opened", "recording", "recording", "stopping", "filing", "filing", "importing",
        "import running", "marking", "writing", "clock running", "typing", "typed", "reporting",
        "playing", "closing",
    ),
    "full": (
        "opening", "opened", "recording", "recording", "stopping", "filing", "importing",
        "import running", "marking", "writing", "clock running", "typed", "reporting",
    ),
    "unplug": ("opened", "recording", "recording", "stopping", "playing"),
}  # fmt: skip
OF_STEPS: dict[str, tuple[str, ...]] = {
    "record": ("recording", "stopping", "filing"),
    "bring_in": ("importing", "import running"),
    "mark": ("marking", "writing"),
    "practise": ("clock running",),
    "type_minutes": ("typing", "typed"),
    "report": ("reporting",),
    "play": ("playing",),
}


def steps_of(house: House, at: int, day: date) -> list[Step]:
    """Say what the player does on a day."""
    chance = house.chance
    steps: list[Step] = []
    if at == 0:
        steps += [("passage", ["Study", "Opening"]), ("passage", ["Study", "Second page"])]
    if chance.random() < 0.8:
        for _ in range(chance.choice((1, 1, 1, 2))):
            steps.append(("record", [chance.randrange(2), chance.uniform(1.3, 2.6),
                                     chance.randrange(3)]))  # fmt: skip
    if chance.random() < 0.35 or not steps:
        late = [day - timedelta(days=n) for n in range(chance.randrange(1, 4))]
        clips = [a_clip(house, one, n) for n, one in enumerate(late)]
        steps.append(("bring_in", [clips]))
    steps.append(("mark", [[f"day {at + 1} no {n + 1}" for n in range(chance.randrange(1, 3))]]))
    for name, share in (("unmark", 0.2), ("play", 0.4), ("compare", 0.4)):
        if chance.random() < share:
            steps.append((name, []))
    if chance.random() < 0.5:
        steps.append(("practise", [chance.randrange(8, 33)]))
    else:
        steps.append(("type_minutes", [chance.randrange(10, 90)]))
    if at % 7 == 6:
        kind = chance.choice(("html", "pdf"))
        steps.append(("report", [str(house.scratch / f"lesson {day}.{kind}")]))
    steps.append(("file_what_was_left", []))
    return steps


def troubles_for(house: House, steps: list[Step], days: int, share: float) -> list[Trouble]:
    """Say what goes wrong in a sitting: about so many things a day, each only once."""
    chance = house.chance
    kinds = ["kill", "kill", "unplug"] + (["full", "full"] if house.disk else [])
    there = Counter({"opening": 1, "opened": 1, "closing": 1})
    there.update(phase for name, _ in steps for phase in OF_STEPS.get(name, ()))
    found = []
    for _ in range(days):
        if chance.random() < share:
            kind = chance.choice(kinds)
            phase = chance.choice([phase for phase in PHASES[kind] if there[phase]])
            found.append(
                Trouble(
                    kind,
                    phase,
                    chance.randrange(there[phase]),
                    chance.uniform(0.0, 2.0 if phase == "recording" else 0.5),
                    chance.choice((0, 4_096, 40_960, 409_600)),
                )
            )
    return found


def one_stretch(house: House, first: int, days: int, share: float) -> None:
    """Sit through days with the window left open, starting it again after each kill."""
    chance = house.chance
    steps: list[Step] = []
    begin = evening = _evening(chance, first)
    for at in range(first, first + days):
        if at > first:
            evening = _evening(chance, at)
            steps.append(("sleep_until", [evening.isoformat()]))
        steps += steps_of(house, at, evening.date())
    now = begin
    for attempt in range(6):
        troubles = troubles_for(house, steps, days, share if attempt < 4 else 0.0)
        house.sittings += 1
        process = Process(house, now, troubles)
        process.sit_through(steps)
        steps = steps[len(process.done) :]
        if not process.was_killed and not steps:
            return
        now = process.now + timedelta(minutes=1 + chance.random())
    if steps:
        house.confirmed.faults.append(f"{now:%Y-%m-%d}: never got through {steps}")


def _evening(chance: random.Random, at: int) -> datetime:
    day = FIRST_DAY + timedelta(days=at)
    return datetime(day.year, day.month, day.day, 18, chance.randrange(60), tzinfo=UTC)


def look_over(house: House, days: int) -> list[str]:
    """Compare what the window shows of every day and take with what it showed before."""
    before = {take: dict(listed) for take, listed in house.confirmed.markers.items()}
    seen = Confirmed()
    last = FIRST_DAY + timedelta(days=days)
    shown_takes: set[str] = set()
    shown_minutes: dict[str, float] = {}

    class Eyes(Confirmed):
        def hear(self, day: str, line: dict[str, Any]) -> None:
            super().hear(day, line)
            if line["said"] == "shown take":
                shown_takes.add(line["id"])
            elif line["said"] == "shown minutes":
                shown_minutes[line["day"]] = line["minutes"] or 0.0

    mine, seen = house.confirmed, Eyes()
    house.confirmed = seen
    process = Process(house, datetime(last.year, last.month, last.day, 9, tzinfo=UTC), [])
    process.sit_through([("look_over", [])])
    house.confirmed = mine
    lost = list(seen.faults)
    lost += [f"take {take[:8]} is not shown" for take in mine.takes if take not in shown_takes]
    for take, listed in before.items():
        shown = seen.markers.get(take, {})
        lost += [f"marker {words} is not shown" for marker, words in listed.items()
                 if shown.get(marker, ["", ""])[1] != words[1]]  # fmt: skip
    for day, minutes in mine.minutes.items():
        if not minutes - 0.51 <= shown_minutes.get(day, 0.0) <= minutes + 4:
            lost.append(f"{day}: {minutes} min, and now {shown_minutes.get(day)} are shown")
    return lost


def soak(days: int, seed: int, share: float) -> list[str]:
    """Sit through the days; print what happened and give what was lost or went wrong."""
    began = time.monotonic()
    with (
        tempfile.TemporaryDirectory(prefix="soak-") as folder,
        VirtualRoom() as room,
        small_disk(Path(folder) / "disk") as disk,
        somebody_plays(room),
    ):
        scratch = Path(folder) / "scratch"
        (scratch / "home").mkdir(parents=True)
        journal = (disk or Path(folder)) / "journal"
        house = House(journal, scratch, room, random.Random(seed), disk)
        lost: list[str] = []
        at = 0
        while at < days:
            stretch = min(house.chance.choice(STRETCHES), days - at)
            one_stretch(house, at, stretch, share)
            at += stretch
            before, lost = lost, house.confirmed.look_at(journal)
            for words in lost:
                if words not in before:
                    print(f"  LOST {words}", flush=True)
            print(f"day {at}: {_counted(house)}, {len(lost)} lost", flush=True)
        lost += look_over(house, days)
        found = Found(journal)
        lost += [f"left behind: {name}" for name in (*found.unfinished, *found.parts)]
        lost += _after_a_repair(house)
        lost += house.confirmed.faults
        print(f"\n{days} days, {house.sittings} sittings, {time.monotonic() - began:.0f} s")
        for words, times in sorted(house.troubles.items()):
            print(f"  {times:3d} x {words}")
        print(f"confirmed: {_counted(house)}")
        print(f"lost or wrong: {len(lost)}")
        for words in lost:
            print(f"  {words}")
    return lost


def _after_a_repair(house: House) -> list[str]:
    """Delete the database, have it made again, and compare once more."""
    (house.journal / "journal.db").unlink()
    for beside in ("-wal", "-shm"):
        house.journal.joinpath(f"journal.db{beside}").unlink(missing_ok=True)
    done = subprocess.run(
        [sys.executable, "-m", "app", "repair"],
        cwd=ROOT, env=os.environ | {"PASSAGEWORK_JOURNAL": str(house.journal)},
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    if done.returncode != 0:
        return [f"repair ended with {done.returncode}: {done.stderr.strip()}"]
    return [f"after a repair: {words}" for words in house.confirmed.look_at(house.journal)]


def _counted(house: House) -> str:
    one = house.confirmed
    return (
        f"{len(one.takes)} takes, {len(one.recordings)} recordings seen, {len(one.imports)} files"
        f" imported, {one.marker_count} markers, {len(one.minutes)} days with"
        f" {sum(one.minutes.values())} min, {len(one.reports)} reports"
    )


if __name__ == "__main__":
    # Whoever ends it wants the disk unmounted and the room left.
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--weeks", type=float, default=8)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--trouble", type=float, default=0.5)
    given = parser.parse_args()
    sys.exit(bool(soak(round(7 * given.weeks), given.seed, given.trouble)))
