"""Takes, days and the whole journal written as files that other programs read."""

import json
import shutil
import uuid
from dataclasses import asdict
from datetime import date
from enum import StrEnum
from pathlib import Path
from typing import Any

from app.journal.failures import PlainFailure
from app.journal.naming import slug
from app.journal.practice_days import Clock
from app.journal.records import Marker, Take
from app.services.exporting.calendar_file import calendar_bytes
from app.services.exporting.jams_file import jams_object
from app.services.exporting.midi_file import midi_bytes
from app.services.exporting.tables import csv_text, markers_csv, notes_csv
from app.services.measuring import MeasuringService
from app.services.new_files import write_new
from app.services.plain import plain_failures
from app.services.practising import PractisingService
from app.services.records_there import take_there
from app.services.stopping import (
    Progress,
    ShouldStop,
    Stopped,
    never_stop,
    no_progress,
    stop_if,
)
from app.services.views import DayBar
from app.store.store import Store

_NOT_WRITTEN = "nothing was exported"


class TakeFormat(StrEnum):
    """What a take can be exported as."""

    JAMS = "jams"
    NOTES_CSV = "notes-csv"
    MARKERS_CSV = "markers-csv"
    MIDI = "midi"
    WAV = "wav"
    FLAC = "flac"


class DaysFormat(StrEnum):
    """What the practice days can be exported as."""

    CSV = "csv"
    ICALENDAR = "icalendar"


SUFFIXES = {
    TakeFormat.JAMS: ".jams",
    TakeFormat.NOTES_CSV: "-notes.csv",
    TakeFormat.MARKERS_CSV: "-markers.csv",
    TakeFormat.MIDI: ".mid",
    TakeFormat.WAV: ".wav",
    TakeFormat.FLAC: ".flac",
    DaysFormat.CSV: ".csv",
    DaysFormat.ICALENDAR: ".ics",
}


