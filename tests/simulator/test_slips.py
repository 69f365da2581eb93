"""Slips of sound wheels: which wheels, how long, and how they end."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from triage.simulator.equipment import Drive, Setup
from triage.simulator.setup import draw_setup
from triage.simulator.slips import Slip, brief_slips
from triage.simulator.vehicle_path import GRID_S, VehiclePath, plan_path

SETUP = draw_setup(np.random.default_rng(21))
CALM = replace(
    SETUP.drive,
    legs=("town",),
    lead_in_s=0.0,
    spin_ratio=0.0,
    slip_ratio=0.0,
    loose_ground=False,
    split_grip=False,
    hard_stop_ratio=1.0,
)


@pytest.fixture(scope="module")
def path() -> VehiclePath:
    return plan_path(CALM, 180.0, np.random.default_rng(2))


def _slips(path: VehiclePath, setup: Setup = SETUP, **changes: object) -> list[Slip]:
    drive: Drive = replace(CALM, **changes)  # type: ignore[arg-type]
    return brief_slips(path, setup.car, drive, np.random.default_rng(5))


def test_a_calm_driver_on_good_ground_slips_nowhere(path: VehiclePath) -> None:
    assert _slips(path) == []


@pytest.mark.parametrize(("axle", "rows"), [("front", {0, 1}), ("rear", {2, 3})])
def test_only_the_driven_axle_spins_and_only_upwards(path: VehiclePath, axle: str, rows: set[int]) -> None:
    setup = replace(SETUP, car=replace(SETUP.car, driven_axle=axle))  # type: ignore[arg-type]
    slips = _slips(path, setup, spin_ratio=1.0)
    assert {slip.row for slip in slips} <= rows
    assert len(slips) >= 5
    assert all(slip.ratio.min() >= 0.0 for slip in slips)
    # A spin begins as the car starts to roll.
    assert all(path.speed_mps[slip.first] < 1.0 for slip in slips)


def test_on_loose_ground_both_driven_wheels_spin_together(path: VehiclePath) -> None:
    setup = replace(SETUP, car=replace(SETUP.car, driven_axle="rear"))
    starts: dict[int, set[int]] = {}
    for slip in _slips(path, setup, loose_ground=True):
        starts.setdefault(slip.first, set()).add(slip.row)
    assert starts
    assert all(rows == {2, 3} for rows in starts.values())


def test_braking_slips_one_wheel_and_lets_it_recover(path: VehiclePath) -> None:
    slips = _slips(path, slip_ratio=1.0)
    assert len(slips) >= 4
    for slip in slips:
        assert slip.ratio.max() <= 0.0
        assert -0.45 < slip.ratio.min() < -0.05
        assert abs(slip.ratio[-1]) < 1e-6
        # From the deepest point back to half of it within about 0.1 s.
        deepest = int(np.argmin(slip.ratio))
        back = int(np.argmax(slip.ratio[deepest:] > 0.5 * slip.ratio.min()))
        assert back * GRID_S < 0.1


def test_split_grip_slips_the_wheels_of_one_side(path: VehiclePath) -> None:
    rows = {slip.row for slip in _slips(path, split_grip=True)}
    assert rows in ({0, 2}, {1, 3})


def test_a_slip_beyond_the_end_is_cut_off() -> None:
    ratio = np.zeros(10)
    Slip(0, 8, np.ones(5)).add_to(ratio)
    Slip(0, 20, np.ones(5)).add_to(ratio)
    np.testing.assert_array_equal(ratio, [0.0] * 8 + [1.0] * 2)
