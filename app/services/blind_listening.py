"""Blind ear: two takes in drawn order, one question; later whether ear and measures agree."""

import random
import uuid
from collections.abc import Mapping
from dataclasses import replace

from app.journal.blind_ear import (
    FEWEST_ANSWERS,
    Agreement,
    BlindTrial,
    Choice,
    EarAgainstMeasure,
    Question,
    agreement,
    drawn_pair,
)
from app.journal.failures import PlainFailure
from app.journal.practice_days import Clock
from app.services.following_views import BlindView, EarRow
from app.services.reading_views import Reading
from app.services.readings import reading_of
from app.store.store import Store

_WORDS: Mapping[Question, str] = {
    Question.IN_TUNE: "Which is better in tune?",
    Question.STEADIER: "Which is steadier?",
    Question.MUSICAL: "Which is more musical?",
}
# The measure that a question can be held against; the lower one is the better.
_MEASURES: Mapping[Question, str] = {
    Question.IN_TUNE: "mean_absolute_cents",
    Question.STEADIER: "steadiness_cv_percent",
}
_SEEDS = 2**31


class BlindEarService:
    """Asks blind questions, keeps the answers, and says what they show."""

    def __init__(self, store: Store, clock: Clock, chance: random.Random | None = None) -> None:
        self._store = store
        self._clock = clock
        self._chance = chance or random.SystemRandom()

    def ask(self, passage_id: str, question: Question, seed: int | None = None) -> BlindView:
        """Draw two takes of a passage and the order in which to hear them.

        Parameters
        ----------
        passage_id : str
        question : Question
        seed : int, optional
            The same seed draws the same pair from the same takes.

        Raises
        ------
        PlainFailure
            Where the passage has fewer than two takes.
        """
        takes = [take.id for take in self._store.takes.list(passage_id=passage_id)]
        asked = [
            trial
            for trial in self._store.blind_trials.of_passage(passage_id)
            if trial.question is question and trial.choice is not None
        ]
        drawn = self._chance.randrange(_SEEDS) if seed is None else seed
        pair = drawn_pair(takes, asked, drawn)
        if pair is None:
            raise PlainFailure(
                "This passage has fewer than two takes to choose from.", "Record another one."
            )
        trial = BlindTrial(
            uuid.uuid4().hex, passage_id, question, pair[0], pair[1], drawn, self._clock()
        )
        self._store.blind_trials.add(trial)
        return BlindView(trial, _WORDS[question], *pair)

    def answer(self, trial_id: str, choice: Choice) -> BlindTrial:
        """Keep an answer; it cannot be changed once the takes are known.

        Raises
        ------
        PlainFailure
            Where there is no such question or it was answered already.
        """
        trial = self._store.blind_trials.get(trial_id)
        if trial is None:
            raise PlainFailure("That question is not there.", "Ask a new one.")
        if trial.choice is not None:
            raise PlainFailure("That question was answered already.", "Ask a new one.")
        answered = replace(trial, choice=choice, answered_at=self._clock())
        self._store.blind_trials.replace(answered)
        return answered

    def results(self, passage_id: str | None = None) -> tuple[EarRow, ...]:
        """Say for each question whether the ear and the measurements agree.

        Answers of all passages count unless one is named. 'More musical' has no
        measurement, so it is counted and never compared.
        """
        trials = (
            self._store.blind_trials.list()
            if passage_id is None
            else self._store.blind_trials.of_passage(passage_id)
        )
        answered = [trial for trial in trials if trial.choice is not None]
        ids = {one for t in answered for one in (t.first_take_id, t.second_take_id)}
        headlines = self._store.measurements.headlines(ids)
        values = {
            (key, take_id): reading.value
            for key in _MEASURES.values()
            for take_id, headline in headlines.items()
            if isinstance(reading := reading_of(headline.summary, key), Reading)
        }
        return tuple(
            _row(question, [t for t in answered if t.question is question], values)
            for question in Question
        )


def _row(
    question: Question, trials: list[BlindTrial], values: Mapping[tuple[str, str], float]
) -> EarRow:
    key = _MEASURES.get(question)
    agreements = []
    for trial in trials:
        chosen = trial.chosen_take_id
        first = values.get((key or "", trial.first_take_id))
        second = values.get((key or "", trial.second_take_id))
        if chosen is None or first is None or second is None or first == second:
            continue
        better = trial.first_take_id if first < second else trial.second_take_id
        agreements.append(chosen == better)
    result = agreement(question, len(trials), agreements)
    return EarRow(question, result, _sentence(result, measured=key is not None))


def _sentence(result: EarAgainstMeasure, *, measured: bool) -> str:
    if not measured:
        return f"{result.answered} answered. Nothing measures this, so nothing is compared."
    if result.word is Agreement.TOO_FEW_ANSWERS or result.chance is None:
        missing = FEWEST_ANSWERS - result.comparable
        return (
            f"{result.comparable} comparable answers; {missing} more before anything can be said."
        )
    counts = f"{result.alike} of {result.comparable} answers chose the take that measured better"
    chance = "under 0.001" if result.chance < 0.001 else f"{result.chance:.3f}"
    says = {
        Agreement.AGREE: "your ear and the measurements agree",
        Agreement.DISAGREE: "your ear and the measurements disagree",
        Agreement.NOT_CLEAR: "whether they agree is not clear",
    }[result.word]
    return f"{counts}: {says} (by guessing, as lopsided a count has a chance of {chance})."
