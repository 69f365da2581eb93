"""The path of the car: speed and curvature over time, as a driver would recognise them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final

import numpy as np
from scipy.ndimage import uniform_filter1d
from scipy.signal import lfilter

from triage.simulator.equipment import Drive, LegKind
from triage.speed_log import FloatArray
from triage.units import KMH

GRID_S: Final = 0.001
"""Step of the time grid on which car and wheels move."""

_LATERAL_LIMIT_MPS2: Final = 3.5
_TIGHTEST_RADIUS_M: Final = 6.5
_FULL_LOCK_M: Final = (4.5, 6.5)
"""Radii of the middle of the rear axle at full lock: turning circles of 10.5 to 13 m (common practice)."""

_HARD_BRAKING_MPS2: Final = (6.0, 9.0)
_CREEP_KMH: Final = (2.0, 8.0)


@dataclass(frozen=True, slots=True)
class VehiclePath:
    """Motion of the middle of the rear axle.

    Attributes
    ----------
    time_s : float64[N]
        Even grid from 0 in steps of :data:`GRID_S`.
    speed_mps, acceleration_mps2 : float64[N]
        Along the path, never negative speed.
    curvature_radpm : float64[N]
        Positive to the left (ISO 8855).
    """

    time_s: FloatArray
    speed_mps: FloatArray
    acceleration_mps2: FloatArray
    curvature_radpm: FloatArray

    @property
    def lateral_mps2(self) -> FloatArray:
        """Lateral acceleration, positive to the left, float64[N]."""
        return self.speed_mps**2 * self.curvature_radpm

    @property
    def distance_m(self) -> FloatArray:
        """Distance covered since the start, float64[N]."""
        return np.cumsum(self.speed_mps) * GRID_S


@dataclass(frozen=True, slots=True)
class _Leg:
    """One stretch: reach a speed at a rate, then keep it with a constant curvature."""

    speed_mps: float
    rate_mps2: float
    hold_s: float
    curvature_radpm: float = 0.0


def plan_path(drive: Drive, duration_s: float, rng: np.random.Generator) -> VehiclePath:
    """Plan a drive with stops, pull-aways, slow rolls, curves both ways, braking and straights.

    Parameters
    ----------
    drive : Drive
        Kinds of driving and the driver's manner.
    duration_s : float
        Length of the recorded part in seconds.
    rng : numpy.random.Generator
        Source of every choice.

    Returns
    -------
    VehiclePath
    """
    total_s = duration_s + drive.lead_in_s
    knots_s, speeds, curvatures = _knots(drive, total_s, rng)
    time_s: FloatArray = np.arange(round(total_s / GRID_S), dtype=np.float64) * GRID_S
    speed = _smooth(np.interp(time_s, knots_s, speeds), 0.7)
    curvature = _smooth(np.interp(time_s, knots_s, curvatures), 0.9)
    speed = np.where(speed < 1e-3, 0.0, speed * _driver_drift(time_s.size, rng))
    curvature = _tame(curvature + _lane_keeping(speed, rng), speed)
    first = round(drive.lead_in_s / GRID_S)
    acceleration = np.gradient(speed, GRID_S)
    return VehiclePath(
        time_s=time_s[: time_s.size - first],
        speed_mps=speed[first:],
        acceleration_mps2=_smooth(acceleration, 0.1)[first:],
        curvature_radpm=curvature[first:],
    )


def _knots(
    drive: Drive, total_s: float, rng: np.random.Generator
) -> tuple[list[float], list[float], list[float]]:
    now = float(rng.uniform(0.8, 2.0))
    times, speeds, curvatures = [0.0, now], [0.0, 0.0], [0.0, 0.0]
    for leg in _endless_legs(drive, rng):
        gain = leg.speed_mps - speeds[-1]
        change_s = max(abs(gain) / (_rate_mps2(leg, gain, drive, rng) * drive.briskness), 0.3)
        if gain > 4.0:
            # A car pulls hardest at low speed: 58 % of the gain in the first 42 % of the time.
            times.append(now + 0.42 * change_s)
            speeds.append(speeds[-1] + 0.58 * gain)
            curvatures.append(curvatures[-1] + 0.42 * (leg.curvature_radpm - curvatures[-1]))
        now += change_s
        times += [now, now + leg.hold_s]
        speeds += [leg.speed_mps] * 2
        curvatures += [leg.curvature_radpm] * 2
        now += leg.hold_s
        if now > total_s + 2.0:
            break
    return times, speeds, curvatures


def _rate_mps2(leg: _Leg, gain_mps: float, drive: Drive, rng: np.random.Generator) -> float:
    """Acceleration of a leg; a hasty driver brakes hard now and then."""
    if gain_mps < -6.0 and drive.hard_stop_ratio > 0.0 and rng.uniform() < drive.hard_stop_ratio:
        return float(rng.uniform(*_HARD_BRAKING_MPS2)) / drive.briskness
    return leg.rate_mps2


def _endless_legs(drive: Drive, rng: np.random.Generator) -> Iterator[_Leg]:
    while True:
        for kind in drive.legs:
            yield from _ROUTINES[kind](drive.briskness, rng)


def _town(briskness: float, rng: np.random.Generator) -> list[_Leg]:
    side = _side(rng)
    cruise = rng.uniform(32.0, 52.0) * KMH
    return [
        _straight(cruise, rng.uniform(1.4, 2.4), rng.uniform(3.0, 6.0)),
        _curve(
            rng.uniform(16.0, 26.0) * KMH, side * rng.uniform(1.8, 3.2) * briskness, rng.uniform(2.5, 4.0)
        ),
        _straight(cruise, 1.7, rng.uniform(2.5, 5.0)),
        _curve(
            rng.uniform(20.0, 30.0) * KMH, -side * rng.uniform(1.8, 3.2) * briskness, rng.uniform(2.5, 4.0)
        ),
        _straight(rng.uniform(25.0, 40.0) * KMH, 1.6, rng.uniform(1.5, 3.0)),
        *_arrive(rng, brake_mps2=rng.uniform(2.0, 4.5)),
    ]


def _country(briskness: float, rng: np.random.Generator) -> list[_Leg]:
    side = _side(rng)
    cruise = rng.uniform(65.0, 95.0) * KMH
    bend = rng.uniform(55.0, 75.0) * KMH
    return [
        _straight(cruise, rng.uniform(1.8, 2.6), rng.uniform(3.0, 6.0)),
        _curve(bend, side * rng.uniform(1.5, 3.4) * briskness, rng.uniform(3.0, 5.0)),
        _curve(bend, -side * rng.uniform(1.5, 3.4) * briskness, rng.uniform(3.0, 5.0)),
        _straight(cruise, 1.4, rng.uniform(3.0, 6.0)),
        _curve(cruise, side * rng.uniform(0.6, 1.8), rng.uniform(2.0, 4.0)),
        *_arrive(rng, brake_mps2=rng.uniform(2.2, 4.0)),
    ]


def _motorway(briskness: float, rng: np.random.Generator) -> list[_Leg]:
    side = _side(rng)
    cruise = rng.uniform(95.0, 125.0) * KMH
    return [
        _curve(
            rng.uniform(35.0, 45.0) * KMH, side * rng.uniform(1.8, 3.0) * briskness, rng.uniform(3.0, 5.0)
        ),
        _straight(cruise, rng.uniform(2.0, 2.8), rng.uniform(5.0, 10.0)),
        _curve(cruise, -side * rng.uniform(0.6, 1.5), rng.uniform(2.0, 5.0)),
        _straight(cruise * rng.uniform(0.85, 1.05), 0.6, rng.uniform(4.0, 8.0)),
        _curve(
            rng.uniform(40.0, 50.0) * KMH, -side * rng.uniform(1.8, 3.0) * briskness, rng.uniform(3.0, 5.0)
        ),
        *_arrive(rng, brake_mps2=rng.uniform(2.2, 3.5)),
    ]


def _yard(briskness: float, rng: np.random.Generator) -> list[_Leg]:
    side = _side(rng)
    return [
        _straight(rng.uniform(10.0, 18.0) * KMH, rng.uniform(0.9, 1.6), rng.uniform(2.0, 4.0)),
        _curve(rng.uniform(8.0, 13.0) * KMH, side * rng.uniform(0.7, 1.3) * briskness, rng.uniform(3.0, 5.0)),
        _curve(
            rng.uniform(8.0, 13.0) * KMH, -side * rng.uniform(0.7, 1.3) * briskness, rng.uniform(3.0, 5.0)
        ),
        *_arrive(rng, brake_mps2=rng.uniform(1.2, 2.2)),
    ]


def _queue(briskness: float, rng: np.random.Generator) -> list[_Leg]:
    """Stop and go: a few metres at a time, hardly ever faster than a bicycle."""
    legs: list[_Leg] = []
    for _ in range(4):
        top = 4.0 * 6.0 ** rng.uniform() * KMH * briskness
        legs.append(_straight(top, rng.uniform(0.6, 1.6), rng.uniform(0.5, 4.0)))
        legs.append(_straight(0.0, rng.uniform(0.8, 2.0), rng.uniform(1.0, 5.0)))
    return legs


def _cruise(briskness: float, rng: np.random.Generator) -> list[_Leg]:
    """Motorway without an end: no curve worth the name, no stop."""
    return [
        _straight(rng.uniform(85.0, 125.0) * KMH, rng.uniform(0.3, 1.0) * briskness, rng.uniform(8.0, 30.0)),
        _curve(rng.uniform(95.0, 120.0) * KMH, _side(rng) * rng.uniform(0.05, 0.3), rng.uniform(5.0, 15.0)),
    ]


def _parking(briskness: float, rng: np.random.Generator) -> list[_Leg]:
    """Creep at full lock to one side and the other."""
    side, legs = _side(rng), list[_Leg]()
    for _ in range(3):
        curvature, creep = side / rng.uniform(*_FULL_LOCK_M), rng.uniform(4.0, 8.0) * KMH * briskness
        legs.append(_Leg(float(creep), 0.8, float(rng.uniform(2.0, 4.0)), float(curvature)))
        legs.append(_Leg(0.0, 1.2, float(rng.uniform(1.0, 2.5)), float(curvature)))
        side = -side
    return legs


_ROUTINES: Final[dict[LegKind, Callable[[float, np.random.Generator], list[_Leg]]]] = {
    "town": _town,
    "country": _country,
    "motorway": _motorway,
    "yard": _yard,
    "queue": _queue,
    "cruise": _cruise,
    "parking": _parking,
}


def _arrive(rng: np.random.Generator, *, brake_mps2: float) -> list[_Leg]:
    """Brake, creep towards the line, stop, wait."""
    creep = float(rng.uniform(*_CREEP_KMH)) * KMH
    return [_straight(creep, brake_mps2, rng.uniform(1.5, 3.5)), _straight(0.0, 0.8, rng.uniform(2.0, 4.0))]


def _straight(speed_mps: float, rate_mps2: float, hold_s: float) -> _Leg:
    return _Leg(float(speed_mps), float(rate_mps2), float(hold_s))


def _curve(speed_mps: float, lateral_mps2: float, hold_s: float) -> _Leg:
    limit = 1.0 / _TIGHTEST_RADIUS_M
    curvature = float(np.clip(lateral_mps2 / speed_mps**2, -limit, limit))
    return _Leg(float(speed_mps), 2.0, float(hold_s), curvature)


def _side(rng: np.random.Generator) -> float:
    return 1.0 if rng.uniform() < 0.5 else -1.0


def _smooth(values: FloatArray, width_s: float) -> FloatArray:
    size = max(round(width_s / GRID_S), 1)
    return np.asarray(uniform_filter1d(uniform_filter1d(values, size), size), dtype=np.float64)


def slow_noise(count: int, time_constant_s: float, rng: np.random.Generator) -> FloatArray:
    """First-order noise of unit standard deviation on the grid, drawn at 50 Hz and joined by lines.

    Parameters
    ----------
    count : int
        Grid cells.
    time_constant_s : float
        After so long the correlation has fallen to 1/e.
    rng : numpy.random.Generator

    Returns
    -------
    float64[count]
    """
    step = 20
    coarse = count // step + 2
    keep = float(np.exp(-step * GRID_S / time_constant_s))
    drive = rng.normal(0.0, np.sqrt(1.0 - keep**2), coarse)
    values = lfilter([1.0], [1.0, -keep], drive)
    return np.interp(np.arange(count), np.arange(coarse) * step, values)


def _driver_drift(count: int, rng: np.random.Generator) -> FloatArray:
    return 1.0 + 0.012 * _smooth(slow_noise(count, 4.0, rng), 0.5)


def _lane_keeping(speed_mps: FloatArray, rng: np.random.Generator) -> FloatArray:
    # Steady hands: corrections worth some 0.1 m/s2, and little steering below walking pace.
    noise = _smooth(slow_noise(speed_mps.size, 1.5, rng), 0.4)
    return 0.12 * noise / (speed_mps**2 + 60.0)


def _tame(curvature_radpm: FloatArray, speed_mps: FloatArray) -> FloatArray:
    limit = _LATERAL_LIMIT_MPS2 / np.maximum(speed_mps, 1.0) ** 2
    return np.clip(curvature_radpm, -limit, limit)
