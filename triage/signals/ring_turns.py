"""What a wheel loses in one turn and in the next."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.signals.running import runs
from triage.speed_log import FloatArray

MOST_STEP_REV: Final = 0.2
"""Turns sampled less often than this are left out: a loss would fall between the samples too often."""

LEAST_SEEN: Final = 0.9
"""Share of a turn that must have been sampled."""

FEWEST_TURNS: Final = 30
COUNTED_SIGMA: Final = 3.0


@dataclass(frozen=True, slots=True)
class TurnLosses:
    """Way lost in each turn, in revolutions of the wheel.

    Attributes
    ----------
    mean_rev, mean_std_rev : float
        Lost in a turn on average: lost pulses over pulses of a turn, whatever the unit's averaging.
    spread, spread_std : float
        Standard deviation from turn to turn over the mean.
    turns : int
        Turns it rests on.
    """

    mean_rev: float
    mean_std_rev: float
    spread: float
    spread_std: float
    turns: int


def measure_turn_losses(
    deviation: FloatArray, sigma_ratio: FloatArray, angle_rev: FloatArray, *, cut_rev: float
) -> TurnLosses | None:
    """Sum up the way lost in every whole turn.

    Parameters
    ----------
    deviation : float64[N]
        Relative deviation of the wheel's speed, NaN where unknown.
    sigma_ratio : float64[N]
        What is usual for a sound wheel.
    angle_rev : float64[N]
        Wheel angle.
    cut_rev : float
        Where on the ring a turn begins: a quiet place, so that no loss is parted.

    Returns
    -------
    TurnLosses or None
        None with fewer than 30 whole turns or no loss.

    Notes
    -----
    The integral of the relative deviation over the angle is the share of a turn that the wheel seems not to
    have turned; averaging and filtering spread it but keep its sum. A step of the samples longer than the
    unit's averaging makes the sum vary although every turn loses the same.
    """
    step_rev = np.diff(angle_rev, prepend=np.nan)
    with np.errstate(invalid="ignore"):
        used = (step_rev > 0.0) & (step_rev < MOST_STEP_REV) & np.isfinite(deviation)
        lost = np.where(used & (deviation < -COUNTED_SIGMA * sigma_ratio), -deviation * step_rev, 0.0)
    turn = np.floor(angle_rev - cut_rev).astype(np.int64)
    turn -= turn.min(initial=0)
    seen = np.bincount(turn, weights=np.where(used, step_rev, 0.0))
    whole = np.abs(seen - 1.0) < 1.0 - LEAST_SEEN
    sums = np.bincount(turn, weights=lost)[whole]
    mean = float(sums.mean()) if sums.size else 0.0
    if sums.size < FEWEST_TURNS or mean <= 0.0:
        return None
    std = float(sums.std(ddof=1))
    spread = std / mean
    return TurnLosses(
        mean_rev=mean,
        mean_std_rev=float(std / np.sqrt(sums.size)),
        spread=spread,
        # Standard error of a coefficient of variation of normal deviates.
        spread_std=float(spread * np.sqrt((0.5 + spread**2) / sums.size)),
        turns=int(sums.size),
    )


def quietest_place(density: FloatArray) -> float:
    """Middle of the longest stretch of the ring that makes the fewest drops, in revolutions."""
    quiet = density <= 0.02 * density.max()
    if not quiet.any():
        return float(np.argmin(density) / density.size)
    longest = max(runs(np.concatenate((quiet, quiet))), key=lambda run: run[1] - run[0])
    return float((sum(longest) / 2.0) % density.size / density.size)
