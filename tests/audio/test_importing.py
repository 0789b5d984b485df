import hashlib
import os
import struct
from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path
from typing import Any

import mutagen
import mutagen.id3
import mutagen.mp4
import numpy as np
import pytest
import soundfile

from audio.errors import AudioFailure
from audio.importing import CopyStopped, copy_original, decode_to_sound, probe, sha256_of

CREATED = {"creation_time": "2026-03-14T17:15:02.000000Z"}
RATE = 48_000


@pytest.mark.parametrize(
    ("name", "codec", "video", "seen_codec", "channels"),
    [
        ("clip.m4a", "aac", False, "aac", 1),
        ("clip.m4a", "alac", False, "alac", 2),
        ("clip.mp4", "aac", True, "aac", 2),
        ("clip.mov", "aac", True, "aac", 1),
        ("clip.mov", "pcm_s16le", True, "pcm_s16le", 2),
        ("clip.mkv", "libopus", True, "opus", 1),
        ("clip.webm", "libopus", False, "opus", 1),
        ("clip.opus", "libopus", False, "opus", 1),
        ("clip.mp3", "libmp3lame", False, "mp3", 1),
        ("clip.flac", "flac", False, "flac", 2),
        ("clip.wav", "pcm_s24le", False, "pcm_s24le", 1),
        ("clip.3gp", "aac", False, "aac", 1),
    ],
)
def test_every_kind_of_clip_is_understood_and_in_time(  # noqa: PLR0917 - pytest's way
    make_clip: Any, name: str, codec: str, video: bool, seen_codec: str, channels: int
) -> None:
    path = make_clip(name, codec, video=video, channels=channels)
    before = path.read_bytes()
    info = probe(path)
    assert (info.sample_rate_hz, info.channels) == (RATE, channels)
    assert info.audio_codec == seen_codec
    assert info.has_video == video
    assert info.rotation == 0
    assert info.duration_s == pytest.approx(2.0, abs=0.06)
    sound = decode_to_sound(path)
    assert sound.duration_s == pytest.approx(2.0, abs=0.06)
    assert sound.channels == channels
    # The burst was put at 1.000 s: an encoder's delay must not shift it.
    burst = np.flatnonzero(np.abs(sound.mono()) > 0.3)
    assert burst[0] / RATE == pytest.approx(1.0, abs=0.003)
    assert path.read_bytes() == before


def test_an_ogg_vorbis_file_is_understood(tmp_path: Path) -> None:
    soundfile.write(tmp_path / "take.ogg", np.zeros((RATE, 2)), RATE)
    info = probe(tmp_path / "take.ogg")
    assert (info.audio_codec, info.channels, info.duration_s) == ("vorbis", 2, 1.0)


@pytest.mark.parametrize("name", ["clip.mp4", "clip.mov", "clip.m4a"])
def test_creation_time_is_utc_and_leaves_the_place_open(make_clip: Any, name: str) -> None:
    # ISO 14496-12, movie header box: creation time in UTC.
    info = probe(make_clip(name, video=name != "clip.m4a", metadata=CREATED))
    assert info.recorded_at == datetime(2026, 3, 14, 17, 15, 2, tzinfo=UTC)
    assert info.recorded_at_source == "container"
    assert not info.utc_offset_known


def test_the_quicktime_date_with_its_offset_wins(make_clip: Any) -> None:
    key = "com.apple.quicktime.creationdate"
    path = make_clip(
        "clip.mov",
        video=True,
        metadata={**CREATED, key: "2026-03-15T02:15:02+0900"},
        options={"movflags": "use_metadata_tags"},
    )
    info = probe(path)
    assert info.recorded_at == datetime(2026, 3, 15, 2, 15, 2, tzinfo=timezone(timedelta(hours=9)))
    assert info.recorded_at is not None
    assert info.recorded_at.utcoffset() == timedelta(hours=9)
    assert (info.recorded_at_source, info.utc_offset_known) == ("container", True)


@pytest.mark.parametrize("unset", ["1904-01-01T00:00:00Z", "1970-01-01T00:00:00Z"])
def test_a_clock_that_was_never_set_is_not_believed(make_clip: Any, unset: str) -> None:
    path = make_clip("20260314_181502.m4a", metadata={"creation_time": unset})
    info = probe(path)
    assert info.recorded_at == datetime(2026, 3, 14, 18, 15, 2)
    assert info.recorded_at_source == "file_name"


