"""``score``: what is written: put beside a passage, made by rule, or shown."""

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from app.cli.console import say, say_json, watched
from app.cli.options import InstrumentOption, JournalOption, JsonOption
from app.cli.program import Program
from app.journal.codec import encoded
from app.journal.scale_records import Figure, Mode, Rhythm, ScaleSpec
from app.journal.scores import bar_span, bar_spans, spans_text

if TYPE_CHECKING:
    from app.journal.records import Passage
    from app.journal.scores import Score

PassageArgument = Annotated[
    str, typer.Argument(metavar="PASSAGE", help="Name, 'piece: name', or id.")
]
FileArgument = Annotated[
    Path, typer.Argument(metavar="FILE", help="MusicXML (.musicxml, .mxl, .xml) or MIDI.")
]
PartOption = Annotated[
    int, typer.Option("--part", metavar="N", min=1, help="Which part of the score, from 1.")
]
BarsOption = Annotated[
    str | None, typer.Option("--bars", metavar="BARS", help="The passage's bars, e.g. 1-8.")
]


def add_to(app: typer.Typer) -> None:
    """Add the commands."""
    score = typer.Typer(help="Scores: what is written for a passage.", no_args_is_help=True)
    score.command("attach")(attach)
    score.command("remove")(remove)
    score.command("show")(show)
    score.command("parts")(parts)
    score.command("scale")(scale)
    score.command("bars")(bars_of_take)
    app.add_typer(score, name="score")


