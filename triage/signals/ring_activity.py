"""How far a dirty stretch of a ring reaches, from every sample that is off rather than from losses alone.

Dirt loses pulses only where it is thickest. Around that it pulls the pole borders out of their places, which
repeats from turn to turn, and makes them unsteady, which does not. Both throw single samples off further out.
What the filter of the control unit drags on is taken out first: how much of a deviation is left one sample
later is read off the log itself.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.ndimage import gaussian_filter1d

from triage.signals.ring_drops import LONGEST_STEP_REV, PlacedDrops, ring_bin
from triage.signals.ring_response import RING_BINS, deconvolve_active, response
from triage.signals.ring_sectors import (
    CYCLE_S,
    SMOOTHED_BINS,
    WIDTH_STD_SHARE,
    BadSector,
    RingHarm,
    lead_rev,
    raised_stretches,
    wideness,
)
from triage.speed_log import FloatArray

SPEED_SHARES: Final = (0.6, 1.3)
"""Samples between these multiples of the mean rate at the drops are used: one response must fit all
(judgement)."""

FEWEST_PER_BIN: Final = 4

ACTIVE_SIGMA: Final = 3.0
"""Deviation from which a sample is off, in standard deviations on the quiet part of the ring (judgement)."""

QUIET_QUANTILE: Final = 0.15
"""The quiet part of the ring: dirt and its smear may cover most of it (judgement)."""

QUIET_SMOOTHED_BINS: Final = 2.0

ABS_TO_SIGMA: Final = float(np.sqrt(np.pi / 2.0))
"""Standard deviation of a normal quantity over its mean size."""

LEAST_SIGMA: Final = 1e-5

LEAST_PERSISTENCE: Final = 0.1
MOST_PERSISTENCE: Final = 0.9
"""Below the first, correlation from sample to sample is taken for chance; a filter above the second would
leave nothing sharp enough to place (judgement)."""

ACTIVE_SHARE: Final = 0.1
"""A bin belongs to the stretch from this share of the greatest density on (judgement)."""

REACH_SHARE: Final = 0.75
"""Width at half the thickness of the dirt over the stretch found: borders shift where dirt is thinner still,
and the early end of the iteration leaves smear. From simulated dirt at 20 to 100 Hz and 15 to 80 km/h."""

UNKNOWN_S: Final = 0.010
"""By how much the averaging of the unit differs from what the response takes for it, as a standard deviation:
units average over one to several cycles of 5 to 20 ms (judgement). A drop shows as soon as its averaging
begins; a restless sample stays restless until it ends."""


@dataclass(frozen=True, slots=True)
class ActiveCounts:
    """Samples of one wheel over its ring, taken in one range of speed.

    Attributes
    ----------
    exposure, active : float64[96]
        Samples per angle bin, and those of them that are off.
    step_rev : float
        Angle turned from one sample to the next.
    rate_revps : float
        Mean rate of turning.
    """

    exposure: FloatArray
    active: FloatArray
    step_rev: float
    rate_revps: float


def with_reach(harm: RingHarm, placed: PlacedDrops, drops_revps: float) -> RingHarm:
    """Widen or narrow the wide sectors to how far the ring is restless around them.

    Parameters
    ----------
    harm : RingHarm
        As its drops tell it.
    placed : PlacedDrops
        The samples of the wheel.
    drops_revps : float
        Mean rate of turning at the drops.

    Returns
    -------
    RingHarm
        ``width_rev`` and ``width_std_rev`` of the wide sectors changed, all else as before.

    Notes
    -----
    A geometric mean of both widths, for their errors differ: drops miss where dirt is thin, the other joins
    what lies close together and counts less the further the wheel turns while an unknown unit averages. A
    spot has no thin edge, and keeps the width of its drops.
    """
    if not any(wideness(one.width_rev) for one in harm.sectors):
        return harm
    active = count_active(placed, drops_revps)
    if active is None:
        return harm
    lead = lead_rev(active.rate_revps)
    stretches = find_active_stretches(active)
    return replace(
        harm,
        sectors=tuple(
            _reaching(one, _around(one.centre_rev + lead, stretches), UNKNOWN_S * active.rate_revps)
            for one in harm.sectors
        ),
    )


def count_active(placed: PlacedDrops, drops_revps: float) -> ActiveCounts | None:
    """Count over the ring the samples that are off, ripple included; None when there are too few samples.

    Parameters
    ----------
    placed : PlacedDrops
    drops_revps : float
        Rate of turning around which samples are used.

    Returns
    -------
    ActiveCounts or None

    Notes
    -----
    Once around is left out, the run-out of a sound wheel; all else that stands out of the quiet part counts.
    """
    low, high = (share * drops_revps for share in SPEED_SHARES)
    rate = placed.rate_revps
    fit = (rate > low) & (rate < high) & (rate * placed.period_s < LONGEST_STEP_REV)
    used = np.flatnonzero(placed.seen & fit)
    if used.size < FEWEST_PER_BIN * RING_BINS:
        return None
    place = ring_bin(placed.angle_rev[used])
    exposure = _sums(place)
    size = _beside_run_out(_undragged(placed.depth_ratio, used, place), place, exposure)
    active = _sums(place[size > ACTIVE_SIGMA * _quiet_sigma(size, place, exposure)])
    mean_revps = float(rate[used].mean())
    return ActiveCounts(exposure, active, mean_revps * placed.period_s, mean_revps)


def find_active_stretches(counts: ActiveCounts) -> list[NDArray[np.intp]]:
    """Bins of every restless stretch of the ring, unit and recorder unsmeared."""
    matrix = response(counts.step_rev, CYCLE_S * counts.rate_revps)
    density = deconvolve_active(counts.exposure, counts.active, matrix)
    return raised_stretches(gaussian_filter1d(density, SMOOTHED_BINS, mode="wrap"), ACTIVE_SHARE)


def _undragged(depth: FloatArray, used: NDArray[np.intp], place: NDArray[np.intp]) -> FloatArray:
    """Deviation of the samples used less what the one before leaves of its own, float64[M]."""
    left = _persistence(depth, used, place)
    undragged: FloatArray = depth[used] - left * depth[used - 1]
    return undragged


def _persistence(depth: FloatArray, used: NDArray[np.intp], place: NDArray[np.intp]) -> float:
    """Share of a deviation that is left one sample later.

    Behind a filter of first order, losses that come by chance are correlated from the first sample on by the
    same factor from each to the next, however long the unit averages within a sample step.
    """
    varied = np.zeros(depth.size)
    varied[used] = depth[used] - _means(depth[used], place, _sums(place))[place]
    power, once, twice = (
        float(np.einsum("i,i", varied[lag:], varied[: varied.size - lag])) for lag in range(3)
    )
    if once <= LEAST_PERSISTENCE * power:
        return 0.0
    return float(np.clip(twice / once, 0.0, MOST_PERSISTENCE))


def _beside_run_out(value: FloatArray, place: NDArray[np.intp], exposure: FloatArray) -> FloatArray:
    """Size of what is left of a quantity without its mean and its swing once around the ring, float64[M]."""
    mean = _means(value, place, exposure)
    scatter = _means(np.abs(value - mean[place]), place, exposure)
    scatter[exposure == 0.0] = scatter.max()
    weight = np.sqrt(exposure) / np.maximum(_smoothed(scatter), LEAST_SIGMA)
    angle = 2.0 * np.pi * np.arange(RING_BINS) / RING_BINS
    terms = np.stack((np.ones(RING_BINS), np.cos(angle), np.sin(angle)), axis=1)
    swing, *_ = np.linalg.lstsq(terms * weight[:, None], mean * weight, rcond=None)
    size: FloatArray = np.abs(value - (terms @ swing)[place])
    return size


def _quiet_sigma(size: FloatArray, place: NDArray[np.intp], exposure: FloatArray) -> float:
    typical = _smoothed(_means(size, place, exposure))[exposure > 0.0]
    return max(ABS_TO_SIGMA * float(np.quantile(typical, QUIET_QUANTILE)), LEAST_SIGMA)


def _around(place_rev: float, stretches: Sequence[NDArray[np.intp]]) -> float:
    """Width of the stretch that holds a place or comes nearest to it, in revolutions."""

    def away_bins(bins: NDArray[np.intp]) -> tuple[float, int]:
        middle = bins[0] + bins.size / 2.0
        off = abs((RING_BINS * place_rev - middle + RING_BINS / 2.0) % RING_BINS - RING_BINS / 2.0)
        return max(off - bins.size / 2.0, 0.0), -bins.size

    return min(stretches, key=away_bins).size / RING_BINS


def _reaching(sector: BadSector, active_rev: float, unknown_rev: float) -> BadSector:
    """Take both widths together, each by its variance over the square of the width."""
    of_drops = WIDTH_STD_SHARE**2
    of_active = WIDTH_STD_SHARE**2 + (unknown_rev / sector.width_rev) ** 2
    share = wideness(sector.width_rev) * of_drops / (of_drops + of_active)
    width_rev = float(sector.width_rev ** (1.0 - share) * (REACH_SHARE * active_rev) ** share)
    changed = WIDTH_STD_SHARE**2 * (width_rev**2 - sector.width_rev**2)
    return replace(
        sector, width_rev=width_rev, width_std_rev=float(np.sqrt(sector.width_std_rev**2 + changed))
    )


def _sums(place: NDArray[np.intp], value: FloatArray | None = None) -> FloatArray:
    return np.bincount(place, weights=value, minlength=RING_BINS).astype(float)


def _means(value: FloatArray, place: NDArray[np.intp], exposure: FloatArray) -> FloatArray:
    return _sums(place, value) / np.maximum(exposure, 1.0)


def _smoothed(value: FloatArray) -> FloatArray:
    return np.asarray(gaussian_filter1d(value, QUIET_SMOOTHED_BINS, mode="wrap"))
