"""An hour of driving as a table, and a small table of what was measured at the end of the run."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from triage.simulator.road_test import simulate_road_test, write_road_test
from triage.simulator.setup import draw_setup

if sys.platform.startswith("linux"):
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

HOUR_S = 3600.02
RATE_HZ = 100.0
ROWS = pytest.StashKey[list[tuple[str, str, str]]]()

Note = Callable[[str, str, str], None]


@pytest.fixture(
    scope="session", params=[("no-fault-found", None), ("encoder-debris", "FL")], ids=lambda p: p[0]
)
def hour_csv(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An hour at 100 rows a second, healthy and with a fault: losses make more work."""
    cause, corner = request.param
    setup = draw_setup(np.random.default_rng(5))
    steady = replace(setup.recorder, rate_hz=RATE_HZ, lost_frame_ratio=0.0, gaps_per_min=0.0, jitter_s=0.0)
    steady = replace(steady, wheel_rate_hz=None)
    test = simulate_road_test(
        cause=cause,
        corner=corner,
        severity=0.5,
        duration_s=HOUR_S,
        seed=5,
        setup=replace(setup, recorder=steady),
    )
    path = tmp_path_factory.mktemp("hour") / f"{cause}.csv"
    write_road_test(test, path)
    return path


@pytest.fixture
def note(request: pytest.FixtureRequest) -> Note:
    """Put a line into the table at the end: what, measured, goal."""
    rows = request.config.stash.setdefault(ROWS, [])
    return lambda what, measured, goal: rows.append((what, measured, goal))


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    rows = config.stash.get(ROWS, [])
    if not rows:
        return
    terminalreporter.section("measured against the goals")
    width = max(len(what) for what, _, _ in rows)
    for what, measured, goal in rows:
        terminalreporter.write_line(f"{what:<{width}}  {measured:>20}  goal {goal}")
