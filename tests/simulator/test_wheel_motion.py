"""Kinematics of four wheels against published formulas."""

from __future__ import annotations

import numpy as np
import pytest

from triage.simulator.setup import draw_setup
from triage.simulator.vehicle_path import GRID_S, plan_path
from triage.simulator.wheel_motion import move_wheels, wheel_speed_factors

# Formulas: T. D. Gillespie, Fundamentals of Vehicle Dynamics, SAE R-114, 1992, chapter 6 (low-speed turning).


def _left_turn(radius_m: float, track_m: float, wheelbase_m: float = 2.7) -> dict[str, float]:
    factors = wheel_speed_factors(np.array([1.0 / radius_m]), track_m=track_m, wheelbase_m=wheelbase_m)
    return dict(zip(("FL", "FR", "RL", "RR"), (float(row[0]) for row in factors), strict=True))


@pytest.mark.parametrize(
    ("track_m", "radius_m", "ratio", "difference"),
    [
        pytest.param(1.50, 50.0, 1.030457, 0.03000, id="C-1"),
        pytest.param(1.55, 100.0, 1.015621, 0.0155, id="C-2"),
        pytest.param(1.50, 10.0, 1.162162, 0.150, id="C-3"),
    ],
)
def test_rear_wheels_differ_as_track_over_radius(
    track_m: float, radius_m: float, ratio: float, difference: float
) -> None:
    wheel = _left_turn(radius_m, track_m)
    assert wheel["RR"] / wheel["RL"] == pytest.approx(ratio, abs=1e-6)
    mean = (wheel["RR"] + wheel["RL"]) / 2.0
    assert (wheel["RR"] - wheel["RL"]) / mean == pytest.approx(difference, abs=1e-6)


def test_wheel_speeds_give_back_radius_and_yaw_rate() -> None:
    # C-4: 48 and 52 km/h on a track of 1.5 m are a radius of 18.75 m and 0.740741 rad/s.
    centre_mps = 50.0 / 3.6
    wheel = _left_turn(18.75, 1.5)
    assert wheel["RL"] * 50.0 == pytest.approx(48.0, abs=1e-4)
    assert wheel["RR"] * 50.0 == pytest.approx(52.0, abs=1e-4)
    assert (wheel["RR"] - wheel["RL"]) * centre_mps / 1.5 == pytest.approx(0.740741, abs=1e-4)


def test_front_wheels_run_on_longer_radii() -> None:
    # C-5: wheelbase 2.7 m, track 1.5 m, 20 m at the middle of the rear axle.
    wheel = _left_turn(20.0, 1.5, 2.7)
    assert wheel["FR"] / wheel["FL"] == pytest.approx(1.07647, abs=1e-4)
    assert wheel["RR"] / wheel["RL"] == pytest.approx(1.07792, abs=1e-4)
    assert wheel["FL"] > wheel["RL"]


def test_right_turn_mirrors_left_turn() -> None:
    both = wheel_speed_factors(np.array([0.05, -0.05]), track_m=1.5, wheelbase_m=2.7)
    np.testing.assert_allclose(both[[0, 1, 2, 3], 0], both[[1, 0, 3, 2], 1], rtol=1e-14)


@pytest.mark.parametrize("seed", range(4))
def test_healthy_wheels_stay_near_the_rigid_body(seed: int) -> None:
    rng = np.random.default_rng(seed)
    setup = draw_setup(rng)
    path = plan_path(setup.drive, 60.0, rng)
    rngs = tuple(np.random.default_rng((seed, part)) for part in range(5))
    motion = move_wheels(path, setup.car, rngs, noise_ratio=np.ones(4), drive=setup.drive)
    factors = wheel_speed_factors(
        path.curvature_radpm, track_m=setup.car.track_m, wheelbase_m=setup.car.wheelbase_m
    )
    moving = path.speed_mps > 2.0
    for row in range(4):
        circumference = setup.car.circumference_m * setup.car.wheel_ratio[row]
        ratio = motion.rate_revps[row, moving] * circumference / (path.speed_mps * factors[row])[moving]
        assert abs(np.median(ratio) - 1.0) < 0.005
        assert np.mean(np.abs(ratio - 1.0) > 0.03) < 0.02
    assert np.all(np.diff(motion.angle_rev, axis=1) >= 0.0)


def test_rear_wheel_meets_a_bump_one_wheelbase_later() -> None:
    rng = np.random.default_rng(8)
    setup = draw_setup(rng)
    path = plan_path(setup.drive, 60.0, rng)
    rngs = tuple(np.random.default_rng((8, part)) for part in range(5))
    motion = move_wheels(path, setup.car, rngs, noise_ratio=np.ones(4), drive=setup.drive)
    inside = (path.speed_mps > 5.0) & (np.arange(path.time_s.size) < path.time_s.size - 10_000)
    strength = np.where(inside, motion.shake[0] / np.clip(path.speed_mps / 8.0, 0.1, 1.5), 0.0)
    bump = int(np.argmax(strength))
    assert strength[bump] > 1.5
    distance = np.cumsum(path.speed_mps) * GRID_S
    lag = int(np.searchsorted(distance, distance[bump] + setup.car.wheelbase_m)) - bump
    assert lag > 50
    near = slice(bump - 500, bump + 3000)
    later = slice(near.start + lag, near.stop + lag)
    front, rear = motion.shake[0, near], motion.shake[2, later]
    assert np.corrcoef(front, rear)[0, 1] > 0.6
    assert np.corrcoef(front, motion.shake[2, near])[0, 1] < 0.3
