"""A filmed take whose every picture carries its own number, as a bar code across its width.

Ten bars from left to right, white for one and black for nought, the highest digit first:
whoever sees a picture can say when it was filmed.
"""

from fractions import Fraction
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

DIGITS = 10
RATE_HZ = 48_000
_MIDDLE = 128


def number_of(picture: NDArray[np.uint8]) -> int:
    """Read a picture's number; shape (height, width, channels), upright."""
    height, width = picture.shape[:2]
    row = picture[height // 3 : 2 * height // 3, :, :3].mean(axis=(0, 2))
    bars = row[[round((at + 0.5) * width / DIGITS) for at in range(DIGITS)]]
    return int("".join("1" if bar > _MIDDLE else "0" for bar in bars), 2)


def picture_of(number: int, width: int, height: int) -> NDArray[np.uint8]:
    """Make the picture with this number."""
    bars = np.array([255 if digit == "1" else 0 for digit in f"{number:0{DIGITS}b}"], np.uint8)
    row = bars[np.minimum(np.arange(width) * DIGITS // width, DIGITS - 1)]
    return np.ascontiguousarray(np.broadcast_to(row[np.newaxis, :, np.newaxis], (height, width, 3)))


def write_film(
    path: Path,
    seconds: float,
    *,
    fps: int = 30,
    size: tuple[int, int] = (640, 360),
    pictures_between_keys: int = 30,
) -> Path:
    """Write a clip as a phone does: H.264 with a key picture a second, AAC sound.

    Parameters
    ----------
    path : Path
        Its suffix says which container.
    seconds : float
        At most 1023 pictures.
    fps, size
        Pictures a second; width and height.
    pictures_between_keys : int
        Jumping back costs decoding from a key picture on.
    """
    import av

    width, height = size
    with av.open(str(path), "w") as container:
        sound = container.add_stream("aac", rate=RATE_HZ, layout="mono")
        video = container.add_stream("libx264", rate=fps)
        video.width, video.height, video.pix_fmt = width, height, "yuv420p"
        video.codec_context.gop_size = pictures_between_keys
        video.options = {"preset": "veryfast", "crf": "20", "sc_threshold": "0"}
        for number in range(round(seconds * fps)):
            frame = av.VideoFrame.from_ndarray(picture_of(number, width, height), format="rgb24")
            frame.pts, frame.time_base = number, Fraction(1, fps)
            container.mux(video.encode(frame))
        container.mux(video.encode(None))
        time_s = np.arange(round(seconds * RATE_HZ)) / RATE_HZ
        tone = (0.1 * np.sin(2 * np.pi * 440 * time_s)).astype(np.float32)[np.newaxis]
        whole = av.AudioFrame.from_ndarray(tone, format="fltp", layout="mono")
        whole.sample_rate, whole.pts, whole.time_base = RATE_HZ, 0, Fraction(1, RATE_HZ)
        resampler = av.AudioResampler(format="fltp", layout="mono", rate=RATE_HZ, frame_size=1024)
        for part in (*resampler.resample(whole), *resampler.resample(None)):
            container.mux(sound.encode(part))
        container.mux(sound.encode(None))
    return path
