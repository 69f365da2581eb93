"""Curve kinematics against published arithmetic, and the reference that trusts no single wheel."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.corners import CORNERS
from triage.signals.analysis import analyse
from triage.signals.conditioning import put_on_common_clock
from triage.signals.vehicle_reference import (
    GRIP_LIMIT_MPS2,
    VehicleReference,
    estimate_reference,
    most_common_value,
    wheel_speed_factors,
)
from triage.speed_log import FloatArray, SpeedLog
from triage.units import KMH
from triage.vehicle import Vehicle

PERIOD_S = 0.02

# Rigid car without slip: T. D. Gillespie, Fundamentals of Vehicle Dynamics, SAE R-114, 1992, ch. 6 (from
# memory); the numbers are arithmetic from v_out / v_in = (R + t/2) / (R - t/2).


@pytest.mark.parametrize(
    ("track_m", "radius_m", "ratio", "difference"),
    [(1.50, 50.0, 1.030457, 0.03), (1.55, 100.0, 1.015621, 0.0155), (1.50, 10.0, 1.162162, 0.15)],
)
def test_rear_wheels_in_a_left_curve(
    track_m: float, radius_m: float, ratio: float, difference: float
) -> None:
    factors = wheel_speed_factors(np.array([1.0 / radius_m]), Vehicle(track_m=track_m))[:, 0]
    inner, outer = factors[CORNERS.index("RL")], factors[CORNERS.index("RR")]
    assert outer / inner == pytest.approx(ratio, abs=1e-6)
    assert (outer - inner) / ((outer + inner) / 2.0) == pytest.approx(difference, abs=1e-6)


def test_front_and_rear_wheels_of_a_tight_curve() -> None:
    """L = 2.7 m, t = 1.5 m, R = 20 m: steering angles 7.984 and 7.414 degrees, ratios 1.07647 and 1.07792."""
    vehicle = Vehicle(track_m=1.5, wheelbase_m=2.7)
    fl, fr, rl, rr = wheel_speed_factors(np.array([1.0 / 20.0]), vehicle)[:, 0]
    assert fr / fl == pytest.approx(1.07647, abs=1e-5)
    assert rr / rl == pytest.approx(1.07792, abs=1e-5)
    # Each front wheel runs 1 / cos(steering angle) faster than the rear wheel on its side.
    inner_rad, outer_rad = np.arccos(rl / fl), np.arccos(rr / fr)
    assert np.degrees(inner_rad) == pytest.approx(7.984, abs=1e-3)
    assert np.degrees(outer_rad) == pytest.approx(7.414, abs=1e-3)
    assert 1.0 / np.tan(outer_rad) - 1.0 / np.tan(inner_rad) == pytest.approx(1.5 / 2.7, abs=1e-4)


@given(curvature=st.floats(-0.25, 0.25), track_m=st.floats(1.2, 2.0), wheelbase_m=st.floats(2.0, 4.0))
def test_factors_mirror_and_are_one_straight_on(curvature: float, track_m: float, wheelbase_m: float) -> None:
    vehicle = Vehicle(track_m=track_m, wheelbase_m=wheelbase_m)
    left = wheel_speed_factors(np.array([curvature, 0.0]), vehicle)
    right = wheel_speed_factors(np.array([-curvature, 0.0]), vehicle)
    np.testing.assert_allclose(left, right[[1, 0, 3, 2]], rtol=1e-12)
    np.testing.assert_allclose(left[:, 1], 1.0, rtol=1e-12)


def _drive(speed_mps: FloatArray, curvature: FloatArray) -> FloatArray:
    return speed_mps * wheel_speed_factors(curvature, Vehicle())


def _reference(log: SpeedLog, yaw: FloatArray | None = None) -> VehicleReference:
    return estimate_reference(put_on_common_clock(log), Vehicle(), yaw)


def test_path_and_speed_of_a_car_in_curves(log_from: Callable[..., SpeedLog]) -> None:
    time = PERIOD_S * np.arange(3000)
    speed = 12.0 + 3.0 * np.sin(time / 5.0)
    curvature = np.where(np.mod(time, 20.0) < 10.0, 0.03 * np.sin(time * np.pi / 10.0), 0.0)
    reference = _reference(log_from(time, _drive(speed, curvature)))
    np.testing.assert_allclose(reference.reference_mps, speed, rtol=4e-3)
    np.testing.assert_allclose(reference.curvature_radpm[50:-50], curvature[50:-50], atol=1e-3)
    np.testing.assert_allclose(reference.divergence_ratio, 0.0, atol=6e-3)


@pytest.mark.parametrize("radius_m", [14.0, -30.0, 100.0])
def test_a_drive_in_one_long_curve_is_no_difference_of_tyres(
    radius_m: float, log_from: Callable[..., SpeedLog]
) -> None:
    time = PERIOD_S * np.arange(4000)
    speed = 10.0 + 2.0 * np.sin(time / 5.0)
    noise = 1.0 + 0.0015 * np.random.default_rng(1).normal(size=(4, time.size))
    log = log_from(time, _drive(speed, np.full(time.size, 1.0 / radius_m)) * noise)
    for yaw in (None, speed / radius_m):
        reference = _reference(log, yaw)
        assert np.isnan(reference.scale_ratio).all()
        assert np.median(reference.curvature_radpm) == pytest.approx(1.0 / radius_m, rel=0.05)


def test_impossible_difference_is_a_wrong_wheel_and_no_curve(log_from: Callable[..., SpeedLog]) -> None:
    """48 and 52 km/h on one axle with t = 1.5 m need R = 18.75 m and 10.288 m/s2: beyond road tyres' grip."""
    inner, outer, track = 48.0 * KMH, 52.0 * KMH, 1.5
    radius = track / 2.0 * (outer + inner) / (outer - inner)
    assert radius == pytest.approx(18.75, abs=1e-4)
    assert (outer - inner) / track == pytest.approx(0.740741, abs=1e-4)
    assert np.degrees((outer - inner) / track) == pytest.approx(42.441, abs=1e-3)
    lateral = (50.0 * KMH) ** 2 / radius
    assert lateral == pytest.approx(10.288, abs=1e-3)
    assert 1.15 * lateral > GRIP_LIMIT_MPS2

    time = PERIOD_S * np.arange(3000)
    speed = np.full(time.size, 50.0 * KMH)
    rows = [speed, speed, np.full(time.size, inner), np.full(time.size, outer)]
    reference = _reference(log_from(time, rows))
    assert np.abs(reference.curvature_radpm).max() < 0.002
    offsets = dict(zip(CORNERS, reference.scale_ratio, strict=True))
    assert offsets["RL"] == pytest.approx(-0.04, abs=0.003)
    assert offsets["RR"] == pytest.approx(+0.04, abs=0.003)


