"""Bad stretches of an encoder ring, as the truth tells them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from triage.corners import Corner
from triage.speed_log import FloatArray


@dataclass(frozen=True, slots=True)
class Sector:
    """A bad stretch of an encoder ring.

    Attributes
    ----------
    corner : str
        Wheel that carries the ring.
    centre_rev : float
        Middle, in revolutions from the mark, 0 to 1: the place where :meth:`Truth.angle_rev` modulo 1 stands
        when it passes the sensor.
    width_rev : float
        Stretch over which the harm is more than half of the greatest on the ring.
    depth : float
        Greatest share of the poles' strength that is gone, or of a pole's length by which borders are moved.
    """

    corner: Corner
    centre_rev: float
    width_rev: float
    depth: float


def find_sectors(corner: Corner, harm: FloatArray) -> tuple[Sector, ...]:
    """Find the bad stretches of a ring.

    Parameters
    ----------
    corner : str
        Wheel that carries it.
    harm : float64[poles]
        How badly each pole is off, 0 for a sound one.

    Returns
    -------
    tuple of Sector
        Stretches where the harm is more than half of its greatest, by their place on the ring; those parted
        by no more than two poles are one.
    """
    if harm.max() <= 0.0:
        return ()
    runs = _circular_runs(harm > 0.5 * harm.max(), joined_over=2)
    return tuple(_sector(corner, harm, run) for run in runs)


def _sector(corner: Corner, harm: FloatArray, run: tuple[int, int]) -> Sector:
    first, length = run
    inside = harm[(first + np.arange(length)) % harm.size]
    centre = (first + length / 2.0) / harm.size % 1.0
    return Sector(corner, centre, length / harm.size, float(inside.max()))


def _circular_runs(
    flags: np.ndarray[tuple[int], np.dtype[np.bool_]], *, joined_over: int
) -> list[tuple[int, int]]:
    """First place and length of every stretch of set flags on a ring; short breaks do not part them."""
    places = np.flatnonzero(flags)
    breaks = np.diff(places, append=places[:1] + flags.size) - 1
    ends = np.flatnonzero(breaks > joined_over)
    if ends.size == 0:
        return [(int(places[0]), flags.size)]
    runs = []
    for before, end in zip(np.roll(ends, 1), ends, strict=True):
        first = int(places[(before + 1) % places.size])
        runs.append((first, int((places[end] - first) % flags.size) + 1))
    return runs
