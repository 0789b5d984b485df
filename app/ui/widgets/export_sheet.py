"""Saving in open formats, beside the window: a take, some days, or everything."""

from datetime import date
from pathlib import Path
from typing import Any

from PySide6.QtWidgets import QFileDialog, QWidget

from app.jobs import Progress, ShouldStop
from app.services.exporting.service import DaysFormat, TakeFormat
from app.services.exporting.several import write_takes
from app.ui.desk import Desk
from app.ui.language import mark, tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, column, fill, labelled, row, soft
from app.ui.widgets.choices import Choice
from app.ui.widgets.file_asking import ask_folder
from app.ui.widgets.focus_order import OrderedDialog
from app.ui.widgets.job_strip import JobStrip
from app.ui.words import day_text

_TAKE, _TAKES, _DAYS, _EVERYTHING = "take", "takes", "days", "everything"
_TAKE_FORMATS = (
    (TakeFormat.JAMS, mark("Notes, pitch, beats and markers (JAMS)")),
    (TakeFormat.NOTES_CSV, mark("Table of the notes (CSV)")),
    (TakeFormat.MARKERS_CSV, mark("Table of the markers (CSV)")),
    (TakeFormat.MIDI, mark("Notes as MIDI")),
    (TakeFormat.WAV, mark("Sound with markers as cue points (WAV)")),
    (TakeFormat.FLAC, mark("Sound with markers as chapters (FLAC)")),
)
_DAY_FORMATS = (
    (DaysFormat.CSV, mark("Table of the days (CSV)")),
    (DaysFormat.ICALENDAR, mark("Calendar (iCalendar)")),
)
_ALL = "tables"


class ExportSheet(OrderedDialog):
    """Asks what, as what and where; never modal."""

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Save in open formats"))
        self.setModal(False)
        self._desk = desk
        self._take_id = ""
        self._span: tuple[date, date] | None = None
        self.asking: QFileDialog | None = None
        self.what: Choice[str] = Choice(tr("What"))
        self.form: Choice[Any] = Choice(tr("Format"))
        self.words = soft(tr("Copies for other programs; the journal stays as it is."))
        self.write_button = Button(tr("Choose the folder and write"), "folder", primary=True)
        self.job = JobStrip(desk, "export")
        close = Button(tr("Close"), plain=True)
        self.what.picked.connect(lambda _: self._offer_formats())
        self.write_button.clicked.connect(self.choose_folder)
        close.clicked.connect(self.close)
        buttons = row()
        fill(buttons, self.write_button, 1, close)
        box = column(self, margin=2 * GRID_PX)
        fill(box, self.words, labelled(tr("What"), self.what))
        fill(box, labelled(tr("Format"), self.form), self.job, 1, buttons)
        self.resize(480, 280)

    def open_sheet(self, take_id: str, first: date | None, last: date | None) -> None:
        """Offer a take where one is named, else these days."""
        self._take_id = take_id
        self._span = (first, last) if first is not None and last is not None else None
        offered = [(_EVERYTHING, tr("Everything in the journal"))]
        if self._span is not None:
            days = f"{day_text(self._span[0])} \N{EN DASH} {day_text(self._span[1])}"
            offered.insert(0, (_DAYS, tr("The minutes of {days}").format(days=days)))
            offered.insert(0, (_TAKES, tr("All takes of {days}").format(days=days)))
        if take_id:
            offered.insert(0, (_TAKE, tr("This take")))
        self.what.offer(offered, offered[0][0])
        self._offer_formats()
        self.show()
        self.raise_()

    def choose_folder(self) -> None:
        """Ask where to write."""
        self.asking = ask_folder(self, tr("Folder for the files"), self.write)

    def write(self, folder: Path) -> None:
        """Write into a folder; everything goes into a new one inside it."""
        self.job.run(
            tr("Writing into {folder}").format(folder=folder.name),
            self._work(folder),
            lambda found: self.job.say(
                found if isinstance(found, str) else _written(found),
                found if isinstance(found, Path) else folder,
            ),
        )

    def _work(self, folder: Path) -> Any:
        bench, what = self._desk.workbench, self.what.key
        form: Any = self.form.key
        exports, take_id, span = bench.exports, self._take_id, self._span

        def work(progress: Progress, should_stop: ShouldStop) -> Path | str:
            if what == _EVERYTHING:
                target = folder / f"{bench.journal_dir.name} {bench.practising.practice_day_now()}"
                return exports.everything(target, progress, should_stop)
            if what == _TAKE:
                return exports.take(take_id, form, folder, should_stop)
            if span is None:
                return ""
            if what == _DAYS:
                return exports.days(form, *span, folder)
            ids = [t.id for t in bench.filing.takes(first_day=span[0], last_day=span[1])]
            found = write_takes(
                exports, ids, form, folder, progress=progress, should_stop=should_stop
            )
            return found.sentence

        return work

    def _offer_formats(self) -> None:
        what = self.what.key
        if what == _EVERYTHING:
            self.form.offer([(_ALL, tr("Tables, measurements, recordings"))])
        else:
            rows = _DAY_FORMATS if what == _DAYS else _TAKE_FORMATS
            self.form.offer([(kind, tr(words)) for kind, words in rows])
        self.form.setEnabled(what != _EVERYTHING)


def _written(path: Path) -> str:
    return tr("{name} was written.").format(name=path.name)
