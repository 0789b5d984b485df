"""Clips inside a page: whatever their length, they are written, whole, and as long."""

import io

import av
import numpy as np
import pytest

from audio.clip_cutting import CLIP_RATE_HZ, encode_aac

# ISO/IEC 14496-3: an AAC frame is 1024 samples; the encoder puts one or two before the sound
# and fills the last one up.
_FRAME = 1024
# FFmpeg's resampler: filter_size 32 by default (ffmpeg-resampler documentation); so many
# samples, 0.7 ms of the faded end, it may keep back.
_KEPT_BACK = 32


@pytest.mark.parametrize(
    ("channels", "rate_hz", "frames"),
    [
        # At these lengths the resampler's last part began before the one before had ended.
        (1, 96_000, 115_921),
        (1, 22_050, 15_369),
        (2, 48_000, 64_647),
        (2, 96_000, 196_172),
        (2, 48_000, 48_000),
        (1, 44_100, 1),
    ],
)
def test_every_length_is_written_and_is_as_long_as_it_should_be(channels, rate_hz, frames):
    samples = np.random.default_rng(frames).uniform(-0.3, 0.3, (frames, channels))
    data = encode_aac(samples.astype(np.float32), rate_hz)
    with av.open(io.BytesIO(data)) as container:
        decoded = sum(frame.samples for frame in container.decode(audio=0))
    wanted = frames * CLIP_RATE_HZ / rate_hz
    assert wanted - _KEPT_BACK - 1 <= decoded <= wanted + 3 * _FRAME
