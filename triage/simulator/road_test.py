"""A simulated road test with a known fault: same request, same bytes."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Final

import numpy as np

from triage.corners import CORNERS, VEHICLE, Corner, Place
from triage.errors import SettingsError
from triage.progress import Progress, no_progress
from triage.simulator.control_unit import estimate_speeds, freeze_speed
from triage.simulator.encoder import Ring, make_ring
from triage.simulator.equipment import Setup
from triage.simulator.faults import FAULT_MODELS, FaultEffect, FaultModel, FaultSite
from triage.simulator.recorder import Recording, record
from triage.simulator.setup import draw_setup
from triage.simulator.table import write_log_table
from triage.simulator.truth import Fault, Truth
from triage.simulator.truth_of_wheels import complete_truth, seen_rotation
from triage.simulator.vehicle_path import GRID_S, VehiclePath, plan_path
from triage.simulator.wheel_edges import send_edges
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
class RoadTest:
    """A simulated log and the truth about it.

    Attributes
    ----------
    log : SpeedLog
        What was recorded.
    truth : Truth
        What was built in.
    edges : mapping of corner to float64[M]
        Rising instants in seconds of every edge that reached the control unit, by channel of the log.
    """

    log: SpeedLog
    truth: Truth
    edges: Mapping[Corner, FloatArray] = field(default_factory=dict, repr=False, compare=False)


def simulate_road_test(
    *,
    cause: str,
    corner: Place | None,
    severity: float,
    duration_s: float,
    seed: int,
    setup: Setup | None = None,
    second: Fault | None = None,
    path: VehiclePath | None = None,
    models: Sequence[FaultModel] = FAULT_MODELS,
    progress: Progress = no_progress,
) -> RoadTest:
    """Drive a simulated car with a known fault, or two, and record its wheel speeds.

    Parameters
    ----------
    cause : str
        Id of one of the models.
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
    second : Fault, optional
        Another fault of the same car. Where channels are exchanged as well, its corner, like that of the
        first, is the wheel itself and not the channel of that name.
    path : VehiclePath, optional
        Motion of the car, as long as the drive; planned from ``seed`` and the setup's drive when not given.
    models : sequence of FaultModel
        Faults that can be built in.
    progress : Progress
        Told how far the work is; may raise to stop it.

    Returns
    -------
    RoadTest

    Raises
    ------
    SettingsError
        For an unknown cause or corner, a severity outside 0 to 1, an unusable duration or seed, or the same
        fault twice.
    """
    _check_drive(duration_s, seed)
    struck = _check_faults((Fault(cause, corner, severity), *(() if second is None else (second,))), models)
    chosen = draw_setup(_stream(seed, _SETUP_STREAM)) if setup is None else setup
    if path is None:
        path = plan_path(chosen.drive, duration_s, _stream(seed, _PATH_STREAM))
    progress(0.1, "driving")
    motion = _turn(path, chosen, seed, noise_ratio=np.ones(4))
    bench = _Bench(setup=chosen, seed=seed, path=path, motion=motion, rings=_rings(chosen, seed))
    effects = _strike(bench, struck)
    edges = _edges_of_wheels(bench, effects, progress)
    recording = _record(bench, effects, edges)
    progress(1.0, "recording")
    faults = tuple(fault for fault, _ in struck)
    truth = _truth(bench, effects, faults)
    by_channel = {corner: edges[wheel] for corner, wheel in zip(CORNERS, effects.vehicle.wiring, strict=True)}
    return RoadTest(_as_log(recording, truth, seed, by_channel), truth, by_channel)


def setup_of_seed(seed: int) -> Setup:
    """Return what a road test of this seed drives when it is given no setup."""
    return draw_setup(_stream(seed, _SETUP_STREAM))


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
    write_log_table(test.log, path, pulse_modulus=test.truth.setup.recorder.pulse_modulus)


@dataclass(frozen=True, slots=True)
class _Bench:
    """The healthy car on its way."""

    setup: Setup
    seed: int
    path: VehiclePath
    motion: WheelMotion
    rings: tuple[Ring, ...]


@dataclass(frozen=True, slots=True)
class _Effects:
    """What the faults do to each wheel, in the order of ``CORNERS``, and to the vehicle."""

    wheels: tuple[FaultEffect, ...]
    vehicle: FaultEffect


def _strike(bench: _Bench, faults: Sequence[tuple[Fault, FaultModel]]) -> _Effects:
    """Let the faults act one after the other; the second finds the ring as the first one left it."""
    wheels, vehicle = [FaultEffect()] * 4, FaultEffect()
    for number, (fault, model) in enumerate(faults):
        row = CORNERS.index(fault.corner) if fault.corner in CORNERS else 0
        ring = wheels[row].ring
        site = FaultSite(
            row=row,
            severity=fault.severity,
            setup=bench.setup,
            path=bench.path,
            motion=bench.motion,
            ring=bench.rings[row] if ring is None else ring,
            rng=_stream(bench.seed, _FAULT_STREAM, *([number] if number else [])),
        )
        if model.where == "corner":
            wheels[row] = wheels[row].joined(model.strike(site))
        else:
            vehicle = vehicle.joined(model.strike(site))
    return _Effects(tuple(wheels), vehicle)


def _edges_of_wheels(bench: _Bench, effects: _Effects, progress: Progress) -> list[FloatArray]:
    """Edges that each wheel sends towards the control unit, in the order of ``CORNERS``."""
    noise_ratio = np.array([effect.noise_ratio for effect in effects.wheels])
    if np.any(noise_ratio != 1.0):
        motion = _turn(bench.path, bench.setup, bench.seed, noise_ratio=noise_ratio)
        bench = replace(bench, motion=motion)
    edges = []
    for wheel, effect in enumerate(effects.wheels):
        edges.append(_edges_of_wheel(bench, wheel, effect))
        progress(0.2 + 0.15 * wheel, "turning the wheels")
    return edges


def _record(bench: _Bench, effects: _Effects, edges: Sequence[FloatArray]) -> Recording:
    """Let the control unit read the edges and the recorder take down what it sends."""
    setup, path = bench.setup, bench.path
    output = estimate_speeds(
        [edges[wheel] for wheel in effects.vehicle.wiring],
        setup.unit,
        edges_per_rev=setup.encoder.edges_per_rev,
        duration_s=path.time_s.size * GRID_S,
        upsets=effects.vehicle.upsets,
    )
    # A unit that goes on with the last value takes over again when its estimate has settled.
    settling_s = (setup.unit.averaging_cycles + 2) * setup.unit.cycle_s + 4.0 * setup.unit.filter_s
    for channel, wheel in enumerate(effects.vehicle.wiring):
        frozen = effects.wheels[wheel].frozen_spans_s
        if frozen is not None:
            output = freeze_speed(output, channel, frozen + np.array([0.0, settling_s]))
    rng = _stream(bench.seed, _RECORDER_STREAM)
    return record(output, path, recorder=setup.recorder, car=setup.car, rng=rng)


def _truth(bench: _Bench, effects: _Effects, faults: tuple[Fault, ...]) -> Truth:
    parts = (*effects.wheels, effects.vehicle)
    truth = Truth(
        cause=faults[0].cause,
        corner=faults[0].corner or VEHICLE,
        severity=faults[0].severity,
        setup=bench.setup,
        event_spans=tuple(sorted(span for part in parts for span in part.spans_s)),
        faults=faults,
        sectors=tuple(sector for part in parts for sector in part.sectors),
    )
    return complete_truth(truth, bench.motion, bench.rings, effects.wheels)


def _rings(setup: Setup, seed: int) -> tuple[Ring, ...]:
    return tuple(make_ring(setup.encoder, wheel, _stream(seed, _RING_STREAM, wheel)) for wheel in range(4))


def _turn(path: VehiclePath, setup: Setup, seed: int, *, noise_ratio: FloatArray) -> WheelMotion:
    rngs = tuple(_stream(seed, _MOTION_STREAM, part) for part in range(5))
    return move_wheels(path, setup.car, rngs, noise_ratio=noise_ratio, drive=setup.drive)


def _edges_of_wheel(bench: _Bench, wheel: int, effect: FaultEffect) -> FloatArray:
    return send_edges(
        bench.setup,
        bench.rings[wheel],
        seen_rotation(bench.motion, wheel, effect),
        effect,
        shake=bench.motion.shake[wheel],
        rng=_stream(bench.seed, _SENSOR_STREAM, wheel),
    )


def _as_log(recording: Recording, truth: Truth, seed: int, edges: Mapping[Corner, FloatArray]) -> SpeedLog:
    faults = " and ".join(
        f"{fault.cause} {fault.corner or VEHICLE}, severity {fault.severity:g}" for fault in truth.faults
    )
    detail = f"{faults}, seed {seed}"
    return SpeedLog(
        file=f"simulated {truth.cause} {truth.corner}",
        format="simulation",
        start=None,
        wheels=recording.wheels,
        channels=recording.channels,
        edges=edges if truth.setup.recorder.keeps_edges else {},
        history=(HistoryStep("simulated", detail),),
    )


def _stream(seed: int, *place: int) -> np.random.Generator:
    # One stream per part of the chain, so that a fault at one wheel leaves the draws of the others alone.
    return np.random.Generator(np.random.PCG64(np.random.SeedSequence(entropy=seed, spawn_key=place)))


def _check_drive(duration_s: float, seed: int) -> None:
    if not (math.isfinite(duration_s) and SHORTEST_DRIVE_S <= duration_s <= LONGEST_DRIVE_S):
        raise SettingsError(
            f"a drive of {duration_s:g} s cannot be simulated",
            hint=f"Ask for {SHORTEST_DRIVE_S:g} to {LONGEST_DRIVE_S:g} seconds.",
        )
    if seed < 0:
        raise SettingsError(f"the seed {seed} is negative", hint="Use 0 or a positive whole number.")


def _check_faults(faults: Sequence[Fault], models: Sequence[FaultModel]) -> list[tuple[Fault, FaultModel]]:
    """Find the model of every fault; the place of a fault of the whole vehicle becomes ``vehicle``."""
    known = {model.cause: model for model in models}
    checked = [_check_fault(fault, known) for fault in faults]
    if len({(fault.cause, fault.corner) for fault, _ in checked}) < len(checked):
        raise SettingsError(
            f"{faults[0].cause} cannot strike the same place twice",
            hint="Give the second another cause or corner.",
        )
    return checked


def _check_fault(fault: Fault, models: Mapping[str, FaultModel]) -> tuple[Fault, FaultModel]:
    if fault.cause not in models:
        raise SettingsError(
            f"no cause {fault.cause!r} can be simulated", hint=f"Known causes: {', '.join(models)}."
        )
    if not (math.isfinite(fault.severity) and 0.0 <= fault.severity <= 1.0):
        raise SettingsError(
            f"severity {fault.severity:g} is outside 0 to 1", hint="0 is invisible, 1 blatant."
        )
    model = models[fault.cause]
    return replace(fault, corner=_place(model, fault.corner)), model


def _place(model: FaultModel, corner: Place | None) -> Place:
    if model.where == "vehicle":
        if corner in (None, VEHICLE):
            return VEHICLE
        raise SettingsError(
            f"{model.cause} concerns the whole vehicle, not {corner}", hint="Use the corner 'vehicle'."
        )
    if corner is None or corner not in CORNERS:
        raise SettingsError(
            f"{model.cause} needs a corner, not {corner or 'none'}", hint=f"Use one of {', '.join(CORNERS)}."
        )
    return corner
