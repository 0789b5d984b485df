"""``import``: files from elsewhere into the journal."""

from dataclasses import asdict, replace
from datetime import date as day_type
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from app.cli.bundles import brought_text, sorted_out, take_in
from app.cli.console import EXPECTED_FAILURE, remark, say, say_json, watched
from app.cli.options import JournalOption, JsonOption, day_from
from app.cli.program import Program
from app.journal.failures import PlainFailure

if TYPE_CHECKING:
    from app.services.views import ImportProposal, TakeRow
    from app.services.workbench import Workbench


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("import")(import_files)


def import_files(  # noqa: PLR0917 - one parameter an option
    context: typer.Context,
    files: Annotated[
        list[Path],
        typer.Argument(metavar="FILE...", help="Sound files, clips, or folders of them."),
    ],
    date: Annotated[
        str | None,
        typer.Option("--date", metavar="DAY", help="Practice day; else the file's own date."),
    ] = None,
    passage: Annotated[
        str | None,
        typer.Option("--passage", metavar="NAME", help="Passage; a new name makes a new one."),
    ] = None,
    start: Annotated[
        float, typer.Option("--start", metavar="S", help="Keep only what comes after this second.")
    ] = 0.0,
    end: Annotated[
        float | None,
        typer.Option("--end", metavar="S", help="Keep only what comes before this second."),
    ] = None,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """File sound files and clips as takes.

    The originals are copied byte for byte and stay where they are; with --start or
    --end the take is a part of one, which is kept whole beside it. Files that cannot
    be filed are named with the reason; the others are filed all the same.

    A bundle is merged into the journal, and a teacher's reply taken in; neither
    doubles or loses anything.
    """
    day = day_from(date) if date else None
    program = Program.of(context)
    files, others = sorted_out(files)
    with program.open_workbench(program.journal(journal)) as bench:
        brought = [take_in(bench, path) for path in others]
        if brought and not files:
            if json:
                say_json({"brought": [asdict(report) for report in brought]})
            else:
                say("\n".join(map(brought_text, brought)))
            return
        rows, failures = _import(bench, files, passage, day, (start, end))
        if json:
            say_json({"filed": [row_object(row) for row in rows], "not_filed": failures})
        else:
            for report in brought:
                say(brought_text(report))
            for row in rows:
                say(filed_text(row))
    for failure in failures:
        remark(failure["sentence"])
    if failures:
        raise typer.Exit(EXPECTED_FAILURE)


def _import(
    bench: "Workbench",
    files: list[Path],
    passage: str | None,
    day: day_type | None,
    part: tuple[float, float | None],
) -> "tuple[tuple[TakeRow, ...], list[dict[str, str]]]":
    from app.services.importing import SomeNotFiled  # noqa: PLC0415 - only when run

    proposals = watched(
        "reading", lambda progress, stop: bench.importing.propose(files, None, day, progress, stop)
    )
    if not proposals:  # folders only, with nothing in them that sounds
        named = ", ".join(path.name for path in files)
        raise PlainFailure(f"There is no sound file or clip in {named}.", "Name another folder.")
    failures = [
        {"file": str(p.path), "sentence": _why_not(p)}
        for p in proposals
        if p.failure or p.duplicate_of
    ]
    good = [
        replace(p, from_s=part[0], to_s=part[1])
        for p in proposals
        if not p.failure and not p.duplicate_of
    ]
    if passage and good:
        good = _into_passage(bench, good, passage)
    try:
        rows = watched("filing", lambda progress, stop: bench.importing.file(good, progress, stop))
    except SomeNotFiled as some:
        rows = some.rows
        failures += [
            {"file": str(path), "sentence": f"{failure.sentence} {failure.next_step}"}
            for path, failure in some.failures
        ]
    not_filed = {Path(failure["file"]) for failure in failures}
    _say_guessed_days([one for one in good if one.path not in not_filed])
    return rows, failures


def _into_passage(
    bench: "Workbench", proposals: "list[ImportProposal]", passage: str
) -> "list[ImportProposal]":
    found, is_new = bench.passages.find_or_add(passage)
    if is_new:
        remark(f"'{passage}' is a new passage; it has the journal's usual settings.")
    return [replace(proposal, passage_id=found.id) for proposal in proposals]


def _say_guessed_days(proposals: "list[ImportProposal]") -> None:
    from app.services.clip_days import is_guessed  # noqa: PLC0415 - only when run

    for one in proposals:
        if is_guessed(one.recorded_at_source):
            remark(
                f"{one.path.name}: the day comes from {one.recorded_at_source}. If it was"
                " another, import the file with --date."
            )


def _why_not(proposal: "ImportProposal") -> str:
    if proposal.failure:
        return proposal.failure
    return f"{proposal.path.name} is in the journal already: {proposal.duplicate_of}."


def filed_text(row: "TakeRow") -> str:
    """Say in one line where a take was filed."""
    from app.services.wording import day_text, length_text  # noqa: PLC0415 - only when run

    line = (
        f"{day_text(row.practice_day)}, {row.passage_name}, take {row.number}"
        f" ({length_text(row.duration_s)}): {row.file}"
    )
    return f"{line}\n  {row.notice}" if row.notice else line


def row_object(row: "TakeRow") -> dict[str, object]:
    """Give a filed take as JSON."""
    return {
        "id": row.id,
        "file": str(row.file),
        "practice_day": row.practice_day.isoformat(),
        "passage": row.passage_name,
        "number": row.number,
        "recorded_at": row.recorded_at.isoformat(),
        "duration_s": row.duration_s,
        "chosen_as": row.chosen_as.value if row.chosen_as else None,
    }
