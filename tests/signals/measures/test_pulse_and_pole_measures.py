"""Measurements on counters and single edges of simulated rings, against what was built in."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from triage.corners import CORNERS, Place
from triage.signals.analysis import Analysis, analyse
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.pole_pitch import (
    measure_bad_pole_run,
    measure_missing_steadiness,
    measure_pole_order_one,
    measure_pole_spread,
    measure_poles_missing,
)
from triage.signals.measures.pulse_counts import (
    measure_pulse_offset,
    measure_substituted_share,
    measure_turn_pulses_offset,
)
from triage.simulator.road_test import RoadTest
from triage.simulator.setup import Setup

OF_COUNTERS = (measure_pulse_offset, measure_substituted_share, measure_turn_pulses_offset)
OF_EDGES = (
    measure_pole_spread,
    measure_poles_missing,
    measure_missing_steadiness,
    measure_bad_pole_run,
    measure_pole_order_one,
)


@pytest.fixture
def examined(simulated: Callable[..., RoadTest], plain_setup: Setup) -> Callable[..., Analysis]:
    def drive(cause: str = "no-fault-found", corner: Place | None = None, severity: float = 0.5, **more):
        names = tuple(f"pulses_{one}" for one in CORNERS)
        setup = more.pop("setup", plain_setup)
        recorder = replace(setup.recorder, channels=names, keeps_edges=True)
        test = simulated(cause, corner, severity, setup=replace(setup, recorder=recorder), **more)
        return analyse(test.log)

    return drive


def value(measured: Measurement | NotMeasurable) -> float:
    assert isinstance(measured, Measurement), measured
    return measured.value


def test_a_healthy_car_shows_nothing(examined: Callable[..., Analysis]) -> None:
    analysis = examined(severity=0.0, duration_s=90.0)
    for row in range(4):
        assert abs(value(measure_pulse_offset(analysis, row))) < 0.5
        assert value(measure_substituted_share(analysis, row)) == 0.0
        assert abs(value(measure_pole_spread(analysis, row))) < 1.5
        assert value(measure_poles_missing(analysis, row)) < 0.05
        assert value(measure_bad_pole_run(analysis, row)) == 0.0
        assert value(measure_pole_order_one(analysis, row)) < 0.25
        assert isinstance(measure_missing_steadiness(analysis, row), NotMeasurable)


def test_a_ring_of_another_count_differs_by_whole_pulses_and_misses_none(
    examined: Callable[..., Analysis],
) -> None:
    analysis = examined("encoder-mismatch", "RR", 0.5, duration_s=120.0, seed=5)
    assert analysis.pole_rings is not None
    odd, usual = analysis.pole_rings.edges_per_rev[3], analysis.pole_rings.edges_per_rev[0]
    assert odd is not None
    assert usual == 96
    assert odd != 96
    expected = odd - 96
    turn = measure_turn_pulses_offset(analysis, 3)
    assert value(turn) == pytest.approx(expected, abs=0.3)
    offset = measure_pulse_offset(analysis, 3)
    assert value(offset) == pytest.approx(100.0 * expected / 96, abs=0.4)
    assert value(measure_poles_missing(analysis, 3)) < 0.05


def test_a_tyre_of_another_size_changes_the_pulses_per_metre_but_not_those_of_a_turn(
    examined: Callable[..., Analysis], plain_setup: Setup
) -> None:
    setup = replace(plain_setup, car=replace(plain_setup.car, wheel_ratio=(1.0, 1.0, 0.98, 1.0)))
    analysis = examined(setup=setup, severity=0.0, duration_s=120.0, seed=2)
    offset = measure_pulse_offset(analysis, 2)
    assert isinstance(offset, Measurement)
    assert offset.value == pytest.approx(100.0 * (1.0 / 0.98 - 1.0), abs=3.0 * offset.std_uncertainty)
    assert abs(value(measure_turn_pulses_offset(analysis, 2))) < 0.4


def test_run_out_is_measured_pole_by_pole(examined: Callable[..., Analysis], plain_setup: Setup) -> None:
    ratios = (0.001, 0.006, 0.001, 0.001)
    setup = replace(plain_setup, encoder=replace(plain_setup.encoder, runout_ratio=ratios))
    analysis = examined(setup=setup, severity=0.0, duration_s=60.0)
    for row, ratio in enumerate(ratios):
        assert value(measure_pole_order_one(analysis, row)) == pytest.approx(100.0 * ratio, abs=0.06)
        assert value(measure_bad_pole_run(analysis, row)) == 0.0


def test_a_broken_spot_misses_the_same_edges_and_dirt_others_every_turn(
    examined: Callable[..., Analysis],
) -> None:
    steady: dict[str, list[float]] = {"encoder-damage": [], "encoder-debris": []}
    width: dict[str, list[float]] = {"encoder-damage": [], "encoder-debris": []}
    for cause, found_steady in steady.items():
        for seed in (1, 2, 3, 4):
            analysis = examined(cause, "FL", 0.6, duration_s=60.0, seed=seed)
            found = measure_missing_steadiness(analysis, 0)
            if isinstance(found, Measurement):
                found_steady.append(found.value)
            width[cause].append(value(measure_bad_pole_run(analysis, 0)))
            assert value(measure_poles_missing(analysis, 2)) < 0.05
    assert np.median(steady["encoder-damage"]) > 0.9
    assert max(steady["encoder-debris"]) < 0.8
    assert len(steady["encoder-debris"]) >= 3
    assert np.median(width["encoder-debris"]) > np.median(width["encoder-damage"]) > 0.0


def test_without_counters_and_edges_it_is_said_that_no_drive_helps(healthy_analysis: Analysis) -> None:
    for measure in (*OF_COUNTERS, *OF_EDGES):
        missing = measure(healthy_analysis, 0)
        assert isinstance(missing, NotMeasurable)
        assert not missing.by_driving
        assert missing.reason
        assert missing.needed
