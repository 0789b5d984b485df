"""The file of a running take: kept safe, finished, or recovered after a crash."""

import contextlib
import errno
import os
import shutil
import tempfile
import time
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

import numpy as np
import soundfile
from numpy.typing import NDArray

from audio.errors import AudioFailure
from audio.levels import FLOOR_DBFS, LevelMeter
from audio.pcm_file import BYTES_PER_SAMPLE, PcmLayout, PcmWriter, read_layout
from audio.publishing import partial_name, publish

_SYNC_EVERY_S = 0.5
_FULL_CODES = {errno.ENOSPC, errno.EFBIG, getattr(errno, "EDQUOT", errno.ENOSPC)}


class Ended(StrEnum):
    """How a recording came to its end."""

    STOPPED = "stopped"
    DEVICE_LOST = "device_lost"
    DISK_FULL = "disk_full"
    FOLDER_GONE = "folder_gone"
    CRASHED = "crashed"


_SENTENCES: dict[Ended, str | None] = {
    Ended.STOPPED: None,
    Ended.DEVICE_LOST: "The sound input went away; the take up to then is kept.",
    Ended.DISK_FULL: "The disk is full; the take up to then is kept.",
    Ended.FOLDER_GONE: "The folder of the take went away; the take up to then is kept.",
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


class WriteEnded(Exception):  # noqa: N818 - an expected end, not an error in the program
    """The take cannot grow any further; what is written is safe."""

    def __init__(self, ended: Ended) -> None:
        super().__init__(ended.value)
        self.ended = ended


class TakeFile:
    """A PCM file that grows, and knows what to do when it no longer can.

    Parameters
    ----------
    writer : PcmWriter
        The open file.
    sample_rate_hz, channels : int
        Its format.
    """

    def __init__(self, writer: PcmWriter, sample_rate_hz: int, channels: int) -> None:
        self._writer = writer
        self._sample_rate_hz = sample_rate_hz
        self._channels = channels
        self._synced_at = time.monotonic()

    @classmethod
    def create(cls, path: Path, sample_rate_hz: int, channels: int) -> "TakeFile":
        """Create the file.

        Parameters
        ----------
        path : Path
            It must not exist; its folder is made.
        sample_rate_hz, channels : int
            Format of the take.

        Returns
        -------
        TakeFile
            Ready to be appended to.

        Raises
        ------
        AudioFailure
            When the file exists or cannot be created.
        """
        if path.exists():
            raise _taken(path)
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            return cls(PcmWriter(path, sample_rate_hz, channels), sample_rate_hz, channels)
        except OSError as error:
            raise AudioFailure(
                f"The take cannot be written to {path.parent} ({error.strerror}).",
                "Make room on the disk or choose a folder that may be written to.",
            ) from error

    @property
    def frames(self) -> int:
        """Frames written so far."""
        return self._writer.frames

    def append(self, block: NDArray[np.int32]) -> None:
        """Write the next frames.

        Parameters
        ----------
        block : ndarray of int32, shape (n, channels)
            Left-justified samples.

        Raises
        ------
        WriteEnded
            When the disk is full or gone.
        """
        try:
            self._writer.append(block)
        except OSError as error:
            full = error.errno in _FULL_CODES
            raise WriteEnded(Ended.DISK_FULL if full else Ended.FOLDER_GONE) from error

    def keep_safe(self) -> None:
        """Bring the file to the disk when it is time, and see that it is still there.

        Raises
        ------
        WriteEnded
            When the disk is full, or the file or its folder is gone.
        """
        if time.monotonic() - self._synced_at < _SYNC_EVERY_S:
            return
        try:
            self._writer.sync()
        except OSError as error:
            full = error.errno in _FULL_CODES
            raise WriteEnded(Ended.DISK_FULL if full else Ended.FOLDER_GONE) from error
        if not self._is_in_place():
            raise WriteEnded(Ended.FOLDER_GONE)
        self._synced_at = time.monotonic()

    def finish(
        self,
        ended: Ended,
        *,
        overruns: int,
        dropped_frames: int,
        clipped_samples: int,
        peak_dbfs: float,
    ) -> Recording:
        """Close the file and say what it holds.

        Parameters
        ----------
        ended : Ended
            How the recording came to its end.
        overruns, dropped_frames, clipped_samples : int
            Counts for the report.
        peak_dbfs : float
            Highest sample.

        Returns
        -------
        Recording
            The kept take.

        Raises
        ------
        AudioFailure
            When nothing was recorded, or the file is gone and could not be rescued.
        """
        frames = self.frames
        path = self._writer.path
        if not frames:
            self.discard()
            raise AudioFailure(
                "Nothing was recorded: no sound arrived from the input.",
                "Check that the input is plugged in and not muted, then record again.",
            )
        if not self._is_in_place():
            ended = Ended.FOLDER_GONE
            path = self._rescue()
        try:
            self._writer.close()
        except OSError:
            # The header was valid after every append; only the last sync is missing.
            ended = Ended.FOLDER_GONE if ended == Ended.STOPPED else ended
        sentence = _SENTENCES[ended]
        if path != self._writer.path:
            sentence = f"The folder of the take went away; the take up to then is now {path}."
        return Recording(
            path, frames, self._sample_rate_hz, self._channels, "PCM_24",
            overruns, dropped_frames, clipped_samples, peak_dbfs, ended, sentence,
        )  # fmt: skip

    def discard(self) -> None:
        """Close and remove a file that holds nothing."""
        self._writer.file.close()
        self._writer.path.unlink(missing_ok=True)

    def _is_in_place(self) -> bool:
        try:
            named, opened = self._writer.path.stat(), os.fstat(self._writer.file.fileno())
        except OSError:
            return False
        return os.path.samestat(named, opened)

    def _rescue(self) -> Path:
        """Copy the open file, which may no longer have a name, to where it can be found."""
        path = self._writer.path
        for folder in (path.parent, Path.home(), Path(tempfile.gettempdir())):
            target = folder / path.name
            try:
                folder.mkdir(parents=True, exist_ok=True)
                with target.open("xb") as rescued:
                    self._writer.file.seek(0)
                    shutil.copyfileobj(self._writer.file, rescued)
                    rescued.flush()
                    os.fsync(rescued.fileno())
            except OSError:
                continue
            return target
        raise AudioFailure(
            "The folder of the take went away, and the take with it.",
            "Plug the disk in again and look there for the part already written.",
        )


def _taken(path: Path) -> AudioFailure:
    return AudioFailure(
        f"{path.name} exists already and is not overwritten.", "Choose another name."
    )


def recover(path: Path) -> Recording:
    """Make a take out of the PCM file that a crash left behind.

    The file itself is only read. When its header states less than it holds,
    or makes no sense, a whole copy with a true header is written beside it.
    Calling this again makes another copy, never replaces one.

    Parameters
    ----------
    path : Path
        The file as it was found.

    Returns
    -------
    Recording
        The take; its `path` is `path`, or the copy ``<name>-recovered.wav``.

    Raises
    ------
    AudioFailure
        When there is nothing in the file to recover, or no room for the copy.
    """
    try:
        layout = read_layout(path)
        size = path.stat().st_size
    except OSError as error:
        raise AudioFailure(
            f"{path.name} may not be read.", "Check the permissions of the file and its folder."
        ) from error
    if layout is None or size - layout.data_at < layout.frame_bytes:
        raise AudioFailure(
            f"{path.name} holds no recorded sound.", "Nothing is lost by removing it."
        )
    there = (size - layout.data_at) // layout.frame_bytes
    stated = (layout.data_bytes or 0) // layout.frame_bytes
    if layout.is_finished or stated == there:
        return _described(path)
    return _described(_recovered_copy(path, layout, there))


def _recovered_copy(path: Path, layout: PcmLayout, frames: int) -> Path:
    if layout.bits != 8 * BYTES_PER_SAMPLE or layout.is_float:
        raise AudioFailure(
            f"{path.name} was not recorded by this program.", "Import it as a sound file instead."
        )
    partial = partial_name(path)
    try:
        _copy_frames(path, layout, frames, partial)
        return _publish_recovered(partial, path)
    except OSError as error:
        raise AudioFailure(
            f"{path.name} cannot be recovered now ({error.strerror}).",
            "Make room on the disk; the file stays as it is until then.",
        ) from error
    finally:
        partial.unlink(missing_ok=True)


def _copy_frames(path: Path, layout: PcmLayout, frames: int, target: Path) -> None:
    writer = PcmWriter(target, layout.sample_rate_hz, layout.channels)
    try:
        with path.open("rb") as source:
            source.seek(layout.data_at)
            while frames > 0:
                count = min(frames, 2**18)
                writer.append(_from_24_bit(source.read(count * layout.frame_bytes), layout))
                frames -= count
    finally:
        writer.close()


def _publish_recovered(partial: Path, path: Path) -> Path:
    for number in range(1, 1000):
        ending = "recovered" if number == 1 else f"recovered-{number}"
        target = path.with_name(f"{path.stem}-{ending}.wav")
        with contextlib.suppress(FileExistsError):
            publish(partial, target)
            return target
    raise FileExistsError(errno.EEXIST, "too many recovered copies")


def _from_24_bit(data: bytes, layout: PcmLayout) -> NDArray[np.int32]:
    octets = np.zeros((len(data) // BYTES_PER_SAMPLE, 4), dtype=np.uint8)
    octets[:, 1:] = np.frombuffer(data, dtype=np.uint8).reshape(-1, BYTES_PER_SAMPLE)
    return octets.view("<i4").reshape(-1, layout.channels)


def _described(path: Path) -> Recording:
    with soundfile.SoundFile(path) as file:
        meter = LevelMeter(file.samplerate)
        for block in file.blocks(65536, dtype="float32", always_2d=True):
            meter.update(block)
        return Recording(
            path, file.frames, file.samplerate, file.channels, file.subtype,
            0, 0, meter.level.clipped_samples,
            meter.level.highest_dbfs if file.frames else FLOOR_DBFS,
            Ended.CRASHED, _SENTENCES[Ended.CRASHED],
        )  # fmt: skip
