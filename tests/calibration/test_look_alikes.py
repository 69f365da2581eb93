"""Naming what looks like a fault though none is there."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from triage.calibration.look_alikes import look_alikes
from triage.corners import CORNERS
from triage.simulator.equipment import Setup
from triage.simulator.setup import draw_setup
from triage.speed_log import SpeedLog, SpeedTrace


def _log(speeds: dict[str, np.ndarray]) -> SpeedLog:
    time_s = np.arange(1000) * 0.02
    wheels = {
        corner: SpeedTrace(time_s.copy(), speeds[corner], np.isnan(speeds[corner]), 0.01, corner, "m/s")
        for corner in CORNERS
    }
    return SpeedLog("made up", "test", None, wheels)  # type: ignore[arg-type]


def _steady() -> dict[str, np.ndarray]:
    return {corner: np.full(1000, 10.0) for corner in CORNERS}


@pytest.fixture(scope="module")
def plain() -> Setup:
    """Nothing special: every trait is switched off by hand."""
    drawn = draw_setup(np.random.default_rng(1))
    return replace(
        drawn,
        car=replace(drawn.car, wheel_ratio=(1.0, 1.0, 1.0, 1.0)),
        sensor=replace(drawn.sensor, kind="active"),
        unit=replace(drawn.unit, zero_below_mps=0.1, method="timing", jump_reaction="none"),
        recorder=replace(
            drawn.recorder,
            rate_hz=50.0,
            step_kmh=0.01,
            gaps_per_min=0.0,
            lost_frame_ratio=0.0,
            wheel_rate_hz=None,
        ),
        drive=replace(
            drawn.drive,
            legs=("town",),
            hits_per_km=1.0,
            rough_ratio=0.0,
            loose_ground=False,
            split_grip=False,
        ),
    )


def test_a_plain_drive_has_none(plain: Setup) -> None:
    assert look_alikes(plain, _log(_steady())) == ()


def test_what_the_recorder_and_the_car_bring(plain: Setup) -> None:
    odd = replace(
        plain,
        recorder=replace(plain.recorder, rate_hz=10.0, gaps_per_min=3.0),
        car=replace(plain.car, wheel_ratio=(1.0, 1.0, 1.015, 1.015)),
    )
    assert look_alikes(odd, _log(_steady())) == ("10 Hz log", "recorder gaps", "unequal tyres")


def test_a_spinning_wheel_is_seen_and_a_single_wild_sample_is_not(plain: Setup) -> None:
    spinning, wild = _steady(), _steady()
    spinning["FR"][300:310] *= 1.2
    wild["FR"][300] *= 1.2
    assert look_alikes(plain, _log(spinning)) == ("spin or slip",)
    assert look_alikes(plain, _log(wild)) == ()


def test_a_tight_curve_is_seen_on_the_rear_axle(plain: Setup) -> None:
    turning = _steady()
    for corner, factor in (("FL", 0.95), ("RL", 0.9), ("FR", 1.12), ("RR", 1.1)):
        turning[corner][200:400] *= factor
    assert "tight curve" in look_alikes(plain, _log(turning))


def test_a_wheel_without_any_valid_sample_is_no_obstacle(plain: Setup) -> None:
    dead = _steady()
    dead["RL"][:] = np.nan
    assert isinstance(look_alikes(plain, _log(dead)), tuple)
