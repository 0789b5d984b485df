"""``follow passage``: what a passage is called and how its new takes are measured."""

from dataclasses import replace
from typing import TYPE_CHECKING, Annotated, Any

import typer

from app.cli.console import say, say_json
from app.cli.options import (
    AccompaniedOption,
    InstrumentOption,
    JournalOption,
    JsonOption,
    OpenStringsOption,
    ReferenceOption,
    TemperamentOption,
    TonicOption,
    playing_settings,
)
from app.cli.program import Program

if TYPE_CHECKING:
    from app.journal.records import Passage, PlayingSettings

PieceOption = Annotated[
    str | None, typer.Option("--piece", metavar="TEXT", help="Piece it belongs to.")
]
NameOption = Annotated[
    str | None, typer.Option("--name", metavar="TEXT", help="What it is called from now on.")
]
BarsOption = Annotated[str | None, typer.Option("--bars", metavar="TEXT", help="Its bars.")]
TempoOption = Annotated[
    float | None,
    typer.Option("--tempo", metavar="BPM", help="The beat that is meant; 0 takes it back."),
]
_TONIC = 3  # its place among the settings that are given


def passage(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    named: Annotated[str, typer.Argument(metavar="PASSAGE", help="A passage by its name.")],
    piece: PieceOption = None,
    name: NameOption = None,
    bars: BarsOption = None,
    instrument: InstrumentOption = None,
    temperament: TemperamentOption = None,
    tonic: TonicOption = None,
    tempo: TempoOption = None,
    reference_a: ReferenceOption = None,
    open_strings: OpenStringsOption = None,
    accompanied: AccompaniedOption = False,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Show or change a passage; takes that are there already keep their own settings."""
    program = Program.of(context)
    words = {"piece": piece, "name": name, "bars": bars}
    given = (instrument, reference_a, temperament, tonic, tempo, open_strings, accompanied)
    looking = all(value is None or value is False for value in (*words.values(), *given))
    with program.open_workbench(program.journal(journal), create=False, read_only=looking) as bench:
        from app.services.following_json import passage_object  # noqa: PLC0415 - only when run

        found = bench.passages.find(named)
        if not looking:
            settings = _settings(found.settings, given)
            new: dict[str, Any] = {
                key: " ".join(text.split()) for key, text in words.items() if text is not None
            }
            found = bench.passages.change(replace(found, settings=settings, **new))
    if json:
        say_json(passage_object(found))
    else:
        say(_text(found))


def _settings(kept: "PlayingSettings", given: tuple[Any, ...]) -> "PlayingSettings":
    """Put what was given over a passage's settings; they must make sense together."""
    from app.services.file_measuring import checked_settings  # noqa: PLC0415 - only when run

    settings = playing_settings(kept, *given)
    if settings.pulse_bpm == 0:
        settings = replace(settings, pulse_bpm=None)
    if settings.temperament == "equal" and given[_TONIC] is None:
        settings = replace(settings, tonic=None)
    checked_settings(settings)
    return settings


def _text(found: "Passage") -> str:
    from app.services.passages import passage_title  # noqa: PLC0415 - only when run

    settings = found.settings
    a_hz = settings.reference_a_hz
    parts = [
        passage_title(found) + (f", {found.bars}" if found.bars else ""),
        settings.instrument,
        " ".join((settings.temperament, settings.tonic or "")).strip(),
        "A estimated from each take" if a_hz is None else f"A = {a_hz:g} Hz",
        "no stated tempo" if settings.pulse_bpm is None else f"{settings.pulse_bpm:g} BPM",
    ]
    if settings.open_strings:
        parts.append("strings " + " ".join(settings.open_strings))
    if settings.accompanied:
        parts.append("accompanied")
    return "; ".join(parts)
