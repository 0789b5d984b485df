import struct
from pathlib import Path

import av
import numpy as np
import pytest
import soundfile

from audio.errors import AudioFailure
from audio.files import open_sound, read_sound, sound_info

SOUND = np.random.default_rng(5).uniform(-0.5, 0.5, (24_000, 2)).astype(np.float32)


@pytest.mark.parametrize(
    ("name", "subtype", "bits"),
    [
        ("a take.wav", "PCM_16", 15),
        ("take.wav", "PCM_24", 23),
        ("练习 ärger.flac", "PCM_16", 15),
        ("take.flac", "PCM_24", 23),
        ("take.wav", "FLOAT", 40),
        ("take.aiff", "PCM_24", 23),
    ],
)
def test_lossless_files_come_back(tmp_path: Path, name: str, subtype: str, bits: int) -> None:
    soundfile.write(tmp_path / name, SOUND, 44_100, subtype=subtype)
    sound = read_sound(tmp_path / name)
    assert sound.samples.dtype == np.float32
    assert (sound.frames, sound.channels, sound.sample_rate_hz) == (24_000, 2, 44_100)
    assert sound.subtype == subtype
    assert np.abs(sound.samples - SOUND).max() <= 2.0**-bits
    assert sound.non_finite_samples == 0
    assert sound.damage is None
    assert sound.duration_s == pytest.approx(24_000 / 44_100)
    assert sound_info(tmp_path / name).frames == 24_000


@pytest.mark.parametrize("name", ["take.ogg", "take.mp3"])
def test_lossy_files_come_back_nearly(tmp_path: Path, name: str) -> None:
    time_s = np.arange(96_000) / 48_000
    tone = (0.5 * np.sin(2 * np.pi * 440 * time_s)).astype(np.float32)
    soundfile.write(tmp_path / name, tone, 48_000)
    sound = read_sound(tmp_path / name)
    assert sound.frames == pytest.approx(96_000, abs=2500)
    # Block by block, as MP3 through libsndfile goes wrong from the second block on.
    for start in range(12_000, 84_000, 12_000):
        part = sound.mono()[start : start + 12_000]
        assert np.std(part) == pytest.approx(0.5 / np.sqrt(2), rel=0.02)
    assert abs(int(np.argmax(np.abs(sound.mono()) > 0.2)) - 20) < 60


@pytest.mark.parametrize(
    ("rate", "channels", "frames"),
    [(8_000, 1, 8_000), (192_000, 2, 19_200), (48_000, 6, 4_800), (48_000, 1, 1), (44_100, 2, 1)],
)
def test_unusual_formats_are_read(tmp_path: Path, rate: int, channels: int, frames: int) -> None:
    samples = np.full((frames, channels), 0.25, np.float32)
    soundfile.write(tmp_path / "take.wav", samples, rate, subtype="PCM_16")
    sound = read_sound(tmp_path / "take.wav")
    assert (sound.sample_rate_hz, sound.channels, sound.frames) == (rate, channels, frames)
    np.testing.assert_array_equal(sound.samples, samples)
    np.testing.assert_array_equal(sound.mono(), samples[:, 0])


def test_silence_is_a_sound(tmp_path: Path) -> None:
    soundfile.write(tmp_path / "rest.wav", np.zeros(4_800), 48_000)
    assert not read_sound(tmp_path / "rest.wav").samples.any()


def test_non_finite_samples_are_replaced_and_counted(tmp_path: Path) -> None:
    samples = SOUND.copy()
    samples[5, 0], samples[9_000, 1], samples[20_000, :] = np.nan, np.inf, -np.inf
    soundfile.write(tmp_path / "odd.wav", samples, 48_000, subtype="FLOAT")
    sound = read_sound(tmp_path / "odd.wav")
    assert sound.non_finite_samples == 4
    assert np.isfinite(sound.samples).all()
    assert sound.samples[5, 0] == 0
    assert sound.samples[5, 1] == SOUND[5, 1]


