"""The wheel's angle, kept true over a long drive by the wheel's own pattern.

Distance over circumference drifts: below walking pace a control unit outputs nothing while the wheel still
turns, tyres slip in curves, and averaging in the control unit delays the signal by a time, that is by more
angle the faster the wheel turns. A pattern strong enough to be worth mapping is strong enough to be
followed: the drive is cut into windows of some revolutions, and each is turned until it fits the pattern of
all others.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.signals.unit_circle import unit_points
from triage.signals.wheel_path import WheelPath
from triage.speed_log import FloatArray

WINDOW_REV: Final = 20.0
ORDERS: Final = 6
"""Orders of the pattern that take part in the fit."""

PHASES: Final = 64
"""Turns tried for each window."""

ROUNDS: Final = 8
FEWEST_SAMPLES: Final = 60
CAR_STOOD_S: Final = 0.5
"""A pause of the usable samples this long ends a window: the car stopped, or the recorder paused."""


def follow_angle(path: WheelPath, time_s: FloatArray, circumference_m: float) -> FloatArray:
    """Wheel angle in revolutions, aligned so that the wheel's ripple repeats with it wherever that is known.

    Parameters
    ----------
    path : WheelPath
    time_s : float64[N]
        Common clock.
    circumference_m : float
        Distance per revolution along ``path``.

    Returns
    -------
    float64[N]
        Angle in revolutions, not reduced to one turn. Each window is turned by a constant.
    """
    angle_rev = path.distance_m / circumference_m
    used = np.flatnonzero(path.weight > 0)
    used_rev = angle_rev[used]
    starts = _window_starts(used_rev, time_s[used])
    if starts.size < 2:
        return angle_rev
    sums = _window_sums(used_rev, path.ripple_ratio[used], path.weight[used], starts)
    turn_rev = _fit_turns(sums)
    # An unusable sample goes with the next usable one, the last ones with the last window.
    ends = np.append(used[starts[1:] - 1] + 1, angle_rev.size)
    aligned: FloatArray = angle_rev + np.repeat(turn_rev, np.diff(ends, prepend=0))
    return aligned


def _window_starts(angle_rev: FloatArray, time_s: FloatArray) -> NDArray[np.intp]:
    """First usable sample of every window; windows of too few samples join their forerunner."""
    if not angle_rev.size:
        return np.zeros(0, dtype=np.intp)
    stood = np.diff(time_s) > CAR_STOOD_S
    begin = np.concatenate(([0], np.flatnonzero(stood) + 1))
    group_start = np.repeat(angle_rev[begin], np.diff(begin, append=angle_rev.size))
    inner = ((angle_rev - group_start) / WINDOW_REV).astype(np.intp)
    starts = np.concatenate(([0], np.flatnonzero(stood | (inner[1:] != inner[:-1])) + 1))
    enough = np.diff(starts, append=angle_rev.size) >= FEWEST_SAMPLES
    # What comes before the first window long enough belongs to it.
    return np.concatenate(([0], starts[enough][1:]))


def _window_sums(
    angle_rev: FloatArray, ripple: FloatArray, weight: FloatArray, starts: NDArray[np.intp]
) -> np.ndarray:
    """Fourier sums of the ripple at the orders of the wheel, complex128[W, ORDERS]."""
    base = unit_points(-angle_rev)
    weighted = (weight * ripple).astype(complex)
    columns = []
    for _ in range(ORDERS):
        weighted *= base
        columns.append(np.add.reduceat(weighted, starts))
    return np.stack(columns, axis=1)


def _fit_turns(sums: np.ndarray) -> FloatArray:
    """Turn of every window, in revolutions, that fits it best to the pattern of all the others."""
    orders = np.arange(1, ORDERS + 1)
    grid = np.arange(PHASES) / PHASES
    rotation = np.exp(-2j * np.pi * grid[:, None] * orders[None, :])
    turn = np.zeros(sums.shape[0])
    for _ in range(ROUNDS):
        turned = sums * np.exp(-2j * np.pi * turn[:, None] * orders[None, :])
        others = turned.sum(axis=0)[None, :] - turned
        product = np.conj(others) * sums
        fit = product.real @ rotation.real.T - product.imag @ rotation.imag.T
        best = grid[np.argmax(fit, axis=1)]
        if np.array_equal(best, turn):
            break
        turn = best
    return turn
