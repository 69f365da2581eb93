"""Growth of the ripple with the speed: known powers, pulses counted by hand, and simulated control units."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from types import SimpleNamespace
from typing import cast

import numpy as np
import pytest

from triage.evidence.rulebook import load_rulebook
from triage.signals.analysis import analyse
from triage.signals.losses import Losses
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.angle_lock import SMALL_SHARE_RATIO, measure_angle_share
from triage.signals.measures.revolution import SMALL_RATIO, measure_line_amplitude
from triage.signals.noise_growth import OWN_STEPS_BELOW, hides_small_swings, measure_noise_growth
from triage.signals.residuals import Residuals
from triage.signals.vehicle_reference import VehicleReference
from triage.simulator.road_test import RoadTest
from triage.simulator.setup import Setup
from triage.speed_log import BoolArray, FloatArray

SPEED_MPS = np.linspace(4.0, 25.0, 20_000)


def _growth_of(ripple_mps: FloatArray, speed_mps: FloatArray, low: BoolArray | None = None) -> float | None:
    """Growth of four rows of ripple."""
    low = np.zeros(ripple_mps.shape, dtype=bool) if low is None else low
    residuals = cast("Residuals", SimpleNamespace(fast_ratio=ripple_mps / speed_mps))
    losses = cast("Losses", SimpleNamespace(low=low, high=np.zeros_like(low)))
    reference = cast("VehicleReference", SimpleNamespace(reference_mps=speed_mps))
    return measure_noise_growth(residuals, losses, reference)


@pytest.mark.parametrize("power", [0.0, 0.5, 1.0, 2.0])
def test_the_power_of_a_known_law_is_found(power: float) -> None:
    noise = np.random.default_rng(1).normal(0.0, 0.01, (4, SPEED_MPS.size))
    assert _growth_of(noise * SPEED_MPS**power, SPEED_MPS) == pytest.approx(power, abs=0.05)


def test_one_restless_wheel_and_its_losses_change_nothing() -> None:
    ripple = np.random.default_rng(2).normal(0.0, 0.01, (4, SPEED_MPS.size)) * SPEED_MPS
    ripple[0] = 0.5
    low = np.zeros(ripple.shape, dtype=bool)
    low[1, ::3] = True
    ripple[1, ::3] = -3.0
    assert _growth_of(ripple, SPEED_MPS, low) == pytest.approx(1.0, abs=0.05)


def test_whole_pulses_in_a_fixed_time_err_alike_at_any_speed() -> None:
    """Pulses of a wheel with 48 in 2 m, counted every 0.1 s: off by a part of a pulse, 0.42 m/s."""
    period_s, pitch_m = 0.1, 2.0 / 48.0
    speed = np.linspace(4.0, 25.0, 6000)
    travel_m = np.cumsum(speed) * period_s + np.array([[0.0], [0.011], [0.023], [0.037]])
    counted = np.diff(np.floor(travel_m / pitch_m), axis=1, prepend=0.0) * pitch_m / period_s
    growth = _growth_of((counted - speed)[:, 1:], speed[1:])
    assert growth == pytest.approx(0.0, abs=0.1)
    assert hides_small_swings(growth)


def test_a_drive_at_one_speed_tells_no_growth() -> None:
    steady = np.random.default_rng(3).uniform(15.0, 19.0, 20_000)
    ripple = np.random.default_rng(4).normal(0.0, 0.01, (4, steady.size))
    assert _growth_of(ripple, steady) is None
    assert not hides_small_swings(None)


def test_neither_a_standing_car_nor_one_that_never_ripples_is_measured() -> None:
    assert _growth_of(np.zeros((4, 1000)), np.zeros(1000) + 1e-3) is None
    assert _growth_of(np.zeros((4, 1000)), np.linspace(3.0, 20.0, 1000)) is None


def _counting(setup: Setup, seed: int) -> Setup:
    """The same car with a unit that counts pulses for a tenth of a second or so."""
    rng = np.random.default_rng(seed)
    cycles = round(rng.uniform(0.06, 0.15) / setup.unit.cycle_s)
    filter_s = float(rng.uniform(0.02, 0.06))
    return replace(
        setup, unit=replace(setup.unit, method="counting", averaging_cycles=cycles, filter_s=filter_s)
    )


@pytest.mark.parametrize("seed", range(4))
def test_simulated_units_that_count_are_told_from_those_that_time(
    simulated: Callable[..., RoadTest], plain_setup: Setup, seed: int
) -> None:
    growth = {}
    for setup in (plain_setup, _counting(plain_setup, seed)):
        log = simulated(setup=setup, severity=0.0, seed=seed, duration_s=90.0).log
        growth[setup.unit.method] = analyse(log).noise_growth
    assert growth["timing"] is not None
    assert growth["counting"] is not None
    assert growth["counting"] < OWN_STEPS_BELOW < growth["timing"]


def test_what_counts_as_small_is_what_the_rule_book_calls_the_lowest_bands() -> None:
    measurements = load_rulebook().measurements
    assert 100.0 * SMALL_RATIO in measurements["line-amplitude"].edges
    assert measurements["angle-share"].edges[0] == 100.0 * SMALL_SHARE_RATIO


def test_behind_counted_pulses_only_a_large_swing_is_stated(
    simulated: Callable[..., RoadTest], plain_setup: Setup
) -> None:
    log = simulated("encoder-runout", "FL", 0.5, setup=_counting(plain_setup, 1), duration_s=180.0).log
    analysis = analyse(log)
    told = [measure_line_amplitude(analysis, 0), measure_angle_share(analysis, 0)]
    assert all("own steps" in str(one.reason) for one in told if isinstance(one, NotMeasurable))
    assert any(isinstance(one, NotMeasurable) and not one.by_driving for one in told)
    freely = replace(analysis, noise_growth=None)
    for one in (measure_line_amplitude(freely, 0), measure_angle_share(freely, 0)):
        assert isinstance(one, Measurement)
    large = replace(analysis, lines=(replace(analysis.lines[0], amplitude_ratio=np.full(8, 0.01)),) * 4)
    assert isinstance(measure_line_amplitude(large, 0), Measurement)
