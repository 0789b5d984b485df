"""The demo in words: what eight weeks came to, read from what was measured."""

from app.journal.kinds import MarkerState
from app.services.passages import passage_title
from app.services.reading_views import Reading
from app.services.reporting import trend_text
from app.services.views import TakeRow
from app.services.wording import counted, day_text, minutes_text, number_text, reading_text
from app.services.workbench import Workbench

_STATES = (
    (MarkerState.TO_WORK_ON, "to work on"),
    (MarkerState.RETURNED, "returned"),
    (MarkerState.SETTLED, "settled"),
)


def summarise(bench: Workbench) -> str:
    """Sum a journal up as text: days, takes, each passage from first to last, markers."""
    rows = bench.filing.takes()
    span = bench.practising.first_and_last_day()
    if span is None or not rows:
        return "The journal is empty."
    bars = [
        bar
        for year in range(span[0].year, span[1].year + 1)
        for bar in bench.practising.year(year)
        if span[0] <= bar.practice_day <= span[1]
    ]
    minutes = sum(bar.minutes or 0.0 for bar in bars)
    practised = sum(1 for bar in bars if bar.minutes or bar.take_count)
    rests = sum(1 for bar in bars if bar.rest and not (bar.minutes or bar.take_count))
    missed = sum(1 for bar in bars if bar.missed)
    lines = [
        "An invented journal: a violist prepares one study for an orchestra's open seat.",
        f"{day_text(span[0])} to {day_text(span[1])}: {counted(practised, 'day')} practised of"
        f" {len(bars)}, {counted(rests, 'rest day')}, {counted(missed, 'missed day')},"
        f" {minutes_text(minutes)}.",
        _measured_line(rows),
        *(f"{view.promise.name}: {view.headline}." for view in bench.promises.running()),
    ]
    for passage in bench.passages.list():
        of_passage = [row for row in rows if row.passage_id == passage.id]
        if of_passage:
            lines += ["", passage_title(passage), *_passage_lines(bench, of_passage)]
            lines.append(f"  Over the weeks: {trend_text(bench.comparing.trend(passage.id))}.")
    lines += ["", _markers_line(bench, rows)]
    return "\n".join(lines)


def _measured_line(rows: tuple[TakeRow, ...]) -> str:
    measured = sum(1 for row in rows if row.state == "measured")
    return f"{counted(len(rows), 'take')}, {measured} measured."


def _passage_lines(bench: Workbench, rows: list[TakeRow]) -> list[str]:
    first, last = rows[0], rows[-1]
    lines = []
    for label, a, b in (
        ("Mean deviation", first.intonation, last.intonation),
        ("Tempo", first.tempo, last.tempo),
        ("Dynamic span", first.dynamics, last.dynamics),
    ):
        lines.append(f"  {label}: first {reading_text(a)}, last {reading_text(b)}")
    farthest = _farthest_note(bench, last)
    if farthest:
        lines.append(f"  Farthest out in the last take: {farthest}")
    return lines


def _farthest_note(bench: Workbench, row: TakeRow) -> str:
    notes = [
        (note, note.deviation)
        for note in bench.listening.open_take(row.id).notes
        if isinstance(note.deviation, Reading) and note.certain and note.kind == "note"
    ]
    if not notes:
        return ""
    note, deviation = max(notes, key=lambda pair: abs(pair[1].value))
    at = number_text(note.start_s, 1)
    return f"{note.name} at {at} s, {reading_text(deviation)}"


def _markers_line(bench: Workbench, rows: tuple[TakeRow, ...]) -> str:
    markers = [marker for row in rows for marker in bench.marking.for_take(row.id)]
    counts = [
        f"{sum(1 for marker in markers if marker.state is state)} {words}"
        for state, words in _STATES
    ]
    return f"{counted(len(markers), 'marker')}: {', '.join(counts)}."
