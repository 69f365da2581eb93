"""Moving through an hour and through a day of four wheels in the window."""

from __future__ import annotations

import time
from collections.abc import Callable
from pathlib import Path
from types import SimpleNamespace
from typing import Any, cast

import numpy as np
import pyqtgraph as pg
import pytest
from pytest_benchmark.fixture import BenchmarkFixture
from pytestqt.qtbot import QtBot

from triage.corners import CORNERS
from triage.evidence.hypotheses import Posterior
from triage.progress import no_progress
from triage.run import TriageResult
from triage.signals.analysis import Analysis
from triage.signals.conditioned_log import ConditionedLog
from triage.signals.losses import Losses
from triage.signals.manoeuvres import KINDS, Manoeuvre
from triage.speed_log import BoolArray, FloatArray, SpeedLog, SpeedTrace
from ui.opening import open_and_judge
from ui.state.opening import Opened, OpenOrder
from ui.state.window_state import ShowingPhase, WindowState
from ui.widgets.speed_plots import SpeedPlots

Note = Callable[[str, str, str], None]

DAY_S = 86_400.0
RATE_HZ = 100.0
FIRST_PICTURE_S = 1.5
MEDIAN_MS, P95_MS = 33.0, 60.0
TIMES_QUICKER = 10.0
ZOOMS_S = (DAY_S, 40_000.0, 7200.0, 600.0, 60.0, 5.0)
BRIEF_AT = 4_000_037
"""The one sample of the day at which a wheel reads nothing."""

NO_SIZE = pytest.mark.qt_log_ignore("propagateSizeHints")  # the screen that need not exist


def shown_plots(qtbot: QtBot) -> tuple[WindowState, SpeedPlots]:
    state = WindowState()
    shown = SpeedPlots(state)
    qtbot.addWidget(shown)
    shown.resize(820, 660)
    shown.show()
    return state, shown


@pytest.fixture
def plots(hour_csv: Path, qtbot: QtBot) -> SpeedPlots:
    order = OpenOrder((str(hour_csv),))
    state, shown = shown_plots(qtbot)
    state.enter(ShowingPhase(order, open_and_judge(order, no_progress)))
    return shown


@NO_SIZE
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


def analysis_of(time_s: FloatArray, *, lost: BoolArray) -> Analysis:
    """What the plots need of an analysis: the clock and where signal was lost."""
    none, moving = np.zeros(lost.shape, dtype=bool), np.ones(lost.shape, dtype=bool)
    losses = Losses(moving, lost=lost, alone=lost, low=none, high=none, frozen=none, joint=none[0])
    loud = SimpleNamespace(silent=none[0])
    clock = SimpleNamespace(time_s=time_s, period_s=1.0 / RATE_HZ)
    return cast("Analysis", SimpleNamespace(clock=clock, losses=losses, cut_offs=(loud,) * 4))


def make_day() -> Opened:
    """Four wheels for a day at 100 samples a second; the engine need not have seen them."""
    time_s = np.arange(round(DAY_S * RATE_HZ)) / RATE_HZ
    rng = np.random.default_rng(3)
    # A stop every five minutes, hours of other speeds, and the ripple of the road.
    middle_mps = np.maximum(12.0 + 9.0 * np.sin(time_s / 300.0) + 6.0 * np.sin(time_s / 2700.0), 0.0)
    speed_mps = np.empty((4, time_s.size))
    for row in speed_mps:
        row[:] = middle_mps * (1.0 + 0.004 * rng.standard_normal(time_s.size))
    speed_mps[1, BRIEF_AT] = 0.0
    ratio = np.where(middle_mps > 1.0, speed_mps / np.maximum(middle_mps, 1.0) - 1.0, np.nan)
    good = np.ones(speed_mps.shape, dtype=bool)
    wheels = {
        corner: SpeedTrace(time_s, speed_mps[row], ~good[row], 0.01, corner, "m/s")
        for row, corner in enumerate(CORNERS)
    }
    expected = np.broadcast_to(middle_mps, speed_mps.shape)
    conditioned = ConditionedLog(
        time_s, speed_mps, good, good, middle_mps, np.zeros(time_s.size), expected, ratio
    )
    manoeuvres = tuple(
        Manoeuvre(KINDS[at % len(KINDS)], 0, 0, 12.0 * at, 12.0 * (at + 1), 0.0, 0.0, 0.0)
        for at in range(round(DAY_S / 12.0))
    )
    log = SpeedLog("day.csv", "table (csv)", None, wheels)
    analysis = analysis_of(time_s, lost=speed_mps < 0.5 * expected)
    parts = {"log": log, "conditioned": conditioned, "manoeuvres": manoeuvres, "analysis": analysis}
    result = SimpleNamespace(**parts, findings=(), posterior=Posterior(()))
    return Opened(cast("TriageResult", result))


