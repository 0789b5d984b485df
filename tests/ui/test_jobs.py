"""The executors: order, stale results, cancelling, failures, a clean end."""

import threading
import time

import pytest
from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QWidget

from app.jobs import Jobs
from app.journal.failures import PlainFailure
from app.services.stopping import Stopped


@pytest.fixture
def jobs(qapp):
    made = Jobs()
    yield made
    made.close()


def test_what_waits_begins_in_the_order_it_was_asked_for(qapp):
    waiting, done = Jobs(waiting=True), []
    for number in range(3):
        waiting.store(lambda number=number: done.append(number))
    waiting.wait_until_idle(0.1)
    assert done == []
    waiting.begin()
    waiting.store(lambda: done.append(3))
    assert waiting.wait_until_idle()
    assert done == [0, 1, 2, 3]
    waiting.close()


def test_what_was_to_be_stored_is_stored_although_nothing_had_begun(qapp):
    waiting, done = Jobs(waiting=True), []
    waiting.store(lambda: done.append("kept"))
    waiting.close()
    assert done == ["kept"]


def test_results_arrive_on_the_gui_thread_in_order(jobs):
    seen = []
    for number in range(20):
        jobs.store(
            lambda at=number: (at, threading.current_thread()),
            lambda result: seen.append((*result, threading.current_thread())),
        )
    assert jobs.wait_until_idle()
    assert [number for number, _, _ in seen] == list(range(20))
    assert len({worker for _, worker, _ in seen}) == 1
    assert all(worker is not threading.main_thread() for _, worker, _ in seen)
    assert all(receiver is threading.main_thread() for _, _, receiver in seen)


def test_newer_job_of_a_subject_makes_the_older_stale(jobs):
    gate = threading.Event()
    seen = []
    jobs.store(gate.wait)
    for number in range(3):
        jobs.store(lambda at=number: at, seen.append, subject="take")
    jobs.store(lambda: "other", seen.append, subject="list")
    gate.set()
    assert jobs.wait_until_idle()
    assert seen == [2, "other"]


def test_result_that_came_too_late_is_dropped(jobs, qapp):
    seen = []
    jobs.store(lambda: "old", seen.append, subject="take")
    time.sleep(0.05)  # the result now waits in the event queue
    jobs.forget("take")
    assert jobs.wait_until_idle()
    assert seen == []


def test_long_work_reports_progress_and_can_be_cancelled(jobs):
    fractions, ended = [], []
    started = threading.Event()

    def work(progress, should_stop):
        started.set()
        step = 0
        while not should_stop():
            step += 1
            progress(min(0.9, step / 100))
            time.sleep(0.005)
        raise Stopped

    job = jobs.analyse(
        work, lambda _: pytest.fail("it was cancelled"), progress=fractions.append,
        ended=lambda: ended.append(True),
    )  # fmt: skip
    assert started.wait(2)
    deadline = time.monotonic() + 5
    while not fractions and time.monotonic() < deadline:
        jobs.wait_until_idle(0.05)
    job.cancel()
    assert jobs.wait_until_idle()
    assert fractions
    assert fractions == sorted(fractions)
    assert ended == [True]


def test_long_work_does_not_hold_up_the_storage_thread(jobs):
    gate, seen = threading.Event(), []
    jobs.analyse(lambda progress, should_stop: gate.wait(5), lambda _: seen.append("long"))
    jobs.store(lambda: "short", seen.append)
    deadline = time.monotonic() + 5
    while not seen and time.monotonic() < deadline:
        jobs.wait_until_idle(0.02)
    gate.set()
    assert jobs.wait_until_idle()
    assert seen == ["short", "long"]


def test_expected_failure_is_told_with_its_next_step(jobs, qtbot):
    def refuse():
        raise PlainFailure("The disk is full.", "Make room.")

    with qtbot.waitSignal(jobs.failure_told) as told:
        jobs.store(refuse, lambda _: pytest.fail("it failed"))
    assert told.args[0].next_step == "Make room."
    seen = []
    jobs.store(refuse, failed=seen.append)
    assert jobs.wait_until_idle()
    assert seen[0].sentence == "The disk is full."


def test_anything_else_is_a_bug(jobs, qtbot, caplog):
    with qtbot.waitSignal(jobs.bug_found) as found:
        jobs.store(lambda: {}["missing"])
    assert isinstance(found.args[0], KeyError)
    assert "A job failed" in caplog.text


def test_a_device_waits_for_no_long_work_but_for_its_turn(jobs):
    order = []
    long = [jobs.analyse(lambda _progress, should_stop: _until(should_stop)) for _ in range(12)]
    jobs.device(lambda: (time.sleep(0.05), order.append("looked for")))
    opened = jobs.device(lambda: order.append("opened"))
    limit = time.monotonic() + 10.0
    while not opened.is_over and time.monotonic() < limit:
        QCoreApplication.processEvents()
    assert order == ["looked for", "opened"]
    assert not any(job.is_over for job in long)
    for job in long:
        job.cancel()
    assert jobs.wait_until_idle()


def test_closing_stores_what_was_asked_for_and_ends_the_threads(qapp):
    made = Jobs()
    stored = []
    made.store(lambda: time.sleep(0.05))
    made.store(lambda: stored.append("minutes"))
    made.analyse(lambda progress, should_stop: _until(should_stop))
    made.device(lambda: None)
    made.close()
    assert stored == ["minutes"]
    ours = ("storage", "analysis", "devices")
    assert not [t for t in threading.enumerate() if t.name.startswith(ours)]
    made.store(lambda: stored.append("too late"))
    assert stored == ["minutes"]


def _until(should_stop):
    while not should_stop():
        time.sleep(0.002)
    raise Stopped


def test_a_step_for_soon_comes_after_what_is_painted_and_is_waited_for(jobs, qtbot):
    seen = []

    class Slow(QWidget):
        def paintEvent(self, _event) -> None:  # noqa: N802 - Qt's name
            time.sleep(0.05)
            seen.append("painted")

    widget = Slow()
    qtbot.addWidget(widget)
    with qtbot.waitExposed(widget):
        widget.show()
    seen.clear()
    widget.update()
    jobs.soon(lambda _: seen.append("step"), subject="panes")
    assert not jobs.is_idle
    assert jobs.wait_until_idle()
    assert seen == ["painted", "step"]


def test_a_newer_step_for_soon_takes_the_place_of_an_older_one(jobs):
    seen = []
    jobs.soon(lambda _: seen.append("old"), subject="panes")
    jobs.soon(lambda _: seen.append("new"), subject="panes")
    assert jobs.wait_until_idle()
    assert seen == ["new"]


def test_nothing_is_called_soon_once_the_window_has_closed(jobs, qtbot):
    seen = []
    jobs.soon(lambda _: seen.append("late"))
    jobs.close()
    jobs.soon(lambda _: seen.append("later"))
    qtbot.wait(60)
    assert seen == []
