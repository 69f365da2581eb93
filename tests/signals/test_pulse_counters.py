"""Exact angle, pulses of a turn and speeds without pulses, from counters whose truth is known."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.signals.analysis import analyse
from triage.signals.conditioning import put_on_common_clock
from triage.signals.pulse_counters import find_turn_pulses, gather_counters
from triage.simulator.road_test import RoadTest
from triage.simulator.setup import Setup
from triage.speed_log import Channel, FloatArray, SpeedLog

TIME = 0.01 * np.arange(9000)
SPEED = 12.0 + 4.0 * np.sin(TIME / 6.0)
PER_METRE = 48.0


def with_counters(log: SpeedLog, ways: FloatArray, every: int = 2) -> SpeedLog:
    counters = {
        f"pulses_{corner}": Channel(TIME[::every], np.floor(PER_METRE * way[::every]), corner)
        for corner, way in zip(CORNERS, ways, strict=True)
    }
    return replace(log, channels=counters)


def way_of(speed: FloatArray) -> FloatArray:
    return np.concatenate(([0.0], np.cumsum((speed[1:] + speed[:-1]) / 2.0 * 0.01)))


def test_the_distance_is_that_of_the_count_where_the_speed_drifts(
    log_from: Callable[..., SpeedLog],
) -> None:
    """A unit whose reading drifts by 1 % with the course of the speed: only the count is right."""
    true = np.stack([SPEED] * 4)
    read = true * (1.0 + 0.01 * np.sin(TIME / 6.0 + 0.5))
    ways = np.stack([way_of(row) for row in true])
    log = log_from(TIME, read)
    drifting = analyse(log).paths[0].distance_m
    exact = analyse(with_counters(log, ways)).paths[0].distance_m

    def worst(distance: FloatArray) -> float:
        fit = np.polyfit(ways[0], distance, 1)
        return float(np.abs(distance - np.polyval(fit, ways[0])).max())

    assert worst(drifting) > 0.3
    assert worst(exact) < 0.03


def test_a_drop_out_loses_pulses_but_not_the_angle(log_from: Callable[..., SpeedLog]) -> None:
    rng = np.random.default_rng(1)
    rows = np.stack([SPEED] * 4) * (1.0 + 0.001 * rng.normal(size=(4, TIME.size)))
    turned = rows.copy()
    rows[2, 4000:4050] = turned[2, 4000:4050] = 0.0
    log = with_counters(log_from(TIME, rows), np.stack([way_of(row) for row in turned]))
    analysis = analyse(log)
    assert analysis.counters is not None
    counted_m = np.nanmax(analysis.counters.count[2]) / PER_METRE
    assert counted_m < way_of(SPEED)[-1] - 5.0
    assert analysis.paths[2].distance_m[-1] == pytest.approx(way_of(SPEED)[-1], abs=0.4)


def test_a_speed_that_the_counter_does_not_support_is_seen(log_from: Callable[..., SpeedLog]) -> None:
    rows = np.stack([SPEED] * 4)
    turned = rows.copy()
    turned[1, 3000:3100] = 0.0
    log = with_counters(log_from(TIME, rows), np.stack([way_of(row) for row in turned]))
    counters = gather_counters(log, put_on_common_clock(log))
    assert counters is not None
    found = TIME[counters.unsupported[1]]
    assert found.size == pytest.approx(100, abs=25)
    assert found.min() > 29.8
    assert found.max() < 31.2
    assert not counters.unsupported[[0, 2, 3]].any()


def test_a_counter_that_covers_too_little_is_not_used(log_from: Callable[..., SpeedLog]) -> None:
    log = with_counters(log_from(TIME, np.stack([SPEED] * 4)), np.stack([way_of(SPEED)] * 4))
    half = {name: Channel(c.time_s[:2000], c.value[:2000], c.source) for name, c in log.channels.items()}
    counters = gather_counters(replace(log, channels=half), put_on_common_clock(log))
    assert counters is not None
    assert not (counters.covers.any() and np.isfinite(counters.pitch_m))
    assert gather_counters(replace(log, channels={}), put_on_common_clock(log)) is None


def test_edges_serve_as_a_counter(log_from: Callable[..., SpeedLog]) -> None:
    edges = np.interp(np.arange(1, int(PER_METRE * way_of(SPEED)[-1])) / PER_METRE, way_of(SPEED), TIME)
    log = replace(log_from(TIME, np.stack([SPEED] * 4)), edges={"FL": edges})
    counters = gather_counters(log, put_on_common_clock(log))
    assert counters is not None
    assert counters.covers.tolist() == [True, False, False, False]
    assert 1.0 / counters.pitch_m == pytest.approx(PER_METRE, rel=1e-4)


def test_pulses_of_a_turn_are_found_as_a_whole_number_and_one_odd_wheel_does_not_matter() -> None:
    pitch_m = 2.0 / 96.0
    turns = pitch_m * np.array([96.1, 95.93, 96.04, 71.6])
    found = find_turn_pulses(turns, np.full(4, 0.0015), pitch_m)
    assert found is not None
    assert (found.number, found.probability > 0.999) == (96, True)
    wide = find_turn_pulses(turns[:1], np.array([0.02]), pitch_m)
    assert wide is not None
    assert wide.probability < 0.6
    assert find_turn_pulses(np.zeros(0), np.zeros(0), pitch_m) is None


@pytest.mark.parametrize("pairs", [43, 48])
def test_a_simulated_car_tells_the_pulses_of_its_turn(
    pairs: int, simulated: Callable[..., RoadTest], plain_setup: Setup
) -> None:
    names = tuple(f"pulses_{corner}" for corner in CORNERS)
    setup = replace(
        plain_setup,
        encoder=replace(plain_setup.encoder, pole_pairs=pairs),
        recorder=replace(plain_setup.recorder, channels=names),
    )
    analysis = analyse(simulated(setup=setup, severity=0.0, duration_s=120.0, seed=4).log)
    assert analysis.turn_pulses is not None
    assert analysis.turn_pulses.number == setup.encoder.edges_per_rev
    assert analysis.turn_pulses.probability > 0.95