@pytest.fixture(scope="module")
def day() -> Opened:
    return make_day()


def timed_s(work: Callable[[], Any]) -> float:
    begin_s = time.perf_counter()
    work()
    return time.perf_counter() - begin_s


def plain_frame_s(day: Opened) -> float:
    """Seconds for one picture of the same speeds in curves as the plot library gives them."""
    widget = pg.GraphicsLayoutWidget()
    widget.resize(820, 660)
    plot = widget.addPlot()
    for trace in day.result.log.wheels.values():
        plot.plot(trace.time_s, trace.speed_mps, pen="k")
    plot.setXRange(0.0, DAY_S, padding=0.0)
    widget.grab()
    frame_s = timed_s(lambda: (plot.setXRange(0.0, DAY_S - 7.0, padding=0.0), widget.grab()))
    widget.close()
    return frame_s


@NO_SIZE
def test_a_day(benchmark: BenchmarkFixture, day: Opened, qtbot: QtBot, note: Note) -> None:
    state, plots = shown_plots(qtbot)
    showing = ShowingPhase(OpenOrder(("day.csv",)), day)
    first_s = timed_s(lambda: (state.enter(showing), plots.canvas.grab()))
    frames_ms: dict[float, list[float]] = {}

    def wander() -> None:
        for zoom_s in ZOOMS_S:
            for step in range(20):
                begin_s = 1000.0 + 0.07 * zoom_s * step
                move = lambda at=begin_s, long=zoom_s * (1 - 0.002 * step): (  # noqa: E731
                    plots.show_seconds(at, at + long),
                    plots.canvas.grab(),
                )
                frames_ms.setdefault(zoom_s, []).append(1000.0 * timed_s(move))

    plots.show_seconds(0.0, 5.0)
    plots.canvas.grab()
    benchmark.pedantic(wander, rounds=1)
    plots.show_whole()
    _, drawn = plots.speed.curves["FR"].getData()
    plain_s = plain_frame_s(day)
    every = [one for frames in frames_ms.values() for one in frames]
    median_ms, p95_ms = (float(np.quantile(every, share)) for share in (0.5, 0.95))
    whole_ms = float(np.median(frames_ms[DAY_S]))
    note("window, a day (4 x 8 640 000): first picture", f"{first_s:.2f} s", f"< {FIRST_PICTURE_S} s")
    note("the same: pan and zoom, median frame", f"{median_ms:.1f} ms", f"<= {MEDIAN_MS:.0f} ms")
    note("the same: 95th percentile", f"{p95_ms:.1f} ms", f"<= {P95_MS:.0f} ms")
    for zoom_s, frames in frames_ms.items():
        note(f"the same: {zoom_s:.0f} s in view, median", f"{np.median(frames):.1f} ms", "none")
    note(
        "the same: plain curves / ours", f"{1000.0 * plain_s / whole_ms:.0f} times", f">= {TIMES_QUICKER:.0f}"
    )
    assert first_s < FIRST_PICTURE_S
    assert median_ms <= MEDIAN_MS
    assert p95_ms <= P95_MS
    assert 1000.0 * plain_s >= TIMES_QUICKER * whole_ms
    assert drawn.min() == 0.0, "the one sample without a reading must show with the day in view"
