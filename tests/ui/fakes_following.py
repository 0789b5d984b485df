"""Stand-ins for the services that follow a passage over days."""

from dataclasses import replace
from datetime import UTC, date, datetime

import numpy as np

from app.journal.blind_ear import Agreement, BlindTrial, EarAgainstMeasure
from app.journal.bounds import PassageBounds
from app.journal.bounds import checked as checked_bounds
from app.journal.kinds import Author, MarkerState
from app.journal.records import Marker
from app.journal.tempo_ladder import LadderTake, ladder
from app.services.following_views import (
    AlignedPair,
    BlindView,
    CarriedMarker,
    ChangeReport,
    EarRow,
    HairpinRow,
    LadderView,
    OnlyPart,
    RepetitionsView,
    RunRow,
    ShapeView,
    StillMeasured,
    VerdictRow,
)
from app.services.reading_views import NoReading, Reading

NOW = datetime(2026, 3, 18, 19, 30, tzinfo=UTC)


def verdict(scope, place, period, word, *, start=date(2026, 2, 2), is_clear=False):
    return VerdictRow(
        scope, place, None, None, "mean_absolute_cents", "Mean deviation", period, start,
        start.replace(day=8), start.replace(day=9), start.replace(day=15), Reading(12.0, "cents"),
        Reading(9.0, "cents"), Reading(-3.0, "cents", None, 1, True, (-4.5, -1.5)),
        Reading(1.4, "cents"), 5, 4, word, is_clear,
    )  # fmt: skip


class FakeChanges:
    def __init__(self, passage):
        self.passage = passage
        self.asked = 0

    def report(self, passage_id, progress=None, should_stop=None):
        self.asked += 1
        rows = (
            verdict("passage", "whole passage", "first_and_latest", "better", is_clear=True),
            verdict("passage", "whole passage", "week", "no clear change"),
            verdict("passage", "whole passage", "week", "better", start=date(2026, 3, 2)),
            verdict("note", "Bb4 in bar 3", "first_and_latest", "no clear change"),
            verdict("bar", "bar 3", "first_and_latest", "too few takes"),
        )
        left_out = ("2 takes were left out: played on another instrument.",)
        notices = ("Some takes were chosen as the best of several.",)
        return ChangeReport(self.passage, rows, left_out, notices, "Better from first to latest.")


class FakeCarrying:
    def __init__(self):
        self.answers: dict[tuple[str, str], bool] = {}

    def carried_into(self, take_id, progress=None, should_stop=None):
        found = []
        for at, text in enumerate(("F sharp low", "shift late")):
            marker = Marker(
                f"c{at}", "take2", 3.0, None, "intonation", 2, text, Author.SELF,
                MarkerState.TO_WORK_ON, NOW, NOW,
            )  # fmt: skip
            measured = StillMeasured(
                "still there", Reading(-18.0, "cents", 1.0), NoReading("It was not measured."), ""
            )
            answer = self.answers.get((marker.id, take_id))
            found.append(
                CarriedMarker(marker, date(2026, 2, 9), 2.7 + 4 * at, None, 0.9, measured, answer)
            )
        return tuple(found)

    def answer(self, marker_id, take_id, is_there):
        self.answers[marker_id, take_id] = is_there
        if is_there is None:
            del self.answers[marker_id, take_id]

    def lives(self, passage_id):
        return ()


class FakeBounds:
    def __init__(self, passage):
        self.passage = passage
        self.kept = PassageBounds("p1", 8.0, 5.0, NOW, 80.0, 4.0)

    def get(self, passage_id):
        return self.kept

    def set(self, bounds):
        self.kept = checked_bounds(bounds)
        return self.kept

    def ladder(self, passage_id):
        takes = [
            LadderTake("take1", date(2026, 2, 2), 72.0, 7.0, 4.0),
            LadderTake("take2", date(2026, 2, 9), 72.0, 6.0, 4.0),
            LadderTake("take3", date(2026, 2, 10), 76.0, 6.0, 4.0),
        ]
        climbed = ladder(takes, self.kept)
        return LadderView(self.passage, self.kept, climbed, "Held up to 72 BPM; next is 76 BPM.")


class FakeRepetitions:
    def __init__(self, passage, row_of):
        self.passage = passage
        self._row_of = row_of

    def find(self, take_id, passage_id=None, progress=None, should_stop=None):
        runs = tuple(
            RunRow(
                number, 10.0 * number, 10.0 * number + 8, number != 2, Reading(72.0, "BPM"),
                Reading(6.0, "cents"), Reading(3.0, "%"), number != 2,
            )
            for number in (1, 2, 3)
        )  # fmt: skip
        words = "3 runs, 2 of them whole; 1 in a row inside the bounds."
        return RepetitionsView(self._row_of(take_id), self.passage, runs, 2, 1, 1, words)


class FakeAligning:
    def pair(self, take_a, take_b, progress=None, should_stop=None):
        grid = np.linspace(0.0, 24.0, 50)
        false_start = OnlyPart(0.0, 1.5, "before", "A false start: left out.")
        repeat = OnlyPart(6.0, 8.0, "repeated", "Played twice: left out.")
        return AlignedPair(
            take_a, take_b, True, "", grid, 0.5 * grid, 0.9, (false_start,), (repeat,)
        )


class FakeShapes:
    def compare(self, take_a, take_b, progress=None, should_stop=None):
        time_s = np.linspace(0.0, 24.0, 120)
        a_db, b_db = -20 + 4 * np.sin(time_s), -20 + 3 * np.sin(time_s)
        b_db[40:50] = np.nan
        hairpins = (
            HairpinRow(2.0, 6.0, "crescendo", Reading(6.0, "dB"), Reading(2.0, "dB")),
            HairpinRow(8.0, 12.0, "diminuendo", Reading(-4.0, "dB"), NoReading("Silence.")),
        )
        return ShapeView(
            take_a, take_b, time_s, a_db, b_db, -2.5, Reading(0.93, "", None, 2, True), hairpins,
            (), "B is moved by -2.5 dB.",
        )  # fmt: skip


class FakeLookingBack:
    def __init__(self):
        self.found = None

    def this_week(self):
        return self.found


class FakeBlindEar:
    def __init__(self):
        self.trials: dict[str, BlindTrial] = {}

    def ask(self, passage_id, question, seed=None):
        key = f"trial{len(self.trials)}"
        trial = BlindTrial(key, passage_id, question, "take7", "take2", 1, NOW)
        self.trials[key] = trial
        return BlindView(trial, f"Which is {question.value}?", "take7", "take2")

    def answer(self, trial_id, choice):
        self.trials[trial_id] = replace(self.trials[trial_id], choice=choice, answered_at=NOW)
        return self.trials[trial_id]

    def results(self, passage_id=None):
        answered = [trial for trial in self.trials.values() if trial.choice is not None]
        few = Agreement.TOO_FEW_ANSWERS
        return tuple(
            EarRow(
                trial.question, EarAgainstMeasure(trial.question, 1, 1, 1, None, None, None, few),
                f"{len(answered)} answered.",
            )
            for trial in answered[-1:]
        )  # fmt: skip
