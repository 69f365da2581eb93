"""One spot from the mean course: behind units worked out pulse by pulse; silence for swings and chance."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from triage.signals.ring_course import RingCourse, course_of
from triage.signals.ring_response import RING_BINS
from triage.signals.ring_sectors import BadSector
from triage.signals.ring_spot import RingSpot, find_spot, placed_by_spot, spot_sector
from triage.speed_log import FloatArray

PULSES = 60
RATE_REVPS = 4.17
TURNS = 240
SPOT_PULSE = 17
CYCLE_S = 0.010


def _pulse_times(
    rng: np.random.Generator, pulse_rev: FloatArray
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Times of all pulses of a wheel that turns a little unevenly, and its angle over time."""
    time_s = np.arange(0.0, TURNS / RATE_REVPS, 0.001)
    # A driver keeps the speed to a per cent, so that cycles and samples fall everywhere.
    uneven = 0.012 * np.sin(2.0 * np.pi * (time_s / 7.3 + rng.uniform()))
    angle_rev = RATE_REVPS * (time_s + 0.001 * np.cumsum(uneven))
    passed = (np.arange(TURNS)[:, None] + pulse_rev[None, :]).ravel()
    return np.interp(np.sort(passed), angle_rev, time_s), time_s, angle_rev


def _sampled(ends_s: FloatArray, speed: FloatArray, time_s: FloatArray, angle_rev: FloatArray) -> RingCourse:
    rng = np.random.default_rng(5)
    at_s = np.sort(rng.uniform(2.0, TURNS / RATE_REVPS - 2.0, 3000))
    seen = speed[np.searchsorted(ends_s, at_s, side="right") - 1]
    place = (np.interp(at_s, time_s, angle_rev) % 1.0 * RING_BINS).astype(int)
    course = course_of(
        seen / np.median(seen) - 1.0, place, np.full(at_s.size, RATE_REVPS), around_revps=RATE_REVPS
    )
    assert course is not None
    return course


def _counting(pulse_rev: FloatArray, window_s: float, filter_s: float, seed: int = 1) -> RingCourse:
    """Count the pulses of the last so many seconds once a cycle, filtered."""
    pulses_s, time_s, angle_rev = _pulse_times(np.random.default_rng(seed), pulse_rev)
    ends_s = np.arange(0.5, TURNS / RATE_REVPS - 1.0, CYCLE_S)
    count = np.searchsorted(pulses_s, ends_s) - np.searchsorted(pulses_s, ends_s - window_s)
    speed, gain = count.astype(float), 1.0 - np.exp(-CYCLE_S / filter_s)
    for n in range(1, speed.size):
        speed[n] = speed[n - 1] + gain * (speed[n] - speed[n - 1])
    return _sampled(ends_s, speed, time_s, angle_rev)


def _timing(pulse_rev: FloatArray, cycles: int, seed: int = 1) -> RingCourse:
    """Pulses over the time between the last ones before the ends of cycles, as most units do."""
    pulses_s, time_s, angle_rev = _pulse_times(np.random.default_rng(seed), pulse_rev)
    ends_s = np.arange(0.5, TURNS / RATE_REVPS - 1.0, CYCLE_S)
    last = np.searchsorted(pulses_s, ends_s) - 1
    before = np.searchsorted(pulses_s, ends_s - cycles * CYCLE_S) - 1
    speed = (last - before) / (pulses_s[last] - pulses_s[before])
    return _sampled(ends_s, speed, time_s, angle_rev)


def _sound() -> FloatArray:
    return np.arange(PULSES) / PULSES


def _off_deg(spot: RingSpot | None, middle_pulse: float) -> float:
    assert spot is not None
    return 360.0 * ((spot.centre_rev - middle_pulse / PULSES + 0.5) % 1.0 - 0.5)


@pytest.mark.parametrize(("window_s", "filter_s"), [(0.06, 0.02), (0.08, 0.02), (0.1, 0.03)])
@pytest.mark.parametrize("spot", [4, SPOT_PULSE, 41])
def test_a_missing_pulse_behind_a_unit_that_counts(window_s: float, filter_s: float, spot: int) -> None:
    # The tooth between its own border and the next one is gone.
    found = find_spot(_counting(np.delete(_sound(), spot), window_s, filter_s))
    assert abs(_off_deg(found, spot + 0.5)) < 10.0
    assert found is not None
    assert found.clear
    assert found.averaged_long
    assert not found.moved
    assert found.lost_rev == pytest.approx(1.0 / PULSES, rel=0.25)
    assert found.window_s == pytest.approx(window_s, rel=0.4)


