"""What a take says of its score: as machine-readable values, and in words."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from analysis.results import (
    Measured,
    NotMeasurable,
    PlaceHabit,
    ScoreReading,
    Slip,
    SlipKind,
    StretchKind,
    TakeAnalysis,
    WrittenPlace,
)
from app.services.plain_json import Json, finite, state_object
from app.services.reading_views import NamedReading, NoReading, Reading
from app.services.readings import Summary
from app.services.wording import counted, number_text, position_text

SAID_FROM_MS: Final = 30.0
"""A note is said to be early or late from this on: about what is heard (common practice)."""


def score_object(analysis: TakeAnalysis) -> Json | None:
    """Give how a take stands against its score; ``None`` for a take without one."""
    result = analysis.score
    if result is None:
        return None
    value = result.value if isinstance(result, Measured) else None
    rhythm = value.rhythm if value else None
    return state_object(result) | {
        "score": value.score_name if value else None,
        "written_count": value.written_count if value else None,
        "matched_count": value.matched_count if value else None,
        "unclear_count": value.unclear_count if value else None,
        "wrong_count": _count(value, SlipKind.WRONG),
        "missing_count": _count(value, SlipKind.MISSING),
        "added_count": _count(value, SlipKind.ADDED),
        "rhythm_spread_ms": finite(rhythm.spread_ms, 3) if rhythm else None,
        "rhythm_spread_percent": finite(rhythm.spread_percent, 3) if rhythm else None,
        "rhythm_floor_ms": finite(rhythm.floor_ms, 3) if rhythm else None,
        "rhythm_note_count": rhythm.note_count if rhythm else None,
        "pairs": [
            {
                "note": pair.note_index,
                "written": _written(pair.written),
                "offset_ms": finite(pair.offset_ms, 3),
                "offset_percent": finite(pair.offset_percent, 3),
            }
            for pair in (value.pairs if value else ())
        ],
        "slips": [_slip(slip) for slip in (value.slips if value else ())],
        "stretches": [
            {
                "kind": str(stretch.kind),
                "start_s": finite(stretch.start_s, 4),
                "end_s": finite(stretch.end_s, 4),
                "count": stretch.count,
                "first": _written(stretch.first),
                "last": _written(stretch.last),
            }
            for stretch in (value.stretches if value else ())
        ],
        "strings": [_habit(habit) for habit in (value.string_habits if value else ())],
        "fingers": [_habit(habit) for habit in (value.finger_habits if value else ())],
    }


def _count(value: ScoreReading | None, kind: SlipKind) -> int | None:
    return sum(slip.kind is kind for slip in value.slips) if value else None


def _written(place: WrittenPlace | None) -> Json | None:
    if place is None:
        return None
    return {
        "index": place.index,
        "name": place.name,
        "midi": place.midi,
        "bar": place.bar,
        "beat": finite(place.beat, 4),
        "onset_beats": finite(place.onset_beats, 6),
    }


def _slip(slip: Slip) -> Json:
    return {
        "kind": str(slip.kind),
        "start_s": finite(slip.start_s, 4),
        "end_s": finite(slip.end_s, 4),
        "note": slip.note_index,
        "written": _written(slip.written),
        "played": slip.played or None,
    }


def _habit(habit: PlaceHabit) -> Json:
    return {
        "number": habit.number,
        "count": habit.count,
        "mean_cents": finite(habit.mean_cents, 3),
        "spread_cents": finite(habit.spread_cents, 3) if habit.count > 1 else None,
        "uncertainty_cents": finite(habit.uncertainty_cents, 3),
    }


def score_readings(summary: Summary) -> tuple[NamedReading, ...]:
    """Give what a stored summary says of the score, as lines; none without a score."""
    found = summary.get("score")
    if not isinstance(found, Mapping):
        return ()
    if found.get("status") != "measured":
        sentence = str(found.get("sentence") or "It could not be held against its score.")
        return (NamedReading("score", "Against the score", NoReading(sentence), sentence),)
    return (*_heads(found), *_slip_lines(found), *_stretch_lines(found), *_habit_lines(found))


def _heads(found: Mapping[str, object]) -> Iterator[NamedReading]:
    names = (("wrong_count", "wrong"), ("missing_count", "missing"), ("added_count", "added"))
    slips = [f"{found[key]} {name}" for key, name in names if found.get(key)]
    written = f"{found.get('matched_count')} of {found.get('written_count')} written notes played"
    words = f"{written}; {', '.join(slips) if slips else 'nothing wrong, missing or added'}"
    unclear = found.get("unclear_count")
    if isinstance(unclear, int) and unclear:
        words += f"; {unclear} could not be told"
    yield NamedReading("score", "Against the score", NoReading(words), words)
    spread, percent = found.get("rhythm_spread_ms"), found.get("rhythm_spread_percent")
    if isinstance(spread, int | float) and isinstance(percent, int | float):
        floor = found.get("rhythm_floor_ms")
        yield NamedReading(
            "rhythm_spread_ms",
            "Rhythm as written",
            Reading(float(spread), "ms", None, 0),
            f"How far the notes lie from the written rhythm at the tempo around them:"
            f" {number_text(float(percent), 1)} % of a beat. Placing their beginnings alone"
            f" makes {floor} ms.",
        )


def _slip_lines(found: Mapping[str, object]) -> Iterator[NamedReading]:
    for number, slip in enumerate(_entries(found.get("slips"))):
        start = slip.get("start_s")
        at = f" at {position_text(float(start))}" if isinstance(start, int | float) else ""
        written, played = slip.get("written"), slip.get("played")
        name = written.get("name") if isinstance(written, Mapping) else ""
        kind = slip.get("kind")
        if kind == SlipKind.WRONG:
            words = f"{played} instead of {name}"
        else:
            words = f"{name} is missing" if kind == SlipKind.MISSING else f"{played} is not written"
        place = _place(written) if isinstance(written, Mapping) else "Between the notes"
        yield NamedReading(f"slip_{number}", f"{place}{at}", NoReading(words), words)


def _stretch_lines(found: Mapping[str, object]) -> Iterator[NamedReading]:
    for number, stretch in enumerate(_entries(found.get("stretches"))):
        count, start, end = stretch.get("count"), stretch.get("start_s"), stretch.get("end_s")
        if not isinstance(count, int):
            continue
        first, last = stretch.get("first"), stretch.get("last")
        notes = counted(count, "note")
        if isinstance(first, Mapping) and isinstance(last, Mapping):
            label = "Not played"
            words = f"{notes}, {_place(first).lower()} to {_place(last).lower()}"
        else:
            label, words = "Not as written there", notes
            if isinstance(start, int | float) and isinstance(end, int | float):
                words += f", {position_text(float(start))} to {position_text(float(end))}"
        yield NamedReading(f"stretch_{number}", label, NoReading(words), words)


def _habit_lines(found: Mapping[str, object]) -> Iterator[NamedReading]:
    for group, word in (("strings", "String"), ("fingers", "Finger")):
        for habit in _entries(found.get(group)):
            mean, width = habit.get("mean_cents"), habit.get("uncertainty_cents")
            count = habit.get("count")
            if not isinstance(mean, int | float) or not isinstance(count, int) or count < 2:
                continue
            uncertainty = float(width) if isinstance(width, int | float) else None
            yield NamedReading(
                f"{group}_{habit.get('number')}",
                f"{word} {habit.get('number')} as printed, {counted(count, 'note')}",
                Reading(float(mean), "cents", uncertainty, 1, signed=True),
                "Mean of the notes that the score gives to it.",
            )


def _place(written: Mapping[str, object]) -> str:
    beat = written.get("beat")
    if not isinstance(beat, int | float):
        return f"Bar {written.get('bar')}"
    return f"Bar {written.get('bar')}, beat {number_text(float(beat), 2).rstrip('0').rstrip('.')}"


def _entries(items: object) -> Iterator[Mapping[str, object]]:
    for item in items if isinstance(items, list | tuple) else ():
        if isinstance(item, Mapping):
            yield item


@dataclass(frozen=True, slots=True)
class WrittenRemark:
    """What the score makes of a note: a sentence, and ``wrong``, ``added`` or nothing."""

    text: str
    slip: str = ""


NOTHING_WRITTEN: Final = WrittenRemark("")


def written_remarks(analysis: TakeAnalysis) -> dict[int, WrittenRemark]:
    """Say of each note of a take, by its index, what the score makes of it."""
    result = analysis.score
    if result is None or isinstance(result, NotMeasurable):
        return {}
    remarks: dict[int, WrittenRemark] = {}
    for pair in result.value.pairs:
        text = _pair_remark(pair.written, pair.offset_ms, pair.offset_percent)
        remarks[pair.note_index] = WrittenRemark(text)
    for slip in result.value.slips:
        if slip.note_index is None:
            continue
        if slip.kind is SlipKind.WRONG and slip.written is not None:
            place = _place(_written(slip.written) or {})
            text = f"Wrong note: {slip.written.name} is written. {place}."
            remarks[slip.note_index] = WrittenRemark(text, str(slip.kind))
        elif slip.kind is SlipKind.ADDED:
            remarks[slip.note_index] = WrittenRemark("Added: not written.", str(slip.kind))
    for stretch in result.value.stretches:
        if stretch.kind is StretchKind.NOT_WRITTEN:
            for index, judged in enumerate(analysis.notes):
                inside = stretch.start_s <= judged.note.start_s < stretch.end_s
                if inside and index not in remarks:
                    remarks[index] = WrittenRemark("In a stretch that is not as written.")
    return remarks


def _pair_remark(
    written: WrittenPlace, offset_ms: float | None, offset_percent: float | None
) -> str:
    place = _place(_written(written) or {})
    if offset_ms is None or offset_percent is None or abs(offset_ms) < SAID_FROM_MS:
        return f"{place}."
    word = "late" if offset_ms > 0 else "early"
    size = f"{number_text(abs(offset_ms), 0)} ms {word}"
    return f"{place}: {size}, {number_text(abs(offset_percent), 0)} % of a beat."
