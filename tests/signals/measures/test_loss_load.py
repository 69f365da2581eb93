"""The load at the losses: put by hand into curves of one side, or anywhere."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from triage.signals.analysis import analyse
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.loss_load import measure_loss_load
from triage.signals.vehicle_reference import wheel_speed_factors
from triage.speed_log import FloatArray, SpeedLog
from triage.vehicle import Vehicle

Build = Callable[..., SpeedLog]

TIME_S = 0.02 * np.arange(9_000)
SPEED_MPS = 14.0
CURVATURE_RADPM = 0.01
FL, FR = 0, 1
LOAD_MPS2 = SPEED_MPS**2 * CURVATURE_RADPM


def _drive() -> tuple[FloatArray, FloatArray]:
    """Ten seconds left, ten straight, ten right, ten straight, and so on; curvature and wheel speeds."""
    course = np.array([1.0, 0.0, -1.0, 0.0])[(TIME_S // 10.0).astype(int) % 4]
    curvature = CURVATURE_RADPM * course
    noise = 1.0 + 0.001 * np.random.default_rng(1).normal(size=(4, TIME_S.size))
    return curvature, SPEED_MPS * wheel_speed_factors(curvature, Vehicle()) * noise


def _losing(row: int, at_s: FloatArray) -> FloatArray:
    rows = _drive()[1]
    for start in at_s:
        rows[row, (start <= TIME_S) & (start + 0.08 > TIME_S)] = 0.0
    return rows


def _load(log: SpeedLog, row: int) -> Measurement:
    found = measure_loss_load(analyse(log), row)
    assert isinstance(found, Measurement)
    return found


def test_losses_as_the_outer_wheel(log_from: Build) -> None:
    """In a left-hand curve of v^2 k = 1.96 m/s2 the right wheel is the outer one."""
    load = _load(log_from(TIME_S, _losing(FR, np.arange(5.0, 175.0, 40.0))), FR)
    assert load.value == pytest.approx(LOAD_MPS2, abs=2.0 * load.std_uncertainty)


def test_losses_as_the_inner_wheel(log_from: Build) -> None:
    load = _load(log_from(TIME_S, _losing(FL, np.arange(5.0, 175.0, 40.0))), FL)
    assert load.value == pytest.approx(-LOAD_MPS2, abs=2.0 * load.std_uncertainty)


def test_one_loss_going_straight_says_so(log_from: Build) -> None:
    load = _load(log_from(TIME_S, _losing(FR, np.array([55.0]))), FR)
    assert load.sample_count == 1
    assert load.value == pytest.approx(0.0, abs=0.3)
    assert load.std_uncertainty < 1.0


def test_losses_everywhere_are_told_from_those_in_one_curve(log_from: Build) -> None:
    anywhere = _load(log_from(TIME_S, _losing(FR, np.arange(3.0, 175.0, 7.0))), FR)
    assert anywhere.value < 0.3


def test_a_wheel_without_losses_has_none(log_from: Build) -> None:
    found = measure_loss_load(analyse(log_from(TIME_S, _drive()[1])), FR)
    assert isinstance(found, NotMeasurable)
