"""Make a take out of what a crash left behind."""

import contextlib
import errno
from pathlib import Path

import numpy as np
import soundfile
from numpy.typing import NDArray

from audio.errors import AudioFailure
from audio.levels import FLOOR_DBFS, LevelMeter
from audio.pcm_file import BYTES_PER_SAMPLE, PcmLayout, PcmWriter, read_layout
from audio.publishing import partial_name, publish
from audio.recordings import SENTENCES, Ended, Recording


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
        # A header that only this module understands is not good enough for a take.
        with contextlib.suppress(soundfile.LibsndfileError):
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
            meter.update(np.nan_to_num(block, nan=0.0, posinf=0.0, neginf=0.0))
        return Recording(
            path, file.frames, file.samplerate, file.channels, file.subtype,
            0, 0, meter.level.clipped_samples,
            meter.level.highest_dbfs if file.frames else FLOOR_DBFS,
            Ended.CRASHED, SENTENCES[Ended.CRASHED],
        )  # fmt: skip
