"""The recorder: samples, rounds and sometimes loses what the control unit sends."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import CORNERS, Corner, is_front
from triage.simulator.control_unit import UnitOutput
from triage.simulator.setup import Car, Recorder
from triage.simulator.vehicle_path import GRID_S, VehiclePath
from triage.speed_log import CHANNEL_UNITS, Channel, FloatArray, SpeedTrace
from triage.units import KMH

_STAMP_S: Final = 1e-4
_CHANNEL_STEPS: Final = {
    "steering_rad": np.deg2rad(0.1),
    "yaw_rate_radps": np.deg2rad(0.02),
    "lateral_mps2": 0.02,
    "longitudinal_mps2": 0.02,
    "brake": 1.0,
}
_CHANNEL_NOISE: Final = {
    "steering_rad": np.deg2rad(0.3),
    "yaw_rate_radps": np.deg2rad(0.1),
    "lateral_mps2": 0.08,
    "longitudinal_mps2": 0.08,
    "brake": 0.0,
}


@dataclass(frozen=True, slots=True)
class Recording:
    """Traces and companion channels as they stand in the log."""

    wheels: dict[Corner, SpeedTrace]
    channels: dict[str, Channel]


def record(
    output: UnitOutput, path: VehiclePath, *, recorder: Recorder, car: Car, rng: np.random.Generator
) -> Recording:
    """Record the unit's output and the companion channels.

    Parameters
    ----------
    output : UnitOutput
        What the unit sends.
    path : VehiclePath
        Motion of the car, for the companion channels.
    recorder : Recorder
        Rate, rounding, losses and channels.
    car : Car
        Dimensions, for the steering angle.
    rng : numpy.random.Generator
        Source of jitter, losses and channel noise.

    Returns
    -------
    Recording
    """
    duration_s = path.time_s.size * GRID_S
    stamps_s = _stamps(recorder, duration_s, rng)
    wheels = {
        corner: _trace(
            output, row, recorder, stamps_s + (0.0 if is_front(corner) else recorder.rear_offset_s)
        )
        for row, corner in enumerate(CORNERS)
    }
    channels = {
        name: _fault_bit(name, output, stamps_s)
        if name.startswith("fault_")
        else _channel(name, path, car=car, stamps_s=stamps_s, rng=rng)
        for name in recorder.channels
    }
    return Recording(wheels, channels)


def _stamps(recorder: Recorder, duration_s: float, rng: np.random.Generator) -> FloatArray:
    """Time stamps of the frames that made it into the log."""
    period = 1.0 / recorder.rate_hz
    count = int((duration_s - recorder.rear_offset_s) / period) - 1
    ideal = (np.arange(count) + 0.5) * period
    # Jitter beyond a third of the period would swap frames.
    jitter = np.clip(rng.normal(0.0, recorder.jitter_s, count), -period / 3.0, period / 3.0)
    keep = rng.uniform(size=count) >= recorder.lost_frame_ratio
    for _ in range(rng.poisson(recorder.gaps_per_min * duration_s / 60.0)):
        start = rng.uniform(0.0, duration_s)
        keep &= (ideal < start) | (ideal > start + 0.05 * 14.0 ** rng.uniform())
    return np.round((ideal + jitter)[keep] / _STAMP_S) * _STAMP_S


def _trace(output: UnitOutput, row: int, recorder: Recorder, stamps_s: FloatArray) -> SpeedTrace:
    cycle = np.maximum(np.searchsorted(output.time_s, stamps_s, side="right") - 1, 0)
    step_mps = recorder.step_kmh * KMH
    speed = np.round(output.speed_mps[row, cycle] / step_mps) * step_mps
    invalid = output.marked[row, cycle]
    return SpeedTrace(
        time_s=np.round(stamps_s / _STAMP_S) * _STAMP_S,
        speed_mps=np.where(invalid, np.nan, speed),
        invalid=invalid,
        resolution_mps=step_mps,
        source=f"{CORNERS[row]}_kmh",
        unit="km/h",
    )


def _fault_bit(name: str, output: UnitOutput, stamps_s: FloatArray) -> Channel:
    row = [f"fault_{corner}" for corner in CORNERS].index(name)
    cycle = np.maximum(np.searchsorted(output.time_s, stamps_s, side="right") - 1, 0)
    return Channel(stamps_s.copy(), output.fault[row, cycle].astype(np.float64), name)


def _channel(
    name: str, path: VehiclePath, *, car: Car, stamps_s: FloatArray, rng: np.random.Generator
) -> Channel:
    value = np.interp(stamps_s, path.time_s, _true_channel(name, path, car))
    value = value + rng.normal(0.0, 1.0, stamps_s.size) * _CHANNEL_NOISE[name]
    step = _CHANNEL_STEPS[name]
    unit = CHANNEL_UNITS[name]
    return Channel(stamps_s.copy(), np.round(value / step) * step, f"{name} [{unit}]" if unit else name)


def _true_channel(name: str, path: VehiclePath, car: Car) -> FloatArray:
    if name == "steering_rad":
        return np.arctan(path.curvature_radpm * car.wheelbase_m) * car.steering_ratio
    if name == "yaw_rate_radps":
        return path.speed_mps * path.curvature_radpm
    if name == "lateral_mps2":
        return path.lateral_mps2
    if name == "longitudinal_mps2":
        return path.acceleration_mps2
    braking = (path.acceleration_mps2 < -0.6) | (path.speed_mps < 0.05)
    return braking.astype(np.float64)
