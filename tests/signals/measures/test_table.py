"""What holds for every measurement: rule book rows, symmetry, scale, spans and uncertainty."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from triage.corners import AXLE_PARTNER, CORNERS, VEHICLE, Place
from triage.evidence.rulebook import load_rulebook
from triage.signals.analysis import analyse
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.table import CORNER_MEASURES, JOINT_MEASURES, VEHICLE_MEASURES, measure_all
from triage.signals.vehicle_reference import wheel_speed_factors
from triage.simulator.road_test import RoadTest
from triage.simulator.setup import Setup
from triage.speed_log import Channel, FloatArray, SpeedLog
from triage.vehicle import Vehicle

Values = dict[tuple[str, Place], Measurement]
Measure = Callable[..., Values]

COUNTED_IN_STANDARD_UNCERTAINTIES = "ratio-count-fit"


def test_every_measurement_has_its_row_and_every_row_its_measurement() -> None:
    rules = load_rulebook().measurements
    named = [*CORNER_MEASURES, *VEHICLE_MEASURES, *(name for names in JOINT_MEASURES for name in names)]
    assert sorted(named) == sorted(rules)
    assert {rules[name].scope for name in VEHICLE_MEASURES} == {"vehicle"}
    assert "vehicle" not in {rules[name].scope for name in CORNER_MEASURES}
    for names in JOINT_MEASURES:
        assert len({rules[name].scope for name in names}) == 1, names


def test_ids_and_units_are_those_of_the_rule_book(
    simulated: Callable[..., RoadTest], plain_setup: Setup
) -> None:
    rules = load_rulebook().measurements
    recorder = replace(
        plain_setup.recorder,
        channels=("steering_rad", "yaw_rate_radps", *(f"pulses_{corner}" for corner in CORNERS)),
        keeps_edges=True,
    )
    rich = replace(plain_setup, recorder=recorder)
    sensor = replace(plain_setup.sensor, kind="passive", cut_in_mps=0.7)
    drives = (
        ("encoder-debris", "FL", plain_setup),
        ("harness-fault", "RR", plain_setup),
        ("tyre-size", "FR", plain_setup),
        ("air-gap", "RL", replace(plain_setup, sensor=sensor)),
        ("channels-swapped", None, rich),
        ("encoder-damage", "FL", rich),
        ("bearing-play", "RR", plain_setup),
    )
    seen: set[str] = set()
    for cause, corner, setup in drives:
        measurements, missing = measure_all(
            analyse(simulated(cause, corner, 0.7, setup=setup, duration_s=180.0, seed=3).log)
        )
        for one in measurements:
            assert one.unit == rules[one.id].unit, one.id
            assert (one.corner == VEHICLE) == (rules[one.id].scope == "vehicle")
        assert {one.id for one in missing} <= set(rules)
        seen |= {one.id for one in measurements}
    assert seen == set(rules)


@pytest.mark.parametrize(
    ("cause", "corner"),
    [("no-fault-found", None), ("encoder-debris", "FL"), ("air-gap", "RL"), ("common-cause", None)],
)
def test_numbers_are_finite_and_rest_on_seconds_of_the_log(
    cause: str, corner: Place | None, simulated: Callable[..., RoadTest]
) -> None:
    for seed in (1, 2, 5):
        log = simulated(cause, corner, 0.6, duration_s=90.0, seed=seed).log
        measurements, missing = measure_all(analyse(log))
        begin, end = log.instants_s[[0, -1]]
        for one in measurements:
            assert np.isfinite(one.value), one
            assert one.std_uncertainty > 0.0, one
            assert one.sample_count >= 0, one
            assert one.spans, one
            assert all(begin <= first <= last <= end for first, last in one.spans), one
        assert all(one.reason and one.needed for one in missing)
        names = [(one.id, one.corner) for one in (*measurements, *missing)]
        assert len(names) == len(set(names))


def test_healthy_car_lies_in_the_sound_bands(healthy: SpeedLog, values: Measure) -> None:
    """The band in which a healthy car lies is the one its likelihoods call most common, or its neighbour."""
    got = values(healthy)
    limits = {
        "dead-share": (0.0, 0.06),
        "stuck-share": (0.0, 0.1),
        "drop-out-rate": (0.0, 0.6),
        "dip-share": (0.0, 0.2),
        "spike-share": (0.0, 0.2),
        "swing-share": (0.0, 0.6),
        "angle-share": (-5.0, 22.0),
        "line-amplitude": (0.0, 0.18),
        "line-ratio": (0.3, 2.8),
        "harmonic-ratio": (0.0, 2.3),
        "revolution-offset": (-0.4, 0.4),
        "ratio-offset": (-0.35, 0.35),
        "noise-ratio": (0.6, 1.4),
        "cut-off-speed": (-0.4, 0.4),
        "side-load-contrast": (-0.3, 0.3),
        "joint-drop-out-rate": (0.0, 0.35),
        "swap-gain": (-99.0, 0.0),
    }
    for (name, corner), one in got.items():
        if name in limits:
            assert limits[name][0] <= one.value <= limits[name][1], (corner, one)
    assert {name for name, _ in got} >= set(limits)


def _mirror(log: SpeedLog) -> SpeedLog:
    wheels = {corner: log.wheels[AXLE_PARTNER[corner]] for corner in CORNERS}
    channels = {
        name: replace(channel, value=-channel.value) if name == "yaw_rate_radps" else channel
        for name, channel in log.channels.items()
    }
    return replace(log, wheels=wheels, channels=channels)


@pytest.mark.parametrize(
    ("cause", "corner"),
    [("no-fault-found", None), ("encoder-debris", "FL"), ("bearing-play", "RR"), ("air-gap", "FR")],
)
def test_mirroring_the_car_mirrors_the_result(
    cause: str,
    corner: Place | None,
    simulated: Callable[..., RoadTest],
    plain_setup: Setup,
    values: Measure,
) -> None:
    setup = replace(plain_setup, recorder=replace(plain_setup.recorder, channels=("yaw_rate_radps",)))
    log = simulated(cause, corner, 0.6, setup=setup, duration_s=120.0, seed=8).log
    assert "yaw_rate_radps" in log.channels
    here, there = values(log), values(_mirror(log))
    mirrored = {
        (name, place if place == VEHICLE else AXLE_PARTNER[place]): one
        for (name, place), one in there.items()
    }
    assert set(mirrored) == set(here)
    for key, one in here.items():
        assert mirrored[key].value == pytest.approx(one.value, rel=1e-6, abs=1e-9), key
        assert mirrored[key].std_uncertainty == pytest.approx(one.std_uncertainty, rel=1e-6, abs=1e-9), key


def _brisk_drive(seed: int) -> tuple[FloatArray, FloatArray]:
    """A drive that keeps away from every limit stated in metres per second."""
    rng = np.random.default_rng(seed)
    time = 0.01 * np.arange(12_000)
    speed = 15.0 + 3.0 * np.sin(time / 6.0)
    curvature = 0.02 * np.sin(np.pi * np.minimum(np.mod(time, 20.0), 8.0) / 4.0)
    distance = np.cumsum(speed) * 0.01
    rows = (
        speed * wheel_speed_factors(curvature, Vehicle()) * (1.0 + 0.0015 * rng.normal(size=(4, time.size)))
    )
    for row, phase in enumerate((0.0, 2.0, 4.0, 1.0)):
        rows[row] *= 1.0 + 0.001 * np.cos(2.0 * np.pi * distance / 2.0 + phase)
    rows[2] *= 1.02
    rows[1, 700::131] *= 0.9
    return time, rows


def test_scaling_all_speeds_changes_nothing_relative(
    log_from: Callable[..., SpeedLog], values: Measure
) -> None:
    time, rows = _brisk_drive(4)
    plain, scaled = values(log_from(time, rows)), values(log_from(time, 1.03 * rows))
    for name in (
        "ratio-offset",
        "dip-share",
        "noise-ratio",
        "revolution-offset",
        "dead-share",
        "line-amplitude",
    ):
        for corner in CORNERS:
            one, other = plain[name, corner], scaled[name, corner]
            allowed = max(0.3 * one.std_uncertainty, 0.02 * abs(one.value), 1e-6)
            assert other.value == pytest.approx(one.value, abs=allowed), (name, corner)


def test_shifting_the_clock_changes_nothing(log_from: Callable[..., SpeedLog], values: Measure) -> None:
    time, rows = _brisk_drive(5)
    plain, shifted = values(log_from(time, rows)), values(log_from(time + 4096.0, rows))
    assert set(plain) == set(shifted)
    for key, one in plain.items():
        assert shifted[key].value == pytest.approx(one.value, rel=1e-4, abs=1e-4), key


def test_a_log_too_short_is_said_once(log_from: Callable[..., SpeedLog]) -> None:
    measurements, missing = measure_all(analyse(log_from(0.01 * np.arange(19), np.full((4, 19), 10.0))))
    assert measurements == ()
    assert [one.id for one in missing] == ["all"]
    assert "19 samples" in missing[0].reason
    assert "minute" in missing[0].needed


def test_what_is_missing_on_all_wheels_is_said_once(log_from: Callable[..., SpeedLog]) -> None:
    _, missing = measure_all(analyse(log_from(0.01 * np.arange(3000), np.zeros((4, 3000)))))
    assert all(isinstance(one, NotMeasurable) and one.corner is None for one in missing)
    assert len({one.id for one in missing}) == len(missing)


def test_progress_never_falls_while_measuring(healthy: SpeedLog) -> None:
    told: list[float] = []
    measure_all(analyse(healthy), lambda fraction, _: told.append(fraction))
    assert told == sorted(told)
    assert told[0] >= 0.0
    assert told[-1] <= 1.0


def test_channels_on_another_clock_are_no_obstacle(
    log_from: Callable[..., SpeedLog], values: Measure
) -> None:
    time, rows = _brisk_drive(6)
    yaw = Channel(time[::7] + 0.003, np.zeros(time[::7].size), "yaw")
    assert values(log_from(time, rows, channels={"yaw_rate_radps": yaw}))[
        "ratio-offset", "RL"
    ].value == pytest.approx(2.0, abs=0.5)
