"""One damaged place explains the mean course over the turn, dirt does not; silence elsewhere."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from triage.logs.options import ReadOptions
from triage.logs.reading import read_log
from triage.signals.analysis import analyse
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.single_spot import measure_single_spot_rest
from triage.simulator.road_test import RoadTest
from triage.simulator.setup import Setup

DATA = Path(__file__).parents[4] / "shared" / "data"


def test_one_spot_explains_damage_and_not_dirt(
    simulated: Callable[..., RoadTest], plain_setup: Setup
) -> None:
    rests: dict[str, list[float]] = {}
    for cause in ("encoder-damage", "encoder-debris"):
        for seed in range(21, 28):
            log = simulated(cause, "RL", 0.5, setup=plain_setup, duration_s=150.0, seed=seed).log
            found = measure_single_spot_rest(analyse(log), 2)
            if isinstance(found, NotMeasurable):
                continue
            assert found.unit == "%"
            assert found.std_uncertainty > 0.0
            assert found.spans
            rests.setdefault(cause, []).append(found.value)
    assert len(rests["encoder-damage"]) >= 5
    assert np.median(rests["encoder-damage"]) < 2.0
    assert np.median(rests["encoder-debris"]) > 3.0 * np.median(rests["encoder-damage"])


@pytest.mark.parametrize("cause", ["no-fault-found", "air-gap", "encoder-runout"])
def test_what_is_no_spot_has_none(cause: str, simulated: Callable[..., RoadTest], plain_setup: Setup) -> None:
    corner = None if cause == "no-fault-found" else "FR"
    analysis = analyse(simulated(cause, corner, 0.5, setup=plain_setup, duration_s=150.0, seed=4).log)
    for row in range(4):
        result = measure_single_spot_rest(analysis, row)
        assert isinstance(result, NotMeasurable)
        assert result.reason
        assert result.needed


@pytest.mark.skipif(not DATA.is_dir(), reason="the real logs (../shared/data) are not here")
@pytest.mark.parametrize("name", ["highway_83hz/wheels.csv", "recorder_gaps/wheels.csv"])
def test_sound_wheels_of_real_cars_have_none(name: str) -> None:
    analysis = analyse(read_log([DATA / name], ReadOptions()))
    assert not any(isinstance(measure_single_spot_rest(analysis, row), Measurement) for row in range(4))
