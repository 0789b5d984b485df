"""What a recording is once it has ended, and how it came to its end."""

from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path


class Ended(StrEnum):
    """How a recording came to its end."""

    STOPPED = "stopped"
    DEVICE_LOST = "device_lost"
    DISK_FULL = "disk_full"
    FOLDER_GONE = "folder_gone"
    SUSPENDED = "suspended"
    CRASHED = "crashed"


SENTENCES: dict[Ended, str | None] = {
    Ended.STOPPED: None,
    Ended.DEVICE_LOST: "The sound input went away; the take up to then is kept.",
    Ended.DISK_FULL: "The disk is full; the take up to then is kept.",
    Ended.FOLDER_GONE: "The folder of the take went away; the take up to then is kept.",
    Ended.SUSPENDED: "The computer or the program was put to sleep; the take up to then is kept.",
    Ended.CRASHED: "The program ended while recording; the take up to then is kept.",
}


@dataclass(frozen=True, slots=True)
class Recording:
    """A finished PCM file and how it came about.

    Attributes
    ----------
    path : Path
        Where the file is; elsewhere than asked for when its folder went away.
    frames, sample_rate_hz, channels : int
        Its length and format.
    subtype : str
        Such as ``PCM_24``.
    overruns : int
        How often the device reported that samples were lost before they reached the program.
    dropped_frames : int
        Frames lost because the disk did not keep up.
    clipped_samples : int
        Samples at full scale.
    peak_dbfs : float
        Highest sample.
    ended : Ended
        How it came to its end.
    sentence : str or None
        What to tell the player about that; None after an ordinary stop.
    """

    path: Path
    frames: int
    sample_rate_hz: int
    channels: int
    subtype: str
    overruns: int
    dropped_frames: int
    clipped_samples: int
    peak_dbfs: float
    ended: Ended
    sentence: str | None

    @property
    def duration_s(self) -> float:
        """Length in seconds."""
        return self.frames / self.sample_rate_hz
