"""A day of opening and closing in one window: nothing may pile up."""

from __future__ import annotations

import gc
import resource
import sys
import threading
from collections.abc import Callable
from functools import partial
from pathlib import Path

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from triage.simulator.road_test import simulate_road_test, write_road_test

Note = Callable[[str, str, str], None]

CYCLES = 200
GROWTH_MB = 8.0
"""The recordings alone would be 200 times 1.5 MB and more."""


@pytest.fixture(scope="module")
def short_log(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Make twenty seconds of driving, so that most of the time goes into showing them."""
    test = simulate_road_test(cause="encoder-debris", corner="FL", severity=0.5, duration_s=20.0, seed=3)
    path = tmp_path_factory.mktemp("short") / "short.csv"
    write_road_test(test, path)
    return path


def resident_mb() -> float:
    """Return what the process holds in memory now."""
    gc.collect()
    pages = int(Path("/proc/self/statm").read_text("ascii").split()[1])
    return pages * resource.getpagesize() / 1e6


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="resident memory is read from /proc")
def test_cycles_do_not_grow(
    benchmark: BenchmarkFixture, note: Note, short_log: Path, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    from PySide6.QtCore import QEventLoop
    from PySide6.QtWidgets import QApplication

    from ui.widgets.styling import qt_application
    from ui.window import MainWindow

    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))
    application = qt_application()
    window = MainWindow()
    window.resize(1280, 720)
    window.show()

    def cycles(count: int) -> None:
        for _ in range(count):
            loop = QEventLoop()
            window.runner.finished.connect(loop.quit)
            window.open_files([str(short_log)])
            loop.exec()
            window.runner.finished.disconnect(loop.quit)
            assert window.state.opened is not None
            window.state.show_page("road-test")
            application.processEvents()
            window.close_log()
            application.processEvents()

    cycles(CYCLES // 10)
    before = (len(QApplication.allWidgets()), threading.active_count())
    before_mb = resident_mb()
    benchmark.pedantic(partial(cycles, CYCLES), rounds=1)
    grown_mb = resident_mb() - before_mb
    after = (len(QApplication.allWidgets()), threading.active_count())
    window.close()
    window.deleteLater()
    note(f"window: {CYCLES} recordings opened and closed", f"{grown_mb:+.1f} MB", f"{GROWTH_MB:.0f} MB")
    assert after == before
    assert grown_mb < GROWTH_MB
