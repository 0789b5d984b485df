"""Copies of a recording that carry marks: WAV with cue points, FLAC with chapters.

The recording itself is only read. A copy is written beside its final name and
published once it is whole.

Sources of the formats: cue points and their labels are the chunks ``cue`` and ``LIST
adtl`` of "Multimedia Programming Interface and Data Specifications 1.0" (IBM and
Microsoft, 1991); labels are UTF-8 here, which the specification predates. Chapters
are the Vorbis comment fields ``CHAPTERxxx`` and ``CHAPTERxxxNAME``, which FLAC shares
with Ogg.
"""

import struct
import tempfile
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

import mutagen.flac

from audio.encoding import encode_flac
from audio.errors import name_taken
from audio.publishing import partial_name, publish, sync_file
from audio.wave_copies import write_wave

_REGION = b"rgn "


@dataclass(frozen=True, slots=True)
class Mark:
    """A named moment, or with ``end_s`` a span, in seconds from the first sample."""

    start_s: float
    end_s: float | None
    name: str


def write_wave_with_cues(
    source: Path,
    target: Path,
    marks: Sequence[Mark],
    *,
    should_stop: Callable[[], bool] | None = None,
) -> None:
    """Write a 24-bit WAV copy whose marks are cue points; spans have their length.

    Parameters
    ----------
    source : Path
        Any sound file or clip. Whole numbers of up to 24 bits arrive unchanged.
    target : Path
        The copy; it must not exist.
    marks : sequence of Mark
        In any order.
    should_stop : callable, optional
        Asked between blocks.

    Raises
    ------
    AudioFailure
        When the source cannot be read, the target exists, or the copy would be larger
        than a WAV file can be (4 GiB).
    EncodingStopped
        When `should_stop` says so; nothing is left then.
    OSError
        When the disk refuses.
    """
    if target.exists():
        raise name_taken(target)
    partial = partial_name(target)
    try:
        rate = write_wave(source, partial, should_stop=should_stop)
        _append_cues(partial, sorted(marks, key=lambda mark: mark.start_s), rate)
        sync_file(partial)
        _publish(partial, target)
    finally:
        with suppress(OSError):
            partial.unlink(missing_ok=True)


def write_flac_with_chapters(
    source: Path,
    target: Path,
    marks: Sequence[Mark],
    *,
    should_stop: Callable[[], bool] | None = None,
) -> None:
    """Write a FLAC copy, verified sample by sample, whose marks are chapters.

    Parameters
    ----------
    source : Path
        Any sound file or clip; the tags of a FLAC file come along.
    target : Path
        The copy; it must not exist.
    marks : sequence of Mark
        In any order; a chapter has a start only.
    should_stop : callable, optional
        Asked between blocks.

    Raises
    ------
    AudioFailure, EncodingStopped, OSError
        As :func:`write_wave_with_cues`.
    """
    if target.exists():
        raise name_taken(target)
    tags = dict(_tags_of(source)) | chapter_tags(marks)
    with tempfile.TemporaryDirectory(prefix="passagework-") as folder:
        readable = source
        if source.suffix.lower() not in {".flac", ".wav"}:
            readable = Path(folder) / "decoded.wav"
            write_wave(source, readable, should_stop=should_stop)
        encode_flac(readable, target, tags, should_stop=should_stop)


def chapter_tags(marks: Sequence[Mark]) -> dict[str, str]:
    """Give the chapter fields of marks in the order of time, numbered from 1."""
    tags = {}
    for number, mark in enumerate(sorted(marks, key=lambda mark: mark.start_s), start=1):
        tags[f"CHAPTER{number:03}"] = _clock(mark.start_s)
        tags[f"CHAPTER{number:03}NAME"] = mark.name
    return tags


def _clock(at_s: float) -> str:
    thousandths = round(at_s * 1000)
    minutes, rest = divmod(thousandths, 60_000)
    return f"{minutes // 60:02}:{minutes % 60:02}:{rest // 1000:02}.{rest % 1000:03}"


def _tags_of(source: Path) -> Mapping[str, str]:
    if source.suffix.lower() != ".flac":
        return {}
    try:
        found = mutagen.flac.FLAC(source).tags or {}
    except mutagen.MutagenError:
        return {}
    return {str(name).upper(): str(value) for name, value in found}


def _append_cues(path: Path, marks: Sequence[Mark], rate: int) -> None:
    """Add the chunks behind the sound and correct the size of the whole."""
    if not marks:
        return
    points, labels = [struct.pack("<I", len(marks))], [b"adtl"]
    for number, mark in enumerate(marks, start=1):
        at = round(mark.start_s * rate)
        points.append(struct.pack("<II4sIII", number, at, b"data", 0, 0, at))
        text = mark.name.replace("\0", " ").encode() + b"\0"
        labels.append(_chunk(b"labl", struct.pack("<I", number) + text))
        if mark.end_s is not None:
            length = max(0, round(mark.end_s * rate) - at)
            span = struct.pack("<II4sHHHH", number, length, _REGION, 0, 0, 0, 0)
            labels.append(_chunk(b"ltxt", span))
    with path.open("r+b") as file:
        file.seek(0, 2)
        if file.tell() % 2:
            file.write(b"\0")
        file.write(_chunk(b"cue ", b"".join(points)) + _chunk(b"LIST", b"".join(labels)))
        size = file.tell() - 8
        file.seek(4)
        file.write(struct.pack("<I", size))


def _chunk(name: bytes, content: bytes) -> bytes:
    return name + struct.pack("<I", len(content)) + content + b"\0" * (len(content) % 2)


def _publish(partial: Path, target: Path) -> None:
    try:
        publish(partial, target)
    except FileExistsError as error:
        raise name_taken(target) from error
