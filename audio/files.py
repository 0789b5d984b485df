"""Sound files in, arrays out."""

from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from audio.decoding import OpenSound, SoundInfo, open_sound
from audio.errors import AudioFailure

_UNKNOWN = 2**16
_MOST_SAMPLES_TRUSTED = 2**28
"""A damaged header can state any length; a gigabyte is reserved at most."""

__all__ = ["OpenSound", "Sound", "SoundInfo", "open_sound", "read_sound", "sound_info"]


@dataclass(frozen=True, slots=True)
class Sound:
    """A decoded sound file.

    Attributes
    ----------
    samples : ndarray of float32, shape (n, channels)
        1.0 is full scale; all finite.
    sample_rate_hz : int
        Frames per second.
    container, subtype : str
        How the file stores it, such as ``FLAC`` and ``PCM_24``.
    non_finite_samples : int
        NaN or infinite samples in the file, which were replaced by zero.
    damage : str or None
        Where the file breaks off, if only its readable part was delivered.
    """

    samples: NDArray[np.float32]
    sample_rate_hz: int
    container: str
    subtype: str
    non_finite_samples: int = 0
    damage: str | None = None

    @property
    def channels(self) -> int:
        """Number of channels."""
        return int(self.samples.shape[1])

    @property
    def frames(self) -> int:
        """Number of frames."""
        return len(self.samples)

    @property
    def duration_s(self) -> float:
        """Length in seconds."""
        return self.frames / self.sample_rate_hz

    def mono(self) -> NDArray[np.float32]:
        """Average the channels.

        Returns
        -------
        ndarray of float32, shape (n,)
            The only channel itself, or the mean of all.
        """
        if self.channels == 1:
            return self.samples[:, 0]
        mean: NDArray[np.float32] = self.samples.mean(axis=1, dtype=np.float32)
        return mean


def sound_info(path: Path) -> SoundInfo:
    """Look at a sound file without decoding it.

    Parameters
    ----------
    path : Path
        The file.

    Returns
    -------
    SoundInfo
        What its header says.

    Raises
    ------
    AudioFailure
        When the file is missing, empty, holds no sound or cannot be decoded.
    """
    with open_sound(path) as sound:
        return sound.info


def read_sound(path: Path, *, keep_readable: bool = False) -> Sound:
    """Decode a whole sound file.

    An hour of mono at 48 kHz takes 690 MB; use :func:`open_sound` for what
    can work block by block.

    Parameters
    ----------
    path : Path
        The file.
    keep_readable : bool
        Deliver the readable part of a damaged file instead of failing.

    Returns
    -------
    Sound
        Its samples and format.

    Raises
    ------
    AudioFailure
        When the file is missing, empty, holds no sound, cannot be decoded or
        (unless `keep_readable`) is damaged or ends early.
    """
    with open_sound(path, keep_readable=keep_readable) as sound:
        samples = _gather(sound)
        if not len(samples):
            raise AudioFailure(f"{path.name} holds no sound.", "Choose another file.")
        return Sound(
            samples=samples,
            sample_rate_hz=sound.info.sample_rate_hz,
            container=sound.info.container,
            subtype=sound.info.subtype,
            non_finite_samples=sound.non_finite_samples,
            damage=sound.damage,
        )


def _gather(sound: OpenSound) -> NDArray[np.float32]:
    """Collect the blocks in one array, growing it when the header was wrong."""
    channels = sound.info.channels
    expected = min(sound.info.frames or _UNKNOWN, _MOST_SAMPLES_TRUSTED // channels)
    gathered = np.empty((expected, channels), dtype=np.float32)
    filled = 0
    for block in sound.blocks():
        end = filled + len(block)
        if end > len(gathered):
            grown = np.empty((max(end, 2 * len(gathered)), channels), dtype=np.float32)
            grown[:filled] = gathered[:filled]
            gathered = grown
        gathered[filled:end] = block
        filled = end
    return gathered[:filled]
