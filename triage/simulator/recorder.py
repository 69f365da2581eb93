"""The recorder: samples, rounds and sometimes loses what the control unit sends."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.corners import CORNERS, Corner, is_front
from triage.simulator.control_unit import UnitOutput
from triage.simulator.equipment import Car, Recorder
from triage.simulator.vehicle_path import GRID_S, VehiclePath
from triage.speed_log import CHANNEL_UNITS, Channel, FloatArray, SpeedTrace
from triage.units import KMH

_STAMP_S: Final = 1e-4
_UNIT_CHANNELS: Final = ("fault", "pulses")
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
    clocks = _clocks(recorder, path.time_s.size * GRID_S, rng)
    own_s = _wheel_clocks(recorder, clocks)
    wheels = {corner: _trace(output, row, recorder, own_s[row]) for row, corner in enumerate(CORNERS)}
    channels: dict[str, Channel] = {}
    for name in recorder.channels:
        kind, _, corner = name.partition("_")
        if kind in _UNIT_CHANNELS:
            row = [str(each) for each in CORNERS].index(corner)
            channels[name] = _unit_channel(name, row, output, own_s[row])
        else:
            channels[name] = _channel(name, path, car=car, stamps_s=clocks[recorder.rate_hz], rng=rng)
    return Recording(wheels, channels)


def _clocks(recorder: Recorder, duration_s: float, rng: np.random.Generator) -> dict[float, FloatArray]:
    """Time stamps of the frames that made it into the log, keyed by their rate."""
    count = rng.poisson(recorder.gaps_per_min * duration_s / 60.0)
    pauses = [
        (start := rng.uniform(0.0, duration_s), start + 0.05 * 14.0 ** rng.uniform()) for _ in range(count)
    ]
    rates = dict.fromkeys((recorder.rate_hz, *(recorder.wheel_rate_hz or ())))
    return {rate_hz: _stamps(recorder, rate_hz, duration_s, pauses=pauses, rng=rng) for rate_hz in rates}


def _wheel_clocks(recorder: Recorder, clocks: dict[float, FloatArray]) -> list[FloatArray]:
    rates = recorder.wheel_rate_hz or (recorder.rate_hz,) * 4
    late = [0.0 if is_front(corner) else recorder.rear_offset_s for corner in CORNERS]
    return [
        np.round((clocks[rate_hz] + offset) / _STAMP_S) * _STAMP_S
        for rate_hz, offset in zip(rates, late, strict=True)
    ]


def _stamps(
    recorder: Recorder,
    rate_hz: float,
    duration_s: float,
    *,
    pauses: list[tuple[float, float]],
    rng: np.random.Generator,
) -> FloatArray:
    period = 1.0 / rate_hz
    count = int((duration_s - recorder.rear_offset_s) / period) - 1
    ideal = (np.arange(count) + 0.5) * period
    # Jitter beyond a third of the period would swap frames.
    jitter = np.clip(rng.normal(0.0, recorder.jitter_s, count), -period / 3.0, period / 3.0)
    keep = rng.uniform(size=count) >= recorder.lost_frame_ratio
    for start, stop in pauses:
        keep &= (ideal < start) | (ideal > stop)
    return np.round((ideal + jitter)[keep] / _STAMP_S) * _STAMP_S


def _trace(output: UnitOutput, row: int, recorder: Recorder, stamps_s: FloatArray) -> SpeedTrace:
    cycle = np.maximum(np.searchsorted(output.time_s, stamps_s, side="right") - 1, 0)
    step_mps = recorder.step_kmh * KMH
    speed = np.round(output.speed_mps[row, cycle] / step_mps) * step_mps
    invalid = output.marked[row, cycle]
    return SpeedTrace(
        time_s=stamps_s,
        speed_mps=np.where(invalid, np.nan, speed),
        invalid=invalid,
        resolution_mps=step_mps,
        source=f"{CORNERS[row]}_kmh",
        unit="km/h",
    )


def _unit_channel(name: str, row: int, output: UnitOutput, stamps_s: FloatArray) -> Channel:
    cycle = np.maximum(np.searchsorted(output.time_s, stamps_s, side="right") - 1, 0)
    source = output.fault if name.startswith("fault_") else output.pulses
    return Channel(stamps_s.copy(), source[row, cycle].astype(np.float64), name)


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
