"""How a wheel's speed runs over its turn on average, as recorded: the unit's delay and smear are in it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.signals.conditioning import CommonClock
from triage.signals.losses import Losses
from triage.signals.residuals import Residuals
from triage.signals.ring_drops import LONGEST_STEP_REV, depth_of, ring_bin
from triage.signals.ring_response import RING_BINS
from triage.signals.running import rate_at, stride_of
from triage.speed_log import FloatArray

SPEED_SHARES: Final = (0.6, 1.3)
"""Samples between these multiples of one rate of turning are averaged: what a unit averages over a fixed time
covers more of the turn the faster the wheel turns (judgement)."""

SLOWEST_REVPS: Final = 0.3
"""Below about 2 km/h units tell of single pulses."""

FEWEST_PER_BIN: Final = 4

FAR_SHARE: Final = 0.5
NEAR_SHARE: Final = 0.1
NEAR_QUANTILE: Final = 0.1
"""Bins far off the usual level, in shares of the greatest deviation, and near it: at least a tenth of all."""


@dataclass(frozen=True, slots=True)
class RingCourse:
    """Mean of the relative deviation at every angle, in one range of speed.

    Attributes
    ----------
    mean_ratio : float64[96]
        Mean relative deviation in each bin; -1 where the signal is always gone.
    scatter_power : float64[96]
        Variance of the samples of each bin.
    noise_power : float
        Mean square by which chance moves the bins.
    rate_revps : float
        Mean rate of turning.
    """

    mean_ratio: FloatArray
    scatter_power: FloatArray
    noise_power: float
    rate_revps: float

    @property
    def noise_ratio(self) -> float:
        """Share of its power that chance makes; 1 and more where nothing else is seen."""
        power = float(self.mean_ratio.var())
        return self.noise_power / power if power > 0.0 else float("inf")

    @property
    def restlessness(self) -> float:
        """Scatter where the course is far off its usual level over that where it keeps to it.

        About 1 where a unit's own steps make the scatter, as behind one that counts; much more where single
        turns differ in what the ring does to them, or are caught by single samples.
        """
        off = np.abs(self.mean_ratio - np.median(self.mean_ratio))
        far = off >= FAR_SHARE * off.max()
        near = off <= max(NEAR_SHARE * float(off.max()), float(np.quantile(off, NEAR_QUANTILE)))
        usual = float(np.median(self.scatter_power[near]))
        return float(np.median(self.scatter_power[far])) / usual if usual > 0.0 else float("inf")


def average_over_turns(
    clock: CommonClock,
    residuals: Residuals,
    losses: Losses,
    *,
    row: int,
    angle_rev: FloatArray,
    rate_revps: float | None,
) -> RingCourse | None:
    """Average the deviation of a wheel over its turns.

    Parameters
    ----------
    clock, residuals, losses
        As worked out for the whole log; every n-th sample of a long one is used.
    row : int
        Wheel.
    angle_rev : float64[N]
        Its angle on the common clock.
    rate_revps : float or None
        Rate of turning around which samples are used; None: the middle one of the log.

    Returns
    -------
    RingCourse or None
        None when there are too few samples.
    """
    moving = np.flatnonzero(losses.moving[row])
    moving = moving[:: stride_of(moving.size)]
    # A single spike must not move the mean of its bin by more than a lost signal does.
    depth = np.minimum(depth_of(clock, residuals, losses, row, moving), 1.0)
    rate = np.abs(rate_at(angle_rev, clock.time_s, moving))
    fit = np.isfinite(depth) & (rate > SLOWEST_REVPS) & (rate * clock.period_s < LONGEST_STEP_REV)
    return course_of(depth[fit], ring_bin(angle_rev[moving[fit]]), rate[fit], around_revps=rate_revps)


def course_of(
    depth_ratio: FloatArray, place: NDArray[np.intp], rate_revps: FloatArray, *, around_revps: float | None
) -> RingCourse | None:
    """Average deviations over bins of the ring.

    Parameters
    ----------
    depth_ratio : float64[M]
    place : int[M]
        Bin of every sample, 0 to 95.
    rate_revps : float64[M]
    around_revps : float or None
        As for :func:`average_over_turns`.
    """
    if not depth_ratio.size:
        return None
    middle_revps = float(np.median(rate_revps)) if around_revps is None else around_revps
    low, high = (share * middle_revps for share in SPEED_SHARES)
    used = (rate_revps > low) & (rate_revps < high)
    depth, place = depth_ratio[used], place[used]
    count = np.bincount(place, minlength=RING_BINS).astype(float)
    if count.min() < FEWEST_PER_BIN:
        return None
    mean = np.bincount(place, weights=depth, minlength=RING_BINS) / count
    power = np.bincount(place, weights=depth**2, minlength=RING_BINS) / count
    variance = np.maximum(power - mean**2, 0.0) * count / (count - 1.0)
    return RingCourse(
        mean_ratio=mean,
        scatter_power=variance,
        noise_power=float((variance / count).mean()),
        rate_revps=float(rate_revps[used].mean()),
    )
