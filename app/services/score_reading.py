"""Scores from MusicXML and MIDI files, as the journal's records.

Loads music21 and is slow for large scores: it is called in a worker process, see
:mod:`app.services.score_worker`. Only the importers of music21 are used, on bytes that
were read and checked here: nothing is fetched, launched or written.
"""

import warnings
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any, Final

from app.journal.failures import PlainFailure
from app.journal.scores import BarStart, Score, ScoreNote
from app.services.score_files import (
    damaged,
    is_midi,
    not_a_score,
    partwise_root,
    read_bytes,
    shortened,
)
from app.services.score_marks import Marks, marks_of, note_of
from app.services.score_repeats import playing_order

_MOST_MIDI_QUARTERS: Final = 20_000.0
_MOST_MIDI_EVENTS: Final = 400_000
_USUAL_BEAT: Final = 1.0


def read_parts(path: Path) -> tuple[Score, ...]:
    """Read every part of a score file that has notes.

    Parameters
    ----------
    path : Path
        MusicXML, compressed MusicXML or MIDI.

    Returns
    -------
    tuple of Score
        One for each part, in the order of the score; at least one.

    Raises
    ------
    PlainFailure
        Where the file is no score, is damaged, or holds no pitched notes.
    """
    name = path.name
    data = read_bytes(path)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        try:
            midi = is_midi(data)
            stream = _from_midi(data, name) if midi else _from_musicxml(data, name)
            parts = tuple(_scores_of(stream, spelled_by_key=midi))
        except PlainFailure:
            raise
        # The importers raise whatever a damaged file makes them stumble over.
        except (Exception, RecursionError) as problem:
            raise damaged(name) from problem
    if not parts:
        raise PlainFailure(
            f"{shortened(name)} holds no pitched notes.", "Take another file or another part."
        )
    return parts


def _from_musicxml(data: bytes, name: str) -> Any:
    root = partwise_root(data, name)
    from music21.musicxml.xmlToM21 import MusicXMLImporter  # noqa: PLC0415 - slow

    importer = MusicXMLImporter()
    importer.xmlRoot = root
    importer.xmlRootToScore(root, importer.stream)
    return importer.stream


def _from_midi(data: bytes, name: str) -> Any:
    from music21.midi import MidiFile  # noqa: PLC0415 - slow
    from music21.midi.translate import midiFileToStream  # noqa: PLC0415

    file = MidiFile()
    file.readstr(data)
    ticks = file.ticksPerQuarterNote
    if not file.tracks or not ticks or ticks <= 0:
        raise not_a_score(name)
    events = 0
    for track in file.tracks:
        events += len(track.events)
        quarters = sum(e.time for e in track.events if e.isDeltaTime()) / ticks
        if quarters > _MOST_MIDI_QUARTERS or events > _MOST_MIDI_EVENTS:
            raise damaged(name, "it is longer than any piece")
    return midiFileToStream(file)


def _scores_of(stream: Any, *, spelled_by_key: bool) -> Iterator[Score]:
    metadata = stream.metadata
    title = " ".join(str(metadata.bestTitle).split()) if metadata and metadata.bestTitle else ""
    parts = list(stream.parts) or [stream]
    for number, part in enumerate(parts):
        if not part.getElementsByClass("Measure"):
            part.makeMeasures(inPlace=True)
        tonic = _tonic_of(part) if spelled_by_key else None
        score = _score_of(part, f"Part {number + 1}", title, tonic)
        if score.notes:
            yield score


def _tonic_of(part: Any) -> str:
    """Give the tonic that spells a MIDI file's notes: as stated, or as it sounds."""
    for key in part.recurse().getElementsByClass("KeySignature"):
        stated = key if hasattr(key, "tonic") else key.asKey()
        return str(stated.tonic.name).replace("-", "b")
    try:
        return str(part.analyze("key").tonic.name).replace("-", "b")
    except Exception:
        return "C"


