import threading
from collections.abc import Iterator

import pytest

from audio import waking


def test_an_ordinary_wait_is_awake_and_ends_early_when_told() -> None:
    event = threading.Event()
    assert waking.wait_awake(event, 0.01)
    event.set()
    begun = waking.sleepless_s()
    assert waking.wait_awake(event, 60.0)
    assert waking.sleepless_s() - begun < 5.0


def test_a_clock_that_ran_on_meanwhile_tells_of_sleep(monkeypatch: pytest.MonkeyPatch) -> None:
    readings: Iterator[float] = iter([100.0, 100.0 + 3600.0])
    monkeypatch.setattr(waking, "sleepless_s", lambda: next(readings))
    assert not waking.wait_awake(threading.Event(), 0.01)
