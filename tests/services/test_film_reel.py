"""A film runs in step with what is heard, on threads of its own."""

import threading
import time
from dataclasses import replace

import numpy as np
import pytest

from app.services.film_reel import FilmReel
from app.services.views import PlaybackState
from audio.errors import AudioFailure

FPS = 25
FRAME_S = 1 / FPS
STANDING = PlaybackState(0.0, False, None, 1.0, 0.8)


class SlowFilm:
    """Pictures that hold their number; jumping takes long, going on does not."""

    jump_s = 0.2

    def __init__(self, log: list[str]) -> None:
        self._log = log
        self._at = 0
        self.closed = False

    def span_at(self, position_s: float) -> tuple[float, float]:
        number = max(0, int(position_s * FPS + 1e-6))
        if not 0 <= number - self._at <= 2 * FPS:
            self._log.append(threading.current_thread().name)
            time.sleep(self.jump_s)
        self._at = number
        return number * FRAME_S, (number + 1) * FRAME_S

    def picture_at(self, position_s: float, longest_side: int):
        self.span_at(position_s)
        return np.full((2, 2, 3), self._at % 256, np.uint8)

    def close(self) -> None:
        self.closed = True


class Room:
    """A player whose clock the test reads too, and what was shown when."""

    def __init__(self, loop=None, speed=1.0) -> None:
        self.films: list[SlowFilm] = []
        self.jumps: list[str] = []
        self.shown: list[tuple[float, float, int]] = []
        self.failures: list[str] = []
        self.threads: set[str] = set()
        self.loop, self.speed = loop, speed
        self.began_s = time.monotonic()
        self.now = STANDING

    def open_film(self):
        self.films.append(SlowFilm(self.jumps))
        return self.films[-1]

    def play(self, position_s: float) -> None:
        self.began_s = time.monotonic()
        self.now = PlaybackState(position_s, True, self.loop, self.speed, 0.8)

    def where(self) -> PlaybackState:
        if not self.now.playing:
            return self.now
        place_s = self.now.position_s + self.speed * (time.monotonic() - self.began_s)
        if self.loop is not None and place_s >= self.loop[1]:
            start_s, end_s = self.loop
            place_s = start_s + (place_s - end_s) % (end_s - start_s)
        return replace(self.now, position_s=place_s)

    def show(self, picture, place_s: float, _asked_at_s: float) -> None:
        self.threads.add(threading.current_thread().name)
        self.shown.append((self.where().position_s, place_s, int(picture[0, 0, 0])))

    def fail(self, failure) -> None:
        self.failures.append(f"{failure.sentence} {failure.next_step}")

    def late_s(self, since: int = 0) -> np.ndarray:
        """How far from its picture's time the place was when each picture was shown."""
        return np.array(
            [max(at - start - FRAME_S, start - at, 0.0) for at, start, _ in self.shown[since:]]
        )


@pytest.fixture
def run():
    reels = []

    def begin(room: Room) -> FilmReel:
        reel = FilmReel(room.open_film, room.where, room.show, room.fail)
        reels.append(reel)
        return reel

    yield begin
    for reel in reels:
        reel.close()
        assert reel.wait_closed()


def wait_until(condition, timeout_s=5.0) -> None:
    end = time.monotonic() + timeout_s
    while not condition():
        assert time.monotonic() < end
        time.sleep(0.005)


def test_a_seek_while_standing_shows_its_picture(run):
    room = Room()
    reel = run(room)
    wait_until(lambda: room.shown)
    for place_s in (3.0, 1.02, 7.5):
        room.now = replace(STANDING, position_s=place_s)
        reel.look_again()
        wait_until(lambda: room.shown[-1][2] == int(room.now.position_s * FPS + 1e-6))
    assert room.threads == {"film"}


def test_many_seeks_at_once_cost_one_picture_at_most_two(run):
    room = Room()
    reel = run(room)
    wait_until(lambda: room.shown)
    before = len(room.shown)
    began_s = time.monotonic()
    for at in range(200):
        room.now = replace(STANDING, position_s=9.0 - at * 0.04)
        reel.look_again()
    assert time.monotonic() - began_s < 0.05
    wait_until(lambda: room.shown[-1][2] == int(room.now.position_s * FPS + 1e-6))
    assert len(room.shown) - before <= 3


@pytest.mark.parametrize("speed", [1.0, 0.5])
def test_pictures_follow_what_is_heard(run, speed):
    room = Room(speed=speed)
    reel = run(room)
    wait_until(lambda: room.shown)
    room.play(0.0)
    reel.look_again()
    wait_until(lambda: room.where().position_s > 1.2 * speed)
    shown = [number for _, _, number in room.shown]
    assert shown == sorted(shown)
    assert len(set(shown)) == len(shown), "no picture is made twice"
    assert np.median(room.late_s()) < 0.08


def test_a_loop_turns_back_in_step_although_jumping_takes_long(run):
    room = Room(loop=(4.0, 5.0))
    reel = run(room)
    room.now = replace(STANDING, position_s=4.0, loop=room.loop)
    reel.look_again()
    wait_until(lambda: room.shown and room.shown[-1][1] == pytest.approx(4.0))
    first = len(room.shown)
    room.play(4.0)
    reel.look_again()
    time.sleep(3.6)
    turns = [
        shown[0]
        for before, shown in zip(room.shown[first:], room.shown[first + 1 :], strict=False)
        if shown[1] < before[1]
    ]
    assert len(turns) >= 3
    # A jump alone would cost 200 ms.
    assert np.median([at_s - 4.0 for at_s in turns]) < 0.08
    assert np.median(room.late_s(first)) < 0.08
    assert len(room.films) == 2
    assert any(name.startswith("film-standby") for name in room.jumps)


def test_pictures_that_come_late_set_out_earlier(run):
    room = Room()
    reel = run(room)
    wait_until(lambda: room.shown)
    for _ in range(60):
        reel.delivered(time.monotonic() - 0.04)
    room.play(0.0)
    reel.look_again()
    wait_until(lambda: room.where().position_s > 0.8)
    ahead = [start + FRAME_S / 2 - at for at, start, _ in room.shown[5:]]
    assert 0.02 < np.median(ahead) < 0.07


def test_closing_ends_the_threads_and_closes_every_film(run):
    room = Room(loop=(1.0, 2.0))
    reel = run(room)
    wait_until(lambda: room.shown)
    room.play(1.0)
    reel.look_again()
    wait_until(lambda: len(room.films) == 2)
    began_s = time.monotonic()
    reel.close()
    assert time.monotonic() - began_s < 0.02, "closing does not wait"
    assert reel.wait_closed()
    assert all(film.closed for film in room.films)
    assert not [t for t in threading.enumerate() if t.name.startswith("film")]


def test_a_clip_that_cannot_be_shown_says_so_once(run):
    room = Room()

    def broken():
        raise AudioFailure("The picture of a clip cannot be read.", "Its sound can be used.")

    room.open_film = broken
    reel = run(room)
    assert reel.wait_closed()
    assert room.failures == ["The picture of a clip cannot be read. Its sound can be used."]
