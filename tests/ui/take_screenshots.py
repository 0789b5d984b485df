"""Takes a picture of every page in a real window, for the eye and for the README.

    python tests/ui/take_screenshots.py FOLDER [--journal DIR] [--only practice,listen]
        [--language de]
    python tests/ui/take_screenshots.py --readme | --guide

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
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PICTURES = Path(__file__).with_name("pictures")
GUIDE = ROOT / "app" / "guide" / "pictures"
OF_THE_GUIDE = {
    "practice": "practice",
    "listen": "listen-markers",
    "import": "practice-clips",
    "compare": "compare",
    "calendar": "calendar",
    "lesson": "lesson",
}
GUIDE_WIDTH_PX, GUIDE_COLOURS = 960, 128
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
                command = [sys.executable, str(Path(__file__).resolve()), str(folder)]
                command += ["--journal", str(copy), "--inside", "--only", only]
                subprocess.run(command, env=environment, cwd=ROOT, check=True)


class Photographer:
    """Opens the window and takes what the screen shows."""

    def __init__(self, folder: Path, journal: Path, only: str) -> None:
        from app.ui.application import Window, application_object
        from app.ui.widgets.rail import PAGES
        from app.wiring import open_workbench

        self._folder = folder
        self._only = tuple(name for name in only.split(",") if name)
        self._application = application_object()
        self._scale = os.environ.get("QT_SCALE_FACTOR", "1")
        self._bench = open_workbench(journal)
        self.window = Window(self._bench, preferences_file=journal / "window.ini")
        self.main = self.window.main
        self.main.setGeometry(0, 0, WIDTH_PX, HEIGHT_PX)
        self.main.show()
        for page in range(len(PAGES)):
            self.main.pages.page(page)  # its actions are there, whatever is asked for
        self.takes = self._bench.filing.takes()
        self.scheme = SCHEMES[0]

    def wait(self, seconds: float = 0.4) -> None:
        """Let everything arrive and be painted."""
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

    def take(self, name: str, prepare: Callable[[], object]) -> None:
        """Bring a state about and photograph the screen."""
        exact = f"={name}" in self._only
        if self._only and not exact and not name.startswith(self._only):
            return
        prepare()
        self.wait()
        picture = self._application.primaryScreen().grabWindow(0)
        percent = "" if self._scale == "1" else "-200"
        picture.save(str(self._folder / f"{name}-{self.scheme}{percent}.png"))

    @property
    def most_suggested(self) -> str:
        """The take of which most is suggested."""
        suggesting = self._bench.suggesting
        return max(
            (take.id for take in self.takes[:12]),
            key=lambda take_id: len(suggesting.for_take(take_id, show_all=True).rows),
        )

    @property
    def filmed(self) -> str:
        """A filmed take; made where there is none."""
        for row in self._bench.filing.takes():
            if row.file.suffix == ".mp4":
                return row.id
        sys.path.insert(0, str(ROOT / "tests"))
        import numbered_film

        with tempfile.TemporaryDirectory() as scratch:
            clip = numbered_film.write_film(Path(scratch) / "filmed.mp4", 10.0)
            importing = self._bench.importing
            filed = importing.file(importing.propose([clip]))
        self.main.desk.takesChanged.emit()
        self.wait()
        return filed[0].id

    def close(self) -> None:
        """Close window and journal."""
        self.window.close()
        self._bench.close()


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


def take_for_the_guide(journal: Path | None) -> None:
    """Take the guide's pictures, with a sound device, small enough to be shipped."""
    from PIL import Image

    sys.path.insert(0, str(ROOT / "tests"))
    from virtual_room import VirtualRoom

    GUIDE.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory() as scratch, VirtualRoom():
        # The names must match as a whole: 'practice' alone would be all of that page.
        take_all(Path(scratch), journal, ",".join(f"={n}" for n in OF_THE_GUIDE.values()), (1,))
        for name, shot in OF_THE_GUIDE.items():
            picture = Image.open(Path(scratch) / f"{shot}-light.png").convert("RGB")
            height = round(GUIDE_WIDTH_PX * picture.height / picture.width)
            picture = picture.resize((GUIDE_WIDTH_PX, height), Image.Resampling.LANCZOS)
            picture.quantize(GUIDE_COLOURS).save(GUIDE / f"{name}.png", optimize=True)


def _practise(journal: Path) -> None:
    """Bring about what a day of practice leaves: a clock, a plan, a promise, set work."""
    from datetime import timedelta

    from app.journal.blocks import ItemKind
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


def _lesson(shots: Photographer, folder: Path) -> None:
    """The week for the teacher, its three panes, the page once it is written, and the sheets."""
    main = shots.main
    main.show_page(4)
    lesson = main.lesson
    shots.take("lesson", lambda: lesson.side.show_pane(0))
    for pane, name in ((1, "bundles"), (2, "shared")):
        shots.take(f"lesson-{name}", lambda at=pane: lesson.side.show_pane(at))
    lesson.side.show_pane(0)
    page = folder / "lesson.html"
    shots.take("lesson-written", lambda: lesson.write_page(page))
    page.unlink(missing_ok=True)
    shots.take("lesson-share", lesson.share)
    main.sheets.hide()
    days = lesson.span
    shots.take("lesson-export", lambda: main.desk.exportWanted.emit("", *days))
    main.sheets.hide()


