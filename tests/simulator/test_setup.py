"""What is drawn: the stated ranges, and every healthy look-alike among the cars."""

from __future__ import annotations

import numpy as np
import pytest

from triage.simulator.setup import Setup, draw_setup


@pytest.fixture(scope="module")
def setups() -> list[Setup]:
    return [draw_setup(np.random.default_rng(seed)) for seed in range(600)]


def test_equipment_keeps_to_the_stated_ranges(setups: list[Setup]) -> None:
    edges = [setup.encoder.edges_per_rev for setup in setups]
    assert (min(edges) >= 40, max(edges) <= 100) == (True, True)
    assert np.ptp(edges) > 50
    assert all(1.8 <= setup.car.circumference_m <= 2.35 for setup in setups)
    assert all(0.005 <= setup.unit.cycle_s <= 0.02 for setup in setups)
    assert {setup.sensor.kind for setup in setups} == {"active", "passive"}


def test_logs_keep_to_the_stated_ranges(setups: list[Setup]) -> None:
    for setup in setups:
        rates = setup.recorder.wheel_rate_hz or (setup.recorder.rate_hz,) * 4
        assert all(10.0 <= rate <= 100.0 for rate in rates)
        assert 0.01 <= setup.recorder.step_kmh <= 0.0625


def test_same_stream_draws_the_same_setup() -> None:
    assert draw_setup(np.random.default_rng(8)) == draw_setup(np.random.default_rng(8))


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [
        ("pulse counters", 0.19, 0.31),
        ("mixed rates", 0.06, 0.16),
        ("counting unit", 0.04, 0.13),
        ("substituting unit", 0.02, 0.11),
        ("other tyres on one axle", 0.05, 0.16),
        ("queue or parking", 0.1, 0.27),
        ("motorway without end", 0.01, 0.06),
        ("loose ground", 0.02, 0.11),
        ("split grip", 0.02, 0.11),
        ("hard stops", 0.13, 0.28),
        ("cobbles", 0.13, 0.28),
    ],
)
def test_every_look_alike_occurs_now_and_then(
    setups: list[Setup], name: str, low: float, high: float
) -> None:
    assert low < np.mean([_odd(setup)[name] for setup in setups]) < high


def _odd(setup: Setup) -> dict[str, bool]:
    front, rear = np.mean(setup.car.wheel_ratio[:2]), np.mean(setup.car.wheel_ratio[2:])
    return {
        "pulse counters": {"pulses_FL", "pulses_FR", "pulses_RL", "pulses_RR"} <= {*setup.recorder.channels},
        "mixed rates": setup.recorder.wheel_rate_hz is not None,
        "counting unit": setup.unit.method == "counting",
        "substituting unit": setup.unit.jump_reaction == "substitute",
        "other tyres on one axle": bool(abs(front - rear) > 0.008),
        "queue or parking": bool({"queue", "parking"} & {*setup.drive.legs}),
        "motorway without end": setup.drive.legs == ("cruise",),
        "loose ground": setup.drive.loose_ground,
        "split grip": setup.drive.split_grip,
        "hard stops": setup.drive.hard_stop_ratio > 0.0,
        "cobbles": setup.drive.rough_ratio > 0.0,
    }