@pytest.mark.parametrize("cycles", [1, 2, 4])
def test_a_missing_pulse_behind_a_unit_that_times(cycles: int) -> None:
    found = find_spot(_timing(np.delete(_sound(), SPOT_PULSE), cycles))
    assert abs(_off_deg(found, SPOT_PULSE + 0.5)) < 10.0
    assert found is not None
    assert found.clear
    assert not found.moved
    assert found.lost_rev == pytest.approx(1.0 / PULSES, rel=0.4)


@pytest.mark.parametrize("cycles", [1, 2, 4])
@pytest.mark.parametrize("moved_pitch", [-0.35, 0.35])
def test_a_moved_pulse_lies_where_it_shows_first_high_or_low(cycles: int, moved_pitch: float) -> None:
    """Behind a unit that averages over four cycles the drop comes 60 degrees after a tooth that is early."""
    pulse_rev = _sound()
    pulse_rev[SPOT_PULSE] += moved_pitch / PULSES
    found = find_spot(_timing(pulse_rev, cycles))
    assert found is not None
    assert found.moved
    assert abs(_off_deg(found, SPOT_PULSE + 0.5)) < 10.0


def _course(mean_ratio: FloatArray, noise_power: float) -> RingCourse:
    return RingCourse(mean_ratio, np.full(RING_BINS, 100.0 * noise_power), noise_power, RATE_REVPS)


@pytest.mark.parametrize("orders", [(1,), (1, 2), (1, 2, 3)])
def test_a_swing_is_no_spot(orders: tuple[int, ...]) -> None:
    rng = np.random.default_rng(4)
    turn = 2.0 * np.pi * np.arange(RING_BINS) / RING_BINS
    for _ in range(40):
        swing = sum(0.01 / order * np.cos(order * turn + rng.uniform(0.0, 2.0 * np.pi)) for order in orders)
        spot = find_spot(_course(swing + 3e-4 * rng.standard_normal(RING_BINS), 9e-8))
        assert spot is not None
        assert not spot.clear


def test_chance_is_no_spot() -> None:
    rng = np.random.default_rng(6)
    for _ in range(100):
        spot = find_spot(_course(1e-3 * rng.standard_normal(RING_BINS), 1e-6))
        assert spot is None or not spot.clear


def test_a_level_course_has_no_spot() -> None:
    assert find_spot(_course(np.zeros(RING_BINS), 0.0)) is None


def _sector(centre_rev: float) -> BadSector:
    return BadSector(centre_rev, 0.03, 0.03, 0.02, 0.9, 0.05)


def test_drops_and_course_meet_in_the_middle() -> None:
    spot = find_spot(_timing(np.delete(_sound(), SPOT_PULSE), 1))
    assert spot is not None
    near = _sector((spot.centre_rev + 0.02) % 1.0)
    placed, other = placed_by_spot((near, _sector(0.9)), spot)
    low, high = sorted((spot.centre_rev, near.centre_rev + 0.014 - spot.lost_rev / 2.0))
    assert low < placed.centre_rev < high
    assert other == _sector(0.9)


def test_a_wide_sector_keeps_its_place_where_turns_differ() -> None:
    """Even dirt has the mean course of a spot behind a unit that averages for long."""
    spot = find_spot(_counting(np.delete(_sound(), SPOT_PULSE), 0.1, 0.03))
    assert spot is not None
    assert spot.restlessness < 2.0
    wide = (replace(_sector(0.1), width_rev=0.2),)
    assert placed_by_spot(wide, spot)[0].centre_rev == spot.centre_rev
    assert placed_by_spot(wide, replace(spot, restlessness=20.0)) == wide


def test_a_course_that_no_spot_explains_moves_nothing() -> None:
    spot = find_spot(_timing(np.delete(_sound(), SPOT_PULSE), 1))
    assert spot is not None
    sectors = (_sector(0.1),)
    assert placed_by_spot(sectors, replace(spot, rest_ratio=0.5)) == sectors
    assert placed_by_spot((), spot) == ()


def test_a_spot_without_drops_is_told_without_their_number() -> None:
    spot = find_spot(_counting(np.delete(_sound(), SPOT_PULSE), 0.12, 0.04))
    assert spot is not None
    sector = spot_sector(spot)
    assert sector.centre_rev == spot.centre_rev
    assert sector.width_rev >= 1.0 / PULSES * 0.7
    assert np.isnan(sector.drops_per_turn)
