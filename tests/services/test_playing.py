"""A take is heard through the room: from a place, in a loop, slower, and it ends."""

import time

import pytest

pytestmark = pytest.mark.room


def wait_until(condition, timeout_s=8.0):
    deadline = time.monotonic() + timeout_s
    while not condition():
        if time.monotonic() > deadline:
            return False
        time.sleep(0.02)
    return True


def test_playing_a_take(bench, virtual_room, tone_file, add_take):
    row = add_take(tone_file(seconds=3.0))
    output = next(r for r in bench.playing.outputs() if r.name == virtual_room.device)
    bench.playing.choose_output(output.key)
    told = []
    bench.playing.load(row.id, told.append)
    assert told[-1] == 1.0
    assert not bench.playing.state().playing

    bench.playing.seek(0.5)
    bench.playing.toggle()
    assert wait_until(lambda: bench.playing.state().position_s > 0.7)
    assert bench.playing.state().playing
    bench.playing.toggle()
    assert wait_until(lambda: not bench.playing.state().playing)
    stopped = bench.playing.state().position_s
    time.sleep(0.2)
    assert bench.playing.state().position_s == pytest.approx(stopped, abs=0.05)

    bench.playing.set_loop(1.0, 1.3)
    bench.playing.set_speed(0.5)
    bench.playing.play()
    assert wait_until(lambda: bench.playing.state().position_s > 1.2)
    assert wait_until(lambda: bench.playing.state().position_s < 1.15)
    assert 0.95 <= bench.playing.state().position_s <= 1.35

    bench.playing.set_loop(None)
    bench.playing.set_speed(1.0)
    bench.playing.seek(2.7)
    assert wait_until(lambda: not bench.playing.state().playing)
    assert bench.playing.failure() is None
