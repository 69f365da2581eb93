"""How coarse the chance is by which the turns of a wheel differ in what they lose."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from triage.signals.running import runs
from triage.speed_log import BoolArray, FloatArray

MOST_STEP_REV: Final = 0.2
"""Samples further apart than this part of a turn miss losses between them."""

LEAST_SEEN: Final = 0.9
"""Share of a turn that must have been sampled."""

FEWEST_TURNS: Final = 30
ENOUGH_TURNS: Final = 60
SLOWER_SHARE: Final = 0.4
"""The most finely sampled turns are used: this share of them, and so many at least where there are twice as
many (judgement). Samples that fall beside a loss, or twice into it, make alike turns look different."""

COUNTED_SIGMA: Final = 2.0


@dataclass(frozen=True, slots=True)
class TurnGrain:
    """Variance over mean of the way lost in a turn, in revolutions.

    Attributes
    ----------
    grain_rev, grain_std_rev : float
        Size of the pieces that, lost by chance and one by one, would make the turns differ as they do.
    turns : int
        Turns it rests on.
    """

    grain_rev: float
    grain_std_rev: float
    turns: int


def measure_turn_grain(
    deviation: FloatArray, sigma_ratio: FloatArray, angle_rev: FloatArray, *, cut_rev: float
) -> TurnGrain | None:
    """Compare what single turns lose.

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
    TurnGrain or None
        None with fewer than 30 whole turns or no loss.

    Notes
    -----
    The integral of the relative deviation over the angle of a turn is the part of it that the wheel seems not
    to have turned, whatever the unit averages over. When pieces of size g are lost by chance, each place with
    probability p, its variance over its mean is g (1 - p), however many places there are (binomial law). It
    is 0 when the same is lost in every turn, and more than a piece when turns lose much or nothing.

    The uncertainty is that of a variance by the fourth moment of the turns, together with that of the mean.
    """
    lost_rev = _lost_in_turns(deviation, sigma_ratio, angle_rev - cut_rev)
    mean = float(lost_rev.mean()) if lost_rev.size else 0.0
    if lost_rev.size < FEWEST_TURNS or mean <= 0.0:
        return None
    variance = float(lost_rev.var(ddof=1))
    fourth = float(((lost_rev - mean) ** 4).mean())
    of_variance = max(fourth - variance**2, 0.0) / lost_rev.size
    of_mean = variance / lost_rev.size * (variance / mean) ** 2
    return TurnGrain(variance / mean, float(np.sqrt(of_variance + of_mean)) / mean, int(lost_rev.size))


def _lost_in_turns(deviation: FloatArray, sigma_ratio: FloatArray, angle_rev: FloatArray) -> FloatArray:
    """Way lost in each whole turn among the most finely sampled ones, in revolutions."""
    step_rev = np.diff(angle_rev, prepend=np.nan)
    with np.errstate(invalid="ignore"):
        used = (step_rev > 0.0) & (step_rev < MOST_STEP_REV) & np.isfinite(deviation)
        low = used & (deviation < -COUNTED_SIGMA * sigma_ratio)
    turn = np.floor(angle_rev).astype(np.int64)
    turn -= turn.min(initial=0)
    seen_rev = np.bincount(turn, weights=np.where(used, step_rev, 0.0))
    whole = np.abs(seen_rev - 1.0) < 1.0 - LEAST_SEEN
    lost_rev = np.bincount(turn[low], weights=-(deviation * step_rev)[low], minlength=whole.size)
    chosen: FloatArray = lost_rev[
        whole & _finely_sampled(np.bincount(turn[used], minlength=whole.size), whole)
    ]
    return chosen


def _finely_sampled(samples: np.ndarray, whole: BoolArray) -> BoolArray:
    """Flag the turns with the most samples; all when there are few."""
    of_whole = np.sort(samples[whole])[::-1]
    if of_whole.size <= 2 * ENOUGH_TURNS:
        return whole
    least = of_whole[max(ENOUGH_TURNS, int(SLOWER_SHARE * of_whole.size))]
    fine: BoolArray = samples >= least
    return fine


def quietest_place(density: FloatArray) -> float:
    """Middle of the longest stretch of the ring that makes the fewest drops, in revolutions."""
    quiet = density <= 0.02 * density.max()
    if not quiet.any():
        return float(np.argmin(density) / density.size)
    longest = max(runs(np.concatenate((quiet, quiet))), key=lambda run: run[1] - run[0])
    return float((sum(longest) / 2.0) % density.size / density.size)
