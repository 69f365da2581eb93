"""Faults built into recordings of real drives.

A simulated drive has only the road, the driver and the gaps that somebody thought of. Here those are real:
the speeds of a recording of a healthy car are taken for what its wheels did, the angle of every wheel is
rebuilt from them, a simulated ring with a fault turns by that angle under a simulated sensor, a simulated
control unit times its edges, and what it puts out is sampled at the time stamps and in the steps of the
recording.

What the real control unit had averaged stays averaged, so the log is a little smoother than the real one; the
ripple of the real rings and the differences of the real tyres are in the speeds already and are not added
again.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

import numpy as np

from triage.calibration.ensemble import Case, MeasuredCase
from triage.calibration.moved_ripple import turn_with_other_tyre
from triage.calibration.real_drives import RealDrive
from triage.calibration.trace import NO_TRACE, leaves_trace
from triage.calibration.unseen import draw_unseen_setup
from triage.corners import CORNERS, VEHICLE, Place
from triage.evidence.rule_tables import NO_FAULT
from triage.signals.analysis import analyse
from triage.signals.measures.table import measure_all
from triage.simulator.control_unit import UnitOutput, estimate_speeds, freeze_speed
from triage.simulator.encoder import Ring, make_ring
from triage.simulator.equipment import Setup
from triage.simulator.faults import FAULT_MODELS, FaultEffect, FaultSite
from triage.simulator.vehicle_path import GRID_S, VehiclePath
from triage.simulator.wheel_edges import send_edges
from triage.simulator.wheel_motion import WheelMotion
from triage.speed_log import BoolArray, FloatArray, SpeedLog, SpeedTrace

CURVED_RADPM: Final = 1.0 / 300.0
SHORTEST_CURVE_S: Final = 3.0
SLOWEST_MPS: Final = 2.0
"""Exchanged wheels differ only in curves: so much of them is needed at least (judgement)."""

_DRAW, _FAULT, _RING, _SENSOR, _START = range(5)


def draw_seeded_cases(
    drives: Sequence[RealDrive], per_cause: int, *, severity: float = 0.5, series: int
) -> tuple[tuple[int, Case], ...]:
    """Draw faults for every drive: each cause equally often, each corner in turn.

    Parameters
    ----------
    drives : sequence of RealDrive
    per_cause : int
        Cases of one cause in each drive.
    severity : float
    series : int
        Series of seeds.

    Returns
    -------
    tuple of (int, Case)
        Number of the drive, and what is built into it.
    """
    cases = []
    for place, drive in enumerate(drives):
        for number, model in enumerate(FAULT_MODELS):
            for index in range(per_cause):
                rng = np.random.default_rng([series, place, number, index])
                corner: Place = CORNERS[index % len(CORNERS)] if model.where == "corner" else VEHICLE
                seed = int(rng.integers(2**31))
                case = Case(model.cause, corner, severity, drive.log.duration_s, seed, unseen=True)
                cases.append((place, case))
    return tuple(cases)


def measure_seeded_case(drives: Sequence[RealDrive], task: tuple[int, Case]) -> MeasuredCase:
    """Build a fault into its drive and take every measurement.

    Parameters
    ----------
    drives : sequence of RealDrive
    task : (int, Case)
        As drawn by :func:`draw_seeded_cases`.

    Returns
    -------
    MeasuredCase
        Its traits are the name of the recording and, where the drive cannot show the fault, ``NO_TRACE``.
    """
    place, case = task
    drive = drives[place]
    log = seed_fault(drive, case)
    measurements, not_measurable = measure_all(analyse(log))
    hidden = (NO_TRACE,) if case.cause != NO_FAULT and not _shows(drive, case, log) else ()
    return MeasuredCase(case, measurements, not_measurable, (drive.log.file, *hidden))


def seed_fault(drive: RealDrive, case: Case) -> SpeedLog:
    """Record the drive again with a fault built in.

    Parameters
    ----------
    drive : RealDrive
    case : Case
        Cause, corner, severity and seed; encoder, sensor and control unit are drawn from the seed, of the
        kinds that calibration never draws.

    Returns
    -------
    SpeedLog
        Time stamps, steps, invalid samples and companion channels of the recording; its pulse counts, edges
        and fault bits, which would tell of the healthy wheel, are left out.
    """
    setup = _setup(drive, case.seed)
    motion = _turn(drive, case.seed)
    rings = tuple(make_ring(setup.encoder, row, _stream(case.seed, _RING, row)) for row in range(4))
    row = 0 if case.corner == VEHICLE else CORNERS.index(case.corner)
    strike = {model.cause: model.strike for model in FAULT_MODELS}[case.cause]
    effect = strike(
        FaultSite(
            row=row,
            severity=case.severity,
            setup=setup,
            path=drive.path,
            motion=motion,
            ring=rings[row],
            rng=_stream(case.seed, _FAULT),
        )
    )
    struck = None if case.corner == VEHICLE else row
    effects = [effect if wheel == struck else FaultEffect() for wheel in range(4)]
    edges = [
        _edges(setup, motion, rings[wheel], row=wheel, effect=effects[wheel], seed=case.seed)
        for wheel in range(4)
    ]
    return _sampled(drive, case, _speeds(setup, drive.path, edges, effect=effect, row=row))


def _shows(drive: RealDrive, case: Case, log: SpeedLog) -> bool:
    if case.cause == "channels-swapped":
        return _curved_s(drive.path) >= SHORTEST_CURVE_S
    return leaves_trace(log, seed_fault(drive, replace(case, cause=NO_FAULT, corner=VEHICLE, severity=0.0)))


def _curved_s(path: VehiclePath) -> float:
    """Time in curves of less than about 300 m radius, where left and right differ by more than noise."""
    curved = (np.abs(path.curvature_radpm) > CURVED_RADPM) & (path.speed_mps > SLOWEST_MPS)
    return float(np.count_nonzero(curved)) * GRID_S


def _setup(drive: RealDrive, seed: int) -> Setup:
    """Draw encoder, sensor and unit; the car is the real one, whose tyres and run-out are in the speeds."""
    drawn = draw_unseen_setup(_stream(seed, _DRAW))
    none = (0.0, 0.0, 0.0, 0.0)
    return replace(
        drawn,
        car=replace(drawn.car, circumference_m=drive.circumference_m, wheel_ratio=(1.0, 1.0, 1.0, 1.0)),
        encoder=replace(drawn.encoder, runout_ratio=none),
        unit=replace(drawn.unit, circumference_m=drive.circumference_m),
    )


def _turn(drive: RealDrive, seed: int) -> WheelMotion:
    rate = drive.speed_mps / drive.circumference_m
    start = _stream(seed, _START).uniform(1.0, 2.0, (4, 1))
    return WheelMotion(rate, start + np.cumsum(rate, axis=1) * GRID_S, drive.shake)


def _edges(
    setup: Setup, motion: WheelMotion, ring: Ring, *, row: int, effect: FaultEffect, seed: int
) -> FloatArray:
    """Edges that reach the control unit from one wheel, float64[M]."""
    rate, angle = motion.rate_revps[row], motion.angle_rev[row]
    if effect.rate_ratio is not None:
        rate = turn_with_other_tyre(rate, effect.rate_ratio)
        angle = angle[0] + np.cumsum(rate) * GRID_S
    rng = _stream(seed, _SENSOR, row)
    return send_edges(setup, ring, (rate, angle), effect, shake=motion.shake[row], rng=rng)


def _speeds(
    setup: Setup, path: VehiclePath, edges: Sequence[FloatArray], *, effect: FaultEffect, row: int
) -> UnitOutput:
    output = estimate_speeds(
        [edges[wheel] for wheel in effect.wiring],
        setup.unit,
        edges_per_rev=setup.encoder.edges_per_rev,
        duration_s=path.time_s.size * GRID_S,
        upsets=effect.upsets,
    )
    return output if effect.frozen_spans_s is None else freeze_speed(output, row, effect.frozen_spans_s)


def _sampled(drive: RealDrive, case: Case, output: UnitOutput) -> SpeedLog:
    wheels = {
        corner: _sampled_trace(drive.log.wheels[corner], drive.start_s, output, row)
        for row, corner in enumerate(CORNERS)
    }
    channels = {
        name: channel
        for name, channel in drive.log.channels.items()
        if not name.startswith(("pulses_", "fault_"))
    }
    detail = f"{case.cause} {case.corner}, severity {case.severity:g}, seed {case.seed}"
    return replace(drive.log, wheels=wheels, channels=channels, edges={}).did("fault built in", detail)


def _sampled_trace(trace: SpeedTrace, start_s: float, output: UnitOutput, row: int) -> SpeedTrace:
    cycle = np.maximum(np.searchsorted(output.time_s, trace.time_s - start_s, side="right") - 1, 0)
    speed = output.speed_mps[row, cycle]
    if trace.resolution_mps > 0.0:
        speed = np.round(speed / trace.resolution_mps) * trace.resolution_mps
    invalid: BoolArray = trace.invalid | output.marked[row, cycle]
    return replace(
        trace, time_s=trace.time_s.copy(), speed_mps=np.where(invalid, np.nan, speed), invalid=invalid
    )


def _stream(seed: int, *place: int) -> np.random.Generator:
    return np.random.default_rng([seed, *place])
