"""``compare``: two files, or two takes of the journal."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from app.cli.console import say, say_json, watched
from app.cli.options import (
    AccompaniedOption,
    InstrumentOption,
    JournalOption,
    JsonOption,
    OpenStringsOption,
    PulseOption,
    ReferenceOption,
    TemperamentOption,
    TonicOption,
    looks_like_a_file,
    playing_settings,
)
from app.cli.pictures import (
    MEASURE,
    MeasureOption,
    PictureOf,
    PictureOfOption,
    PictureOption,
    refuse_early,
    save_of_takes,
    save_pair,
)
from app.cli.program import Program
from app.journal.failures import PlainFailure
from app.journal.records import PlayingSettings

if TYPE_CHECKING:
    from app.services.file_comparing import Comparison


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("compare")(compare)


def compare(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    a: Annotated[str, typer.Argument(metavar="A", help="The earlier take: a file, or a take.")],
    b: Annotated[str, typer.Argument(metavar="B", help="The later take.")],
    json: JsonOption = False,
    instrument: InstrumentOption = None,
    reference_a: ReferenceOption = None,
    temperament: TemperamentOption = None,
    tonic: TonicOption = None,
    pulse: PulseOption = None,
    open_strings: OpenStringsOption = None,
    accompanied: AccompaniedOption = False,
    picture: PictureOption = None,
    picture_of: PictureOfOption = PictureOf.BEFORE_AFTER,
    measure: MeasureOption = MEASURE,
    journal: JournalOption = None,
) -> None:
    """Compare two takes of a passage; every change is B minus A."""
    if picture is not None:
        refuse_early(picture)
    given = (instrument, reference_a, temperament, tonic, pulse, open_strings, accompanied)
    path_a, path_b = Path(a), Path(b)
    folder = Program.of(context).journal(journal)
    if all(_is_free_file(text, folder) for text in (a, b)):
        from app.services.file_comparing import compare_files  # noqa: PLC0415 - only when run

        settings = playing_settings(PlayingSettings(), *given)
        found = watched(
            "comparing",
            lambda progress, stop: compare_files(
                path_a, path_b, settings, progress=progress, should_stop=stop
            ),
        )
    else:
        if any(value not in (None, False) for value in given):
            raise PlainFailure(
                "The settings of takes are kept in the journal.",
                "Leave the options out, or compare the files to try other settings.",
            )
        drawn = None if picture is None else (picture, picture_of, measure)
        found = _compare_takes(context, a, b, journal, drawn)
        picture = None
    if picture is not None:
        save_pair(found, picture, picture_of)
    if json:
        say_json(found.as_json())
    else:
        from app.services.comparison_text import comparison_text  # noqa: PLC0415

        say(comparison_text(found))


def _is_free_file(text: str, folder: Path) -> bool:
    """Say whether a text names a file as such, not one given inside the journal."""
    if Path(text).exists():
        return True
    return looks_like_a_file(text) and not (folder / text).is_file()


def _compare_takes(
    context: typer.Context,
    a: str,
    b: str,
    journal: Path | None,
    drawn: tuple[Path, PictureOf, str] | None,
) -> "Comparison":
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        take_a, take_b = bench.filing.resolve(a), bench.filing.resolve(b)
        found = watched(
            "comparing",
            lambda progress, stop: bench.comparing.judged_comparison(
                take_a, take_b, progress, stop
            ),
        )
        if drawn is not None:
            save_of_takes(bench, (take_a, take_b), *drawn)
        return found
