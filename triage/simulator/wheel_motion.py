"""How the four wheels turn while the car follows its path."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from scipy.signal import lfilter

from triage.corners import CORNERS, SIDE_SIGN, is_front
from triage.simulator.equipment import Car, Drive
from triage.simulator.road_hits import swings_from_road
from triage.simulator.slips import brief_slips
from triage.simulator.vehicle_path import GRID_S, VehiclePath
from triage.speed_log import FloatArray

_ROAD_STEP_M: Final = 0.05
_STRETCH_M: Final = 150.0
_SHAKE_OF_ROUGHNESS: Final = 0.15
_JOLT_RATIO: Final = 0.05
"""Speed swing over a pothole that goes with a shake as hard as an ordinary bump's (judgement)."""

_NOISE_STEP: Final = 10
"""Grid steps between two draws of a wheel's own noise (100 Hz)."""


@dataclass(frozen=True, slots=True)
class WheelMotion:
    """Rotation of the wheels on the path's grid; rows follow ``CORNERS``.

    Attributes
    ----------
    rate_revps : float64[4, N]
        Revolutions per second.
    angle_rev : float64[4, N]
        Revolutions since before the start, never falling.
    shake : float64[4, N]
        How hard the wheel end shakes, about 1 on an ordinary road, more on bumps, 0 at standstill.
    """

    rate_revps: FloatArray
    angle_rev: FloatArray
    shake: FloatArray


def wheel_speed_factors(curvature_radpm: FloatArray, *, track_m: float, wheelbase_m: float) -> FloatArray:
    """Speed of each wheel over that of the middle of the rear axle.

    Parameters
    ----------
    curvature_radpm : float64[N]
        Path curvature at the middle of the rear axle, positive to the left.
    track_m, wheelbase_m : float
        Dimensions of the car.

    Returns
    -------
    float64[4, N]
        Rows follow ``CORNERS``.

    Notes
    -----
    Rigid body without slip angles; every wheel rolls perpendicular to its radius about one centre
    (Ackermann geometry).

    References
    ----------
    T. D. Gillespie, Fundamentals of Vehicle Dynamics, SAE R-114, 1992, chapter 6 (low-speed turning).
    """
    return np.stack(
        [
            _speed_factor(curvature_radpm, row, track_m=track_m, wheelbase_m=wheelbase_m)
            for row in range(len(CORNERS))
        ]
    )


def _speed_factor(curvature_radpm: FloatArray, row: int, *, track_m: float, wheelbase_m: float) -> FloatArray:
    along = 1.0 - curvature_radpm * SIDE_SIGN[CORNERS[row]] * track_m / 2.0
    return np.hypot(along, curvature_radpm * wheelbase_m) if is_front(CORNERS[row]) else np.abs(along)


def move_wheels(
    path: VehiclePath,
    car: Car,
    rngs: tuple[np.random.Generator, ...],
    *,
    noise_ratio: FloatArray,
    drive: Drive,
) -> WheelMotion:
    """Turn the path into wheel angles with slip, road and healthy look-alikes of faults.

    Parameters
    ----------
    path : VehiclePath
        Motion of the car.
    car : Car
        Dimensions, tyres, driven axle.
    rngs : five generators
        One for what the wheels share, one for each wheel.
    noise_ratio : float64[4]
        Factor on each wheel's own noise.
    drive : Drive
        Its surface, potholes and grip.

    Returns
    -------
    WheelMotion
    """
    shared, *own = rngs
    surface = _surface(path, car, drive, shared)
    textures = [_road_texture(surface, car, shared) for _ in range(2)]
    slips = brief_slips(path, car, drive, shared)
    hits = swings_from_road(path, car, drive.hits_per_km, shared)
    rate, shake = np.empty((4, path.time_s.size)), np.empty((4, path.time_s.size))
    distance = path.distance_m
    for row in range(4):
        road, bumps = _meet_road(textures[row % 2], distance + (car.wheelbase_m if row < 2 else 0.0))
        ratio = 1.0 + road + _steady_slip(path, car, row) + _load_effect(path, row)
        ratio += hits[row]
        ratio += _own_noise(path.time_s.size, own[row]) * car.wheel_noise_ratio * noise_ratio[row]
        for slip in slips:
            if slip.row == row:
                slip.add_to(ratio)
        factor = _speed_factor(path.curvature_radpm, row, track_m=car.track_m, wheelbase_m=car.wheelbase_m)
        circumference = car.circumference_m * car.wheel_ratio[row]
        rate[row] = path.speed_mps * factor * np.maximum(ratio, 0.0) / circumference
        jolt = np.minimum(np.abs(hits[row]) / _JOLT_RATIO, 1.0)
        shake[row] = (1.0 + bumps + jolt) * np.minimum(path.speed_mps / 8.0, 1.5)
    start = np.array([[rng.uniform(1.0, 2.0)] for rng in own])
    return WheelMotion(rate, start + np.cumsum(rate, axis=1) * GRID_S, shake)


