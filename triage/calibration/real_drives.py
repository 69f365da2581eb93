"""The motion of a car and its wheels, rebuilt from a recording of a real drive."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from scipy.ndimage import uniform_filter1d

from triage.corners import CORNERS
from triage.errors import SettingsError
from triage.signals.analysis import Analysis, analyse
from triage.signals.revolution_line import RevolutionLine
from triage.simulator.vehicle_path import GRID_S, VehiclePath
from triage.speed_log import FloatArray, SpeedLog, SpeedTrace

USUAL_CIRCUMFERENCE_M: Final = 2.0
"""Taken where the revolution does not show in the recording."""

LEAD_S: Final = 1.0
"""The car rolls so long at its first speed before the recording, so that the control unit is running."""

SHORTEST_MOVING_S: Final = 10.0
ACCELERATION_WINDOW_S: Final = 0.3
CURVATURE_WINDOW_S: Final = 1.0
ROUGHEST: Final = 2.0
"""Bumps are counted up to this many times the usual road (judgement)."""


@dataclass(frozen=True, slots=True)
class RealDrive:
    """A recording of a healthy car and the motion rebuilt from it.

    Attributes
    ----------
    log : SpeedLog
        The recording.
    start_s : float
        Instant of the recording at which the grid of ``path`` begins, ``LEAD_S`` before its first stamp.
    path : VehiclePath
        Speed and curvature of the car on the simulator's grid.
    speed_mps : float64[4, N]
        Recorded speeds on that grid, joined by straight lines over gaps; rows follow ``CORNERS``.
    shake : float64[4, N]
        How hard the road shakes each wheel end (see :class:`triage.simulator.wheel_motion.WheelMotion`).
    circumference_m : float
        Recorded metres of one revolution, from the ripple of the real rings where that shows.
    """

    log: SpeedLog
    start_s: float
    path: VehiclePath
    speed_mps: FloatArray
    shake: FloatArray
    circumference_m: float


def rebuild_drive(log: SpeedLog) -> RealDrive:
    """Rebuild the motion of the wheels from a recording of a healthy car.

    Parameters
    ----------
    log : SpeedLog

    Returns
    -------
    RealDrive

    Raises
    ------
    SettingsError
        When a wheel is missing, or the car hardly moves.
    """
    # The angle must be that of the recorded speeds, from which the edges are made, not that of a counter.
    counted = [name for name in log.channels if name.startswith("pulses_")]
    kept = {name: channel for name, channel in log.channels.items() if name not in counted}
    analysis = analyse(replace(log, channels=kept))
    _refuse_unusable(log, analysis)
    start_s = min(float(trace.time_s[0]) for trace in log.wheels.values()) - LEAD_S
    stop_s = max(float(trace.time_s[-1]) for trace in log.wheels.values())
    time_s: FloatArray = np.arange(int((stop_s - start_s) / GRID_S) + 2, dtype=np.float64) * GRID_S
    path = _path(analysis, time_s, start_s)
    return RealDrive(
        log=log,
        start_s=start_s,
        path=path,
        speed_mps=np.stack([_continuous(log.wheels[corner], time_s + start_s) for corner in CORNERS]),
        shake=_shake(analysis, path, start_s),
        circumference_m=_circumference(analysis),
    )


def _refuse_unusable(log: SpeedLog, analysis: Analysis) -> None:
    silent = [corner for corner, trace in log.wheels.items() if trace.valid_count < 2]
    if silent:
        raise SettingsError(
            f"{log.file}: the wheel {silent[0]} has no speed",
            hint="Faults are built into recordings of four healthy wheels.",
        )
    if analysis.moving_s < SHORTEST_MOVING_S:
        raise SettingsError(f"{log.file}: the car hardly moves", hint="Name a recording of a drive.")


def _path(analysis: Analysis, time_s: FloatArray, start_s: float) -> VehiclePath:
    clock_s = analysis.clock.time_s - start_s
    reference = analysis.reference
    speed = np.maximum(_filled(clock_s, np.abs(reference.reference_mps), time_s), 0.0)
    curvature = _smooth(_filled(clock_s, reference.curvature_radpm, time_s), CURVATURE_WINDOW_S)
    return VehiclePath(
        time_s=time_s,
        speed_mps=speed,
        acceleration_mps2=_smooth(np.gradient(speed, GRID_S), ACCELERATION_WINDOW_S),
        curvature_radpm=curvature,
    )


def _shake(analysis: Analysis, path: VehiclePath, start_s: float) -> FloatArray:
    """Bumps as the quick deviations of the other wheels tell them, on the simulator's scale."""
    rough = analysis.residuals.roughness_ratio
    usual = max(float(np.nanmedian(rough)), 1e-6) if np.isfinite(rough).any() else 1.0
    clock_s = analysis.clock.time_s - start_s
    bumps = [np.clip(_filled(clock_s, row / usual - 1.0, path.time_s), 0.0, ROUGHEST) for row in rough]
    return (1.0 + np.stack(bumps)) * np.minimum(path.speed_mps / 8.0, 1.5)


def _circumference(analysis: Analysis) -> float:
    found = [line.circumference_m for line in analysis.own_lines if isinstance(line, RevolutionLine)]
    return float(np.median(found)) if found else USUAL_CIRCUMFERENCE_M


def _continuous(trace: SpeedTrace, time_s: FloatArray) -> FloatArray:
    known = ~trace.invalid
    return np.maximum(np.interp(time_s, trace.time_s[known], np.abs(trace.speed_mps[known])), 0.0)


def _filled(clock_s: FloatArray, value: FloatArray, time_s: FloatArray) -> FloatArray:
    known = np.isfinite(value)
    return np.interp(time_s, clock_s[known], value[known]) if known.any() else np.zeros(time_s.size)


def _smooth(value: FloatArray, window_s: float) -> FloatArray:
    return np.asarray(uniform_filter1d(value, max(round(window_s / GRID_S), 1)), dtype=np.float64)
