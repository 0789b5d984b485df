"""``share``: clips to be given away; nothing is sent anywhere."""

import dataclasses
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from app.cli.console import remark, say, say_json, watched
from app.cli.options import JournalOption, JsonOption
from app.cli.program import Program
from app.journal.failures import PlainFailure

if TYPE_CHECKING:
    from app.journal.sharing import SharedClip
    from app.services.sharing.service import SharePreview
    from app.services.workbench import Workbench


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("share")(share)


def share(
    context: typer.Context,
    takes: Annotated[list[str], typer.Argument(metavar="TAKE...", help="One or several takes.")],
    *,
    to: Annotated[Path, typer.Option("--to", help="Folder, or a file for one clip.")] = Path(),
    start: Annotated[float, typer.Option("--from", metavar="S", help="Where it begins.")] = 0.0,
    end: Annotated[
        float | None, typer.Option("--until", metavar="S", help="Where it ends; else a minute on.")
    ] = None,
    form: Annotated[
        str,
        typer.Option(
            "--form",
            help="m4a: sound alone; card: with a title card; measured: deviation and sound"
            " moving; film: the take's own picture.",
        ),
    ] = "m4a",
    loudness: Annotated[
        float, typer.Option("--lufs", help="Integrated loudness, -30 to -10 LUFS.")
    ] = -16.0,
    fade: Annotated[float, typer.Option("--fade", metavar="S", help="In and out.")] = 0.5,
    longest: Annotated[
        float, typer.Option("--longest", metavar="S", help="How long a clip may be.")
    ] = 60.0,
    promise: Annotated[
        str, typer.Option("--promise", metavar="NAME", help="Print the numbers of a promise.")
    ] = "",
    says: Annotated[str, typer.Option("--says", help="A line of your own for the title.")] = "",
    preview: Annotated[
        bool, typer.Option("--preview", help="Only say what it would be; writes nothing.")
    ] = False,
    journal: JournalOption = None,
    json: JsonOption = False,
) -> None:
    """Make clips to be shared: cut, levelled, with a title, and with nothing private inside."""
    from app.services.sharing.choice import ShareChoice, ShareForm  # noqa: PLC0415

    program = Program.of(context)
    if form not in set(ShareForm):
        raise PlainFailure(f"'{form}' is no form of a clip.", f"Choose {', '.join(ShareForm)}.")
    with program.open_workbench(program.journal(journal), create=False, read_only=preview) as bench:
        promise_id = _promise(bench, promise) if promise else None
        choices = [
            ShareChoice(
                bench.filing.resolve(take), start, end, ShareForm(form), longest_s=longest,
                fade_s=fade, target_lufs=loudness, promise_id=promise_id, says=says,
            )
            for take in takes
        ]  # fmt: skip
        if preview:
            seen = [bench.sharing.preview(choice) for choice in choices]
            if json:
                say_json([_preview_object(one) for one in seen])
            else:
                say("\n\n".join(map(_preview_text, seen)))
            return
        if len(choices) == 1 and not to.is_dir():
            one = watched(
                "clip", lambda report, stop: bench.sharing.make(choices[0], to, report, stop)
            )
            clips: tuple[SharedClip, ...] = (one,)
        else:
            clips = watched(
                "clips",
                lambda report, stop: bench.sharing.make_several(choices, to, report, stop),
            )
    from app.services.sharing.service import FACES  # noqa: PLC0415

    if json:
        say_json([dataclasses.asdict(c) | _dates(c) for c in clips])
    else:
        for clip in clips:
            say(f"{clip.file_name}  {clip.numbers}".rstrip())
        remark(FACES)


def _promise(bench: "Workbench", name: str) -> str:
    views = bench.promises.list()
    found = [v.promise.id for v in views if v.promise.name.casefold() == name.strip().casefold()]
    if not found:
        known = ", ".join(view.promise.name for view in views) or "none"
        raise PlainFailure(f"There is no promise '{name}'.", f"There is: {known}.")
    return found[0]


def _dates(clip: "SharedClip") -> dict[str, str]:
    return {name: str(getattr(clip, name).isoformat()) for name in ("practice_day", "shared_at")}


def _preview_object(seen: "SharePreview") -> dict[str, object]:
    return {
        "title": list(seen.title),
        "duration_s": seen.duration_s,
        "sound": seen.sound_sentence,
        "left_out": list(seen.left_out),
        "file_name": seen.file_name,
    }


def _preview_text(seen: "SharePreview") -> str:
    lines = [
        seen.file_name,
        f"  says: {' / '.join(seen.title)}",
        f"  {seen.duration_s:.1f} s. {seen.sound_sentence}",
    ]
    if seen.left_out:
        lines.append("  stays behind: " + "; ".join(seen.left_out))
    return "\n".join([*lines, f"  {seen.caution}"])