def test_vorbis_comments_of_flac_and_ogg_are_read(tmp_path: Path) -> None:
    for name in ("take.flac", "take.ogg"):
        soundfile.write(tmp_path / name, np.zeros(4800), RATE)
        file = mutagen.File(tmp_path / name)
        file["DATE"] = "2026-03-14"
        file.save()
        info = probe(tmp_path / name)
        assert info.recorded_at is not None
        assert info.recorded_at.date().isoformat() == "2026-03-14"
        assert info.recorded_at_source == "tag"
        assert not info.utc_offset_known


@pytest.mark.parametrize(
    ("text", "when"),
    [
        ("2026-03-14T18:15:02", datetime(2026, 3, 14, 18, 15, 2)),
        ("2026-03-14", datetime(2026, 3, 14, 12, 0)),
    ],
)
def test_id3_recording_time_is_read(make_clip: Any, text: str, when: datetime) -> None:
    # ID3v2.4, frame TDRC.
    path = make_clip("clip.mp3", "libmp3lame")
    tags = mutagen.id3.ID3(path)
    tags.delall("TDRC")
    tags.add(mutagen.id3.TDRC(encoding=3, text=text))
    tags.save(path)
    info = probe(path)
    assert (info.recorded_at, info.recorded_at_source) == (when, "tag")


def test_a_year_alone_is_no_date(make_clip: Any) -> None:
    path = make_clip("2026-03-14 18.15.02.mp3", "libmp3lame")
    tags = mutagen.id3.ID3(path)
    tags.add(mutagen.id3.TDRC(encoding=3, text="2026"))
    tags.save(path)
    assert probe(path).recorded_at_source == "file_name"


def test_the_broadcast_wave_date_is_read(tmp_path: Path) -> None:
    # EBU Tech 3285, bext chunk: Description 256, Originator 32, OriginatorReference 32,
    # OriginationDate 10, OriginationTime 8, TimeReference 8, Version 2, then 254 bytes.
    path = tmp_path / "recorder.wav"
    soundfile.write(path, np.zeros(4800), RATE, subtype="PCM_24")
    bext = bytes(320) + b"2026-03-14" + b"18:15:02" + bytes(8) + struct.pack("<H", 1) + bytes(254)
    data = path.read_bytes()
    body = data[12:] + b"bext" + struct.pack("<I", len(bext)) + bext
    # The chunk belongs in front of the samples.
    body = b"bext" + struct.pack("<I", len(bext)) + bext + data[12:]
    path.write_bytes(b"RIFF" + struct.pack("<I", 4 + len(body)) + b"WAVE" + body)
    info = probe(path)
    assert info.recorded_at == datetime(2026, 3, 14, 18, 15, 2)
    assert (info.recorded_at_source, info.utc_offset_known) == ("tag", False)


def test_the_files_own_time_is_the_last_resort(tmp_path: Path) -> None:
    path = tmp_path / "take.wav"
    soundfile.write(path, np.zeros(4800), RATE)
    stamp = datetime(2026, 3, 14, 17, 15, 2, tzinfo=UTC).timestamp()
    os.utime(path, (stamp, stamp))
    info = probe(path)
    assert info.recorded_at == datetime(2026, 3, 14, 17, 15, 2, tzinfo=UTC)
    assert (info.recorded_at_source, info.utc_offset_known) == ("file_time", True)


@pytest.mark.parametrize("degrees", [90, 180, 270])
def test_a_clip_filmed_upright_is_known_to_be_turned(
    make_clip: Any, turn_clip: Any, degrees: int
) -> None:
    path = make_clip("clip.mp4", video=True)
    turn_clip(path, degrees)
    info = probe(path)
    assert info.has_video
    assert info.rotation == degrees


def test_a_cover_picture_is_no_video(make_clip: Any) -> None:
    path = make_clip("clip.m4a")
    tags = mutagen.mp4.MP4(path)
    png = bytes.fromhex(
        "89504e470d0a1a0a0000000d49484452000000010000000108060000001f15c4890000000d"
        "49444154789c6360000002000001e221bc330000000049454e44ae426082"
    )
    tags["covr"] = [mutagen.mp4.MP4Cover(png, mutagen.mp4.MP4Cover.FORMAT_PNG)]
    tags.save()
    assert not probe(path).has_video


@pytest.mark.parametrize("call", [probe, decode_to_sound])
def test_a_video_without_sound_is_said_plainly(make_clip: Any, call: Any) -> None:
    with pytest.raises(AudioFailure, match="video without a sound track") as caught:
        call(make_clip("clip.mp4", None, video=True))
    assert caught.value.next_step


