"""How much of the difference between the axles is drive slip and goes away when the car coasts."""

from __future__ import annotations

from typing import Final

import numpy as np

from triage.signals.running import zero_for_missing
from triage.speed_log import BoolArray, FloatArray

ROLLING_DRAG_MPS2: Final = 0.12
AIR_DRAG_PER_M: Final = 3e-4
"""What a car loses to rolling resistance (0.012 of its weight) and, times speed squared, to the air: half of
1.2 kg/m3 times 0.65 m2 over 1400 kg (common practice)."""

BRAKED_BELOW_MPS2: Final = -0.3
HARDEST_PUSH_MPS2: Final = 4.0
"""Blocks with less push are braked, on all wheels and not in proportion; with more, wheels may spin."""

USUAL_SLIP_S2PM: Final = 0.004
"""Slip of a driven wheel per m/s2 of push: 0.2 to 0.6 % on dry roads (judgement)."""

SMOOTHING_S: Final = 1.8
FEWEST_BLOCKS: Final = 15
NEIGHBOURS_ALIKE: Final = 5.0
"""Blocks of 0.2 s share road and steering with so many neighbours (judgement)."""


def estimate_axle_slip(
    front_over_rear: FloatArray, speed_mps: FloatArray, time_s: FloatArray, *, straight: BoolArray
) -> float:
    """Part of the mean front-rear difference in straight running that grows with the push on the wheels.

    Parameters
    ----------
    front_over_rear : float64[B]
        Mean of the front ratios less mean of the rear ratios in each block; NaN where unknown.
    speed_mps, time_s : float64[B]
        Speed of the car and instant of each block.
    straight : bool[B]
        Blocks of straight running.

    Returns
    -------
    float
        Positive for front drive, negative for rear drive, 0 where the push hardly varies.

    Notes
    -----
    A driven wheel slips in proportion to its force while that is small, so the difference follows
    ``acceleration + drag`` in a straight line whose value at no push is that of the tyres. The slope is drawn
    towards 0 by what slopes are usual, so that a drive at constant speed yields no wild extrapolation.

    References
    ----------
    T. D. Gillespie, Fundamentals of Vehicle Dynamics, SAE R-114, 1992, ch. 4 and 10 (road loads, longitudinal
    slip; cited from memory).
    """
    push = _push(speed_mps, time_s)
    known = straight & np.isfinite(front_over_rear) & np.isfinite(push)
    if np.count_nonzero(known) < FEWEST_BLOCKS:
        return 0.0
    low, middle, high = np.quantile(front_over_rear[known], (0.159, 0.5, 0.841))
    spread = max(float(high - low) / 2.0, 1e-6)
    difference = np.clip(front_over_rear, middle - 3.0 * spread, middle + 3.0 * spread)
    driven = known & (push > BRAKED_BELOW_MPS2) & (push < HARDEST_PUSH_MPS2)
    if np.count_nonzero(driven) < FEWEST_BLOCKS:
        return 0.0
    without_push = _value_without_push(push[driven], difference[driven], spread)
    return float(difference[known].mean()) - without_push


def _value_without_push(push_mps2: FloatArray, difference: FloatArray, spread: float) -> float:
    """Where the line through the blocks meets no push."""
    middle = float(push_mps2.mean())
    away = push_mps2 - middle
    stiffness = float(away @ away) / NEIGHBOURS_ALIKE
    slope = float(away @ difference) / NEIGHBOURS_ALIKE / (stiffness + (spread / USUAL_SLIP_S2PM) ** 2)
    return float(difference.mean()) - slope * middle


def _push(speed_mps: FloatArray, time_s: FloatArray) -> FloatArray:
    """Force on the car over its mass in every block, from the change of a smoothed speed."""
    if speed_mps.size < FEWEST_BLOCKS:
        return np.full(speed_mps.size, np.nan)
    half = max(round(SMOOTHING_S / 2.0 / max(float(np.median(np.diff(time_s))), 1e-3)), 1)
    smooth = _moving_mean(zero_for_missing(speed_mps), half)
    acceleration = _moving_mean(np.gradient(smooth, time_s), max(half // 2, 1))
    push: FloatArray = acceleration + ROLLING_DRAG_MPS2 + AIR_DRAG_PER_M * speed_mps**2
    return push


def _moving_mean(value: FloatArray, half: int) -> FloatArray:
    """Mean over so many neighbours to either side, the ends repeated."""
    total = np.cumsum(np.concatenate(([0.0], np.pad(value, half, mode="edge"))))
    width = 2 * half + 1
    mean: FloatArray = (total[width:] - total[:-width]) / width
    return mean
