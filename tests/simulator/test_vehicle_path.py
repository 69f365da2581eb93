"""Every drive holds what a diagnosis needs: stops, pull-aways, creeping, curves both ways, brakes."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from triage.simulator.equipment import LegKind
from triage.simulator.setup import draw_setup
from triage.simulator.vehicle_path import GRID_S, VehiclePath, plan_path


def _drive(seed: int, duration_s: float = 180.0, legs: tuple[LegKind, ...] | None = None) -> VehiclePath:
    rng = np.random.default_rng(seed)
    drive = draw_setup(rng).drive
    return plan_path(drive if legs is None else replace(drive, legs=legs), duration_s, rng)


ORDINARY: tuple[tuple[LegKind, ...], ...] = (
    ("town", "country", "town", "yard"),
    ("town", "town", "country"),
    ("country", "town", "yard", "country"),
    ("town", "motorway", "town"),
    ("yard", "town", "country"),
)


def _stretches(flags: np.ndarray, shortest_s: float) -> int:
    edges = np.diff(np.concatenate(([0], flags.astype(int), [0])))
    lengths = np.flatnonzero(edges == -1) - np.flatnonzero(edges == 1)
    return int(np.count_nonzero(lengths * GRID_S >= shortest_s))


@pytest.mark.parametrize("seed", range(15))
def test_three_minutes_hold_several_of_each_manoeuvre(seed: int) -> None:
    path = _drive(seed, legs=ORDINARY[seed % len(ORDINARY)])
    speed, lateral = path.speed_mps, path.lateral_mps2
    assert _stretches(speed == 0.0, 0.5) >= 2, "stops"
    assert _stretches((speed > 0.5) & (speed < 8.0 / 3.6), 0.5) >= 3, "slow rolls"
    assert _stretches(path.acceleration_mps2 > 0.8, 1.0) >= 3, "pull-aways"
    assert _stretches(path.acceleration_mps2 < -1.2, 0.5) >= 3, "braking"
    assert _stretches(lateral > 0.8, 1.0) >= 2, "left curves"
    assert _stretches(lateral < -0.8, 1.0) >= 2, "right curves"
    assert _stretches((np.abs(lateral) < 0.4) & (speed > 5.0), 2.0) >= 4, "straights"


@pytest.mark.parametrize("seed", range(15))
def test_the_car_stays_within_physics(seed: int) -> None:
    path = _drive(seed)
    assert path.time_s.size == 180_000
    assert np.min(path.speed_mps) >= 0.0
    assert np.max(path.speed_mps) < 140.0 / 3.6
    assert np.max(np.abs(path.lateral_mps2)) <= 3.5 + 1e-9
    assert np.max(np.abs(path.acceleration_mps2)) < 9.5
    assert np.max(np.abs(path.curvature_radpm)) < 1.0 / 4.0


def test_motorway_without_end_has_neither_stop_nor_curve() -> None:
    for seed in range(5):
        path = _drive(seed, legs=("cruise",))
        assert np.min(path.speed_mps[60_000:]) > 60.0 / 3.6
        assert np.mean(np.abs(path.lateral_mps2) > 0.8) < 0.02


def test_queue_is_slow_and_stops_often() -> None:
    for seed in range(5):
        path = _drive(seed, legs=("queue",))
        assert np.max(path.speed_mps) < 30.0 / 3.6
        assert _stretches(path.speed_mps == 0.0, 0.5) >= 8


def test_parking_is_at_full_lock() -> None:
    # Turning circles between kerbs of 10.5 to 13 m (common practice) are 4.5 to 6.5 m at the rear axle.
    for seed in range(5):
        path = _drive(seed, legs=("parking",))
        creeping = path.speed_mps > 0.5
        assert np.max(path.speed_mps) < 12.0 / 3.6
        assert 1.0 / 6.5 < np.quantile(np.abs(path.curvature_radpm[creeping]), 0.9) < 1.0 / 4.0


def test_some_drivers_brake_hard() -> None:
    hasty = replace(draw_setup(np.random.default_rng(1)).drive, legs=("country",), hard_stop_ratio=1.0)
    calm = replace(hasty, hard_stop_ratio=0.0)
    least = [plan_path(d, 180.0, np.random.default_rng(3)).acceleration_mps2.min() for d in (hasty, calm)]
    assert least[0] < -5.5
    assert least[1] > -5.5


def test_a_drive_may_start_rolling_or_at_a_standstill() -> None:
    starts = [_drive(seed, 20.0).speed_mps[0] for seed in range(20)]
    assert any(speed > 2.0 for speed in starts)
    assert any(speed == 0.0 for speed in starts)
