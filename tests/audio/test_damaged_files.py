"""Damaged files of every kind: a result or one plain sentence, never a crash or a hang.

``PASSAGEWORK_DAMAGED_FILES=10000`` tries more of them.
"""

import faulthandler
import os
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import soundfile
from PIL import Image

from audio.errors import AudioFailure
from audio.importing import decode_to_sound, probe
from audio.recovery import recover

COUNT = int(os.environ.get("PASSAGEWORK_DAMAGED_FILES", "300"))
LONGEST_S = 10.0

Damage = Callable[[bytearray, np.random.Generator], bytearray]


def flip_bits(data: bytearray, generator: np.random.Generator) -> bytearray:
    for at in generator.integers(0, len(data), generator.integers(1, 30)):
        data[at] ^= 1 << int(generator.integers(0, 8))
    return data


def spoil_the_header(data: bytearray, generator: np.random.Generator) -> bytearray:
    for at in generator.integers(0, min(len(data), 200), generator.integers(1, 12)):
        data[at] = int(generator.choice([0, 1, 0x7F, 0x80, 0xFF, generator.integers(0, 256)]))
    return data


def cut_off(data: bytearray, generator: np.random.Generator) -> bytearray:
    return data[: int(generator.integers(0, len(data)))]


def cut_out(data: bytearray, generator: np.random.Generator) -> bytearray:
    a, b = sorted(generator.integers(0, len(data), 2))
    return data[:a] + data[b:]


def blank_out(data: bytearray, generator: np.random.Generator) -> bytearray:
    at = int(generator.integers(0, len(data)))
    data[at : at + 512] = bytes(len(data[at : at + 512]))
    return data


def repeat(data: bytearray, generator: np.random.Generator) -> bytearray:
    a, b = sorted(generator.integers(0, len(data), 2))
    return data[:b] + data[a:]


DAMAGES: tuple[Damage, ...] = (
    flip_bits, spoil_the_header, cut_off, cut_out, blank_out, repeat,
)  # fmt: skip


def failure_of(call: Callable[[Path], object], path: Path) -> AudioFailure | None:
    try:
        call(path)
    except AudioFailure as failure:
        return failure
    return None


@pytest.fixture
def originals(make_clip: Any, tmp_path: Path) -> list[Path]:
    paths = [
        make_clip("a.m4a", "aac", seconds=0.5),
        make_clip("b.m4a", "alac", seconds=0.5),
        make_clip("c.mp4", "aac", video=True, seconds=0.5),
        make_clip("d.mov", "pcm_s16le", video=True, seconds=0.5),
        make_clip("e.mkv", "libopus", video=True, seconds=0.5),
        make_clip("f.mp3", "libmp3lame", seconds=0.5),
        make_clip("g.opus", "libopus", seconds=0.5),
    ]
    noise = np.random.default_rng(0).uniform(-0.5, 0.5, (12_000, 2))
    for name, subtype in (
        ("h.wav", "PCM_24"), ("i.wav", "FLOAT"), ("j.flac", "PCM_24"), ("k.ogg", "VORBIS"),
        ("l.aiff", "PCM_16"),
    ):  # fmt: skip
        soundfile.write(tmp_path / name, noise, 48_000, subtype=subtype)
        paths.append(tmp_path / name)
    return paths


def test_damaged_files_end_in_a_sound_or_in_one_sentence(
    originals: list[Path], tmp_path: Path
) -> None:
    generator = np.random.default_rng(20_260_314)
    contents = [(path.suffix, path.read_bytes()) for path in originals]
    folder = tmp_path / "damaged"
    folder.mkdir()
    refused = 0
    for number in range(COUNT):
        suffix, whole = contents[number % len(contents)]
        damage = DAMAGES[int(generator.integers(0, len(DAMAGES)))]
        path = folder / f"{number}{suffix}"
        data = bytes(damage(bytearray(whole), generator))
        path.write_bytes(data)
        faulthandler.dump_traceback_later(3 * LONGEST_S, exit=True)
        begun = time.monotonic()
        for call in (probe, decode_to_sound, recover):
            failure = failure_of(call, path)
            if failure is not None:
                refused += 1
                assert failure.sentence.endswith(".")
                assert failure.next_step.endswith(".")
        faulthandler.cancel_dump_traceback_later()
        assert time.monotonic() - begun < LONGEST_S, f"{number}: {damage.__name__} {suffix}"
        left = {entry.name for entry in folder.iterdir()} - {path.name}
        assert left <= {f"{path.stem}-recovered.wav"}
        assert path.read_bytes() == data
        for entry in folder.iterdir():
            entry.unlink()
    assert 0 < refused < 3 * COUNT


def test_a_broken_file_of_a_kind_that_is_read_asks_for_another_copy(tmp_path):
    for name, wanted in (("half.m4a", "Copy the file again"), ("notes.pdf", "Choose a WAV")):
        path = tmp_path / name
        path.write_bytes(b"this is no sound at all\n" * 40)
        with pytest.raises(AudioFailure) as caught:
            probe(path)
        assert caught.value.next_step.startswith(wanted)


def test_a_text_or_a_picture_is_no_video(tmp_path):
    text, picture = tmp_path / "notes.txt", tmp_path / "page.png"
    text.write_bytes(b"this is no sound at all\n" * 40)
    Image.new("RGB", (32, 32)).save(picture)
    for path in (text, picture):
        with pytest.raises(AudioFailure, match="holds no sound"):
            probe(path)
