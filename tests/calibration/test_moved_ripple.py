"""A ripple that belongs to the wheel goes with the wheel, what the road did stays in its time."""

from __future__ import annotations

import numpy as np
import pytest

from triage.calibration.moved_ripple import turn_with_other_tyre
from triage.simulator.vehicle_path import GRID_S

SECONDS = 120.0


def _rippled(amplitude: float) -> np.ndarray:
    """Rate of a wheel that turns 7 times a second with a swing once per turn; angle found by iteration."""
    time_s = np.arange(round(SECONDS / GRID_S)) * GRID_S
    slow = 7.0 + 0.5 * np.sin(2.0 * np.pi * time_s / 40.0)
    rate = slow
    for _ in range(6):
        angle = np.cumsum(rate) * GRID_S
        rate = slow * (1.0 + amplitude * np.cos(2.0 * np.pi * angle))
    return rate


def _order_amplitude(rate: np.ndarray, order: float) -> float:
    """Amplitude of the relative swing at an order of the wheel's own angle, by a direct sum."""
    angle = np.cumsum(rate) * GRID_S
    slow = np.convolve(rate, np.ones(143) / 143.0, mode="same")
    inside = slice(2000, -2000)
    quick = (rate / slow - 1.0)[inside]
    return float(2.0 * abs(np.mean(quick * np.exp(-2j * np.pi * order * angle[inside]))))


def test_the_ripple_repeats_with_the_new_turns() -> None:
    ratio = np.full(round(SECONDS / GRID_S), 1.02)
    turned = turn_with_other_tyre(_rippled(0.004), ratio)
    kept = _order_amplitude(turned, 1.0)
    assert kept == pytest.approx(_order_amplitude(_rippled(0.004), 1.0), rel=0.1)
    assert _order_amplitude(turned, 1.0 / 1.02) < 0.1 * kept
    # Without moving it along, the ripple would stay where the old turns were.
    assert _order_amplitude(_rippled(0.004) * 1.02, 1.0) < 0.2 * kept


def test_the_same_tyre_changes_nothing() -> None:
    rate = _rippled(0.004)
    np.testing.assert_allclose(turn_with_other_tyre(rate, np.ones(rate.size)), rate, rtol=1e-9)


def test_a_jolt_of_the_road_stays_in_its_time() -> None:
    rate = _rippled(0.0)
    rate[60_000:60_050] *= 1.5
    turned = turn_with_other_tyre(rate, np.full(rate.size, 0.98))
    np.testing.assert_allclose(turned, 0.98 * rate, rtol=0.005)


def test_a_standing_wheel_is_left_alone() -> None:
    still = np.zeros(5000)
    np.testing.assert_array_equal(turn_with_other_tyre(still, np.full(5000, 1.02)), still)
