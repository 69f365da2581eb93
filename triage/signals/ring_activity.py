"""How far a dirty stretch of a ring reaches, from every sample that is off rather than from losses alone.

Dirt loses pulses only where it is thickest. Around that it pulls the pole borders out of their places, which
repeats from turn to turn, and makes them unsteady, which does not. Both throw single samples off further out.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.ndimage import gaussian_filter1d

from triage.signals.ring_deviation import RingDeviation
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

ACTIVE_SIGMA: Final = 3.0
"""Deviation from which a sample is off, in standard deviations on the quiet part of the ring (judgement)."""

QUIET_QUANTILE: Final = 0.15
"""The quiet part of the ring: dirt and its smear may cover most of it (judgement)."""

QUIET_SMOOTHED_BINS: Final = 2.0

ABS_TO_SIGMA: Final = float(np.sqrt(np.pi / 2.0))
"""Standard deviation of a normal quantity over its mean size."""

LEAST_SIGMA: Final = 1e-5

ACTIVE_SHARE: Final = 0.1
"""A bin belongs to the stretch from this share of the greatest density on (judgement)."""

REACH_SHARE: Final = 0.75
"""Width at half the thickness of the dirt over the stretch found: borders shift where dirt is thinner still,
and the early end of the iteration leaves smear. From simulated dirt at 20 to 100 Hz and 15 to 80 km/h."""

UNKNOWN_S: Final = 0.010
"""By how much the averaging of the unit differs from what the response takes for it, as a standard deviation:
units average over one to several cycles of 5 to 20 ms (judgement). A drop shows as soon as its averaging
begins; a restless sample stays restless until it ends."""


def with_reach(harm: RingHarm, deviation: RingDeviation) -> RingHarm:
    """Widen or narrow the wide sectors to how far the ring is restless around them.

    Parameters
    ----------
    harm : RingHarm
        As its drops tell it.
    deviation : RingDeviation
        The samples of the wheel.

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
    stretches = (
        find_active_stretches(deviation) if any(wideness(one.width_rev) for one in harm.sectors) else []
    )
    if not stretches:
        return harm
    lead = lead_rev(deviation.rate_revps)
    return replace(
        harm,
        sectors=tuple(
            _reaching(one, _around(one.centre_rev + lead, stretches), UNKNOWN_S * deviation.rate_revps)
            for one in harm.sectors
        ),
    )


def find_active_stretches(deviation: RingDeviation) -> list[NDArray[np.intp]]:
    """Bins of every restless stretch of the ring, unit and recorder unsmeared."""
    active = count_active(deviation)
    if not active.any():
        return []
    matrix = response(deviation.step_rev, CYCLE_S * deviation.rate_revps)
    density = deconvolve_active(deviation.exposure, active, matrix)
    return raised_stretches(gaussian_filter1d(density, SMOOTHED_BINS, mode="wrap"), ACTIVE_SHARE)


def count_active(deviation: RingDeviation) -> FloatArray:
    """Count over the ring the samples that are off, ripple included, float64[96].

    Once around is left out, the run-out of a sound wheel; all else that stands out of the quiet part counts.
    """
    size = _beside_run_out(deviation)
    off = size > ACTIVE_SIGMA * _quiet_sigma(size, deviation)
    return np.bincount(deviation.bin[off], minlength=RING_BINS).astype(float)


def _beside_run_out(deviation: RingDeviation) -> FloatArray:
    """Size of what is left of the deviation without its mean and its swing once around, float64[M]."""
    value, exposure = deviation.depth_ratio, deviation.exposure
    mean = deviation.means(value)
    scatter = deviation.means(np.abs(value - mean[deviation.bin]))
    scatter[exposure == 0.0] = scatter.max()
    weight = np.sqrt(exposure) / np.maximum(_smoothed(scatter), LEAST_SIGMA)
    angle = 2.0 * np.pi * np.arange(RING_BINS) / RING_BINS
    terms = np.stack((np.ones(RING_BINS), np.cos(angle), np.sin(angle)), axis=1)
    swing, *_ = np.linalg.lstsq(terms * weight[:, None], mean * weight, rcond=None)
    size: FloatArray = np.abs(value - (terms @ swing)[deviation.bin])
    return size


def _quiet_sigma(size: FloatArray, deviation: RingDeviation) -> float:
    typical = _smoothed(deviation.means(size))[deviation.exposure > 0.0]
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


def _smoothed(value: FloatArray) -> FloatArray:
    return np.asarray(gaussian_filter1d(value, QUIET_SMOOTHED_BINS, mode="wrap"))
