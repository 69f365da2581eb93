"""Measurements of losses: each put by hand into a healthy drive, and found in its number and seconds."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from triage.signals.measurement import Measurement
from triage.speed_log import FloatArray, SpeedLog

Values = dict
Measure = Callable[..., Values]

TIME = 0.01 * np.arange(12_000)


def _rows(seed: int = 1) -> FloatArray:
    rng = np.random.default_rng(seed)
    return (14.0 + 3.0 * np.sin(TIME / 4.0)) * (1.0 + 0.0015 * rng.normal(size=(4, TIME.size)))


def _covers(one: Measurement, second: float) -> bool:
    return any(first <= second <= last for first, last in one.spans)


def test_drop_outs_are_counted_timed_and_placed(log_from: Callable[..., SpeedLog], values: Measure) -> None:
    rows = _rows()
    begins = np.arange(6.0, 114.0, 6.0)
    for begin in begins:
        rows[1, round(begin / 0.01) : round(begin / 0.01) + 25] = 0.0
    got = values(log_from(TIME, rows))
    rate, length, share = (got[name, "FR"] for name in ("drop-out-rate", "drop-out-length", "dead-share"))
    assert rate.value == pytest.approx(begins.size / 2.0, rel=0.01)
    assert rate.std_uncertainty == pytest.approx(rate.value / np.sqrt(begins.size), rel=0.05)
    assert length.value == pytest.approx(0.25, abs=2.0 * length.std_uncertainty)
    assert share.value == pytest.approx(100.0 * 0.25 * begins.size / 120.0, rel=0.02)
    for one in (rate, length, share):
        assert all(_covers(one, begin + 0.1) for begin in begins)
    assert all(got["drop-out-rate", corner].value == 0.0 for corner in ("FL", "RL", "RR"))


def test_drop_outs_in_clusters_and_evenly_spread(log_from: Callable[..., SpeedLog], values: Measure) -> None:
    even, bursts = _rows(), _rows()
    for index in range(40):
        even[0, 150 + 295 * index :][:5] = 0.0
        bursts[0, (1500, 4500, 8000, 11_000)[index % 4] + 12 * index :][:5] = 0.0
    spread = values(log_from(TIME, even))["drop-out-clustering", "FL"]
    dense = values(log_from(TIME, bursts))["drop-out-clustering", "FL"]
    assert spread.value < 1.0
    assert dense.value > 4.0
    assert spread.std_uncertainty == pytest.approx(np.sqrt(2.0 / 22.0), rel=0.1)


@pytest.mark.parametrize(
    ("factor", "name", "other"), [(0.9, "dip-share", "spike-share"), (1.1, "spike-share", "dip-share")]
)
def test_brief_deviations_one_way(
    factor: float, name: str, other: str, log_from: Callable[..., SpeedLog], values: Measure
) -> None:
    rows = _rows()
    hit = np.arange(300, 11_700, 57)
    rows[3, hit] *= factor
    got = values(log_from(TIME, rows))
    assert got[name, "RR"].value == pytest.approx(100.0 * hit.size / TIME.size, rel=0.05)
    assert got[other, "RR"].value == 0.0
    assert got["swing-share", "RR"].value == pytest.approx(0.0, abs=0.05)
    assert got[name, "RL"].value == pytest.approx(0.0, abs=0.02)


def test_deviations_both_ways_are_swings(log_from: Callable[..., SpeedLog], values: Measure) -> None:
    rows = _rows()
    rows[3, 300:11_700:60] *= 0.9
    rows[3, 330:11_700:60] *= 1.1
    got = values(log_from(TIME, rows))
    assert got["swing-share", "RR"].value == pytest.approx(100.0 * 380 / TIME.size, rel=0.05)
    assert got["dip-share", "RR"].value == pytest.approx(0.0, abs=0.02)
    assert got["spike-share", "RR"].value == pytest.approx(0.0, abs=0.02)


def test_a_frozen_value_is_measured_as_a_share(log_from: Callable[..., SpeedLog], values: Measure) -> None:
    rows = _rows()
    rows[2, 3300:3900] = rows[2, 3300]
    got = values(log_from(TIME, rows))
    assert got["stuck-share", "RL"].value == pytest.approx(5.0, abs=0.2)
    assert _covers(got["stuck-share", "RL"], 36.0)
    assert got["stuck-share", "RR"].value == 0.0


def test_a_wheel_frozen_while_the_car_stops_is_stuck_though_hardly_moving(
    log_from: Callable[..., SpeedLog], values: Measure
) -> None:
    speed = np.interp(TIME, [0.0, 9.0, 12.0, 120.0], [8.0, 8.0, 0.0, 0.0])
    rows = speed * (1.0 + 0.0015 * np.random.default_rng(1).normal(size=(4, TIME.size)))
    rows[1, 950:] = rows[1, 950]
    got = values(log_from(TIME, rows))
    assert got["stuck-share", "FR"].value > 80.0


def test_losses_of_all_wheels_are_the_vehicles(log_from: Callable[..., SpeedLog], values: Measure) -> None:
    rows = _rows()
    for begin in range(1000, 11_000, 1000):
        rows[:, begin : begin + 10] = np.nan
    got = values(log_from(TIME, rows))
    joint = got["joint-drop-out-rate", "vehicle"]
    assert joint.value == pytest.approx(5.0, rel=0.1)
    assert _covers(joint, 50.05)
    assert all(got["drop-out-rate", corner].value == 0.0 for corner in ("FL", "FR", "RL", "RR"))


def test_noise_of_one_wheel_against_the_others(log_from: Callable[..., SpeedLog], values: Measure) -> None:
    rng = np.random.default_rng(2)
    sigma = np.array([[0.002], [0.002], [0.006], [0.002]])
    rows = (14.0 + 3.0 * np.sin(TIME / 4.0)) * (1.0 + sigma * rng.normal(size=(4, TIME.size)))
    got = values(log_from(TIME, rows))
    # Each deviation holds the wheel's own noise and 0.67 of one wheel's, that of the middle of three others.
    expected = np.hypot(3.0, 0.67) / np.hypot(1.0, 0.75)
    assert got["noise-ratio", "RL"].value == pytest.approx(expected, rel=0.1)
    assert got["noise-ratio", "FL"].value == pytest.approx(1.0, rel=0.1)


def test_losses_against_speed(log_from: Callable[..., SpeedLog], values: Measure) -> None:
    speed = 12.0 + 8.0 * np.sin(TIME / 6.0)
    rows = speed * (1.0 + 0.0015 * np.random.default_rng(3).normal(size=(4, TIME.size)))
    fast, slow = rows.copy(), rows.copy()
    hit = np.arange(0, TIME.size, 41)
    fast[0, hit[speed[hit] > 14.0]] *= 0.8
    slow[0, hit[speed[hit] < 10.0]] *= 0.8
    assert values(log_from(TIME, fast))["speed-loss-slope", "FL"].value > 2.0
    assert values(log_from(TIME, slow))["speed-loss-slope", "FL"].value < -2.0


def test_losses_in_every_turn_keep_step_with_the_speed_however_it_varies(
    log_from: Callable[..., SpeedLog], values: Measure
) -> None:
    for swing_mps in (4.0, 8.0):
        speed = 12.0 + swing_mps * np.sin(TIME / 6.0)
        rows = speed * (1.0 + 0.0015 * np.random.default_rng(3).normal(size=(4, TIME.size)))
        turns = np.cumsum(speed) * (TIME[1] - TIME[0]) / 8.0
        rows[0, 1:][np.diff(np.floor(turns)) > 0] *= 0.8
        slope = values(log_from(TIME, rows))["speed-loss-slope", "FL"]
        assert abs(slope.value - 1.0) < 3.0 * slope.std_uncertainty


def test_constant_speed_shows_equal_noise_and_no_fault(
    log_from: Callable[..., SpeedLog], values: Measure
) -> None:
    got = values(log_from(TIME, np.full((4, TIME.size), 15.0)))
    assert all(one.value == 1.0 for (name, _), one in got.items() if name == "noise-ratio")
    assert got["stuck-share", "FL"].value == 0.0
    assert got["ratio-offset", "FL"].value == 0.0