def test_beyond_the_grip_limit_one_wheel_is_blamed(log_from: Callable[..., SpeedLog]) -> None:
    """The front axle runs straight, so a rear wheel that reads 8 % high shows in its own divergence."""
    time = PERIOD_S * np.arange(3000)
    rows = [np.full(time.size, 20.0) for _ in CORNERS]
    rows[3] = np.where((time > 20.0) & (time < 23.0), 21.6, 20.0)
    reference = _reference(log_from(time, rows))
    inside = (time > 20.5) & (time < 22.5)
    assert np.median(reference.divergence_ratio[3, inside]) == pytest.approx(0.08, abs=0.005)
    assert np.abs(reference.divergence_ratio[:3, inside]).max() < 0.005
    assert np.abs(reference.curvature_radpm[inside]).max() < 1e-3


@pytest.mark.parametrize("row", range(4))
def test_no_single_wheel_moves_the_reference(row: int, log_from: Callable[..., SpeedLog]) -> None:
    time = PERIOD_S * np.arange(2500)
    speed = 15.0 + 4.0 * np.sin(time / 6.0)
    rows = _drive(speed, 0.01 * np.sin(time / 9.0))
    rows[row] = 0.0
    reference = _reference(log_from(time, rows))
    np.testing.assert_allclose(reference.reference_mps, speed, rtol=0.02)
    np.testing.assert_allclose(reference.divergence_ratio[row], -1.0, atol=1e-9)
    others = np.delete(reference.divergence_ratio, row, axis=0)
    assert np.abs(others).max() < 0.03


