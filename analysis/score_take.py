"""A measured take held against its score: slips, rhythm, intonation as written, tempo."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from analysis import intonation, rhythm, score_rhythm, tempo
from analysis.instruments import Instrument
from analysis.left_out import is_left_out
from analysis.results import (
    FloatArray,
    Intonation,
    JudgedNote,
    Measured,
    NoteKind,
    NotMeasurable,
    PlaceHabit,
    Provenance,
    Reason,
    ScorePair,
    ScoreReading,
    SlipKind,
    StretchKind,
    TakeAnalysis,
    Tempo,
)
from analysis.score_habits import habit_of
from analysis.score_matching import Matching, match_to_score
from analysis.score_notes import WrittenNote
from analysis.score_played import Played, pitches_of, place_of
from analysis.score_slips import Slips, find_slips
from analysis.take_settings import TakeSettings
from analysis.tuning import STANDARD_A_HZ, Temperament
from analysis.units import hz_to_midi

ALGORITHM: Final = "score-1"
LEAST_MATCHED_SHARE: Final = 0.5
FEWEST_MATCHED: Final = 3

_KEPT_REASONS: Final = (Reason.SEVERAL_NOTES_SOUND, Reason.ACCOMPANIED)


@dataclass(frozen=True, slots=True)
class WrittenLine:
    """The score of a take: its notes in playing order, and the beats that are counted.

    Attributes
    ----------
    notes : tuple of WrittenNote
        Repeats unfolded; grace notes among them are kept out of every measure.
    counted_beats : (b,) array
        The beats a player counts, in quarter notes.
    name : str
        What tells this score from another, for the provenance.
    """

    notes: tuple[WrittenNote, ...]
    counted_beats: FloatArray
    name: str


def hold_against_score(
    analysis: TakeAnalysis, line: WrittenLine, settings: TakeSettings
) -> TakeAnalysis:
    """Hold a measured take against its score.

    Parameters
    ----------
    analysis : TakeAnalysis
        As measured without a score.
    line : WrittenLine
    settings : TakeSettings
        The take's.

    Returns
    -------
    TakeAnalysis
        With ``score`` measured, the notes judged by their written names, the averages
        without wrong and added notes, and the tempo anchored by the score. Where the take
        does not follow the score, ``score`` says so and all else stays as it was.
    """
    provenance = Provenance(ALGORITHM, {"score": line.name})
    written = [note for note in line.notes if not note.grace]
    graces = [note for note in line.notes if note.grace]
    player = settings.checked()
    refusal = _refusal(analysis, written, player, provenance)
    if refusal is not None:
        return replace(analysis, score=refusal)
    played = _played(analysis, settings, player)
    start_s = np.array([judged.note.start_s for judged in played.notes])
    matching = match_to_score(written, start_s, played.pitch_midi)
    matched = int(np.count_nonzero(matching.same_pitch))
    slips = find_slips(written, graces, played, matching)
    if matched < FEWEST_MATCHED or matched < LEAST_MATCHED_SHARE * _reached(written, slips):
        sentence = "The take does not follow the score of its passage."
        return replace(analysis, score=NotMeasurable(Reason.NO_MATCH, sentence, provenance))
    held = _Held(analysis, line, settings, player, written, played, start_s, matching, slips)
    return held.result(provenance)


def _refusal(
    analysis: TakeAnalysis,
    written: Sequence[WrittenNote],
    player: Instrument,
    provenance: Provenance,
) -> NotMeasurable | None:
    if not written:
        return NotMeasurable(Reason.NO_NOTES, "The score has no notes here.", provenance)
    if not player.single_line:
        sentence = "Only one note at a time can be held against a score."
        return NotMeasurable(Reason.SEVERAL_NOTES_SOUND, sentence, provenance)
    if isinstance(analysis.pitch, NotMeasurable):
        return replace(analysis.pitch, provenance=provenance)
    if not analysis.notes:
        return NotMeasurable(Reason.NO_NOTES, "No notes were found.", provenance)
    return None


def _reached(written: Sequence[WrittenNote], slips: Slips) -> int:
    """Count the written notes that the take comes to."""
    skipped = sum(s.count for s in slips.stretches if s.kind is StretchKind.NOT_PLAYED)
    extra = sum(s.count for s in slips.stretches if s.kind is StretchKind.NOT_WRITTEN)
    return max(len(written) - skipped, extra)


def _played(analysis: TakeAnalysis, settings: TakeSettings, player: Instrument) -> Played:
    index = tuple(
        number
        for number, judged in enumerate(analysis.notes)
        if not is_left_out(judged.note, analysis.left_out)
    )
    notes = tuple(analysis.notes[number] for number in index)
    tuning = _tuning(notes, settings, player)
    a_hz = STANDARD_A_HZ if isinstance(tuning, NotMeasurable) else tuning.reference_a_hz
    pitches = np.array(pitches_of(notes, a_hz), dtype=np.float64)
    if isinstance(analysis.pitch, NotMeasurable):
        return Played(notes, index, pitches, np.empty(0), np.empty(0))
    track = analysis.pitch.value
    return Played(notes, index, pitches, track.time_s, hz_to_midi(track.f0_hz, a_hz))


def _tuning(
    notes: Sequence[JudgedNote], settings: TakeSettings, player: Instrument
) -> intonation.Tuning | NotMeasurable:
    found = intonation.tuning_of_take(
        tuple(judged.note for judged in notes),
        reference_a_hz=settings.reference_a_hz,
        temperament=Temperament(settings.temperament),
        tonic=settings.tonic,
        instrument=player,
        open_strings=settings.open_strings,
    )
    if isinstance(found, NotMeasurable) or not settings.accompanied:
        return found
    return replace(found, only_equal=True)


@dataclass(frozen=True, slots=True)
class _Held:
    """A take that follows its score, and what is made of it."""

    analysis: TakeAnalysis
    line: WrittenLine
    settings: TakeSettings
    player: Instrument
    written: list[WrittenNote]
    played: Played
    start_s: FloatArray
    matching: Matching
    slips: Slips

    def result(self, provenance: Provenance) -> TakeAnalysis:
        """Put the parts together."""
        notes, summed = self._intonation()
        measured_tempo = self._tempo()
        offset_s, quarter_s = score_rhythm.offsets_of(self.written, self.start_s, self.matching)
        beat_s = quarter_s * self._beat_quarters()
        pairs = self._pairs(offset_s, beat_s)
        reading = ScoreReading(
            written_count=len(self.written),
            matched_count=int(np.count_nonzero(self.matching.same_pitch)),
            unclear_count=self.slips.unclear_count,
            pairs=pairs,
            slips=self.slips.slips,
            stretches=self.slips.stretches,
            rhythm=score_rhythm.rhythm_of(offset_s, beat_s),
            string_habits=self._habits(notes, "string"),
            finger_habits=self._habits(notes, "finger"),
            score_name=self.line.name,
        )
        result = replace(
            self.analysis,
            notes=notes,
            intonation=summed,
            score=Measured(reading, provenance),
        )
        if isinstance(measured_tempo, Measured):
            places = rhythm.find_tempo_places(measured_tempo.value)
            result = replace(result, tempo=measured_tempo, tempo_places=places)
        return result

    def _beat_quarters(self) -> float:
        steps = np.diff(self.line.counted_beats)
        return float(np.median(steps)) if steps.size else 1.0

    def _pairs(self, offset_s: FloatArray, beat_s: FloatArray) -> tuple[ScorePair, ...]:
        pairs = []
        for number, (index, at) in enumerate(self._agreeing_or_not()):
            known = bool(np.isfinite(offset_s[number]) and np.isfinite(beat_s[number]))
            late = float(offset_s[number])
            pairs.append(
                ScorePair(
                    note_index=self.played.index[at],
                    written=place_of(self.written, index),
                    offset_ms=1e3 * late if known else None,
                    offset_percent=100.0 * late / float(beat_s[number]) if known else None,
                )
            )
        return tuple(pairs)

    def _agreeing_or_not(self) -> Iterable[tuple[int, int]]:
        written, played = self.matching.written.tolist(), self.matching.played.tolist()
        return zip(written, played, strict=True)

    def _written_of_note(self) -> dict[int, WrittenNote]:
        """Give the written note of every note of the take that plays it at its pitch."""
        same = self.matching.same_pitch.tolist()
        return {
            self.played.index[at]: self.written[index]
            for (index, at), agrees in zip(self._agreeing_or_not(), same, strict=True)
            if agrees
        }

    def _intonation(self) -> tuple[tuple[JudgedNote, ...], Measured[Intonation] | NotMeasurable]:
        """Judge the notes again, by what is written."""
        before = self.analysis
        summed = before.intonation
        by_hand = isinstance(summed, NotMeasurable) and summed.reason in _KEPT_REASONS
        tuning = _tuning(self.played.notes, self.settings, self.player)
        if by_hand or self.settings.accompanied or isinstance(tuning, NotMeasurable):
            return before.notes, summed
        of_note = self._written_of_note()
        plain = {
            place: of_note[number]
            for place, number in enumerate(self.played.index)
            if number in of_note and not of_note[number].harmonic and not of_note[number].chord
        }
        judged = intonation.judge_notes(
            tuple(note.note for note in self.played.notes), tuning, plain
        )
        notes = list(before.notes)
        for number, again in zip(self.played.index, judged, strict=True):
            notes[number] = again
        slipped = {
            slip.note_index for slip in self.slips.slips if slip.kind is not SlipKind.MISSING
        }
        entering = tuple(notes[number] for number in self.played.index if number not in slipped)
        return tuple(notes), intonation.measure_intonation(entering, tuning)

    def _tempo(self) -> Measured[Tempo] | NotMeasurable:
        if self.settings.click_interval_s is not None and isinstance(self.analysis.tempo, Measured):
            return self.analysis.tempo
        beats = score_rhythm.beats_in_take(
            self.written, self.line.counted_beats, self.start_s, self.matching
        )
        if not beats.size:
            return self.analysis.tempo
        return tempo.measure_tempo(
            self.start_s,
            np.ones(self.start_s.size),
            self.analysis.duration_s,
            reference_beat_s=beats,
            reference_kind="score",
        )

    def _habits(self, notes: tuple[JudgedNote, ...], printed: str) -> tuple[PlaceHabit, ...]:
        """Sum the deviations up by the printed string or finger."""
        found: dict[int, list[tuple[float, float]]] = {}
        for number, written in self._written_of_note().items():
            place = written.string if printed == "string" else written.finger
            judged = notes[number]
            if (
                place is not None
                and judged.note.kind is NoteKind.NOTE
                and isinstance(judged.deviation, Measured)
            ):
                deviation = judged.deviation.value
                found.setdefault(place, []).append(
                    (deviation.deviation_cents, deviation.uncertainty_cents)
                )
        return tuple(habit_of(place, values) for place, values in sorted(found.items()))
