"""What the car was doing: standstill, pull-away, straight, left, right, braking, slow roll."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Final, Literal, get_args

import numpy as np
from numpy.typing import NDArray

from triage.signals.running import slow_course, zero_for_missing
from triage.speed_log import FloatArray

ManoeuvreKind = Literal["standstill", "pull-away", "straight", "left", "right", "braking", "slow-roll"]

KINDS: Final[tuple[ManoeuvreKind, ...]] = get_args(ManoeuvreKind)

STANDSTILL_MPS = 0.2
SLOW_ROLL_MPS = 2.5
"""Walking to jogging pace: the range in which false brake-control action shows first (common practice)."""

BRAKING_MPS2 = -1.5
PULL_AWAY_MPS2 = 0.5
PULL_AWAY_BELOW_MPS = 6.0
CURVE_LATERAL_MPS2 = 0.8
CURVE_RADPM = 0.02
SHORTEST_S = 0.5


@dataclass(frozen=True, slots=True)
class Manoeuvre:
    """A stretch of the drive in which the car did one thing.

    Attributes
    ----------
    first, stop : int
        Range of samples on the common clock, ``stop`` excluded.
    start_s, stop_s : float
        The same in seconds of the log.
    mean_speed_mps, curvature_radpm, lateral_mps2 : float
        Means over the stretch; curvature and lateral acceleration positive to the left.
    """

    kind: ManoeuvreKind
    first: int
    stop: int
    start_s: float
    stop_s: float
    mean_speed_mps: float
    curvature_radpm: float
    lateral_mps2: float


def longitudinal_acceleration(time_s: FloatArray, reference_mps: FloatArray, period_s: float) -> FloatArray:
    """Acceleration of the car from its reference speed, over about half a second.

    Returns
    -------
    float64[N]
        Metres per second squared; 0 where it cannot be formed.
    """
    if time_s.size < 3:
        return np.zeros(time_s.size)
    per_block = max(1, round(0.1 / period_s)) if period_s else 1
    smooth = slow_course(reference_mps, per_block=per_block, blocks=3)
    half = max(1, round(0.25 / period_s)) if period_s else 1
    acceleration = _rise_over(smooth, half)
    acceleration /= np.maximum(_rise_over(time_s, half), 1e-9)
    return np.nan_to_num(acceleration, copy=False)


def _rise_over(value: FloatArray, half: int) -> FloatArray:
    """Value so many samples later minus that so many samples before, at the ends as many as there are."""
    padded = np.pad(value, half, mode="edge")
    rise: FloatArray = padded[2 * half :] - padded[: -2 * half]
    return rise


def find_manoeuvres(
    time_s: FloatArray,
    reference_mps: FloatArray,
    curvature_radpm: FloatArray,
    *,
    period_s: float,
    acceleration_mps2: FloatArray | None = None,
) -> tuple[Manoeuvre, ...]:
    """Cut the drive into manoeuvres.

    Parameters
    ----------
    time_s, reference_mps, curvature_radpm : float64[N]
        Common clock, speed of the car and curvature of its path (positive to the left).
    period_s : float
        Median step of the clock.
    acceleration_mps2 : float64[N], optional
        From :func:`longitudinal_acceleration`, where the caller has it already.

    Returns
    -------
    tuple of Manoeuvre
        In order of time, without overlap; together they cover the log. Stretches shorter than
        half a second are given to the manoeuvre before them.
    """
    if not time_s.size:
        return ()
    if acceleration_mps2 is None:
        acceleration_mps2 = longitudinal_acceleration(time_s, reference_mps, period_s)
    speed = zero_for_missing(reference_mps)
    lateral = speed**2 * curvature_radpm
    kind = _classify(speed, lateral, curvature_radpm, acceleration_mps2)
    bounds = _merge_short(kind, max(1, round(SHORTEST_S / period_s)) if period_s else 1)
    means = [_means_between(bounds, value) for value in (speed, curvature_radpm, lateral)]
    return tuple(
        Manoeuvre(
            kind=KINDS[kind[first]],
            first=first,
            stop=stop,
            start_s=float(time_s[first]),
            stop_s=float(time_s[min(stop, time_s.size - 1)]),
            mean_speed_mps=mean_mps,
            curvature_radpm=mean_radpm,
            lateral_mps2=mean_mps2,
        )
        for (first, stop), mean_mps, mean_radpm, mean_mps2 in zip(bounds, *means, strict=True)
    )


def _means_between(bounds: list[tuple[int, int]], value: FloatArray) -> list[float]:
    first, stop = np.array(bounds).T
    means: list[float] = (np.add.reduceat(value, first) / (stop - first)).tolist()
    return means


def _classify(
    speed: FloatArray, lateral: FloatArray, curvature: FloatArray, acceleration: FloatArray
) -> NDArray[np.int64]:
    curve = (np.abs(lateral) > CURVE_LATERAL_MPS2) | (np.abs(curvature) > CURVE_RADPM)
    choices: list[tuple[ManoeuvreKind, NDArray[np.bool_]]] = [
        ("standstill", speed < STANDSTILL_MPS),
        ("braking", acceleration < BRAKING_MPS2),
        ("left", curve & (curvature > 0)),
        ("right", curve & (curvature < 0)),
        ("pull-away", (speed < PULL_AWAY_BELOW_MPS) & (acceleration > PULL_AWAY_MPS2)),
        ("slow-roll", speed < SLOW_ROLL_MPS),
    ]
    index = [KINDS.index(name) for name, _ in choices]
    return np.select([flag for _, flag in choices], index, default=KINDS.index("straight"))


def _merge_short(kind: NDArray[np.int64], shortest: int) -> list[tuple[int, int]]:
    """Bounds of the stretches after each too short one was given to its forerunner (``kind`` is changed)."""
    edges = [0, *(np.flatnonzero(np.diff(kind)) + 1).tolist(), kind.size]
    bounds: list[tuple[int, int]] = []
    for first, stop in pairwise(edges):
        if bounds and (stop - first < shortest or kind[first] == kind[bounds[-1][0]]):
            kind[first:stop] = kind[bounds[-1][0]]
            bounds[-1] = (bounds[-1][0], stop)
        else:
            bounds.append((first, stop))
    return bounds
