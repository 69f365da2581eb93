"""Whether a fault stands in the log at all."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from triage.calibration.ensemble import Case, simulate_case
from triage.calibration.trace import leaves_trace
from triage.corners import CORNERS
from triage.signals.analysis import analyse
from triage.speed_log import SpeedLog


@pytest.fixture(scope="module")
def healthy() -> SpeedLog:
    return simulate_case(Case("no-fault-found", "vehicle", 0.0, 60.0, 11)).log


def _changed(log: SpeedLog, factor: np.ndarray | float, invalid: int | None = None) -> SpeedLog:
    trace = log.wheels["FR"]
    bad = trace.invalid.copy()
    if invalid is not None:
        bad[invalid] = True
    speed = np.where(bad, np.nan, trace.speed_mps * factor)
    return replace(log, wheels={**log.wheels, "FR": replace(trace, speed_mps=speed, invalid=bad)})


def test_the_same_log_has_none(healthy: SpeedLog) -> None:
    assert not leaves_trace(healthy, healthy)


def test_a_change_counts_by_its_size_against_noise_times_its_length(healthy: SpeedLog) -> None:
    """Closed form: n samples changed by a sigmas each have the detectability a sqrt(n)."""
    moving = np.flatnonzero(healthy.wheels["FR"].speed_mps > 5.0)
    sigma = float(analyse(healthy).residuals.sigma_ratio[CORNERS.index("FR")])
    rounding = healthy.wheels["FR"].resolution_mps / np.sqrt(12.0)
    for count, sigmas, shown in ((4, 1.4, False), (4, 1.6, True), (400, 0.14, False), (400, 0.16, True)):
        speed = healthy.wheels["FR"].speed_mps
        factor = np.ones(speed.size)
        chosen = moving[:count]
        factor[chosen] += sigmas * np.hypot(sigma, rounding / speed[chosen])
        assert leaves_trace(_changed(healthy, factor), healthy) == shown, (count, sigmas)


def test_an_offset_one_gross_sample_or_a_mark_are_one(healthy: SpeedLog) -> None:
    moving = np.flatnonzero(healthy.wheels["FR"].speed_mps > 5.0)
    gross = np.ones(healthy.wheels["FR"].time_s.size)
    gross[moving[0]] = 0.5
    assert leaves_trace(_changed(healthy, 1.02), healthy)
    assert leaves_trace(_changed(healthy, gross), healthy)
    assert leaves_trace(_changed(healthy, 1.0, invalid=int(moving[0])), healthy)
