"""How wide an evenly dirty stretch of a ring is, from how far the speed reads low on average at every angle.

A unit that times pulses reads low by the share of them that is missing, whether few or most are lost, and the
average over many turns is that share as a function of the angle, smeared by the time over which the unit
averages. Such a smear slopes the ends of a longer stretch but leaves its width at half the depth as it is,
without anything being known about the unit. Drops tell less there: the first of a turn hides those behind it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from scipy.ndimage import gaussian_filter1d

from triage.signals.ring_deviation import RingDeviation
from triage.signals.ring_response import RING_BINS
from triage.signals.ring_sectors import (
    JOINED_BINS,
    WIDTH_STD_SHARE,
    BadSector,
    RingHarm,
    lead_rev,
    wideness,
)
from triage.speed_log import FloatArray

SMOOTHED_BINS: Final = 1.5

LEAST_SAMPLES: Final = 1e-3
"""Below so many, smoothed, nothing is known of a bin, and it counts as sound."""

SOUND_QUANTILE: Final = 0.3
"""Depth of the sound part of the ring: dirt covers less than two thirds of it (judgement)."""

DELAY_S: Final = 0.008
"""From the cause to the middle of the unit's averaging, beside what :func:`lead_rev` knows of (judgement)."""

HALF: Final = 0.5
UPPER: Final = 0.7
LOWER: Final = 0.3

PEAKED: Final = 0.3
FLAT: Final = 0.8
"""Width at ``UPPER`` of the depth over that at ``LOWER``: up to the first the stretch tapers, and its half
width tells little of how far thin dirt reaches; from the second on it is evenly dirty. From simulated sectors
with sharp ends and with thinning ones."""

AVERAGED_S: Final = 0.020
"""Units average over one to several cycles of 5 to 20 ms: a spot looks as wide as the angle turned meanwhile
(judgement)."""

EVEN_STD_SHARE: Final = 0.3
"""Relative standard uncertainty of the half width, beside that averaging: between the scatter on sectors with
sharp ends and that on thinning ones that pass for even."""


@dataclass(frozen=True, slots=True)
class DepthWidth:
    """Where the mean depth stands out.

    Attributes
    ----------
    half_rev : float
        Width at half the depth.
    flatness : float
        From 0, the depth tapers, to 1, it is even.
    """

    half_rev: float
    flatness: float


def with_even_widths(harm: RingHarm, deviation: RingDeviation) -> RingHarm:
    """Draw the width of every sector towards its width at half the depth, the more the evener it is.

    Parameters
    ----------
    harm : RingHarm
    deviation : RingDeviation
        The samples of the wheel.

    Returns
    -------
    RingHarm
        ``width_rev`` and ``width_std_rev`` of the sectors changed, all else as before.
    """
    profile = depth_over_ring(deviation)
    return replace(harm, sectors=tuple(_evened(one, profile, deviation.rate_revps) for one in harm.sectors))


def depth_over_ring(deviation: RingDeviation) -> FloatArray:
    """How far the speed reads low on average, above the sound part of the ring, float64[96]."""
    sums = np.bincount(deviation.bin, weights=-deviation.depth_ratio, minlength=RING_BINS)
    # Both are smoothed, for a bin without samples is not a sound one.
    around, samples = (
        gaussian_filter1d(value, SMOOTHED_BINS, mode="wrap") for value in (sums, deviation.exposure)
    )
    low = around / np.maximum(samples, LEAST_SAMPLES)
    return np.asarray(low - np.quantile(low, SOUND_QUANTILE), dtype=np.float64)


def measure_depth_width(profile: FloatArray, place_rev: float, reach_rev: float) -> DepthWidth | None:
    """Measure how far the depth reaches around its peak near a place.

    Parameters
    ----------
    profile : float64[96]
        From :func:`depth_over_ring`.
    place_rev : float
        Where the peak is looked for, in revolutions.
    reach_rev : float
        How far on either side.

    Returns
    -------
    DepthWidth or None
        None where nothing reads low.
    """
    reach = max(round(reach_rev * RING_BINS), 2)
    near = (int(place_rev * RING_BINS) + np.arange(-reach, reach + 1)) % RING_BINS
    peak = int(near[np.argmax(profile[near])])
    if profile[peak] <= 0.0:
        return None
    half, upper, lower = (_width_rev(profile, peak, share) for share in (HALF, UPPER, LOWER))
    return DepthWidth(half, float(np.clip((upper / lower - PEAKED) / (FLAT - PEAKED), 0.0, 1.0)))


def _width_rev(profile: FloatArray, peak: int, share: float) -> float:
    """Width of the stretch around the peak that is deeper than a share of it; short breaks do not end it."""
    deep = np.roll(profile > share * profile[peak], -peak)
    bins = 1 + _length(deep[1:]) + _length(deep[:0:-1])
    return min(bins, RING_BINS) / RING_BINS


def _length(deep: np.ndarray) -> int:
    """How far flags reach from the first on, up to a break longer than ``JOINED_BINS``."""
    places = np.concatenate(([-1], np.flatnonzero(deep)))
    ends = np.flatnonzero(np.diff(places) > JOINED_BINS + 1)
    return int(places[ends[0] if ends.size else -1]) + 1


def _evened(sector: BadSector, profile: FloatArray, rate_revps: float) -> BadSector:
    place_rev = sector.centre_rev + lead_rev(rate_revps) + DELAY_S * rate_revps
    found = measure_depth_width(profile, place_rev, sector.width_rev / 2.0)
    if found is None:
        return sector
    averaged_rev = AVERAGED_S * rate_revps
    share = found.flatness * max(wideness(sector.width_rev), wideness(found.half_rev - averaged_rev))
    width_rev = float(sector.width_rev ** (1.0 - share) * found.half_rev**share)
    # What makes the width of drops uncertain is replaced by what makes that of the depth so, by the share.
    of_drops = max(sector.width_std_rev**2 - (WIDTH_STD_SHARE * sector.width_rev) ** 2, 0.0)
    of_width = (1.0 - share) * WIDTH_STD_SHARE + share * EVEN_STD_SHARE
    smear_rev = share * averaged_rev / 2.0
    return replace(
        sector,
        width_rev=width_rev,
        width_std_rev=float(np.sqrt(of_drops + (of_width * width_rev) ** 2 + smear_rev**2)),
    )
