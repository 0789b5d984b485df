"""Bundles and replies on the command line: written by ``export``, taken in by ``import``."""

from collections.abc import Iterable
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from app.cli.console import stopping_on_interrupt, watched
from app.journal.bundle_names import BUNDLE_SUFFIX, REPLY_SUFFIX
from app.journal.failures import PlainFailure

if TYPE_CHECKING:
    from app.services.bundling.replying import ReplyReport
    from app.services.bundling.service import MergeReport
    from app.services.workbench import Workbench


def sorted_out(files: Iterable[Path]) -> tuple[list[Path], list[Path]]:
    """Tell sound files from bundles and replies."""
    sounds: list[Path] = []
    others: list[Path] = []
    for path in files:
        is_other = path.suffix.lower() in {BUNDLE_SUFFIX, REPLY_SUFFIX}
        (others if is_other else sounds).append(path)
    return sounds, others


def take_in(bench: "Workbench", path: Path) -> "MergeReport | ReplyReport":
    """Merge a bundle, or take a reply in."""
    if path.suffix.lower() == REPLY_SUFFIX:
        return bench.replies.receive(path)
    return watched("merging", lambda progress, stop: bench.bundles.merge(path, progress, stop))


def brought_text(found: "MergeReport | ReplyReport") -> str:
    """Say what a bundle or a reply brought."""
    from app.services.bundling.words import brought_sentence  # noqa: PLC0415 - only when run

    return brought_sentence(found)


def write_reply(bench: "Workbench", target: Path) -> Path:
    """Write what was added to an opened bundle."""
    path = target / f"reply{REPLY_SUFFIX}" if target.is_dir() else target
    bench.replies.write(path)
    return path


def write_bundle(
    bench: "Workbench",
    days: tuple[date, date],
    target: Path,
    *,
    with_video: bool,
    whole_record: bool,
) -> Path:
    """Write days into a bundle."""
    first, last = days
    path = target / f"practice-{first}-{last}{BUNDLE_SUFFIX}" if target.is_dir() else target
    if path.suffix.lower() != BUNDLE_SUFFIX:
        raise PlainFailure(
            f"A bundle's name ends in {BUNDLE_SUFFIX}.", f"Name it {path.stem}{BUNDLE_SUFFIX}."
        )
    with stopping_on_interrupt() as should_stop:
        bench.bundles.write(
            first,
            last,
            path,
            with_video=with_video,
            whole_record=whole_record,
            should_stop=should_stop,
        )
    return path