class ExportService:
    """Writes copies outside the journal; never over a file that is there."""

    def __init__(
        self,
        store: Store,
        clock: Clock,
        measuring: MeasuringService,
        practising: PractisingService,
    ) -> None:
        self._store = store
        self._clock = clock
        self._measuring = measuring
        self._practising = practising

    def file_name(self, take_id: str, kind: TakeFormat) -> str:
        """Propose a file name: day, passage, number."""
        take = take_there(self._store, take_id)
        stem = f"{take.practice_day}-{slug(self._title(take))}-take-{take.number}"
        return stem + SUFFIXES[kind]

    def take(
        self,
        take_id: str,
        kind: TakeFormat,
        target: Path,
        should_stop: ShouldStop = never_stop,
    ) -> Path:
        """Write a take, or what is known of it.

        Parameters
        ----------
        take_id : str
        kind : TakeFormat
            ``wav`` and ``flac`` copy the sound and carry the markers as cue points and
            chapters.
        target : Path
            The file, or a folder to write it in under its proposed name.
        should_stop : callable

        Returns
        -------
        Path
            The file.

        Raises
        ------
        PlainFailure
            Where the take is not measured and the format needs it, the file exists,
            or the disk refuses.
        Stopped
            Once `should_stop` says so; nothing is left then.
        """
        take = take_there(self._store, take_id)
        path = target / self.file_name(take_id, kind) if target.is_dir() else target
        markers = self._store.markers.for_take(take_id)
        if kind in {TakeFormat.WAV, TakeFormat.FLAC}:
            self._copy_sound(take, kind, path, markers, should_stop)
        else:
            write_new(path, self._content(take, kind, markers), _NOT_WRITTEN)
        return path

    def days(self, kind: DaysFormat, first_day: date, last_day: date, target: Path) -> Path:
        """Write the practice days from one day to another, both included."""
        if last_day < first_day:
            raise PlainFailure("The last day lies before the first.", "Swap the two dates.")
        bars = [
            bar
            for year in range(first_day.year, last_day.year + 1)
            for bar in self._practising.year(year)
            if first_day <= bar.practice_day <= last_day
        ]
        name = f"practice-{first_day}-{last_day}{SUFFIXES[kind]}"
        path = target / name if target.is_dir() else target
        if kind is DaysFormat.ICALENDAR:
            write_new(path, calendar_bytes(bars, self._clock()), _NOT_WRITTEN)
        else:
            write_new(path, _days_csv(bars).encode(), _NOT_WRITTEN)
        return path

    def everything(
        self,
        folder: Path,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> Path:
        """Write all the journal knows into a new folder.

        Every table as CSV, what was measured on each take as JSON, and copies of the
        recordings in their dated folders with the sidecars beside them.

        Raises
        ------
        PlainFailure
            Where the folder exists and holds something, or the disk refuses.
        Stopped
            Once `should_stop` says so; nothing is left then.
        """
        if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
            raise PlainFailure(f"{folder} is not empty.", "Choose a new folder.")
        building = folder.with_name(f".{folder.name}-{uuid.uuid4().hex[:8]}.part")
        try:
            with plain_failures(_NOT_WRITTEN):
                building.mkdir(parents=True)
                self._write_tables(building / "tables")
                takes = self._store.takes.list(include_deleted=True)
                for done, take in enumerate(takes):
                    stop_if(should_stop)
                    self._write_measured(building / "measured", take)
                    self._copy_files(building / "recordings", take)
                    progress((done + 1) / len(takes))
                if folder.exists():
                    folder.rmdir()
                building.rename(folder)
        finally:
            shutil.rmtree(building, ignore_errors=True)
        return folder

    def _content(self, take: Take, kind: TakeFormat, markers: tuple[Marker, ...]) -> bytes:
        title = self._title(take)
        if kind is TakeFormat.MARKERS_CSV:
            return markers_csv(markers).encode()
        if kind is TakeFormat.JAMS:
            found = jams_object(take, title, self._measured(take, optional=True), markers)
            return json.dumps(found, ensure_ascii=False, allow_nan=False, indent=1).encode()
        notes = self._measured(take)["notes"]
        if kind is TakeFormat.MIDI:
            return midi_bytes(f"{title}, {take.practice_day}", notes)
        return notes_csv(notes).encode()

    def _measured(self, take: Take, *, optional: bool = False) -> dict[str, Any]:
        try:
            return self._measuring.report(take.id).as_json(curves=True)
        except PlainFailure:
            if optional:
                return {}
            raise

    def _copy_sound(
        self,
        take: Take,
        kind: TakeFormat,
        path: Path,
        markers: tuple[Marker, ...],
        should_stop: ShouldStop,
    ) -> None:
        from audio.encoding import EncodingStopped  # noqa: PLC0415 - libsndfile when needed
        from audio.marked_copies import (  # noqa: PLC0415
            Mark,
            write_flac_with_chapters,
            write_wave_with_cues,
        )

        write = write_wave_with_cues if kind is TakeFormat.WAV else write_flac_with_chapters
        marks = [Mark(m.start_s, m.end_s, _mark_name(m)) for m in markers]
        source = self._store.folders.absolute(take.file)
        with plain_failures(_NOT_WRITTEN):
            try:
                write(source, path, marks, should_stop=should_stop)
            except EncodingStopped as stopped:
                raise Stopped from stopped

    def _write_tables(self, folder: Path) -> None:
        folder.mkdir()
        for table in self._store.tables.read():
            text = csv_text(table.columns, table.rows)
            (folder / f"{table.name}.csv").write_text(text, encoding="utf-8", newline="")

    def _write_measured(self, folder: Path, take: Take) -> None:
        summary = self._store.measurements.summaries((take.id,)).get(take.id)
        if not summary:
            return
        path = (folder / take.file).with_suffix(".json")
        path.parent.mkdir(parents=True, exist_ok=True)
        text = json.dumps(summary, ensure_ascii=False, allow_nan=False, indent=1)
        path.write_text(text + "\n", encoding="utf-8")

    def _copy_files(self, folder: Path, take: Take) -> None:
        """Copy a recording and what lies beside it; one that is missing is no failure."""
        source = self._store.folders.absolute(take.file)
        target = folder / take.file
        target.parent.mkdir(parents=True, exist_ok=True)
        for path in (source, self._store.folders.sidecar(take.file)):
            if path.is_file():
                shutil.copy2(path, target.parent / path.name)

    def _title(self, take: Take) -> str:
        passage = self._store.passages.get(take.passage_id)
        return f"{passage.piece}: {passage.name}" if passage else "no passage"


def _mark_name(marker: Marker) -> str:
    return f"{marker.category}: {marker.text}" if marker.text else marker.category


def _days_csv(bars: list[DayBar]) -> str:
    columns = ("practice_day", "minutes", "take_count", "rest", "missed", "late")
    return csv_text(columns, ([asdict(bar)[column] for column in columns] for bar in bars))
