"""How far a bad stretch of the ring goes, by the course of the mean speed over the wheel's angle.

Where a stretch begins its first drop tells, turn after turn. Where it ends the drops do not tell: once the
speed is down the next lost pulse makes no new drop, and a filter in the control unit lets the speed recover
slowly. The mean course over many turns, sharpened against that filter, does.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.ndimage import gaussian_filter1d

from triage.signals.ring_response import RING_BINS
from triage.speed_log import FloatArray

FILTERS_S: Final = (0.0, 0.008, 0.015, 0.025, 0.04)
"""Time constants tried for the control unit's filter (judgement); the one is taken that leaves the course
most at rest outside of its stretches."""

WINDOW_S: Final = 0.010
"""Time over which the unit averages: it sees a stretch for so much longer (judgement)."""

COURSE_BINS: Final = 0.7
SIZE_BINS: Final = 2.0
"""Smoothing of the course before its slope is taken, and of its square, in bins."""

RAISED_SHARE: Final = 0.3
"""The stretch goes as far as the course deviates by this share of its greatest deviation (chosen on simulated
sectors with sharp ends; the median of their widths then comes out right)."""

JOINED_BINS: Final = 2


def find_stretches(mean_ratio: FloatArray, rate_revps: float) -> list[NDArray[np.intp]]:
    """Find where on the ring the speed deviates.

    Parameters
    ----------
    mean_ratio : float64[96]
        Mean relative deviation of the speed at every angle.
    rate_revps : float
        Rate of turning at which it was recorded.

    Returns
    -------
    list of int[n]
        Bins of every stretch in the order of the ring, as the recorder shows them: late by the unit's delay
        and longer by its window.

    Notes
    -----
    A filter of first order with the time constant T turns the course x into y with ``x = y + T dy/dt``; over
    the angle dt is the angle over the rate. Textbook.
    """
    course = gaussian_filter1d(mean_ratio, COURSE_BINS, mode="wrap")
    slope = (np.roll(course, -1) - np.roll(course, 1)) / 2.0 * RING_BINS
    tried = [course + filter_s * rate_revps * slope for filter_s in FILTERS_S]
    sharp = min((one - np.median(one) for one in tried), key=_spread)
    size = np.sqrt(gaussian_filter1d(sharp**2, SIZE_BINS, mode="wrap"))
    return stretches_of(size > RAISED_SHARE * size.max(), joined_over=JOINED_BINS)


def _spread(course: FloatArray) -> float:
    """Sum over root of squares: 1 for a single bin, the root of their number when all are alike."""
    return float(np.abs(course).sum() / max(np.sqrt((course**2).sum()), 1e-12))


def width_of(stretch: NDArray[np.intp], rate_revps: float) -> float:
    """Return the width of a stretch in revolutions without the unit's window, at least one bin."""
    return max(stretch.size / RING_BINS - WINDOW_S * rate_revps, 1.0 / RING_BINS)


def stretches_of(flag: NDArray[np.bool_], *, joined_over: int) -> list[NDArray[np.intp]]:
    """Bins of every stretch of set flags in the order of the closed ring; short breaks part none."""
    raised = np.flatnonzero(flag)
    if not raised.size:
        return []
    breaks = np.diff(raised, append=raised[:1] + RING_BINS) - 1
    ends = np.flatnonzero(breaks > joined_over)
    if not ends.size:
        return [np.arange(RING_BINS)]
    stretches = []
    for before, end in zip(np.roll(ends, 1), ends, strict=True):
        first = raised[(before + 1) % raised.size]
        stretches.append((first + np.arange((raised[end] - first) % RING_BINS + 1)) % RING_BINS)
    return stretches
