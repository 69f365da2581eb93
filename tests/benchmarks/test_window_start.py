"""From nothing to a window that can be used, against the barest window with one plot."""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

from pytest_benchmark.fixture import BenchmarkFixture

Note = Callable[[str, str, str], None]

ROOT = Path(__file__).resolve().parents[2]
RUNS = 5
TIMES_BARE = 1.5

BARE = """
import pyqtgraph as pg
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QMainWindow
application = QApplication([])
window = QMainWindow()
window.setCentralWidget(pg.PlotWidget())
window.resize(1280, 720)
window.show()
QTimer.singleShot(0, application.quit)
application.exec()
"""

OURS = """
from PySide6.QtCore import QTimer
from ui.widgets.styling import qt_application
from ui.window import main
application = qt_application()
QTimer.singleShot(0, application.quit)
main([])
"""


def start_s(code: str, folder: Path) -> float:
    """Return the wall time of a fresh process that shows its window, serves one event and ends."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "XDG_CONFIG_HOME": str(folder)}
    # Compiled files as an installed program has them; a checkout may be told to keep none.
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    environment["PYTHONPYCACHEPREFIX"] = str(folder / "compiled")
    began_s = time.perf_counter()
    subprocess.run([sys.executable, "-c", code], cwd=ROOT, env=environment, check=True, timeout=120)
    return time.perf_counter() - began_s


def test_start_against_bare_window(benchmark: BenchmarkFixture, note: Note, tmp_path: Path) -> None:
    def take_turns() -> list[tuple[float, float]]:
        # In turns, so that what else the machine does falls on both alike.
        return [(start_s(BARE, tmp_path), start_s(OURS, tmp_path)) for _ in range(RUNS)]

    start_s(BARE, tmp_path)
    start_s(OURS, tmp_path)
    pairs = benchmark.pedantic(take_turns, rounds=1)
    bare_s, ours_s = (statistics.median(column) for column in zip(*pairs, strict=True))
    note("window: start", f"{ours_s:.2f} s / {bare_s:.2f} s = {ours_s / bare_s:.2f}", f"{TIMES_BARE}")
    assert ours_s <= TIMES_BARE * bare_s
