"""What the window has confirmed, kept outside the program, and whether it is still there.

The journal is looked at with sqlite3, libsndfile and hashes; nothing of the program helps.
"""

import hashlib
import sqlite3
from collections import Counter
from contextlib import closing
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import soundfile

MARKED_WHILE_PLAYING = "marked while playing"
# A crash may cost the last second, and a shown length is rounded to the whole second.
MOST_LOST_S = 1.0
_ROUNDING_S = 0.5
_ROUNDING_MIN = 0.51
# A clock that ran through a kill goes on until the next start, a minute or two later.
_MOST_INVENTED_MIN = 4.0


def sha256_of(path: Path) -> str:
    """Hash a file."""
    return hashlib.sha256(path.read_bytes()).hexdigest()


def seconds_of(length: str) -> float:
    """Read a length as the window writes it, ``m:ss``."""
    minutes, _, seconds = length.partition(":")
    return 60.0 * int(minutes) + float(seconds)


@dataclass
class Recording:
    """A recording that was seen to run: how long at least, with how many marks."""

    day: str
    shown_s: float = 0.0
    marks: int = 0
    take_id: str = ""
    was_killed: bool = False


@dataclass
class Confirmed:
    """Everything that was on the screen."""

    takes: dict[str, str] = field(default_factory=dict)
    recordings: list[Recording] = field(default_factory=list)
    imports: dict[str, str] = field(default_factory=dict)
    markers: dict[str, dict[str, list[str]]] = field(default_factory=dict)
    deleted: dict[str, str] = field(default_factory=dict)
    minutes: dict[str, int] = field(default_factory=dict)
    reports: dict[Path, str] = field(default_factory=dict)
    counts: Counter[str] = field(default_factory=Counter)
    faults: list[str] = field(default_factory=list)
    digests: dict[str, tuple[str, str]] = field(default_factory=dict)
    woke: str = ""

    def hear(self, day: str, line: dict[str, Any]) -> None:
        """Take in one thing that the window said."""
        said = line["said"]
        self.counts[said] += 1
        handler = getattr(self, f"_{said.replace(' ', '_')}", None)
        if handler is not None:
            handler(day, line)

    def killed(self, day: str) -> None:
        """Take note that the program ended in the middle of what it did."""
        if self.recordings and not self.recordings[-1].take_id and self.recordings[-1].day == day:
            self.recordings[-1].was_killed = True

    @property
    def marker_count(self) -> int:
        """How many markers the last listings held."""
        return sum(map(len, self.markers.values()))

    # -- one method for each thing that is said ------------------------------------------

    def _woke(self, _day: str, line: dict[str, Any]) -> None:
        self.woke = line["day"]

    def _recording(self, day: str, _line: dict[str, Any]) -> None:
        # The first words after a night still come with the day before.
        self.recordings.append(Recording(max(day, self.woke)))

    def _elapsed(self, _day: str, line: dict[str, Any]) -> None:
        running = self.recordings[-1]
        running.shown_s = max(running.shown_s, seconds_of(line["length"]))
        running.marks = max(running.marks, int(line["marks"].split()[0]) if line["marks"] else 0)

    def _take(self, _day: str, line: dict[str, Any]) -> None:
        self.takes.setdefault(line["id"], line["day"])
        # One that could not be filed at once may come after another that could.
        waiting = [one for one in self.recordings if not one.take_id]
        if waiting:
            waiting[-1].take_id = line["id"]

    def _imported(self, day: str, line: dict[str, Any]) -> None:
        self.imports.update({sha256_of(Path(name)): day for name in line["files"]})

    def _markers(self, _day: str, line: dict[str, Any]) -> None:
        self.markers[line["take"]] = dict(line["listed"])

    def _deleted(self, _day: str, line: dict[str, Any]) -> None:
        self.deleted[line["marker"]] = line["take"]

    def _minutes(self, _day: str, line: dict[str, Any]) -> None:
        self.minutes[line["day"]] = line["minutes"]

    def _report(self, day: str, line: dict[str, Any]) -> None:
        path = Path(line["file"])
        if not _is_whole(path):
            self.faults.append(f"{day}: the report {path.name} is not whole")
        else:
            self.reports[path] = sha256_of(path)

    def _bug(self, day: str, line: dict[str, Any]) -> None:
        self.faults.append(f"{day}: a bug dialog: {line['words'].strip().splitlines()[-1]}")

    def _network(self, day: str, line: dict[str, Any]) -> None:
        self.faults.append(f"{day}: the program tried to reach a network: {line['words']}")

    def _stuck(self, day: str, line: dict[str, Any]) -> None:
        self.faults.append(f"{day}: {line['step']} waited in vain for {line['words']}")

    def _not_filed(self, day: str, line: dict[str, Any]) -> None:
        self.faults.append(f"{day}: still not filed: {line['words']}")

    # -- what became of it ------------------------------------------------------------------

    def look_at(self, journal: Path) -> list[str]:
        """Compare the journal on the disk with all that; give what is lost or changed."""
        found = Found(journal)
        lost = [*self._lost_takes(found), *self._lost_markers(found)]
        lost += [f"import of {day} is lost" for sha, day in self.imports.items()
                 if sha not in found.digests_of_files]  # fmt: skip
        for day, minutes in self.minutes.items():
            kept = found.minutes.get(day, 0.0)
            if not minutes - _ROUNDING_MIN <= kept <= minutes + _MOST_INVENTED_MIN:
                lost.append(f"{day}: {minutes} min were shown, {kept:.1f} are kept")
        lost += [f"{path.name} is not what it was" for path, sha in self.reports.items()
                 if not path.exists() or sha256_of(path) != sha]  # fmt: skip
        return lost

    def _lost_takes(self, found: "Found") -> list[str]:
        lost = []
        for take_id, day in self.takes.items():
            take = found.takes.get(take_id)
            if take is None:
                lost.append(f"{day}: take {take_id[:8]} is lost")
                continue
            path, sha, duration_s = take[1:]
            known = self.digests.setdefault(take_id, (path.name, sha))[1]
            if not path.exists() or not sha == known == found.digests_of_files.get_of(path):
                lost.append(f"{day}: {path.name} is not what it was")
            elif abs(soundfile.info(path).duration - duration_s) > 0.01:
                lost.append(f"{day}: {path.name} is not as long as the journal says")
        spare = {i: t for i, t in found.takes.items() if i not in self.takes}
        for one in self.recordings:
            least_s = one.shown_s - _ROUNDING_S - MOST_LOST_S
            take_id = one.take_id
            if not take_id:  # it came back at a start whose table showed nothing before a kill
                take_id = next((i for i, t in spare.items() if t[0] == one.day), "")
                spare.pop(take_id, None)
            if take_id not in found.takes:
                if least_s > 0:
                    lost.append(f"{one.day}: a recording of {one.shown_s:.0f} s is lost")
                continue
            if found.takes[take_id][3] < least_s:
                lost.append(
                    f"{one.day}: {one.shown_s:.0f} s were shown, {found.takes[take_id][3]:.2f} kept"
                )
            marks = [m for m in found.markers.values() if m[0] == take_id]
            # The player may have deleted one of them since.
            gone = sum(take == take_id for take in self.deleted.values())
            if sum(m[1] == MARKED_WHILE_PLAYING for m in marks) + gone < one.marks:
                lost.append(f"{one.day}: of {one.marks} marks while playing some are lost")
        return lost

    def _lost_markers(self, found: "Found") -> list[str]:
        lost = []
        for take_id, listed in self.markers.items():
            for marker_id, words in listed.items():
                kept = found.markers.get(marker_id)
                if kept is None or kept[0] != take_id or kept[1] not in words[1]:
                    lost.append(f"marker {words} is lost (kept: {kept})")
        shown = {marker for listed in self.markers.values() for marker in listed}
        back = (set(self.deleted) - shown) & set(found.markers)
        lost += [f"the deleted marker {marker[:8]} is back" for marker in back]
        return lost


