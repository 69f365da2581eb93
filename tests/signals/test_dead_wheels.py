"""Two or three wheels without a signal: the living ones tell what the car did; only the dead are named."""

from __future__ import annotations

from itertools import combinations

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.signals.analysis import analyse
from triage.signals.conditioning import put_on_common_clock
from triage.signals.dead_wheels import find_dead_wheels
from triage.signals.measurement import Measurement
from triage.signals.measures.table import measure_all
from triage.signals.vehicle_reference import wheel_speed_factors
from triage.speed_log import FloatArray, SpeedLog
from triage.vehicle import Vehicle

RATE_HZ = 50.0
SETS = [rows for count in (2, 3) for rows in combinations(range(4), count)]


def _drive(seconds: float = 120.0, *, curved: bool = True) -> tuple[FloatArray, FloatArray]:
    """Times and the speeds of four wheels: pulling away, a winding road, a stop."""
    time_s = np.arange(0.0, seconds, 1.0 / RATE_HZ)
    speed = np.interp(time_s, [0, 5, 15, seconds - 20, seconds - 8, seconds], [0, 0, 14, 18, 0, 0])
    speed *= 1.0 + 0.1 * np.sin(0.3 * time_s)
    curvature = 0.02 * np.sin(0.2 * time_s) * curved
    wheels = speed * wheel_speed_factors(curvature, Vehicle())
    noise = np.random.default_rng(1).normal(0.0, 0.003, wheels.shape)
    return time_s, np.round((wheels * (1.0 + noise)) * 360.0) / 360.0


def _dead_shares(log: SpeedLog) -> dict[str, float]:
    measurements, _ = measure_all(analyse(log))
    return {str(one.corner): one.value for one in measurements if one.id == "dead-share"}


@pytest.mark.parametrize("rows", SETS, ids=lambda rows: "".join(CORNERS[row] for row in rows))
def test_all_of_several_dead_wheels_are_seen_and_no_other(log_from, rows: tuple[int, ...]) -> None:
    time_s, speed = _drive()
    speed[list(rows)] = 0.0
    share = _dead_shares(log_from(time_s, speed))
    for row in rows:
        assert share[CORNERS[row]] == pytest.approx(100.0, abs=1.0)
    assert all(share.get(corner, 0.0) == 0.0 for row, corner in enumerate(CORNERS) if row not in rows)


@pytest.mark.parametrize("rows", [(0, 1), (1, 2), (0, 2, 3)])
def test_wheels_that_die_in_the_middle_of_the_drive(log_from, rows: tuple[int, ...]) -> None:
    time_s, speed = _drive()
    speed[list(rows), speed.shape[1] // 2 :] = 0.0
    log = log_from(time_s, speed)
    analysis = analyse(log)
    measurements, _ = measure_all(analysis)
    share = {one.corner: one.value for one in measurements if one.id == "dead-share"}
    truth = 100.0 * np.mean(time_s[_drive()[1][3] > 1.5] > time_s[speed.shape[1] // 2])
    for row, corner in enumerate(CORNERS):
        assert share[corner] == pytest.approx(truth if row in rows else 0.0, abs=1.5)
    spikes = [one for one in measurements if one.id in ("dip-share", "spike-share")]
    assert all(isinstance(one, Measurement) and one.value < 1.0 for one in spikes)
    truth_mps = _drive()[1][2:].mean(axis=0)
    moving = truth_mps > 1.1
    np.testing.assert_allclose(analysis.reference.reference_mps[moving], truth_mps[moving], atol=0.7)


def _flags(log: SpeedLog) -> np.ndarray:
    return find_dead_wheels(put_on_common_clock(log))


def test_a_single_dead_wheel_is_left_to_the_majority(log_from) -> None:
    time_s, speed = _drive()
    speed[2] = 0.0
    assert not _flags(log_from(time_s, speed)).any()


def test_an_axle_on_a_roller_bench_says_nothing_about_the_other(log_from) -> None:
    time_s, speed = _drive(curved=False)
    speed[2:] = 0.0
    assert not _flags(log_from(time_s, speed)).any()
    assert _flags(log_from(*_with(_drive(), rows=(2, 3)))).any()


def test_one_wheel_stuck_at_its_value_does_not_condemn_those_that_stand(log_from) -> None:
    time_s, speed = _drive()
    speed[:, 3000:] = 0.0
    speed[1, 3000:] = speed[1, 2999]
    assert not _flags(log_from(time_s, speed)).any()


def test_a_wheel_turned_on_a_lift_does_not_condemn_the_others(log_from) -> None:
    time_s = np.arange(0.0, 60.0, 1.0 / RATE_HZ)
    speed = np.zeros((4, time_s.size))
    speed[0] = 4.0 + 2.0 * np.sin(0.5 * time_s)
    assert not _flags(log_from(time_s, speed)).any()


def test_two_wheels_that_lock_for_a_moment_are_no_dead_wheels(log_from) -> None:
    time_s, speed = _drive()
    speed[2:, 2000:2100] = 0.0
    assert not _flags(log_from(time_s, speed)).any()


def test_samples_that_are_missing_are_no_dead_wheels(log_from) -> None:
    time_s, speed = _drive()
    speed[:2] = np.nan
    assert not _flags(log_from(time_s, speed)).any()


def _with(drive: tuple[FloatArray, FloatArray], *, rows: tuple[int, ...]) -> tuple[FloatArray, FloatArray]:
    drive[1][list(rows)] = 0.0
    return drive