def test_blocks_are_the_whole_sound_in_order(tmp_path: Path) -> None:
    soundfile.write(tmp_path / "take.flac", SOUND, 48_000, subtype="PCM_24")
    with open_sound(tmp_path / "take.flac") as opened:
        blocks = list(opened.blocks(1000))
    assert max(len(block) for block in blocks) == 1000
    np.testing.assert_array_equal(
        np.concatenate(blocks), read_sound(tmp_path / "take.flac").samples
    )


@pytest.mark.parametrize("subtype", ["PCM_16", "PCM_24"])
@pytest.mark.parametrize("ending", ["flac", "wav"])
def test_a_truncated_file_is_refused_unless_its_beginning_is_wanted(
    tmp_path: Path, ending: str, subtype: str
) -> None:
    path = tmp_path / f"take.{ending}"
    soundfile.write(path, SOUND, 48_000, subtype=subtype)
    data = path.read_bytes()
    path.write_bytes(data[: len(data) // 2])
    with pytest.raises(AudioFailure, match=r"ends early|is damaged") as caught:
        read_sound(path)
    assert caught.value.next_step
    partly = read_sound(path, keep_readable=True)
    assert partly.damage is not None
    assert 4_000 < partly.frames < 13_000
    assert np.abs(partly.samples - SOUND[: partly.frames]).max() <= 2.0**-15


def test_a_wav_from_a_pipe_with_no_stated_length_is_whole(tmp_path: Path) -> None:
    path = tmp_path / "piped.wav"
    soundfile.write(path, SOUND, 48_000, subtype="PCM_16")
    data = bytearray(path.read_bytes())
    data[4:8] = data[40:44] = b"\xff\xff\xff\xff"
    path.write_bytes(data)
    assert read_sound(path).frames == 24_000


@pytest.mark.parametrize(
    ("name", "content", "sentence"),
    [
        ("empty.wav", b"", "is empty"),
        ("notes.wav", b"bar 5: third finger higher\n" * 50, "not a sound file"),
        ("notes.mp3", b"bar 5: third finger higher\n" * 50, "not a sound file"),
        ("noise.m4a", bytes(range(256)) * 40, "not a sound file"),
    ],
)
def test_what_is_no_sound_is_said_in_one_sentence(
    tmp_path: Path, name: str, content: bytes, sentence: str
) -> None:
    (tmp_path / name).write_bytes(content)
    with pytest.raises(AudioFailure, match=sentence) as caught:
        read_sound(tmp_path / name)
    assert name in caught.value.sentence
    assert caught.value.sentence.endswith(".")
    assert caught.value.next_step.endswith(".")


def test_missing_files_folders_and_empty_sounds_are_said_plainly(tmp_path: Path) -> None:
    with pytest.raises(AudioFailure, match="is not there"):
        read_sound(tmp_path / "missing.wav")
    with pytest.raises(AudioFailure, match="is a folder"):
        read_sound(tmp_path)
    soundfile.write(tmp_path / "none.wav", np.zeros((0, 1)), 48_000)
    with pytest.raises(AudioFailure, match="holds no sound"):
        read_sound(tmp_path / "none.wav")


def test_a_header_that_promises_far_too_much_does_not_exhaust_memory(tmp_path: Path) -> None:
    path = tmp_path / "liar.wav"
    soundfile.write(path, SOUND, 48_000, subtype="PCM_16")
    data = bytearray(path.read_bytes())
    data[40:44] = b"\xf0\xff\xff\xff"
    path.write_bytes(data)
    with pytest.raises(AudioFailure, match="ends early"):
        read_sound(path)


def test_a_header_that_states_a_length_below_nothing_is_not_trusted(make_clip):
    """A sum of durations that ran over 63 bits (ISO 14496-12, stts) is no length."""
    path = make_clip("clip.mp4", "aac", seconds=0.5)
    data = bytearray(path.read_bytes())
    at = data.find(b"stts") + 8
    data[at : at + 20] = struct.pack(">5I", 2, 2**32 - 1, 2**31 - 1, 2**31 - 1, 2**31 - 1)
    path.write_bytes(data)
    with av.open(str(path)) as container:
        assert container.streams.audio[0].duration < 0
    with pytest.raises(AudioFailure, match=r"damaged|no sound|early"):
        read_sound(path)
    with open_sound(path, keep_readable=True) as sound:
        assert sound.info.frames is None
