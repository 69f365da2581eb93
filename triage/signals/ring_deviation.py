"""The samples of one wheel over its ring, with what the filter of the control unit drags on taken out.

How much of a deviation is left one sample later is read off the log itself.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.signals.ring_drops import LONGEST_STEP_REV, PlacedDrops, ring_bin
from triage.signals.ring_response import RING_BINS
from triage.speed_log import FloatArray

SPEED_SHARES: Final = (0.6, 1.3)
"""Samples between these multiples of the mean rate at the drops are used: one response must fit all
(judgement)."""

FEWEST_PER_BIN: Final = 4

LEAST_PERSISTENCE: Final = 0.1
MOST_PERSISTENCE: Final = 0.9
"""Below the first, correlation from sample to sample is taken for chance; a filter above the second would
leave nothing sharp enough to place (judgement)."""


@dataclass(frozen=True, slots=True)
class RingDeviation:
    """Samples of one wheel taken in one range of speed.

    Attributes
    ----------
    bin : int[M]
        Angle bin of every sample, 0 to 95.
    exposure : float64[96]
        Samples per bin.
    depth_ratio : float64[M]
        Relative deviation of the wheel, -1 where its signal is gone, less what the sample before leaves of
        its own.
    step_rev : float
        Angle turned from one sample to the next.
    rate_revps : float
        Mean rate of turning.
    """

    bin: NDArray[np.intp]
    exposure: FloatArray
    depth_ratio: FloatArray
    step_rev: float
    rate_revps: float

    def means(self, value: FloatArray) -> FloatArray:
        """Mean of a quantity of the samples in every bin, 0 where there is none, float64[96]."""
        sums = np.bincount(self.bin, weights=value, minlength=RING_BINS)
        return np.asarray(sums / np.maximum(self.exposure, 1.0), dtype=np.float64)


def deviation_over_ring(placed: PlacedDrops, drops_revps: float) -> RingDeviation | None:
    """Take the samples around one rate of turning, run-out included; None when there are too few.

    Parameters
    ----------
    placed : PlacedDrops
    drops_revps : float
        Rate of turning around which samples are used.

    Returns
    -------
    RingDeviation or None
    """
    low, high = (share * drops_revps for share in SPEED_SHARES)
    rate = placed.rate_revps
    fit = (rate > low) & (rate < high) & (rate * placed.period_s < LONGEST_STEP_REV)
    used = np.flatnonzero(placed.seen & fit)
    if used.size < FEWEST_PER_BIN * RING_BINS:
        return None
    place = ring_bin(placed.angle_rev[used])
    mean_revps = float(rate[used].mean())
    return RingDeviation(
        bin=place,
        exposure=np.bincount(place, minlength=RING_BINS).astype(float),
        depth_ratio=_undragged(placed.depth_ratio, used, place),
        step_rev=mean_revps * placed.period_s,
        rate_revps=mean_revps,
    )


def _undragged(depth: FloatArray, used: NDArray[np.intp], place: NDArray[np.intp]) -> FloatArray:
    left = _persistence(depth, used, place)
    undragged: FloatArray = depth[used] - left * depth[used - 1]
    return undragged


def _persistence(depth: FloatArray, used: NDArray[np.intp], place: NDArray[np.intp]) -> float:
    """Share of a deviation that is left one sample later.

    Behind a filter of first order, losses that come by chance are correlated from the first sample on by the
    same factor from each to the next, however long the unit averages within a sample step.
    """
    varied = np.zeros(depth.size)
    count = np.maximum(np.bincount(place, minlength=RING_BINS), 1)
    mean = np.bincount(place, weights=depth[used], minlength=RING_BINS) / count
    varied[used] = depth[used] - mean[place]
    power, once, twice = (
        float(np.einsum("i,i", varied[lag:], varied[: varied.size - lag])) for lag in range(3)
    )
    if once <= LEAST_PERSISTENCE * power:
        return 0.0
    return float(np.clip(twice / once, 0.0, MOST_PERSISTENCE))