def photograph(folder: Path, journal: Path, only: str) -> None:
    """Take every state of every page, light and dark."""
    from app.ui.theme import Scheme

    recording = next(journal.glob("2*/*/*.flac"))
    _practise(journal)
    shots = Photographer(folder, journal, only)
    main, listen = shots.main, shots.main.listen
    for scheme in SCHEMES:
        shots.scheme = scheme
        shots.window.theme.choose(Scheme(scheme))
        main.show_page(0)
        shots.take("practice", main.practice.show_today)
        shots.take("practice-large", lambda: main.practice.show_large(large=True))
        main.practice.show_large(large=False)
        shots.take("practice-click", main.practice.choose_guides)
        shots.take("practice-items", main.practice.change_items)
        shots.take("practice-set", main.practice.show_assignments)
        shots.take("practice-passage", main.practice.new_passage)
        shots.take("practice-rehearsal", main.practice.show_rehearsal)
        shots.take("practice-import", lambda: main.import_files([recording, Path(__file__)]))
        main.practice.show_today()
        if shots.wants("practice-clips"):
            with tempfile.TemporaryDirectory() as phone:
                clips = _phone_clips(Path(phone))
                shots.take("practice-clips", lambda found=clips: main.import_files(found))
                main.practice.show_today()
        marked = max(shots.takes, key=lambda take: take.marker_count)
        main.listen_to(marked.id)
        shots.wait()
        listen.transport.seek(9.0)
        for pane, name in enumerate(("notes", "markers", "numbers", "take")):
            shots.take(f"listen-{name}", lambda at=pane: listen.side.show_pane(at))
        shots.take("listen-near", lambda: listen.lanes.show_range(6.0, 11.0))
        listen.lanes.show_all()
        shots.take("listen-along", listen.along.toggle)
        listen.along.toggle()
        shots.take("listen-filter", listen.marking.toggle_filter)
        listen.marking.toggle_filter()
        layout = listen.lanes.layout_of_lanes
        shots.take("listen-lanes", lambda of=layout: (of.hide(0, hidden=True), of.resize(1, 2)))
        layout.reset()
        shots.take("listen-categories", main.sheets.show_categories)
        main.sheets.hide()
        if any(shots.wants(f"listen-{part}") for part in ("suggested", "ear", "picture")):
            _by_ear_and_eye(shots)
        main.show_page(2)
        shots.take("compare", lambda: None)
        shots.take("compare-stacked", lambda: main.desk.keys.action("compare.layout").trigger())
        main.desk.keys.action("compare.layout").trigger()
        for pane, name in enumerate(("change", "note-pairs", "days", "carried", "tempo")):
            shots.take(f"compare-{name}", lambda at=pane: main.compare.sections.show_pane(at))
        main.compare.sections.show_pane(0)
        for name in ("note-map", "before-after"):
            shots.take(f"compare-{name}", main.compare.pictures.next_picture)
        main.compare.pictures.next_picture()
        shots.take("compare-blind", main.compare.toggle_blind)
        if main.compare.is_blind:
            main.compare.toggle_blind()
        shots.take("calendar", lambda: main.show_page(3))
        shots.take("calendar-promises", main.calendar.toggle_promises)
        main.calendar.toggle_promises()
        shots.take("calendar-record", main.calendar.show_record)
        main.calendar.show_record()
        shots.take("calendar-kinds", main.calendar.show_names)
        main.calendar.show_names()
        shots.take("calendar-import", main.calendar.show_import)
        main.calendar.show_import()
        _lesson(shots, folder)
        sheets = main.sheets
        for name, show in (
            ("help", sheets.show_help),
            ("guide", sheets.show_guide),
            ("keys", sheets.show_keys),
            ("settings", sheets.show_settings),
            ("backups", sheets.show_backups),
        ):
            shots.take(name, show)
            sheets.hide()
        shots.take("fault", lambda: shots.window.show_bug(ValueError("An invented fault.")))
        for dialog in tuple(shots.window.bug_dialogs):
            dialog.close()
    shots.close()
    empty = Photographer(folder, journal.with_name("New journal"), only)
    for at, name in enumerate(("practice", "listen", "compare", "calendar", "lesson")):
        empty.take(f"empty-{name}", lambda page=at: empty.main.show_page(page))
    empty.close()
    shutil.rmtree(journal.with_name("New journal"))


def main() -> None:
    """Read the command line."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path, nargs="?", default=Path("pictures"))
    parser.add_argument("--readme", action="store_true", help="only the README's picture")
    parser.add_argument("--guide", action="store_true", help="only the guide's pictures")
    parser.add_argument("--journal", type=Path)
    parser.add_argument("--only", default="", help="names the pictures must begin with")
    parser.add_argument("--language", default="en", help="of the window, such as de")
    parser.add_argument("--inside", action="store_true", help=argparse.SUPPRESS)
    given = parser.parse_args()
    if given.readme:
        with tempfile.TemporaryDirectory() as scratch:
            take_all(Path(scratch), given.journal, "listen-markers")
            PICTURES.mkdir(exist_ok=True)
            shutil.copy(Path(scratch) / "listen-markers-light.png", PICTURES / "listen.png")
    elif given.guide:
        take_for_the_guide(given.journal)
    elif given.inside:
        photograph(given.folder.resolve(), given.journal, given.only)
    else:
        take_all(given.folder, given.journal, given.only, language=given.language)


if __name__ == "__main__":
    main()
