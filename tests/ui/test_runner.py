from __future__ import annotations

import threading
import time
from collections.abc import Iterator

import pytest
from pytestqt.qtbot import QtBot

from triage.errors import DamagedLog
from triage.progress import Progress
from ui.runner import Reply, Runner
from ui.state.window_state import ProgressPoint


@pytest.fixture
def runner(qtbot: QtBot) -> Iterator[Runner]:
    runner = Runner()
    yield runner
    runner.stop()
    assert runner.idle


def collect(runner: Runner) -> list[Reply[object]]:
    replies: list[Reply[object]] = []
    runner.finished.connect(replies.append)
    return replies


def test_the_work_runs_on_another_thread_and_the_reply_comes_back(runner: Runner, qtbot: QtBot) -> None:
    with qtbot.waitSignal(runner.finished) as waited:
        number = runner.submit(lambda _progress: threading.current_thread() is threading.main_thread())
    (reply,) = waited.args
    assert (reply.number, reply.result, reply.error, reply.cancelled) == (number, False, None, False)
    assert not runner.busy


def test_an_error_is_a_reply(runner: Runner, qtbot: QtBot) -> None:
    error = DamagedLog("empty", file="a.csv")

    def work(_progress: Progress) -> object:
        raise error

    with qtbot.waitSignal(runner.finished) as waited:
        runner.submit(work)
    assert waited.args[0].error is error


def test_a_defect_does_not_end_the_worker(runner: Runner, qtbot: QtBot) -> None:
    with qtbot.waitSignal(runner.finished) as waited:
        runner.submit(lambda _progress: 1 / 0)
    assert isinstance(waited.args[0].error, ZeroDivisionError)
    with qtbot.waitSignal(runner.finished) as waited:
        runner.submit(lambda _progress: "still there")
    assert waited.args[0].result == "still there"


def test_progress_comes_through_at_most_twenty_times_a_second(runner: Runner, qtbot: QtBot) -> None:
    points: list[ProgressPoint] = []
    runner.progressed.connect(points.append)
    enough = threading.Event()

    def work(progress: Progress) -> float:
        begin_s, count = time.monotonic(), 0
        while not enough.is_set():
            count += 1
            progress(min(count / 1e6, 1.0), "reading")
        return time.monotonic() - begin_s

    runner.progressed.connect(lambda _point: enough.set() if len(points) >= 6 else None)
    with qtbot.waitSignal(runner.finished) as waited:
        runner.submit(work)
    assert len(points) <= 20 * waited.args[0].result + 2
    assert points == sorted(points, key=lambda point: point.fraction)
    assert points[-1].stage == "reading"


def test_a_cancelled_request_stops_and_stays_silent(runner: Runner, qtbot: QtBot) -> None:
    replies = collect(runner)
    begun, ended = threading.Event(), threading.Event()

    def work(progress: Progress) -> object:
        begun.set()
        try:
            while True:
                progress(0.5, "reading")
        finally:
            ended.set()

    runner.submit(work)
    assert begun.wait(10.0)
    runner.cancel()
    assert ended.wait(10.0)
    with qtbot.waitSignal(runner.finished):
        runner.submit(lambda _progress: "next")
    assert [reply.result for reply in replies] == ["next"]


def test_a_stale_reply_is_dropped(runner: Runner, qtbot: QtBot) -> None:
    replies = collect(runner)
    go_on = threading.Event()

    def stubborn(_progress: Progress) -> object:
        go_on.wait(10.0)
        return "old"

    runner.submit(stubborn)
    newest = runner.submit(lambda _progress: "new")
    with qtbot.waitSignal(runner.finished):
        go_on.set()
    assert [(reply.number, reply.result) for reply in replies] == [(newest, "new")]


def test_stopping_waits_for_work_under_way(qtbot: QtBot) -> None:
    runner = Runner()
    begun = threading.Event()

    def work(progress: Progress) -> object:
        begun.set()
        while True:
            progress(0.5, "reading")

    runner.submit(work)
    assert begun.wait(10.0)
    runner.stop()
    assert runner.idle
    runner.stop()
