"""What the output is given, checked sample by sample without a device.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

import numpy as np
import pytest

from audio.feed import FADE_S, Feed, FeedPlan
from audio.playback import Playback
from audio.sources import make_source, source_of

RATE = 48_000
BUFFER = 512
FADE = round(FADE_S * RATE)


def sine(seconds: float, frequency_hz: float = 100.0) -> np.ndarray:
    return (
        0.5 * np.sin(2 * np.pi * frequency_hz * np.arange(round(seconds * RATE)) / RATE)
    ).astype(np.float32)


class Bench:
    """A playback with a feed, rendered buffer by buffer as a device would."""

    def __init__(self, samples: np.ndarray, plan: FeedPlan) -> None:
        self.source = make_source(source_of(samples), RATE, RATE, 2)
        self.playback = Playback(RATE)
        self.now_s = 100.0
        self.bring(plan)

    def bring(self, plan: FeedPlan) -> None:
        self.playback.incoming = Feed(self.source, RATE, plan)

    def run(self, frames: int) -> np.ndarray:
        buffers = []
        for _ in range(-(-frames // BUFFER)):
            for feed in (self.playback.incoming, self.playback.current):
                while feed is not None and not feed.exhausted and feed.buffered < RATE // 2:
                    feed.produce()
            out = np.full((BUFFER, 2), np.nan, np.float32)
            self.playback.render(out, self.now_s)
            self.now_s += BUFFER / RATE
            buffers.append(out)
        sound = np.concatenate(buffers)
        np.testing.assert_array_equal(sound[:, 0], sound[:, 1])
        return sound[:frames, 0]


def biggest_step(sound: np.ndarray) -> float:
    return float(np.abs(np.diff(sound)).max())


SINE_STEP = 0.5 * 2 * np.pi * 100 / RATE
"""Largest step from sample to sample of the test sine."""

NO_CLICK = 2 * SINE_STEP + 1 / FADE
"""A fade between two waves adds at most their distance over its length."""


def test_play_delivers_the_sound_itself_after_a_short_fade_in() -> None:
    sound = sine(1.0)
    bench = Bench(sound, FeedPlan(0, None, 1.0))
    assert not bench.run(BUFFER).any(), "not asked to play yet"
    bench.playback.playing = True
    out = bench.run(RATE // 2)
    np.testing.assert_array_equal(out[FADE:], sound[FADE : RATE // 2])
    assert biggest_step(out) < NO_CLICK


def test_the_place_before_a_pause_is_not_shown_again_after_going_elsewhere() -> None:
    bench = Bench(sine(2.0), FeedPlan(RATE, None, 1.0))
    bench.playback.playing = True
    bench.run(RATE // 4)
    bench.playback.playing = False
    bench.run(BUFFER)
    bench.bring(FeedPlan(4_800, None, 1.0))
    bench.playback.playing = True
    assert bench.playback.place_at(bench.now_s) is None, "nothing of it is on its way yet"
    bench.run(BUFFER)
    # The output's buffer is not yet heard: the old place would be shown until it is.
    assert bench.playback.place_at(bench.now_s - 0.1) == 4_800
    assert bench.playback.place_at(bench.now_s) == pytest.approx(4_800 + BUFFER, abs=1e-6)


def test_pause_and_play_lose_no_sample() -> None:
    sound = sine(2.0)
    bench = Bench(sound, FeedPlan(0, None, 1.0))
    bench.playback.playing = True
    first = bench.run(10 * BUFFER)
    bench.playback.playing = False
    fading = bench.run(4 * BUFFER)
    assert not fading[FADE:].any()
    bench.playback.playing = True
    rest = bench.run(10 * BUFFER)
    at = 10 * BUFFER + FADE
    np.testing.assert_array_equal(rest[FADE:], sound[at + FADE : at + 10 * BUFFER])
    assert biggest_step(np.concatenate([first, fading, rest])) < NO_CLICK


def test_a_seek_while_playing_does_not_click() -> None:
    sound = sine(3.0)
    bench = Bench(sound, FeedPlan(0, None, 1.0))
    bench.playback.playing = True
    first = bench.run(20 * BUFFER)
    # A quarter of a period away: the worst place to jump to.
    target = RATE * 2 + RATE // 400
    bench.bring(FeedPlan(target, None, 1.0))
    rest = bench.run(20 * BUFFER)
    assert biggest_step(np.concatenate([first, rest])) < NO_CLICK
    np.testing.assert_array_equal(rest[FADE:], sound[target + FADE : target + 20 * BUFFER])


@pytest.mark.parametrize("speed", [1.0, 0.5, 0.8])
def test_a_loop_has_its_exact_length_and_no_click(speed: float) -> None:
    # 0.3037 s is no whole number of periods, so a bare jump would click.
    start, end = RATE, RATE + round(0.3037 * RATE)
    sound = sine(3.0)
    bench = Bench(sound, FeedPlan(start, (start, end), speed))
    bench.playback.playing = True
    out = bench.run(3 * RATE)
    assert biggest_step(out) < NO_CLICK
    period = round(end / speed) - round(start / speed)
    second = out[period + FADE : 2 * period]
    third = out[2 * period + FADE : 3 * period]
    np.testing.assert_allclose(second, third, atol=1e-6)
    if speed == 1.0:
        np.testing.assert_array_equal(second, sound[start + FADE : end])


def test_the_end_fades_and_is_reported_once_everything_was_heard() -> None:
    sound = np.full(RATE // 4 + 77, 0.5, np.float32)
    bench = Bench(sound, FeedPlan(0, None, 1.0))
    bench.playback.playing = True
    out = bench.run(RATE // 2)
    assert bench.playback.finished
    assert not bench.playback.playing
    assert bench.playback.starved == 0
    assert np.flatnonzero(out)[-1] == len(sound) - 1
    assert biggest_step(out) <= 0.5 / (FADE - 1) + 1e-6
    np.testing.assert_array_equal(out[FADE : len(sound) - FADE], 0.5)


def test_a_change_of_volume_is_smooth() -> None:
    bench = Bench(np.ones(2 * RATE, np.float32), FeedPlan(0, None, 1.0))
    bench.playback.playing = True
    bench.run(10 * BUFFER)
    bench.playback.volume = 0.1
    out = bench.run(4 * BUFFER)
    assert biggest_step(out) <= 0.9 / (FADE - 1) + 1e-6
    np.testing.assert_allclose(out[FADE:], 0.1, rtol=1e-6)


def test_a_hungry_output_gets_silence_and_it_is_counted() -> None:
    bench = Bench(sine(2.0), FeedPlan(0, None, 1.0))
    bench.playback.playing = True
    bench.run(BUFFER)
    starved = np.ones((RATE, 2), np.float32)
    bench.playback.render(starved, 0.0)
    assert bench.playback.starved == 1
    assert not starved[-BUFFER:].any()
    assert not bench.playback.finished


def test_the_place_follows_the_clock_through_a_change_of_speed() -> None:
    bench = Bench(sine(10.0), FeedPlan(RATE, None, 1.0))
    assert bench.playback.place_at(0.0) is None
    bench.playback.playing = True
    bench.run(50 * BUFFER)
    started = 100.0
    for passed in (0.0, 0.1, 0.25, 0.5):
        place = bench.playback.place_at(started + passed)
        assert place == pytest.approx(RATE * (1 + passed), abs=1)
    changed_s = bench.now_s
    bench.bring(FeedPlan(RATE + 50 * BUFFER, None, 0.5))
    bench.run(60 * BUFFER)
    place = bench.playback.place_at(changed_s + 0.5)
    assert place == pytest.approx(RATE + 50 * BUFFER + 0.25 * RATE, abs=0.001 * RATE)
    # Before what is remembered and after what was given, the nearest known place holds.
    assert bench.playback.place_at(changed_s + 99) == pytest.approx(
        RATE + 50 * BUFFER + 30 * BUFFER, abs=0.001 * RATE
    )


@pytest.mark.parametrize("speed", [0.25, 0.5, 0.75, 1.0, 1.5])
def test_what_sounds_is_the_place_that_is_shown(speed: float) -> None:
    # Clicks at known places; when one is heard, the shown place must be the click's.
    sound = np.zeros(6 * RATE, np.float32)
    places = np.arange(RATE // 2, 5 * RATE, RATE // 2)
    for at in places:
        sound[at : at + 96] = 0.9 * np.sin(np.arange(96) * np.pi / 8)
    bench = Bench(sound, FeedPlan(0, None, speed))
    bench.playback.playing = True
    errors_s = []
    block = round(RATE / speed / 2)
    for at in places[:6]:
        begin = bench.now_s
        out = bench.run(block + BUFFER)
        heard_s = begin + int(np.argmax(np.abs(out))) / RATE
        place = bench.playback.place_at(heard_s)
        assert place is not None
        nearest = places[np.argmin(np.abs(places - place))]
        errors_s.append((place - nearest) / RATE)
        del at
    assert np.abs(errors_s).max() < 0.015


@pytest.mark.parametrize("frames", [1, 5, FADE, FADE + 1])
def test_sounds_shorter_than_a_fade_are_played_too(frames: int) -> None:
    bench = Bench(np.full(frames, 0.5, np.float32), FeedPlan(0, None, 1.0))
    bench.playback.playing = True
    out = bench.run(4 * BUFFER)
    assert bench.playback.finished
    assert len(np.flatnonzero(out)) <= frames


def test_an_empty_sound_is_over_at_once() -> None:
    bench = Bench(np.zeros(0, np.float32), FeedPlan(0, None, 1.0))
    bench.playback.playing = True
    assert not bench.run(BUFFER).any()
    assert bench.playback.finished


def test_a_change_of_speed_goes_on_where_it_was_without_a_jump() -> None:
    sound = sine(6.0)
    bench = Bench(sound, FeedPlan(0, None, 1.0))
    bench.playback.playing = True
    first = bench.run(20 * BUFFER)
    joint = 20 * BUFFER + 3000
    bench.bring(FeedPlan(joint, None, 0.5, joins=True))
    rest = bench.run(20 * BUFFER)
    np.testing.assert_array_equal(rest[:3000], sound[20 * BUFFER : joint])
    assert biggest_step(np.concatenate([first, rest])) < NO_CLICK
    assert bench.playback.current is not None
    assert bench.playback.current.position == pytest.approx(joint + (20 * BUFFER - 3000) / 2, abs=2)


def test_a_change_of_speed_joins_across_the_end_of_a_loop() -> None:
    loop = (RATE, RATE + 20_000)
    bench = Bench(sine(6.0), FeedPlan(RATE + 18_000 - 10 * BUFFER, loop, 1.0))
    bench.playback.playing = True
    bench.run(10 * BUFFER)
    bench.bring(FeedPlan(RATE + 2_000, loop, 0.5, joins=True))
    bench.run(10 * BUFFER)
    assert bench.playback.incoming is None
    assert bench.playback.current is not None
    assert bench.playback.current.position == pytest.approx(
        RATE + 2_000 + (10 * BUFFER - 4_000) / 2, abs=2
    )


def test_a_join_that_comes_too_late_takes_over_at_once() -> None:
    bench = Bench(sine(6.0), FeedPlan(0, None, 1.0))
    bench.playback.playing = True
    bench.run(20 * BUFFER)
    bench.bring(FeedPlan(5 * BUFFER, None, 0.5, joins=True))
    bench.run(BUFFER)
    assert bench.playback.incoming is None


def test_a_new_sound_while_stopping_fades_the_old_one_and_waits() -> None:
    bench = Bench(np.full(2 * RATE, 0.5, np.float32), FeedPlan(0, None, 1.0))
    bench.playback.playing = True
    bench.run(10 * BUFFER)
    bench.playback.playing = False
    bench.bring(FeedPlan(RATE, None, 1.0))
    out = bench.run(4 * BUFFER)
    assert out[0] == pytest.approx(0.5, abs=0.01)
    assert biggest_step(out) < 0.6 / FADE
    assert not out[FADE:].any()
    assert bench.playback.current is not None
    assert bench.playback.current.position == RATE


def joined(bench: Bench, other: np.ndarray, old_frame: int, new_frame: int) -> None:
    """Bring another sound in that takes over where the first comes to a frame."""
    plan = FeedPlan(new_frame, None, 1.0, joins=True, joins_at=old_frame)
    source = make_source(source_of(other), RATE, RATE, 2)
    bench.playback.incoming = Feed(source, RATE, plan)


def test_another_sound_takes_over_at_the_matching_place_without_a_gap_or_click() -> None:
    """The sample after the place in one sound is the sample after its match in the other."""
    first, second = sine(2.0, 100.0), sine(2.0, 150.0)
    bench = Bench(first, FeedPlan(0, None, 1.0))
    bench.playback.playing = True
    begun = bench.run(20 * BUFFER)
    over = 20 * BUFFER + 2_000
    joined(bench, second, over, 30_000)
    out = np.concatenate([begun, bench.run(20 * BUFFER)])
    np.testing.assert_array_equal(out[FADE:over], first[FADE:over])
    after = second[30_000 + FADE :]
    np.testing.assert_array_equal(out[over + FADE :], after[: len(out) - over - FADE])
    assert biggest_step(out) < NO_CLICK
    assert np.abs(out[FADE:]).reshape(-1, 80).max(axis=1).min() > 0.0, "no block is silent"


def test_the_place_of_the_sound_before_is_never_shown_as_one_of_the_next() -> None:
    bench = Bench(sine(3.0), FeedPlan(RATE, None, 1.0))
    bench.playback.playing = True
    bench.run(10 * BUFFER)
    joined(bench, sine(3.0), RATE + 12 * BUFFER, 100)
    assert bench.playback.place_at(bench.now_s) is None, "still the place of the other sound"
    bench.run(4 * BUFFER)
    assert bench.playback.place_at(bench.now_s - 0.2) == pytest.approx(100, abs=1.0)
    assert bench.playback.place_at(bench.now_s) == pytest.approx(100 + 2 * BUFFER, abs=1.0)
