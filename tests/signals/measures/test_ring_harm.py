"""Damage against debris by how much of the ring is bad and how alike the turns are; silence elsewhere."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.logs.options import ReadOptions
from triage.logs.reading import read_log
from triage.signals.analysis import Analysis, analyse
from triage.signals.measurement import Measurement, NotMeasurable
from triage.signals.measures.ring_harm import (
    measure_bad_sector_count,
    measure_harmed_share,
)
from triage.simulator.road_test import RoadTest
from triage.simulator.setup import Setup
from triage.speed_log import SpeedLog

ALL = (measure_harmed_share, measure_bad_sector_count)
DATA = Path(__file__).parents[4] / "shared" / "data"


def _values(analysis: Analysis, row: int) -> dict[str, Measurement]:
    found = [measure(analysis, row) for measure in ALL]
    return {one.id: one for one in found if isinstance(one, Measurement)}


def test_damage_is_a_narrower_spot_than_dirt(simulated: Callable[..., RoadTest], plain_setup: Setup) -> None:
    shares = {}
    for cause in ("encoder-damage", "encoder-debris"):
        found = [
            _values(
                analyse(simulated(cause, "RL", 0.5, setup=plain_setup, duration_s=150.0, seed=seed).log), 2
            )
            for seed in (21, 22, 23, 24, 25)
        ]
        shares[cause] = np.median([one["harmed-share"].value for one in found])
    assert shares["encoder-damage"] < 0.7 * shares["encoder-debris"]


def test_units_and_spans(simulated: Callable[..., RoadTest], plain_setup: Setup) -> None:
    log = simulated("encoder-debris", "RL", 0.5, setup=plain_setup, duration_s=150.0, seed=21).log
    values = _values(analyse(log), 2)
    assert set(values) == {"harmed-share", "bad-sector-count"}
    for one in values.values():
        assert one.std_uncertainty > 0.0
        assert one.spans
        assert one.corner == "RL"
    assert 1.0 <= values["harmed-share"].value <= 100.0
    assert values["bad-sector-count"].value >= 1.0


@pytest.mark.parametrize("cause", ["no-fault-found", "air-gap", "encoder-runout"])
def test_what_does_not_lock_gives_no_sector(
    cause: str, simulated: Callable[..., RoadTest], plain_setup: Setup
) -> None:
    corner = None if cause == "no-fault-found" else "FR"
    log = simulated(cause, corner, 0.5, setup=plain_setup, duration_s=150.0, seed=4).log
    analysis = analyse(log)
    for row in range(4):
        for measure in ALL:
            result = measure(analysis, row)
            assert isinstance(result, NotMeasurable)
            assert result.reason
            assert result.needed


def test_no_revolution_no_sector(log_from: Callable[..., SpeedLog]) -> None:
    rng = np.random.default_rng(5)
    time = 0.01 * np.arange(3000)
    analysis = analyse(log_from(time, 10.0 * (1.0 + 0.002 * rng.normal(size=(4, 3000)))))
    result = measure_harmed_share(analysis, 0)
    assert isinstance(result, NotMeasurable)
    assert "revolution" in result.reason


@pytest.mark.skipif(not DATA.is_dir(), reason="the real logs (../shared/data) are not here")
@pytest.mark.parametrize("name", ["highway_83hz/wheels.csv", "recorder_gaps/wheels.csv"])
def test_sound_wheels_of_real_cars_have_no_bad_sector(name: str) -> None:
    analysis = analyse(read_log([DATA / name], ReadOptions()))
    for row, corner in enumerate(CORNERS):
        for measure in ALL:
            assert isinstance(measure(analysis, row), NotMeasurable), corner
