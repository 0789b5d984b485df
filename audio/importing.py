"""Take in a file from elsewhere: what it is, when it was made, a true copy.

Dates come from the container (QuickTime and MP4 in UTC, Apple's own key with
its offset), from tags (Vorbis, ID3, BWF), from the file's name, and last from
the file's time; the probe says which.
"""

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from audio.clip_dates import RecordedAt, RecordedAtSource, find_recorded_at
from audio.copying import CopyStopped, copy_original, sha256_of
from audio.decoders import UndecodableError, only_undecodable, open_container
from audio.decoding import codec_name, open_sound
from audio.files import Sound, read_sound

if TYPE_CHECKING:
    from av.container import InputContainer

__all__ = [
    "ClipInfo",
    "CopyStopped",
    "RecordedAt",
    "RecordedAtSource",
    "copy_original",
    "decode_to_sound",
    "probe",
    "sha256_of",
]


@dataclass(frozen=True, slots=True)
class ClipInfo:
    """What a file from elsewhere is, and when it was made.

    Attributes
    ----------
    duration_s : float or None
        Length in seconds; None when only decoding would tell.
    sample_rate_hz, channels : int
        Of its sound.
    container, audio_codec : str
        As FFmpeg names them, such as ``mov,mp4,m4a,3gp,3g2,mj2`` and ``aac``.
    has_video : bool
        Whether there is a picture that moves; a cover picture does not count.
    rotation : int
        Degrees, counter-clockwise, by which the picture is to be turned: 0 to 359.
    recorded_at : datetime or None
        When it was made; aware when the offset from UTC is known.
    recorded_at_source : {'container', 'tag', 'file_name', 'file_time'} or None
        Where that was found.
    utc_offset_known : bool
        Whether the player's local time follows from it. A time in UTC alone
        (QuickTime, MP4) is aware but leaves the place open.
    """

    duration_s: float | None
    sample_rate_hz: int
    channels: int
    container: str
    audio_codec: str
    has_video: bool
    rotation: int
    recorded_at: datetime | None
    recorded_at_source: RecordedAtSource | None
    utc_offset_known: bool


def probe(path: Path) -> ClipInfo:
    """Look at a file without decoding its sound.

    Parameters
    ----------
    path : Path
        WAV, FLAC, Ogg, MP3, M4A, MP4, MOV or anything else that decodes.

    Returns
    -------
    ClipInfo
        What it is and when it was made.

    Raises
    ------
    AudioFailure
        When the file is missing, empty, no sound file, or a video without sound.
    """
    with open_sound(path) as sound:
        info = sound.info
    metadata: dict[str, str] = {}
    container_name, codec = info.container.lower(), info.subtype.lower()
    has_video, rotation = False, 0
    container = _open_quietly(path)
    if container is not None:
        with container:
            metadata = _all_metadata(container)
            container_name = container.format.name
            codec = codec_name(container.streams.audio[0].codec_context)
            has_video, rotation = _picture(container)
    found = find_recorded_at(path, metadata)
    return ClipInfo(
        duration_s=info.duration_s,
        sample_rate_hz=info.sample_rate_hz,
        channels=info.channels,
        container=container_name,
        audio_codec=codec,
        has_video=has_video,
        rotation=rotation,
        recorded_at=found.when if found else None,
        recorded_at_source=found.source if found else None,
        utc_offset_known=bool(found and found.utc_offset_known),
    )


def decode_to_sound(path: Path) -> Sound:
    """Decode the sound of a clip.

    Parameters
    ----------
    path : Path
        The file.

    Returns
    -------
    Sound
        The whole sound as float32.

    Raises
    ------
    AudioFailure
        As :func:`audio.files.read_sound`.
    """
    return read_sound(path)


def _open_quietly(path: Path) -> "InputContainer | None":
    try:
        container = open_container(path)
    except UndecodableError:
        return None  # libsndfile knows a few kinds that FFmpeg does not
    if not container.streams.audio:
        container.close()
        return None
    return container


def _all_metadata(container: "InputContainer") -> dict[str, str]:
    """Merge the tags of all streams, the container's own winning."""
    merged: dict[str, str] = {}
    for stream in container.streams:
        merged |= {name.lower(): value for name, value in stream.metadata.items()}
    return merged | {name.lower(): value for name, value in container.metadata.items()}


def _picture(container: "InputContainer") -> tuple[bool, int]:
    import av  # noqa: PLC0415 - as above

    moving: list[Any] = [
        stream
        for stream in container.streams.video
        if not stream.disposition & av.stream.Disposition.attached_pic
    ]
    if not moving:
        return False, 0
    try:
        with only_undecodable():
            frame = next(iter(container.decode(moving[0])), None)
    except UndecodableError:
        frame = None
    return True, 0 if frame is None else int(frame.rotation) % 360