def test_yaw_rate_settles_which_axle_is_right(log_from: Callable[..., SpeedLog]) -> None:
    time = PERIOD_S * np.arange(3000)
    speed = np.full(time.size, 10.0)
    curvature = np.where((time > 15.0) & (time < 45.0), 0.04, 0.0)
    rows = _drive(speed, curvature)
    rows[2] = rows[2] * np.where(time > 25.0, 1.06, 1.0)
    yaw = speed * curvature
    reference = _reference(log_from(time, rows), yaw)
    late = (time > 30.0) & (time < 44.0)
    np.testing.assert_allclose(reference.curvature_radpm[late], 0.04, atol=0.004)
    assert np.median(reference.divergence_ratio[2, late]) == pytest.approx(0.06, abs=0.01)


def test_constant_offsets_come_with_an_uncertainty(log_from: Callable[..., SpeedLog]) -> None:
    rng = np.random.default_rng(2)
    time = PERIOD_S * np.arange(6000)
    true = np.array([0.02, 0.0, -0.004, 0.0])
    noise = 1.0 + 0.003 * rng.normal(size=(4, time.size))
    reference = _reference(log_from(time, 14.0 * (1.0 + true[:, None]) * noise))
    error = reference.scale_ratio - (true - np.median(true))
    assert (np.abs(error) < 4.0 * reference.scale_std_ratio).all()
    assert (reference.scale_std_ratio < 0.001).all()
    assert reference.straight_blocks > 400


def test_too_little_straight_driving_gives_no_offset(log_from: Callable[..., SpeedLog]) -> None:
    time = PERIOD_S * np.arange(100)
    reference = _reference(log_from(time, [np.full(100, 14.0)] * 4))
    assert np.isnan(reference.scale_ratio).all()
    assert reference.straight_blocks == 0


def test_standing_car_has_no_divergence(log_from: Callable[..., SpeedLog]) -> None:
    time = PERIOD_S * np.arange(500)
    reference = _reference(log_from(time, [np.zeros(500)] * 4))
    assert np.isnan(reference.divergence_ratio).all()
    np.testing.assert_array_equal(reference.curvature_radpm, 0.0)


def test_reference_is_missing_where_fewer_than_two_wheels_read(log_from: Callable[..., SpeedLog]) -> None:
    time = PERIOD_S * np.arange(400)
    rows = [np.full(400, 10.0) for _ in CORNERS]
    for row in rows[:3]:
        row[100:200] = np.nan
    reference = _reference(log_from(time, rows))
    assert np.isnan(reference.reference_mps[100:200]).all()
    assert np.isfinite(reference.reference_mps[:100]).all()


def test_most_common_value_ignores_the_minority() -> None:
    rng = np.random.default_rng(3)
    value = np.concatenate((rng.normal(0.0, 0.1, 400), rng.uniform(2.0, 9.0, 300)))
    assert most_common_value(value) == pytest.approx(0.0, abs=0.1)
    assert most_common_value(np.array([4.0])) == 4.0


def test_coarse_steps_do_not_hide_a_constant_ratio(log_from: Callable[..., SpeedLog]) -> None:
    """Steps of 1 % of the speed, which a median of the readings would keep to; the truth is 0.4 %."""
    time_s = np.arange(0.0, 240.0, 0.02)
    speed = 14.0 + 3.0 * np.sin(time_s / 9.0)
    rows = [np.round(speed * factor / 0.14) * 0.14 for factor in (1.0, 1.0, 1.004, 1.0)]
    scale = analyse(log_from(time_s, rows, resolution_mps=0.14)).reference.scale_ratio
    np.testing.assert_allclose(scale[2] - scale[[0, 1, 3]], 0.004, atol=0.0015)
