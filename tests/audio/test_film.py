import math
import shutil
import subprocess
from pathlib import Path
from typing import Any

import mutagen.mp4
import numpy as np
import pytest

from audio.errors import AudioFailure
from audio.film import Film


def number_of(picture: np.ndarray) -> int:
    """The picture's number, told by its brightness (see the clips' fixture)."""
    return round((float(picture[24:, 24:].mean()) - 16) / 5)


@pytest.mark.parametrize("name", ["clip.mp4", "clip.mov", "clip.mkv"])
def test_the_picture_of_a_place_is_found_in_any_order(make_clip: Any, name: str) -> None:
    film = Film(make_clip(name, "aac", video=True, seconds=4.0))
    assert (film.width, film.height) == (64, 48)
    forward = np.arange(0.05, 4.0, 0.1)
    anywhere = np.random.default_rng(1).uniform(0, 4.0, 40)
    for place_s in (*forward, *anywhere, 3.95, 0.0, 2.5):
        assert number_of(film.picture_at(place_s)) == int(place_s * 10 + 1e-6)
    assert number_of(film.picture_at(99.0)) == 39
    assert number_of(film.picture_at(-1.0)) == 0
    film.close()


def test_a_changing_frame_rate_is_followed(make_clip: Any) -> None:
    times = [0, 1, 2, 5, 6, 12, 13, 14, 19]
    film = Film(make_clip("clip.mp4", video=True, picture_times=times))
    for place in (0.05, 0.45, 0.55, 1.15, 1.25, 1.85, 1.95, 0.35):
        shown = sum(at <= place * 10 for at in times) - 1
        assert number_of(film.picture_at(place)) == shown
    film.close()


def test_each_place_lies_inside_the_time_of_its_picture(make_clip: Any) -> None:
    times = [0, 1, 2, 5, 6, 12, 13, 14, 19]
    film = Film(make_clip("clip.mp4", "aac", video=True, picture_times=times))
    for place_s in (0.05, 1.85, 0.45, 1.15, 0.55, 1.25):
        start_s, end_s = film.span_at(place_s)
        before = max(at for at in times if at <= place_s * 10)
        after = min(at for at in times if at > place_s * 10)
        assert (start_s, end_s) == pytest.approx((before / 10, after / 10))
        assert number_of(film.picture_at(place_s)) == times.index(before)
    assert film.span_at(1.95) == (pytest.approx(1.9), math.inf)
    film.close()


@pytest.mark.parametrize("degrees", [90, 180, 270])
@pytest.mark.skipif(shutil.which("ffmpeg") is None, reason="the reference is another program")
def test_pictures_are_turned_as_another_program_turns_them(
    make_clip: Any, turn_clip: Any, degrees: int
) -> None:
    # Reference: the ffmpeg program's own turning by the display matrix.
    path = make_clip("clip.mp4", video=True)
    turn_clip(path, degrees)
    film = Film(path)
    picture = film.picture_at(0.0)
    assert picture.shape == (film.height, film.width, 3)
    raw = subprocess.run(
        ["ffmpeg", "-v", "error", "-i", path, "-frames:v", "1", "-f", "rawvideo",
         "-pix_fmt", "rgb24", "-"],
        capture_output=True, check=True,
    ).stdout  # fmt: skip
    reference = np.frombuffer(raw, np.uint8).reshape(picture.shape)
    assert np.abs(picture.astype(int) - reference).mean() < 3
    film.close()


def test_large_pictures_are_made_smaller(make_clip: Any) -> None:
    film = Film(make_clip("clip.mp4", video=True))
    assert film.picture_at(0.5, longest_side=32).shape == (24, 32, 3)
    film.close()


def test_clips_without_a_moving_picture_say_so(make_clip: Any, tmp_path: Path) -> None:
    path = make_clip("clip.m4a")
    png = bytes.fromhex(
        "89504e470d0a1a0a0000000d49484452000000010000000108060000001f15c4890000000d"
        "49444154789c6360000002000001e221bc330000000049454e44ae426082"
    )
    tags = mutagen.mp4.MP4(path)
    tags["covr"] = [mutagen.mp4.MP4Cover(png, mutagen.mp4.MP4Cover.FORMAT_PNG)]
    tags.save()
    with pytest.raises(AudioFailure, match="no moving picture") as caught:
        Film(path)
    assert "sound can be used" in caught.value.next_step
    (tmp_path / "text.mp4").write_text("no clip")
    with pytest.raises(AudioFailure, match="cannot be read"):
        Film(tmp_path / "text.mp4")


def test_damaged_pictures_end_in_a_picture_or_in_one_sentence(make_clip: Any) -> None:
    path = make_clip("clip.mp4", video=True)
    whole = path.read_bytes()
    generator = np.random.default_rng(6)
    for _ in range(60):
        data = bytearray(whole)
        for at in generator.integers(0, len(data), 20):
            data[at] ^= 1 << int(generator.integers(0, 8))
        path.write_bytes(data)
        film = None
        try:
            film = Film(path)
            for place_s in (0.1, 1.9, 0.5):
                assert film.picture_at(place_s).ndim == 3
        except AudioFailure as failure:
            sentence = failure.sentence
        else:
            sentence = "Whole."
        finally:
            if film is not None:
                film.close()
        assert sentence.endswith(".")