def _score_of(part: Any, usual_name: str, title: str, tonic: str | None) -> Score:
    notices: list[str] = []
    name = " ".join(str(part.partName or "").split()) or usual_name
    part.toSoundingPitch(inPlace=True)
    measures = list(part.getElementsByClass("Measure"))
    order, straight = playing_order(part, measures)
    if straight:
        notices.append("Its repeats could not be unfolded; it is read straight through.")
    marks = marks_of(part)
    notes: list[ScoreNote] = []
    beats: list[float] = []
    bars: list[BarStart] = []
    turns: dict[int, int] = {}
    printed = []
    beat_quarters = _USUAL_BEAT
    for measure in measures:
        if measure.timeSignature is not None:
            beat_quarters = float(measure.timeSignature.beatDuration.quarterLength)
        printed.append(_PrintedBar(measure, part, marks, tonic, beat_quarters or _USUAL_BEAT))
    at = 0.0
    for index in order:
        bar = printed[index]
        turns[index] = turns.get(index, 0) + 1
        bars.append(BarStart(bar.number, at, turns[index]))
        beats += [round(at + beat, 9) for beat in bar.counted]
        _append_joined(notes, bar.notes(at, turns[index]), bar.held)
        at = round(at + bar.length, 9)
    return Score(
        part=name,
        notes=tuple(notes),
        counted_beats=tuple(beats),
        bars=tuple(bars),
        end_beats=at,
        title=title,
        tempo_bpm=_tempo_of(part, printed),
        notices=tuple(notices),
    )


class _PrintedBar:
    """One measure as printed: its notes without what depends on when it is played."""

    def __init__(
        self, measure: Any, part: Any, marks: Marks, tonic: str | None, beat_quarters: float
    ) -> None:
        self.beat_quarters = beat_quarters
        missing = float(measure.paddingLeft)
        self.number = int(measure.number)
        self.length = float(measure.duration.quarterLength)
        begin = float(measure.getOffsetInHierarchy(part))
        self._notes: list[tuple[float, ScoreNote]] = []
        self.held: set[int] = set()
        for offset, element in _sounding(measure):
            beat = (offset + missing) / self.beat_quarters + 1.0
            note, is_held = note_of(element, marks, begin + offset, tonic)
            if is_held:
                self.held.add(len(self._notes))
            self._notes.append((offset, _with_place(note, self.number, round(beat, 6))))
            self.length = max(self.length, offset)
        if self.length <= 0.0:
            self.length = float(measure.barDuration.quarterLength)
        count = int((self.length + missing) / self.beat_quarters + 2)
        counted = [k * self.beat_quarters - missing for k in range(count)]
        self.counted = [c for c in counted if -1e-9 <= c < self.length - 1e-9]

    def notes(self, at: float, turn: int) -> list[ScoreNote]:
        """Give the notes of one time this bar is played."""
        return [_placed(note, round(at + offset, 9), turn) for offset, note in self._notes]


def _sounding(measure: Any) -> list[tuple[float, Any]]:
    """List what sounds in a measure; of several voices at one moment, all in one chord."""
    found: list[tuple[float, Any]] = []
    for element in measure.recurse().notes:
        if "ChordSymbol" in element.classes or not getattr(element, "pitches", ()):
            continue
        if not element.duration.isGrace and float(element.duration.quarterLength) <= 0.0:
            continue
        found.append((float(element.getOffsetInHierarchy(measure)), element))
    found.sort(key=lambda item: (item[0], not item[1].duration.isGrace))
    kept: list[tuple[float, Any]] = []
    for offset, element in found:
        same = kept and kept[-1][0] == offset and not kept[-1][1].duration.isGrace
        if same and not element.duration.isGrace:
            # Two voices at once: the upper one is the line.
            if max(p.ps for p in element.pitches) > max(p.ps for p in kept[-1][1].pitches):
                kept[-1] = (offset, element)
            continue
        kept.append((offset, element))
    return kept


def _with_place(note: ScoreNote, bar: int, beat: float) -> ScoreNote:
    return replace(note, bar=bar, beat=beat)


def _placed(note: ScoreNote, onset: float, turn: int) -> ScoreNote:
    return replace(note, onset_beats=onset, turn=turn)


def _append_joined(notes: list[ScoreNote], more: list[ScoreNote], held: set[int]) -> None:
    """Append notes; one that is held over from the note before it makes that one longer."""
    for index, note in enumerate(more):
        last = next((k for k in range(len(notes) - 1, -1, -1) if not notes[k].grace), None)
        if index in held and last is not None:
            before = notes[last]
            ends = before.onset_beats + before.duration_beats
            if before.midi_pitch == note.midi_pitch and abs(ends - note.onset_beats) < 1e-6:
                longer = round(before.duration_beats + note.duration_beats, 9)
                notes[last] = replace(before, duration_beats=longer, tied=True)
                continue
        notes.append(note)


def _tempo_of(part: Any, printed: list[_PrintedBar]) -> float | None:
    """Give the first printed tempo, in beats as they are counted."""
    for mark in part.recurse().getElementsByClass("MetronomeMark"):
        quarters = mark.getQuarterBPM()
        if quarters and printed and 10.0 <= quarters <= 1000.0:
            return round(float(quarters) / printed[0].beat_quarters, 3)
    return None
