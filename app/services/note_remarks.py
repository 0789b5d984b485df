"""What the plausible targets of a note say of it, in words."""

from typing import Final

from analysis.results import JudgedNote, Measured, TargetKind, TargetReading, Verdict
from app.services.wording import listed, number_text

_NAMES: Final = {
    TargetKind.EQUAL: "equal",
    TargetKind.PYTHAGOREAN: "Pythagorean",
    TargetKind.JUST: "just",
}


def remark_of(judged: JudgedNote) -> str:
    """Say what the targets beside the one in use make of a note.

    Parameters
    ----------
    judged : JudgedNote

    Returns
    -------
    str
        One or two sentences; empty where there is nothing to add. A note that depends
        on the choice of targets has its readings side by side, and where no key is
        known the sentence says that it is wanted.
    """
    parts = _two_strings(judged)
    if not isinstance(judged.deviation, Measured):
        return " ".join(parts)
    tempered = [r for r in judged.readings if r.target in _NAMES]
    if judged.verdict is Verdict.OUT:
        parts.append("Outside every plausible target.")
    elif judged.verdict is Verdict.DEPENDS or judged.depends_on_temperament:
        parts.append(_depends(judged, tempered))
    if judged.may_be_stopped:
        parts.append(_stopped(tempered))
    ringing = next((r for r in judged.readings if r.target not in _NAMES), None)
    if ringing is not None and not judged.is_open_string:
        parts.append(_ringing_text(ringing))
    return " ".join(parts)


def _two_strings(judged: JudgedNote) -> list[str]:
    """Say how a double stop's interval stands, then its upper string."""
    found = judged.two_strings
    if found is None:
        return []
    readings = listed([f"{_NAMES[r.target]} {_cents(r)}" for r in found.readings])
    upper = number_text(found.upper_deviation_cents, 1, signed=True)
    return [
        f"{found.interval[:1].upper()}{found.interval[1:]}, the interval against"
        f" {readings} ± {found.uncertainty_cents:.1f} cents.",
        f"Upper string {found.upper_name}: {upper} ± {found.upper_uncertainty_cents:.1f} cents.",
    ]


def _depends(judged: JudgedNote, tempered: list[TargetReading]) -> str:
    if len(tempered) > 1:
        readings = listed([f"{_NAMES[r.target]} {_cents(r)}" for r in tempered])
        return f"Depends on the temperament: {readings} cents."
    low, high = (
        number_text(end, 0, signed=True)
        for end in (judged.plausible_low_cents, judged.plausible_high_cents)
    )
    return (
        f"Depends on the key: plausible targets lie {low} to {high} cents from this one;"
        " give the tonic to tell."
    )


def _stopped(tempered: list[TargetReading]) -> str:
    readings = listed([f"{_NAMES[r.target]} {_cents(r)}" for r in tempered])
    return f"Taken for the open string; if it was stopped: {readings} cents."


def _ringing_text(reading: TargetReading) -> str:
    against = "as tuned in this take" if reading.target is TargetKind.OPEN_STRING else "tuned pure"
    uncertainty = f"{reading.uncertainty_cents:.1f}"
    return (
        f"Against the open {reading.string} string {against}:"
        f" {_cents(reading)} ± {uncertainty} cents."
    )


def _cents(reading: TargetReading) -> str:
    return number_text(reading.deviation_cents, 1, signed=True)
