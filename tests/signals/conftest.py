"""Logs made by hand and simulated road tests, shared by the tests of the signals package."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from triage.corners import CORNERS, Corner, Place
from triage.signals.analysis import Analysis, analyse
from triage.signals.measurement import Measurement
from triage.signals.measures.table import measure_all
from triage.simulator.equipment import Drive
from triage.simulator.road_test import RoadTest, simulate_road_test
from triage.simulator.setup import Setup, draw_setup
from triage.speed_log import Channel, FloatArray, SpeedLog, SpeedTrace
from triage.vehicle import Vehicle

LogBuilder = Callable[..., SpeedLog]


def _log_from(
    time_s: FloatArray | Mapping[Corner, FloatArray],
    rows: Sequence[FloatArray],
    *,
    resolution_mps: float = 0.01 / 3.6,
    channels: Mapping[str, Channel] | None = None,
) -> SpeedLog:
    """Build a log of four wheels; NaN marks invalid samples."""
    wheels: dict[Corner, SpeedTrace] = {}
    for corner, row in zip(CORNERS, rows, strict=True):
        own_s = time_s[corner] if isinstance(time_s, Mapping) else time_s
        speed = np.array(row, dtype=float)
        wheels[corner] = SpeedTrace(
            np.array(own_s, dtype=float), speed, ~np.isfinite(speed), resolution_mps, corner, "m/s"
        )
    return SpeedLog("made by hand", "test", None, wheels, dict(channels or {}))


@pytest.fixture(scope="session")
def log_from() -> LogBuilder:
    return _log_from


@pytest.fixture(scope="session")
def plain_setup() -> Setup:
    """A well-recorded car: 100 Hz, active sensors, no smoothing, no pauses, few potholes."""
    drawn = draw_setup(np.random.default_rng(11))
    return replace(
        drawn,
        car=replace(drawn.car, track_m=1.55, wheelbase_m=2.7, wheel_ratio=(1.0, 1.0, 1.0, 1.0)),
        encoder=replace(drawn.encoder, pole_pairs=48, both_edges=True, pitch_error_ratio=0.002),
        sensor=replace(drawn.sensor, kind="active", cut_in_mps=0.0),
        unit=replace(
            drawn.unit,
            circumference_m=drawn.car.circumference_m,
            cycle_s=0.01,
            averaging_cycles=1,
            filter_s=0.0,
            jump_reaction="none",
            method="timing",
            mark_silent_after_s=float("inf"),
        ),
        recorder=replace(
            drawn.recorder,
            rate_hz=100.0,
            step_kmh=0.01,
            lost_frame_ratio=0.0,
            gaps_per_min=0.0,
            rear_offset_s=0.0,
            channels=(),
            wheel_rate_hz=None,
        ),
        drive=Drive(("country", "town"), lead_in_s=0.0, briskness=drawn.drive.briskness, hits_per_km=1.0),
    )


@pytest.fixture(scope="session")
def simulated() -> Callable[..., RoadTest]:
    @cache
    def drive(
        cause: str = "no-fault-found",
        corner: Place | None = None,
        severity: float = 0.5,
        *,
        duration_s: float = 120.0,
        seed: int = 3,
        setup: Setup | None = None,
    ) -> RoadTest:
        return simulate_road_test(
            cause=cause, corner=corner, severity=severity, duration_s=duration_s, seed=seed, setup=setup
        )

    return drive


@pytest.fixture(scope="session")
def healthy(simulated: Callable[..., RoadTest], plain_setup: Setup) -> SpeedLog:
    """Two minutes of a healthy car, all wheels on one clock."""
    return simulated(setup=plain_setup, severity=0.0, duration_s=150.0).log


@pytest.fixture(scope="session")
def healthy_analysis(healthy: SpeedLog) -> Analysis:
    return analyse(healthy)


@pytest.fixture(scope="session")
def values() -> Callable[..., dict[tuple[str, Place], Measurement]]:
    """Everything measured on a log, by id and corner."""

    def measure(log: SpeedLog, vehicle: Vehicle | None = None) -> dict[tuple[str, Place], Measurement]:
        return {(one.id, one.corner): one for one in measure_all(analyse(log, vehicle))[0]}

    return measure


@pytest.fixture(scope="session")
def edited() -> Callable[..., SpeedLog]:
    """The same log with the four rows of speeds put through a function of (rows, time)."""

    def edit(log: SpeedLog, change: Callable[[list[FloatArray], FloatArray], list[FloatArray]]) -> SpeedLog:
        time_s = log.wheels["FL"].time_s
        rows = change([log.wheels[corner].speed_mps.copy() for corner in CORNERS], time_s)
        wheels = {
            corner: replace(log.wheels[corner], speed_mps=row, invalid=~np.isfinite(row))
            for corner, row in zip(CORNERS, rows, strict=True)
        }
        return replace(log, wheels=wheels)

    return edit
