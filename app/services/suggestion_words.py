"""How a finding is worded: what was measured, how often, how sure, and nothing more."""

from app.journal.first_listen import MeasuredPlace
from app.journal.suggestions import PITCH_KINDS, Finding, SuggestionKind
from app.services.reading_views import Reading
from app.services.suggestion_views import SuggestionRow
from app.services.wording import counted, position_text

_CATEGORY = {
    SuggestionKind.FLAT: "intonation",
    SuggestionKind.SHARP: "intonation",
    SuggestionKind.RUSHES: "rhythm",
    SuggestionKind.DRAGS: "rhythm",
}
_OTHER = "other"
_TIMES = {2: "twice", 3: "three times", 4: "four times", 5: "five times", 6: "six times"}


def row_of(finding: Finding, categories: tuple[str, ...]) -> SuggestionRow:
    """Give a finding as the player sees it.

    Parameters
    ----------
    finding : Finding
    categories : tuple of str
        The journal's own.
    """
    start_s, end_s = finding.worst
    is_pitch = finding.kind in PITCH_KINDS
    return SuggestionRow(
        key=finding.key,
        kind=str(finding.kind),
        category=category_of(finding.kind, categories),
        start_s=start_s,
        end_s=end_s,
        text=finding_text(finding),
        reading=Reading(
            finding.value,
            "cents" if is_pitch else "%",
            finding.uncertainty,
            1,
            signed=True,
        ),
        evidence=_pitch_evidence(finding) if is_pitch else _tempo_evidence(finding),
        places=finding.places,
    )


def category_of(kind: SuggestionKind, categories: tuple[str, ...]) -> str:
    """Choose the category of a suggestion among the player's own."""
    wanted = _CATEGORY[kind]
    for name in (wanted, _OTHER):
        if name in categories:
            return name
    return categories[-1] if categories else wanted


def finding_text(finding: Finding) -> str:
    """Say what was measured.

    >>> finding_text(three_flat_notes)
    'F#5 18 ± 4 cents flat, three times'
    """
    if finding.kind not in PITCH_KINDS:
        start_s, end_s = finding.places[0]
        return (
            f"{finding.kind.capitalize()} by {_size(finding.value, finding.uncertainty)} %"
            f" from {position_text(start_s)} to {position_text(end_s)}"
        )
    count = len(finding.places)
    text = f"{finding.subject} {_size(finding.value, finding.uncertainty)} cents {finding.kind}"
    return text if count == 1 else f"{text}, {_TIMES.get(count, f'{count} times')}"


def place_text(place: MeasuredPlace) -> str:
    """Say what was measured at one place."""
    size = _size(place.size, place.uncertainty)
    if place.kind in PITCH_KINDS:
        return f"{place.subject} {size} cents {place.kind}"
    return f"{place.kind} by {size} %"


def _size(value: float, uncertainty: float | None) -> str:
    """Give a size without its sign; the word beside it says which way."""
    if uncertainty is None:
        return f"{abs(value):.0f}"
    return f"{abs(value):.0f} ± {max(uncertainty, 1.0):.0f}"


def _pitch_evidence(finding: Finding) -> tuple[str, ...]:
    lines = [
        f"{position_text(start_s)}: {_size(size, uncertainty)} cents {finding.kind}"
        for (start_s, _), size, uncertainty in zip(
            finding.places, finding.sizes, finding.uncertainties, strict=True
        )
    ]
    of_all = counted(finding.of_count, f"measured note on {finding.subject}")
    if finding.of_count != 1:
        of_all = f"{finding.of_count} measured notes on {finding.subject}"
    lines.append(
        f"{len(finding.places)} of {of_all}, outside every plausible target by more than the"
        " uncertainty."
    )
    return tuple(lines)


def _tempo_evidence(finding: Finding) -> tuple[str, ...]:
    faster = "faster" if finding.kind is SuggestionKind.RUSHES else "slower"
    return (
        f"{_size(finding.value, finding.uncertainty)} % {faster} than the take's mean tempo,"
        " as it can be meant to be.",
    )
