"""Wrong, missing and added notes, told from what the measuring alone cannot see."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from analysis.results import NoteKind
from analysis.score_matching import Matching
from analysis.score_notes import WrittenNote
from analysis.score_played import SAME_PITCH_SEMITONES, Played, place_of
from analysis.score_results import ScoreStretch, Slip, SlipKind, StretchKind

LONGEST_RUN_OF_SLIPS: Final = 2
SHORTEST_NOTE_S: Final = 0.08
"""A note of the take under this length is no note of its own."""

_SHORTEST_WRITTEN_S: Final = 0.1
_GRACE_REACH_S: Final = 0.35
_QUIET_DB: Final = -24.0
_ORNAMENTS: Final = ("trill", "tremolo")


@dataclass(frozen=True, slots=True)
class Slips:
    """What the unpaired notes of both sides come to."""

    slips: tuple[Slip, ...]
    stretches: tuple[ScoreStretch, ...]
    unclear_count: int


def find_slips(
    written: Sequence[WrittenNote],
    graces: Sequence[WrittenNote],
    played: Played,
    matching: Matching,
) -> Slips:
    """Say what of a take differs from its score.

    Parameters
    ----------
    written, graces : sequence of WrittenNote
        The notes that were matched, and the grace notes that were not.
    played : Played
    matching : Matching
        From :func:`analysis.score_matching.match_to_score`.

    Returns
    -------
    Slips
        Runs of three and more unpaired notes are stretches, not slips: a false start, a
        repeated or skipped bar, another place. What could as well be a limit of the
        measuring is counted as unclear and is no slip.
    """
    return _Finder(written, graces, played, matching).found()


class _Finder:
    """One look at the unpaired notes of both sides."""

    def __init__(
        self,
        written: Sequence[WrittenNote],
        graces: Sequence[WrittenNote],
        played: Played,
        matching: Matching,
    ) -> None:
        self._written = written
        self._graces = graces
        self._played = played
        self._matching = matching
        self._player_of = dict(
            zip(matching.written.tolist(), matching.played.tolist(), strict=True)
        )
        self._written_of = {played: written for written, played in self._player_of.items()}
        self._slips: list[Slip] = []
        self._stretches: list[ScoreStretch] = []
        self._unclear = 0

    def found(self) -> Slips:
        """Look at wrong, then missing, then added notes."""
        self._wrong()
        self._unpaired(len(self._written), self._player_of, set(), self._missing, self._not_played)
        count = len(self._played.notes)
        explained = {
            at for at in range(count) if at not in self._written_of and self._is_explained(at)
        }
        self._unpaired(count, self._written_of, explained, self._added, self._not_written)
        self._slips.sort(key=lambda slip: (slip.start_s, slip.kind))
        self._stretches.sort(key=lambda stretch: stretch.start_s)
        return Slips(tuple(self._slips), tuple(self._stretches), self._unclear)

    def _unpaired(
        self,
        count: int,
        paired: dict[int, int],
        explained: set[int],
        one: Callable[[int], None],
        many: Callable[[list[int]], None],
    ) -> None:
        """Hand on each run of unpaired notes: few of them one by one, more together.

        What is explained already neither counts nor ends a run.
        """
        run: list[int] = []
        for index in [*range(count), -1]:
            if index in explained:
                continue
            if index >= 0 and index not in paired:
                run.append(index)
                continue
            if len(run) > LONGEST_RUN_OF_SLIPS:
                many(run)
            else:
                for each in run:
                    one(each)
            run = []

    def _wrong(self) -> None:
        same = self._matching.same_pitch.tolist()
        for (index, at), agrees in zip(self._player_of.items(), same, strict=True):
            if agrees:
                continue
            untold = not np.isfinite(self._played.pitch_midi[at])
            ornament = self._written[index].technique in _ORNAMENTS
            if untold or ornament or self._written[index].harmonic:
                self._unclear += 1
                continue
            self._slips.append(
                Slip(
                    SlipKind.WRONG,
                    self._played.start_s(at),
                    self._played.end_s(at),
                    self._played.index[at],
                    place_of(self._written, index),
                    self._played.name(at),
                )
            )

    def _missing(self, index: int) -> None:
        note = self._written[index]
        expected, quarter = self._when(index)
        length = note.duration_beats * quarter
        untold = not np.isfinite(expected) or length < _SHORTEST_WRITTEN_S or self._merged(index)
        # Heard, but too soft or too short to stand as a note: not missing.
        if untold or self._played.sounds(note.midi_pitch, expected, expected + length):
            self._unclear += 1
            return
        place = place_of(self._written, index)
        self._slips.append(Slip(SlipKind.MISSING, expected, expected + length, None, place))

    def _merged(self, index: int) -> bool:
        """Whether a note repeats its neighbour, whose sound goes on where it should begin."""
        expected, quarter = self._when(index)
        for neighbour in (index - 1, index + 1):
            at = self._player_of.get(neighbour)
            if at is None or self._written[neighbour].midi_pitch != self._written[index].midi_pitch:
                continue
            middle = expected + 0.5 * self._written[index].duration_beats * quarter
            if self._played.start_s(at) <= middle <= self._played.end_s(at):
                return True
        return False

    def _is_explained(self, at: int) -> bool:
        """Whether an unpaired note of the take need not be an added one."""
        kind = self._played.notes[at].note.kind
        length = self._played.end_s(at) - self._played.start_s(at)
        if length < SHORTEST_NOTE_S or kind in (NoteKind.SLIDE, NoteKind.GRACE):
            return True
        if self._of_a_grace(at):
            return True
        pitched = bool(np.isfinite(self._played.pitch_midi[at]))
        if not pitched or self._part_of_a_neighbour(at) or self._is_an_echo(at):
            self._unclear += 1
            return True
        return False

    def _added(self, at: int) -> None:
        self._slips.append(
            Slip(
                SlipKind.ADDED,
                self._played.start_s(at),
                self._played.end_s(at),
                self._played.index[at],
                None,
                self._played.name(at),
            )
        )

    def _of_a_grace(self, at: int) -> bool:
        """Whether a grace note is written about here."""
        for grace in self._graces:
            if abs(grace.midi_pitch - self._played.pitch_midi[at]) > SAME_PITCH_SEMITONES:
                continue
            after = next(
                (k for k, n in enumerate(self._written) if n.onset_beats >= grace.onset_beats), None
            )
            if after is not None:
                when = self._when(after)[0]
                if abs(self._played.start_s(at) - when) <= _GRACE_REACH_S:
                    return True
        return False

    def _part_of_a_neighbour(self, at: int) -> bool:
        """Whether a note is a piece of the nearest paired one: cut up, or ornamented."""
        for step in (-1, 1):
            neighbour = at + step
            while 0 <= neighbour < len(self._played.notes) and neighbour not in self._written_of:
                neighbour += step
            index = self._written_of.get(neighbour)
            if index is None:
                continue
            if self._written[index].technique in _ORNAMENTS:
                return True
            same = abs(self._played.pitch_midi[at] - self._written[index].midi_pitch)
            if same > SAME_PITCH_SEMITONES:
                continue
            expected, quarter = self._when(index)
            end = expected + self._written[index].duration_beats * quarter
            if expected - 0.25 * quarter <= self._played.start_s(at) <= end - SHORTEST_NOTE_S:
                return True
        return False

    def _is_an_echo(self, at: int) -> bool:
        """Whether a note is far softer than those beside it: a string that rings on."""
        level = self._played.notes[at].note.level_dbfs
        beside = [
            self._played.notes[k].note.level_dbfs
            for k in (at - 1, at + 1)
            if 0 <= k < len(self._played.notes)
        ]
        return bool(beside) and level < max(beside) + _QUIET_DB

    def _not_played(self, run: list[int]) -> None:
        first, last = run[0], run[-1]
        places = place_of(self._written, first), place_of(self._written, last)
        before = [at for index, at in self._player_of.items() if index < first]
        after = [at for index, at in self._player_of.items() if index > last]
        start = self._played.end_s(before[-1]) if before else self._begin_s(after)
        end = self._played.start_s(after[0]) if after else start
        self._stretches.append(
            ScoreStretch(
                StretchKind.NOT_PLAYED, min(start, end), max(start, end), last - first + 1, *places
            )
        )

    def _begin_s(self, after: list[int]) -> float:
        return self._played.start_s(after[0]) if after else 0.0

    def _not_written(self, run: list[int]) -> None:
        start_s, end_s = self._played.start_s(run[0]), self._played.end_s(run[-1])
        self._stretches.append(ScoreStretch(StretchKind.NOT_WRITTEN, start_s, end_s, len(run)))

    def _when(self, index: int) -> tuple[float, float]:
        matching = self._matching
        return float(matching.expected_s[index]), float(matching.quarter_s[index])
