"""``measure``: one file, or the takes of the journal that wait for it."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from app.cli.console import remark, say, say_json, watched
from app.cli.options import (
    AccompaniedOption,
    GainOption,
    HarmonicsOption,
    InstrumentOption,
    JournalOption,
    JsonOption,
    MuteOption,
    OpenStringsOption,
    PulseOption,
    ReferenceOption,
    TemperamentOption,
    TonicOption,
    looks_like_a_file,
    playing_settings,
)
from app.cli.program import Program
from app.journal.failures import PlainFailure
from app.journal.records import PlayingSettings

if TYPE_CHECKING:
    from app.journal.scores import Score
    from app.services.reading_views import NamedReading

# Nobody knows what made a file that lies somewhere on the disk.
_OF_A_FILE = PlayingSettings(automatic_gain="unknown")


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("measure")(measure)


def measure(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    file: Annotated[
        str | None,
        typer.Argument(
            metavar="[FILE]",
            help="A sound file, or a take of the journal; without one: every take that waits.",
        ),
    ] = None,
    json: JsonOption = False,
    curves: Annotated[bool, typer.Option("--curves", help="Add the curves to --json.")] = False,
    instrument: InstrumentOption = None,
    reference_a: ReferenceOption = None,
    temperament: TemperamentOption = None,
    tonic: TonicOption = None,
    pulse: PulseOption = None,
    open_strings: OpenStringsOption = None,
    accompanied: AccompaniedOption = False,
    automatic_gain: GainOption = None,
    with_mute: MuteOption = False,
    harmonics: HarmonicsOption = None,
    score: Annotated[
        Path | None,
        typer.Option("--score", metavar="SCORE", help="MusicXML or MIDI of what is played."),
    ] = None,
    part: Annotated[
        int, typer.Option("--part", metavar="N", min=1, help="Which part of it, from 1.")
    ] = 1,
    bars: Annotated[
        str | None, typer.Option("--bars", metavar="BARS", help="Its bars, e.g. 1-8, 17-24.")
    ] = None,
    journal: JournalOption = None,
) -> None:
    """Measure intonation, tempo and dynamics.

    A file is measured as it is; no journal is needed and nothing is kept.
    """
    given = (
        instrument, reference_a, temperament, tonic, pulse, open_strings, accompanied,
        automatic_gain, with_mute, harmonics,
    )  # fmt: skip
    if file is None:
        _measure_waiting(context, journal, json)
        return
    is_file = Path(file).exists() or looks_like_a_file(file)
    if is_file and not _is_take(context, file, journal):
        written = _written(score, part, bars)
        _measure_file(Path(file), playing_settings(_OF_A_FILE, *given), written, json, curves)
        return
    _measure_take(context, file, journal, (*given, score, bars), json, curves)


def _is_take(context: typer.Context, text: str, journal: Path | None) -> bool:
    """Say whether a file's name means a take: only one that is given inside the journal."""
    folder = Program.of(context).journal(journal)
    return not Path(text).exists() and (folder / text).is_file()


def _written(score: Path | None, part: int, bars: str | None) -> "Score | None":
    if score is None:
        return None
    from app.journal.scores import bar_spans, within_bars  # noqa: PLC0415 - only when run
    from app.services.score_worker import read_apart  # noqa: PLC0415

    parts = watched(score.name, lambda _progress, stop: read_apart(score, stop))
    if part > len(parts):
        raise PlainFailure(f"The score has no part number {part}.", f"It has {len(parts)}.")
    return within_bars(parts[part - 1], bar_spans(bars or ""))


def _measure_file(
    path: Path, settings: PlayingSettings, written: "Score | None", json: bool, curves: bool
) -> None:
    from app.services.file_measuring import measure_file  # noqa: PLC0415 - only when run

    report = watched(
        path.name,
        lambda progress, stop: measure_file(path, settings, progress, stop, score=written),
    )
    if report.notice:
        remark(report.notice)
    if json:
        say_json(report.as_json(curves))
    else:
        say(summary_text(report.as_json()))


def _measure_take(  # noqa: PLR0917
    context: typer.Context,
    text: str,
    journal: Path | None,
    given: tuple[object, ...],
    json: bool,
    curves: bool,
) -> None:
    if any(value not in (None, False) for value in given):
        raise PlainFailure(
            "The settings of a take are kept in the journal.",
            "Change them on the Listen page, or measure its file to try other settings.",
        )
    program = Program.of(context)
    folder = program.journal(journal)
    if not folder.is_dir():
        raise PlainFailure(f"{text} is not there.", "Check the name and the folder.")
    with program.open_workbench(folder, create=False) as bench:
        take_id = bench.filing.resolve(text)
        watched(text, lambda progress, stop: bench.measuring.measure(take_id, progress, stop))
        report = bench.measuring.report(take_id)
        if json:
            say_json(report.as_json(curves))
        else:
            say(summary_text(report.as_json()))


def _measure_waiting(context: typer.Context, journal: Path | None, json: bool) -> None:
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        waiting = bench.measuring.waiting()

        def measure_all(progress, stop):  # type: ignore[no-untyped-def]
            return bench.measuring.measure_all(waiting, progress, stop)

        rows = watched("measuring", measure_all)
        if json:
            say_json([bench.measuring.report(row.id).as_json() for row in rows])
            return
        from app.services.wording import counted  # noqa: PLC0415

        say(f"{counted(len(rows), 'take')} measured." if rows else "Every take is measured.")


def summary_text(found: dict[str, object]) -> str:
    """Give the take-level numbers of a machine-readable object as lines."""
    from app.services.findings import finding_readings  # noqa: PLC0415
    from app.services.readings import named_readings  # noqa: PLC0415
    from app.services.wording import (  # noqa: PLC0415
        columns_text,
        counted,
        length_text,
        reading_text,
    )

    notes = found["notes"]
    duration_s = found["duration_s"]
    if not isinstance(notes, list) or not isinstance(duration_s, float):
        raise TypeError("not a machine-readable measurement")
    head = f"{found['file']}: {length_text(duration_s)}, {counted(len(notes), 'note')}"
    rows = [
        (f"  {r.label}", _with_basis(reading_text(r.reading), r)) for r in named_readings(found)
    ]
    rows += [(f"  {r.label}", reading_text(r.reading)) for r in finding_readings(found)]
    rows += _note_rows(notes)
    return head + "\n" + columns_text(rows)


def _with_basis(text: str, line: "NamedReading") -> str:
    from app.services.reading_views import Reading  # noqa: PLC0415

    is_number = isinstance(line.reading, Reading)
    return f"{text} ({line.basis})" if is_number and line.basis else text


def _note_rows(notes: list[object]) -> list[tuple[str, str]]:
    """List the notes that lie outside every plausible target."""
    from app.services.wording import number_text, position_text  # noqa: PLC0415

    rows = []
    for note in notes:
        if not isinstance(note, dict) or note.get("verdict") != "out" or note.get("left_out"):
            continue
        name = note.get("spelled") or note.get("name")
        deviation = number_text(note["deviation_cents"], 1, signed=True)
        label = f"  Out: {name} at {position_text(note['start_s'])}"
        rows.append((label, f"{deviation} ± {note['uncertainty_cents']:.1f} cents"))
    return rows
