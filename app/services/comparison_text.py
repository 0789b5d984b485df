"""A comparison in words: take against take, then the largest changes of notes."""

from analysis.results import Measured, NotMeasurable
from app.services.file_comparing import Comparison
from app.services.reading_views import NoReading, Reading
from app.services.readings import measure_named
from app.services.wording import columns_text, counted, position_text, reading_text

_MOST_NOTES = 5


def comparison_text(found: Comparison) -> str:
    """Give a comparison as lines; every change is b minus a."""
    lines = [f"a: {found.a.name}", f"b: {found.b.name}"]
    if isinstance(found.alignment, NotMeasurable):
        lines.append(found.alignment.sentence)
    lines += ["Change from a to b:", columns_text(_measure_cells(found))]
    lines += [sentence for key in found.measures if (sentence := found.no_interval(key))]
    if found.how_judged:
        lines.append(found.how_judged)
    if found.change is not None:
        pairs = counted(len(found.change.notes), "note")
        lines += [f"{pairs} in both; the largest changes:", columns_text(_note_cells(found))]
    return "\n".join([*lines, *found.confounders])


def _measure_cells(found: Comparison) -> list[tuple[str, ...]]:
    cells: list[tuple[str, ...]] = []
    for key, result in found.measures.items():
        measure = measure_named(key)
        if isinstance(result, Measured):
            value = result.value
            change = Reading(
                value.change, value.unit, value.uncertainty, measure.digits, signed=True
            )
            cells.append((f"  {measure.label}", reading_text(change), found.word(key)))
        else:
            cells.append((f"  {measure.label}", reading_text(NoReading(result.sentence)), ""))
    return cells


def _note_cells(found: Comparison) -> list[tuple[str, ...]]:
    pairs = sorted(found.change.notes if found.change else (), key=lambda p: -abs(p.change_cents))
    cells: list[tuple[str, ...]] = []
    for pair in pairs[:_MOST_NOTES]:
        note = found.a.analysis.notes[pair.a_index]
        change = Reading(pair.change_cents, "cents", pair.uncertainty_cents, 1, signed=True)
        at = position_text(note.note.start_s)
        name = note.spelled or note.name or pair.midi
        cells.append((f"  {name}", f"at {at} in a", reading_text(change)))
    return cells
