"""Options that several commands share."""

import re
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Annotated, Any

import typer

from app.journal.failures import PlainFailure
from app.journal.records import PlayingSettings

_FILE_SUFFIX = re.compile(r"\.[A-Za-z0-9]{1,5}$")

JournalOption = Annotated[
    Path | None,
    typer.Option("--journal", metavar="DIR", help="Folder of the journal.", show_default=False),
]
JsonOption = Annotated[bool, typer.Option("--json", help="Print one JSON object.")]
InstrumentOption = Annotated[
    str | None, typer.Option("--instrument", metavar="NAME", help="violin, viola, cello, ...")
]
ReferenceOption = Annotated[
    str | None,
    typer.Option(
        "--reference-a",
        metavar="HZ|auto",
        help="The A that was tuned to, 380 to 480 Hz; auto: estimate it from the take.",
    ),
]
TemperamentOption = Annotated[
    str | None,
    typer.Option("--temperament", metavar="NAME", help="equal, pythagorean or just."),
]
TonicOption = Annotated[
    str | None,
    typer.Option("--tonic", metavar="NOTE", help="Tonic of the temperament, e.g. Eb."),
]
PulseOption = Annotated[
    float | None,
    typer.Option("--pulse", metavar="BPM", help="The beat that was meant; anchors the tempo."),
]
OpenStringsOption = Annotated[
    str | None,
    typer.Option(
        "--open-strings",
        metavar="NOTES",
        help="Open strings as tuned, low to high, e.g. 'C3 G3 D4 A4'.",
    ),
]
AccompaniedOption = Annotated[
    bool, typer.Option("--accompanied", help="A piano or a backing sound plays too.")
]
GainOption = Annotated[
    str | None,
    typer.Option(
        "--automatic-gain",
        metavar="off|on|unknown",
        help="Whether the input set its level by itself, as phones do.",
    ),
]
HarmonicsOption = Annotated[
    str | None,
    typer.Option(
        "--harmonics",
        metavar="NOTES",
        help="Notes played as harmonics, by their sounding names, e.g. 'A5 E6'; or all.",
    ),
]
MuteOption = Annotated[bool, typer.Option("--with-mute", help="Played with a mute.")]
GAIN_ANSWERS = ("off", "on", "unknown")


def playing_settings(  # noqa: PLR0917 - one parameter an option
    base: PlayingSettings,
    instrument: str | None,
    reference_a: str | None,
    temperament: str | None,
    tonic: str | None,
    pulse: float | None,
    open_strings: str | None,
    accompanied: bool,
    automatic_gain: str | None = None,
    with_mute: bool = False,
    harmonics: str | None = None,
) -> PlayingSettings:
    """Put the options that were given over the settings that hold otherwise."""
    changes: dict[str, Any] = {}
    if instrument is not None:
        changes["instrument"] = instrument.strip().lower()
    if reference_a is not None:
        changes["reference_a_hz"] = _reference_hz(reference_a)
    if temperament is not None:
        changes["temperament"] = temperament.strip().lower()
    if tonic is not None:
        changes["tonic"] = tonic.strip()
    if pulse is not None:
        changes["pulse_bpm"] = pulse
    if open_strings is not None:
        changes["open_strings"] = tuple(open_strings.replace(",", " ").split()) or None
    if accompanied:
        changes["accompanied"] = True
    if automatic_gain is not None:
        changes["automatic_gain"] = _gain_answer(automatic_gain)
    if with_mute:
        changes["with_mute"] = True
    if harmonics is not None:
        changes["harmonics"] = tuple(harmonics.replace(",", " ").split())
    return replace(base, **changes)


def _gain_answer(text: str) -> str:
    answer = text.strip().lower()
    if answer not in GAIN_ANSWERS:
        raise PlainFailure(
            f"'{text}' says nothing about automatic gain.", "Say off, on or unknown."
        )
    return answer


def _reference_hz(text: str) -> float | None:
    if text.strip().lower() == "auto":
        return None
    try:
        return float(text.replace(",", "."))
    except ValueError as problem:
        raise PlainFailure(
            f"'{text}' is not a frequency.", "Give the A in Hz, e.g. 442, or auto."
        ) from problem


def day_from(text: str) -> date:
    """Read a day as it is typed, ``2026-03-14``."""
    try:
        return date.fromisoformat(text.strip())
    except ValueError as problem:
        raise PlainFailure(
            f"'{text}' is not a day.", "Write it as year-month-day, e.g. 2026-03-14."
        ) from problem


def looks_like_a_file(text: str) -> bool:
    """Say whether a text that names a take or a file ends as the names of files do.

    A take may be named ``Op. 3: Largo:2026-03-14:1``, so not every dot begins a suffix.
    """
    return bool(_FILE_SUFFIX.search(text))
