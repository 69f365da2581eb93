"""Sudden drops of one wheel's speed, and where on its ring they first show.

Steps down from one sample to the next are taken, not low samples: a filter in the control unit drags a loss
out over many samples, but it cannot make it show before it happens. Steps back from a peak are none.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.signals.conditioning import CommonClock
from triage.signals.losses import DISTURBED_LEAST, DISTURBED_SIGMA, ROUGH_FACTOR, Losses
from triage.signals.residuals import Residuals
from triage.signals.ring_response import RING_BINS, DropCounts
from triage.signals.running import rate_of
from triage.speed_log import BoolArray, FloatArray

BLIND_S: Final = 0.03
"""After a drop no other is looked for so long: units that average over several cycles go down in steps."""

LEAST_DEPTH: Final = 0.25
"""A drop ends below the usual speed, by this share of the least fall; else the wheel only comes back from a
peak, as behind a filter that drags a short pitch on for a quarter of a turn."""

ENOUGH_DROPS: Final = 150
"""The slowest turns that hold so many drops are used, for the smear over the ring grows with the speed."""

LONGEST_STEP_REV: Final = 0.5
"""Where the wheel turns further from sample to sample, a drop has no place."""

SLOWEST_SHARE: Final = 0.4
"""Turns slower than this share of the fastest used are left out: one response must fit all (judgement)."""

EVERY_SAMPLE: Final = slice(None)

NEIGHBOURS_PERIODS: Final = 1.6
"""Samples further apart than this are no neighbours; between them anything may have happened."""


@dataclass(frozen=True, slots=True)
class PlacedDrops:
    """Steps of one wheel placed on its ring.

    Attributes
    ----------
    depth_ratio : float64[N]
        Relative deviation of the wheel, -1 where its signal is gone; NaN where nothing is known.
    seen : bool[N]
        Samples of the moving wheel whose deviation is known, and that of the sample just before.
    exposed : bool[N]
        Samples in which a drop could have been seen to begin.
    dropped : bool[N]
        Those in which one did.
    angle_rev, rate_revps : float64[N]
        Wheel angle and rate at every sample.
    period_s : float
        From sample to sample.
    """

    depth_ratio: FloatArray
    seen: BoolArray
    exposed: BoolArray
    dropped: BoolArray
    angle_rev: FloatArray
    rate_revps: FloatArray
    period_s: float


def depth_of(
    clock: CommonClock,
    residuals: Residuals,
    losses: Losses,
    row: int,
    samples: NDArray[np.intp] | slice = EVERY_SAMPLE,
) -> FloatArray:
    """Relative deviation of a wheel, -1 where its signal is gone; NaN where nothing is known, float64[N]."""
    fast = residuals.fast_ratio[row, samples]
    gone = losses.lost[row, samples] & ~clock.valid[row, samples]
    return np.where(np.isfinite(fast), np.maximum(fast, -1.0), np.where(gone, -1.0, np.nan))


def place_drops(
    clock: CommonClock, residuals: Residuals, losses: Losses, *, row: int, angle_rev: FloatArray
) -> PlacedDrops:
    """Find the drops of a wheel whose angle is known.

    Parameters
    ----------
    clock, residuals, losses
        As worked out for the whole log.
    row : int
        Wheel.
    angle_rev : float64[N]
        Its angle on the common clock.

    Returns
    -------
    PlacedDrops
    """
    depth = depth_of(clock, residuals, losses, row)
    steps_s, fall = np.empty(depth.size), np.empty(depth.size)
    steps_s[:1], fall[:1] = np.inf, np.nan  # nothing is known of what came before the first sample
    np.subtract(clock.time_s[1:], clock.time_s[:-1], out=steps_s[1:])
    np.subtract(depth[:-1], depth[1:], out=fall[1:])
    bar = np.maximum(DISTURBED_SIGMA * residuals.sound_sigma_ratio, DISTURBED_LEAST)
    bar = np.maximum(bar, ROUGH_FACTOR * residuals.roughness_ratio[row])
    seen = np.isfinite(fall) & (steps_s < NEIGHBOURS_PERIODS * clock.period_s) & losses.moving[row]
    with np.errstate(invalid="ignore"):
        falling = seen & (fall > bar) & (depth < -LEAST_DEPTH * bar)
    exposed = seen & ~_just_before(falling, max(1, round(BLIND_S / clock.period_s)))
    return PlacedDrops(
        depth_ratio=depth,
        seen=seen,
        exposed=exposed,
        dropped=falling & exposed,
        angle_rev=angle_rev,
        rate_revps=np.abs(rate_of(angle_rev, clock.time_s)),
        period_s=clock.period_s,
    )


def count_drops(placed: PlacedDrops) -> DropCounts | None:
    """Count drops over the ring in the slowest range of speed that holds enough; None when there are none."""
    timely = placed.rate_revps * placed.period_s < LONGEST_STEP_REV
    rates = np.sort(placed.rate_revps[placed.dropped & timely])
    if not rates.size:
        return None
    fastest = rates[min(ENOUGH_DROPS, rates.size) - 1]
    slowest = SLOWEST_SHARE * fastest
    used = timely & (placed.rate_revps <= max(1.1 * fastest, fastest)) & (placed.rate_revps >= slowest)
    exposed, dropped = placed.exposed & used, placed.dropped & used
    rate = float(placed.rate_revps[dropped].mean())
    return DropCounts(
        exposure=_over_ring(placed.angle_rev[exposed]),
        drops=_over_ring(placed.angle_rev[dropped]),
        step_rev=rate * placed.period_s,
        rate_revps=rate,
    )


def ring_bin(angle_rev: FloatArray) -> np.ndarray:
    """Angle bin, 0 to 95, of every angle."""
    part = angle_rev - np.floor(angle_rev)
    return np.minimum((part * RING_BINS).astype(np.intp), RING_BINS - 1)


def _over_ring(angle_rev: FloatArray) -> FloatArray:
    return np.bincount(ring_bin(angle_rev), minlength=RING_BINS).astype(float)


def _just_before(flag: BoolArray, samples: int) -> BoolArray:
    """Flag the samples that follow a flagged one within so many."""
    total = np.concatenate(([0], np.cumsum(flag)))
    place = np.arange(flag.size)
    before: BoolArray = total[place] > total[np.maximum(place - samples, 0)]
    return before
