"""Turn a finished PCM take into FLAC without ever risking it.

The FLAC file is written beside its final name, tagged, brought to the disk,
decoded again and compared with the PCM sample by sample as integers. Only then
does it get its name, and after that it is never touched again.
"""

import contextlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from itertools import zip_longest
from pathlib import Path

import mutagen.flac
import numpy as np
import soundfile
from numpy.typing import NDArray

from audio.errors import AudioFailure, name_taken
from audio.new_sound import is_full
from audio.publishing import partial_name, publish, sync_file

_BLOCK_FRAMES = 65536
_MOST_CHANNELS = 8
_FULL_SCALE_24 = 2**23 - 1

IntBlock = NDArray[np.int32]


@dataclass(frozen=True, slots=True)
class EncodedTake:
    """A verified FLAC file.

    Attributes
    ----------
    path : Path
        Where it is.
    frames, sample_rate_hz, channels : int
        Its length and format.
    subtype : str
        Such as ``PCM_24``.
    lossless : bool
        Whether every sample of the source is in it unchanged.
    note : str or None
        One plain sentence on what was changed when it is not.
    """

    path: Path
    frames: int
    sample_rate_hz: int
    channels: int
    subtype: str
    lossless: bool
    note: str | None


class EncodingStopped(Exception):  # noqa: N818 - asked for, not an error
    """The work was cancelled; the PCM file is as it was and nothing else is left."""


def encode_flac(
    pcm_path: Path,
    flac_path: Path,
    tags: Mapping[str, str] | None = None,
    *,
    should_stop: Callable[[], bool] | None = None,
    on_progress: Callable[[float], None] | None = None,
    remove_pcm: bool = False,
) -> EncodedTake:
    """Encode, tag and verify a take.

    Whole numbers of up to 24 bits keep their depth and every sample. FLAC as
    written here holds no more than 24 bits: 32-bit and floating-point takes are
    rounded to 24, and the result says so. Floating-point takes that go beyond
    full scale are refused, since FLAC would have to clip them.

    Parameters
    ----------
    pcm_path : Path
        The WAV file.
    flac_path : Path
        The file to make; it must not exist.
    tags : mapping of str to str, optional
        Vorbis comments, such as ``{"DATE": "2026-03-14"}``.
    should_stop : callable, optional
        Asked between blocks; True cancels.
    on_progress : callable, optional
        Told the share done, 0 to 1.
    remove_pcm : bool
        Remove the PCM file after verification, if every sample was kept.

    Returns
    -------
    EncodedTake
        The verified file.

    Raises
    ------
    AudioFailure
        When anything goes wrong; the PCM file then stays and nothing else is left.
    EncodingStopped
        When `should_stop` said so.
    """
    watch = _Watch(should_stop, on_progress)
    if flac_path.exists():
        raise name_taken(flac_path)
    partial = partial_name(flac_path)
    try:
        flac_path.parent.mkdir(parents=True, exist_ok=True)
        with soundfile.SoundFile(pcm_path) as source:
            plan = _Plan.of(source, pcm_path)
            rounded = _write(source, partial, plan, watch)
        _tag(partial, tags or {})
        sync_file(partial)
        frames = _verify(pcm_path, partial, plan, watch)
        publish(partial, flac_path)
    except FileExistsError as error:
        raise name_taken(flac_path) from error
    except (OSError, RuntimeError, AssertionError, mutagen.MutagenError) as error:
        raise _not_encoded(pcm_path, flac_path.parent, error) from error
    finally:
        partial.unlink(missing_ok=True)
    note = f"The take had {plan.source_words}; it was rounded to 24 bit." if rounded else None
    if remove_pcm and not rounded:
        pcm_path.unlink(missing_ok=True)
    return EncodedTake(
        flac_path, frames, plan.sample_rate_hz, plan.channels, plan.subtype, not rounded, note
    )


class _Watch:
    """Progress and cancelling over the two passes."""

    def __init__(
        self, should_stop: Callable[[], bool] | None, on_progress: Callable[[float], None] | None
    ) -> None:
        self._should_stop = should_stop
        self._on_progress = on_progress

    def passed(self, share: float) -> None:
        if self._should_stop is not None and self._should_stop():
            raise EncodingStopped
        if self._on_progress is not None:
            self._on_progress(min(share, 1.0))


