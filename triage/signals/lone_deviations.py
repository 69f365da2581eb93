"""Brief deviations that stand alone: one wheel, one direction, with even road under all the others.

A pothole makes a wheel swing both ways, and mostly shakes more than one wheel. A lost pole makes the reading
of one wheel fall short and nothing else. Counting only deviations that no other wheel shares and that no
swing the other way accompanies therefore shows a wheel that loses a pole now and then, long before its noise
grows.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.signals.conditioning import CommonClock
from triage.signals.losses import HARD_BRAKING_MPS2, Losses
from triage.signals.residuals import Residuals
from triage.signals.running import run_bounds, zero_for_missing
from triage.speed_log import BoolArray, FloatArray

COUNTED_SIGMA: Final = 4.0
COMPANY_SIGMA: Final = 3.0
COMPANY_S: Final = 0.3
"""A deviation beyond 4 sigma counts when within 0.3 s no other wheel deviates by 3 sigma, nor this one the
other way. A wheel that hops swings back within 0.1 s (9 to 15 Hz)."""

LEAST_WAY_M: Final = 0.012
WAY_BEFORE_S: Final = 0.06
WAY_AFTER_S: Final = 0.12
"""A pole that is not seen takes its pitch from the way the wheel seems to roll, whatever the unit's cycle and
filter: 18 mm at least (100 poles on 1.8 m). Two thirds of that must be missing, or be too much, around a lone
deviation; a tyre that hops or slips for a moment makes a few millimetres (real drives: 1 to 11 mm)."""

LOST_SIGMA: Final = 99.0


@dataclass(frozen=True, slots=True)
class LoneDeviations:
    """Starts of the lone deviations of each wheel, as indices of the common clock.

    Attributes
    ----------
    dips, peaks : four int[M]
        Below and above what the other wheels demand.
    """

    dips: tuple[NDArray[np.intp], ...]
    peaks: tuple[NDArray[np.intp], ...]


def find_lone_deviations(
    clock: CommonClock,
    residuals: Residuals,
    losses: Losses,
    *,
    reference_mps: FloatArray,
    silent: tuple[BoolArray, ...],
    acceleration_mps2: FloatArray,
) -> LoneDeviations:
    """Find the deviations that nothing but the wheel itself explains.

    Parameters
    ----------
    reference_mps : float64[N]
        Speed of the car.
    silent : four bool[N]
        Where a wheel is silent below its cut-off speed, which is no loss.
    acceleration_mps2 : float64[N]
        Of the car; under hard braking single wheels slip.

    Notes
    -----
    The measure of each deviation is the noise of a sound wheel at this speed together with what the other
    three are shaken by at this moment. What is counted must besides be as large as a pole.
    """
    sigma = [_deviation(residuals, losses, row, silent=silent[row]) for row in range(4)]
    still = acceleration_mps2 > HARD_BRAKING_MPS2
    judged = [losses.moving[row] & clock.fresh[row] & ~losses.joint & still for row in range(4)]
    low = [np.flatnonzero(one < -COMPANY_SIGMA) for one in sigma]
    high = [np.flatnonzero(one > COMPANY_SIGMA) for one in sigma]
    reach = clock.samples_in(COMPANY_S)
    dips, peaks = [], []
    for row in range(4):
        others = np.sort(np.concatenate([side[n] for side in (low, high) for n in range(4) if n != row]))
        low_far = judged[row] & (sigma[row] < -COUNTED_SIGMA)
        high_far = judged[row] & (sigma[row] > COUNTED_SIGMA)
        fast_ratio = residuals.fast_ratio[row]
        starts = _alone(low_far, others, high[row], reach)
        dips.append(starts[_way_around(clock, fast_ratio, reference_mps, starts) < -LEAST_WAY_M])
        starts = _alone(high_far, others, low[row], reach)
        peaks.append(starts[_way_around(clock, fast_ratio, reference_mps, starts) > LEAST_WAY_M])
    return LoneDeviations(tuple(dips), tuple(peaks))


def _deviation(residuals: Residuals, losses: Losses, row: int, *, silent: BoolArray) -> FloatArray:
    """Quick deviation in standard deviations; lost samples are far below, unknown ones 0."""
    scale = np.sqrt(residuals.sound_sigma_ratio**2 + residuals.roughness_ratio[row] ** 2)
    with np.errstate(invalid="ignore", divide="ignore"):
        sigma: FloatArray = residuals.fast_ratio[row] / scale
    sigma[~np.isfinite(sigma)] = 0.0
    sigma[losses.lost[row]] = -LOST_SIGMA
    sigma[silent] = 0.0
    return sigma


def _way_around(
    clock: CommonClock, fast_ratio: FloatArray, reference_mps: FloatArray, place: NDArray[np.intp]
) -> FloatArray:
    """Way in metres that the wheel rolls too far around some samples; below 0 for too little."""
    around = place[:, None] + np.arange(-clock.samples_in(WAY_BEFORE_S), clock.samples_in(WAY_AFTER_S))
    inside = (around >= 0) & (around < fast_ratio.size)
    np.clip(around, 0, max(fast_ratio.size - 1, 0), out=around)
    ahead_mps = np.where(inside, fast_ratio[around] * reference_mps[around], 0.0)
    way_m: FloatArray = zero_for_missing(ahead_mps).sum(axis=1) * clock.period_s
    return way_m


def _alone(
    flag: BoolArray, others: NDArray[np.intp], opposite: NDArray[np.intp], reach: int
) -> NDArray[np.intp]:
    first, stop = run_bounds(flag)
    company = _near(others, first, stop, reach) | _near(opposite, first, stop, reach)
    starts: NDArray[np.intp] = first[~company]
    return starts


def _near(places: NDArray[np.intp], first: NDArray[np.intp], stop: NDArray[np.intp], reach: int) -> BoolArray:
    """Whether one of the sorted places lies inside each run or within reach of it."""
    near: BoolArray = np.searchsorted(places, first - reach) < np.searchsorted(places, stop + reach)
    return near
