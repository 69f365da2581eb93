"""Cutting the drive into manoeuvres."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from triage.signals.manoeuvres import KINDS, find_manoeuvres, longitudinal_acceleration

PERIOD_S = 0.02


def _kinds(speed: np.ndarray, curvature: np.ndarray) -> list[str]:
    time = PERIOD_S * np.arange(speed.size)
    return [one.kind for one in find_manoeuvres(time, speed, curvature, period_s=PERIOD_S)]


def test_a_drive_is_told_in_order() -> None:
    time = PERIOD_S * np.arange(3500)
    knots_s = [0, 5, 12, 30, 35, 50, 56, 60, 70]
    speed = np.interp(time, knots_s, [0, 0, 12, 12, 12, 12, 0, 0, 0])
    curvature = np.where((time > 20) & (time < 30), 0.05, np.where((time > 35) & (time < 45), -0.05, 0.0))
    kinds = _kinds(speed, curvature)
    expected = [
        "standstill",
        "pull-away",
        "straight",
        "left",
        "straight",
        "right",
        "straight",
        "braking",
        "standstill",
    ]
    assert kinds == expected


def test_slow_rolling_has_its_own_name() -> None:
    assert _kinds(np.full(500, 1.5), np.zeros(500)) == ["slow-roll"]


@settings(max_examples=50, deadline=None)
@given(seed=st.integers(0, 10_000), size=st.integers(1, 400))
def test_manoeuvres_cover_the_log_without_overlap(seed: int, size: int) -> None:
    rng = np.random.default_rng(seed)
    time = PERIOD_S * np.arange(size)
    speed = np.abs(np.cumsum(rng.normal(0.0, 0.3, size)))
    speed[rng.random(size) < 0.05] = np.nan
    found = find_manoeuvres(time, speed, 0.03 * rng.normal(size=size), period_s=PERIOD_S)
    assert found[0].first == 0
    assert found[-1].stop == size
    for one, after in pairwise(found):
        assert one.stop == after.first
        assert one.kind != after.kind
    assert all(
        one.kind in KINDS and one.stop > one.first and np.isfinite(one.mean_speed_mps) for one in found
    )


def test_nothing_recorded_no_manoeuvre() -> None:
    assert find_manoeuvres(np.zeros(0), np.zeros(0), np.zeros(0), period_s=0.0) == ()


def test_acceleration_of_a_ramp() -> None:
    time = PERIOD_S * np.arange(1000)
    got = longitudinal_acceleration(time, 3.0 + 1.5 * time, PERIOD_S)
    np.testing.assert_allclose(got[30:-30], 1.5, rtol=0.05)
    assert longitudinal_acceleration(time[:2], time[:2], PERIOD_S) == pytest.approx([0.0, 0.0])
