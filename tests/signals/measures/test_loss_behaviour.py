"""Losses with bumps, steering, braking, side load and time: made by hand, so that the answer is known."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from triage.corners import CORNERS, SIDE_SIGN, Corner
from triage.signals.analysis import analyse
from triage.signals.measurement import Measured, Measurement, NotMeasurable
from triage.signals.measures.loss_coupling import (
    measure_brake_coupling,
    measure_bump_coupling,
    measure_side_coupling,
    measure_steering_coupling,
)
from triage.signals.measures.loss_pattern import measure_whole_turns
from triage.signals.measures.warming import measure_loss_trend
from triage.signals.vehicle_reference import wheel_speed_factors
from triage.speed_log import Channel, FloatArray, SpeedLog
from triage.vehicle import Vehicle

LogBuilder = Callable[..., SpeedLog]
TIME = 0.02 * np.arange(9000)
TURN_M = 2.0


def _speed(seed: int = 1) -> FloatArray:
    rng = np.random.default_rng(seed)
    return (10.0 + 2.0 * np.sin(TIME / 6.0)) * (1.0 + 0.0015 * rng.normal(size=(4, TIME.size)))


def _lose(row: FloatArray, starts_s: FloatArray, length_s: float = 0.08) -> None:
    for start in starts_s:
        row[(start <= TIME) & (start + length_s > TIME)] = 0.0


def _value(found: Measured) -> Measurement:
    assert isinstance(found, Measurement), found
    return found


def _even(count: int, seed: int = 4) -> FloatArray:
    return np.random.default_rng(seed).uniform(2.0, 176.0, count)


def test_losses_at_bumps_and_losses_anywhere(log_from: LogBuilder) -> None:
    bumps = np.arange(4.0, 176.0, 9.0)
    rows = _speed()
    for bump in bumps:
        near = (bump <= TIME) & (bump + 0.3 > TIME)
        rows[:, near] *= 1.0 + 0.03 * np.random.default_rng(int(bump)).normal(size=(4, int(near.sum())))
    torn, worn = rows.copy(), rows.copy()
    _lose(torn[0], bumps + 0.15)
    _lose(worn[0], _even(20))
    with_bumps = _value(measure_bump_coupling(analyse(log_from(TIME, torn)), 0))
    anywhere = _value(measure_bump_coupling(analyse(log_from(TIME, worn)), 0))
    assert with_bumps.value > 4.0
    assert anywhere.value < 1.6
    assert isinstance(measure_bump_coupling(analyse(log_from(TIME, rows)), 0), NotMeasurable)


@pytest.mark.parametrize("by_channel", [True, False])
def test_losses_at_steering_lock(by_channel: bool, log_from: LogBuilder) -> None:
    begins = np.arange(5.0, 175.0, 10.0)
    tight = np.any([(begin <= TIME) & (begin + 2.0 > TIME) for begin in begins], axis=0)
    curvature = np.where(tight, 0.06, 0.0)
    rows = 6.0 * wheel_speed_factors(curvature, Vehicle())
    rows = rows * (1.0 + 0.0015 * np.random.default_rng(1).normal(size=rows.shape))
    _lose(rows[0], begins + 1.0)
    channels = {"steering_rad": Channel(TIME, 40.0 * curvature, "steer")} if by_channel else None
    locked = _value(measure_steering_coupling(analyse(log_from(TIME, rows, channels=channels)), 0))
    assert locked.value > 3.0


def test_losses_while_braking(log_from: LogBuilder) -> None:
    course = 10.0 + 4.0 * np.abs(np.mod(TIME, 12.0) - 6.0) / 3.0 - 4.0
    rows = course * (1.0 + 0.001 * np.random.default_rng(2).normal(size=(4, TIME.size)))
    _lose(rows[1], np.arange(2.0, 170.0, 12.0), 0.1)
    braking = (np.mod(TIME, 12.0) < 6.0).astype(float)
    channels = {"brake": Channel(TIME, braking, "brake")}
    assert _value(measure_brake_coupling(analyse(log_from(TIME, rows, channels=channels)), 1)).value > 2.0
    channels = {"brake": Channel(TIME, 1.0 - braking, "brake")}
    assert _value(measure_brake_coupling(analyse(log_from(TIME, rows, channels=channels)), 1)).value < -2.0


@pytest.mark.parametrize("corner", CORNERS)
def test_losses_in_the_curve_that_loads_the_wheel(corner: Corner, log_from: LogBuilder) -> None:
    """A left turn loads the right wheels and the other way round."""
    left = np.mod(TIME, 12.0) < 4.0
    right = (np.mod(TIME, 12.0) >= 6.0) & (np.mod(TIME, 12.0) < 10.0)
    curvature = np.where(left, 0.02, np.where(right, -0.02, 0.0))
    rows = 11.0 * wheel_speed_factors(curvature, Vehicle())
    rows = rows * (1.0 + 0.0015 * np.random.default_rng(3).normal(size=rows.shape))
    loaded_from = 6.0 if SIDE_SIGN[corner] > 0 else 0.0
    _lose(rows[CORNERS.index(corner)], np.arange(0.0, 168.0, 12.0) + loaded_from + 2.0)
    analysis = analyse(log_from(TIME, rows))
    assert _value(measure_side_coupling(analysis, CORNERS.index(corner))).value > 3.0


def test_a_dying_sensor_comes_late_and_a_steady_fault_does_not(log_from: LogBuilder) -> None:
    late, even = _speed(), _speed()
    _lose(late[2], 176.0 * np.sqrt(np.random.default_rng(1).uniform(0.3, 1.0, 20)), 0.4)
    _lose(even[2], _even(20), 0.4)
    dying, steady = (_value(measure_loss_trend(analyse(log_from(TIME, rows)), 2)) for rows in (late, even))
    assert dying.value > 2.5 * dying.std_uncertainty
    assert abs(steady.value) < 2.5 * steady.std_uncertainty


def test_fast_driving_at_the_end_is_no_warming(log_from: LogBuilder) -> None:
    """Losses come with speed, and the drive is fast in its last third."""
    course = np.where(TIME < 60.0, 6.0, np.where(TIME < 120.0, 8.0, 20.0))
    rows = course * (1.0 + 0.0015 * np.random.default_rng(1).normal(size=(4, TIME.size)))
    _lose(rows[0], np.linspace(122.0, 177.0, 24))
    found = _value(measure_loss_trend(analyse(log_from(TIME, rows)), 0))
    assert abs(found.value) < 2.0 * found.std_uncertainty


def test_trend_of_even_events_scatters_as_stated(log_from: LogBuilder) -> None:
    score = []
    for seed in range(25):
        rows = _speed()
        _lose(rows[0], _even(12, seed=seed + 100))
        found = _value(measure_loss_trend(analyse(log_from(TIME, rows)), 0))
        score.append(found.value / found.std_uncertainty)
    assert abs(np.mean(score)) < 0.6
    assert 0.6 < np.std(score) < 1.4


def test_losses_every_turn_and_losses_at_random(log_from: LogBuilder) -> None:
    rng = np.random.default_rng(6)
    time = 0.01 * np.arange(12_000)
    course = 7.0 + 1.5 * np.sin(time / 9.0)
    turned = np.cumsum(course) * 0.01 / TURN_M
    rows = course * (1.0 + 0.001 * rng.normal(size=(4, time.size)))
    vehicle = Vehicle(circumference_m=TURN_M)
    spot, loose = rows.copy(), rows.copy()
    # The place on the turn is the same, but not every turn loses.
    hit = (np.mod(turned, 1.0) < 0.06) & (rng.random(int(turned[-1]) + 2)[turned.astype(int)] < 0.4)
    spot[0, hit] *= 0.8
    loose[0, rng.choice(time.size, int(hit.sum() / 3), replace=False)] *= 0.8
    locked = _value(measure_whole_turns(analyse(log_from(time, spot), vehicle), 0))
    free = _value(measure_whole_turns(analyse(log_from(time, loose), vehicle), 0))
    assert locked.value > 0.8
    assert abs(free.value) < 0.35
    assert abs(free.value) < 4.0 * free.std_uncertainty


def test_losses_that_keep_to_no_length_are_told_without_knowing_the_turn(log_from: LogBuilder) -> None:
    """The best of all lengths stays in the band of chance; with few losses it would not, and is not told."""
    rng = np.random.default_rng(8)
    time = 0.01 * np.arange(24_000)
    course = 7.0 + 1.5 * np.sin(time / 9.0)
    rows = course * (1.0 + 0.001 * rng.normal(size=(4, time.size)))
    many, few = rows.copy(), rows.copy()
    places = rng.choice(time.size, 600, replace=False)
    many[0, places] *= 0.8
    few[0, places[:30]] *= 0.8
    told = analyse(log_from(time, many))
    assert all(isinstance(line, NotMeasurable) for line in told.lines)
    assert -0.1 < _value(measure_whole_turns(told, 0)).value < 0.3
    assert isinstance(measure_whole_turns(analyse(log_from(time, few)), 0), NotMeasurable)
