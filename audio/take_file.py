"""The file of a running take: kept safe while it grows, finished, or rescued."""

import errno
import os
import shutil
import tempfile
import time
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from audio.errors import AudioFailure, name_taken
from audio.pcm_file import PcmWriter
from audio.recordings import SENTENCES, Ended, Recording
from audio.recovery import recover

__all__ = ["Ended", "Recording", "TakeFile", "WriteEnded", "recover"]

_SYNC_EVERY_S = 0.5
_FULL_CODES = {errno.ENOSPC, errno.EFBIG, getattr(errno, "EDQUOT", errno.ENOSPC)}


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
            raise name_taken(path)
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
        sentence = SENTENCES[ended]
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
