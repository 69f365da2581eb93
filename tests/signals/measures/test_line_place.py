"""Another pole count against another tyre: where along its own counting a wheel repeats itself."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from triage.corners import CORNERS
from triage.signals.analysis import analyse
from triage.signals.measurement import Measurement
from triage.signals.measures.line_place import measure_line_place
from triage.simulator.road_test import RoadTest
from triage.simulator.setup import Setup


@pytest.mark.parametrize("seed", range(4))
def test_another_count_repeats_at_its_own_ratio(
    seed: int, simulated: Callable[..., RoadTest], plain_setup: Setup
) -> None:
    log = simulated("encoder-mismatch", "RL", 0.4, setup=plain_setup, duration_s=150.0, seed=seed).log
    got = measure_line_place(analyse(log), CORNERS.index("RL"))
    assert isinstance(got, Measurement)
    assert got.value > 3.0


@pytest.mark.parametrize("size", [0.975, 0.99, 1.02])
def test_another_tyre_repeats_where_the_others_do(
    size: float, simulated: Callable[..., RoadTest], plain_setup: Setup
) -> None:
    setup = replace(plain_setup, car=replace(plain_setup.car, wheel_ratio=(1.0, size, 1.0, 1.0)))
    log = simulated(setup=setup, severity=0.0, duration_s=150.0, seed=5).log
    got = measure_line_place(analyse(log), CORNERS.index("FR"))
    assert isinstance(got, Measurement)
    assert got.value < -3.0


def test_without_a_ratio_there_is_nothing_to_explain(healthy_analysis: object) -> None:
    got = measure_line_place(healthy_analysis, 0)  # type: ignore[arg-type]
    assert not isinstance(got, Measurement)
    assert "no constant ratio" in got.reason
