"""What a summary lists beside its numbers: places, strings, habits, notices."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from app.services.reading_views import NamedReading, NoReading, Reading
from app.services.readings import Summary
from app.services.score_findings import score_readings
from app.services.views import PlaceRow
from app.services.wording import counted, position_text

PLACE_NAMES: Final = {
    "tuning_up": "Left out: tuning-up",
    "talk": "Left out: talk",
    "rushes": "Rushes",
    "drags": "Drags",
    "crescendo": "Crescendo",
    "diminuendo": "Diminuendo",
}
_EXPLANATIONS: Final = {
    "tuning_up": "Shown, and in no average.",
    "talk": "Shown, and in no average.",
    "rushes": "Faster than the take's mean tempo by so much.",
    "drags": "Slower than the take's mean tempo by so much.",
    "crescendo": "How far the loudness rises.",
    "diminuendo": "How far the loudness falls.",
}


def place_rows(summary: Summary) -> tuple[PlaceRow, ...]:
    """Give the stretches of a stored summary that have a name, in order of time."""
    rows = [
        PlaceRow(start, end, str(place["reason"]), Reading(end - start, "s"))
        for place, start, end in _stretches(summary.get("left_out"))
    ]
    for group, entry, key, unit in (
        ("tempo", "places", "change_percent", "%"),
        ("dynamics", "swells", "change_db", "dB"),
    ):
        for place, start, end in _stretches(_group(summary, group).get(entry)):
            change = place.get(key)
            if isinstance(change, int | float):
                reading = Reading(float(change), unit, signed=True)
                rows.append(PlaceRow(start, end, str(place["kind"]), reading))
    return tuple(sorted(rows, key=lambda row: row.start_s))


def notice_sentences(summary: Summary) -> tuple[str, ...]:
    """Give the sentences about what changes how the numbers may be read."""
    return tuple(str(entry.get("sentence", "")) for entry in _entries(summary.get("notices")))


def finding_readings(summary: Summary) -> tuple[NamedReading, ...]:
    """Give the score, notices, places, strings and habits as lines of the summary.

    The habits are those of pitches that came more than once, the largest first.
    """
    lines = [
        NamedReading(f"notice_{number}", "Please note", NoReading(text), text)
        for number, text in enumerate(notice_sentences(summary))
    ]
    for number, row in enumerate(place_rows(summary)):
        span = f"{position_text(row.start_s)} to {position_text(row.end_s)}"
        label = f"{PLACE_NAMES.get(row.kind, row.kind)}, {span}"
        explanation = _EXPLANATIONS.get(row.kind, "")
        lines.append(NamedReading(f"place_{number}", label, row.reading, explanation))
    group = _group(summary, "intonation")
    for entry in _entries(group.get("strings")):
        reading = _cents(entry, "deviation_cents")
        if reading is not None:
            lines.append(
                NamedReading(
                    f"string_{entry.get('midi')}",
                    f"Open {entry.get('name')} string",
                    reading,
                    "As tuned in this take, against pure fifths from the A in use.",
                )
            )
    return (*score_readings(summary), *lines, *habit_readings(summary))


def habit_readings(summary: Summary, *, fewest: int = 2) -> tuple[NamedReading, ...]:
    """Give how each pitch came out over a take, the farthest off first.

    Parameters
    ----------
    summary : mapping
        A stored summary.
    fewest : int
        Pitches with fewer notes are left out.
    """
    found = []
    for entry in _entries(_group(summary, "intonation").get("habits")):
        count, reading = entry.get("count"), _cents(entry, "mean_cents")
        if not isinstance(count, int) or count < fewest or reading is None:
            continue
        name = entry.get("spelled") or entry.get("name")
        spread = entry.get("spread_cents")
        scatter = f" They spread by {spread:.1f} cents." if isinstance(spread, int | float) else ""
        found.append(
            NamedReading(
                f"habit_{entry.get('midi')}",
                f"{name}, {counted(count, 'note')}",
                reading,
                f"Mean of the notes of this pitch.{scatter}",
            )
        )
    return tuple(sorted(found, key=lambda line: -abs(_value(line))))


def _value(line: NamedReading) -> float:
    return line.reading.value if isinstance(line.reading, Reading) else 0.0


def _cents(entry: Mapping[str, object], key: str) -> Reading | None:
    value, uncertainty = entry.get(key), entry.get("uncertainty_cents")
    if not isinstance(value, int | float):
        return None
    width = float(uncertainty) if isinstance(uncertainty, int | float) else None
    return Reading(float(value), "cents", width, 1, signed=True)


def _group(summary: Summary, name: str) -> Mapping[str, object]:
    group = summary.get(name)
    return group if isinstance(group, Mapping) else {}


def _entries(items: object) -> Iterator[Mapping[str, object]]:
    for item in items if isinstance(items, Sequence) and not isinstance(items, str) else ():
        if isinstance(item, Mapping):
            yield item


def _stretches(items: object) -> Iterator[tuple[Mapping[str, object], float, float]]:
    for item in _entries(items):
        start, end = item.get("start_s"), item.get("end_s")
        if isinstance(start, int | float) and isinstance(end, int | float):
            yield item, float(start), float(end)
