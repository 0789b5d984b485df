"""Takes a picture of every page in a real window, for the eye and for the README.

    python tests/ui/take_screenshots.py FOLDER [--journal DIR] [--only practice,listen]
        [--language de]
    python tests/ui/take_screenshots.py --readme
    python tests/ui/take_screenshots.py --guide [--only import,practice] [--language de]

Starts its own X server (Xvfb) twice: 1280 by 800, and 2560 by 1600 at 200 %, light and
dark each. Without --journal the demo journal is built first. The journal is copied, so
that nothing in it changes.

Longer than 300 lines because it walks through every pane of the window in one order.
"""

import argparse
import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import timedelta
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PICTURES = Path(__file__).with_name("pictures")
GUIDE = ROOT / "app" / "guide"
OF_THE_GUIDE = {
    "practice": "practice",
    "listen": "listen-markers",
    "import": "practice-clips",
    "compare": "compare",
    "calendar": "calendar",
    "lesson": "lesson",
}
GUIDE_WIDTH_PX, COLOURS = 960, 128
WIDTH_PX, HEIGHT_PX = 1280, 800
SCALES = (1, 2)
SCHEMES = ("light", "dark")


@contextmanager
def x_server(width: int, height: int) -> Iterator[str]:
    """Run a private X server and give its display."""
    read, write = os.pipe()
    screen = f"{width}x{height}x24"
    server = subprocess.Popen(
        ["Xvfb", "-displayfd", str(write), "-screen", "0", screen, "-nolisten", "tcp"],
        pass_fds=(write,),
        stderr=subprocess.DEVNULL,
    )
    os.close(write)
    try:
        with os.fdopen(read) as pipe:
            yield f":{pipe.readline().strip()}"
    finally:
        server.terminate()
        server.wait(10)


def take_all(
    folder: Path,
    journal: Path | None,
    only: str,
    scales: tuple[int, ...] = SCALES,
    language: str = "en",
) -> None:
    """Take the pictures at these scales."""
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as scratch:
        copy = Path(scratch) / "Practice journal"
        if journal is None:
            built = Path(scratch) / "demo"
            subprocess.run(
                [sys.executable, "-m", "app", "demo", "--folder", str(built), "--no-window"],
                cwd=ROOT,
                check=True,
            )
            journal = built / "journal"
        for scale in scales:
            shutil.rmtree(copy, ignore_errors=True)
            shutil.copytree(journal, copy)
            with x_server(WIDTH_PX * scale, HEIGHT_PX * scale) as display:
                environment = os.environ | {
                    "DISPLAY": display,
                    "QT_QPA_PLATFORM": "xcb",
                    "QT_SCALE_FACTOR": str(scale),
                    "PYTHONPATH": str(ROOT),
                    "LANGUAGE": language,
                }
                if language != "en":  # its numbers too
                    environment["LANG"] = f"{language}_{language.upper()}.UTF-8"
                command = [sys.executable, str(Path(__file__).resolve()), str(folder)]
                command += ["--journal", str(copy), "--inside", "--only", only]
                subprocess.run(command, env=environment, cwd=ROOT, check=True)


