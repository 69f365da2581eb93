"""Potholes and rough patches: what the road does to single wheels of a healthy car."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.simulator.equipment import Car
from triage.simulator.vehicle_path import GRID_S, VehiclePath
from triage.speed_log import FloatArray

_HOP_HZ: Final = (9.0, 15.0)
_HOP_DAMPING: Final = (0.08, 0.25)
"""A wheel hops on its tyre and springs at 9 to 15 Hz, some swings long (common practice, no source)."""

_SWING_MPS: Final = (0.05, 1.5)
"""Swings of more than 1 m/s stand in recordings of healthy cars on public roads."""

_PATCH_S: Final = (0.3, 1.5)
_SLOWEST_MPS: Final = 3.0


def swings_from_road(path: VehiclePath, car: Car, hits_per_km: float, rng: np.random.Generator) -> FloatArray:
    """Relative speed swings of the four wheels from hits and rough patches.

    Parameters
    ----------
    path : VehiclePath
    car : Car
        Its wheelbase parts the moments at which front and rear meet the same hole.
    hits_per_km : float
        Mean number of hits; about every fifth is a rough patch under all wheels.
    rng : numpy.random.Generator

    Returns
    -------
    float64[4, N]
        To be added to the ratio of each wheel's speed; rows follow ``CORNERS``.
    """
    swings = np.zeros((4, path.time_s.size))
    for _ in range(rng.poisson(hits_per_km * float(path.distance_m[-1]) / 1000.0)):
        place_m = rng.uniform(0.0, float(path.distance_m[-1]))
        size_mps = _SWING_MPS[0] * (_SWING_MPS[1] / _SWING_MPS[0]) ** rng.uniform()
        if rng.uniform() < 0.2:
            _add_patch(swings, path, place_m, size_mps, rng)
        else:
            _add_hit(swings, path, car, place_m, size_mps=size_mps, rng=rng)
    return swings / np.maximum(path.speed_mps, _SLOWEST_MPS)


def _add_hit(
    swings: FloatArray,
    path: VehiclePath,
    car: Car,
    place_m: float,
    *,
    size_mps: float,
    rng: np.random.Generator,
) -> None:
    side, both_axles = int(rng.integers(2)), rng.uniform() < 0.6
    rows = (side, side + 2) if both_axles else (side + 2 * int(rng.integers(2)),)
    for row in rows:
        later_m = car.wheelbase_m if row >= 2 else 0.0
        first = int(np.searchsorted(path.distance_m, place_m + later_m))
        _add_from(swings[row], first, size_mps * rng.uniform(0.5, 1.0) * _ring_down(rng))


def _add_patch(
    swings: FloatArray, path: VehiclePath, place_m: float, size_mps: float, rng: np.random.Generator
) -> None:
    first = int(np.searchsorted(path.distance_m, place_m))
    count = round(rng.uniform(*_PATCH_S) / GRID_S)
    envelope = np.sin(np.linspace(0.0, np.pi, count))
    for row in range(4):
        kicks = np.where(rng.uniform(size=count) < 12.0 * GRID_S, rng.normal(size=count), 0.0)
        _add_from(swings[row], first, size_mps * envelope * np.convolve(kicks, _ring_down(rng))[:count])


def _ring_down(rng: np.random.Generator) -> FloatArray:
    """Return a decaying swing of unit height at the wheel-hop frequency."""
    hop_hz, damping = rng.uniform(*_HOP_HZ), rng.uniform(*_HOP_DAMPING)
    time_s = np.arange(0.0, 0.5, GRID_S)
    sign = 1.0 if rng.uniform() < 0.5 else -1.0
    swing: FloatArray = (
        sign * np.exp(-2.0 * np.pi * hop_hz * damping * time_s) * np.sin(2.0 * np.pi * hop_hz * time_s)
    )
    return swing


def _add_from(row: FloatArray, first: int, shape: FloatArray) -> None:
    stop = min(first + shape.size, row.size)
    row[first:stop] += shape[: max(stop - first, 0)]
