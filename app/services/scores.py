"""Scores of passages: put beside them, taken away, made by rule; parts that takes hold."""

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.failures import PlainFailure
from app.journal.practice_days import Clock
from app.journal.records import Passage, PlayingSettings, Take
from app.journal.scale_records import Figure, ScaleSpec
from app.journal.scales import checked, scale_title, start_octaves
from app.journal.scores import BarSpan, PassageScore, Score, ScoreFile, spans_text, within_bars
from app.services.passages import PassageService
from app.services.records_there import passage_there, take_there
from app.services.score_keeping import ScoreShelf
from app.services.stopping import Progress, ShouldStop, never_stop, no_progress
from app.store.store import Store

if TYPE_CHECKING:
    from analysis.instruments import Instrument

__all__ = ["ScoreService"]


class ScoreService:
    """Gives passages a score and takes the bars they hold.

    Whatever a score changes is measured again in the background. Reading a file is
    long the first time.
    """

    def __init__(
        self, store: Store, clock: Clock, passages: PassageService, shelf: ScoreShelf
    ) -> None:
        self._store = store
        self._clock = clock
        self._passages = passages
        self._shelf = shelf

    def parts_of(
        self,
        path: Path,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> tuple[Score, ...]:
        """Read the parts of a score file that need not be in any journal.

        Raises
        ------
        PlainFailure
            Where it is no score that can be read.
        Stopped
            Once `should_stop` says so.
        """
        _, parts = self._shelf.parts_of_path(path, should_stop)
        progress(1.0)
        return parts

    def attach(  # noqa: PLR0917 - a use case, told by its names
        self,
        passage_id: str,
        path: Path,
        part: int = 0,
        bars: BarSpan | None = None,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> Passage:
        """Put a score beside a passage: a copy of the file, a part, and its bars.

        Parameters
        ----------
        passage_id : str
        path : Path
            MusicXML, compressed MusicXML or MIDI.
        part : int
            Counted from 0.
        bars : BarSpan, optional
            The passage's bars; without them the whole part.

        Raises
        ------
        PlainFailure
            Where the file cannot be read as a score, or has no such part or bars.
        """
        passage = passage_there(self._store, passage_id)
        sha256, parts = self._shelf.parts_of_path(path, should_stop)
        chosen_part(parts, part, bars)
        progress(0.9)
        kept = ScoreFile(
            file=self._shelf.copy_in(path, sha256),
            sha256=sha256,
            original_name=path.name,
            part=part,
            part_name=parts[part].part,
            bars=bars,
        )
        changed = self._change(passage, PassageScore(file=kept))
        progress(1.0)
        return changed

    def choose_bars(self, passage_id: str, bars: BarSpan | None) -> Passage:
        """Choose other bars of the score file that a passage has; ``None``: all of it."""
        passage = passage_there(self._store, passage_id)
        if passage.score is None or passage.score.file is None:
            raise PlainFailure("This passage has no score file.", "Put one beside it first.")
        if passage.score.file.bars == bars:
            return passage
        score = PassageScore(file=replace(passage.score.file, bars=bars))
        self._shelf.of_passage(replace(passage, score=score))
        return self._change(passage, score)

    def remove(self, passage_id: str) -> Passage:
        """Take the score of a passage away; its file stays in the journal."""
        return self._change(passage_there(self._store, passage_id), None)

    def write_scale(self, passage_id: str, spec: ScaleSpec) -> Passage:
        """Give a passage the notes of a scale; its tonic, where none is stated, too."""
        passage = passage_there(self._store, passage_id)
        score = PassageScore(scale=self._fitting(spec, passage.settings))
        if passage.settings.tonic is None:
            settings = replace(passage.settings, tonic=spec.tonic)
            self._passages.change(replace(passage, settings=settings))
        return self._change(passage, score)

    def add_scale(
        self, spec: ScaleSpec, settings: PlayingSettings, piece: str = "", name: str = ""
    ) -> Passage:
        """Add a passage that is a scale, an arpeggio or broken thirds.

        Parameters
        ----------
        spec : ScaleSpec
        settings : PlayingSettings
            Its instrument bounds the range. Where no tonic is stated, the scale's is
            taken.
        piece, name : str
            Where left out: ``Scales``, and the scale in words.

        Raises
        ------
        PlainFailure
            Where the scale cannot be written, or not on this instrument.
        """
        spec = self._fitting(spec, settings)
        if settings.tonic is None:
            settings = replace(settings, tonic=spec.tonic)
        score = PassageScore(scale=spec)
        with self._store.transaction():
            passage = self._passages.add(
                piece or _COLLECTIONS[spec.figure], name or scale_title(spec), "", settings
            )
            return self._passages.change(replace(passage, score=score))

    def start_octaves(self, spec: ScaleSpec, instrument: str) -> tuple[int, ...]:
        """Give the octaves in which a scale can begin on an instrument (instant).

        Raises
        ------
        PlainFailure
            Where it cannot be written in any.
        """
        player = _player(instrument)
        return start_octaves(checked(spec), player.lowest_midi, player.highest_midi)

    def of_passage(
        self,
        passage_id: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> Score | None:
        """Give the score of a passage; ``None`` where it has none."""
        score = self._shelf.of_passage(passage_there(self._store, passage_id), should_stop)
        progress(1.0)
        return score

    def of_take(
        self,
        take_id: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> Score | None:
        """Give what is written for a take: of its passage's score the bars it holds."""
        score = self._shelf.of_take(take_there(self._store, take_id), should_stop)
        progress(1.0)
        return score

    def set_parts(self, take_id: str, parts: tuple[BarSpan, ...]) -> Take:
        """Say which bars of its passage a take holds; none: the whole passage.

        Raises
        ------
        PlainFailure
            Where the take has no passage, or the score has none of the bars.
        """
        take = take_there(self._store, take_id)
        if parts and take.passage_id is None:
            raise PlainFailure("This take has no passage.", "File it under a passage first.")
        passage = self._store.passages.get(take.passage_id)
        score = self._shelf.of_passage(passage) if passage else None
        if score is not None:
            within_bars(score, parts)
        with self._store.transaction():
            changed = replace(take_there(self._store, take_id), parts=parts)
            self._store.takes.replace(changed)
            self._store.measurements.mark_stale(take_id)
        return changed

    def _fitting(self, spec: ScaleSpec, settings: PlayingSettings) -> ScaleSpec:
        player = _player(settings.instrument)
        spec = checked(replace(spec, lowest_midi=player.lowest_midi))
        octaves = start_octaves(spec, player.lowest_midi, player.highest_midi)
        if spec.start_octave not in octaves:
            where = _octaves_text(octaves)
            raise PlainFailure(
                f"{scale_title(spec)} from {spec.tonic}{spec.start_octave} goes beyond the"
                f" {player.name}.",
                f"Begin in octave {where}." if octaves else "Choose fewer octaves.",
            )
        return spec

    def _change(self, passage: Passage, score: PassageScore | None) -> Passage:
        with self._store.transaction():
            now = passage_there(self._store, passage.id)
            changed = self._passages.change(replace(now, score=score))
            if now.score != score:
                for take in self._store.takes.list(passage_id=passage.id):
                    self._store.measurements.mark_stale(take.id)
        return changed


_COLLECTIONS = {
    Figure.SCALE: "Scales",
    Figure.ARPEGGIO: "Arpeggios",
    Figure.BROKEN_THIRDS: "Broken thirds",
}


def chosen_part(parts: tuple[Score, ...], part: int, bars: BarSpan | None) -> Score:
    """Give some bars of one part of a score.

    Raises
    ------
    PlainFailure
        Where there is no such part, or it has none of the bars.
    """
    if not 0 <= part < len(parts):
        there = f"It has {len(parts)}." if len(parts) > 1 else "It has one."
        raise PlainFailure(f"The score has no part number {part + 1}.", there)
    return within_bars(parts[part], (bars,) if bars else ())


def score_words(passage: Passage) -> str:
    """Say in one line what the notes of a passage are read from; empty without a score."""
    score = passage.score
    if score is None:
        return ""
    if score.scale is not None:
        return scale_title(score.scale)
    if score.file is None:
        return ""
    bars = f", bars {spans_text((score.file.bars,))}" if score.file.bars else ""
    part = f", {score.file.part_name}" if score.file.part_name else ""
    return f"{score.file.original_name}{part}{bars}"


def _player(name: str) -> "Instrument":
    from analysis.instruments import instrument  # noqa: PLC0415 - numpy, only when needed

    try:
        return instrument(name)
    except ValueError as problem:
        raise PlainFailure(f"'{name}' is no instrument of the list.", "Choose one.") from problem


def _octaves_text(octaves: tuple[int, ...]) -> str:
    numbers = [str(octave) for octave in octaves]
    return " or ".join(numbers) if len(numbers) < 3 else ", ".join(numbers)
