"""Exchanged channels: by curves, by the road, by the side to which the car turns."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from itertools import combinations
from pathlib import Path

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.logs.reading import read_log
from triage.signals.analysis import Analysis, analyse
from triage.signals.measurement import Measured, Measurement, NotMeasurable
from triage.signals.measures.channel_swap import BOTH_AXLES, PAIRS
from triage.signals.measures.road_order import RoadOrder, order_by_road
from triage.signals.measures.wiring_checks import measure_wiring
from triage.signals.vehicle_reference import wheel_speed_factors
from triage.signals.wiring import EXCHANGES
from triage.simulator.road_test import simulate_road_test
from triage.simulator.setup import draw_setup
from triage.speed_log import Channel, SpeedLog
from triage.vehicle import Vehicle

HIGHWAY = Path(__file__).parents[4] / "shared" / "data" / "highway_83hz" / "wheels.csv"
TIME = 0.02 * np.arange(6000)
CURVATURE = 0.07 * np.sign(np.sin(TIME / 3.0)) * (np.abs(np.sin(TIME / 3.0)) > 0.5)


def _wired(log: SpeedLog, order: tuple[int, ...]) -> SpeedLog:
    wheels = {CORNERS[row]: log.wheels[CORNERS[order[row]]] for row in range(4)}
    return replace(log, wheels=wheels)


def _found(name: str, analysis: Analysis) -> Measured:
    return next(one for one in measure_wiring(analysis) if one.id == name)


def _drive(log_from: Callable[..., SpeedLog], *, sign: float = 1.0, turned: bool = False) -> SpeedLog:
    rng = np.random.default_rng(3)
    rows = 6.0 * wheel_speed_factors(CURVATURE, Vehicle()) * (1.0 + 0.002 * rng.normal(size=(4, TIME.size)))
    yaw = sign * 6.0 * CURVATURE + 0.005 * rng.normal(size=TIME.size)
    return log_from(TIME, rows, channels={"yaw_rate_radps": Channel(TIME, yaw, "yaw", turned)})


@pytest.mark.skipif(not HIGHWAY.is_file(), reason="the real logs (../shared/data) are not here")
@pytest.mark.parametrize("pair", [None, *combinations(range(4), 2), "axles"])
def test_the_road_tells_which_wheels_of_a_real_drive_were_exchanged(
    pair: tuple[int, int] | str | None,
) -> None:
    """A minute of motorway without a curve: every exchange of two wheels, and of the axles, is found."""
    order = [0, 1, 2, 3] if pair != "axles" else [2, 3, 0, 1]
    if isinstance(pair, tuple):
        order[pair[0]], order[pair[1]] = order[pair[1]], order[pair[0]]
    analysis = analyse(_wired(read_log([HIGHWAY]), tuple(order)))
    found = order_by_road(analysis)
    assert isinstance(found, RoadOrder)
    assert found.wheelbase_m == pytest.approx(2.7, abs=0.25)
    assert isinstance(_found("swap-gain", analysis), NotMeasurable)
    named = _found("swap-pair", analysis)
    if pair is None:
        assert found.advantage < -3.0 * found.advantage_std
        assert isinstance(named, NotMeasurable)
        return
    assert found.advantage > 3.0 * found.advantage_std
    assert isinstance(named, Measurement)
    # An exchange on the rear axle looks like one on the front axle.
    expected = (1, 0, 2, 3) if pair == (2, 3) else tuple(order)
    assert EXCHANGES[int(named.value)][0] == expected


def test_an_even_road_says_nothing(log_from: Callable[..., SpeedLog]) -> None:
    found = _found("road-order", analyse(_drive(log_from)))
    assert isinstance(found, NotMeasurable)
    assert "even" in found.reason


@pytest.mark.parametrize(
    ("order", "name"),
    [
        ((1, 0, 2, 3), "front left and front right"),
        ((0, 1, 3, 2), "rear left and rear right"),
        ((2, 1, 0, 3), "front left and rear left"),
        ((3, 1, 2, 0), "front left and rear right"),
        ((1, 0, 3, 2), BOTH_AXLES),
    ],
)
def test_the_pair_is_named(order: tuple[int, ...], name: str, log_from: Callable[..., SpeedLog]) -> None:
    found = _found("swap-pair", analyse(_wired(_drive(log_from), order)))
    assert isinstance(found, Measurement)
    assert PAIRS[int(found.value)] == name


def test_the_gain_is_negative_when_all_is_well_and_large_when_not(log_from: Callable[..., SpeedLog]) -> None:
    well = _found("swap-gain", analyse(_drive(log_from)))
    swapped = _found("swap-gain", analyse(_wired(_drive(log_from), (2, 1, 0, 3))))
    assert isinstance(well, Measurement)
    assert isinstance(swapped, Measurement)
    assert well.value < -5.0
    assert swapped.value > 5.0


def test_yaw_rate_of_known_sign_sees_both_axles_exchanged(log_from: Callable[..., SpeedLog]) -> None:
    along, against, one = (
        _found("turn-sign", analyse(_wired(_drive(log_from), order)))
        for order in ((0, 1, 2, 3), (1, 0, 3, 2), (1, 0, 2, 3))
    )
    assert isinstance(along, Measurement)
    assert isinstance(against, Measurement)
    assert isinstance(one, Measurement)
    assert along.value > 0.9
    assert against.value < -0.9
    assert abs(one.value) < 0.2


def test_a_channel_that_had_to_be_turned_does_not_testify(log_from: Callable[..., SpeedLog]) -> None:
    found = _found("turn-sign", analyse(_drive(log_from, turned=True)))
    assert isinstance(found, NotMeasurable)
    assert not found.by_driving


def test_no_channel_and_no_curve_are_told_apart(log_from: Callable[..., SpeedLog]) -> None:
    rows = 9.0 + 0.01 * np.random.default_rng(1).normal(size=(4, TIME.size))
    bare = _found("turn-sign", analyse(log_from(TIME, rows)))
    yaw = {"yaw_rate_radps": Channel(TIME, 0.01 * np.sin(TIME), "yaw")}
    straight = _found("turn-sign", analyse(log_from(TIME, rows, channels=yaw)))
    assert isinstance(bare, NotMeasurable)
    assert isinstance(straight, NotMeasurable)
    assert "no yaw rate" in bare.reason
    assert "curves" in straight.reason


def test_wheels_in_coarse_steps_beside_a_straight_road_say_nothing(log_from: Callable[..., SpeedLog]) -> None:
    """A unit that counts whole pulses steps by 0.4 m/s: the steps are no curves, for either measurement."""
    rng = np.random.default_rng(9)
    speed = 9.0 + 2.0 * np.sin(TIME / 7.0)
    rows = 0.43 * np.floor(speed / 0.43 + rng.random((4, TIME.size)))
    yaw = 0.01 * np.sin(TIME / 5.0) + 0.005 * rng.normal(size=TIME.size)
    log = log_from(
        TIME, rows, resolution_mps=0.43, channels={"yaw_rate_radps": Channel(TIME, yaw, "yaw", False)}
    )
    analysis = analyse(log)
    assert isinstance(_found("turn-sign", analysis), NotMeasurable)
    assert isinstance(_found("swap-gain", analysis), NotMeasurable)


def test_a_channel_of_noise_does_not_testify(log_from: Callable[..., SpeedLog]) -> None:
    log = _drive(log_from)
    noise = 0.01 * np.random.default_rng(12).normal(size=TIME.size)
    log = replace(log, channels={"yaw_rate_radps": Channel(TIME, noise, "yaw", False)})
    assert isinstance(_found("turn-sign", analyse(log)), NotMeasurable)


@pytest.mark.parametrize("pair", [*combinations(range(4), 2), None])
def test_a_channel_testifies_however_the_wheels_are_wired(
    pair: tuple[int, int] | None, log_from: Callable[..., SpeedLog]
) -> None:
    order = [0, 1, 2, 3]
    if pair:
        order[pair[0]], order[pair[1]] = order[pair[1]], order[pair[0]]
    got = _found("turn-sign", analyse(_wired(_drive(log_from), tuple(order))))
    assert isinstance(got, Measurement)
    assert (got.value > 0.9) == (pair is None or pair in {(0, 2), (1, 3)})


def test_other_tyres_on_one_axle_are_no_exchange_where_the_car_never_ran_straight() -> None:
    """Stop and go and parking at full lock: nothing tells the tyres of the axles apart from a curve."""
    setup = draw_setup(np.random.default_rng(1))
    setup = replace(
        setup,
        car=replace(setup.car, wheel_ratio=(1.008, 1.012, 0.989, 0.993)),
        drive=replace(setup.drive, legs=("queue", "parking", "queue"), hits_per_km=1.0),
        recorder=replace(setup.recorder, rate_hz=50.0, channels=()),
    )
    for seed in (10, 11):
        test = simulate_road_test(
            cause="no-fault-found", corner="vehicle", severity=0.0, duration_s=60.0, seed=seed, setup=setup
        )
        analysis = analyse(test.log)
        assert not np.isfinite(analysis.reference.scale_ratio).any()
        gain = _found("swap-gain", analysis)
        assert isinstance(gain, NotMeasurable) or gain.value < 2.0
