"""Drops of a wheel: which samples count, and that a log knows a drop's place to a few degrees."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np

from triage.signals.analysis import analyse
from triage.signals.ring_drops import PlacedDrops, count_drops, place_drops, ring_bin
from triage.signals.ring_map import RingMap
from triage.simulator.road_test import RoadTest
from triage.simulator.setup import Setup
from triage.speed_log import SpeedLog


def test_bins_of_the_ring() -> None:
    angle = np.array([-1e-18, -0.001, 0.0, 0.4999, 0.5, 7.25, 0.99999])
    np.testing.assert_array_equal(ring_bin(angle), [95, 95, 0, 47, 48, 24, 95])


def _placed(rate: np.ndarray, dropped: np.ndarray) -> PlacedDrops:
    return PlacedDrops(
        depth_ratio=np.zeros(rate.size),
        seen=np.ones(rate.size, dtype=bool),
        exposed=np.ones(rate.size, dtype=bool),
        dropped=dropped,
        angle_rev=np.cumsum(rate) * 0.02,
        rate_revps=rate,
        period_s=0.02,
    )


def test_the_slowest_turns_with_enough_drops_are_used() -> None:
    rate = np.repeat([4.0, 12.0, 30.0], 4000)
    dropped = np.arange(rate.size) % 10 == 0
    counts = count_drops(_placed(rate, dropped))
    assert counts is not None
    assert counts.rate_revps == 4.0
    assert counts.step_rev == 0.08
    assert counts.drops.sum() == 400
    assert counts.exposure.sum() == 4000


def test_a_wheel_too_fast_for_its_samples_has_no_counts() -> None:
    assert count_drops(_placed(np.full(500, 30.0), np.ones(500, dtype=bool))) is None
    assert count_drops(_placed(np.full(500, 3.0), np.zeros(500, dtype=bool))) is None


def _drops_of_front_right(log: SpeedLog) -> PlacedDrops:
    analysis = analyse(log)
    return place_drops(
        analysis.clock,
        analysis.residuals,
        analysis.losses,
        row=1,
        angle_rev=analysis.paths[1].distance_m / 2.0,
    )


def test_a_dip_in_steps_counts_once_and_its_end_not_at_all(log_from: Callable[..., SpeedLog]) -> None:
    time = 0.02 * np.arange(4000)
    rng = np.random.default_rng(3)
    rows = 10.0 * (1.0 + 0.001 * rng.normal(size=(4, time.size)))
    for start in range(100, 3900, 50):
        rows[1, start : start + 4] *= (0.9, 0.8, 0.75, 0.9)
    placed = _drops_of_front_right(log_from(time, rows))
    np.testing.assert_array_equal(np.flatnonzero(placed.dropped), np.arange(100, 3900, 50))
    assert not placed.exposed[101:103].any()


def test_the_way_back_from_a_peak_is_no_drop(log_from: Callable[..., SpeedLog]) -> None:
    time = 0.02 * np.arange(4000)
    rng = np.random.default_rng(3)
    rows = 10.0 * (1.0 + 0.0003 * rng.normal(size=(4, time.size)))
    for start in range(100, 3900, 50):
        rows[1, start : start + 3] *= (1.1, 1.2, 1.08)
        rows[1, start + 20] *= 0.8
    placed = _drops_of_front_right(log_from(time, rows))
    np.testing.assert_array_equal(np.flatnonzero(placed.dropped), np.arange(120, 3900, 50))


def test_the_place_of_a_broken_spot_against_the_true_angle(
    simulated: Callable[..., RoadTest], plain_setup: Setup
) -> None:
    """The angle of the map has no zero of its own, so it is set against the true angle of the wheel."""
    setup = replace(plain_setup, drive=replace(plain_setup.drive, legs=("town",)))
    test = simulated("encoder-damage", "FR", 0.6, setup=setup, duration_s=180.0, seed=8)
    analysis = analyse(test.log)
    ring = analysis.rings[1]
    assert isinstance(ring, RingMap)
    true_rev = test.truth.angle_rev("FR", analysis.clock.time_s)
    zero_rev = np.angle(np.mean(np.exp(2j * np.pi * (true_rev - ring.angle_rev)))) / (2.0 * np.pi)
    (built_in,) = test.truth.sectors
    off = (ring.sectors[0].centre_rev + zero_rev - built_in.centre_rev + 0.5) % 1.0 - 0.5
    assert abs(off) < 3.0 * ring.sectors[0].centre_std_rev
    assert abs(off) < 20.0 / 360.0
