from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from audio.guides import Click, Drone, FirstPart, Together
from audio.sources import source_of

RATE = 48_000


def onsets(sound: np.ndarray) -> np.ndarray:
    loud = np.flatnonzero(np.abs(sound[:, 0]) > 0.02)
    return loud[np.flatnonzero(np.diff(loud, prepend=-RATE) > RATE // 20)]


@pytest.mark.parametrize("tempo_bpm", [40.0, 63.7, 120.0, 208.0])
def test_clicks_stand_where_the_tempo_says_after_ten_minutes_too(tempo_bpm: float) -> None:
    click = Click(tempo_bpm, RATE, first_beat_s=0.25)
    for begin_s in (0.0, 600.0, 36_000.0):
        begin = round(begin_s * RATE)
        found = (begin + onsets(click.read(begin, begin + 4 * RATE))) / RATE
        first = max(0, int(np.ceil((begin_s - 0.25) * tempo_bpm / 60)))
        truth = 0.25 + (first + np.arange(len(found) + 2)) * 60 / tempo_bpm
        # A click under way when the stretch begins is no onset.
        found = found[found >= truth[0] - 1 / RATE]
        assert len(found) >= 2
        assert np.abs(found - truth[: len(found)]).max() <= 0.6 / RATE
        assert click.beat_s(first) == pytest.approx(truth[0], abs=1e-9)


def test_accents_are_louder_and_beats_can_be_left_out() -> None:
    click = Click(60.0, RATE, accents=(1.0, 0.5, 0.0), level_dbfs=-6.0)
    sound = click.read(0, 6 * RATE)[:, 0]
    peaks = [np.abs(sound[beat * RATE : beat * RATE + 1000]).max() for beat in range(6)]
    assert peaks == pytest.approx([0.501, 0.251, 0.0] * 2, abs=0.002)


@settings(deadline=None, max_examples=30)
@given(st.lists(st.integers(0, 20_000), min_size=2, max_size=12).map(sorted))
def test_guides_are_the_same_however_they_are_read(cuts: list[int]) -> None:
    for source in (Click(300.0, 8_000), Drone([110.0, 165.0], 8_000)):
        whole = source.read(cuts[0], cuts[-1])
        pieces = [source.read(a, b) for a, b in pairwise(cuts)]
        np.testing.assert_array_equal(np.concatenate(pieces), whole)


@pytest.mark.parametrize("begin_s", [0, 600, 360_000])
def test_a_drone_keeps_its_pitch_for_hours(begin_s: int) -> None:
    drone = Drone([442.0], RATE, level_dbfs=-12.0)
    sound = drone.read(begin_s * RATE, begin_s * RATE + 4 * RATE)[:, 0].astype(np.float64)
    spectrum = np.abs(np.fft.rfft(sound * np.hanning(len(sound))))
    peak = int(spectrum.argmax())
    left, middle, right = np.log(spectrum[peak - 1 : peak + 2])
    found = (peak + 0.5 * (left - right) / (left - 2 * middle + right)) / 4
    assert abs(1200 * np.log2(found / 442.0)) < 0.01
    assert np.abs(sound).max() <= 10 ** (-12 / 20)
    # One phase for all time: the sine itself, however late.
    turn = np.exp(-2j * np.pi * np.mod(np.arange(len(sound)) * 442.0 / RATE, 1))
    assert np.angle(np.mean(sound * turn)) == pytest.approx(-np.pi / 2, abs=1e-4)


def test_guides_are_quiet_unless_asked_otherwise() -> None:
    for source in (Click(120.0, RATE), Drone([220.0, 330.0], RATE)):
        assert np.abs(source.read(0, 3 * RATE)).max() <= 0.1001


def test_a_take_sounds_together_with_a_click() -> None:
    take = source_of(np.full((RATE, 2), 0.1, np.float32))
    both = Together([take, Click(120.0, RATE)])
    assert (both.frames, both.channels) == (RATE, 2)
    sound = both.read(0, 2 * RATE)
    assert sound.shape == (RATE, 2)
    assert sound[0].tolist() == pytest.approx([0.2, 0.2], abs=1e-3)
    assert sound[12_000].tolist() == pytest.approx([0.1, 0.1], abs=1e-3)


@pytest.mark.parametrize("make", [
    lambda: Click(0.0, RATE), lambda: Click(60.0, RATE, accents=()),
    lambda: Drone([], RATE), lambda: Drone([-5.0], RATE), lambda: Drone([90_000.0], RATE),
])  # fmt: skip
def test_what_cannot_sound_is_refused(make: object) -> None:
    with pytest.raises(ValueError, match="needs"):
        make()  # type: ignore[operator]


@pytest.mark.parametrize(
    ("start", "end"), [(0, 2 * RATE), (RATE - 7, RATE + 9), (5 * RATE, 6 * RATE)]
)
def test_the_first_part_of_a_sound_is_followed_by_silence(start: int, end: int) -> None:
    click = Click(150.0, RATE)
    part = FirstPart(click, RATE)
    whole = click.read(start, end)
    heard = part.read(start, end)
    assert heard.shape == whole.shape
    at = min(max(RATE - start, 0), len(whole))
    np.testing.assert_array_equal(heard[:at], whole[:at])
    assert not heard[at:].any()
    assert (part.frames, part.channels) == (click.frames, 1)
