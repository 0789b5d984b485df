"""A click on the beats of a take."""

import numpy as np
import pytest

from audio.beat_click import BeatClick
from audio.guides import QUIET_LEVEL_DBFS, Together
from audio.sources import ArraySource

RATE = 48_000
BEATS_S = (0.25, 0.8, 1.41, 1.93)


def test_every_click_begins_on_its_beat():
    sound = BeatClick(BEATS_S, RATE).read(0, 2 * RATE)[:, 0]
    loud = np.flatnonzero(np.abs(sound) > 0.5 * np.abs(sound).max())
    starts = loud[np.flatnonzero(np.diff(loud, prepend=-RATE) > RATE // 10)]
    assert starts / RATE == pytest.approx(BEATS_S, abs=1 / RATE)
    assert 20 * np.log10(np.abs(sound).max()) == pytest.approx(QUIET_LEVEL_DBFS, abs=0.1)


def test_it_is_the_same_however_it_is_read():
    click = BeatClick(BEATS_S, RATE)
    whole = click.read(0, 2 * RATE)
    pieces = [click.read(at, at + 997) for at in range(0, 2 * RATE, 997)]
    assert np.array_equal(np.concatenate(pieces)[: 2 * RATE], whole)
    assert click.read(-5, 0).shape == (0, 1)


def test_it_lasts_as_long_as_the_take():
    take = ArraySource(np.zeros((RATE, 2), np.float32))
    both = Together([take, BeatClick(BEATS_S, RATE)])
    assert both.frames == RATE
    assert both.read(0, 10 * RATE).shape == (RATE, 2)
