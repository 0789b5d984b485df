"""Decode any sound into a WAV file, block by block."""

from collections.abc import Callable
from pathlib import Path

import numpy as np

from audio.decoding import open_sound
from audio.encoding import EncodingStopped
from audio.errors import AudioFailure
from audio.new_sound import new_sound

_FULL_SCALE_32 = 2**31
_MOST_WAVE_BYTES = 2**32 - 2**20
"""A RIFF size field has 32 bits; a little is left for chunks after the sound."""

_BYTES = {"PCM_16": 2, "PCM_24": 3}


def write_wave(
    source: Path,
    target: Path,
    *,
    subtype: str = "PCM_24",
    large: bool = False,
    should_stop: Callable[[], bool] | None = None,
    on_progress: Callable[[float], None] | None = None,
) -> int:
    """Write the sound of a file as WAV, whole numbers of up to 24 bits unchanged.

    Parameters
    ----------
    source : Path
        Any sound file or clip.
    target : Path
        It must not exist. The caller removes it after a failure.
    subtype : str
        ``PCM_24`` or ``PCM_16``.
    large : bool
        Write RF64, which has no limit of 4 GiB but is known to fewer programs.
    should_stop, on_progress : callable, optional
        Asked, and told the share done, between blocks.

    Returns
    -------
    int
        The sample rate, Hz.

    Raises
    ------
    AudioFailure
        When the source cannot be read, or the file would be larger than WAV can be.
    EncodingStopped
        When `should_stop` says so.
    OSError
        When the disk refuses.
    """
    with open_sound(source) as sound:
        info = sound.info
        frames = info.frames or 0
        if not large and frames * info.channels * _BYTES[subtype] > _MOST_WAVE_BYTES:
            raise AudioFailure(
                f"{source.name} is too long for a WAV file (4 GiB).", "Choose FLAC instead."
            )
        container = "RF64" if large else "WAV"
        with new_sound(target, info.sample_rate_hz, info.channels, subtype, container) as wave:
            for block in sound.blocks():
                if should_stop is not None and should_stop():
                    raise EncodingStopped
                # As integers: libsndfile scales floating point by 2^23 - 1 when it writes
                # and by 2^23 when it reads, which would change every loud sample.
                scaled = np.rint(block.astype(np.float64) * _FULL_SCALE_32)
                limited = np.clip(scaled, -_FULL_SCALE_32, _FULL_SCALE_32 - 1)
                wave.write(limited.astype(np.int32))
                if on_progress is not None and frames:
                    on_progress(min(1.0, sound.frames_read / frames))
    return info.sample_rate_hz
