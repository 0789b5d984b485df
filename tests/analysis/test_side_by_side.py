"""Two halves of a long work at once: both answers, one's error, and a wish to stop."""

import threading

import pytest

from analysis.side_by_side import side_by_side
from analysis.stopping import Stopped, stop_if_asked

SOON_S = 20.0


def test_both_run_at_the_same_time_and_both_answer() -> None:
    meet = threading.Barrier(2, timeout=SOON_S)

    def half(answer: str) -> str:
        meet.wait()  # raises if the other half has not begun
        return answer

    found = side_by_side(lambda _: half("first"), lambda _: half("second"), None)
    assert found == ("first", "second")


@pytest.mark.parametrize("wrong", [0, 1])
def test_what_one_raises_is_raised_and_the_other_is_stopped(wrong: int) -> None:
    ended = threading.Event()

    def fails(_: object) -> None:
        raise ValueError("broken")

    def goes_on(should_stop: object) -> None:
        if wrong == 0:
            while not should_stop():  # only the error of the other ends this
                threading.Event().wait(0.001)
        ended.set()

    pair = (fails, goes_on) if wrong == 0 else (goes_on, fails)
    with pytest.raises(ValueError, match="broken"):
        side_by_side(*pair, None)
    assert ended.is_set()


@pytest.mark.parametrize("slow", [0, 1])
def test_a_wish_to_stop_reaches_both_and_is_asked_of_the_caller_alone(slow: int) -> None:
    asked_in = []
    other_began = threading.Event()

    def wish() -> bool:
        asked_in.append(threading.current_thread())
        return other_began.is_set() and len(asked_in) > 2

    def works(should_stop: object) -> None:
        other_began.set()
        while True:
            stop_if_asked(should_stop)
            threading.Event().wait(0.001)

    def is_done(_: object) -> None:
        other_began.wait(SOON_S)

    pair = (works, is_done) if slow == 0 else (is_done, works)
    with pytest.raises(Stopped):
        side_by_side(*pair, wish)
    assert set(asked_in) == {threading.current_thread()}
