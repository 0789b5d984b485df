"""``repair``: check a journal, and rebuild a lost database from the sidecars."""

import dataclasses
from typing import TYPE_CHECKING

import typer

from app.cli.console import say, say_json, watched
from app.cli.options import JournalOption, JsonOption
from app.cli.program import Program

if TYPE_CHECKING:
    from app.services.views import RepairReport


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("repair")(repair)


def repair(context: typer.Context, journal: JournalOption = None, json: JsonOption = False) -> None:
    """Check the journal and mend what can be mended; recordings are only read."""
    program = Program.of(context)
    folder = program.journal(journal)
    found = watched("checking", lambda progress, stop: program.repair(folder, progress, stop))
    if json:
        say_json(dataclasses.asdict(found))
    else:
        say(repair_text(found))


def repair_text(found: "RepairReport") -> str:
    """Say what a repair found and did."""
    from app.services.wording import counted  # noqa: PLC0415 - only when run

    lines = []
    if found.rebuilt:
        source = f" and the backup {found.backup_used}" if found.backup_used else ""
        lines.append(f"The database was rebuilt from the notes beside the recordings{source}.")
    if found.set_aside:
        lines.append(f"The damaged one is kept in {found.set_aside}.")
    lines.append(f"{counted(found.takes, 'take')} in the journal.")
    if found.sidecars_written:
        lines.append(f"{counted(found.sidecars_written, 'note')} beside recordings written anew.")
    for label, files in (
        ("Notes that cannot be read", found.sidecars_unreadable),
        ("Recordings that are missing", found.recordings_missing),
        ("Recordings with other bytes than when they were filed", found.recordings_changed),
        ("Files that belong to no take (import them)", found.recordings_unfiled),
    ):
        if files:
            lines += [f"{label}:", *(f"  {file}" for file in files)]
    return "\n".join(lines)
