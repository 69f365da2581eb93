"""Stretches of a drive over which an integrated angle can be trusted, and those that are looked at."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.speed_log import FloatArray

COHERENT_M: Final = 1500.0
"""Longest stretch over which the integrated angle is trusted to a fraction of a revolution (judgement)."""

MOST_STRETCHES: Final = 10
"""Fifteen kilometres show the line of a wheel as well as a longer drive; more only cost time. Of 21 simulated
drives of 40 minutes with the slightest faults each had the same verdict with 10, 14 and all of them."""

FEWEST_SAMPLES: Final = 100

SPARED_M: Final = 15.0
"""Left out at both ends of a stretch, so that the samples left are cut into the same stretches again even if
the first and the last of all are dropped."""


def stretch_length(distance_m: FloatArray) -> tuple[float, int]:
    """Length of a stretch in metres, and how many of them a drive makes.

    Parameters
    ----------
    distance_m : float64[N]
        Of the usable samples, never falling, N > 0.
    """
    length_m = float(distance_m[-1] - distance_m[0])
    number = max(1, int(np.ceil(length_m / COHERENT_M)))
    return length_m / number, number


def cut_into_stretches(distance_m: FloatArray) -> list[slice]:
    """Cut usable samples into stretches of equal length; those that hold too few samples are left out."""
    each_m, number = stretch_length(distance_m)
    bounds = np.searchsorted(distance_m, distance_m[0] + each_m * np.arange(number + 1))
    bounds[-1] = distance_m.size
    return [slice(first, stop) for first, stop in pairwise(bounds) if stop - first >= FEWEST_SAMPLES]


def spread_evenly(parts: list[slice]) -> list[slice]:
    """Keep at most ``MOST_STRETCHES`` of the stretches, spread over the whole drive."""
    if len(parts) <= MOST_STRETCHES:
        return parts
    return [parts[index] for index in np.linspace(0, len(parts) - 1, MOST_STRETCHES).round().astype(int)]


def looked_at(distance_m: FloatArray) -> NDArray[np.intp] | slice:
    """Usable samples that lie within the stretches that are kept; all of a drive that has no more."""
    parts = cut_into_stretches(distance_m) if distance_m.size else []
    kept = spread_evenly(parts)
    if len(kept) == len(parts):
        return slice(None)
    from_m = np.array([distance_m[part.start] + SPARED_M for part in kept])
    to_m = np.array([distance_m[part.stop - 1] - SPARED_M for part in kept])
    from_m[0], to_m[-1] = distance_m[0], distance_m[-1]
    first, stop = np.searchsorted(distance_m, from_m), np.searchsorted(distance_m, to_m, side="right")
    return np.concatenate([np.arange(*ends) for ends in zip(first, stop, strict=True)])