class Photographer:
    """Opens the window and takes what the screen shows."""

    def __init__(self, folder: Path, journal: Path, only: str) -> None:
        from app.ui.application import Window, application_object
        from app.wiring import open_workbench

        self.folder, self.journal = folder, journal
        self._only = tuple(name for name in only.split(",") if name)
        self._application = application_object()
        self._scale = os.environ.get("QT_SCALE_FACTOR", "1")
        self.bench = open_workbench(journal)
        self.window = Window(self.bench, preferences_file=journal / "window.ini")
        self.main = self.window.main
        self.main.setGeometry(0, 0, WIDTH_PX, HEIGHT_PX)
        self.main.show()
        self.takes = self.bench.filing.takes()
        self.scheme = SCHEMES[0]

    def wait(self, seconds: float = 0.4, *, long: bool = False) -> None:
        """Let everything arrive and be painted; what takes `long` goes on meanwhile."""
        if not long:
            self.window.jobs.wait_until_idle(60)
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            self._application.processEvents()
            time.sleep(0.01)

    def wants(self, beginning: str) -> bool:
        """Say whether any picture is wanted whose name begins so."""
        asked = [name.lstrip("=") for name in self._only]
        return not asked or any(
            name.startswith(beginning) or beginning.startswith(name) for name in asked
        )

    def take(
        self,
        name: str,
        prepare: Callable[[], object],
        afterwards: Callable[[], object] | None = None,
        *,
        long: bool = False,
    ) -> None:
        """Bring a state about, photograph the screen, and undo it, where it is wanted at all."""
        exact = f"={name}" in self._only
        if self._only and not exact and not name.startswith(self._only):
            return
        prepare()
        self.wait(1.0 if long else 0.4, long=long)
        picture = self._application.primaryScreen().grabWindow(0)
        percent = "" if self._scale == "1" else "-200"
        picture.save(str(self.folder / f"{name}-{self.scheme}{percent}.png"))
        if afterwards is not None:
            afterwards()
            self.wait(0.0)

    @property
    def most_suggested(self) -> str:
        """The take of which most is suggested."""
        suggesting = self.bench.suggesting
        return max(
            (take.id for take in self.takes[:12]),
            key=lambda take_id: len(suggesting.for_take(take_id, show_all=True).rows),
        )

    @property
    def filmed(self) -> str:
        """A filmed take; made where there is none."""
        for row in self.bench.filing.takes():
            if row.file.suffix == ".mp4":
                return row.id
        sys.path.insert(0, str(ROOT / "tests"))
        import numbered_film

        with tempfile.TemporaryDirectory() as scratch:
            clip = numbered_film.write_film(Path(scratch) / "filmed.mp4", 10.0)
            importing = self.bench.importing
            filed = importing.file(importing.propose([clip]))
        self.main.desk.takesChanged.emit()
        self.wait()
        return filed[0].id

    def close(self) -> None:
        """Close window and journal."""
        self.window.close()
        self.bench.close()


