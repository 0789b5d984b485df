"""The outline of a take: its harmony twenty times a second, for finding and telling apart.

Small enough to be kept for every take that others are held against.
"""

import zlib
from dataclasses import dataclass

import numpy as np

from analysis.alignment_features import HARMONY_SIZE, HOP_S, AlignmentFeatures, extract_features
from analysis.blocks import SampleArray
from analysis.stopping import StopQuestion
from analysis.warping import pooled
from analysis.warping_table import Frames

ALGORITHM = "outline-1"
POOLED = 5
STEP_S = POOLED * HOP_S


@dataclass(frozen=True, slots=True)
class Outline:
    """Harmony of a take.

    Attributes
    ----------
    frames : (n, 12) array
        Unit-length chroma, zero where silent or without a pitch; 0.05 s a row.
    start_s : float
        Time of the first row.
    """

    frames: Frames
    start_s: float

    @property
    def duration_s(self) -> float:
        """Length from the first to the last row."""
        return float(self.frames.shape[0] * STEP_S)

    def as_bytes(self) -> bytes:
        """Give a compact block; a step of 1/255 is far finer than two takes agree."""
        levels = np.rint(255 * self.frames).astype(np.uint8)
        return np.float64(self.start_s).tobytes() + zlib.compress(levels.tobytes())

    @staticmethod
    def from_bytes(block: bytes) -> "Outline":
        """Read what :meth:`as_bytes` gave.

        Raises
        ------
        ValueError
            If the block is something else.
        """
        try:
            levels = np.frombuffer(zlib.decompress(block[8:]), dtype=np.uint8)
        except zlib.error as problem:
            raise ValueError("the block is no outline") from problem
        frames = (levels.reshape(-1, HARMONY_SIZE) / np.float32(255)).astype(np.float32)
        return Outline(frames, float(np.frombuffer(block[:8])[0]))


def outline(
    samples: SampleArray, sample_rate_hz: int, *, should_stop: StopQuestion | None = None
) -> Outline:
    """Give the outline of a take; without rows where it is silent."""
    return outline_of(extract_features(samples, sample_rate_hz, should_stop=should_stop))


def outline_of(features: AlignmentFeatures) -> Outline:
    """Give the outline of what was heard, or of what is written."""
    if not features.frames.shape[0]:
        return Outline(np.zeros((0, HARMONY_SIZE), dtype=np.float32), features.start_s)
    frames = pooled(features.frames, POOLED, HARMONY_SIZE)[:, :HARMONY_SIZE]
    return Outline(np.ascontiguousarray(frames), features.start_s)
