"""``repair``: check a journal, rebuild a lost database, go back to a backup."""

import dataclasses
from typing import TYPE_CHECKING, Annotated

import typer

from app.cli.console import EXPECTED_FAILURE, say, say_json, watched
from app.cli.options import JournalOption, JsonOption
from app.cli.program import Program
from app.journal.failures import PlainFailure

if TYPE_CHECKING:
    from app.services.repairing import BackupRow, RepairReport, RestoreReport


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("repair")(repair)


def repair(
    context: typer.Context,
    *,
    journal: JournalOption = None,
    backups: Annotated[
        bool, typer.Option("--backups", help="Only list the backups, the newest first.")
    ] = False,
    back_up: Annotated[bool, typer.Option("--back-up", help="Only make a backup, now.")] = False,
    restore: Annotated[
        str,
        typer.Option(
            metavar="BACKUP",
            help="Go back to a backup (its date or file name). Recordings are kept, also"
            " younger ones; what is replaced is set aside.",
        ),
    ] = "",
    json: JsonOption = False,
) -> None:
    """Check the journal and mend what can be mended; recordings are only read.

    Ends with exit code 2 where a recording is missing or changed, or notes cannot be read.
    """
    if backups + back_up + bool(restore) > 1:
        raise PlainFailure(
            "Only one of --backups, --back-up and --restore at a time.", "Choose one of them."
        )
    program = Program.of(context)
    folder = program.journal(journal)
    if backups:
        from app.services.repairing import backups_of  # noqa: PLC0415 - only when run

        _list(backups_of(folder), json)
    elif back_up:
        with program.open_workbench(folder, create=False) as bench:
            _list((bench.backups.make(),), json)
    elif restore:
        gone_back = watched(
            "restoring", lambda progress, stop: program.restore(folder, restore, progress, stop)
        )
        _print(gone_back, restore_text(gone_back), json)
    else:
        found = watched("checking", lambda progress, stop: program.repair(folder, progress, stop))
        _print(found, repair_text(found), json)
        if found.recordings_missing or found.recordings_changed or found.sidecars_unreadable:
            raise typer.Exit(EXPECTED_FAILURE)


def _print(found: "RepairReport | RestoreReport", text: str, json: bool) -> None:
    if json:
        say_json(dataclasses.asdict(found))
    else:
        say(text)


def _list(rows: "tuple[BackupRow, ...]", json: bool) -> None:
    from app.services.wording import size_text  # noqa: PLC0415 - only when run

    if json:
        say_json([{**dataclasses.asdict(row), "made_at": row.made_at.isoformat()} for row in rows])
        return
    for row in rows:
        why = f", {row.reason}" if row.reason else ""
        say(f"{row.made_at:%Y-%m-%d %H:%M}  {row.name}  {size_text(row.size_bytes)}{why}")
    if not rows:
        say("There is no backup yet; one is made on every day on which something changed.")


def restore_text(found: "RestoreReport") -> str:
    """Say what going back to a backup did."""
    from app.services.wording import counted  # noqa: PLC0415 - only when run

    lines = [
        f"The journal is as it was in {found.backup_used}: {counted(found.takes, 'take')},"
        " measured again from now on."
    ]
    if found.takes_kept:
        lines.append(
            f"{counted(len(found.takes_kept), 'younger recording')} stayed, with the notes"
            " beside them."
        )
    if found.way_back:
        lines.append(f"What was replaced is kept as {found.way_back}; go back to that to undo.")
    elif found.set_aside:
        lines.append(f"What was replaced is kept in {found.set_aside}.")
    return "\n".join(lines)


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
    if found.recordings_missing or found.recordings_changed:
        lines.append(
            "Copy these files from the old computer or a copy of the journal to the same place,"
            " then run 'passagework repair' again."
        )
    if found.takes and not (found.recordings_missing or found.recordings_changed):
        lines.append("Every recording is there, with the bytes it was filed with.")
    return "\n".join(lines)
