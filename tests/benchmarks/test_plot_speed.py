"""Moving through an hour of four wheels in the window."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from pytest_benchmark.fixture import BenchmarkFixture
from pytestqt.qtbot import QtBot

from triage.progress import no_progress
from ui.opening import open_and_judge
from ui.state.opening import OpenOrder
from ui.state.window_state import ShowingPhase, WindowState
from ui.widgets.speed_plots import SpeedPlots

Note = Callable[[str, str, str], None]


@pytest.fixture
def plots(hour_csv: Path, qtbot: QtBot) -> SpeedPlots:
    order = OpenOrder((str(hour_csv),))
    state = WindowState()
    shown = SpeedPlots(state)
    qtbot.addWidget(shown)
    shown.resize(820, 660)
    shown.show()
    state.enter(ShowingPhase(order, open_and_judge(order, no_progress)))
    return shown


@pytest.mark.qt_log_ignore("propagateSizeHints")  # the screen that need not exist has no windows to size
@pytest.mark.parametrize(("seconds", "goal_ms"), [(60.0, 50.0), (3600.0, 150.0)], ids=["minute", "hour"])
def test_pan(
    benchmark: BenchmarkFixture, plots: SpeedPlots, note: Note, seconds: float, goal_ms: float
) -> None:
    begin_s = iter(range(100, 3000))

    def pan_and_draw() -> None:
        first = float(next(begin_s)) if seconds < 3600.0 else 0.0
        plots.show_seconds(first, first + seconds - 1.0 * (next(begin_s) % 7))
        plots.canvas.grab()

    benchmark.pedantic(pan_and_draw, rounds=20, warmup_rounds=3)
    median_ms = 1000.0 * benchmark.stats.stats.median
    note(
        f"window: redraw 4 x 360 000 points, {seconds:.0f} s in view",
        f"{median_ms:.1f} ms",
        f"< {goal_ms:.0f} ms",
    )
    assert median_ms < goal_ms