class Digests(dict[str, Path]):
    """Files by their hash."""

    def get_of(self, path: Path) -> str:
        """Give the hash of a file."""
        return next((sha for sha, one in self.items() if one == path), "")


class Found:
    """A journal on the disk, read beside the program."""

    def __init__(self, journal: Path) -> None:
        uri = f"file:{journal / 'journal.db'}?mode=ro"
        with closing(sqlite3.connect(uri, uri=True)) as database:
            self.takes = {
                row[0]: (row[1], journal / row[2], row[3], row[4])
                for row in database.execute(
                    "SELECT id, practice_day, file, sha256, duration_s FROM take"
                    " WHERE deleted_at IS NULL"
                )
            }
            self.markers = {
                row[0]: (row[1], row[2])
                for row in database.execute("SELECT id, take_id, text FROM marker")
            }
            self.minutes: dict[str, float] = dict(
                database.execute(
                    "SELECT practice_day, SUM(minutes) FROM session"
                    " WHERE minutes IS NOT NULL GROUP BY practice_day"
                )
            )
            check = [row[0] for row in database.execute("PRAGMA integrity_check")]
        if check != ["ok"]:
            raise SystemExit(f"the database is damaged: {check}")
        self.unfinished = sorted(
            f"{p.name} with {p.stat().st_size} bytes" for p in (journal / ".recording").glob("*")
        )
        self.parts = sorted(str(p.relative_to(journal)) for p in journal.rglob("*.part"))
        self.digests_of_files = Digests(
            {sha256_of(p): p for p in journal.glob("2*/**/*") if p.suffix in (".wav", ".flac")}
        )


def _is_whole(path: Path) -> bool:
    data = path.read_bytes() if path.exists() else b""
    end = data.rstrip()[-16:]
    return end.endswith(b"%%EOF") if path.suffix == ".pdf" else end.endswith(b"</html>")
