"""The bad stretches of a ring: how many, where, how wide, and how often a turn drops there."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.ndimage import gaussian_filter1d

from triage.signals.ring_response import RING_BINS, DropCounts, Harm, deconvolve_drops, response
from triage.speed_log import FloatArray

CYCLE_S: Final = 0.010
"""Cycle taken for the control unit; those in print work in cycles of 5 to 20 ms (judgement). Longer ones make
a spot look wider by the angle turned in the difference."""

BUS_S: Final = 0.002
"""Time from the end of the cycle to the time stamp (judgement)."""

DELAY_STD_S: Final = 0.005
"""What other cycles, and frames that wait for their turn, make uncertain in time (judgement)."""

HALF_GAP_REV: Final = 0.014
HALF_GAP_STD_REV: Final = 0.006
"""A missing pulse shows when the next one comes: half a gap of two or three pitches later, at 43 to 100
pulses a turn."""

CAUGHT_SHARES: Final = (1.0, 0.5, 0.25)
NEARLY_AS_GOOD: Final = 0.15
"""Share of the sample step in which a drop is caught, longest first; the longest is taken whose
log-likelihood falls short of the best by less than this for each drop: only dips over within a step fall
short by more."""

FEWEST_DROPS: Final = 20
LEAST_GAIN: Final = 15.0
"""Drops and gain of log-likelihood over an even ring that make a pattern: 96 bins gain about 8 by chance."""

COARSE_BINS: Final = 24
COARSE_SIGMA: Final = 3.0

SMOOTHED_BINS: Final = 1.0
"""Finer than this the iteration follows chance."""

BAD_SHARE: Final = 0.02
"""A bin belongs to a sector from this share of the greatest density on: dirt half as thick as the thickest
loses far less than half as many pulses."""

JOINED_BINS: Final = 4
"""Sectors that come closer than this, 15 degrees, are one."""

WIDTH_STD_SHARE: Final = 0.6
"""How far a bad stretch goes is a matter of degree: where dirt thins out it loses few pulses. Twice the
stated uncertainty then holds the true width of a stretch told by its drops alone in about 15 of 16 simulated
cars."""

WIDE_REV: Final = 0.06
"""Up to this width a stretch is a spot, from twice as much on it is wide."""

UNEVEN_SHARE: Final = 0.2
"""How far, in widths, the middle found lies from that of an uneven stretch (judgement, checked on simulated
dirt)."""

SPREAD_STD_SHARE: Final = 0.2
"""Relative standard uncertainty of the effective stretch by chance and by the early end of the iteration:
what simulated damage and dirt scatter by."""

LEAST_WEIGHT: Final = 0.03
"""Sectors with a smaller share of the drops are left out."""


@dataclass(frozen=True, slots=True)
class BadSector:
    """A stretch of the ring in which the speed drops.

    Attributes
    ----------
    centre_rev, centre_std_rev : float
        Middle of the drops in the angle of the map, 0 to 1, the unit's delay taken out.
    width_rev, width_std_rev : float
        Stretch of the ring, the smear by unit and recorder taken out; at least one bin as its drops tell it.
    drops_per_turn, drops_per_turn_std : float
        How many drops begin there in a turn, on average.
    """

    centre_rev: float
    centre_std_rev: float
    width_rev: float
    width_std_rev: float
    drops_per_turn: float
    drops_per_turn_std: float


@dataclass(frozen=True, slots=True)
class RingHarm:
    """What the drops of one wheel tell of its ring.

    Attributes
    ----------
    sectors : tuple of BadSector
        The one with most drops first; empty when nothing keeps to the angle.
    density : float64[96]
        Drops per turn made in each bin.
    spread_rev, spread_std_rev : float
        Effective stretch of the ring over which the drops are made, the smear taken out: participation ratio
        of the density.
    drop_count : float
        Drops it rests on.
    """

    sectors: tuple[BadSector, ...]
    density: FloatArray
    spread_rev: float
    spread_std_rev: float
    drop_count: int


def find_bad_sectors(counts: DropCounts) -> RingHarm | None:
    """Find the bad sectors of a ring; None with too few drops, or when they do not keep to the angle.

    Parameters
    ----------
    counts : DropCounts

    Returns
    -------
    RingHarm or None

    Notes
    -----
    Centre and width are known to the pitch of the pulses, to the number of drops, and to the delay of a unit
    whose cycle is not known; the last grows with the speed. Valid while the wheel turns less than half a
    revolution from sample to sample.
    """
    number = int(counts.drops.sum())
    if number < FEWEST_DROPS or not _uneven(counts):
        return None
    harm = _best_harm(counts)
    if harm.log_likelihood - _even_log_likelihood(counts) < LEAST_GAIN:
        return None
    density = harm.density
    smooth = gaussian_filter1d(density, SMOOTHED_BINS, mode="wrap")
    turns = float(counts.exposure.sum()) * counts.step_rev
    found = [_sector(counts, density, run, turns=turns) for run in raised_stretches(smooth, BAD_SHARE)]
    total = float(density.sum())
    kept = [one for one in found if one.drops_per_turn >= LEAST_WEIGHT * total]
    spread_rev = float(total**2 / (RING_BINS * (density**2).sum()))
    delay_std_rev = DELAY_STD_S * counts.rate_revps
    return RingHarm(
        sectors=tuple(sorted(kept, key=lambda one: -one.drops_per_turn)),
        density=density,
        spread_rev=spread_rev,
        spread_std_rev=float(
            np.hypot(np.hypot(0.5 / RING_BINS, delay_std_rev), SPREAD_STD_SHARE * spread_rev)
        ),
        drop_count=number,
    )


def lead_rev(rate_revps: float) -> float:
    """Angle from the cause of a drop to the sample that shows it, beside what the response knows of."""
    return HALF_GAP_REV + BUS_S * rate_revps


def wideness(width_rev: float) -> float:
    """From 0 for a spot to 1 for a wide stretch."""
    return min(max(width_rev / WIDE_REV - 1.0, 0.0), 1.0)


def raised_stretches(smooth: FloatArray, share: float) -> list[NDArray[np.intp]]:
    """Bins of every stretch of raised density, in the order of the ring; the ring is closed.

    Parameters
    ----------
    smooth : float64[96]
        Density, smoothed.
    share : float
        Share of its greatest value from which it is raised.
    """
    raised = np.flatnonzero(smooth > share * smooth.max())
    breaks = np.diff(raised, append=raised[:1] + RING_BINS) - 1
    ends = np.flatnonzero(breaks > JOINED_BINS)
    if not ends.size:
        return [np.arange(RING_BINS)]
    stretches = []
    for before, end in zip(np.roll(ends, 1), ends, strict=True):
        first = raised[(before + 1) % raised.size]
        stretches.append((first + np.arange((raised[end] - first) % RING_BINS + 1)) % RING_BINS)
    return stretches


def _best_harm(counts: DropCounts) -> Harm:
    smear_rev = CYCLE_S * counts.rate_revps
    tried = [
        deconvolve_drops([counts], [response(share * counts.step_rev, smear_rev)]) for share in CAUGHT_SHARES
    ]
    best = max(one.log_likelihood for one in tried)
    allowed = best - NEARLY_AS_GOOD * float(counts.drops.sum())
    return next(one for one in tried if one.log_likelihood >= allowed)


def _uneven(counts: DropCounts) -> bool:
    """Quick look whether the drops lie anything but evenly: a sum of squares over coarse bins."""
    drops = counts.drops.reshape(COARSE_BINS, -1).sum(axis=1)
    exposure = counts.exposure.reshape(COARSE_BINS, -1).sum(axis=1)
    expected = np.maximum(exposure * drops.sum() / exposure.sum(), 1e-12)
    scatter = float(((drops - expected) ** 2 / expected).sum())
    return scatter > COARSE_BINS + COARSE_SIGMA * float(np.sqrt(2.0 * COARSE_BINS))


def _even_log_likelihood(counts: DropCounts) -> float:
    expected = np.maximum(counts.exposure * counts.drops.sum() / counts.exposure.sum(), 1e-12)
    return float((counts.drops * np.log(expected) - expected).sum())


def _sector(counts: DropCounts, density: FloatArray, bins: NDArray[np.intp], *, turns: float) -> BadSector:
    inside = density[bins]
    weight = max(float(inside.sum()), 1e-12)
    # The smoothing that found the stretch has widened it on both sides by what takes a point down to the bar.
    widened = 2.0 * SMOOTHED_BINS * np.sqrt(-2.0 * np.log(BAD_SHARE))
    width_rev = max(bins.size - widened, 1.0) / RING_BINS
    drops = max(weight * turns, 1.0)
    delay_std_rev = DELAY_STD_S * counts.rate_revps
    edge_std_rev = np.hypot(1.0 / RING_BINS, (width_rev + counts.step_rev) / np.sqrt(drops))
    return BadSector(
        centre_rev=(_middle(bins, inside, width_rev) - lead_rev(counts.rate_revps)) % 1.0,
        centre_std_rev=float(
            np.sqrt(
                edge_std_rev**2 + delay_std_rev**2 + HALF_GAP_STD_REV**2 + (UNEVEN_SHARE * width_rev) ** 2
            )
        ),
        width_rev=width_rev,
        width_std_rev=float(
            np.sqrt(2.0 * edge_std_rev**2 + delay_std_rev**2 + (WIDTH_STD_SHARE * width_rev) ** 2)
        ),
        drops_per_turn=weight,
        drops_per_turn_std=float(np.sqrt(drops) / max(turns, 1.0)),
    )


def _middle(bins: NDArray[np.intp], inside: FloatArray, width_rev: float) -> float:
    """Middle of the drops of a spot, of the stretch itself where it is wide, in revolutions.

    In a wide stretch the first drops of a turn hide those that follow.
    """
    edges = bins[0] + np.arange(bins.size + 1, dtype=np.float64)
    passed = np.concatenate(([0.0], np.cumsum(inside)))
    of_drops = float(np.interp(0.5 * passed[-1], passed, edges))
    of_stretch = float(bins[0]) + bins.size / 2.0
    wide = wideness(width_rev)
    return ((1.0 - wide) * of_drops + wide * of_stretch) / RING_BINS
