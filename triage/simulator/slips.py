"""Sound wheels that leave the car's speed for a moment: spin at pull-away, slip under hard braking."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.simulator.equipment import Car, Drive
from triage.simulator.vehicle_path import GRID_S, VehiclePath
from triage.speed_log import BoolArray, FloatArray

_SPIN_FROM_MPS: Final = 0.6
_FIRM_BRAKING_MPS2: Final = -3.2
_CYCLES_HZ: Final = (4.0, 8.0)
"""Brake control lets a wheel slip and recover some four to eight times a second (common practice)."""


@dataclass(frozen=True, slots=True)
class Slip:
    """One wheel running away from the car's speed, or behind it, for a moment.

    Attributes
    ----------
    row : int
        Wheel as an index into ``CORNERS``.
    first : int
        Cell of the path's grid where it begins.
    ratio : float64[K]
        To be added to the ratio of the wheel's speed to the car's.
    """

    row: int
    first: int
    ratio: FloatArray

    def add_to(self, ratio: FloatArray) -> None:
        """Add it to a wheel's ratio, float64[N], in place; what lies beyond the drive is left out."""
        stop = min(self.first + self.ratio.size, ratio.size)
        ratio[self.first : stop] += self.ratio[: max(stop - self.first, 0)]


def brief_slips(path: VehiclePath, car: Car, drive: Drive, rng: np.random.Generator) -> list[Slip]:
    """Draw every slip of a drive.

    Parameters
    ----------
    path : VehiclePath
    car : Car
        Its driven axle spins.
    drive : Drive
        Says how often, and on which ground.
    rng : numpy.random.Generator

    Returns
    -------
    list of Slip
    """
    spins = [
        spin
        for start in _rising(path.speed_mps > _SPIN_FROM_MPS)
        for spin in _spins_at(start, path, car, drive, rng)
    ]
    slippery_side = int(rng.integers(2))
    locks = [
        lock
        for start in _rising(path.acceleration_mps2 < _FIRM_BRAKING_MPS2)
        for row in _braked_too_hard(drive, slippery_side, rng)
        for lock in _locks_of(row, start, rng)
    ]
    return spins + locks


def _spins_at(
    start: int, path: VehiclePath, car: Car, drive: Drive, rng: np.random.Generator
) -> Iterator[Slip]:
    driven = {"front": (0, 1), "rear": (2, 3), "both": (0, 1, 2, 3)}[car.driven_axle]
    if drive.loose_ground and rng.uniform() < 0.7:
        height, length_s = rng.uniform(0.3, 2.0), rng.uniform(0.3, 1.5)
        for row in driven:
            yield _spin(row, start, path, height_mps=height * rng.uniform(0.6, 1.0), length_s=length_s)
    elif rng.uniform() < drive.spin_ratio:
        row = driven[int(rng.integers(len(driven)))]
        height, length_s = 0.1 * 20.0 ** rng.uniform(), rng.uniform(0.1, 0.6)
        yield _spin(row, start, path, height_mps=height, length_s=length_s)


def _spin(row: int, start: int, path: VehiclePath, *, height_mps: float, length_s: float) -> Slip:
    shape = height_mps * _swing(length_s)[: path.speed_mps.size - start]
    speed = path.speed_mps[start : start + shape.size]
    return Slip(row, start, shape / np.maximum(speed, _SPIN_FROM_MPS / 2.0))


def _braked_too_hard(drive: Drive, slippery_side: int, rng: np.random.Generator) -> list[int]:
    """Wheels that slip in one braking; mostly a front one, since brakes are laid out front-heavy."""
    if drive.split_grip:
        return [
            row for row, share in ((slippery_side, 0.9), (slippery_side + 2, 0.6)) if rng.uniform() < share
        ]
    if rng.uniform() >= drive.slip_ratio:
        return []
    return [int(rng.choice(4, p=(0.35, 0.35, 0.15, 0.15)))]


def _locks_of(row: int, start: int, rng: np.random.Generator) -> Iterator[Slip]:
    """One slip with recovery, or the cycles of brake control one after the other."""
    begin = start + round(rng.uniform(0.05, 0.2) / GRID_S)
    cycles = 1 if rng.uniform() < 0.6 else int(rng.integers(2, 7))
    period = round(1.0 / rng.uniform(*_CYCLES_HZ) / GRID_S)
    for number in range(cycles):
        depth = 0.06 * 7.0 ** rng.uniform()
        length_s = min(rng.uniform(0.12, 0.3), period * GRID_S)
        yield Slip(row, begin + number * period, -depth * _swing(length_s))


def _swing(length_s: float) -> FloatArray:
    """Rise and fall of unit height, float64[K]."""
    return np.asarray(np.sin(np.linspace(0.0, np.pi, round(length_s / GRID_S))) ** 2, dtype=np.float64)


def _rising(flags: BoolArray) -> list[int]:
    return [int(place) + 1 for place in np.flatnonzero(flags[1:] & ~flags[:-1])]
