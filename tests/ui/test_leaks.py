"""Recordings and windows come and go; what they were made of goes with them."""

from __future__ import annotations

import gc
import threading
import tracemalloc
from collections.abc import Callable

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QObject, QThread
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from triage.speed_log import SpeedLog
from ui.state.opening import Opened
from ui.state.window_state import StartPhase
from ui.window import MainWindow

WindowFrom = Callable[..., MainWindow]

CYCLES = 25
WINDOWS = 5
GROWTH_MB = 2.0
"""One recording of the test is 3.6 MB in memory: kept 25 times it would be 45 times this."""


def clean_up() -> None:
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    gc.collect()


def living() -> dict[str, int]:
    """Count what must not pile up."""
    clean_up()
    objects = [one for one in gc.get_objects() if isinstance(one, QObject)]
    return {
        "widgets": len(QApplication.allWidgets()),
        "threads": threading.active_count(),
        "Qt threads": sum(isinstance(one, QThread) for one in objects),
        "windows": sum(isinstance(one, MainWindow) for one in objects),
        "recordings": sum(isinstance(one, SpeedLog) for one in gc.get_objects()),
    }


def open_and_close(window: MainWindow, qtbot: QtBot) -> None:
    with qtbot.waitSignal(window.runner.finished):
        window.open_files(["/logs/van 3.csv"])
    assert window.state.opened is not None
    window.state.show_page("road-test")
    window.result_page.grab()
    window.close_log()
    assert window.state.phase == StartPhase()


@pytest.fixture
def fresh_opener(opened_from: Callable[..., Opened]) -> Callable[..., Opened]:
    """Make a new recording each time, as a file that is read again does."""
    return lambda _order, _progress: opened_from()


def test_recordings_opened_and_closed_leave_nothing(
    window_from: WindowFrom, fresh_opener: Callable[..., Opened], qtbot: QtBot
) -> None:
    window = window_from(opener=fresh_opener)
    tracemalloc.start()
    try:
        for _ in range(3):  # what is made once and kept
            open_and_close(window, qtbot)
        before, began_bytes = living(), tracemalloc.get_traced_memory()[0]
        for _ in range(CYCLES):
            open_and_close(window, qtbot)
        after, ended_bytes = living(), tracemalloc.get_traced_memory()[0]
    finally:
        tracemalloc.stop()
    assert after == before
    assert (ended_bytes - began_bytes) / 1e6 < GROWTH_MB


def test_windows_opened_and_closed_leave_nothing(fresh_opener: Callable[..., Opened], qtbot: QtBot) -> None:
    def whole_life() -> None:
        window = MainWindow(opener=fresh_opener)
        window.show()
        open_and_close(window, qtbot)
        window.close()
        assert window.runner.idle
        window.deleteLater()

    whole_life()
    before = living()
    for _ in range(WINDOWS):
        whole_life()
    assert living() == before
