import shutil
import subprocess
from pathlib import Path

import mutagen.flac
import numpy as np
import pytest
import soundfile

from audio import encoding
from audio.encoding import EncodingStopped, encode_flac
from audio.errors import AudioFailure

RATE = 48_000
TAGS = {"DATE": "2026-03-14", "TITLE": "Étude 練習, take 2", "TRACKNUMBER": "2"}


def pcm(path: Path, subtype: str = "PCM_24", channels: int = 1, frames: int = RATE) -> np.ndarray:
    generator = np.random.default_rng(3)
    if subtype in ("FLOAT", "DOUBLE"):
        samples = generator.uniform(-0.9, 0.9, (frames, channels)).astype(np.float32)
    else:
        bits = {"PCM_U8": 8, "PCM_16": 16, "PCM_24": 24, "PCM_32": 32}[subtype]
        low = -(2 ** (bits - 1))
        samples = (generator.integers(low, -low, (frames, channels)) << (32 - bits)).astype(
            np.int32
        )
    soundfile.write(path, samples, RATE, subtype=subtype)
    return samples


@pytest.mark.parametrize(
    ("subtype", "channels"),
    [("PCM_U8", 1), ("PCM_16", 1), ("PCM_16", 2), ("PCM_24", 1), ("PCM_24", 2), ("PCM_24", 6)],
)
def test_every_sample_survives(tmp_path: Path, subtype: str, channels: int) -> None:
    samples = pcm(tmp_path / "take.wav", subtype, channels)
    encoded = encode_flac(tmp_path / "take.wav", tmp_path / "take.flac", TAGS)
    assert encoded.lossless
    assert encoded.note is None
    assert encoded.frames == RATE
    got, rate = soundfile.read(tmp_path / "take.flac", dtype="int32", always_2d=True)
    assert rate == RATE
    np.testing.assert_array_equal(got, samples)
    assert encoded.subtype == ("PCM_S8" if subtype == "PCM_U8" else subtype)
    assert (tmp_path / "take.wav").exists()


@pytest.mark.skipif(shutil.which("ffmpeg") is None, reason="a second decoder as the reference")
def test_another_decoder_finds_the_same_samples(tmp_path: Path) -> None:
    # Reference: FFmpeg's own FLAC decoder, independent of libFLAC.
    samples = pcm(tmp_path / "take.wav")
    encode_flac(tmp_path / "take.wav", tmp_path / "take.flac", TAGS)
    raw = subprocess.run(
        ["ffmpeg", "-v", "error", "-i", tmp_path / "take.flac", "-f", "s32le", "-"],
        capture_output=True,
        check=True,
    ).stdout
    np.testing.assert_array_equal(np.frombuffer(raw, "<i4")[:, np.newaxis], samples)


def test_tags_are_written_and_nothing_else_is_left(tmp_path: Path) -> None:
    pcm(tmp_path / "take.wav")
    encode_flac(tmp_path / "take.wav", tmp_path / "new" / "take.flac", TAGS, remove_pcm=True)
    assert [entry.name for entry in tmp_path.iterdir()] == ["new"]
    assert [entry.name for entry in (tmp_path / "new").iterdir()] == ["take.flac"]
    tags = mutagen.flac.FLAC(tmp_path / "new" / "take.flac")
    assert {name: tags[name][0] for name in TAGS} == TAGS


@pytest.mark.parametrize("subtype", ["PCM_32", "FLOAT", "DOUBLE"])
def test_what_flac_cannot_hold_is_rounded_to_24_bit_and_said(tmp_path: Path, subtype: str) -> None:
    samples = pcm(tmp_path / "take.wav", subtype)
    encoded = encode_flac(tmp_path / "take.wav", tmp_path / "take.flac", remove_pcm=True)
    assert not encoded.lossless
    assert encoded.note is not None
    assert "rounded to 24 bit" in encoded.note
    assert (tmp_path / "take.wav").exists(), "only a lossless copy may replace the take"
    got = soundfile.read(tmp_path / "take.flac", dtype="int32", always_2d=True)[0] / 2.0**31
    wanted = samples / 2.0**31 if subtype == "PCM_32" else samples
    assert np.abs(got - wanted).max() <= 0.5 / 2**23 + 1e-9


def test_floats_that_fit_24_bit_are_kept_exactly(tmp_path: Path) -> None:
    steps = np.random.default_rng(1).integers(-(2**23), 2**23, (5000, 1))
    soundfile.write(tmp_path / "take.wav", steps / 2.0**23, RATE, subtype="FLOAT")
    encoded = encode_flac(tmp_path / "take.wav", tmp_path / "take.flac")
    assert encoded.lossless
    got = soundfile.read(tmp_path / "take.flac", dtype="int32", always_2d=True)[0] >> 8
    np.testing.assert_array_equal(got, steps)


@pytest.mark.parametrize("bad", [1.5, np.nan, -np.inf])
def test_floats_beyond_full_scale_are_refused(tmp_path: Path, bad: float) -> None:
    samples = np.zeros(5000, np.float32)
    samples[4000] = bad
    soundfile.write(tmp_path / "take.wav", samples, RATE, subtype="FLOAT")
    with pytest.raises(AudioFailure, match="beyond full scale"):
        encode_flac(tmp_path / "take.wav", tmp_path / "take.flac", remove_pcm=True)
    assert [entry.name for entry in tmp_path.iterdir()] == ["take.wav"]


