"""The part of a clip that is wanted, as a take of its own; the clip stays as it is."""

import math
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from dataclasses import dataclass
from pathlib import Path

import mutagen
import mutagen.flac
import numpy as np
import soundfile
from numpy.typing import NDArray

from audio.encoding import EncodedTake, EncodingStopped, encode_flac
from audio.errors import AudioFailure
from audio.files import open_sound
from audio.new_sound import new_sound
from audio.publishing import partial_name

SHORTEST_S = 0.1
PART_OF = "PART_OF"
"""Vorbis comment of a trimmed file: the name of the whole clip it was cut from."""

PART_START_S = "PART_START_S"
"""Vorbis comment of a trimmed file: where in that clip's sound it begins, in seconds."""

_BLOCK_FRAMES = 65536
_FULL_SCALE = 1.0 - 2.0**-23


@dataclass(frozen=True, slots=True)
class Trimmed:
    """A verified FLAC file with a part of a clip.

    Attributes
    ----------
    take : EncodedTake
    lowered_db : float
        By how much it is softer than the clip, whose decoded sound went beyond full
        scale; 0 nearly always.
    """

    take: EncodedTake
    lowered_db: float


def trim(
    source: Path,
    target: Path,
    start_s: float,
    end_s: float,
    tags: dict[str, str] | None = None,
    *,
    should_stop: Callable[[], bool] | None = None,
) -> Trimmed:
    """Write a part of a clip's sound as FLAC, exact to the sample.

    Parameters
    ----------
    source : Path
        Anything that decodes; it is only read.
    target : Path
        The FLAC file to make; it must not exist.
    start_s, end_s : float
        Seconds of the clip.
    tags : dict of str to str, optional
        Vorbis comments.
    should_stop : callable, optional
        Asked between blocks; True cancels with
        :class:`audio.encoding.EncodingStopped`.

    Raises
    ------
    AudioFailure
        When the part is too short or lies outside, or a file cannot be read or written.
    """
    if not start_s >= 0 or end_s - start_s < SHORTEST_S:
        raise AudioFailure(
            f"Of {source.name} too little would be kept.", "Choose a later end or an earlier start."
        )
    peak = _peak(source, start_s, end_s, should_stop)
    if peak is None:
        raise AudioFailure(
            f"{source.name} ends before the part that is to be kept.", "Choose an earlier start."
        )
    gain = 1.0 if peak <= _FULL_SCALE else _FULL_SCALE / peak
    pcm = partial_name(target).with_suffix(".wav")
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        _write(source, pcm, (start_s, end_s), gain, should_stop)
        take = encode_flac(pcm, target, tags, should_stop=should_stop)
    except OSError as error:
        raise AudioFailure(
            f"{target.name} cannot be written ({error.strerror}).", "Make room on the disk."
        ) from error
    finally:
        pcm.unlink(missing_ok=True)
    return Trimmed(take, -20.0 * float(np.log10(gain)))


def part_of(path: Path) -> tuple[str, float] | None:
    """Read which clip a trimmed file was cut from.

    Parameters
    ----------
    path : Path
        A FLAC file.

    Returns
    -------
    (name, start_s) : tuple of str and float, or None
        What :data:`PART_OF` and :data:`PART_START_S` say; ``None`` where the file does
        not say, or cannot be read.
    """
    try:
        tags = mutagen.flac.FLAC(path).tags or {}
        name, start_s = tags[PART_OF][0], float(tags[PART_START_S][0])
    except (mutagen.MutagenError, OSError, KeyError, ValueError):
        return None
    return (name, start_s) if math.isfinite(start_s) and start_s >= 0 else None


def _parts(
    source: Path, start_s: float, end_s: float, should_stop: Callable[[], bool] | None
) -> Iterator[tuple[int, NDArray[np.float32]]]:
    """Yield the rate and the blocks of the part."""
    with open_sound(source) as sound:
        rate = sound.info.sample_rate_hz
        first, last, at = round(start_s * rate), round(end_s * rate), 0
        for block in sound.blocks(_BLOCK_FRAMES):
            if should_stop is not None and should_stop():
                raise EncodingStopped
            part = block[max(first - at, 0) : max(last - at, 0)]
            at += len(block)
            if len(part):
                yield rate, part
            if at >= last:
                return


def _peak(
    source: Path, start_s: float, end_s: float, should_stop: Callable[[], bool] | None
) -> float | None:
    peaks = [float(np.max(np.abs(part))) for _, part in _parts(source, start_s, end_s, should_stop)]
    return max(peaks, default=None)


def _write(
    source: Path,
    pcm: Path,
    span_s: tuple[float, float],
    gain: float,
    should_stop: Callable[[], bool] | None,
) -> None:
    with ExitStack() as held:
        file: soundfile.SoundFile | None = None
        for rate, part in _parts(source, *span_s, should_stop):
            if file is None:
                file = held.enter_context(new_sound(pcm, rate, part.shape[1], "PCM_24"))
            file.write(part * np.float32(gain) if gain != 1.0 else part)
