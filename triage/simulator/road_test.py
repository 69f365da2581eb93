"""A simulated road test with a known fault: same request, same bytes."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

import numpy as np

from triage.corners import CORNERS, VEHICLE, Place
from triage.errors import SettingsError
from triage.progress import Progress, no_progress
from triage.simulator.control_unit import estimate_speeds, freeze_speed
from triage.simulator.encoder import Ring, make_ring, pass_poles
from triage.simulator.faults import FAULT_MODELS, FaultEffect, FaultModel, FaultSite
from triage.simulator.recorder import Recording, record
from triage.simulator.sensor import SensorConditions, sense_edges
from triage.simulator.setup import Setup, draw_setup
from triage.simulator.table import write_log_table
from triage.simulator.vehicle_path import GRID_S, VehiclePath, plan_path
from triage.simulator.wheel_motion import WheelMotion, move_wheels
from triage.speed_log import FloatArray, HistoryStep, SpeedLog

SHORTEST_DRIVE_S: Final = 10.0
LONGEST_DRIVE_S: Final = 7200.0

_FAULT_STREAM: Final = 1
_SETUP_STREAM: Final = 2
_PATH_STREAM: Final = 3
_MOTION_STREAM: Final = 4
_RING_STREAM: Final = 5
_SENSOR_STREAM: Final = 6
_RECORDER_STREAM: Final = 7


@dataclass(frozen=True, slots=True)
class Truth:
    """What was built into a simulated road test.

    Attributes
    ----------
    cause : str
        Id of the cause.
    corner : str
        Wheel struck, or ``vehicle``.
    severity : float
        0 invisible to 1 blatant.
    setup : Setup
        Car, encoder, sensor, control unit, recorder and drive.
    event_spans : tuple of (float, float)
        Seconds in which the fault acted, where it acts by events; empty otherwise.
    """

    cause: str
    corner: Place
    severity: float
    setup: Setup
    event_spans: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True)
class RoadTest:
    """A simulated log and the truth about it."""

    log: SpeedLog
    truth: Truth


def simulate_road_test(
    *,
    cause: str,
    corner: Place | None,
    severity: float,
    duration_s: float,
    seed: int,
    setup: Setup | None = None,
    progress: Progress = no_progress,
) -> RoadTest:
    """Drive a simulated car with one known fault and record its wheel speeds.

    Parameters
    ----------
    cause : str
        Id of a row of ``FAULT_MODELS``.
    corner : str or None
        Wheel struck; None or ``vehicle`` for causes of the whole vehicle.
    severity : float
        0 invisible, 0.25 slight, 0.5 clear, 1 blatant.
    duration_s : float
        Length of the log in seconds.
    seed : int
        Source of every choice; the same request gives the same log to the last bit.
    setup : Setup, optional
        Car, encoder, sensor, control unit, recorder and drive; drawn from ``seed`` when not given.
    progress : Progress
        Told how far the work is; may raise to stop it.

    Returns
    -------
    RoadTest

    Raises
    ------
    SettingsError
        For an unknown cause or corner, a severity outside 0 to 1, or an unusable duration or seed.
    """
    model, row = _check(cause, corner, severity=severity, duration_s=duration_s, seed=seed)
    chosen = draw_setup(_stream(seed, _SETUP_STREAM)) if setup is None else setup
    path = plan_path(chosen.drive, duration_s, _stream(seed, _PATH_STREAM))
    progress(0.1, "driving")
    motion = _turn(path, chosen, seed, noise_ratio=np.ones(4))
    bench = _Bench(setup=chosen, seed=seed, path=path, motion=motion, rings=_rings(chosen, seed))
    site = FaultSite(
        row=row,
        severity=severity,
        setup=chosen,
        path=path,
        motion=motion,
        ring=bench.rings[row],
        rng=_stream(seed, _FAULT_STREAM),
    )
    effect = model.strike(site)
    recording = _measure(bench, effect, row if model.where == "corner" else None, progress)
    place: Place = CORNERS[row] if model.where == "corner" else "vehicle"
    truth = Truth(cause, place, severity, chosen, effect.spans_s)
    return RoadTest(_as_log(recording, truth, seed), truth)


def write_road_test(test: RoadTest, path: str | Path) -> None:
    """Write the log of a road test as a table; the same test gives the same bytes.

    Parameters
    ----------
    test : RoadTest
        Its log is written; the truth is not.
    path : str or Path
        File to write; gzip when it ends in ``.gz``.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    write_log_table(test.log, path)


@dataclass(frozen=True, slots=True)
class _Bench:
    """The healthy car on its way."""

    setup: Setup
    seed: int
    path: VehiclePath
    motion: WheelMotion
    rings: tuple[Ring, ...]


def _measure(bench: _Bench, effect: FaultEffect, struck: int | None, progress: Progress) -> Recording:
    """Run the chain from the turning wheels to the log; ``struck`` is the faulty wheel's row."""
    setup, path = bench.setup, bench.path
    if struck is not None and effect.noise_ratio != 1.0:
        noise_ratio = np.where(np.arange(4) == struck, effect.noise_ratio, 1.0)
        bench = replace(bench, motion=_turn(path, setup, bench.seed, noise_ratio=noise_ratio))
    edges = []
    for wheel in range(4):
        edges.append(_edges_of_wheel(bench, wheel, effect if wheel == struck else FaultEffect()))
        progress(0.2 + 0.15 * wheel, "turning the wheels")
    output = estimate_speeds(
        [edges[wheel] for wheel in effect.wiring],
        setup.unit,
        edges_per_rev=setup.encoder.edges_per_rev,
        duration_s=path.time_s.size * GRID_S,
        upsets=effect.upsets,
    )
    rng = _stream(bench.seed, _RECORDER_STREAM)
    if struck is not None and effect.frozen_spans_s is not None:
        output = freeze_speed(output, struck, effect.frozen_spans_s)
    recording = record(output, path, recorder=setup.recorder, car=setup.car, rng=rng)
    progress(1.0, "recording")
    return recording


