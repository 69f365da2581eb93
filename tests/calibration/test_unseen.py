"""Cars for the evaluation: healthy, plausible, and other than those of the calibration."""

from __future__ import annotations

import numpy as np
import pytest

from triage.calibration.ensemble import Case, simulate_case
from triage.calibration.unseen import draw_unseen_setup
from triage.corners import CORNERS
from triage.simulator.equipment import Setup
from triage.simulator.setup import draw_setup


@pytest.fixture(scope="module")
def unseen() -> list[Setup]:
    return [draw_unseen_setup(np.random.default_rng(seed)) for seed in range(200)]


def test_the_same_seed_draws_the_same_car() -> None:
    assert draw_unseen_setup(np.random.default_rng(3)) == draw_unseen_setup(np.random.default_rng(3))


def test_cycle_times_and_rates_are_none_that_calibration_knows(unseen: list[Setup]) -> None:
    known = [draw_setup(np.random.default_rng(seed)) for seed in range(200)]
    assert not {one.unit.cycle_s for one in unseen} & {one.unit.cycle_s for one in known}
    assert not {one.recorder.rate_hz for one in unseen} & {one.recorder.rate_hz for one in known}
    pairs = {one.encoder.pole_pairs for one in known}
    assert sum(one.encoder.pole_pairs not in pairs for one in unseen) > 30


def test_everything_stays_within_what_cars_have(unseen: list[Setup]) -> None:
    for one in unseen:
        assert 40 <= 2 * one.encoder.pole_pairs <= 200
        assert 0.004 <= one.unit.cycle_s <= 0.022
        assert one.unit.hold_s >= 1.5 * one.unit.cycle_s
        assert 10.0 <= one.recorder.rate_hz <= 100.0
        window_s = one.unit.averaging_cycles * one.unit.cycle_s
        assert window_s <= (0.21 if one.unit.method == "counting" else 0.0725)


def test_units_that_only_count_do_not_step_by_metres_per_second(unseen: list[Setup]) -> None:
    counting = [one for one in unseen if one.unit.method == "counting"]
    assert counting
    for one in counting:
        window_s = one.unit.averaging_cycles * one.unit.cycle_s
        assert one.unit.circumference_m / one.encoder.edges_per_rev / window_s < 2.0


@pytest.mark.parametrize("seed", range(4))
def test_a_healthy_unseen_car_loses_no_edge_above_walking_pace(seed: int) -> None:
    test = simulate_case(Case("no-fault-found", "vehicle", 0.0, 60.0, seed, unseen=True))
    time_s = np.arange(0.0, 59.0, 0.5)
    for corner in CORNERS:
        turned = np.diff(test.truth.angle_rev(corner, time_s))
        edges = np.diff(np.searchsorted(test.edges[corner], time_s))
        moving = turned > 1.5
        expected = turned[moving].sum() * test.truth.setup.encoder.edges_per_rev
        assert edges[moving].sum() == pytest.approx(expected, rel=0.002)
