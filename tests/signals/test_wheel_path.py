"""Angle of each wheel from its own counting, and its ripple over distance."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from triage.signals.analysis import analyse
from triage.signals.stretches import COHERENT_M, MOST_STRETCHES
from triage.signals.vehicle_reference import wheel_speed_factors
from triage.signals.wheel_path import CLIP_RATIO, along_neighbours
from triage.speed_log import FloatArray, SpeedLog
from triage.vehicle import Vehicle

TIME = 0.01 * np.arange(12_000)
SPEED = 14.0 + 4.0 * np.sin(TIME / 5.0)


def _turn(circumference_m: float, amplitude: float) -> FloatArray:
    """A wheel with a once-per-turn ripple: its angle is integrated step by step."""
    distance, rows = 0.0, np.empty(TIME.size)
    for index, speed in enumerate(SPEED):
        rows[index] = speed * (1.0 + amplitude * np.cos(2.0 * np.pi * distance / circumference_m))
        distance += rows[index] * 0.01
    return rows


def _rows(amplitude: float = 0.003) -> FloatArray:
    rng = np.random.default_rng(1)
    return np.stack([_turn(2.0, amplitude) for _ in range(4)]) * (
        1.0 + 0.001 * rng.normal(size=(4, TIME.size))
    )


def test_own_distance_is_the_integral_of_the_speed(log_from: Callable[..., SpeedLog]) -> None:
    rows = _rows()
    for path, row in zip(analyse(log_from(TIME, rows)).paths, rows, strict=True):
        assert path.distance_m[0] == 0.0
        assert (np.diff(path.distance_m) >= 0.0).all()
        assert path.distance_m[-1] == pytest.approx(np.trapezoid(row, TIME), rel=1e-6)
        known = np.isfinite(path.ripple_ratio)
        assert known.mean() > 0.95
        np.testing.assert_array_equal(path.weight[~known], 0.0)
        assert (path.weight[known] > 0.0).all()
        assert np.abs(path.ripple_ratio[known]).max() <= CLIP_RATIO


def test_a_drop_out_does_not_lose_the_angle(log_from: Callable[..., SpeedLog]) -> None:
    rows = _rows()
    whole = analyse(log_from(TIME, rows)).own_lines[2]
    rows[2, 4000:4050] = 0.0
    path = analyse(log_from(TIME, rows))
    travelled = np.trapezoid(SPEED, TIME)
    assert path.paths[2].distance_m[-1] == pytest.approx(travelled, abs=0.3)
    np.testing.assert_array_equal(path.paths[2].weight[4000:4050], 0.0)
    assert path.own_lines[2].circumference_m == pytest.approx(whole.circumference_m, rel=5e-4)


def test_what_all_wheels_do_together_is_no_ripple(log_from: Callable[..., SpeedLog]) -> None:
    """A jerky foot on the pedal moves all wheels; it may not be left in the ripple of any."""
    rng = np.random.default_rng(2)
    jerk = 1.0 + 0.003 * np.sin(2.0 * np.pi * 6.3 * TIME)
    rows = SPEED * jerk * (1.0 + 0.001 * rng.normal(size=(4, TIME.size)))
    for path in analyse(log_from(TIME, rows)).paths:
        known = np.isfinite(path.ripple_ratio)
        assert path.leak_ratio == pytest.approx(1.0, abs=0.2)
        assert np.std(path.ripple_ratio[known]) < 0.0016


@pytest.mark.parametrize("row", range(4))
def test_the_neighbours_tell_the_same_distance_in_curves(row: int, log_from: Callable[..., SpeedLog]) -> None:
    curvature = 0.02 * np.sin(TIME / 7.0)
    rng = np.random.default_rng(3)
    rows = SPEED * wheel_speed_factors(curvature, Vehicle()) * (1.0 + 0.001 * rng.normal(size=(4, TIME.size)))
    paths = analyse(log_from(TIME, rows)).paths
    told = along_neighbours(paths, row)
    np.testing.assert_allclose(told.distance_m, paths[row].distance_m, atol=1.0, rtol=2e-3)
    np.testing.assert_array_equal(told.ripple_ratio, paths[row].ripple_ratio)


def test_a_long_drive_is_followed_throughout_only_where_losses_are_to_be_placed(
    log_from: Callable[..., SpeedLog],
) -> None:
    time_s = 0.02 * np.arange(60_000)
    distance_m = 25.0 * time_s
    rng = np.random.default_rng(4)
    rows = 25.0 * (1.0 + 0.002 * np.cos(np.pi * distance_m) + 0.001 * rng.normal(size=(4, time_s.size)))
    quiet = analyse(log_from(time_s, rows))
    rows[1, 3000::3000] *= 0.8
    lossy = analyse(log_from(time_s, rows))
    followed_m = MOST_STRETCHES * COHERENT_M
    for row in range(4):
        assert np.count_nonzero(quiet.paths[row].weight) * 0.5 == pytest.approx(followed_m, rel=0.03)
        assert quiet.lines[row].circumference_m == pytest.approx(2.0, rel=1e-3)
        assert quiet.lines[row].revolutions == pytest.approx(followed_m / 2.0, rel=0.03)
        assert quiet.own_spectra[row].count == MOST_STRETCHES
    assert np.count_nonzero(lossy.paths[1].weight) > 0.98 * time_s.size
    assert np.count_nonzero(lossy.paths[0].weight) < 0.75 * time_s.size