def attach(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    passage: PassageArgument,
    file: FileArgument,
    part: PartOption = 1,
    bars: BarsOption = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Put a score beside a passage; a copy of the file is kept in the journal.

    A passage that is not there is added.
    """
    program = Program.of(context)
    from app.services.scores import chosen_part  # noqa: PLC0415 - only when run

    span = bar_span(bars) if bars else None
    with program.open_workbench(program.journal(journal)) as bench:
        # Read first: what is no score must not leave a new passage behind.
        read = watched(
            file.name, lambda progress, stop: bench.scores.parts_of(file, progress, stop)
        )
        chosen_part(read, part - 1, span)
        found, _ = bench.passages.find_or_add(passage)
        kept = watched(
            file.name,
            lambda progress, stop: bench.scores.attach(
                found.id, file, part - 1, span, progress, stop
            ),
        )
        _say_passage(kept, bench.scores.of_passage(kept.id), json)


def remove(context: typer.Context, passage: PassageArgument, journal: JournalOption = None) -> None:
    """Take the score of a passage away; the copy of the file stays in the journal."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        kept = bench.scores.remove(bench.passages.find(passage).id)
        say(f"{kept.name} has no score now.")


def show(
    context: typer.Context,
    passage: PassageArgument,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Show what is written for a passage."""
    program = Program.of(context)
    with program.open_workbench(program.journal(journal), create=False, read_only=True) as bench:
        found = bench.passages.find(passage)
        score = watched(
            found.name, lambda progress, stop: bench.scores.of_passage(found.id, progress, stop)
        )
        _say_passage(found, score, json)


def parts(file: FileArgument, json: JsonOption = False) -> None:
    """List the parts of a score file; no journal is needed."""
    from app.services.score_worker import read_apart  # noqa: PLC0415 - only when run

    found = watched(file.name, lambda _progress, stop: read_apart(file, stop))
    if json:
        say_json({"file": str(file), "parts": [_part_object(part) for part in found]})
        return
    for number, part in enumerate(found, start=1):
        say(f"{number}  {_part_text(part)}")


def scale(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    tonic: Annotated[str, typer.Argument(metavar="TONIC", help="As it sounds, e.g. Eb or F#.")],
    mode: Annotated[Mode, typer.Option("--mode", help="Which notes.")] = Mode.MAJOR,
    figure: Annotated[Figure, typer.Option("--figure", help="In which order.")] = Figure.SCALE,
    octaves: Annotated[int, typer.Option("--octaves", metavar="N", help="1 to 4.")] = 1,
    start: Annotated[
        int | None,
        typer.Option("--start", metavar="OCTAVE", help="Octave of the first note; 4: middle C."),
    ] = None,
    notes_a_beat: Annotated[int, typer.Option("--notes-a-beat", metavar="N", help="1 to 4.")] = 2,
    rhythm: Annotated[Rhythm, typer.Option("--rhythm", help="How they share it.")] = Rhythm.EVEN,
    slurred: Annotated[
        int, typer.Option("--slurred", metavar="N", help="Notes in one bow or breath.")
    ] = 1,
    instrument: InstrumentOption = None,
    passage: Annotated[
        str | None, typer.Option("--passage", metavar="PASSAGE", help="Give it to this one.")
    ] = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Make a passage of a scale, an arpeggio or broken thirds; it needs no file."""
    program = Program.of(context)
    spec = ScaleSpec(
        tonic=tonic[:1].upper() + tonic[1:],
        mode=mode,
        figure=figure,
        octaves=octaves,
        notes_a_beat=notes_a_beat,
        rhythm=rhythm,
        slurred=slurred,
    )
    with program.open_workbench(program.journal(journal)) as bench:
        settings = bench.practising.settings().default_settings
        if instrument is not None:
            settings = replace(settings, instrument=instrument.strip().lower())
        there = bench.passages.find(passage) if passage is not None else None
        player = there.settings.instrument if there else settings.instrument
        possible = bench.scores.start_octaves(spec, player)
        chosen = start if start is not None else next(iter(possible), spec.start_octave)
        spec = replace(spec, start_octave=chosen)
        if there is not None:
            kept = bench.scores.write_scale(there.id, spec)
        else:
            kept = bench.scores.add_scale(spec, settings)
        _say_passage(kept, bench.scores.of_passage(kept.id), json)


def bars_of_take(
    context: typer.Context,
    take: Annotated[str, typer.Argument(metavar="TAKE", help="Start of its id, or its file.")],
    bars: Annotated[
        str, typer.Argument(metavar="BARS", help="e.g. 1-8 or '1-8, 17-24'; all: the whole.")
    ],
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Say which bars of its passage a take holds."""
    program = Program.of(context)
    spans = () if bars.strip().lower() == "all" else bar_spans(bars)
    with program.open_workbench(program.journal(journal), create=False) as bench:
        kept = bench.scores.set_parts(bench.filing.resolve(take), spans)
        if json:
            say_json({"take": kept.id, "bars": [[one.first, one.last] for one in kept.parts]})
            return
        what = f"bars {spans_text(kept.parts)}" if kept.parts else "the whole passage"
        say(f"The take holds {what}.")


def _say_passage(passage: "Passage", score: "Score | None", json: bool) -> None:
    from app.services.passages import passage_title  # noqa: PLC0415 - only when run
    from app.services.scores import score_words  # noqa: PLC0415

    if json:
        say_json(
            {
                "passage": {"id": passage.id, "piece": passage.piece, "name": passage.name},
                "source": encoded(passage.score) if passage.score else None,
                "score": encoded(score) if score else None,
            }
        )
        return
    if score is None:
        say(f"{passage_title(passage)} has no score.")
        return
    say(f"{passage_title(passage)}: {score_words(passage)}")
    say(f"  {_part_text(score)}")
    for notice in score.notices:
        say(f"  {notice}")
    line = ""
    for bar in score.bars:
        names = [n.name for n in score.notes if n.bar == bar.number and n.turn == bar.turn]
        again = f" (again, {bar.turn})" if bar.turn > 1 else ""
        line += f"\n  bar {bar.number}{again}: {' '.join(names) or 'rest'}"
    say(line.lstrip("\n"))


def _part_text(part: "Score") -> str:
    from app.services.wording import counted, number_text  # noqa: PLC0415 - only when run

    numbers = sorted({bar.number for bar in part.bars})
    bars = f"bars {numbers[0]} to {numbers[-1]}" if numbers else "no bars"
    tempo = f", {number_text(part.tempo_bpm, 0)} BPM" if part.tempo_bpm else ""
    head = part.part or part.title
    return f"{head}: {counted(len(part.notes), 'note')}, {bars}{tempo}"


def _part_object(part: "Score") -> dict[str, object]:
    numbers = [bar.number for bar in part.bars]
    return {
        "name": part.part,
        "title": part.title,
        "notes": len(part.notes),
        "first_bar": min(numbers, default=None),
        "last_bar": max(numbers, default=None),
        "tempo_bpm": part.tempo_bpm,
        "notices": list(part.notices),
    }