def _load_effect(path: VehiclePath, row: int) -> FloatArray:
    # The loaded outer tyre is pressed a little flatter and turns faster (0.03 % per m/s2, judgement).
    return -SIDE_SIGN[CORNERS[row]] * 3e-4 * path.lateral_mps2


def _steady_slip(path: VehiclePath, car: Car, row: int) -> FloatArray:
    """Slip ratio of a wheel under power and brakes, float64[N]."""
    drag = np.where(path.speed_mps > 0.0, 0.12 + 4e-4 * path.speed_mps**2, 0.0)
    push = path.acceleration_mps2 + drag
    shares = {"front": (1.0, 0.0), "rear": (0.0, 1.0), "both": (0.5, 0.5)}[car.driven_axle]
    # Brakes are laid out front-heavy, so that the rear never locks first.
    power, brake = (shares[0], 0.6) if row < 2 else (shares[1], 0.35)
    return car.slip_per_mps2 * (power * np.maximum(push, 0.0) + brake * np.minimum(push, 0.0))


def _surface(path: VehiclePath, car: Car, drive: Drive, rng: np.random.Generator) -> FloatArray:
    """Roughness along the road over the ordinary one, float64[P]: cobbles and gravel stand out."""
    length_m = float(path.distance_m[-1]) + car.wheelbase_m
    roughness = np.ones(int(length_m / _ROAD_STEP_M) + 3)
    if drive.rough_ratio <= 0.0:
        return roughness
    for _ in range(max(round(length_m * drive.rough_ratio / _STRETCH_M), 1)):
        first = int(rng.uniform(0.0, roughness.size))
        reach = int(_STRETCH_M * rng.uniform(0.3, 1.7) / _ROAD_STEP_M)
        roughness[first : first + reach] = drive.rough_factor
    return roughness


def _road_texture(
    roughness: FloatArray, car: Car, rng: np.random.Generator
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Places along one side of the road, the speed noise it gives there and its bumps."""
    count = roughness.size
    noise = lfilter([1.0], [1.0, -1.2, 0.45], rng.normal(size=count)) * car.road_noise_ratio / 2.1
    hits = _bump_profile(count, rng)
    places: FloatArray = np.arange(count, dtype=np.float64) * _ROAD_STEP_M
    bumps = np.abs(hits) + _SHAKE_OF_ROUGHNESS * (roughness - 1.0)
    return places, noise * roughness + 0.002 * hits, np.asarray(bumps, dtype=np.float64)


def _meet_road(
    texture: tuple[FloatArray, FloatArray, FloatArray], place_m: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Speed noise and bump strength at the places a wheel rolls over, both float64[N]."""
    places, noise, bumps = texture
    return np.interp(place_m, places, noise), np.interp(place_m, places, bumps)


def _bump_profile(count: int, rng: np.random.Generator) -> FloatArray:
    """Potholes and joints: a few strong, short swings on otherwise even ground."""
    hits = np.zeros(count)
    number = rng.poisson(count * _ROAD_STEP_M / 60.0)
    where = rng.integers(0, count, number)
    np.add.at(hits, where, rng.uniform(0.5, 2.5, number))
    shape = np.array([0.3, 0.8, 1.0, 0.4, -0.5, -1.0, -0.7, -0.2, 0.2, 0.1])
    return np.convolve(hits, shape, mode="full")[:count]


def _own_noise(count: int, rng: np.random.Generator) -> FloatArray:
    """Broadband noise of unit standard deviation between about 1 and 25 Hz."""
    coarse = count // _NOISE_STEP + 2
    white = rng.normal(size=coarse)
    low_pass = lfilter([0.55], [1.0, -0.45], white)
    band = low_pass - lfilter([0.06], [1.0, -0.94], low_pass)
    return np.interp(np.arange(count), np.arange(coarse) * _NOISE_STEP, band / 0.58)
