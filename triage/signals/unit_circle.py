"""Points of the unit circle for long arrays of angles."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.speed_log import FloatArray

STEPS: Final = 4096
"""Points of the table: a power of two, so that the way from an angle to its next point is exact, and few
enough for a quick memory."""

_POINTS: Final = np.exp(2j * np.pi * np.arange(STEPS) / STEPS)

BLOCK: Final = 8192
"""Angles worked on at once: what is laid aside meanwhile then stays in the quick memory of the processor, and
needs none from the system."""


def unit_points(angle_rev: FloatArray) -> np.ndarray:
    """``exp(2 pi i angle)``, several times quicker than sine and cosine.

    Parameters
    ----------
    angle_rev : float64[N]
        Finite, in revolutions; need not be reduced to one turn.

    Returns
    -------
    complex128[N]

    Notes
    -----
    The nearest point of a table is turned on by what is left, at most ``pi / 4096`` rad, with sine and cosine
    by their series to the fifth and fourth power: the next terms are below the precision of the numbers.
    """
    points = np.empty(angle_rev.size, dtype=complex)
    for first in range(0, angle_rev.size, BLOCK):
        part = slice(first, first + BLOCK)
        _turn_to(angle_rev[part], points[part])
    return points


def _turn_to(angle_rev: FloatArray, points: np.ndarray) -> None:
    left_rad = angle_rev * STEPS
    step = np.rint(left_rad)
    left_rad -= step
    left_rad *= 2.0 * np.pi / STEPS
    square = left_rad * left_rad
    onward = np.empty(points.size, dtype=complex)
    onward.real = 1.0 + square * (square * (1.0 / 24.0) - 0.5)
    onward.imag = left_rad * (1.0 + square * (square * (1.0 / 120.0) - 1.0 / 6.0))
    nearest = _POINTS[step.astype(np.intp) & (STEPS - 1)]
    np.multiply(nearest, onward, out=points)
