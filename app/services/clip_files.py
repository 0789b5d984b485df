"""The file of a clip: decoded to its end once, then copied whole or in part."""

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from app.services.stopping import Progress, ShouldStop, stop_if, stopped_by
from app.services.take_filing import PlacedFile
from app.services.views import ImportProposal
from app.services.wording import counted
from audio.errors import AudioFailure

if TYPE_CHECKING:
    from audio.importing import ClipInfo

SHORTEST_S = 0.1


@dataclass(frozen=True, slots=True)
class Checked:
    """What decoding a whole file showed."""

    duration_s: float
    notice: str


def decoded_whole(
    path: Path, info: "ClipInfo", progress: Progress, should_stop: ShouldStop
) -> Checked:
    """Decode a file to its end; AudioFailure where it breaks off or is too short."""
    from audio.files import open_sound  # noqa: PLC0415 - libsndfile, only when needed

    expected = max(1.0, (info.duration_s or 60.0) * info.sample_rate_hz)
    with open_sound(path) as sound:
        for _block in sound.blocks():
            stop_if(should_stop)
            progress(min(0.9, 0.9 * sound.frames_read / expected))
        duration_s = sound.frames_read / sound.info.sample_rate_hz
        broken = sound.non_finite_samples
    if duration_s < SHORTEST_S:
        raise AudioFailure(
            f"{path.name} is too short to be a take: {duration_s:.3f} s.", "Choose another file."
        )
    notice = f"{counted(broken, 'sample')} of the file are not numbers." if broken else ""
    return Checked(duration_s, notice)


def copied(
    proposal: ImportProposal, path: Path, progress: Progress, should_stop: ShouldStop
) -> PlacedFile:
    """Copy a clip to its place, byte for byte."""
    from audio.importing import CopyStopped, copy_original, probe  # noqa: PLC0415

    with stopped_by(CopyStopped):
        digest = copy_original(proposal.path, path, should_stop=should_stop, on_progress=progress)
        info = probe(path)
    return PlacedFile(digest, proposal.duration_s, info.sample_rate_hz, info.channels)


def part_of_clip(
    proposal: ImportProposal,
    path: Path,
    tags: dict[str, str],
    end_s: float,
    should_stop: ShouldStop,
) -> PlacedFile:
    """Write the part of a clip that is kept to its place; its tags say where it begins."""
    from audio.encoding import EncodingStopped  # noqa: PLC0415 - only when needed
    from audio.importing import sha256_of  # noqa: PLC0415
    from audio.trimming import PART_START_S, trim  # noqa: PLC0415

    tags = tags | {PART_START_S: repr(proposal.from_s)}
    with stopped_by(EncodingStopped):
        made = trim(proposal.path, path, proposal.from_s, end_s, tags, should_stop=should_stop)
    lowered = ""
    if made.lowered_db > 0:
        lowered = f"Its level is {made.lowered_db:.1f} dB lower: the clip goes beyond full scale."
    take = made.take
    duration_s = take.frames / take.sample_rate_hz
    return PlacedFile(sha256_of(path), duration_s, take.sample_rate_hz, take.channels, lowered)
