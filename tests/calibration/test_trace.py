"""Whether a fault stands in the log at all."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from triage.calibration.ensemble import Case, simulate_case
from triage.calibration.trace import leaves_trace
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


def test_a_little_more_noise_is_none(healthy: SpeedLog) -> None:
    size = healthy.wheels["FR"].time_s.size
    noise = 1.0 + 0.0003 * np.random.default_rng(1).normal(size=size)
    assert not leaves_trace(_changed(healthy, noise), healthy)


def test_an_offset_a_few_gross_samples_or_a_mark_are_one(healthy: SpeedLog) -> None:
    moving = np.flatnonzero(healthy.wheels["FR"].speed_mps > 5.0)
    gross = np.ones(healthy.wheels["FR"].time_s.size)
    gross[moving[:4]] = 0.5
    assert leaves_trace(_changed(healthy, 1.02), healthy)
    assert leaves_trace(_changed(healthy, gross), healthy)
    assert leaves_trace(_changed(healthy, 1.0, invalid=int(moving[0])), healthy)
