"""Disturbance over the wheel's angle, and the angle kept true by the wheel's own pattern."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from triage.signals.analysis import Analysis, analyse
from triage.signals.measurement import NotMeasurable
from triage.signals.ring_angle import follow_angle
from triage.signals.ring_map import BINS, RingMap, variance_explained
from triage.signals.ring_response import RING_BINS
from triage.signals.wheel_path import WheelPath
from triage.simulator.road_test import RoadTest
from triage.simulator.setup import Setup
from triage.speed_log import SpeedLog


def test_variance_explained_by_the_angle() -> None:
    rng = np.random.default_rng(1)
    angle = rng.integers(0, BINS, 20_000)
    pattern = rng.normal(size=BINS)
    for noise in (0.0, 0.5, 2.0):
        value = pattern[angle] + noise * rng.normal(size=angle.size)
        share, std = variance_explained(value, angle, BINS)
        expected = pattern.var() / (pattern.var() + noise**2)
        assert share == pytest.approx(expected, abs=0.05)
        assert std > 0.0
    share, std = variance_explained(rng.normal(size=20_000), angle, BINS)
    assert abs(share) < 5.0 * std


def test_chance_does_not_feign_a_pattern() -> None:
    """Few samples for each bin explain much by chance alone; the correction must take that out on average."""
    rng = np.random.default_rng(2)
    shares = [
        variance_explained(rng.normal(size=240), rng.integers(0, BINS, 240), BINS)[0] for _ in range(300)
    ]
    assert np.mean(shares) == pytest.approx(0.0, abs=0.02)


@pytest.mark.parametrize("value", [np.zeros(500), np.zeros(3)])
def test_constant_values_explain_nothing(value: np.ndarray) -> None:
    share, _ = variance_explained(value, np.arange(value.size) % BINS, BINS)
    assert share == 0.0


def _pattern_path(seed: int, slip_rev: float) -> tuple[WheelPath, np.ndarray, np.ndarray]:
    """A peaky pattern whose true angle jumps by ``slip_rev`` at every stop, unseen by the distance."""
    rng = np.random.default_rng(seed)
    time = 0.01 * np.arange(30_000)
    stop = np.arange(30_000) // 5000
    time = time + 2.0 * stop
    distance = 0.12 * np.arange(30_000.0)
    true_rev = distance / 2.0 + slip_rev * stop
    ripple = -0.02 * (np.abs(np.mod(true_rev, 1.0) - 0.5) < 0.06) + 0.004 * rng.normal(size=30_000)
    return WheelPath(distance, ripple, np.ones(30_000), 0.0), time, true_rev


@pytest.mark.parametrize("slip_rev", [0.0, 0.17, 0.4])
def test_angle_is_kept_over_stops(slip_rev: float) -> None:
    path, time, true_rev = _pattern_path(3, slip_rev)
    followed = follow_angle(path, time, 2.0)
    off = np.mod(followed - true_rev + 0.5, 1.0) - 0.5
    off -= np.round(np.median(off) * 96) / 96
    assert np.abs(off).max() < 0.03
    plain = path.distance_m / 2.0
    if slip_rev:
        spread = np.abs(np.mod(plain - true_rev - np.median(plain - true_rev) + 0.5, 1.0) - 0.5).max()
        assert spread > 0.15


def test_a_short_path_keeps_its_plain_angle() -> None:
    path = WheelPath(np.arange(10.0), np.zeros(10), np.ones(10), 0.0)
    np.testing.assert_allclose(follow_angle(path, np.arange(10.0), 2.0), np.arange(10.0) / 2.0)
    empty = WheelPath(np.arange(10.0), np.full(10, np.nan), np.zeros(10), 0.0)
    np.testing.assert_allclose(follow_angle(empty, np.arange(10.0), 2.0), np.arange(10.0) / 2.0)


def _ring(analysis: Analysis, row: int) -> RingMap:
    ring = analysis.rings[row]
    assert isinstance(ring, RingMap)
    return ring


def test_debris_locks_to_the_angle_and_leaves_part_of_the_ring_alone(
    simulated: Callable[..., RoadTest], plain_setup: Setup
) -> None:
    log = simulated("encoder-debris", "RL", 0.6, setup=plain_setup, duration_s=180.0, seed=4).log
    analysis = analyse(log)
    struck, sound = _ring(analysis, 2), _ring(analysis, 3)
    assert struck.onset_count > 50
    assert struck.onset_lock > 5.0 * struck.onset_lock_std
    assert struck.explained_ratio > 3.0 * sound.explained_ratio
    assert 0.05 < struck.width_rev < 0.6
    assert struck.profile.mean_ratio.shape == struck.profile.loss_rate.shape == (RING_BINS,)
    assert struck.sectors
    assert struck.profile.loss_rate.max() > 3.0 * np.median(struck.profile.loss_rate)


def test_a_wide_gap_all_round_does_not_lock(simulated: Callable[..., RoadTest], plain_setup: Setup) -> None:
    log = simulated("air-gap", "FR", 0.6, setup=plain_setup, duration_s=180.0, seed=4).log
    debris = simulated("encoder-debris", "FR", 0.6, setup=plain_setup, duration_s=180.0, seed=4).log
    gap, dirt = _ring(analyse(log), 1), _ring(analyse(debris), 1)
    assert gap.onset_lock < 0.5 * dirt.onset_lock


def test_damage_is_narrower_than_debris(simulated: Callable[..., RoadTest], plain_setup: Setup) -> None:
    widths = {
        cause: _ring(
            analyse(simulated(cause, "RR", 0.6, setup=plain_setup, duration_s=180.0, seed=6).log), 3
        ).width_rev
        for cause in ("encoder-damage", "encoder-debris")
    }
    assert widths["encoder-damage"] < widths["encoder-debris"]


def test_no_revolution_no_ring(log_from: Callable[..., SpeedLog]) -> None:
    rng = np.random.default_rng(5)
    time = 0.01 * np.arange(3000)
    rows = 10.0 * (1.0 + 0.002 * rng.normal(size=(4, 3000)))
    rings = analyse(log_from(time, rows)).rings
    for ring, corner in zip(rings, ("FL", "FR", "RL", "RR"), strict=True):
        assert isinstance(ring, NotMeasurable)
        assert ring.corner == corner
        assert "minute" in ring.needed


def test_a_wheel_without_a_line_takes_the_others_length(log_from: Callable[..., SpeedLog]) -> None:
    rng = np.random.default_rng(7)
    time = 0.01 * np.arange(12_000)
    speed = 14.0 + 4.0 * np.sin(time / 5.0)
    distance = np.cumsum(speed) * 0.01
    rows = speed * (1.0 + 0.002 * rng.normal(size=(4, time.size)))
    rows[1:] *= 1.0 + 0.002 * np.cos(2.0 * np.pi * distance / 2.0)
    # What the three others do alike would be taken for the car's own movement, so their phases differ.
    rows[2] /= 1.0 + 0.002 * np.cos(2.0 * np.pi * distance / 2.0)
    rows[2] *= 1.0 + 0.002 * np.cos(2.0 * np.pi * distance / 2.0 + 2.1)
    rows[3] /= 1.0 + 0.002 * np.cos(2.0 * np.pi * distance / 2.0)
    rows[3] *= 1.0 + 0.002 * np.cos(2.0 * np.pi * distance / 2.0 + 4.2)
    analysis = analyse(log_from(time, rows))
    rings = [_ring(analysis, row) for row in range(4)]
    assert [ring.own_line for ring in rings] == [False, True, True, True]
    assert all(ring.circumference_m == pytest.approx(2.0, rel=0.003) for ring in rings)