def _phone_clips(folder: Path) -> list[Path]:
    """Write clips as a phone does: compressed, with the moment inside."""
    import av
    import soundfile

    clips = []
    takes = ROOT / "sample_audio" / "takes"
    for at, name in enumerate(("first-day", "last-day", "last-day")):
        samples, rate = soundfile.read(takes / f"viola-study-{name}.flac", dtype="float32")
        samples = samples[: len(samples) - at * rate // 2]
        clip = folder / f"clip-{at + 1}.m4a"
        with av.open(str(clip), "w", format="mp4") as container:
            container.metadata["creation_time"] = f"2026-11-{20 + at}T18:4{at}:00.000000Z"
            stream = container.add_stream("aac", rate=rate)
            for first in range(0, len(samples), 1024):
                part = samples[None, first : first + 1024]
                frame = av.AudioFrame.from_ndarray(part.copy(), "fltp", "mono")
                frame.sample_rate = rate
                container.mux(stream.encode(frame))
            container.mux(stream.encode(None))
        clips.append(clip)
    return clips


def take_for_the_guide(journal: Path | None, language: str, only: str) -> None:
    """Take the guide's pictures, or some of them, with a sound device, small enough to ship."""
    sys.path.insert(0, str(ROOT / "tests"))
    from virtual_room import VirtualRoom

    shelf = (GUIDE if language == "en" else GUIDE / language) / "pictures"
    shelf.mkdir(exist_ok=True)
    wanted = {
        name: shot for name, shot in OF_THE_GUIDE.items() if not only or name in only.split(",")
    }
    with tempfile.TemporaryDirectory() as scratch, VirtualRoom():
        # The names must match as a whole: 'practice' alone would be all of that page.
        names = ",".join(f"={shot}" for shot in wanted.values())
        take_all(Path(scratch), journal, names, (1,), language)
        for name, shot in wanted.items():
            _save_small(Path(scratch) / f"{shot}-light.png", shelf / f"{name}.png", GUIDE_WIDTH_PX)


def _save_small(taken: Path, kept: Path, width_px: int | None = None) -> None:
    """Keep a picture with few colours, reduced to a width where one is given."""
    from PIL import Image

    picture = Image.open(taken).convert("RGB")
    if width_px is not None:
        height_px = round(width_px * picture.height / picture.width)
        picture = picture.resize((width_px, height_px), Image.Resampling.LANCZOS)
    picture.quantize(COLOURS).save(kept, optimize=True)


def _practise(journal: Path) -> None:
    """Bring about what a day of practice leaves: a clock, a plan, a promise, set work."""
    from app.journal.kinds import ItemKind
    from app.journal.promises import PromiseRule, Stretch
    from app.wiring import open_workbench

    with open_workbench(journal) as bench:
        if bench.planning.today() is not None:
            return
        today = bench.practising.practice_day_now()
        rule = PromiseRule(today - timedelta(days=44), Stretch.IN_TOTAL, 60, rest_days=6)
        bench.promises.make("Sixty days of the study", rule)
        scale = bench.items.add(ItemKind.SCALE, "G minor in three octaves")
        bench.items.add(ItemKind.ENSEMBLE, "Quartet, second movement")
        passage = bench.passages.list()[0]
        due = today + timedelta(days=4)
        bench.assignments.add(due, "At 84, shift prepared", minutes=60, passage_id=passage.id)
        bench.planning.make(45)
        bench.no_retake.switch(passage.id, True)
        bench.clock.start(scale.id)


def _by_ear_and_eye(shots: Photographer) -> None:
    """Suggestions, the first listen and a filmed take."""
    main, listen = shots.main, shots.main.listen

    def press(*names: str) -> None:
        for name in names:
            main.desk.keys.action(f"listen.{name}").trigger()
            shots.wait()

    def open_take(take_id: str, position_s: float) -> None:
        main.listen_to(take_id)
        shots.wait()
        listen.transport.seek(position_s)

    take_id = shots.most_suggested
    open_take(take_id, 0.0)
    shots.take("listen-suggested", lambda: press("next_suggestion"))
    press("ear_first")
    shots.take("listen-ear-first", lambda: press("notes"))
    open_take(take_id, 9.4)
    shots.take("listen-ear-marked", lambda: press("mark_1"))
    shots.take("listen-ear-shown", lambda: press("show_measured"))
    press("ear_first")
    open_take(shots.filmed, 3.3)
    shots.take("listen-picture", lambda: press("notes"))
    shots.take("listen-picture-large", lambda: press("picture_larger"))
    press("picture_larger")
    open_take(take_id, 0.0)


def _practice(shots: Photographer) -> None:
    main, practice = shots.main, shots.main.practice
    main.show_page(0)
    shots.wait()
    shots.take("practice", practice.show_today)
    shots.take(
        "practice-large",
        lambda: practice.show_large(large=True),
        lambda: practice.show_large(large=False),
    )
    shots.take("practice-click", practice.choose_guides)
    shots.take("practice-items", practice.change_items)
    shots.take("practice-set", practice.show_assignments)
    shots.take("practice-passage", practice.new_passage)
    shots.take("practice-rehearsal", practice.show_rehearsal)
    recording = next(shots.journal.glob("2*/*/*.flac"))
    shots.take("practice-import", lambda: main.import_files([recording, Path(__file__)]))
    practice.show_today()
    if shots.wants("practice-clips"):
        with tempfile.TemporaryDirectory() as phone:
            clips = _phone_clips(Path(phone))
            shots.take("practice-clips", lambda: main.import_files(clips))
            practice.show_today()


def _listen(shots: Photographer) -> None:
    main, listen = shots.main, shots.main.listen
    marked = max(shots.takes, key=lambda take: take.marker_count)
    main.listen_to(marked.id)
    shots.wait()
    listen.transport.seek(9.0)
    for pane, name in enumerate(("notes", "markers", "numbers", "take")):
        shots.take(f"listen-{name}", lambda at=pane: listen.side.show_pane(at))
    lanes, layout = listen.lanes, listen.lanes.layout_of_lanes
    shots.take("listen-near", lambda: lanes.show_range(6.0, 11.0), lanes.show_all)
    shots.take("listen-along", listen.along.toggle, listen.along.toggle)
    shots.take("listen-filter", listen.marking.toggle_filter, listen.marking.toggle_filter)
    shots.take("listen-lanes", lambda: (layout.hide(0, hidden=True), layout.resize(1, 2)))
    layout.reset()
    shots.take("listen-categories", main.sheets.show_categories, main.sheets.hide)
    _reading(shots, next(take.id for take in shots.takes if take.id != marked.id))
    if any(shots.wants(f"listen-{part}") for part in ("suggested", "ear", "picture")):
        _by_ear_and_eye(shots)


def _reading(shots: Photographer, take_id: str) -> None:
    """A take whose sound takes long to be read, as that of an hour does."""
    from app.services.stopping import Progress, ShouldStop, stop_if

    listen, listening = shots.main.listen, shots.bench.listening
    prepare = listening.prepare

    def slowly(_take_id: str, progress: Progress, should_stop: ShouldStop) -> None:
        while True:
            stop_if(should_stop)
            progress(0.4)
            time.sleep(0.05)

    listening.prepare = slowly
    shots.take(
        "listen-reading", lambda: listen.show_take(take_id), listen._columns.cancel, long=True
    )
    listening.prepare = prepare


def _compare(shots: Photographer) -> None:
    main, compare = shots.main, shots.main.compare
    main.show_page(2)
    shots.wait()
    shots.take("compare", lambda: None)
    layout = main.desk.keys.action("compare.layout").trigger
    shots.take("compare-stacked", layout, layout)
    for pane, name in enumerate(("change", "note-pairs", "days", "carried", "tempo")):
        shots.take(f"compare-{name}", lambda at=pane: compare.sections.show_pane(at))
    compare.sections.show_pane(2)
    scope = main.desk.keys.action("compare.scope").trigger
    shots.take("compare-bars", scope, lambda: (scope(), scope()))
    compare.sections.show_pane(0)
    for name in ("note-map", "before-after"):
        compare.pictures.next_picture()
        shots.take(f"compare-{name}", lambda: None)
    compare.pictures.next_picture()
    shots.take("compare-blind", compare.toggle_blind)
    if compare.is_blind:
        compare.toggle_blind()


def _calendar(shots: Photographer) -> None:
    main, calendar = shots.main, shots.main.calendar
    main.show_page(3)
    shots.wait()
    shots.take("calendar", lambda: None)
    for name, toggle in (
        ("promises", calendar.toggle_promises),
        ("record", calendar.show_record),
        ("kinds", calendar.show_names),
        ("import", calendar.show_import),
    ):
        shots.take(f"calendar-{name}", toggle, toggle)


def _lesson(shots: Photographer) -> None:
    """The week for the teacher, its three panes, the page once it is written, and the sheets."""
    main, lesson = shots.main, shots.main.lesson
    main.show_page(4)
    shots.wait()
    shots.take("lesson", lambda: lesson.side.show_pane(0))
    for pane, name in ((1, "bundles"), (2, "shared")):
        shots.take(f"lesson-{name}", lambda at=pane: lesson.side.show_pane(at))
    lesson.side.show_pane(0)
    page = shots.folder / "lesson.html"
    shots.take("lesson-written", lambda: lesson.write_page(page))
    page.unlink(missing_ok=True)
    shots.take("lesson-share", lesson.share, main.sheets.hide)
    days = lesson.span
    shots.take("lesson-export", lambda: main.desk.exportWanted.emit("", *days), main.sheets.hide)


def _sheets(shots: Photographer) -> None:
    sheets = shots.main.sheets
    for name, show in (
        ("help", sheets.show_help),
        ("guide", sheets.show_guide),
        ("keys", sheets.show_keys),
        ("settings", sheets.show_settings),
        ("backups", sheets.show_backups),
    ):
        shots.take(name, show, sheets.hide)
    shots.take("fault", lambda: shots.window.show_bug(ValueError("An invented fault.")))
    for dialog in tuple(shots.window.bug_dialogs):
        dialog.close()


WALKS = {
    "practice": _practice,
    "listen": _listen,
    "compare": _compare,
    "calendar": _calendar,
    "lesson": _lesson,
    **dict.fromkeys(("help", "guide", "keys", "settings", "backups", "fault"), _sheets),
}
"""What takes the pictures whose names begin so."""


def photograph(folder: Path, journal: Path, only: str) -> None:
    """Take every wanted state of every page, light and dark."""
    from app.ui.theme import Scheme

    _practise(journal)
    shots = Photographer(folder, journal, only)
    wanted = dict.fromkeys(walk for name, walk in WALKS.items() if shots.wants(name))
    bundle = folder / "week.pwbundle"
    if shots.wants("visit"):
        days = [take.practice_day for take in shots.takes]
        shots.bench.bundles.write(max(days) - timedelta(days=6), max(days), bundle)
    for scheme in SCHEMES if wanted else ():
        shots.scheme = scheme
        shots.window.theme.choose(Scheme(scheme))
        for walk in wanted:
            walk(shots)
    shots.close()
    if shots.wants("visit"):
        _visit(folder, bundle, only)
    if shots.wants("empty"):
        _empty(folder, journal.with_name("New journal"), only)


def _visit(folder: Path, bundle: Path, only: str) -> None:
    """What a teacher sees who opens a bundle."""
    from app.services.bundling.visiting import open_visit
    from app.services.stopping import never_stop, no_progress
    from app.ui.theme import Scheme
    from app.wiring import local_now

    with tempfile.TemporaryDirectory() as visits:
        visited = open_visit(bundle, Path(visits), local_now, no_progress, never_stop)
        bundle.unlink()
        shots = Photographer(folder, visited, only)
        for scheme in SCHEMES:
            shots.scheme = scheme
            shots.window.theme.choose(Scheme(scheme))
            shots.take("visit", lambda: shots.main.show_page(4))
            shots.take("visit-practice", lambda: shots.main.show_page(0))
            shots.take("visit-listen", lambda: shots.main.show_page(1))
        shots.close()


def _empty(folder: Path, journal: Path, only: str) -> None:
    """What the pages say of a journal with nothing in it."""
    empty = Photographer(folder, journal, only)
    for at, name in enumerate(("practice", "listen", "compare", "calendar", "lesson")):
        empty.take(f"empty-{name}", lambda page=at: empty.main.show_page(page))
    empty.close()
    shutil.rmtree(journal)


def main() -> None:
    """Read the command line."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path, nargs="?", help="where the pictures go")
    parser.add_argument("--readme", action="store_true", help="only the README's picture")
    parser.add_argument("--guide", action="store_true", help="only the guide's pictures")
    parser.add_argument("--journal", type=Path)
    parser.add_argument("--only", default="", help="what names begin with; =NAME: that one alone")
    parser.add_argument("--language", default="en", help="of the window, such as de")
    parser.add_argument("--inside", action="store_true", help=argparse.SUPPRESS)
    given = parser.parse_args()
    if given.folder is None and not (given.readme or given.guide):
        parser.error("say FOLDER, --readme or --guide")
    if given.readme:
        with tempfile.TemporaryDirectory() as scratch:
            take_all(Path(scratch), given.journal, "=listen-markers", (1,))
            PICTURES.mkdir(exist_ok=True)
            _save_small(Path(scratch) / "listen-markers-light.png", PICTURES / "listen.png")
    elif given.guide:
        take_for_the_guide(given.journal, given.language, given.only)
    elif given.inside:
        photograph(given.folder.resolve(), given.journal, given.only)
    else:
        take_all(given.folder, given.journal, given.only, language=given.language)


if __name__ == "__main__":
    main()
