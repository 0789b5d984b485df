"""A WAV file that is readable at every moment of its growth.

The header is brought up to date in place after every append, so whatever
happens to the program, the file on disk says how long it is. Room for the
64-bit sizes of RF64 (EBU Tech 3306) is kept from the start, and the file turns
into RF64 the moment it outgrows the 32-bit sizes of RIFF.
"""

import contextlib
import os
import struct
from dataclasses import dataclass
from pathlib import Path
from typing import BinaryIO

import numpy as np
from numpy.typing import NDArray

BYTES_PER_SAMPLE = 3
"""24 bit."""

_RIFF_LIMIT = 0xFFFFFFFF
_DS64_AT = 12
_DS64_BYTES = 28
_HIGHEST_RATE_HZ = 1_000_000
_MOST_CHANNELS = 256
_PCM_GUID = bytes.fromhex("0100000000001000800000aa00389b71")


@dataclass(frozen=True, slots=True)
class PcmLayout:
    """Where the samples of a WAV file are.

    Attributes
    ----------
    data_at : int
        Byte at which the samples begin.
    data_bytes : int or None
        Length of the samples as the header states it; None when it leaves
        that open (a stream that was never finished).
    sample_rate_hz, channels, bits : int
        Format of the samples.
    is_float : bool
        Whether the samples are floating point.
    is_finished : bool
        Whether the file is as long as its header says.
    """

    data_at: int
    data_bytes: int | None
    sample_rate_hz: int
    channels: int
    bits: int
    is_float: bool
    is_finished: bool

    @property
    def frame_bytes(self) -> int:
        """Bytes of one frame."""
        return self.channels * ((self.bits + 7) // 8)


class PcmWriter:
    """Write 24 bit samples to a new WAV file.

    Parameters
    ----------
    path : Path
        The file to create; it must not exist.
    sample_rate_hz, channels : int
        Format of the samples.

    Raises
    ------
    OSError
        From here and from every method, as the system reports it.
    """

    def __init__(self, path: Path, sample_rate_hz: int, channels: int) -> None:
        self.path = path
        self._sample_rate_hz = sample_rate_hz
        self._channels = channels
        self._frame_bytes = channels * BYTES_PER_SAMPLE
        self._data_bytes = 0
        # Unbuffered: what is written belongs to the system at once, and
        # survives when this process is killed.
        self._file: BinaryIO = path.open("x+b", buffering=0)
        try:
            self._head_bytes = self._file.write(self._header())
        except OSError:
            self._file.close()
            path.unlink(missing_ok=True)
            raise

    @property
    def frames(self) -> int:
        """Frames written so far."""
        return self._data_bytes // self._frame_bytes

    @property
    def file(self) -> BinaryIO:
        """The open file, for looking at it and for rescuing it."""
        return self._file

    def append(self, samples: NDArray[np.int32]) -> None:
        """Add frames and bring the header up to date.

        Parameters
        ----------
        samples : ndarray of int32, shape (n, channels)
            Left-justified 32-bit samples; rounded to 24 bit.

        Raises
        ------
        OSError
            When the disk is full or gone; the frames that did fit are kept.
        """
        data = memoryview(to_24_bit(samples))
        try:
            while data:
                self._file.seek(self._head_bytes + self._data_bytes)
                written = self._file.write(data)
                self._data_bytes += written
                data = data[written:]
        except OSError:
            self._data_bytes -= self._data_bytes % self._frame_bytes
            # In place, so a full disk still takes it; a disk that is gone does not.
            with contextlib.suppress(OSError):
                self._write_header()
            raise
        self._write_header()

    def sync(self) -> None:
        """Ask the system to bring everything to the disk now."""
        os.fsync(self._file.fileno())

    def close(self) -> None:
        """Finish the file: cut a torn frame off, pad, sync, close."""
        if self._file.closed:
            return
        try:
            end = self._head_bytes + self._data_bytes
            self._file.truncate(end)
            if self._data_bytes % 2:
                # A RIFF chunk has an even length; the pad byte is not part of its size.
                self._file.seek(end)
                self._file.write(b"\0")
            self._write_header()
            self.sync()
        finally:
            self._file.close()

    def _write_header(self) -> None:
        self._file.seek(0)
        self._file.write(self._header())

    def _header(self) -> bytes:
        fmt = _fmt_chunk(self._sample_rate_hz, self._channels)
        head = _DS64_AT + 8 + _DS64_BYTES + len(fmt) + 8
        padded = self._data_bytes + self._data_bytes % 2
        riff_bytes = head - 8 + padded
        if riff_bytes <= _RIFF_LIMIT:
            start = b"RIFF" + struct.pack("<I", riff_bytes) + b"WAVE"
            spare = b"JUNK" + struct.pack("<I", _DS64_BYTES) + bytes(_DS64_BYTES)
            data = b"data" + struct.pack("<I", self._data_bytes)
        else:
            start = b"RF64" + struct.pack("<I", _RIFF_LIMIT) + b"WAVE"
            sizes = struct.pack("<QQQI", riff_bytes, self._data_bytes, self.frames, 0)
            spare = b"ds64" + struct.pack("<I", _DS64_BYTES) + sizes
            data = b"data" + struct.pack("<I", _RIFF_LIMIT)
        return start + spare + fmt + data


def to_24_bit(samples: NDArray[np.int32]) -> bytes:
    """Pack left-justified 32-bit samples as little-endian 24 bit.

    Parameters
    ----------
    samples : ndarray of int32, shape (n, channels)
        A device with 24 bit or fewer leaves the low byte zero and passes unchanged.

    Returns
    -------
    bytes
        Rounded to the nearest 24-bit value, held at full scale.
    """
    headroom = np.int32(2**31 - 1 - 128)
    rounded = np.minimum(samples, headroom) + np.int32(128)
    octets = np.ascontiguousarray(rounded, dtype="<i4").view(np.uint8)
    return octets.reshape(-1, 4)[:, 1:].tobytes()


def read_layout(path: Path) -> PcmLayout | None:
    """Read the header of a WAV or RF64 file.

    Parameters
    ----------
    path : Path
        The file to look at.

    Returns
    -------
    PcmLayout or None
        None when the file is no WAV file or its header is incomplete.

    Raises
    ------
    OSError
        When the file cannot be read.
    """
    with path.open("rb") as file:
        start = file.read(12)
        if len(start) < 12 or start[:4] not in (b"RIFF", b"RF64") or start[8:] != b"WAVE":
            return None
        file_bytes = path.stat().st_size
        riff_bytes = struct.unpack("<I", start[4:8])[0]
        fmt: tuple[int, int, int, bool] | None = None
        size_64: int | None = None
        while len(head := file.read(8)) == 8:
            name, size = head[:4], struct.unpack("<I", head[4:])[0]
            if name == b"data":
                if fmt is None:
                    return None
                stated = size_64 if size_64 is not None and size == _RIFF_LIMIT else size
                open_ended = stated in (0, _RIFF_LIMIT)
                finished = not open_ended and riff_bytes + 8 == file_bytes
                return PcmLayout(file.tell(), None if open_ended else stated, *fmt, finished)
            body = file.read(min(size, 64))
            if name == b"ds64" and len(body) >= 16:
                riff_bytes, size_64 = struct.unpack("<QQ", body[:16])
            if name == b"fmt ":
                fmt = _parse_fmt(body)
            file.seek(size + size % 2 - len(body), os.SEEK_CUR)
    return None


def _fmt_chunk(sample_rate_hz: int, channels: int) -> bytes:
    bits = 8 * BYTES_PER_SAMPLE
    frame_bytes = channels * BYTES_PER_SAMPLE
    tag = 1 if channels <= 2 else 0xFFFE
    body = struct.pack(
        "<HHIIHH", tag, channels, sample_rate_hz, sample_rate_hz * frame_bytes, frame_bytes, bits
    )
    if channels > 2:
        # More than two channels need the extensible form; mask 0: no loudspeaker is meant.
        body += struct.pack("<HHI", 22, bits, 0) + _PCM_GUID
    return b"fmt " + struct.pack("<I", len(body)) + body


def _parse_fmt(body: bytes) -> tuple[int, int, int, bool] | None:
    if len(body) < 16:
        return None
    tag, channels, rate, _, _, bits = struct.unpack("<HHIIHH", body[:16])
    if tag == 0xFFFE and len(body) >= 26:
        tag = struct.unpack("<H", body[24:26])[0]
    if tag not in (1, 3) or not 0 < rate <= _HIGHEST_RATE_HZ:
        return None
    if not 0 < channels <= _MOST_CHANNELS or not 0 < bits <= 64:
        return None
    return rate, channels, bits, tag == 3
