"""Side load, swapped channels and the pattern of a turn, on simulated faults of known corners."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from triage.corners import CORNERS, SIDE_SIGN, Corner
from triage.signals.vehicle_reference import wheel_speed_factors
from triage.simulator.road_test import RoadTest
from triage.simulator.setup import Setup
from triage.speed_log import SpeedLog
from triage.vehicle import Vehicle

Values = dict
Measure = Callable[..., Values]


@pytest.mark.parametrize("corner", CORNERS)
def test_a_wheel_disturbed_as_outer_wheel_has_a_positive_contrast(
    corner: Corner, log_from: Callable[..., SpeedLog], values: Measure
) -> None:
    """A left turn loads the right wheels and the other way round (physics of load transfer)."""
    rng = np.random.default_rng(1)
    time = 0.01 * np.arange(12_000)
    speed = np.full(time.size, 12.0)
    curvature = np.where(np.mod(time, 12.0) < 4.0, 0.02, np.where(np.mod(time, 12.0) < 8.0, -0.02, 0.0))
    rows = (
        speed * wheel_speed_factors(curvature, Vehicle()) * (1.0 + 0.0015 * rng.normal(size=(4, time.size)))
    )
    outer = -SIDE_SIGN[corner] * curvature > 0.0
    row = CORNERS.index(corner)
    rows[row, outer] *= 1.0 + 0.01 * rng.normal(size=int(outer.sum()))
    got = values(log_from(time, rows))
    assert got["side-load-contrast", corner].value > 0.5
    for other in CORNERS:
        if other != corner:
            assert abs(got["side-load-contrast", other].value) < 0.25


def test_straight_driving_shows_no_side_load(log_from: Callable[..., SpeedLog], values: Measure) -> None:
    time = 0.01 * np.arange(6000)
    got = values(log_from(time, 12.0 + 0.01 * np.random.default_rng(2).normal(size=(4, 6000))))
    assert not any(name in ("side-load-contrast", "swap-gain") for name, _ in got)


@pytest.mark.parametrize(("first", "second"), [(0, 1), (1, 2), (0, 3), (0, 2)])
def test_swapped_channels_fit_better_when_exchanged(
    first: int, second: int, healthy: SpeedLog, edited: Callable[..., SpeedLog], values: Measure
) -> None:
    def swap(rows: list[np.ndarray], time: np.ndarray) -> list[np.ndarray]:
        rows[first], rows[second] = rows[second], rows[first]
        return rows

    plain = values(healthy)["swap-gain", "vehicle"]
    swapped = values(edited(healthy, swap))["swap-gain", "vehicle"]
    assert plain.value < 0.0
    assert swapped.value > (0.0 if {first, second} == {0, 2} else 4.0)
    assert swapped.value > plain.value + 3.0 * swapped.std_uncertainty


@pytest.mark.parametrize("corner", CORNERS)
def test_runout_raises_the_line_of_its_wheel(
    corner: Corner, simulated: Callable[..., RoadTest], plain_setup: Setup, values: Measure
) -> None:
    ratios = [0.0008] * 4
    ratios[CORNERS.index(corner)] = 0.008
    quarters = (0.0, 0.25, 0.5, 0.75)
    encoder = replace(
        plain_setup.encoder, runout_ratio=tuple(ratios), runout_phase_rev=quarters, pitch_error_ratio=0.0005
    )
    got = values(
        simulated(setup=replace(plain_setup, encoder=encoder), severity=0.0, duration_s=150.0, seed=4).log
    )
    line = got["line-amplitude", corner]
    assert abs(line.value - 0.8) < max(4.0 * line.std_uncertainty, 0.12)
    assert got["line-ratio", corner].value > 5.0
    assert got["line-harmonic-share", corner].value < 0.1
    assert got["angle-share", corner].value > 30.0


def test_a_narrow_spot_is_peaky_and_a_sine_is_not(
    simulated: Callable[..., RoadTest], plain_setup: Setup, values: Measure
) -> None:
    def share(cause: str) -> float:
        log = simulated(cause, "FL", 0.6, setup=plain_setup, duration_s=180.0, seed=5).log
        return float(values(log)["line-harmonic-share", "FL"].value)

    assert share("encoder-damage") > 0.3
    assert share("encoder-runout") < 0.05