def test_a_clip_cut_off_in_transfer_is_refused(make_clip: Any) -> None:
    path = make_clip("clip.m4a", seconds=4.0)
    data = path.read_bytes()
    path.write_bytes(data[: len(data) // 2])
    with pytest.raises(AudioFailure):
        decode_to_sound(path)
    path = make_clip("front.m4a", seconds=4.0, options={"movflags": "faststart"})
    data = path.read_bytes()
    path.write_bytes(data[: len(data) // 2])
    with pytest.raises(AudioFailure, match=r"ends early|is damaged"):
        decode_to_sound(path)


def test_a_copy_is_the_same_to_the_byte(make_clip: Any, tmp_path: Path) -> None:
    source = make_clip("clip å.mp4", video=True)
    data = source.read_bytes()
    digest = copy_original(source, tmp_path / "2026" / "2026-03-14" / "clip å.mp4")
    copied = tmp_path / "2026" / "2026-03-14" / "clip å.mp4"
    assert copied.read_bytes() == source.read_bytes() == data
    assert digest == hashlib.sha256(data).hexdigest() == sha256_of(copied)
    assert [entry.name for entry in copied.parent.iterdir()] == ["clip å.mp4"]


def test_sha256_of_a_known_message(tmp_path: Path) -> None:
    # FIPS 180-4 example: "abc".
    (tmp_path / "abc").write_bytes(b"abc")
    assert sha256_of(tmp_path / "abc") == (
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    )


def test_a_copy_never_replaces_anything(tmp_path: Path) -> None:
    (tmp_path / "a").write_bytes(b"new")
    (tmp_path / "b").write_bytes(b"old")
    with pytest.raises(AudioFailure, match="exists already"):
        copy_original(tmp_path / "a", tmp_path / "b")

    def appear(_: float) -> None:
        (tmp_path / "c").write_bytes(b"old")

    with pytest.raises(AudioFailure, match="exists already"):
        copy_original(tmp_path / "a", tmp_path / "c", on_progress=appear)
    assert (tmp_path / "b").read_bytes() == (tmp_path / "c").read_bytes() == b"old"
    assert sorted(entry.name for entry in tmp_path.iterdir()) == ["a", "b", "c"]


def test_a_cancelled_or_failed_copy_leaves_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    source = tmp_path / "a"
    source.write_bytes(bytes(3 * 2**20))
    asked = iter(range(100))
    with pytest.raises(CopyStopped):
        copy_original(source, tmp_path / "b", should_stop=lambda: next(asked) >= 2)
    with pytest.raises(AudioFailure, match="is not there"):
        copy_original(tmp_path / "missing", tmp_path / "b")
    monkeypatch.setattr("audio.copying.sha256_of", lambda *_, **__: "0" * 64)
    with pytest.raises(AudioFailure, match="differs"):
        copy_original(source, tmp_path / "b")
    assert [entry.name for entry in tmp_path.iterdir()] == ["a"]


@pytest.mark.skipif("sys.platform == 'win32'", reason="file-size limits are a Unix facility")
def test_a_full_disk_leaves_nothing_half_made(tmp_path: Path) -> None:
    import resource

    (tmp_path / "a").write_bytes(bytes(10**6))
    limits = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (10**5, limits[1]))
    try:
        with pytest.raises(AudioFailure, match="could not be copied"):
            copy_original(tmp_path / "a", tmp_path / "b")
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, limits)
    assert [entry.name for entry in tmp_path.iterdir()] == ["a"]


def test_he_aac_is_decoded_at_its_full_rate(make_clip: Any) -> None:
    """No free encoder writes it: a clip at 24 kHz is declared to be HE-AAC at 48.

    ISO/IEC 14496-3, AudioSpecificConfig: after the sync extension 0x2B7 and object type
    5, sbrPresentFlag and the extension's frequency index (3: 48 kHz).
    """
    path = make_clip("clip.m4a", "aac", rate=24_000)
    data = bytearray(path.read_bytes())
    at = data.find(b"\x56\xe5\x00")
    assert at > 0
    data[at + 2] = 0x98
    path.write_bytes(data)
    info = probe(path)
    assert (info.audio_codec, info.sample_rate_hz) == ("aac", 48_000)
    sound = decode_to_sound(path)
    assert sound.duration_s == pytest.approx(2.0, abs=0.1)
    loud = np.flatnonzero(np.abs(sound.samples[:, 0]) > 0.3) / sound.sample_rate_hz
    assert loud[0] == pytest.approx(1.0, abs=0.05)


def test_a_changing_frame_rate_shifts_no_sound(make_clip: Any) -> None:
    times = [0, 1, 2, 7, 8, 9, 17, 18, 19]
    path = make_clip("clip.mp4", "aac", video=True, picture_times=times)
    assert probe(path).has_video
    burst = np.flatnonzero(np.abs(decode_to_sound(path).mono()) > 0.3)
    assert burst[0] / RATE == pytest.approx(1.0, abs=0.003)
