"""Verdicts where nothing changed: how many journals without a change show one."""

from datetime import UTC, date, datetime, timedelta
from typing import Final

import numpy as np

from analysis.change import Word
from analysis.results import Measured
from analysis.sides import compare_notes
from app.journal.kinds import Origin
from app.journal.records import MeasurementHeadline, Passage, PlayingSettings, Take
from app.services.accuracy.phrases import FIRST_SEED
from app.services.accuracy.table import Piece, Row, Section, Tally, share_row
from app.services.reading_views import Reading
from app.services.readings import CHANGE_KEYS, TREND_KEYS, reading_of
from app.services.trends import trend_view
from app.services.views import TrendView

_JOURNALS_A_PIECE: Final = 75
_PASSAGES_A_PIECE: Final = 500
_PIECES: Final = 4
_QUIET: Final = (str(Word.NO_CLEAR_CHANGE), str(Word.TOO_FEW_TAKES))
_BEGUN: Final = datetime(2026, 1, 5, 18, 0, tzinfo=UTC)
_SETTINGS: Final = PlayingSettings()
_PASSAGE: Final = Passage("p", "Piece", "Passage", "", _SETTINGS, _BEGUN)


def measure_journals(piece: Piece) -> Tally:
    """Draw journals in which a player stays the same, and ask for every verdict."""
    tally: Tally = {"trend": [], "two takes": [], "notes": []}
    for number in range(_JOURNALS_A_PIECE):
        rng = np.random.default_rng([FIRST_SEED, 55, piece[1], number])
        takes, headlines = _journal(rng)
        views = {key: trend_view(_PASSAGE, key, takes, headlines) for key in TREND_KEYS}
        tally["trend"].append(float(any(v.verdict not in _QUIET for v in views.values())))
        tally["two takes"].append(float(_two_takes_differ(rng, views, takes, headlines)))
    for number in range(_PASSAGES_A_PIECE):
        rng = np.random.default_rng([FIRST_SEED, 56, piece[1], number])
        tally["notes"].append(float(_notes_differ(rng)))
    return tally


def _journal(
    rng: np.random.Generator,
) -> tuple[tuple[Take, ...], dict[str, MeasurementHeadline]]:
    """Draw takes of one passage on 4 to 30 days; days scatter, and takes within a day."""
    days = np.sort(rng.choice(56, int(rng.integers(4, 31)), replace=False))
    takes, headlines = [], {}
    for day in days.tolist():
        of_the_day = rng.standard_normal(5)
        for number in range(1, int(rng.integers(2, 5))):
            values = 0.8 * of_the_day + 0.6 * rng.standard_normal(5)
            take = _take(day, number)
            takes.append(take)
            headlines[take.id] = MeasurementHeadline(take.id, "", _BEGUN, _summary(values))
    return tuple(takes), headlines


def _summary(values: np.ndarray[tuple[int], np.dtype[np.float64]]) -> dict[str, object]:
    """Give the numbers of one take; what hangs together in a player does so here."""
    tendency = 3.0 * float(values[0])
    spread = max(9.0 + 1.5 * float(values[1]), 2.0)
    return {
        "intonation": {
            "accuracy_cents": tendency,
            "precision_cents": spread,
            "mean_absolute_cents": 0.8 * float(np.hypot(tendency, spread)),
            "within_10_cents": float(np.clip(1.0 - spread / 25.0 - abs(tendency) / 60.0, 0, 1)),
        },
        "tempo": {
            "mean_bpm": 84.0 + 2.0 * float(values[2]),
            "steadiness_cv_percent": max(4.0 + 0.6 * float(values[3]), 0.5),
        },
        "dynamics": {"dynamic_span_db": 12.0 + 1.2 * float(values[4])},
    }


def _take(day: int, number: int) -> Take:
    at = _BEGUN + timedelta(days=day)
    return Take(
        id=f"{day}-{number}",
        session_id=str(day),
        passage_id=_PASSAGE.id,
        practice_day=date(2026, 1, 5) + timedelta(days=day),
        number=number,
        recorded_at=at,
        entered_at=at,
        origin=Origin.RECORDED,
        file="",
        sha256="",
        duration_s=20.0,
        sample_rate_hz=48_000,
        channels=1,
        settings=_SETTINGS,
    )


def _two_takes_differ(
    rng: np.random.Generator,
    views: dict[str, TrendView],
    takes: tuple[Take, ...],
    headlines: dict[str, MeasurementHeadline],
) -> bool:
    """Whether two takes of different days differ in any measure by more than days do."""
    days = sorted({take.practice_day for take in takes})
    chosen = rng.choice(len(days), 2, replace=False)
    pair = [next(t for t in takes if t.practice_day == days[k]) for k in chosen]
    for key in CHANGE_KEYS:
        ordinary = views[key].ordinary_difference
        a, b = (reading_of(headlines[take.id].summary, key) for take in pair)
        if ordinary is None or not isinstance(a, Reading) or not isinstance(b, Reading):
            continue
        if abs(b.value - a.value) > ordinary:
            return True
    return False


def _notes_differ(rng: np.random.Generator) -> bool:
    """Whether any note of an unchanged passage is called clearly changed."""
    notes = int(rng.integers(8, 40))
    own = rng.uniform(4.0, 9.0, notes)  # some notes scatter more than others
    days = [np.repeat(np.arange(int(rng.integers(4, 8))), 2) for _ in range(2)]
    played = [
        own * (0.8 * rng.standard_normal((d.max() + 1, notes))[d]
               + 0.6 * rng.standard_normal((d.size, notes)))
        for d in days
    ]  # fmt: skip
    for block in played:
        block[rng.random(block.shape) < 0.05] = np.nan
    found = compare_notes(days[0].astype(float), played[0], days[1].astype(float), played[1])
    return any(isinstance(each, Measured) and each.value.is_clear for each in found)


def _rows(tally: Tally) -> tuple[Row, ...]:
    source = "drawn journals without a change"
    return (
        share_row(
            tally, "trend", "Journals with any false verdict over the weeks",
            source, at_most=5.0,
        ),
        share_row(
            tally, "two takes", "Two takes with any measure falsely called changed",
            source, at_most=5.0,
        ),
        share_row(
            tally, "notes", "Passages with a note falsely called changed",
            source, at_most=5.0,
        ),
    )  # fmt: skip


def section() -> Section:
    """Give the section."""
    return Section(
        "Change", tuple(("no change", k) for k in range(_PIECES)), measure_journals, _rows
    )
