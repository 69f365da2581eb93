"""The ripple of a wheel, carried along when another tyre makes the wheel turn faster or slower."""

from __future__ import annotations

from typing import Final

import numpy as np
from scipy.ndimage import uniform_filter1d
from scipy.signal import fftconvolve

from triage.simulator.vehicle_path import GRID_S
from triage.speed_log import FloatArray

PER_TURN: Final = 64
TURNS: Final = 8
"""A ripple that repeats is the mean over so many turns before and after (judgement)."""

SLOWEST_REVPS: Final = 1.0
LARGEST_RIPPLE: Final = 0.02


def turn_with_other_tyre(rate_revps: FloatArray, ratio: FloatArray) -> FloatArray:
    """Turn a wheel faster by a ratio, its own ripple moved along so that it still repeats with each turn.

    Parameters
    ----------
    rate_revps : float64[N]
        Rate of turning on the simulator's grid.
    ratio : float64[N]
        Factor on it.

    Returns
    -------
    float64[N]

    Notes
    -----
    Ripple that repeats is the mean over neighbouring turns. It is taken out where it was and put in where the
    same angle of the wheel now comes; what the road did stays where it was in time.
    """
    before = np.cumsum(rate_revps) * GRID_S
    after = np.cumsum(rate_revps * ratio) * GRID_S
    place, ripple = _repeating_ripple(before, rate_revps)
    moved = np.interp(before + (after - before) % 1.0, place, ripple) - np.interp(before, place, ripple)
    return rate_revps * ratio * (1.0 + moved)


def _repeating_ripple(angle_rev: FloatArray, rate_revps: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Give even angles, and the deviation of the rate there that repeats over some turns, both float64[K].

    Where a turn takes long (below walking pace), nothing repeats.
    """
    count = max(int((angle_rev[-1] - angle_rev[0]) * PER_TURN), PER_TURN)
    place: FloatArray = angle_rev[0] + np.arange(count, dtype=np.float64) / PER_TURN
    rising = angle_rev + 1e-12 * np.arange(angle_rev.size)
    rate = np.interp(place, rising, rate_revps)
    quick = rate / np.maximum(uniform_filter1d(rate, PER_TURN), SLOWEST_REVPS) - 1.0
    quick = np.where(rate > SLOWEST_REVPS, np.clip(quick, -LARGEST_RIPPLE, LARGEST_RIPPLE), 0.0)
    comb = np.zeros((2 * TURNS) * PER_TURN + 1)
    comb[::PER_TURN] = 1.0 / (2 * TURNS + 1)
    return place, np.asarray(fftconvolve(quick, comb, mode="same"), dtype=np.float64)