@dataclass(frozen=True, slots=True)
class _Plan:
    frames: int
    sample_rate_hz: int
    channels: int
    subtype: str
    is_float: bool
    source_words: str

    @classmethod
    def of(cls, source: soundfile.SoundFile, path: Path) -> "_Plan":
        kind = str(source.subtype)
        if not source.frames:
            raise AudioFailure(f"{path.name} holds no sound.", "There is nothing to keep in it.")
        if source.channels > _MOST_CHANNELS:
            raise AudioFailure(
                f"{path.name} has {source.channels} channels; FLAC holds {_MOST_CHANNELS}.",
                "The recording is kept as it is.",
            )
        subtype = {"PCM_16": "PCM_16", "PCM_S8": "PCM_S8", "PCM_U8": "PCM_S8"}.get(kind, "PCM_24")
        is_float = kind in ("FLOAT", "DOUBLE")
        words = "floating-point samples" if is_float else "32-bit samples"
        return cls(source.frames, source.samplerate, source.channels, subtype, is_float, words)

    def blocks_of(self, source: soundfile.SoundFile, name: str) -> "_Blocks":
        return _Blocks(source, self, name)


class _Blocks:
    """Left-justified integer blocks of the source, as FLAC is to hold them."""

    def __init__(self, source: soundfile.SoundFile, plan: _Plan, name: str) -> None:
        self._source = source
        self._plan = plan
        self._name = name
        self.rounded = False

    def __iter__(self) -> "_Blocks":
        return self

    def __next__(self) -> IntBlock:
        if self._plan.is_float:
            block = self._source.read(_BLOCK_FRAMES, dtype="float64", always_2d=True)
        else:
            block = self._source.read(_BLOCK_FRAMES, dtype="int32", always_2d=True)
        if not len(block):
            raise StopIteration
        kept = self._from_float(block) if self._plan.is_float else _round_to_24(block)
        if not self.rounded:
            exact = block * 2.0**31 if self._plan.is_float else block
            self.rounded = not np.array_equal(kept, exact)
        return kept

    def _from_float(self, block: NDArray[np.float64]) -> IntBlock:
        if not np.isfinite(block).all() or np.abs(block).max() > 1.0:
            raise AudioFailure(
                f"{self._name} has samples beyond full scale, which FLAC would clip.",
                "The recording is kept as it is.",
            )
        steps = np.minimum(np.rint(block * 2.0**23), _FULL_SCALE_24)
        return steps.astype(np.int32) << 8


def _round_to_24(block: IntBlock) -> IntBlock:
    headroom = np.int32(2**31 - 1 - 128)
    return (np.minimum(block, headroom) + np.int32(128)) & np.int32(~0xFF)


def _write(source: soundfile.SoundFile, partial: Path, plan: _Plan, watch: _Watch) -> bool:
    blocks = plan.blocks_of(source, Path(source.name).name)
    done = 0
    with soundfile.SoundFile(
        partial, "x", plan.sample_rate_hz, plan.channels, plan.subtype, format="FLAC"
    ) as target:
        for block in blocks:
            target.write(block)
            done += len(block)
            watch.passed(0.6 * done / plan.frames)
    return blocks.rounded


def _tag(partial: Path, tags: Mapping[str, str]) -> None:
    file = mutagen.flac.FLAC(partial)
    if file.tags is None:
        file.add_tags()
    for name, value in tags.items():
        file[name] = value
    file.save()


def _verify(pcm_path: Path, partial: Path, plan: _Plan, watch: _Watch) -> int:
    done = 0
    with soundfile.SoundFile(pcm_path) as source, soundfile.SoundFile(partial) as target:
        wanted = plan.blocks_of(source, pcm_path.name)
        decoded = target.blocks(_BLOCK_FRAMES, dtype="int32", always_2d=True)
        for want, got in zip_longest(wanted, decoded):
            if want is None or got is None or not np.array_equal(want, got):
                raise AudioFailure(
                    f"The FLAC copy of {pcm_path.name} differs from the take and was discarded.",
                    "The recording is kept; check the disk and try again.",
                )
            done += len(want)
            watch.passed(0.6 + 0.4 * done / plan.frames)
    return done


def _not_encoded(pcm_path: Path, folder: Path, error: Exception) -> AudioFailure:
    reason = str(error) or type(error).__name__
    with contextlib.suppress(OSError):
        if is_full(folder):
            reason = "the disk is full"
    return AudioFailure(
        f"{pcm_path.name} could not be turned into FLAC ({reason}).",
        "The recording is kept; make room on the disk and try again.",
    )