def test_an_existing_file_is_never_overwritten(tmp_path: Path) -> None:
    pcm(tmp_path / "take.wav")
    (tmp_path / "take.flac").write_bytes(b"mine")
    with pytest.raises(AudioFailure, match="exists already"):
        encode_flac(tmp_path / "take.wav", tmp_path / "take.flac", remove_pcm=True)
    assert (tmp_path / "take.flac").read_bytes() == b"mine"
    assert (tmp_path / "take.wav").exists()


def test_a_file_that_appears_meanwhile_is_not_overwritten_either(tmp_path: Path) -> None:
    pcm(tmp_path / "take.wav")

    def appear(_: float) -> None:
        (tmp_path / "take.flac").write_bytes(b"mine")

    with pytest.raises(AudioFailure, match="exists already"):
        encode_flac(tmp_path / "take.wav", tmp_path / "take.flac", on_progress=appear)
    assert (tmp_path / "take.flac").read_bytes() == b"mine"
    assert sorted(entry.name for entry in tmp_path.iterdir()) == ["take.flac", "take.wav"]


@pytest.mark.parametrize("stop_after", [0, 1, 6, 9])
def test_cancelling_leaves_the_take_alone(tmp_path: Path, stop_after: int) -> None:
    pcm(tmp_path / "take.wav", frames=5 * 65_536)
    asked = iter(range(100))
    with pytest.raises(EncodingStopped):
        encode_flac(
            tmp_path / "take.wav",
            tmp_path / "take.flac",
            should_stop=lambda: next(asked) >= stop_after,
        )
    assert [entry.name for entry in tmp_path.iterdir()] == ["take.wav"]


def test_progress_goes_from_start_to_end(tmp_path: Path) -> None:
    pcm(tmp_path / "take.wav", frames=5 * 65_536)
    shares: list[float] = []
    encode_flac(tmp_path / "take.wav", tmp_path / "take.flac", on_progress=shares.append)
    assert shares == sorted(shares)
    assert shares[-1] == pytest.approx(1.0)
    assert len(shares) == 10


def test_a_copy_that_differs_is_discarded(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    pcm(tmp_path / "take.wav")

    def spoil(partial: Path, tags: object) -> None:
        samples, rate = soundfile.read(partial, dtype="int32")
        samples[31_415] ^= 1 << 8
        soundfile.write(partial, samples, rate, subtype="PCM_24", format="FLAC")

    monkeypatch.setattr(encoding, "_tag", spoil)
    with pytest.raises(AudioFailure, match="differs"):
        encode_flac(tmp_path / "take.wav", tmp_path / "take.flac", remove_pcm=True)
    assert [entry.name for entry in tmp_path.iterdir()] == ["take.wav"]


def test_a_copy_that_is_cut_short_is_discarded(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    pcm(tmp_path / "take.wav")

    def cut(partial: Path, tags: object) -> None:
        data = partial.read_bytes()
        partial.write_bytes(data[: len(data) // 2])

    monkeypatch.setattr(encoding, "_tag", cut)
    with pytest.raises(AudioFailure):
        encode_flac(tmp_path / "take.wav", tmp_path / "take.flac", remove_pcm=True)
    assert [entry.name for entry in tmp_path.iterdir()] == ["take.wav"]


@pytest.mark.skipif("sys.platform == 'win32'", reason="file-size limits are a Unix facility")
def test_a_full_disk_keeps_the_take(tmp_path: Path) -> None:
    import resource

    pcm(tmp_path / "take.wav", frames=10 * RATE)
    limits = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (300_000, limits[1]))
    try:
        with pytest.raises(AudioFailure) as caught:
            encode_flac(tmp_path / "take.wav", tmp_path / "take.flac", remove_pcm=True)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, limits)
    assert (
        "room on the disk" in caught.value.next_step or "check the disk" in caught.value.next_step
    )
    assert [entry.name for entry in tmp_path.iterdir()] == ["take.wav"]


def test_too_many_channels_and_no_sound_are_said_plainly(tmp_path: Path) -> None:
    soundfile.write(tmp_path / "many.wav", np.zeros((100, 9)), RATE, subtype="PCM_24")
    with pytest.raises(AudioFailure, match="9 channels"):
        encode_flac(tmp_path / "many.wav", tmp_path / "many.flac")
    soundfile.write(tmp_path / "none.wav", np.zeros((0, 1)), RATE, subtype="PCM_24")
    with pytest.raises(AudioFailure, match="no sound"):
        encode_flac(tmp_path / "none.wav", tmp_path / "none.flac")
    with pytest.raises(AudioFailure):
        encode_flac(tmp_path / "missing.wav", tmp_path / "missing.flac")
    assert not list(tmp_path.glob("*.flac"))


def test_file_systems_without_hard_links_work_too(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(self: Path, target: Path) -> None:
        raise PermissionError(1, "no hard links here")

    monkeypatch.setattr(Path, "hardlink_to", refuse)
    samples = pcm(tmp_path / "take.wav")
    encode_flac(tmp_path / "take.wav", tmp_path / "take.flac", TAGS)
    got = soundfile.read(tmp_path / "take.flac", dtype="int32", always_2d=True)[0]
    np.testing.assert_array_equal(got, samples)
    assert sorted(entry.name for entry in tmp_path.iterdir()) == ["take.flac", "take.wav"]