def _rings(setup: Setup, seed: int) -> tuple[Ring, ...]:
    return tuple(make_ring(setup.encoder, wheel, _stream(seed, _RING_STREAM, wheel)) for wheel in range(4))


def _turn(path: VehiclePath, setup: Setup, seed: int, *, noise_ratio: FloatArray) -> WheelMotion:
    rngs = tuple(_stream(seed, _MOTION_STREAM, part) for part in range(5))
    return move_wheels(path, setup.car, rngs, noise_ratio=noise_ratio, hits_per_km=setup.drive.hits_per_km)


def _edges_of_wheel(bench: _Bench, wheel: int, effect: FaultEffect) -> FloatArray:
    """Edges that reach the control unit from one wheel, float64[M]."""
    setup = bench.setup
    ring = bench.rings[wheel] if effect.ring is None else effect.ring
    rate, angle = _seen_rotation(bench.motion, wheel, effect)
    conditions = SensorConditions(
        extra_gap_mm=np.zeros(rate.size) if effect.extra_gap_mm is None else effect.extra_gap_mm,
        shake=bench.motion.shake[wheel] * effect.gap_shake_ratio,
        speed_mps=rate * setup.car.circumference_m,
        pair_length_mm=setup.encoder.pair_length_mm,
    )
    edges = sense_edges(
        pass_poles(angle, rate, ring),
        ring,
        sensor=setup.sensor,
        conditions=conditions,
        both_edges=setup.encoder.both_edges,
        rng=_stream(bench.seed, _SENSOR_STREAM, wheel),
    )
    return _through_the_lead(edges, effect)


def _seen_rotation(motion: WheelMotion, wheel: int, effect: FaultEffect) -> tuple[FloatArray, FloatArray]:
    """Rate and angle of the ring as the sensor sees them, both float64[N]."""
    rate, angle = motion.rate_revps[wheel], motion.angle_rev[wheel]
    if effect.rate_ratio is not None:
        rate = rate * effect.rate_ratio
        angle = angle[0] + np.cumsum(rate) * GRID_S
    if effect.lead_rev is not None:
        # The tilt carries the ring ahead or back; it still never runs backwards.
        angle = np.maximum.accumulate(angle + effect.lead_rev)
    return rate, angle


def _through_the_lead(edges_s: FloatArray, effect: FaultEffect) -> FloatArray:
    if effect.open_spans_s is not None:
        keep = np.ones(edges_s.size, dtype=np.bool_)
        for start, stop in effect.open_spans_s:
            keep[np.searchsorted(edges_s, start) : np.searchsorted(edges_s, stop)] = False
        edges_s = edges_s[keep]
    if effect.false_edges_s is not None:
        edges_s = np.sort(np.concatenate((edges_s, effect.false_edges_s)))
    return edges_s


def _as_log(recording: Recording, truth: Truth, seed: int) -> SpeedLog:
    detail = f"{truth.cause} {truth.corner}, severity {truth.severity:g}, seed {seed}"
    return SpeedLog(
        file=f"simulated {truth.cause} {truth.corner}",
        format="simulation",
        start=None,
        wheels=recording.wheels,
        channels=recording.channels,
        history=(HistoryStep("simulated", detail),),
    )


def _stream(seed: int, *place: int) -> np.random.Generator:
    # One stream per part of the chain, so that a fault at one wheel leaves the draws of the others alone.
    return np.random.Generator(np.random.PCG64(np.random.SeedSequence(entropy=seed, spawn_key=place)))


def _check(
    cause: str, corner: Place | None, *, severity: float, duration_s: float, seed: int
) -> tuple[FaultModel, int]:
    models = {model.cause: model for model in FAULT_MODELS}
    if cause not in models:
        raise SettingsError(
            f"no cause {cause!r} can be simulated", hint=f"Known causes: {', '.join(models)}."
        )
    if not (math.isfinite(severity) and 0.0 <= severity <= 1.0):
        raise SettingsError(f"severity {severity:g} is outside 0 to 1", hint="0 is invisible, 1 blatant.")
    if not (math.isfinite(duration_s) and SHORTEST_DRIVE_S <= duration_s <= LONGEST_DRIVE_S):
        raise SettingsError(
            f"a drive of {duration_s:g} s cannot be simulated",
            hint=f"Ask for {SHORTEST_DRIVE_S:g} to {LONGEST_DRIVE_S:g} seconds.",
        )
    if seed < 0:
        raise SettingsError(f"the seed {seed} is negative", hint="Use 0 or a positive whole number.")
    return models[cause], _row(models[cause], corner)


def _row(model: FaultModel, corner: Place | None) -> int:
    if model.where == "vehicle":
        if corner in (None, VEHICLE):
            return 0
        raise SettingsError(
            f"{model.cause} concerns the whole vehicle, not {corner}", hint="Use the corner 'vehicle'."
        )
    if corner not in CORNERS:
        raise SettingsError(
            f"{model.cause} needs a corner, not {corner or 'none'}", hint=f"Use one of {', '.join(CORNERS)}."
        )
    return CORNERS.index(corner)
