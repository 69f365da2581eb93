"""Dirt loses by chance, a broken spot the same in every turn; silence elsewhere."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from triage.logs.options import ReadOptions
from triage.logs.reading import read_log
from triage.signals.analysis import analyse
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.turn_grain import measure_turn_grain
from triage.simulator.road_test import RoadTest
from triage.simulator.setup import Setup

DATA = Path(__file__).parents[4] / "shared" / "data"


def test_dirt_is_coarse_by_about_a_pitch_and_damage_is_not(
    simulated: Callable[..., RoadTest], plain_setup: Setup
) -> None:
    grains: dict[str, list[float]] = {}
    for cause in ("encoder-damage", "encoder-debris"):
        for seed in (21, 22, 23, 24, 25):
            log = simulated(cause, "RL", 0.5, setup=plain_setup, duration_s=150.0, seed=seed).log
            found = measure_turn_grain(analyse(log), 2)
            assert isinstance(found, Measurement)
            assert found.unit == "%"
            assert found.std_uncertainty > 0.0
            assert found.spans
            grains.setdefault(cause, []).append(found.value)
    pitch_percent = 100.0 / plain_setup.encoder.edges_per_rev
    assert np.median(grains["encoder-debris"]) > 0.4 * pitch_percent
    assert np.median(grains["encoder-damage"]) < 0.4 * np.median(grains["encoder-debris"])


@pytest.mark.parametrize("cause", ["no-fault-found", "air-gap", "encoder-runout"])
def test_what_does_not_keep_to_the_angle_has_none(
    cause: str, simulated: Callable[..., RoadTest], plain_setup: Setup
) -> None:
    corner = None if cause == "no-fault-found" else "FR"
    analysis = analyse(simulated(cause, corner, 0.5, setup=plain_setup, duration_s=150.0, seed=4).log)
    for row in range(4):
        result = measure_turn_grain(analysis, row)
        assert isinstance(result, NotMeasurable)
        assert result.reason
        assert result.needed


@pytest.mark.skipif(not DATA.is_dir(), reason="the real logs (../shared/data) are not here")
@pytest.mark.parametrize("name", ["highway_83hz/wheels.csv", "recorder_gaps/wheels.csv"])
def test_sound_wheels_of_real_cars_have_none(name: str) -> None:
    analysis = analyse(read_log([DATA / name], ReadOptions()))
    assert all(isinstance(measure_turn_grain(analysis, row), NotMeasurable) for row in range(4))
